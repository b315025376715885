package xlsx

import (
	"math"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Columns of Fish, from 1.
const (
	fishTank = iota + 1
	fishSpecies
	fishCommon
	fishCount
	fishLength
	fishMass
	fishAll
	fishOxygen
	fishPeak
	fishLow
	fishHigh
	fishRemark
)

func (b *book) fishColumns() []column {
	var common, remark bool
	for _, f := range b.plan.Fish {
		common, remark = common || f.Common != "", remark || f.Note != ""
	}
	return []column{
		{head: "Tank", min: 12, max: 24, kind: long}, {head: "Species", min: 24, max: 34, kind: long}, {head: "Common name", min: 20, max: 34, kind: long, off: !common},
		{head: "Count", min: 7, max: 9, kind: numeric}, {head: "Length of one (" + b.units.length + ")", min: 11, max: 12, kind: numeric},
		{head: "Mass of one (g)", min: 11, max: 12, kind: numeric}, {head: "Mass of all (g)", min: 9, max: 12, kind: numeric},
		{head: "Oxygen, mean (mg/h)", min: 9, max: 12, kind: numeric}, {head: "Oxygen, peak (mg/h)", min: 9, max: 12, kind: numeric},
		{head: "Dry feed, low (g/d)", min: 9, max: 12, kind: numeric}, {head: "Dry feed, high (g/d)", min: 9, max: 12, kind: numeric},
		{head: "Remark", min: 14, max: 34, kind: long, off: !remark},
	}
}

// fish makes the sheet of the fish.
func (b *book) fish() *sheet {
	s := b.newSheet(fishSheet, b.fishColumns())
	s.top("Fish", "The fish that the notebook plans. Oxygen and feed are those of the whole group, from the mass of its fish; peak is after a meal. "+
		"They are estimates to size air and filter, given to two digits, and no rations.")
	s.note("fish", b.lacking(plan.KindFish), len(b.plan.Fish), "")
	s.listHead()
	s.reserve(len(b.plan.Fish))
	for _, group := range b.plan.Fish {
		b.fishLine(s, group)
	}
	s.list(s.next() - 1)
	return s
}

func (b *book) fishLine(s *sheet, f *plan.Fish) {
	l, u, row := s.look, &b.units, s.next()
	all := l.words(body, "")
	if grams, ok := in(f.Mass, "g"); ok {
		all = l.formula(body, cellName(s.at[fishCount-1], row)+"*"+cellName(s.at[fishMass-1], row), float64(f.Count)*grams, decimalsFormat(1))
	}
	s.line(s.words(fishTank-1, f.Tank), s.words(fishSpecies-1, f.Species), s.words(fishCommon-1, f.Common), l.count(float64(f.Count)),
		l.quantityIn(f.Length, u.length, u.lengthFormat), l.quantityIn(f.Mass, "g", decimalsFormat(2)), all,
		l.twoDigits(f.Oxygen, "mg/h"), l.twoDigits(f.OxygenPeak, "mg/h"), l.twoDigits(f.FeedLow, "g/d"), l.twoDigits(f.FeedHigh, "g/d"), s.words(fishRemark-1, f.Note))
}

// twoDigits is a cell with an estimate, rounded to two significant digits.
func (l *looks) twoDigits(q quantity.Quantity, unit string) excelize.Cell {
	v, ok := in(q, unit)
	if !ok {
		return l.words(body, q.Short())
	}
	v, decimals := twoDigits(v)
	return l.number(body, v, decimalsFormat(decimals))
}

// twoDigits rounds a number to two significant digits and gives the decimals
// that show them.
func twoDigits(v float64) (rounded float64, decimals int) {
	a := math.Abs(v)
	if a < 1e-6 || a > 1e12 || math.IsNaN(v) {
		return v, 0
	}
	decimals = 1 - int(math.Floor(math.Log10(a)))
	if decimals >= 0 {
		v = quantity.Round(v, decimals)
	} else {
		step := math.Pow10(-decimals)
		v = math.Round(v/step) * step
	}
	if math.Abs(v) >= math.Pow10(2-decimals) { // 9.96 became 10
		decimals--
	}
	return v, max(decimals, 0)
}
