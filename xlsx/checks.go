package xlsx

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// checksFirst is the row of the first check: name, sentences, three counts, an
// empty row and the headers stand above it.
const checksFirst = 8

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

// checks makes the sheet of checks, the failed ones first.
func (b *book) checks() *sheet {
	s := b.newSheet(checksSheet, []column{
		{head: "Outcome", min: 10, max: 12}, {head: "Check", min: 32, max: 46, kind: long}, {head: "Value", min: 11, max: 18, kind: numeric}, {head: "Unit", min: 8, max: 14},
		{head: "Limit", min: 20, max: 34, kind: long}, {head: "In words", min: 40, max: 60, kind: long}, {head: "Tank", min: 12, max: 20, kind: long},
		{head: "Line of the notebook", min: 10, max: 11, kind: numeric}, {head: "Remark", min: 16, max: 34, kind: long},
	})
	list := slices.Clone(b.plan.Checks)
	slices.SortStableFunc(list, func(a, b *plan.Check) int { return cmp.Compare(severity(a.Outcome), severity(b.Outcome)) })
	last := max(checksFirst+len(list)-1, checksFirst)
	s.top("Checks", "What was looked at, and how it came out, the worst first. Pass: within its limit. Caution: think again, or ask. Fail: do not build it so. "+
		"A pass is no permit: local code and people with a licence have the last word.")
	b.checkCounts(s, list, last)
	s.skip(1)
	s.listHead()
	s.reserve(len(list))
	for _, c := range list {
		b.checkLine(s, c)
	}
	if len(list) == 0 {
		s.add(s.look.words(body, ""), s.look.words(body, "the notebook has no checks"))
	}
	s.list(last)
	s.after = func(b *book) error { return b.colourOutcomes(fmt.Sprintf("A3:A%d", last)) }
	return s
}

// checkCounts adds a row for each outcome with the number of checks.
func (b *book) checkCounts(s *sheet, list []*plan.Check, last int) {
	counts := map[plan.Outcome]float64{}
	for _, c := range list {
		counts[c.Outcome]++
	}
	for _, o := range []struct {
		outcome plan.Outcome
		to      *figure
	}{{plan.Fail, &b.figures.fail}, {plan.Caution, &b.figures.caution}, {plan.Pass, &b.figures.pass}} {
		formula := fmt.Sprintf("COUNTIF(%s,%q)", area(1, checksFirst, last), string(o.outcome))
		count := s.look.formula(strong, formula, counts[o.outcome], decimalsFormat(0))
		count.StyleID = s.look.id(countLook, decimalsFormat(0))
		row := s.add(s.look.words(body, string(o.outcome)), count)
		*o.to = at(checksSheet, 2, row, counts[o.outcome])
	}
}

// checkLine adds one check.
func (b *book) checkLine(s *sheet, c *plan.Check) {
	l := s.look
	value, unit := l.words(body, ""), l.words(body, "")
	if c.Value.Has {
		value, unit = b.measured(c.Value.Q)
	}
	place := l.words(body, "")
	if c.Line > 0 {
		place = l.count(float64(c.Line))
	}
	s.fit(l.words(body, string(c.Outcome)), s.words(1, c.Name), value, unit, s.words(4, limitText(c)), s.words(5, c.Sentence), s.words(6, c.Tank),
		place, s.words(8, c.Note))
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

// colourOutcomes colours the words for the outcomes.
func (b *book) colourOutcomes(cells string) error {
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
	return b.file.SetConditionalFormat(checksSheet, cells, rules)
}
