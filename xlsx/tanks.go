package xlsx

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Columns of Tanks, from 1.
const (
	tankName = iota + 1
	tankRoom
	tankRack
	tankTier
	tankLength
	tankWidth
	tankHeight
	tankGlass
	tankFill
	tankWater
	tankEmpty
	tankFilled
	tankSalinity
	tankTemperature
	tankDefaults
	tankRemark
)

// tankUnits are the units of the sheet, after those that the notebook uses.
type tankUnits struct {
	length, lengthFormat string
	glass, glassFormat   string
	temperature, degrees string
}

// tanksUnits chooses inches where most tanks are given in inches or feet, and
// the temperature scale of the first tank.
func (b *book) tanksUnits() tankUnits {
	u := tankUnits{"cm", decimalsFormat(1), "mm", decimalsFormat(1), "degC", "°C"}
	inches := 0
	for _, t := range b.plan.Tanks {
		switch t.Length.Unit().Symbol() {
		case "in", "ft", "yd":
			inches++
		}
	}
	if 2*inches > len(b.plan.Tanks) {
		u.length, u.lengthFormat, u.glass, u.glassFormat = "in", decimalsFormat(2), "in", decimalsFormat(3)
	}
	if len(b.plan.Tanks) > 0 && b.plan.Tanks[0].Temperature.Unit().Symbol() == "degF" {
		u.temperature, u.degrees = "degF", "°F"
	}
	return u
}

// tanksFirst is the row of the first tank.
const tanksFirst = 6

// tanks makes the sheet of tanks and fish.
func (b *book) tanks() *sheet {
	u := b.tanksUnits()
	s := b.newSheet(tanksSheet, tankColumns(u))
	last := max(tanksFirst+len(b.plan.Tanks)-1, tanksFirst)
	s.top("Tanks", "Every tank with its outside measures, the water it holds filled to its line, and what it weighs. "+
		"Filled is glass, substrate, rock and water together; stand, lid and equipment come on top. Where a measure was not given, the last columns say what was taken instead.")
	if len(b.plan.Tanks) == 0 {
		s.across(prose, "The notebook has no tanks.")
	} else {
		s.skip(1)
	}
	b.tankSums(s, last)
	s.listHead()
	s.reserve(len(b.plan.Tanks) + len(b.plan.Fish))
	for _, t := range b.plan.Tanks {
		b.tankLine(s, t, u)
	}
	if len(b.plan.Tanks) == 0 {
		s.skip(1)
	}
	s.list(last)
	b.fish(s, u)
	return s
}

func tankColumns(u tankUnits) []column {
	measure := func(words, unit string, least int) column {
		return column{head: words + " (" + unit + ")", min: least, max: least + 5, kind: numeric}
	}
	return []column{
		{head: "Tank", min: 14, max: 24, kind: long}, {head: "Room", min: 10, max: 24, kind: long}, {head: "Rack", min: 10, max: 20, kind: long},
		{head: "Tier", min: 6, max: 9, kind: numeric}, measure("Length", u.length, 8), measure("Width", u.length, 8), measure("Height", u.length, 8),
		measure("Glass", u.glass, 9), measure("Fill", u.length, 9), measure("Water", "L", 9), measure("Empty", "kg", 9), measure("Filled", "kg", 9),
		measure("Salinity", "g/kg", 10), measure("Water", u.degrees, 11),
		{head: "Taken where not given", min: 24, max: 40, kind: long}, {head: "Remark", min: 14, max: 34, kind: long},
	}
}

// tankSums adds the sums right above the columns that they sum.
func (b *book) tankSums(s *sheet, last int) {
	var water, empty, filled float64
	for _, t := range b.plan.Tanks {
		water, empty, filled = water+orZero(t.Water, "L"), empty+orZero(t.Empty, "kg"), filled+orZero(t.Filled, "kg")
	}
	l, row := s.look, s.next()
	cells := make([]excelize.Cell, tankFilled)
	cells[tankName-1] = l.words(label, "All tanks")
	for _, sum := range []struct {
		col   int
		value float64
	}{{tankWater, water}, {tankEmpty, empty}, {tankFilled, filled}} {
		cells[sum.col-1] = l.formula(strong, fmt.Sprintf("SUM(%s)", area(sum.col, tanksFirst, last)), sum.value, decimalsFormat(1))
		s.measure(sum.col-1, &cells[sum.col-1])
	}
	s.one(cells...)
	if len(b.plan.Tanks) > 0 {
		b.figures.water = at(tanksSheet, tankWater, row, water)
		b.figures.filled = at(tanksSheet, tankFilled, row, filled)
	}
}

func orZero(q quantity.Quantity, unit string) float64 {
	v, _ := in(q, unit)
	return v
}

// tankLine adds one tank.
func (b *book) tankLine(s *sheet, t *plan.Tank, u tankUnits) {
	l, tenth := s.look, decimalsFormat(1)
	tier := l.words(body, "")
	if t.Tier > 0 {
		tier = l.count(float64(t.Tier))
	}
	salinity := l.quantityIn(t.Salinity, "ppt", tenth)
	s.fit(s.words(tankName-1, t.Name), s.words(tankRoom-1, t.Room), s.words(tankRack-1, t.Rack), tier,
		l.quantityIn(t.Length, u.length, u.lengthFormat), l.quantityIn(t.Width, u.length, u.lengthFormat), l.quantityIn(t.Height, u.length, u.lengthFormat),
		l.quantityIn(t.Glass, u.glass, u.glassFormat), l.quantityIn(t.Fill, u.length, u.lengthFormat),
		l.quantityIn(t.Water, "L", tenth), l.quantityIn(t.Empty, "kg", tenth), l.quantityIn(t.Filled, "kg", tenth),
		salinity, l.quantityIn(t.Temperature, u.temperature, tenth),
		s.words(tankDefaults-1, strings.Join(t.Defaults, "; ")), s.words(tankRemark-1, t.Note))
}
