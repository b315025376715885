package xlsx

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Columns of the steps of a plan of salinity, from 1.
const (
	saltNumber = iota + 1
	saltDay
	saltDate
	saltBefore
	saltAfter
	saltGravity
	saltDensity
	saltMix
	saltSoFar
	saltDraw
	saltNew
	saltCost
)

// Columns of the facts above the steps, from 1; those between are for the words.
const (
	factValue = 4
	factNext  = 6
	factOther = 9
)

// saltPrice is the price of the mix of a plan with its cell.
type saltPrice struct {
	value    float64 // for a kilogram
	currency string
	formula  string // set when it follows an assumption
	known    bool
}

// saltPriceOf gives what a kilogram of the mix costs, from the cost of all of
// it.
func (b *book) saltPriceOf(w *plan.WaterPlan) saltPrice {
	kg := orZero(w.Salt, "kg")
	if !w.Cost.Has || kg <= 0 || !w.Cost.Q.Dimension().IsMoney() {
		return saltPrice{}
	}
	p := saltPrice{currency: w.Cost.Q.Dimension().Currency(), known: true}
	p.value = fifteen(orZero(w.Cost.Q, p.currency) / kg)
	unit := p.currency + "/kg"
	if o := w.Cost.Q.Origin(); o != nil && o.Op == '*' {
		if one, err := quantity.New(p.value, unit); err == nil {
			p.formula, _ = b.follow(one.WithOrigin(o.Left), unit, waterSheet, waterSheet)
		}
	}
	return p
}

// mixUnit is the unit in which the mix of a step is weighed.
type mixUnit struct {
	symbol string
	format string
	perKg  string // what a formula divides a number in it by to have kilograms
}

// mixUnitOf weighs in grams where every step takes less than a kilogram.
func mixUnitOf(w *plan.WaterPlan) mixUnit {
	least, most := 0.0, 0.0
	for i, step := range w.Steps {
		kg := orZero(step.Salt, "kg")
		most = max(most, kg)
		if least = min(least, kg); i == 0 {
			least = kg
		}
	}
	switch {
	case most >= 1:
		return mixUnit{"kg", decimalsFormat(3), ""}
	case least >= 0.1:
		return mixUnit{"g", decimalsFormat(0), "/1000"}
	}
	return mixUnit{"g", decimalsFormat(1), "/1000"}
}

// dissolves reports whether a plan draws no water.
func dissolves(w *plan.WaterPlan) bool { return !w.Change.Has }

func (b *book) saltColumns(w *plan.WaterPlan) []column {
	volume, mix, dated := b.units.volume, mixUnitOf(w).symbol, false
	for _, step := range w.Steps {
		dated = dated || step.Date.Has
	}
	number := func(head string) column { return column{head: head, min: 11, kind: numeric} }
	columns := []column{
		number("Step"), number("Day"), number("Date"), number("Salinity before (ppt)"), number("Salinity after (ppt)"),
		number("Specific gravity after (" + degreesWords(w.Reference) + ")"), number("Density after (kg/m3)"), number("Mix to weigh (" + mix + ")"), number("Mix so far (" + mix + ")"),
		number("Water to draw (" + volume + ")"), number("New water to mix (" + volume + ")"), number("Cost of the mix"),
	}
	p := b.saltPriceOf(w)
	columns[saltDate-1].off = !dated
	columns[saltDraw-1].off, columns[saltNew-1].off = dissolves(w), dissolves(w)
	columns[saltCost-1].off = !p.known
	columns[saltCost-1].head += " (" + p.currency + ")"
	return columns
}

// saltPlan adds a plan of salinity: what it is, its sums, and its steps.
func (s *waterList) saltPlan(w *plan.WaterPlan) {
	name := w.Name
	if w.Tank == "" {
		name = capital(name)
	}
	s.sectionHead(fmt.Sprintf("%s: salinity from %s to %s", name, w.From.Short(), w.To.Short()))
	s.across(prose, s.book.saltWords(w))
	t := saltTable{waterList: s, plan: w, price: s.book.saltPriceOf(w), unit: mixUnitOf(w), columns: s.book.saltColumns(w)}
	s.all, s.at = t.columns, placed(t.columns)
	t.first = s.next() + factRows + 1
	t.last = max(t.first+len(w.Steps)-1, t.first)
	t.facts()
	s.begin(t.columns)
	s.reserve(len(w.Steps))
	for i := range w.Steps {
		t.step(&w.Steps[i])
	}
	if len(w.Steps) == 0 {
		s.add(s.look.words(body, "no step is needed"))
	}
	s.end(t.last)
}

// saltWords says in words how a plan changes the salinity, and why not at once.
func (b *book) saltWords(w *plan.WaterPlan) string {
	text := fmt.Sprintf("Method: %s. ", w.Method)
	if dissolves(w) {
		text += fmt.Sprintf("At each step, every %s, the mix is dissolved into the %s of the tank through its sump; no water is drawn.", w.Every.Short(), b.volumeWords(w.Water))
	} else {
		text += fmt.Sprintf("At each step, every %s, %s of the %s of water are drawn and as much new water with the mix in it is filled in.", w.Every.Short(), strings.ReplaceAll(w.Change.Q.Short(), " %", "%"), b.volumeWords(w.Water))
	}
	if orZero(w.Direct, "kg") > 0 {
		text += " The amount for all at once stands here for comparison only:"
	} else {
		text += " It is not done all at once:"
	}
	text += " neither the fish nor the bacteria of the filter would bear the jump. They bear small steps."
	if w.Cost.Has && !b.inputs.taxIncluded {
		text += " The cost is without tax."
	}
	return text
}

// saltTable is a plan of salinity with the place of its steps.
type saltTable struct {
	*waterList
	plan        *plan.WaterPlan
	price       saltPrice
	unit        mixUnit
	columns     []column
	first, last int
	priceAt     string // address of the price's cell
	soFar       float64
}

// factRows is how many rows the facts above the steps take.
const factRows = 4

// facts adds the sums and dates of a plan, two in a row.
func (t *saltTable) facts() {
	l, w := t.look, t.plan
	mix, draw, cost := t.sums()
	firstDay, finish, direct := t.none("not given"), t.none("not given"), t.none("none")
	if len(w.Steps) > 0 && w.Steps[0].Date.Has {
		firstDay = l.date(strong, w.Steps[0].Date.Date)
	}
	if w.Finish.Has {
		finish = l.date(strong, w.Finish.Date)
	}
	if kg := orZero(w.Direct, "kg"); kg > 0 {
		direct = l.number(strong, kg, decimalsFormat(3))
	}
	price, priceWords := t.priceCell()
	t.priceAt = fixed(factOther, t.next()+2)
	t.fact("Mix to weigh in all (kg)", mix, "First step", firstDay)
	t.fact("All at once it would be (kg)", direct, "Last step", finish)
	t.fact("Water to draw in all ("+t.book.units.volume+")", draw, priceWords, price)
	t.fact("Days from first to last step", l.number(strong, w.Days, decimalsFormat(max(readingDecimals(w.Days), 0))), "Cost of the mix, all steps", cost)
}

// none is a word where a fact is missing.
func (t *saltTable) none(word string) excelize.Cell {
	c := t.look.words(strong, word)
	c.StyleID = t.look.id(strong, generalFormat)
	return c
}

// fact adds a row with two facts.
func (t *saltTable) fact(words string, value excelize.Cell, other string, second excelize.Cell) {
	cells := make([]excelize.Cell, len(t.sheet.columns))
	for i := range cells[:factOther] {
		cells[i] = t.look.words(body, "")
	}
	cells[0], cells[factValue-1], cells[factNext-1], cells[factOther-1] = t.look.words(body, words), value, t.look.words(body, other), second
	t.measure(factValue-1, &value)
	t.measure(factOther-1, &second)
	t.one(cells...)
}

// sums gives the cells with the sums over the steps.
func (t *saltTable) sums() (mix, draw, cost excelize.Cell) {
	l, kg, water := t.look, 0.0, 0.0
	for _, step := range t.plan.Steps {
		kg, water = kg+orZero(step.Salt, "kg"), water+orZero(step.Draw, t.book.units.volume)
	}
	mix = l.formula(strong, "SUM("+t.area(saltMix, t.first, t.last)+")"+t.unit.perKg, kg, decimalsFormat(3))
	draw, cost = t.none("none"), t.none("not worked out")
	if t.has(saltDraw) {
		draw = l.formula(strong, "SUM("+t.area(saltDraw, t.first, t.last)+")", water, decimalsFormat(1))
	}
	if t.has(saltCost) {
		cost = l.formula(strong, "SUM("+t.area(saltCost, t.first, t.last)+")", kg*t.price.value, moneyFormat(t.price.currency))
	}
	return mix, draw, cost
}

// priceCell is the price that the costs follow: an input, or the assumption that
// it is; a word where there is none.
func (t *saltTable) priceCell() (cell excelize.Cell, words string) {
	unit := " (" + t.price.currency + "/kg)"
	if !t.price.known {
		return t.none("not given"), "Price of the mix"
	}
	if t.price.formula != "" {
		return t.look.formula(strong, t.price.formula, t.price.value, generalFormat), "Price, see " + startSheet + unit
	}
	return t.look.number(input, t.price.value, generalFormat), "Price of mix, input" + unit
}

// step adds one step.
func (t *saltTable) step(step *plan.WaterStep) {
	l, n := t.look, strconv.Itoa(t.next())
	mix := orZero(step.Salt, t.unit.symbol)
	t.soFar += mix
	day, cost := l.words(body, ""), l.words(body, "")
	if step.Date.Has {
		day = l.date(body, step.Date.Date)
	}
	if t.price.known {
		cost = l.formula(body, t.col(saltMix)+n+t.unit.perKg+"*"+t.priceAt, orZero(step.Salt, "kg")*t.price.value, decimalsFormat(quantity.MinorDigits(t.price.currency)))
	}
	soFar := l.formula(body, "SUM("+t.fixed(saltMix, t.first)+":"+t.col(saltMix)+n+")", t.soFar, t.unit.format)
	volume, two := t.book.units.volume, decimalsFormat(2)
	t.line(l.count(float64(step.Number)), l.count(step.Day), day, l.quantityIn(step.Before, "ppt", two), l.quantityIn(step.After, "ppt", two),
		l.number(body, step.SG, decimalsFormat(4)), l.quantityIn(step.Density, "kg/m3", decimalsFormat(1)), l.number(body, mix, t.unit.format), soFar,
		l.quantityIn(step.Draw, volume, decimalsFormat(1)), l.quantityIn(step.Mix, volume, decimalsFormat(1)), cost)
}

// degreesWords writes a temperature for people.
func degreesWords(q quantity.Quantity) string {
	return strings.NewReplacer("degC", "°C", "degF", "°F").Replace(q.Short())
}
