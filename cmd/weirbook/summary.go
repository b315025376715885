package main

import (
	"fmt"
	"io"
	"strings"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// printProblems prints what is wrong, each with its line and a hint.
func printProblems(w io.Writer, result *notebook.Result, s style) {
	for _, p := range result.Problems {
		text := clean(p.Text())
		first, rest, _ := strings.Cut(text, "\n")
		if p.Caution {
			first = s.warning(first)
		} else {
			first = s.alarm(first)
		}
		fmt.Fprintln(w, first)
		if rest != "" {
			fmt.Fprintln(w, rest)
		}
	}
}

// printSummary prints what came out: the cells with their key values, the
// checks, the money, and where the workbook is.
func printSummary(w io.Writer, result *notebook.Result, book string, s style) {
	title := result.Document.Title
	if title == "" {
		title = result.Document.File
	}
	fmt.Fprintf(w, "%s\n", s.strong(clean(title)))
	printCells(w, result, s)
	printKeys(w, result.Plan, s)
	printChecks(w, result, s)
	for _, line := range result.Plan.Cautions() {
		fmt.Fprintf(w, "%s %s\n", s.warning("take care:"), line)
	}
	if book != "" {
		fmt.Fprintf(w, "workbook: %s\n", book)
	}
	fmt.Fprintln(w, s.faint(ranText(result)))
}

// ranText says how much was run.
func ranText(result *notebook.Result) string {
	return fmt.Sprintf("%d of %s ran, %d ms", result.Ran, counted(len(result.Cells), "cell"), result.Took.Milliseconds())
}

// counted gives a count with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

const labelWidth = 34

func printCells(w io.Writer, result *notebook.Result, s style) {
	fmt.Fprintln(w)
	shown := 0
	for _, c := range result.Cells {
		if c.Cell.Kind == notebook.Expression {
			if c.Status == notebook.Done {
				shown++
			} else {
				printCell(w, c, s)
			}
			continue
		}
		printCell(w, c, s)
	}
	if shown > 0 {
		fmt.Fprintf(w, "  %s  %s shown in the text\n", s.fine(pad("done", 7)), counted(shown, "value"))
	}
}

func printCell(w io.Writer, c notebook.CellResult, s style) {
	label := clean(c.Cell.Label())
	if c.Cell.Title == "" && c.Cell.Kind == notebook.Calculation {
		label = fmt.Sprintf("cell at line %d", c.Cell.Line())
	}
	word := pad(string(c.Status), 7)
	switch c.Status {
	case notebook.Done:
		fmt.Fprintf(w, "  %s  %s  %s\n", s.fine(word), pad(short(label, labelWidth), labelWidth), clean(keyValues(c.Outcome)))
	case notebook.Failed:
		fmt.Fprintf(w, "  %s  %s  see the problem above\n", s.alarm(word), pad(short(label, labelWidth), labelWidth))
	default:
		fmt.Fprintf(w, "  %s  %s  for %s\n", s.warning(word), pad(short(label, labelWidth), labelWidth), clean(strings.Join(c.WaitsFor, ", ")))
	}
	if c.Outcome != nil && c.Outcome.Printed != "" {
		for _, line := range strings.Split(strings.TrimRight(clean(c.Outcome.Printed), " \n"), "\n") {
			fmt.Fprintf(w, "           %s %s\n", s.faint("|"), line)
		}
	}
}

// keyValues shows the first values of a cell that fit on a line.
func keyValues(out *notebook.Outcome) string {
	var parts []string
	width := 0
	for _, v := range out.Values {
		text := valueText(v.Value)
		part := v.Name + " = " + short(text, 40)
		if _, function := v.Value.(notebook.Function); function {
			part = "function " + v.Name
		} else if text == "" {
			continue
		}
		if width += len(part) + 3; width > 90 && len(parts) > 0 {
			parts = append(parts, "…")
			break
		}
		parts = append(parts, part)
	}
	if len(parts) == 0 && len(out.Records) > 0 {
		return countRecords(out.Records)
	}
	return strings.Join(parts, "   ")
}

// countRecords says what a cell recorded when it names no values.
func countRecords(records []plan.Record) string {
	counts := map[plan.Kind]int{}
	for _, r := range records {
		counts[r.Kind()]++
	}
	var parts []string
	for _, k := range plan.Kinds() {
		switch n := counts[k]; {
		case n == 1:
			parts = append(parts, fmt.Sprintf("1 %s", k))
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", n, plural(k)))
		}
	}
	return strings.Join(parts, ", ")
}

func plural(k plan.Kind) string {
	switch k {
	case plan.KindFish:
		return "groups of fish"
	case plan.KindTax:
		return "taxes"
	case plan.KindContingency:
		return "contingencies"
	}
	return string(k) + "s"
}

// valueText shows a value on one line; "" for what has no short text.
func valueText(v notebook.Value) string {
	switch v := v.(type) {
	case nil:
		return "nothing"
	case bool:
		return map[bool]string{true: "true", false: "false"}[v]
	case float64:
		return quantity.Bare(v).Short()
	case string:
		return v
	case quantity.Quantity:
		return v.Short()
	case quantity.Date:
		return v.String()
	case *notebook.Data:
		return dataText(v)
	}
	return ""
}

func dataText(d *notebook.Data) string {
	if d.Of != "" {
		if name, ok := d.Field("name"); ok {
			return fmt.Sprintf("%s %q", d.Of, name)
		}
		var parts []string
		for _, p := range d.Pairs {
			if q, ok := p.Value.(quantity.Quantity); ok && len(parts) < 3 {
				parts = append(parts, fmt.Sprintf("%v %s", p.Key, q.Short()))
			}
		}
		return strings.Join(parts, ", ")
	}
	return fmt.Sprintf("table of %d", len(d.Pairs))
}

// printKeys prints the figures of the whole plan.
func printKeys(w io.Writer, p *plan.Plan, s style) {
	fmt.Fprintln(w)
	if len(p.Tanks) > 0 {
		water, filled := p.Tanks[0].Water, p.Tanks[0].Filled
		for _, t := range p.Tanks[1:] {
			water, filled = plus(water, t.Water), plus(filled, t.Filled)
		}
		fmt.Fprintf(w, "%s %d, water %s, filled %s\n", s.strong("tanks: "), len(p.Tanks), water.Short(), filled.Short())
	}
	if len(p.Items) > 0 && len(currencies(p)) == 1 {
		b := plan.Sum(p.Items, p.TaxFactor(), plan.ContingencyRate(p.Contingencies))
		money := func(v float64) string { return quantity.Must(v, p.Currency()).Short() }
		fmt.Fprintf(w, "%s %s, %s in all, %s had, still to spend %s (contingency %s)\n", s.strong("budget:"), counted(b.Lines, "line"), money(b.Total), money(b.Had), money(b.ToSpend), money(b.Contingency))
	}
	if len(p.Loads) > 0 {
		printPower(w, p, s)
	}
	if len(p.Steps) > 0 {
		fmt.Fprintf(w, "%s %s, %s of work by all hands\n", s.strong("build: "), counted(len(p.Steps), "step"), workOf(p.Steps).Short())
	}
}

func plus(a, b quantity.Quantity) quantity.Quantity {
	sum, err := a.Add(b)
	if err != nil {
		return a
	}
	return sum
}

func currencies(p *plan.Plan) map[string]bool {
	codes := map[string]bool{}
	for _, i := range p.Items {
		codes[i.Price.Dimension().Currency()] = true
	}
	return codes
}

func printPower(w io.Writer, p *plan.Plan, s style) {
	watts, perDay := 0.0, 0.0
	for _, l := range p.Loads {
		watts += l.Power.MustIn("W") * float64(l.Count)
		perDay += l.EnergyPerDay()
	}
	fmt.Fprintf(w, "%s %s connected, %s a month", s.strong("power: "), quantity.Must(watts, "W").Short(), quantity.Must(perDay*365/12, "kWh").Short())
	if len(p.Tariffs) > 0 {
		if cost, err := p.Tariffs[0].Price.Mul(quantity.Must(perDay*365/12, "kWh")); err == nil {
			fmt.Fprintf(w, " (%s)", cost.Short())
		}
	}
	fmt.Fprintln(w)
}

// workOf sums up the hours of all hands.
func workOf(steps []*plan.Step) quantity.Quantity {
	hours := 0.0
	for _, step := range steps {
		if step.Work.Has {
			hours += step.Work.Q.MustIn("h") * float64(max(step.People, 1))
		}
	}
	return quantity.Must(hours, "h")
}

// printChecks prints the counts, and every check that does not pass.
func printChecks(w io.Writer, result *notebook.Result, s style) {
	pass, caution, fail := result.Outcomes()
	if pass+caution+fail == 0 {
		return
	}
	fmt.Fprintf(w, "%s %d pass, %d caution, %d fail\n", s.strong("checks:"), pass, caution, fail)
	for _, want := range []plan.Outcome{plan.Fail, plan.Caution} {
		for _, c := range result.Plan.Checks {
			if c.Outcome == want {
				fmt.Fprintf(w, "  %s  %s: %s\n", s.outcome(want, pad(string(want), 7)), clean(c.Name), clean(c.Sentence))
			}
		}
	}
}
