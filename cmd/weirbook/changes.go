package main

import (
	"fmt"
	"io"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// memory is what a watch has shown: the last text of every value and check. What
// a mistake makes wait is not forgotten, so that mending it tells of nothing but
// the real change.
type memory struct {
	order  []string
	texts  map[string]string
	errors int
}

// newMemory remembers a first result.
func newMemory(r *notebook.Result) *memory {
	m := &memory{texts: map[string]string{}}
	m.update(r)
	return m
}

// printChanges prints what differs from what was shown before: values, figures
// of the whole plan and checks, old and new.
func printChanges(w io.Writer, m *memory, after *notebook.Result, s style) {
	fmt.Fprintln(w, s.faint(ranText(after)))
	lines := m.update(after)
	for _, line := range lines {
		fmt.Fprintf(w, "  %s\n", clean(line))
	}
	if len(lines) == 0 {
		fmt.Fprintln(w, "  nothing changed")
	}
}

// update takes a result in and gives a line for each thing that changed.
func (m *memory) update(r *notebook.Result) []string {
	names, now := texts(r)
	whole := r.Errors() == 0
	var lines []string
	var order []string
	waiting := 0
	for _, name := range names {
		was, had := m.texts[name]
		switch {
		case !had:
			lines = append(lines, fmt.Sprintf("%s: new, %s", name, shown(now[name], "")))
		case was != now[name]:
			lines = append(lines, fmt.Sprintf("%s: %s → %s", name, shown(was, now[name]), shown(now[name], was)))
		}
		order = append(order, name)
	}
	for _, name := range m.order {
		if _, still := now[name]; still {
			continue
		}
		if whole {
			lines = append(lines, fmt.Sprintf("%s: gone, was %s", name, shown(m.texts[name], "")))
			continue
		}
		waiting++
		now[name] = m.texts[name]
		order = append(order, name)
	}
	if n := r.Errors(); n != m.errors {
		lines = append(lines, fmt.Sprintf("problems: %d → %d", m.errors, n))
		m.errors = n
	}
	if waiting > 0 {
		lines = append(lines, counted(waiting, "value")+" or checks not worked out while a problem stands")
	}
	m.order, m.texts = order, now
	return lines
}

// texts lists all that a watch shows: named values, the values in the text,
// figures of the plan, and checks. A text has its rounded form and its full one.
func texts(r *notebook.Result) (names []string, all map[string]string) {
	all = map[string]string{}
	add := func(name, text string) {
		if text == "" {
			return
		}
		if _, twice := all[name]; !twice {
			names = append(names, name)
			all[name] = text
		}
	}
	for _, v := range r.Values {
		if d, ok := v.Value.(*notebook.Data); ok {
			for _, p := range d.Pairs {
				add(fmt.Sprintf("%s.%v", v.Name, p.Key), exactText(p.Value))
			}
			continue
		}
		add(v.Name, exactText(v.Value))
	}
	for _, c := range r.Cells {
		if c.Cell.Kind == notebook.Expression && c.Status == notebook.Done && len(c.Outcome.Values) == 1 {
			add(c.Cell.Code, exactText(c.Outcome.Values[0].Value))
		}
	}
	planTexts(r.Plan, add)
	checkTexts(r.Plan.Checks, add)
	return names, all
}

// planTexts adds the figures of the whole plan, so that a change shows that no
// value of the notebook names.
func planTexts(p *plan.Plan, add func(name, text string)) {
	if len(p.Items) > 0 && len(currencies(p)) == 1 && !p.Lacking[plan.KindItem] {
		b := plan.Sum(p.Items, p.TaxFactor(), plan.ContingencyRate(p.Contingencies))
		add("budget, all lines", exactText(quantity.Must(b.Total, p.Currency())))
		add("budget, still to spend", exactText(quantity.Must(b.ToSpend, p.Currency())))
	}
	if len(p.Loads) > 0 && !p.Lacking[plan.KindLoad] {
		perDay := 0.0
		for _, l := range p.Loads {
			perDay += l.EnergyPerDay()
		}
		add("power, a month", exactText(quantity.Must(perDay*365/12, "kWh")))
	}
	if len(p.Running) > 0 && !p.Lacking[plan.KindRunning] {
		month := 0.0
		for _, c := range p.Running {
			month += c.Amount.Value() / c.Every.MustIn("mo")
		}
		add("running costs beside power, a month", exactText(quantity.Must(quantity.Round(month, 9), p.Running[0].Amount.Unit().Symbol())))
	}
	if len(p.Steps) > 0 && !p.Lacking[plan.KindStep] {
		text := fmt.Sprintf("%s, %s of work", counted(len(p.Steps), "step"), workOf(p.Steps).Short())
		add("build", text+"\x00"+text)
	}
}

// checkTexts adds the checks. A name may stand for several; they are told apart
// by their order.
func checkTexts(checks []*plan.Check, add func(name, text string)) {
	count := map[string]int{}
	for _, c := range checks {
		name := "check " + c.Name
		if count[c.Name]++; count[c.Name] > 1 {
			name = fmt.Sprintf("check %s (%d)", c.Name, count[c.Name])
		}
		text := fmt.Sprintf("%s (%s)", c.Outcome, c.Sentence)
		add(name, text+"\x00"+text)
	}
}

// exactText shows a scalar; a change too small to see rounded is shown in full.
func exactText(v notebook.Value) string {
	switch v := v.(type) {
	case quantity.Quantity:
		return v.Short() + "\x00" + v.String()
	case *notebook.Data, nil, notebook.Function:
		return ""
	}
	return valueText(v) + "\x00" + valueText(v)
}

// shown gives the rounded form of a text, or the full one where the rounded ones
// are alike.
func shown(text, other string) string {
	rounded, full := halves(text)
	otherRounded, _ := halves(other)
	if rounded == otherRounded {
		return full
	}
	return rounded
}

func halves(text string) (rounded, full string) {
	for i := range len(text) {
		if text[i] == 0 {
			return text[:i], text[i+1:]
		}
	}
	return text, text
}
