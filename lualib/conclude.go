package lualib

import (
	"fmt"
	"sort"
	"strings"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Conclude works out what follows from all records together: names used twice,
// links to nothing, the order of the steps, and circuits against their breakers.
func (e *Engine) Conclude(p *plan.Plan) ([]*plan.Check, []diag.Problem) {
	c := &conclusion{plan: p}
	c.names()
	c.links()
	c.money()
	c.steps()
	c.circuits()
	c.fishWater()
	c.waterPlans()
	c.filters()
	c.readings()
	if more := len(c.problems) - maxTold; more > 0 {
		c.problems = append(c.problems[:maxTold], diag.Problem{Pos: c.problems[maxTold].Pos, Message: fmt.Sprintf("got %d more problems of the records, want none", more), Hint: "mend those told first"})
	}
	return c.checks, c.problems
}

// maxTold bounds the problems of records that are told one by one.
const maxTold = 200

type conclusion struct {
	plan     *plan.Plan
	checks   []*plan.Check
	problems []diag.Problem
	sought   int
}

// maxSought bounds how often a near name is looked for: each time all names are
// compared.
const maxSought = 50

// near gives the name that was most likely meant, "" for none.
func (c *conclusion) near(name string, names []string) string {
	if c.sought++; c.sought > maxSought {
		return ""
	}
	return diag.Nearest(name, names)
}

func pos(r plan.Record) diag.Pos {
	o := r.Origin()
	return diag.Pos{Line: o.Line, Column: o.Col}
}

func (c *conclusion) problem(r plan.Record, subject, message, hint string, also ...diag.Related) {
	c.problems = append(c.problems, diag.Problem{Pos: pos(r), Subject: subject, Message: message, Hint: hint, Also: also})
}

// unique tells of a second record with the same key.
func unique[R plan.Record](c *conclusion, list []R, what string, key func(R) string, hint string) {
	first := map[string]R{}
	for _, r := range list {
		k := key(r)
		if f, ok := first[k]; ok {
			c.problem(r, what, fmt.Sprintf("got a second %s, want one", k), hint, diag.Related{Pos: pos(f), Text: "the first is here"})
			continue
		}
		first[k] = r
	}
}

func titled[R plan.Record](what string) func(R) string {
	return func(r R) string { return fmt.Sprintf("%s named %q", what, r.Title()) }
}

func (c *conclusion) names() {
	const rename = "give one of them another name"
	unique(c, c.plan.Rooms, "room", titled[*plan.Room]("room"), rename)
	unique(c, c.plan.Racks, "rack", titled[*plan.Rack]("rack"), rename)
	unique(c, c.plan.Tanks, "tank", titled[*plan.Tank]("tank"), rename)
	unique(c, c.plan.WaterSources, "water.source", titled[*plan.WaterSource]("water source"), rename)
	unique(c, c.plan.WaterPlans, "salinity.plan", func(w *plan.WaterPlan) string { return "salinity plan for " + w.Name }, "one tank takes one plan at a time")
	unique(c, c.plan.Circuits, "power.circuit", titled[*plan.Circuit]("circuit"), rename)
	unique(c, c.plan.Loads, "power.load", titled[*plan.Load]("load"), rename)
	unique(c, c.plan.Steps, "build.step", func(s *plan.Step) string {
		if s.Tank != "" {
			return fmt.Sprintf("step %q for the tank %q", s.Name, s.Tank)
		}
		return fmt.Sprintf("step named %q", s.Name)
	}, "give one of them another name, or a tank")
	const once = "state it once"
	unique(c, c.plan.Today, "today", func(*plan.Today) string { return "day for today" }, once)
	unique(c, c.plan.Tariffs, "power.tariff", func(*plan.Tariff) string { return "price of electricity" }, once)
	unique(c, c.plan.Taxes, "cost.tax", func(*plan.Tax) string { return "sales tax" }, once)
	unique(c, c.plan.Contingencies, "cost.contingency", func(*plan.Contingency) string { return "contingency" }, once)
}

// link is a name that a record gives of another record.
type link struct {
	from      plan.Record
	fn, field string
	name      string
}

func (c *conclusion) links() {
	p := c.plan
	var rooms, racks, tanks, circuits []link
	for _, r := range p.Racks {
		rooms = append(rooms, link{r, "rack", "room", r.Room})
	}
	for _, t := range p.Tanks {
		rooms = append(rooms, link{t, "tank", "room", t.Room})
		racks = append(racks, link{t, "tank", "rack", t.Rack})
	}
	for _, f := range p.Fish {
		tanks = append(tanks, link{f, "stocking.fish", "tank", f.Tank})
	}
	for _, l := range p.Loads {
		tanks = append(tanks, link{l, "power.load", "tank", l.Tank})
		circuits = append(circuits, link{l, "power.load", "circuit", l.Circuit})
	}
	for _, i := range p.Items {
		tanks = append(tanks, link{i, "cost.item", "tank", i.Tank})
	}
	for _, r := range p.Running {
		tanks = append(tanks, link{r, "cost.running", "tank", r.Tank})
	}
	for _, s := range p.Steps {
		tanks = append(tanks, link{s, "build.step", "tank", s.Tank})
	}
	for _, k := range p.Checks {
		tanks = append(tanks, link{k, "check", "tank", k.Tank})
	}
	for _, w := range p.WaterPlans {
		tanks = append(tanks, link{w, "salinity.plan", "tank", w.Tank})
	}
	for _, r := range p.Readings {
		tanks = append(tanks, link{r, "water.reading", "tank", r.Tank})
	}
	for _, n := range p.Nitrates {
		tanks = append(tanks, link{n, "water.nitrate", "tank", n.Tank})
	}
	for _, f := range p.Filters {
		tanks = append(tanks, link{f, "filter.capacity", "tank", f.Tank})
	}
	resolve(c, rooms, p.Rooms, plan.KindRoom)
	resolve(c, racks, p.Racks, plan.KindRack)
	resolve(c, tanks, p.Tanks, plan.KindTank)
	resolve(c, circuits, p.Circuits, plan.KindCircuit)
	c.tiers()
}

// resolve tells of links to names that no record has, unless a cell that failed
// may have been about to make it.
func resolve[R plan.Record](c *conclusion, links []link, records []R, kind plan.Kind) {
	if c.plan.Lacking[kind] {
		return
	}
	known := map[string]plan.Record{}
	var names []string
	for _, r := range records {
		known[r.Title()] = r
		names = append(names, r.Title())
	}
	for _, l := range links {
		if l.name == "" || known[l.name] != nil {
			continue
		}
		near := c.near(l.name, names)
		function := string(kind)
		if kind == plan.KindCircuit {
			function = "power.circuit"
		}
		hint := fmt.Sprintf("record it with %s{name = %q, …}", function, l.name)
		var also []diag.Related
		if near != "" {
			hint = fmt.Sprintf("did you mean %q?", near)
			also = []diag.Related{{Pos: pos(known[near]), Text: fmt.Sprintf("the %s %q is here", kind, near)}}
		}
		c.problem(l.from, l.fn+": "+l.field, fmt.Sprintf("got %q, a %s that nothing records", l.name, kind), hint, also...)
	}
}

// tiers tells of tanks on a tier that their rack does not have.
func (c *conclusion) tiers() {
	racks := map[string]*plan.Rack{}
	for _, r := range c.plan.Racks {
		racks[r.Name] = r
	}
	for _, t := range c.plan.Tanks {
		r := racks[t.Rack]
		if r != nil && t.Tier > len(r.Tiers) && len(r.Tiers) > 0 {
			c.problem(t, "tank: tier", fmt.Sprintf("got tier %d of the rack %q, which has %d", t.Tier, r.Name, len(r.Tiers)), "count from 1, the lowest", diag.Related{Pos: pos(r), Text: "the rack is here"})
		}
	}
}

// money tells of a second currency.
func (c *conclusion) money() {
	first, code := plan.Record(nil), ""
	see := func(r plan.Record, q quantity.Quantity, fn string) {
		own := q.Dimension().Currency()
		switch {
		case own == "":
		case code == "":
			first, code = r, own
		case own != code:
			c.problem(r, fn, fmt.Sprintf("got an amount in %s beside amounts in %s, want one currency", own, code), fmt.Sprintf("multiply by a rate of your own, as in Q\"1.1 %s/%s\"", code, own), diag.Related{Pos: pos(first), Text: "the first amount is here"})
		}
	}
	for _, i := range c.plan.Items {
		see(i, i.Price, "cost.item: price")
	}
	for _, r := range c.plan.Running {
		see(r, r.Amount, "cost.running: amount")
	}
	for _, t := range c.plan.Tariffs {
		see(t, t.Price, "power.tariff: price")
	}
}

// steps finds the order of work: the order of the page, but each step after
// those it names.
func (c *conclusion) steps() {
	steps := c.plan.Steps
	before := make([][][]int, len(steps))
	named := stepsByName(steps)
	for i, s := range steps {
		for _, name := range s.After {
			found := named[stepKey{name, s.Tank, true}]
			if len(found) == 0 {
				found = named[stepKey{name: name}]
			}
			if len(found) == 0 && c.plan.Lacking[plan.KindStep] {
				continue
			}
			if len(found) == 0 {
				hint := ""
				if near := c.near(name, stepNames(steps)); near != "" {
					hint = fmt.Sprintf("did you mean %q?", near)
				}
				c.problem(s, "build.step: after", fmt.Sprintf("got %q, a step that nothing records", name), hint)
				continue
			}
			before[i] = append(before[i], found)
		}
	}
	order, circle := arrange(before)
	if circle != nil {
		var names []string
		for _, i := range circle {
			names = append(names, fmt.Sprintf("%q", steps[i].Name))
		}
		c.problem(steps[circle[0]], "build.step: after", "got a circle of steps: "+strings.Join(append(names, names[0]), " after "), "let one of them not wait for the other")
	}
	for place, i := range order {
		steps[i].Order = place + 1
	}
	sort.SliceStable(steps, func(i, j int) bool { return steps[i].Order < steps[j].Order })
}

func stepNames(steps []*plan.Step) []string {
	var names []string
	for _, s := range steps {
		names = append(names, s.Name)
	}
	return names
}

// stepKey names steps: those for one tank, or all of a name.
type stepKey struct {
	name, tank string
	ofTank     bool
}

// stepsByName finds the steps of a name: those for the same tank where there
// are such, else all.
func stepsByName(steps []*plan.Step) map[stepKey][]int {
	named := map[stepKey][]int{}
	for i, s := range steps {
		same, all := stepKey{s.Name, s.Tank, true}, stepKey{name: s.Name}
		named[same], named[all] = append(named[same], i), append(named[all], i)
	}
	return named
}

// arrange sorts so that each comes after those before it, otherwise in the given
// order. Where a circle makes that impossible it is returned, and its members
// come last.
func arrange(before [][][]int) (order, circle []int) {
	state := make([]int, len(before)) // 0 new, 1 open, 2 done
	var path []int
	var visit func(i int)
	visit = func(i int) {
		switch state[i] {
		case 1:
			if circle == nil {
				for k := len(path) - 1; k >= 0; k-- {
					circle = append(circle, path[k])
					if path[k] == i {
						break
					}
				}
			}
			return
		case 2:
			return
		}
		state[i] = 1
		path = append(path, i)
		for _, group := range before[i] {
			for _, b := range group {
				visit(b)
			}
		}
		path = path[:len(path)-1]
		state[i] = 2
		order = append(order, i)
	}
	for i := range before {
		visit(i)
	}
	return order, circle
}

// circuits compares the loads of each circuit with its breaker.
func (c *conclusion) circuits() {
	watts := map[string]float64{}
	for _, l := range c.plan.Loads {
		watts[l.Circuit] += l.Power.MustIn("W") * float64(l.Count)
	}
	for _, circuit := range c.plan.Circuits {
		if watts, any := watts[circuit.Name]; any {
			c.checks = append(c.checks, circuitCheck(circuit, watts))
		}
	}
}

// continuousShare of a breaker may be loaded for hours on end.
const continuousShare = 0.80

func circuitCheck(circuit *plan.Circuit, watts float64) *plan.Check {
	volts, rated := circuit.Voltage.MustIn("V"), circuit.Breaker.MustIn("A")
	amps := watts / volts
	share := 100 * amps / rated
	k := &plan.Check{
		Source: circuit.Source, Name: fmt.Sprintf("Circuit %s with everything on", circuit.Name), ByLibrary: true,
		Value: plan.Some(quantity.Must(share, "%")), AtMost: plan.Some(quantity.Must(100, "%")), CautionAt: plan.Some(quantity.Must(100*continuousShare, "%")),
	}
	k.Note = ""
	k.Outcome = plan.Pass
	rule := "80 % is kept as headroom, common practice"
	if volts >= 100 && volts <= 130 {
		rule = "80 % is the North American limit for loads that run three hours or more"
	}
	text := fmt.Sprintf("%s of %s: %s", quantity.Must(amps, "A").Short(), circuit.Breaker.Short(), quantity.Must(watts, "W").Short()+" in all")
	switch {
	case share > 100*(1+1e-12):
		k.Outcome, k.Sentence = plan.Fail, text+"; the breaker trips: move loads to another circuit"
	case share > 100*continuousShare*(1+1e-12):
		k.Outcome, k.Sentence = plan.Caution, text+"; "+rule
	default:
		k.Sentence = text
	}
	return k
}
