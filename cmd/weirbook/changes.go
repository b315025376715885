package main

import (
	"fmt"
	"io"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// printChanges prints what differs from the run before: values and checks, old
// and new.
func printChanges(w io.Writer, before, after *notebook.Result, s style) {
	fmt.Fprintln(w, s.faint(ranText(after)))
	lines := append(valueChanges(before, after), checkChanges(before, after)...)
	if n, m := before.Errors(), after.Errors(); n != m {
		lines = append(lines, fmt.Sprintf("problems: %d → %d", n, m))
	}
	for _, line := range lines {
		fmt.Fprintf(w, "  %s\n", clean(line))
	}
	if len(lines) == 0 {
		fmt.Fprintln(w, "  nothing changed")
	}
}

// named lists the values that can be shown: named values, then those in the
// text by their line.
func named(r *notebook.Result) (names []string, texts map[string]string) {
	texts = map[string]string{}
	add := func(name string, v notebook.Value) {
		if text := exactText(v); text != "" {
			if _, seen := texts[name]; !seen {
				names = append(names, name)
			}
			texts[name] = text
		}
	}
	for _, v := range r.Values {
		if d, ok := v.Value.(*notebook.Data); ok {
			for _, p := range d.Pairs {
				add(fmt.Sprintf("%s.%v", v.Name, p.Key), p.Value)
			}
			continue
		}
		add(v.Name, v.Value)
	}
	for _, c := range r.Cells {
		if c.Cell.Kind == notebook.Expression && c.Status == notebook.Done && len(c.Outcome.Values) == 1 {
			if _, bare := texts[c.Cell.Code]; !bare {
				add(c.Cell.Code, c.Outcome.Values[0].Value)
			}
		}
	}
	return names, texts
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

func valueChanges(before, after *notebook.Result) []string {
	oldNames, old := named(before)
	newNames, now := named(after)
	var lines []string
	for _, name := range newNames {
		was, had := old[name]
		switch {
		case !had:
			lines = append(lines, fmt.Sprintf("%s: new, %s", name, shown(now[name], "")))
		case was != now[name]:
			lines = append(lines, fmt.Sprintf("%s: %s → %s", name, shown(was, now[name]), shown(now[name], was)))
		}
	}
	for _, name := range oldNames {
		if _, still := now[name]; !still {
			lines = append(lines, fmt.Sprintf("%s: gone, was %s", name, shown(old[name], "")))
		}
	}
	return lines
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

// checkChanges lists checks whose outcome or sentence differs. A name may stand
// for several checks; they are told apart by their order.
func checkChanges(before, after *notebook.Result) []string {
	oldChecks, newChecks := checksByName(before), checksByName(after)
	var lines []string
	for _, key := range newChecks.order {
		now, was := newChecks.checks[key], oldChecks.checks[key]
		switch {
		case was == nil:
			lines = append(lines, fmt.Sprintf("check %s: new, %s (%s)", now.Name, now.Outcome, now.Sentence))
		case was.Outcome != now.Outcome || was.Sentence != now.Sentence:
			lines = append(lines, fmt.Sprintf("check %s: %s (%s) → %s (%s)", now.Name, was.Outcome, was.Sentence, now.Outcome, now.Sentence))
		}
	}
	for _, key := range oldChecks.order {
		if newChecks.checks[key] == nil {
			lines = append(lines, fmt.Sprintf("check %s: gone, was %s", oldChecks.checks[key].Name, oldChecks.checks[key].Outcome))
		}
	}
	return lines
}

type checkKey struct {
	name string
	nth  int
}

type checkList struct {
	order  []checkKey
	checks map[checkKey]*plan.Check
}

func checksByName(r *notebook.Result) checkList {
	list := checkList{checks: map[checkKey]*plan.Check{}}
	count := map[string]int{}
	for _, c := range r.Plan.Checks {
		key := checkKey{c.Name, count[c.Name]}
		count[c.Name]++
		list.order = append(list.order, key)
		list.checks[key] = c
	}
	return list
}
