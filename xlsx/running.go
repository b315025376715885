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
	runDays
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
	var tank, group, circuit, remark bool
	for _, load := range b.plan.Loads {
		tank, group = tank || load.Tank != "", group || load.Group != ""
		circuit, remark = circuit || load.Circuit != "", remark || load.Note != ""
	}
	for _, cost := range b.plan.Running {
		tank, remark = tank || cost.Tank != "", remark || cost.Note != ""
	}
	noLoad, noCost := len(b.plan.Loads) == 0, len(b.plan.Running) == 0
	return []column{
		{head: "Kind", min: 12, max: 14}, {head: "What", min: 26, max: 44, kind: long}, {head: "Tank", min: 12, max: 20, kind: long, off: !tank},
		{head: "Group", min: 9, max: 18, kind: long, off: !group}, {head: "Circuit", min: 9, max: 18, kind: long, off: !circuit},
		{head: "Power of each (W)", min: 9, max: 14, kind: numeric, off: noLoad}, {head: "Count", min: 6, max: 10, kind: numeric, off: noLoad},
		{head: "Hours a day (h)", min: 9, max: 10, kind: numeric, off: noLoad}, {head: "Energy a day (kWh)", min: 12, max: 16, kind: numeric, off: noLoad},
		{head: b.unitHead("Amount"), min: 11, max: 18, kind: numeric, off: noCost}, {head: "Every", min: 7, max: 12, off: noCost}, {head: "in days", min: 7, max: 9, kind: faintNumeric, off: noCost},
		{head: b.unitHead("A month"), min: 12, max: 18, kind: numeric},
		{head: b.unitHead("A year"), min: 12, max: 18, kind: numeric}, {head: "Remark", min: 18, max: 36, kind: long, off: !remark},
	}
}

// runningAbove counts the rows above the list: name, sentences, a note, three
// rows of sums and the headers.
const runningAbove = 7

// runningList is the sheet of running costs with the place of its list.
type runningList struct {
	*sheet
	first, last int
}

// runningLine is a line worked out.
type runningLine struct {
	energy, month float64
	priced        bool
}

// daysPerMonth is that of a year of 365 days.
const daysPerMonth = 365.0 / 12

// running makes the sheet of costs that come back.
func (b *book) running() *sheet {
	s := runningList{sheet: b.newSheet(runningSheet, b.runningColumns()), first: runningAbove + b.bannerRows() + 1}
	loads, others := b.plan.Loads, b.plan.Running
	s.last = max(s.first+len(loads)+len(others)-1, s.first)
	s.top("Running cost", "What the room takes month by month: electricity, worked out from power, count and hours, and the other costs that come back. "+
		"A year has 365 days and a month is a twelfth of it. Costs are shown to the smallest coin and added up in full.")
	b.figures.unpriced = len(loads) > 0 && !b.inputs.hasPrice
	b.runningNotice(s.sheet)
	sums := b.runningTotals()
	b.runningSums(s, sums)
	s.listHead()
	s.reserve(len(loads) + len(others))
	for i, load := range loads {
		b.loadLine(s.sheet, load, sums.loads[i])
	}
	for i, cost := range others {
		b.costLine(s.sheet, cost, sums.others[i])
	}
	if len(loads)+len(others) == 0 {
		s.skip(1)
	}
	s.list(s.last)
	b.runningGroups(s, sums)
	b.loads = s
	return s.sheet
}

func (b *book) runningNotice(s *sheet) {
	lines, lacks := len(b.plan.Loads)+len(b.plan.Running), b.lacking(plan.KindLoad, plan.KindRunning)
	switch {
	case lacks || lines == 0:
		s.note("running costs", lacks, lines, "")
	case b.figures.unpriced && b.lacking(plan.KindTariff):
		s.across(alarm, "The price of electricity was not worked out: the sums have the other costs only.")
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

// runningSums adds the sums, each right above the column that it sums.
func (b *book) runningSums(s runningList, sum runningSum) {
	l, top := s.look, s.next()
	months, kinds := s.area(runMonth, s.first, s.last), s.area(runKind, s.first, s.last)
	byKind := func(kind string) string { return fmt.Sprintf("SUMIFS(%s,%s,%q)", months, kinds, kind) }
	add := func(text, formula string, month float64, energy bool) {
		cells := map[int]excelize.Cell{
			runMonth: l.formula(strong, formula, month, l.money),
			runYear:  l.formula(strong, s.fixed(runMonth, s.next())+"*12", month*12, l.money),
		}
		if energy && s.has(runEnergy) {
			cells[runEnergy] = l.formula(strong, fmt.Sprintf("SUM(%s)", s.area(runEnergy, s.first, s.last)), sum.energy, decimalsFormat(3))
		}
		if electricity := formula == byKind(kindElectricity); electricity && b.figures.unpriced {
			cells[runMonth], cells[runYear] = l.words(missing, notWorkedOut), l.words(missing, "")
		}
		s.sumRow(runName, text, cells)
	}
	add("All together", fmt.Sprintf("SUM(%s)", months), sum.month, true)
	add("of that, electricity", byKind(kindElectricity), sum.electricity, false)
	add("of that, other costs", byKind(kindOther), sum.other, false)
	b.figures.month = at(runningSheet, s.at[runMonth-1], top, sum.month)
	if s.has(runEnergy) {
		b.figures.energy = at(runningSheet, s.at[runEnergy-1], top, sum.energy)
	}
}

// loadLine adds one load.
func (b *book) loadLine(s *sheet, load *plan.Load, line runningLine) {
	l, n := s.look, strconv.Itoa(s.next())
	none := l.words(body, "")
	energy, month, year := none, none, none
	if _, known := in(load.Hours, "h/d"); known {
		energy = l.formula(body, s.col(runPower)+n+"/1000*"+s.col(runCount)+n+"*"+s.col(runHours)+n, line.energy, decimalsFormat(3))
	}
	if line.priced {
		month = l.formula(body, s.col(runEnergy)+n+"*365/12*"+electricityName, line.month, l.money)
		year = l.formula(body, s.col(runMonth)+n+"*12", line.month*12, l.money)
	}
	power := l.reading(load.Power, "W")
	if formula, ok := b.follow(load.Power, "W", s.name, s.name); ok {
		power.Formula = formula
	}
	s.line(l.words(body, kindElectricity), s.words(runName-1, load.Name), s.words(runTank-1, load.Tank), s.words(runGroup-1, load.Group),
		s.words(runCircuit-1, load.Circuit), power, l.count(float64(load.Count)), l.reading(load.Hours, "h/d"), energy,
		none, none, none, month, year, s.words(runRemark-1, load.Note))
}

// costLine adds one other cost.
func (b *book) costLine(s *sheet, cost *plan.Running, line runningLine) {
	l, n := s.look, strconv.Itoa(s.next())
	none := l.words(body, "")
	month, year := l.words(body, "not added up"), none
	if line.priced {
		month = l.formula(body, s.col(runAmount)+n+"*365/12/"+s.col(runDays)+n, line.month, l.money)
		year = l.formula(body, s.col(runMonth)+n+"*12", line.month*12, l.money)
	}
	days := l.words(faint, "")
	if v, ok := in(cost.Every, "d"); ok {
		days = l.number(faint, v, decimalsFormat(min(max(readingDecimals(v), 0), 1)))
	}
	s.line(l.words(body, kindOther), s.words(runName-1, cost.Name), s.words(runTank-1, cost.Tank), none, none, none, none, none, none,
		b.priceCell(s, cost.Amount), l.words(body, cost.Every.Short()), days, month, year, s.words(runRemark-1, cost.Note))
}

// runningGroups adds the sums by group and by tank below the list.
func (b *book) runningGroups(s runningList, sum runningSum) {
	sets, tanks := newGroups(), newGroups()
	for i, load := range b.plan.Loads {
		line := sum.loads[i]
		sets.add(clean(load.Group), line.energy, line.month, line.month*12)
		tanks.add(clean(load.Tank), line.energy, line.month, line.month*12)
	}
	for i, cost := range b.plan.Running {
		line := sum.others[i]
		sets.add("", 0, line.month, line.month*12)
		tanks.add(clean(cost.Tank), 0, line.month, line.month*12)
	}
	t := groupTable{title: "Sums by group", unnamed: "no group", by: runGroup, first: s.first, last: s.last, sums: []groupSum{
		{runEnergy, decimalsFormat(3), -1}, {runMonth, s.look.money, -1}, {runYear, s.look.money, -1},
	}}
	if s.has(runGroup) {
		s.table(t, sets)
	}
	if s.has(runTank) {
		t.title, t.unnamed, t.by = "Sums by tank", "no tank named", runTank
		s.table(t, tanks)
	}
}
