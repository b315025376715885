package xlsx

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// waterMeasure is a column of measurements that may be absent.
type waterMeasure struct {
	head, unit string
	decimals   int
	of         func(*plan.Reading) plan.Optional
}

// waterMeasures lists what is measured as a quantity, in the order of the
// columns: before pH, and after it.
func (b *book) waterMeasures() (before, after []waterMeasure) {
	temperature, degrees := b.units.temperature, b.units.degrees
	before = []waterMeasure{
		{"Water (" + degrees + ")", temperature, 1, func(r *plan.Reading) plan.Optional { return r.Temperature }},
		{"Salinity (ppt)", "ppt", 2, func(r *plan.Reading) plan.Optional { return r.Salinity }},
	}
	after = []waterMeasure{
		{"Ammonia, as N (mg/L)", "mg/L", 3, func(r *plan.Reading) plan.Optional { return r.Ammonia }},
		{"Nitrite, as N (mg/L)", "mg/L", 3, func(r *plan.Reading) plan.Optional { return r.Nitrite }},
		{"Nitrate, as N (mg/L)", "mg/L", 2, func(r *plan.Reading) plan.Optional { return r.Nitrate }},
		{"Oxygen (mg/L)", "mg/L", 1, func(r *plan.Reading) plan.Optional { return r.Oxygen }},
		{"Hardness (dGH)", "dGH", 1, func(r *plan.Reading) plan.Optional { return r.Hardness }},
		{"Alkalinity (dKH)", "dKH", 1, func(r *plan.Reading) plan.Optional { return r.Alkalinity }},
	}
	return before, after
}

// column is the column of a measure; it is left out where nothing was measured.
func (m *waterMeasure) column(list []*plan.Reading) column {
	off := true
	for _, r := range list {
		off = off && !m.of(r).Has
	}
	return column{head: m.head, min: 10, kind: numeric, off: off}
}

func (b *book) readingColumns() []column {
	list := b.plan.Readings
	acid, judged := false, b.readingChecks()
	outcome, words := false, false
	for i, r := range list {
		acid = acid || r.PH != 0
		outcome, words = outcome || judged[i] != nil, words || judged[i] != nil || r.Note != ""
	}
	columns := []column{{head: "Tank", min: 14, kind: long}, {head: "Date", min: 10, kind: numeric}}
	before, after := b.waterMeasures()
	for i := range before {
		columns = append(columns, before[i].column(list))
	}
	columns = append(columns, column{head: "pH", min: 7, kind: numeric, off: !acid})
	for i := range after {
		columns = append(columns, after[i].column(list))
	}
	return append(columns, column{head: "Outcome", min: 10, off: !outcome}, column{head: "In words", min: 10, kind: long, off: !words})
}

// readingChecks gives the check of each reading, nil for one without.
func (b *book) readingChecks() []*plan.Check {
	byName := map[string][]*plan.Check{}
	for _, c := range b.plan.Checks {
		if c.ByLibrary {
			byName[c.Name] = append(byName[c.Name], c)
		}
	}
	checks := make([]*plan.Check, len(b.plan.Readings))
	for i, r := range b.plan.Readings {
		for j, c := range byName[fmt.Sprintf("Water of %s on %s", r.Tank, r.Date)] {
			if j == 0 || sameSource(&c.Source, &r.Source) {
				checks[i] = c // of two readings of a day each has its own
			}
		}
	}
	return checks
}

// sameSource reports whether two records come from the same place of the
// notebook.
func sameSource(a, b *plan.Source) bool {
	return a.Place == b.Place && a.Cell == b.Cell && a.Line == b.Line && a.Col == b.Col
}

// readings adds what was measured.
func (s *waterList) readings() {
	s.sectionHead("Readings")
	s.across(prose, "What was measured, and how it compares with the limits for the fish. Ammonia, nitrite and nitrate are counted as nitrogen (N): most test kits show the ion, which reads higher, "+
		"1.3 times for ammonia, 3.3 times for nitrite and 4.4 times for nitrate.")
	first, list, checks := s.begin(s.book.readingColumns()), s.book.plan.Readings, s.book.readingChecks()
	s.reserve(len(list))
	for i, r := range list {
		s.readingLine(r, checks[i])
	}
	s.end(s.next() - 1)
	if outcome := len(s.at) - 1; s.has(outcome) {
		s.coloured = append(s.coloured, fmt.Sprintf("%s%d:%s%d", s.col(outcome), first, s.col(outcome), s.next()-1))
	}
}

func (s *waterList) readingLine(r *plan.Reading, check *plan.Check) {
	l := s.look
	cells := []excelize.Cell{s.words(0, r.Tank), l.date(body, r.Date)}
	before, after := s.book.waterMeasures()
	add := func(list []waterMeasure) {
		for i := range list {
			cells = append(cells, l.optional(list[i].of(r), list[i].unit, decimalsFormat(list[i].decimals)))
		}
	}
	add(before)
	cells = append(cells, l.acidity(r.PH))
	add(after)
	outcome, words := "", r.Note
	if check != nil {
		outcome, words = string(check.Outcome), joinText(check.Sentence, r.Note)
	}
	s.line(append(cells, l.words(body, outcome), l.words(wrapped, words))...)
	s.toTheEnd()
}

// acidity is a cell with a pH, empty for none.
func (l *looks) acidity(pH float64) excelize.Cell {
	if pH == 0 {
		return l.words(body, "")
	}
	return l.number(body, pH, decimalsFormat(2))
}
