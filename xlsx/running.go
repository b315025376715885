package xlsx

import (
	"fmt"
	"strconv"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// Columns of Running cost, from 1.
const (
	runKind = iota + 1
	runName
	runTank
	runGroup
	runCircuit
	runPower
	runCount
	runHours
	runEnergy
	runAmount
	runEvery
	runMonth
	runYear
	runRemark
)

// The kinds of running costs.
const (
	kindElectricity = "electricity"
	kindOther       = "other cost"
)

func (b *book) runningColumns() []column {
	return []column{
		{head: "Kind", min: 12, max: 14}, {head: "What", min: 30, max: 44, kind: long}, {head: "Tank", min: 15, max: 20, kind: long},
		{head: "Group", min: 10, max: 18, kind: long}, {head: "Circuit", min: 10, max: 18, kind: long}, {head: "Power of each (W)", min: 10, max: 14, kind: numeric},
		{head: "Count", min: 8, max: 10, kind: numeric}, {head: "Hours a day (h)", min: 8, max: 10, kind: numeric}, {head: "Energy a day (kWh)", min: 12, max: 16, kind: numeric},
		{head: b.unitHead("Amount"), min: 12, max: 18, kind: numeric}, {head: "Every (d)", min: 9, max: 12, kind: numeric}, {head: b.unitHead("A month"), min: 13, max: 18, kind: numeric},
		{head: b.unitHead("A year"), min: 13, max: 18, kind: numeric}, {head: "Remark", min: 18, max: 36, kind: long},
	}
}

// runningFirst is the row of the first line.
const runningFirst = 9

// runningLine is a line worked out.
type runningLine struct {
	energy, month float64
	priced        bool
}

// daysPerMonth is that of a year of 365 days.
const daysPerMonth = 365.0 / 12

// running makes the sheet of costs that come back.
func (b *book) running() *sheet {
	s := b.newSheet(runningSheet, b.runningColumns())
	loads, others := b.plan.Loads, b.plan.Running
	last := max(runningFirst+len(loads)+len(others)-1, runningFirst)
	s.top("Running cost", "What the room takes month by month: electricity, worked out from power, count and hours, and the other costs that come back. "+
		"A year has 365 days and a month is a twelfth of it. Costs are shown to the smallest coin and added up in full.")
	b.figures.unpriced = len(loads) > 0 && !b.inputs.hasPrice
	b.runningNotice(s)
	sums := b.runningTotals()
	b.runningSums(s, sums, last)
	s.skip(1)
	s.listHead()
	s.reserve(len(loads) + len(others))
	for i, load := range loads {
		b.loadLine(s, load, sums.loads[i])
	}
	for i, cost := range others {
		b.costLine(s, cost, sums.others[i])
	}
	if len(loads)+len(others) == 0 {
		s.skip(1)
	}
	s.list(last)
	b.runningGroups(s, sums, last)
	return s
}

func (b *book) runningNotice(s *sheet) {
	switch {
	case len(b.plan.Loads)+len(b.plan.Running) == 0:
		s.across(prose, "The notebook has no running costs.")
	case b.figures.unpriced:
		s.across(alarm, "The notebook gives no price of electricity: the sums have the other costs only.")
	default:
		s.across(prose, "The price of electricity stands on the sheet “"+startSheet+"”. A line with hours a day that vary is a guess: a meter at the plug tells.")
	}
}

// runningSum is every line worked out, and the sums over them.
type runningSum struct {
	loads, others                     []runningLine
	energy, month, electricity, other float64
}

func (b *book) runningTotals() runningSum {
	var sum runningSum
	for _, load := range b.plan.Loads {
		line := b.loadCost(load)
		sum.loads = append(sum.loads, line)
		sum.energy += line.energy
		sum.electricity += line.month
		sum.month += line.month
	}
	for _, cost := range b.plan.Running {
		line := b.otherCost(cost)
		sum.others = append(sum.others, line)
		sum.other += line.month
		sum.month += line.month
	}
	return sum
}

func (b *book) loadCost(load *plan.Load) runningLine {
	watts, ok := in(load.Power, "W")
	hours, known := in(load.Hours, "h/d")
	if !ok || !known {
		return runningLine{}
	}
	line := runningLine{energy: watts / 1000 * float64(load.Count) * hours, priced: b.inputs.hasPrice}
	line.month = line.energy * 365 / 12 * b.inputs.electricity
	return line
}

func (b *book) otherCost(cost *plan.Running) runningLine {
	days, ok := in(cost.Every, "d")
	if !ok || days <= 0 || !b.isOwn(cost.Amount) {
		return runningLine{}
	}
	return runningLine{month: cost.Amount.Value() * daysPerMonth / days, priced: true}
}

// runningSums adds the three rows of sums in two columns.
func (b *book) runningSums(s *sheet, sum runningSum, last int) {
	top := s.next()
	month, kinds := area(runMonth, runningFirst, last), area(runKind, runningFirst, last)
	byKind := func(kind string) string { return fmt.Sprintf("SUMIFS(%s,%s,%q)", month, kinds, kind) }
	b.runningSumRow(s, "All together, a month", fmt.Sprintf("SUM(%s)", month), sum.month,
		"Energy a day (kWh)", fmt.Sprintf("SUM(%s)", area(runEnergy, runningFirst, last)), sum.energy, decimalsFormat(2))
	b.runningSumRow(s, "of that, electricity", byKind(kindElectricity), sum.electricity,
		"Energy a year (kWh)", fixed(runEnergy, top)+"*365", sum.energy*365, decimalsFormat(0))
	b.runningSumRow(s, "of that, other costs", byKind(kindOther), sum.other,
		"All together, a year", fixed(runTank, top)+"*12", sum.month*12, s.look.money)
	b.figures.month = at(runningSheet, runTank, top, sum.month)
}

func (b *book) runningSumRow(s *sheet, left, leftFormula string, leftValue float64, right, rightFormula string, rightValue float64, format string) {
	l := s.look
	cells := make([]excelize.Cell, runEnergy)
	cells[runName-1] = l.words(label, left)
	cells[runTank-1] = l.formula(strong, leftFormula, leftValue, l.money)
	cells[runGroup-1] = l.words(caption, right)
	cells[runEnergy-1] = l.formula(strong, rightFormula, rightValue, format)
	row := s.one(cells...)
	s.merges = append(s.merges, [2]string{cellName(runGroup, row), cellName(runHours, row)})
	s.measure(runTank-1, &cells[runTank-1])
	s.measure(runEnergy-1, &cells[runEnergy-1])
}

// loadLine adds one load.
func (b *book) loadLine(s *sheet, load *plan.Load, line runningLine) {
	l, n := s.look, strconv.Itoa(s.next())
	none := l.words(body, "")
	energy, month, year := none, none, none
	if _, known := in(load.Hours, "h/d"); known {
		energy = l.formula(body, "F"+n+"/1000*G"+n+"*H"+n, line.energy, decimalsFormat(3))
	}
	if line.priced {
		month = l.formula(body, "I"+n+"*365/12*"+electricityName, line.month, l.money)
		year = l.formula(body, "L"+n+"*12", line.month*12, l.money)
	}
	power := l.reading(load.Power, "W")
	if formula, ok := b.follow(load.Power, "W", s.name, s.name); ok {
		power.Formula = formula
	}
	s.fit(l.words(body, kindElectricity), s.words(runName-1, load.Name), s.words(runTank-1, load.Tank), s.words(runGroup-1, load.Group),
		s.words(runCircuit-1, load.Circuit), power, l.count(float64(load.Count)), l.reading(load.Hours, "h/d"), energy,
		none, none, month, year, s.words(runRemark-1, load.Note))
}

// costLine adds one other cost.
func (b *book) costLine(s *sheet, cost *plan.Running, line runningLine) {
	l, n := s.look, strconv.Itoa(s.next())
	none := l.words(body, "")
	month, year := l.words(body, "not added up"), none
	if line.priced {
		month = l.formula(body, "J"+n+"*365/12/K"+n, line.month, l.money)
		year = l.formula(body, "L"+n+"*12", line.month*12, l.money)
	}
	s.fit(l.words(body, kindOther), s.words(runName-1, cost.Name), s.words(runTank-1, cost.Tank), none, none, none, none, none, none,
		b.priceCell(s, cost.Amount), l.reading(cost.Every, "d"), month, year, s.words(runRemark-1, cost.Note))
}

// runningGroups adds the sums by group and by tank below the list.
func (b *book) runningGroups(s *sheet, sum runningSum, last int) {
	if len(b.plan.Loads)+len(b.plan.Running) == 0 {
		return
	}
	kinds, sets, tanks := newGroups(), newGroups(), newGroups()
	for i, load := range b.plan.Loads {
		line := sum.loads[i]
		kinds.add(kindElectricity, line.energy, line.month, line.month*12)
		sets.add(clean(load.Group), line.energy, line.month, line.month*12)
		tanks.add(clean(load.Tank), line.energy, line.month, line.month*12)
	}
	for i, cost := range b.plan.Running {
		line := sum.others[i]
		kinds.add(kindOther, 0, line.month, line.month*12)
		sets.add("", 0, line.month, line.month*12)
		tanks.add(clean(cost.Tank), 0, line.month, line.month*12)
	}
	t := groupTable{title: "Sums by kind", by: runKind, first: runningFirst, last: last, sums: []groupSum{
		{runEnergy, "Energy a day (kWh)", decimalsFormat(3), -1},
		{runMonth, b.unitHead("A month"), s.look.money, -1}, {runYear, b.unitHead("A year"), s.look.money, -1},
	}}
	s.table(t, kinds)
	if sets.named() > 0 {
		t.title, t.unnamed, t.by = "Sums by group", "without a group", runGroup
		s.table(t, sets)
	}
	if tanks.named() > 0 {
		t.title, t.unnamed, t.by = "Sums by tank", "for no single tank", runTank
		s.table(t, tanks)
	}
}
