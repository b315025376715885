package xlsx

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// Columns of Checks, from 1.
const (
	checkOutcome = iota + 1
	checkName
	checkValue
	checkUnit
	checkLimit
	checkWords
	checkTank
	checkRemark
	checkPlace
)

// checksAbove counts the rows above the list: name, sentences, a note, three
// counts and the headers.
const checksAbove = 7

// severity orders outcomes, the worst first.
func severity(o plan.Outcome) int {
	switch o {
	case plan.Fail:
		return 0
	case plan.Caution:
		return 1
	}
	return 2
}

// sortedChecks lists the checks, the failed ones first.
func (b *book) sortedChecks() []*plan.Check {
	list := slices.Clone(b.plan.Checks)
	slices.SortStableFunc(list, func(a, b *plan.Check) int { return cmp.Compare(severity(a.Outcome), severity(b.Outcome)) })
	return list
}

func checkColumns(list []*plan.Check) []column {
	var limit, tank, remark, place bool
	for _, c := range list {
		limit, tank = limit || c.AtLeast.Has || c.AtMost.Has || c.CautionAt.Has, tank || c.Tank != ""
		remark, place = remark || c.Note != "", place || c.Line > 0
	}
	return []column{
		{head: "Outcome", min: 10, max: 12}, {head: "Check", min: 30, max: 42, kind: long}, {head: "Value", min: 9, max: 18, kind: numeric}, {head: "Unit", min: 7, max: 14},
		{head: "Limit", min: 18, max: 26, kind: long, off: !limit}, {head: "In words", min: 40, max: 54, kind: long}, {head: "Tank", min: 10, max: 20, kind: long, off: !tank},
		{head: "Remark", min: 16, max: 34, kind: long, off: !remark}, {head: "notebook line", min: 9, max: 9, kind: faintNumeric, off: !place},
	}
}

// checks makes the sheet of checks.
func (b *book) checks() *sheet {
	list := b.sortedChecks()
	s := b.newSheet(checksSheet, checkColumns(list))
	first := checksAbove + b.bannerRows() + 1
	last := max(first+len(list)-1, first)
	s.top("Checks", "What was looked at, and how it came out, the worst first. Pass: within its limit. Caution: think again, or ask. Fail: do not build it so. "+
		"A pass is no permit: local code and people with a licence have the last word.")
	if b.checksLack() {
		s.across(alarm, "Not all checks are here: a part of the notebook that they need did not run.")
	} else {
		s.note("checks", false, len(list), "")
	}
	top := s.next()
	b.checkCounts(s, list, first, last)
	s.listHead()
	s.reserve(len(list))
	for _, c := range list {
		b.checkLine(s, c)
	}
	if len(list) == 0 {
		s.skip(1)
	}
	s.list(last)
	s.after = func(b *book) error { return b.colourOutcomes(checksSheet, fmt.Sprintf("A%d:A%d", top, last)) }
	return s
}

// checkCounts adds a row for each outcome with the number of checks.
func (b *book) checkCounts(s *sheet, list []*plan.Check, first, last int) {
	counts := map[plan.Outcome]float64{}
	for _, c := range list {
		counts[c.Outcome]++
	}
	for _, o := range []struct {
		outcome plan.Outcome
		to      *figure
	}{{plan.Fail, &b.figures.fail}, {plan.Caution, &b.figures.caution}, {plan.Pass, &b.figures.pass}} {
		formula := fmt.Sprintf("COUNTIF(%s,%q)", s.area(checkOutcome, first, last), string(o.outcome))
		count := s.look.formula(strong, formula, counts[o.outcome], decimalsFormat(0))
		count.StyleID = s.look.id(countLook, decimalsFormat(0))
		if b.checksLack() && counts[o.outcome] == 0 {
			count = s.look.words(countLook, notWorkedOut)
		}
		row := s.add(s.look.words(body, string(o.outcome)), count)
		*o.to = at(checksSheet, s.at[checkName-1], row, counts[o.outcome])
	}
}

// checkLine adds one check.
func (b *book) checkLine(s *sheet, c *plan.Check) {
	l := s.look
	value, unit := l.words(body, ""), l.words(body, "")
	if c.Value.Has {
		value, unit = b.measured(c.Value.Q)
	}
	place := l.words(faint, "")
	if c.Line > 0 {
		place = l.number(faint, float64(c.Line), "0")
	}
	s.line(l.words(body, string(c.Outcome)), s.words(checkName-1, c.Name), value, unit, s.words(checkLimit-1, limitText(c)), s.words(checkWords-1, c.Sentence),
		s.words(checkTank-1, c.Tank), s.words(checkRemark-1, c.Note), place)
}

// limitText puts the limits of a check into words.
func limitText(c *plan.Check) string {
	var parts []string
	for _, limit := range []struct {
		words string
		value plan.Optional
	}{{"at least ", c.AtLeast}, {"at most ", c.AtMost}, {"caution at ", c.CautionAt}} {
		if limit.value.Has {
			parts = append(parts, limit.words+limit.value.Q.Short())
		}
	}
	return strings.Join(parts, "; ")
}

// colourOutcomes colours the words for the outcomes in cells of a sheet.
func (b *book) colourOutcomes(sheet, cells string) error {
	var rules []excelize.ConditionalFormatOptions
	for _, o := range []struct {
		outcome plan.Outcome
		fill    string
	}{{plan.Fail, failFill}, {plan.Caution, careFill}, {plan.Pass, passFill}} {
		style, err := b.file.NewConditionalStyle(&excelize.Style{Fill: filled(o.fill), Font: &excelize.Font{Bold: true, Color: ink}})
		if err != nil {
			return err
		}
		rules = append(rules, excelize.ConditionalFormatOptions{Type: "cell", Criteria: "=", Value: fmt.Sprintf("%q", string(o.outcome)), Format: &style})
	}
	return b.file.SetConditionalFormat(sheet, cells, rules)
}
