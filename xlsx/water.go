package xlsx

import (
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// waterKinds are the kinds of records that the sheet of the water shows.
var waterKinds = []plan.Kind{plan.KindWaterPlan, plan.KindReading, plan.KindWaterSource, plan.KindNitrate, plan.KindFilter}

// waterTables counts the tables of the sheet of the water; without one there is
// no such sheet.
func (b *book) waterTables() int {
	n := len(b.plan.WaterPlans)
	for _, records := range []int{len(b.plan.Readings), len(b.plan.WaterSources), len(b.plan.Nitrates), len(b.plan.Filters)} {
		if records > 0 {
			n++
		}
	}
	return n
}

// waterList is the sheet of the water in the making.
type waterList struct {
	*sheet
	book     *book
	only     bool     // it has one table, whose header stays in sight
	coloured []string // the cells with outcomes
}

// water makes the sheet of the water: a table for each plan of its salinity, and
// one for each other kind of record.
func (b *book) water() *sheet {
	s := &waterList{sheet: b.newSheet(waterSheet, b.waterGrid()), book: b, only: b.waterTables() == 1}
	s.top("Water", "What is planned for the water and what was measured in it. Salinity is in ppt: grams of salt in a kilogram of water. "+
		"Fish and the bacteria of the filter decide the pace: test ammonia and nitrite daily while the salinity changes, and where they show or a fish ails, the next step waits. A vet helps with an ailing fish.")
	s.note("records of the water", b.lacking(waterKinds...), b.waterTables(), "")
	for i, w := range b.plan.WaterPlans {
		s.gap(i)
		s.saltPlan(w)
	}
	tables := len(b.plan.WaterPlans)
	for _, t := range []struct {
		records int
		add     func()
	}{{len(b.plan.Readings), s.readings}, {len(b.plan.WaterSources), s.sources}, {len(b.plan.Nitrates), s.nitrates}, {len(b.plan.Filters), s.filters}} {
		if t.records == 0 {
			continue
		}
		s.gap(tables)
		t.add()
		tables++
	}
	if !s.only {
		s.frozen = 1 // the tables have headers of their own
	}
	s.after = s.colour
	return s.sheet
}

// gap keeps a table away from the one above it.
func (s *waterList) gap(above int) {
	if above > 0 {
		s.skip(1)
	}
}

// leastGrid is how many columns the facts above a plan's steps take.
const leastGrid = 9

// waterGrid gives columns for the widest table; each table lays its own over
// them.
func (b *book) waterGrid() []column {
	tables := [][]column{b.readingColumns(), b.sourceColumns(), nitrateColumns(), b.filterColumns()}
	for _, w := range b.plan.WaterPlans {
		tables = append(tables, b.saltColumns(w))
	}
	n := leastGrid
	for _, t := range tables {
		on := 0
		for _, c := range t {
			if !c.off {
				on++
			}
		}
		n = max(n, on)
	}
	grid := make([]column, n)
	for i := range grid {
		grid[i] = column{min: 10, max: 15}
	}
	grid[0] = column{min: 14, max: 24, kind: long}
	grid[n-1].min = 16
	return grid
}

// begin adds the header row of a table; it stays in sight when it is the only
// one. The number of the table's first row is given.
func (s *waterList) begin(columns []column) (first int) {
	row := s.layout(columns)
	if last := len(columns); columns[last-1].kind == long && s.has(last) {
		s.stretch(s.at[last-1])
		s.rows[row-1].spread = 0 // the height is that of the headers
	}
	if s.only {
		s.frozen, s.repeat = row, row
	}
	return row + 1
}

// end closes a table, whose last row is given.
func (s *waterList) end(last int) {
	if s.only {
		s.list(last)
	}
}

// toTheEnd makes the last cell of a table's row reach to the end of the sheet.
func (s *waterList) toTheEnd() {
	if last := len(s.at); s.has(last) {
		s.stretch(s.at[last-1])
	}
}

// colour colours the outcomes.
func (s *waterList) colour(b *book) error {
	for _, cells := range s.coloured {
		if err := b.colourOutcomes(waterSheet, cells); err != nil {
			return err
		}
	}
	return nil
}

// volumeWords writes a volume in the workbook's unit.
func (b *book) volumeWords(q quantity.Quantity) string {
	v, ok := in(q, b.units.volume)
	if !ok {
		return q.Short()
	}
	return quantity.Must(v, b.units.volume).Short()
}
