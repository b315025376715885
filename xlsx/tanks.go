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

// tankUnits are the units of tanks and fish, after those that the notebook
// uses.
type tankUnits struct {
	length, lengthFormat string
	glass, glassFormat   string
	temperature, degrees string
	volume, mass         string
}

// tanksUnits chooses inches, US gallons and pounds where most tanks are given in
// inches or feet, and the temperature scale of the first tank.
func tanksUnits(tanks []*plan.Tank) tankUnits {
	u := tankUnits{"cm", decimalsFormat(1), "mm", decimalsFormat(1), "degC", "°C", "L", "kg"}
	inches := 0
	for _, t := range tanks {
		switch t.Length.Unit().Symbol() {
		case "in", "ft", "yd":
			inches++
		}
	}
	if 2*inches > len(tanks) {
		u.length, u.lengthFormat, u.glass, u.glassFormat = "in", decimalsFormat(2), "in", decimalsFormat(3)
		u.volume, u.mass = "gal", "lb"
	}
	if len(tanks) > 0 && tanks[0].Temperature.Unit().Symbol() == "degF" {
		u.temperature, u.degrees = "degF", "°F"
	}
	return u
}

// tanksAbove counts the rows above the list: name, sentences, a note, the sums
// and the headers.
const tanksAbove = 5

// tanks makes the sheet of tanks.
func (b *book) tanks() *sheet {
	s := b.newSheet(tanksSheet, b.tankColumns())
	first := tanksAbove + b.bannerRows() + 1
	last := max(first+len(b.plan.Tanks)-1, first)
	text := "Every tank with its outside measures, the water it holds filled to its line, and what it weighs. " +
		"Filled is glass, substrate, rock and water together; stand, lid and equipment come on top."
	if !s.has(tankSalinity) && len(b.plan.Tanks) > 0 {
		text += " All tanks here hold fresh water."
	}
	s.top("Tanks", text)
	s.note("tanks", b.lacking(plan.KindTank), len(b.plan.Tanks), "")
	b.tankSums(s, first, last)
	s.listHead()
	s.reserve(len(b.plan.Tanks))
	rooms := b.rackRooms()
	for _, t := range b.plan.Tanks {
		b.tankLine(s, t, rooms)
	}
	if len(b.plan.Tanks) == 0 {
		s.skip(1)
	}
	s.list(last)
	return s
}

// rackRooms gives the room of every rack: a tank stands where its rack does.
func (b *book) rackRooms() map[string]string {
	rooms := map[string]string{}
	for _, rack := range b.plan.Racks {
		rooms[rack.Name] = rack.Room
	}
	return rooms
}

// roomOf gives the room of a tank, its own or that of its rack.
func roomOf(t *plan.Tank, rooms map[string]string) string {
	if t.Room != "" || t.Rack == "" {
		return t.Room
	}
	return rooms[t.Rack]
}

func (b *book) tankColumns() []column {
	u, rooms := b.units, b.rackRooms()
	var room, rack, tier, salty, defaults, remark bool
	for _, t := range b.plan.Tanks {
		room, rack, tier = room || roomOf(t, rooms) != "", rack || t.Rack != "", tier || t.Tier > 0
		salty, defaults, remark = salty || t.Salinity.Value() != 0, defaults || len(t.Defaults) > 0, remark || t.Note != ""
	}
	measure := func(words, unit string, least int) column {
		return column{head: words + " (" + unit + ")", min: least, max: least + 5, kind: numeric}
	}
	salinity := measure("Salinity", "g/kg", 10)
	salinity.off = !salty
	return []column{
		{head: "Tank", min: 14, max: 24, kind: long}, {head: "Room", min: 10, max: 24, kind: long, off: !room}, {head: "Rack", min: 10, max: 20, kind: long, off: !rack},
		{head: "Tier", min: 6, max: 9, kind: numeric, off: !tier}, measure("Length", u.length, 8), measure("Width", u.length, 8), measure("Height", u.length, 8),
		measure("Glass", u.glass, 8), measure("Fill", u.length, 8), measure("Water", u.volume, 9), measure("Empty", u.mass, 9), measure("Filled", u.mass, 9),
		salinity, measure("Water", u.degrees, 9),
		{head: "Taken where not given", min: 24, max: 46, kind: long, off: !defaults}, {head: "Remark", min: 14, max: 34, kind: long, off: !remark},
	}
}

// tankSums adds the sums right above the columns that they sum.
func (b *book) tankSums(s *sheet, first, last int) {
	var water, empty, filled float64
	for _, t := range b.plan.Tanks {
		water, empty, filled = water+orZero(t.Water, b.units.volume), empty+orZero(t.Empty, b.units.mass), filled+orZero(t.Filled, b.units.mass)
	}
	sum := func(number int, value float64) excelize.Cell {
		return s.look.formula(strong, fmt.Sprintf("SUM(%s)", s.area(number, first, last)), value, decimalsFormat(1))
	}
	row := s.sumRow(tankName, "All tanks", map[int]excelize.Cell{tankWater: sum(tankWater, water), tankEmpty: sum(tankEmpty, empty), tankFilled: sum(tankFilled, filled)})
	if len(b.plan.Tanks) > 0 {
		b.figures.water = at(tanksSheet, s.at[tankWater-1], row, water)
		b.figures.filled = at(tanksSheet, s.at[tankFilled-1], row, filled)
	}
}

func orZero(q quantity.Quantity, unit string) float64 {
	v, _ := in(q, unit)
	return v
}

// tankLine adds one tank.
func (b *book) tankLine(s *sheet, t *plan.Tank, rooms map[string]string) {
	l, u, tenth := s.look, &b.units, decimalsFormat(1)
	tier := l.words(body, "")
	if t.Tier > 0 {
		tier = l.count(float64(t.Tier))
	}
	s.line(s.words(tankName-1, t.Name), s.words(tankRoom-1, roomOf(t, rooms)), s.words(tankRack-1, t.Rack), tier,
		l.quantityIn(t.Length, u.length, u.lengthFormat), l.quantityIn(t.Width, u.length, u.lengthFormat), l.quantityIn(t.Height, u.length, u.lengthFormat),
		l.quantityIn(t.Glass, u.glass, u.glassFormat), l.quantityIn(t.Fill, u.length, u.lengthFormat),
		l.quantityIn(t.Water, u.volume, tenth), l.quantityIn(t.Empty, u.mass, tenth), l.quantityIn(t.Filled, u.mass, tenth),
		l.quantityIn(t.Salinity, "ppt", tenth), l.quantityIn(t.Temperature, u.temperature, tenth),
		s.words(tankDefaults-1, strings.Join(t.Defaults, "; ")), s.words(tankRemark-1, t.Note))
}
