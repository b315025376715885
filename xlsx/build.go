package xlsx

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// Columns of Build, from 1.
const (
	buildNumber = iota + 1
	buildStep
	buildAfter
	buildPeople
	buildTime
	buildWork
	buildWait
	buildPhase
	buildTank
	buildRemark
)

// buildAbove counts the rows above the list: name, sentences, a note, the sums
// and the headers.
const buildAbove = 5

// build makes the sheet of the work.
func (b *book) build() *sheet {
	s := b.newSheet(buildSheet, b.buildColumns())
	steps := slices.Clone(b.plan.Steps)
	slices.SortStableFunc(steps, func(a, b *plan.Step) int { return cmp.Compare(a.Order, b.Order) })
	first := buildAbove + b.bannerRows() + 1
	last := max(first+len(steps)-1, first)
	s.top("Build", "The steps of the work in an order in which they can be done: each stands below those it comes after. "+
		"Work of all hands is the time times the people at it. Waiting is time that passes without work, such as silicone that cures. Steps that do not wait for each other may run at the same time.")
	s.note("steps of work", b.lacking(plan.KindStep), len(steps), "")
	s.buildSums(steps, first, last)
	s.listHead()
	for i, step := range steps {
		b.stepLine(s, i+1, step)
	}
	if len(steps) == 0 {
		s.skip(1)
	}
	s.list(last)
	return s
}

func (b *book) buildColumns() []column {
	var after, wait, phase, tank, remark bool
	for _, step := range b.plan.Steps {
		after, wait, phase = after || len(step.After) > 0, wait || step.Wait.Has, phase || step.Phase != ""
		tank, remark = tank || step.Tank != "", remark || step.Note != ""
	}
	return []column{
		{head: "No.", min: 5, max: 9, kind: numeric}, {head: "Step", min: 34, max: 50, kind: long}, {head: "After", min: 24, max: 40, kind: long, off: !after},
		{head: "People", min: 8, max: 9, kind: numeric}, {head: "Time it takes (h)", min: 12, max: 13, kind: numeric}, {head: "Work of all hands (h)", min: 11, max: 14, kind: numeric},
		{head: "Waiting (d)", min: 10, max: 12, kind: numeric, off: !wait},
		{head: "Phase", min: 12, max: 22, kind: long, off: !phase}, {head: "Tank", min: 12, max: 20, kind: long, off: !tank}, {head: "Remark", min: 28, max: 44, kind: long, off: !remark},
	}
}

// buildSums adds the sums right above the columns that they sum.
func (s *sheet) buildSums(steps []*plan.Step, first, last int) {
	work, wait := 0.0, 0.0
	for _, step := range steps {
		work += stepTime(step) * float64(hands(step))
		if step.Wait.Has {
			wait += orZero(step.Wait.Q, "d")
		}
	}
	sums := map[int]excelize.Cell{}
	for i, value := range []float64{work, wait} {
		if number := []int{buildWork, buildWait}[i]; s.has(number) {
			sums[number] = s.look.formula(strong, fmt.Sprintf("SUM(%s)", s.area(number, first, last)), value, decimalsFormat(1))
		}
	}
	s.sumRow(buildStep, "All steps added up", sums)
}

// hands gives the number of people at a step.
func hands(step *plan.Step) int { return max(step.People, 1) }

// stepTime gives the hours of work that a step takes its people.
func stepTime(step *plan.Step) float64 {
	if !step.Work.Has {
		return 0
	}
	return orZero(step.Work.Q, "h")
}

// stepLine adds one step.
func (b *book) stepLine(s *sheet, number int, step *plan.Step) {
	l, row := s.look, s.next()
	work := l.words(body, "")
	if step.Work.Has {
		formula := cellName(s.at[buildPeople-1], row) + "*" + cellName(s.at[buildTime-1], row)
		work = l.formula(body, formula, stepTime(step)*float64(hands(step)), decimalsFormat(1))
	}
	s.line(l.count(float64(number)), s.words(buildStep-1, step.Name), s.words(buildAfter-1, strings.Join(step.After, "; ")), l.count(float64(hands(step))),
		l.optional(step.Work, "h", decimalsFormat(1)), work, l.optional(step.Wait, "d", decimalsFormat(1)),
		s.words(buildPhase-1, step.Phase), s.words(buildTank-1, step.Tank), s.words(buildRemark-1, step.Note))
}

// optional is a cell with a quantity that may be absent.
func (l *looks) optional(o plan.Optional, unit, format string) excelize.Cell {
	if !o.Has {
		return l.words(body, "")
	}
	return l.quantityIn(o.Q, unit, format)
}
