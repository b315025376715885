package xlsx

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

// attentionLines bounds how many checks the first sheet tells of.
const attentionLines = 8

// pressing lists the checks that fail or caution, the worst first.
func (b *book) pressing() []*plan.Check {
	list := b.sortedChecks()
	for i, c := range list {
		if severity(c.Outcome) > severity(plan.Caution) {
			return list[:i]
		}
	}
	return list
}

// attentionRows counts the rows of the list of pressing checks.
func (b *book) attentionRows() int {
	switch n := len(b.pressing()); {
	case n == 0:
		return 0
	case n > attentionLines:
		return 2 + attentionLines + 1
	default:
		return 2 + n
	}
}

// attention adds the checks that fail or caution.
func (b *book) attention(s *sheet) {
	list := b.pressing()
	if len(list) == 0 {
		return
	}
	s.skip(1)
	s.sectionHead("What needs attention")
	for i, c := range list {
		if i == attentionLines {
			s.spread(1, s.look.words(link, fmt.Sprintf("and %d more on %s", len(list)-i, checksSheet)))
			s.links = append(s.links, jump{cell: cellName(1, s.next()-1), to: "'" + checksSheet + "'!A1"})
			return
		}
		s.spread(inputMark, s.words(0, c.Name), s.look.words(body, string(c.Outcome)), s.look.words(wrapped, c.Sentence))
	}
}

// circuitRows counts the rows of the circuits with their heading and header.
func (b *book) circuitRows() int {
	if len(b.plan.Circuits) == 0 {
		return 0
	}
	return 3 + len(b.plan.Circuits)
}

// circuits adds a line for each circuit.
func (b *book) circuits(s *sheet) {
	if len(b.plan.Circuits) == 0 {
		return
	}
	s.skip(1)
	s.sectionHead("Circuits")
	heads := []string{"Circuit", "In use, all on", "Outcome", "", "Voltage", "Breaker", "In words", "Protection"}
	s.heads(1, heads)
	for _, c := range b.plan.Circuits {
		b.circuitLine(s, c)
	}
}

func (b *book) circuitLine(s *sheet, c *plan.Circuit) {
	l := s.look
	share, outcome, words := l.words(body, ""), "", "no loads on it"
	if b.lacking(plan.KindLoad, plan.KindCircuit) {
		words = notWorkedOut + ": loads may be missing"
	}
	if k := b.circuitCheck(c); k != nil {
		share, _ = b.measured(k.Value.Q)
		outcome, words = string(k.Outcome), k.Sentence
		if b.lacking(plan.KindLoad) {
			words += "; loads may be missing"
		}
	}
	protection := c.Protection
	if protection == "" {
		protection = "not stated"
	}
	s.fit(s.words(0, c.Name), share, l.words(body, outcome), l.words(body, ""), s.reading(c.Voltage.Short()), s.reading(c.Breaker.Short()), s.words(6, words), s.words(7, protection))
}

// reading is a text with a number and its unit, under a header of numbers.
func (s *sheet) reading(text string) excelize.Cell {
	c := s.look.words(body, text)
	c.StyleID = s.look.id(body, generalFormat)
	return c
}

// circuitCheck finds the check that the library made of a circuit's loads.
func (b *book) circuitCheck(c *plan.Circuit) *plan.Check {
	for _, k := range b.plan.Checks {
		if k.ByLibrary && k.Value.Has && isShare(k.Value.Q) && k.Name == "Circuit "+c.Name+" with everything on" {
			return k
		}
	}
	return nil
}
