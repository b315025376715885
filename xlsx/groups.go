package xlsx

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/quantity"
)

// groups sums columns of a list by the text of another column.
type groups struct {
	names []string
	sums  [][]float64 // by name, then by summed column
	index map[string]int
}

func newGroups() *groups { return &groups{index: map[string]int{}} }

// add adds a line's numbers to its group.
func (g *groups) add(name string, numbers ...float64) {
	i, ok := g.index[name]
	if !ok {
		i = len(g.names)
		g.index[name] = i
		g.names = append(g.names, name)
		g.sums = append(g.sums, make([]float64, len(numbers)))
	}
	for j, n := range numbers {
		g.sums[i][j] += n
	}
}

// order lists the groups as they came, that without a name last.
func (g *groups) order() []int {
	var order []int
	unnamed := -1
	for i, name := range g.names {
		if name == "" {
			unnamed = i
			continue
		}
		order = append(order, i)
	}
	if unnamed >= 0 {
		order = append(order, unnamed)
	}
	return order
}

// groupTable is a table of sums below a list, in the list's own columns: the
// header that stays in sight, and is printed on every page, is right for it too.
type groupTable struct {
	title   string
	unnamed string // the words for lines without a name
	by      int    // the column that holds the names
	first   int    // first and last row of the list
	last    int
	sums    []groupSum
}

// groupSum is a summed column; the sum stands in the same column.
type groupSum struct {
	col    int
	format string
	digits int // decimals to which sums are rounded, -1 for none
}

// table adds the table to the sheet.
func (s *sheet) table(t groupTable, g *groups) {
	s.skip(1)
	s.sectionHead(t.title)
	folded := foldedTwice(g.names)
	for _, i := range g.order() {
		name := g.names[i]
		label := name
		if name == "" {
			label = t.unnamed
		}
		cells := s.blank()
		cells[s.at[t.by-1]-1] = s.look.words(wrapped, label)
		for j, sum := range t.sums {
			if s.has(sum.col) {
				s.put(cells, sum.col, s.groupCell(t, sum, name, g.sums[i][j], folded))
			}
		}
		s.add(cells...)
	}
}

// groupCell is a sum by SUMIFS, or by a comparison of exact text where SUMIFS
// would read the name as a pattern or a number or mix up two of them.
func (s *sheet) groupCell(t groupTable, sum groupSum, name string, value float64, folded map[string]bool) excelize.Cell {
	names, numbers := s.area(t.by, t.first, t.last), s.area(sum.col, t.first, t.last)
	own := "$" + cellName(s.at[t.by-1], s.next())
	var formula string
	switch {
	case name == "":
		formula = fmt.Sprintf(`SUMPRODUCT(--(%s=""),%s)`, names, numbers)
	case plainName(name) && !folded[strings.ToLower(name)]:
		formula = fmt.Sprintf("SUMIFS(%s,%s,%s)", numbers, names, own)
	default:
		formula = fmt.Sprintf("SUMPRODUCT(--EXACT(%s,%s),%s)", names, own, numbers)
	}
	if sum.digits >= 0 {
		value = quantity.Round(value, sum.digits)
		formula = fmt.Sprintf("ROUND(%s,%d)", formula, sum.digits)
	}
	return s.look.formula(strong, formula, value, sum.format)
}

// plainName reports whether SUMIFS takes a name as nothing but itself: it has
// only letters and a few harmless signs, so it is no number, date, truth value,
// comparison or pattern.
func plainName(name string) bool {
	if name == "" || len(name) > 200 || strings.TrimSpace(name) != name {
		return false
	}
	for i, r := range name {
		letter := r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z'
		if !letter && (i == 0 || !strings.ContainsRune(" ,-&()'", r)) {
			return false
		}
	}
	lower := strings.ToLower(name)
	return lower != "true" && lower != "false"
}

// foldedTwice gives the names, in lower case, that occur in more than one
// spelling.
func foldedTwice(names []string) map[string]bool {
	seen, twice := map[string]bool{}, map[string]bool{}
	for _, name := range names {
		lower := strings.ToLower(name)
		if seen[lower] {
			twice[lower] = true
		}
		seen[lower] = true
	}
	return twice
}
