package xlsx

import (
	"io"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// The sheets, in their order in the workbook.
const (
	startSheet   = "Start here"
	budgetSheet  = "Budget"
	runningSheet = "Running cost"
	buildSheet   = "Build"
	tanksSheet   = "Tanks"
	fishSheet    = "Fish"
	waterSheet   = "Water"
	checksSheet  = "Checks"
	valuesSheet  = "Values"
)

// sheetNames lists the sheets; those of the fish and of the water are there when
// the plan has some records of them.
func (b *book) sheetNames() []string {
	names := []string{startSheet, budgetSheet, runningSheet, buildSheet, tanksSheet}
	if len(b.plan.Fish) > 0 {
		names = append(names, fishSheet)
	}
	if b.waterTables() > 0 {
		names = append(names, waterSheet)
	}
	return append(names, checksSheet, valuesSheet)
}

// book is a workbook in the making.
type book struct {
	result   *notebook.Result
	plan     *plan.Plan
	title    string
	currency string // code of the notebook's money, "" without any
	digits   int    // decimals of that money
	file     *excelize.File
	look     *looks
	inputs   inputs
	figures  figures
	loads    runningList // the sheet with the loads
	gaps     gaps
	units    tankUnits
}

// Write writes the workbook of a result. The same result gives the same bytes.
// Nothing is written when the workbook cannot be made.
func Write(w io.Writer, r *notebook.Result) error {
	file := excelize.NewFile()
	defer file.Close()
	b, err := newBook(file, r)
	if err != nil {
		return err
	}
	// the other sheets come first: the first one refers to their cells
	sheets := []*sheet{b.budget(), b.running(), b.build(), b.tanks()}
	if len(b.plan.Fish) > 0 {
		sheets = append(sheets, b.fish())
	}
	if b.waterTables() > 0 {
		sheets = append(sheets, b.water())
	}
	sheets = append(sheets, b.checks(), b.values())
	sheets = append([]*sheet{b.start()}, sheets...)
	if b.look.err != nil {
		return b.look.err
	}
	for _, s := range sheets {
		if err := b.stream(s); err != nil {
			return err
		}
	}
	if err := b.nameInputs(); err != nil {
		return err
	}
	file.SetZipWriter(newSortedZip)
	return file.Write(w)
}

func newBook(file *excelize.File, r *notebook.Result) (*book, error) {
	b := &book{result: r, plan: r.Plan, title: "Notebook", file: file, digits: 2}
	if b.plan == nil {
		b.plan = &plan.Plan{}
	}
	if r.Document != nil && r.Document.Title != "" {
		b.title = clean(r.Document.Title)
	}
	b.currency = b.plan.Currency()
	b.look = newLooks(file, b.currency)
	b.digits = b.look.moneyDigits
	b.gaps, b.units = findGaps(r), tanksUnits(b.plan.Tanks)
	b.layInputs()
	names := b.sheetNames()
	if err := file.SetSheetName("Sheet1", names[0]); err != nil {
		return nil, err
	}
	for _, name := range names[1:] {
		if _, err := file.NewSheet(name); err != nil {
			return nil, err
		}
	}
	return b, b.properties()
}
