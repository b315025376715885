package xlsx

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

func startColumns() []column {
	return []column{
		{head: "What", min: 34, max: 44, kind: long}, {head: "Value", min: 18, max: 24, kind: numeric}, {head: "Mark", min: 9, max: 9}, {head: "Unit", min: 10, max: 14},
		{head: "Low", min: 10, max: 14, kind: numeric}, {head: "High", min: 10, max: 14, kind: numeric}, {head: "Where the number comes from", min: 40, max: 44, kind: long},
		{head: "What follows it in this workbook", min: 32, max: 36, kind: long},
	}
}

// The rows of the first sheet up to the inputs.
const (
	figureRows  = 9
	startHead   = 3 // name, sentences, an empty row
	figureHead  = 1
	inputHead   = 4 // an empty row, heading, sentences, headers
	noticeExtra = 1
)

// inputsRow is the row of the first input.
func (b *book) inputsRow() int {
	row := startHead + figureHead + figureRows + inputHead + 1
	if b.notice() != "" {
		row += noticeExtra
	}
	return row
}

// notice says what is missing when the run had problems; "" when nothing is.
func (b *book) notice() string {
	stopped := 0
	for _, c := range b.result.Cells {
		if c.Status != notebook.Done {
			stopped++
		}
	}
	errors := b.result.Errors()
	if errors == 0 && stopped == 0 {
		return ""
	}
	return fmt.Sprintf("This workbook is incomplete: the notebook has %s, and %s did not run. What hangs on them is missing from the sums. The list stands at the end of this sheet.",
		counted(errors, "mistake"), counted(stopped, "cell"))
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// start makes the first sheet. It comes last, since it shows figures of the
// others.
func (b *book) start() *sheet {
	s := b.newSheet(startSheet, startColumns())
	s.plain = true
	s.top(b.title, "This workbook was made from a notebook that plans a room of aquariums; it shows what the room costs, weighs and needs, and what was checked. "+
		"Cells marked “input” may be changed: every sum that is a formula follows at once. "+
		"Everything else is fixed and changes only when the notebook is run again, which writes this workbook anew.")
	if text := b.notice(); text != "" {
		s.across(alarm, text)
	}
	s.skip(1)
	b.keyFigures(s)
	b.inputBlock(s)
	b.sheetList(s)
	b.takeCare(s)
	b.problemList(s)
	s.frozen = 1
	return s
}

// keyFigures adds the figures of the other sheets.
func (b *book) keyFigures(s *sheet) {
	f, l := b.figures, s.look
	s.sectionHead("Key figures")
	month := "electricity and other costs that come back"
	if f.unpriced {
		month = "other costs only: the notebook gives no price of electricity"
	}
	total := "every budget line, tax included"
	if f.foreign > 0 {
		total += fmt.Sprintf(", save %s in other money", counted(f.foreign, "line"))
	}
	whole := decimalsFormat(0)
	b.keyFigure(s, "All to buy", f.total, l.money, "", total)
	b.keyFigure(s, "of that, there already", f.had, l.money, "", "what was bought or at hand when the notebook ran")
	b.keyFigure(s, "Still to spend", f.toSpend, l.money, "", "what is left to buy, contingency included")
	b.keyFigure(s, "Running cost a month", f.month, l.money, "", month)
	b.keyFigure(s, "Water in all tanks", f.water, whole, "L", "filled to the line of each")
	b.keyFigure(s, "Weight of all tanks, filled", f.filled, whole, "kg", "without stands, lids and equipment")
	b.keyFigure(s, "Checks that fail", f.fail, whole, "", "do not build it so")
	b.keyFigure(s, "Checks with a caution", f.caution, whole, "", "think again, or ask someone who knows")
	b.keyFigure(s, "Checks passed", f.pass, whole, "", "within their limits")
}

func (b *book) keyFigure(s *sheet, words string, f figure, format, unit, remark string) {
	l := s.look
	value := l.words(body, "none")
	if f.known {
		value = l.formula(strong, f.cell.from(startSheet), f.value, format)
		s.measure(inputValue-1, &value)
	}
	none := l.words(body, "")
	row := s.one(l.words(body, words), value, none, l.words(body, unit), l.words(body, remark), none, none, none)
	s.merges = append(s.merges, [2]string{cellName(inputLow, row), cellName(inputUsed, row)})
}

// inputBlock adds the assumptions and the rates.
func (b *book) inputBlock(s *sheet) {
	s.skip(1)
	s.sectionHead("Assumptions and rates")
	s.across(prose, "What was taken for granted, with the range in which it may lie. The last column says what follows the cell when you change it here; "+
		"where it says “fixed”, only a run of the notebook with the new number shows what follows.")
	texts := make([]string, len(s.columns))
	for i, c := range s.columns {
		texts[i] = c.head
	}
	s.heads(1, texts)
	for i := range b.inputs.assumptions {
		b.assumptionRow(s, &b.inputs.assumptions[i])
	}
	for i := range b.inputs.rates {
		b.rateRow(s, &b.inputs.rates[i])
	}
}

func (b *book) assumptionRow(s *sheet, a *assumed) {
	v, unit := cellNumber(a.Value)
	follows := markFixed + ": run the notebook with it"
	if len(a.used) > 0 {
		follows = markLive + ": " + strings.Join(a.used, ", ")
	}
	basis := joinText(a.Basis, a.Note)
	if a.Overridden {
		basis = joinText("changed for this run; the notebook says "+a.Given.Short(), basis)
	}
	name := a.Label
	if name == "" {
		name = a.Name
	}
	s.fit(s.words(0, name), s.look.number(input, v, inputFormat(isShare(a.Value))), s.look.words(body, "input"), s.look.words(body, unitWords(unit)),
		b.bound(a, a.Low), b.bound(a, a.High), s.words(6, basis), s.words(7, follows))
}

// bound is the low or high end of an assumption, in the unit of its cell.
func (b *book) bound(a *assumed, o plan.Optional) excelize.Cell {
	if !o.Has {
		return b.look.words(body, "")
	}
	if isShare(a.Value) {
		return b.look.quantityIn(o.Q, "", shareFormat)
	}
	return b.look.reading(o.Q, a.Value.Unit().Symbol())
}

// inputFormat shows an input as it is typed; a share as a percentage.
func inputFormat(share bool) string {
	if share {
		return shareFormat
	}
	return generalFormat
}

func (b *book) rateRow(s *sheet, r *rate) {
	l, format := s.look, inputFormat(r.share)
	value, mark := l.number(input, r.value, format), "input"
	if r.formula != "" {
		value, mark = l.formula(body, r.formula, r.value, format), "follows"
		r.basis = joinText("the assumption above: change it there", r.basis)
	}
	none := l.words(body, "")
	s.fit(s.words(0, r.label), value, l.words(body, mark), l.words(body, r.unit), none, none, s.words(6, r.basis), s.words(7, markLive+": "+r.used))
}

// sheetList says what each sheet is, with a link to it.
func (b *book) sheetList(s *sheet) {
	s.skip(1)
	s.sectionHead("The sheets")
	about := map[string]string{
		budgetSheet:  "everything to buy, with sums by phase, tank and supplier",
		runningSheet: "what the room takes a month and a year, by kind, group and tank",
		buildSheet:   "the steps of the work in their order",
		tanksSheet:   "measures, water and weight of every tank, and the fish",
		checksSheet:  "what was checked and how it came out, the worst first",
		valuesSheet:  "every named number of the notebook, for those who want to look closer",
	}
	for _, name := range sheetNames()[1:] {
		none := s.look.words(body, "")
		row := s.one(s.look.words(link, name), s.look.words(body, about[name]), none, none, none, none, none, none)
		s.merges = append(s.merges, [2]string{cellName(inputValue, row), cellName(inputUsed, row)})
		s.links = append(s.links, jump{cell: cellName(1, row), to: "'" + name + "'!A1"})
	}
}

// takeCare adds cautions for what the plan has.
func (b *book) takeCare(s *sheet) {
	s.skip(1)
	s.sectionHead("Take care")
	for _, text := range b.cautions() {
		s.across(prose, text)
	}
}

func (b *book) cautions() []string {
	p := b.plan
	var list []string
	if len(p.Loads)+len(p.Circuits) > 0 {
		list = append(list, "Mains power near water can kill. Every circuit at a tank needs protection against residual current and a drip loop at every cable; "+
			"have fixed wiring done and tested by a licensed electrician under the local code.")
	}
	if len(p.Tanks)+len(p.Racks) > 0 {
		list = append(list, "Filled tanks weigh as much as people and cars, and glass breaks without warning. Ask a structural engineer about floors and racks that are in doubt; "+
			"lift with enough people, gloves and shoes, and never lift a tank with water in it.")
	}
	if salty(p.Tanks) {
		list = append(list, "Salts and water treatments: follow the label, keep them dry and away from children, and never mix products.")
	}
	if len(p.Fish) > 0 {
		list = append(list, "Fish are live animals: local law on keeping them comes first, and a vet who knows fish helps where they are ill.")
	}
	return append(list, "These are figures for planning. Local code, the makers' instructions and licensed practice decide.")
}

func salty(tanks []*plan.Tank) bool {
	return slices.ContainsFunc(tanks, func(t *plan.Tank) bool { return t.Salinity.Value() > 0 })
}

// problemRows bounds the list of problems.
const problemRows = 40

// problemList adds the problems of the run, if it had any.
func (b *book) problemList(s *sheet) {
	problems := b.result.Problems
	if len(problems) == 0 {
		return
	}
	s.skip(1)
	s.sectionHead("What the run of the notebook reported")
	for i, p := range problems {
		if i == problemRows {
			s.across(prose, fmt.Sprintf("… and %d more", len(problems)-problemRows))
			return
		}
		kind := "mistake: "
		if p.Caution {
			kind = "caution: "
		}
		text := kind + p.Error()
		if p.Hint != "" {
			text += " (" + p.Hint + ")"
		}
		s.across(prose, text)
	}
}
