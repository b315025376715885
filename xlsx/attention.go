package xlsx

import (
	"fmt"
	"math"
	"strconv"

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
	if value, ok := b.circuitShare(c); ok {
		share, words = l.formula(body, b.circuitFormula(c, s.next()), value, percentFormat(100*value)), ""
		if k := b.circuitCheck(c, value); k != nil {
			outcome, words = string(k.Outcome), k.Sentence
		}
		if b.lacking(plan.KindLoad) {
			words = joinText(words, "loads may be missing")
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

// circuitShare gives the share of a circuit's breaker that is in use with every
// load on; ok is false without loads.
func (b *book) circuitShare(c *plan.Circuit) (share float64, ok bool) {
	limit, watts := orZero(c.Voltage, "V")*orZero(c.Breaker, "A"), 0.0
	for _, load := range b.plan.Loads {
		if clean(load.Circuit) == clean(c.Name) {
			watts, ok = watts+orZero(load.Power, "W")*float64(load.Count), true
		}
	}
	if !ok || limit <= 0 {
		return 0, false
	}
	return watts / limit, true
}

// circuitFormula is the same from the list of loads, for the circuit whose name
// stands in a row of the first sheet.
func (b *book) circuitFormula(c *plan.Circuit, row int) string {
	of := func(number int) string {
		return "'" + runningSheet + "'!" + b.loads.area(number, b.loads.first, b.loads.last)
	}
	limit := strconv.FormatFloat(orZero(c.Voltage, "V"), 'f', -1, 64) + "/" + strconv.FormatFloat(orZero(c.Breaker, "A"), 'f', -1, 64)
	var names string
	switch {
	case c.Name != "":
		names = "--EXACT(" + of(runCircuit) + "," + fixed(inputLabel, row) + "),"
	case b.loads.has(runCircuit):
		names = "--(" + of(runCircuit) + `=""),`
	}
	return "SUMPRODUCT(" + names + of(runPower) + "," + of(runCount) + ")/" + limit
}

// circuitCheck finds the check that the library made of a circuit's loads: it
// comes from where the circuit does and has its share.
func (b *book) circuitCheck(c *plan.Circuit, share float64) *plan.Check {
	for _, k := range b.plan.Checks {
		if !k.ByLibrary || !k.Value.Has || !isShare(k.Value.Q) || !sameSource(&k.Source, &c.Source) {
			continue
		}
		if v, ok := k.Value.Q.Number(); ok && math.Abs(v-share) <= 1e-9*share {
			return k
		}
	}
	return nil
}
