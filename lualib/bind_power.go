package lualib

import (
	"fmt"
	"regexp"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

var perArg = Arg{Name: "per", Kind: ArgQuantity, Unit: "d", Top: 36500, Above: true, UnitOnly: true, Default: "mo", Place: 1, Doc: `the time the sum is for: "mo", "yr", "d", "wk"`}

func powerFunctions() []*Function {
	filters := []Arg{
		{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "only loads of this tank"},
		{Name: "group", Kind: ArgText, Doc: "only loads of this group"},
		{Name: "circuit", Kind: ArgLink, Of: "circuit", Doc: "only loads on this circuit"},
	}
	const mains = "mains power near water can kill: residual-current protection, drip loops, and a licensed electrician for the wiring; local code decides"
	return []*Function{
		{
			Module: "power", Name: "circuit", Brief: "records a circuit with its breaker",
			Args: []Arg{
				{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "its name"},
				{Name: "voltage", Kind: ArgQuantity, Unit: "V", Need: true, Top: 1000, Above: true, Doc: "nominal voltage"},
				{Name: "breaker", Kind: ArgQuantity, Unit: "A", Need: true, Top: 200, Above: true, Doc: "rated current of the breaker"},
				{Name: "protection", Kind: ArgText, Doc: `what protects people, as in "RCD 30 mA"`},
			},
			Fields: []Field{{"name", "", "its name"}, {"voltage", "V", "as given"}, {"breaker", "A", "as given"}, {"protection", "", "as given"}},
			Makes:  []plan.Kind{plan.KindCircuit}, Checks: "all loads at once against the breaker: above 100 % fails, above 80 % is a caution",
			Range: "to 1000 V and 200 A", Source: "80 % of the breaker for continuous loads: NEC 210.20(A), recalled, where the voltage is about 120 V; elsewhere headroom, common practice", Caution: mains,
			Example: `power.circuit{name = "Hall", voltage = "230 V", breaker = "16 A", protection = "RCD 30 mA"}`,
			run:     runCircuit,
		},
		{
			Module: "power", Name: "load", Brief: "records a thing that takes power",
			Args: []Arg{
				{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "its name; a second one of the same name is an error"},
				{Name: "power", Kind: ArgQuantity, Unit: "W", Need: true, Top: 1e6, Low: 0, Doc: "power of one while it is on"},
				{Name: "count", Kind: ArgCount, Default: "1", Doc: "how many"},
				{Name: "hours", Kind: ArgQuantity, Unit: "h", Also: "h/d", Low: 0, Top: 24, Default: "24 h/d", Doc: `hours on a day: "9 h" or "9 h/d"`},
				{Name: "on", Kind: ArgText, Doc: `time of day it switches on, as in "12:00"`},
				{Name: "circuit", Kind: ArgLink, Of: "circuit", Doc: "the circuit it hangs on"},
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it serves"},
				{Name: "group", Kind: ArgText, Doc: "what switches together"},
				{Name: "essential", Kind: ArgBool, Default: "false", Doc: "whether the animals need it at all times"},
			},
			Fields: []Field{{"name", "", "its name"}, {"power", "W", "of all of them"}, {"energy", "kWh/d", "a day"}, {"hours", "h/d", "a day"}},
			Makes:  []plan.Kind{plan.KindLoad}, Checks: "one load of a name; its circuit and tank are recorded",
			Range: "hours to 24 h/d", Accuracy: "as the power given; a rated power is mostly above the real one", Source: "energy is power times time", Caution: mains,
			Example: `power.load{name = "North return", power = "18 W", circuit = "Hall", tank = north, essential = true}`,
			run:     runLoad,
		},
		{
			Module: "power", Name: "tariff", Brief: "states the price of electricity, once",
			Args:   []Arg{{Name: "price", Kind: ArgMoney, Unit: "kWh", Need: true, Place: 1, Doc: "money per energy"}},
			Result: "the price", Makes: []plan.Kind{plan.KindTariff}, Checks: "stated once", Source: "none",
			Example: `power.tariff{price = electricity}`,
			run: func(c *callArgs) (any, error) {
				return c.q("price"), c.record(&plan.Tariff{Price: c.q("price")})
			},
		},
		{
			Module: "power", Name: "cost", Brief: "what the recorded loads cost",
			Args: append([]Arg{perArg}, filters...), Result: "money for that time",
			Reads: []plan.Kind{plan.KindLoad, plan.KindTariff}, Range: "a year is 365 d, a month a twelfth of it", Accuracy: "as the loads", Source: "energy times price",
			Example: `monthly = power.cost{per = "mo"}`,
			run:     runPowerCost,
		},
		{
			Module: "power", Name: "total", Brief: "the energy and the connected power of the recorded loads",
			Args: append([]Arg{perArg}, filters...), Fields: []Field{{"energy", "kWh", "for that time"}, {"connected", "W", "all loads on at once"}},
			Reads: []plan.Kind{plan.KindLoad}, Range: "a year is 365 d, a month a twelfth of it", Accuracy: "as the loads", Source: "energy is power times time",
			Example: `power.total{per = "yr", circuit = "Hall"}.energy`,
			run:     runPowerTotal,
		},
	}
}

func runCircuit(c *callArgs) (any, error) {
	r := &plan.Circuit{Name: c.text("name"), Voltage: c.q("voltage"), Breaker: c.q("breaker"), Protection: c.text("protection")}
	return new(result).set("name", r.Name).set("voltage", r.Voltage).set("breaker", r.Breaker).textIf("protection", r.Protection), c.record(r)
}

var timeOfDay = regexp.MustCompile(`^([01]?\d|2[0-3]):[0-5]\d$`)

func runLoad(c *callArgs) (any, error) {
	hours, err := c.hoursADay()
	if err != nil {
		return nil, err
	}
	r := &plan.Load{Name: c.text("name"), Power: c.q("power"), Count: c.count("count", 1), Hours: hours, On: c.text("on"), Circuit: c.text("circuit"), Tank: c.text("tank"), Group: c.text("group"), Essential: c.truth("essential", false)}
	if r.On != "" && !timeOfDay.MatchString(r.On) {
		return nil, wrong("on", fmt.Sprintf("got %q, want a time of day", r.On), `write "07:30"`)
	}
	all, err := r.Power.Mul(quantity.Bare(float64(r.Count)))
	if err != nil {
		return nil, err
	}
	return new(result).set("name", r.Name).set("power", all).set("energy", quantity.Must(r.EnergyPerDay(), "kWh/d")).set("hours", r.Hours), c.record(r)
}

// hoursADay reads hours given as a time or as a share of the day.
func (c *callArgs) hoursADay() (quantity.Quantity, error) {
	if !c.has("hours") {
		return quantity.Must(24, "h/d"), nil
	}
	q := c.q("hours")
	hours, err := q.In("h")
	if err != nil {
		if hours, err = q.In("h/d"); err != nil {
			return q, err
		}
	}
	if hours < 0 || hours > 24.0000001 {
		return q, wrong("hours", fmt.Sprintf("got %s, want 0 h/d to 24 h/d", q.Short()), "")
	}
	return quantity.Must(hours, "h/d"), nil
}

// chosenLoads are the loads that the filters leave.
func (c *callArgs) chosenLoads() ([]*plan.Load, error) {
	var chosen []*plan.Load
	all := recordsOf[*plan.Load](c, plan.KindLoad)
	for _, filter := range []struct {
		name string
		of   func(*plan.Load) string
	}{{"tank", func(l *plan.Load) string { return l.Tank }}, {"group", func(l *plan.Load) string { return l.Group }}, {"circuit", func(l *plan.Load) string { return l.Circuit }}} {
		if err := knownFilter(c, filter.name, all, filter.of, "load"); err != nil {
			return nil, err
		}
	}
	for _, l := range all {
		if (c.text("tank") == "" || l.Tank == c.text("tank")) && (c.text("group") == "" || l.Group == c.text("group")) && (c.text("circuit") == "" || l.Circuit == c.text("circuit")) {
			chosen = append(chosen, l)
		}
	}
	return chosen, nil
}

// knownFilter refuses a filter that no record has: it is most likely misspelled.
func knownFilter[R any](c *callArgs, name string, records []R, of func(R) string, kind string) error {
	wanted := c.text(name)
	if wanted == "" {
		return nil
	}
	known := map[string]bool{}
	for _, r := range records {
		if v := of(r); v != "" {
			known[v] = true
		}
	}
	if known[wanted] || (c.linked != nil && name == "tank") {
		return nil
	}
	hint := didYouMean(wanted, sortedKeys(known))
	if hint == "" {
		hint = fmt.Sprintf("no %s has this %s; leave the argument out for all", kind, name)
	}
	return wrong(name, fmt.Sprintf("got %q, which no %s has", wanted, kind), hint)
}

// energy sums up what loads take in a time, in kWh.
func (c *callArgs) energy(loads []*plan.Load) float64 {
	days := c.or("per", quantity.Must(1, "mo")).MustIn("d")
	perDay := 0.0
	for _, l := range loads {
		perDay += l.EnergyPerDay()
	}
	return perDay * days
}

func runPowerCost(c *callArgs) (any, error) {
	loads, err := c.chosenLoads()
	if err != nil {
		return nil, err
	}
	tariffs := recordsOf[*plan.Tariff](c, plan.KindTariff)
	if len(tariffs) == 0 {
		return nil, wrong("", "got no price of electricity, want one", `state it in a cell: power.tariff{price = "0.31 EUR/kWh"}`)
	}
	return tariffs[0].Price.Mul(quantity.Must(c.energy(loads), "kWh"))
}

func runPowerTotal(c *callArgs) (any, error) {
	loads, err := c.chosenLoads()
	if err != nil {
		return nil, err
	}
	watts := 0.0
	for _, l := range loads {
		watts += l.Power.MustIn("W") * float64(l.Count)
	}
	return new(result).set("energy", quantity.Must(c.energy(loads), "kWh")).set("connected", quantity.Must(watts, "W")), nil
}
