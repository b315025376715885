package xlsx

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// notWorkedOut stands for a figure of which a part is missing.
const notWorkedOut = "not worked out"

// keyFigure is a row of the key figures.
type keyFigure struct {
	words  string
	figure figure
	times  string // what the formula multiplies the other sheet's cell by, "" for nothing
	format string
	unit   string
	remark string
	lacks  bool // records that it needs are missing
}

// figureRows counts the rows of the key figures with their heading.
func (b *book) figureRows() int {
	n := 1 + 9
	if len(b.plan.Loads) > 0 {
		n++
	}
	if len(b.plan.Today) > 0 {
		n++
	}
	return n
}

// keyFigures adds the figures of the other sheets.
func (b *book) keyFigures(s *sheet) {
	l := s.look
	s.sectionHead("Key figures")
	if len(b.plan.Today) > 0 {
		s.figureRow("The notebook's day", l.date(strong, b.plan.Today[0].Date), "", "the day that the notebook counts from")
	}
	list := b.moneyFigures()
	list = append(list, b.roomFigures()...)
	for _, k := range list {
		value := l.words(missing, "none")
		value.StyleID = l.id(strong, generalFormat)
		switch {
		case k.lacks:
			value, k.unit = l.words(missing, notWorkedOut), ""
			k.remark = "a part of the notebook that it needs did not run"
		case k.figure.known:
			value = l.formula(strong, k.figure.cell.from(startSheet)+k.times, k.figure.value, k.format)
		}
		s.figureRow(k.words, value, k.unit, k.remark)
	}
}

func (s *sheet) figureRow(words string, value excelize.Cell, unit, remark string) {
	l := s.look
	s.measure(inputValue-1, &value)
	none := l.words(body, "")
	s.spread(inputLow, l.words(body, words), value, none, l.words(body, unit), l.words(body, remark))
}

func (b *book) moneyFigures() []keyFigure {
	f, money := b.figures, b.look.money
	month := "electricity and other costs that come back"
	if f.unpriced {
		month = "other costs only: the notebook gives no price of electricity"
	}
	total := "every budget line, tax included"
	if f.foreign > 0 {
		total += fmt.Sprintf(", save %s in other money", counted(f.foreign, "line"))
	}
	lines := b.lacking(plan.KindItem, plan.KindTax)
	list := []keyFigure{
		{"All to buy", f.total, "", money, "", total, lines},
		{"of that, there already", f.had, "", money, "", "what was bought or at hand when the notebook ran", lines},
		{"Still to spend", f.toSpend, "", money, "", "what is left to buy, contingency included", lines || b.lacking(plan.KindContingency)},
		{"Running cost a month", f.month, "", money, "", month, b.lacking(plan.KindLoad, plan.KindTariff, plan.KindRunning)},
	}
	if len(b.plan.Loads) > 0 {
		year := f.energy
		year.value *= 365
		list = append(list, keyFigure{"Electricity in a year", year, "*365", decimalsFormat(0), "kWh", "every load, as many hours a day as the notebook says", b.lacking(plan.KindLoad)})
	}
	return list
}

func (b *book) roomFigures() []keyFigure {
	f, whole := b.figures, decimalsFormat(0)
	tanks := b.lacking(plan.KindTank)
	list := []keyFigure{
		{"Water in all tanks", f.water, "", whole, b.units.volume, "filled to the line of each", tanks},
		{"Weight of all tanks, filled", f.filled, "", whole, b.units.mass, "without stands, lids and equipment", tanks},
		{"Checks that fail", f.fail, "", whole, "", "do not build it so", false},
		{"Checks with a caution", f.caution, "", whole, "", "think again, or ask someone who knows", false},
		{"Checks passed", f.pass, "", whole, "", "within their limits", false},
	}
	if b.checksLack() {
		for i := range list[2:] {
			k := &list[2+i]
			// a check that fails is worth telling; that none does is not known
			k.lacks = k.figure.value == 0
			k.remark += "; at least, since some checks could not be made"
		}
	}
	return list
}
