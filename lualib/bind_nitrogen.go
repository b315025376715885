package lualib

import (
	"fmt"

	"weirbook/lualib/salinity"
	"weirbook/lualib/water"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func nitrogenFunctions() []*Function {
	common := []Arg{
		{Name: "production", Kind: ArgQuantity, Unit: "g/d", Need: true, Low: 0, Top: 1e5, Doc: "nitrate that the tank makes a day, in the basis of as"},
		{Name: "water", Kind: ArgQuantity, Unit: "L", Top: 1e7, Above: true, Default: "the tank's", Doc: "net volume"},
		{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank as a record (tank = north); of a name alone (tank = \"North\") the water is not taken, give it then"},
		{Name: "every", Kind: ArgQuantity, Unit: "d", Top: 365, Above: true, UnitOnly: true, Default: "7 d", Doc: "time between two changes"},
		{Name: "source", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 500, Default: "0 mg/L", Doc: "nitrate of the new water"},
		{Name: "as", Kind: ArgText, Default: "N", Doc: `what all nitrate figures here count: "N" or "NO3"`},
	}
	const accuracy = "exact for a well mixed tank; no plants, no denitrification"
	return []*Function{
		{
			Module: "water", Name: "nitrate", Brief: "what nitrate comes to under regular water changes",
			Args: append([]Arg{
				{Name: "change", Kind: ArgQuantity, Unit: "%", Need: true, Above: true, Top: 100, Doc: "share of the water each time"},
				{Name: "initial", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 1000, Default: "the source's", Doc: "nitrate now"},
				{Name: "changes", Kind: ArgCount, Low: 1, Top: 10_000, Default: "12", Doc: "how many changes the course shows"},
			}, common...),
			Fields: []Field{{"before", "mg/L", "before a change, in the long run, in the basis of as"}, {"after", "mg/L", "after a change, in the long run"}, {"course", "", "list of changes: number, day, nitrate before and after"}},
			Makes:  []plan.Kind{plan.KindNitrate}, Checks: "with a tank: it is recorded; its nitrate readings against the long run", Range: "a change above 0 to 100 %", Accuracy: accuracy, Source: "mass balance, a geometric series",
			Example: `water.nitrate{production = "0.4 g/d", water = "240 L", change = "25 %", every = "7 d", as = "N"}.before`, run: runNitrate,
		},
		{
			Module: "water", Name: "change_for", Brief: "the smallest share of a water change that keeps a nitrate limit",
			Args:   append([]Arg{{Name: "limit", Kind: ArgQuantity, Unit: "mg/L", Need: true, Above: true, Top: 1000, Doc: "the most nitrate before a change"}}, common...),
			Result: "a share of the water", Range: "a limit above the new water's nitrate", Accuracy: accuracy, Source: "mass balance, solved for the share",
			Example: `water.change_for{limit = "40 mg/L", production = "1.2 g/d", water = "240 L", as = "NO3"}`, run: runChangeFor,
		},
	}
}

// changes gathers the water changes of a call.
func (c *callArgs) changes() (water.Changes, error) {
	volume, ok := c.given("water", "water")
	if !ok {
		return water.Changes{}, wrong("water", "the argument is missing, want a volume, or the tank as a record", `add water = "200 L", or write tank = north with the result of tank{…}`)
	}
	share := 0.0
	if c.has("change") {
		share = c.share("change")
	}
	return water.Changes{
		WaterL: volume.MustIn("L"), ProductionMgPerDay: c.in("production", "mg/d"), SourceMgPerL: c.or("source", quantity.Must(0, "mg/L")).MustIn("mg/L"),
		Share: share, EveryDays: c.or("every", quantity.Must(7, "d")).MustIn("d"),
	}, nil
}

func runNitrate(c *callArgs) (any, error) {
	basis, err := c.nitrogenAs(water.AsN, water.AsNO3)
	if err != nil {
		return nil, err
	}
	changes, err := c.changes()
	if err != nil {
		return nil, err
	}
	steady, err := changes.Steady()
	if err != nil {
		return nil, err
	}
	course, err := changes.Course(c.or("initial", quantity.Must(changes.SourceMgPerL, "mg/L")).MustIn("mg/L"), c.count("changes", 12))
	if err != nil {
		return nil, err
	}
	mg := func(x float64) quantity.Quantity { return quantity.Must(x, "mg/L") }
	var levels []*result
	for _, l := range course {
		levels = append(levels, new(result).set("number", l.Number).set("day", quantity.Must(l.Day, "d")).set("before", mg(l.BeforeMgPerL)).set("after", mg(l.AfterMgPerL)))
	}
	out := new(result).set("before", mg(steady.BeforeMgPerL)).set("after", mg(steady.AfterMgPerL)).set("course", levels)
	if c.text("tank") == "" {
		return out, nil
	}
	before, err := water.ConvertNitrogen(steady.BeforeMgPerL, basis, water.AsN)
	if err != nil {
		return nil, err
	}
	after, err := water.ConvertNitrogen(steady.AfterMgPerL, basis, water.AsN)
	if err != nil {
		return nil, err
	}
	return out, c.record(&plan.Nitrate{Tank: c.text("tank"), Before: mg(before), After: mg(after), Change: c.q("change"), Every: c.or("every", quantity.Must(7, "d"))})
}

func runChangeFor(c *callArgs) (any, error) {
	if _, err := c.nitrogenAs(water.AsN, water.AsNO3); err != nil {
		return nil, err
	}
	changes, err := c.changes()
	if err != nil {
		return nil, err
	}
	share, err := changes.SmallestShare(c.in("limit", "mg/L"))
	if err != nil {
		return nil, err
	}
	return quantity.Must(100*share, "%"), nil
}

func readingFunction() *Function {
	mg := func(name, doc string) Arg {
		return Arg{Name: name, Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 1000, Doc: doc}
	}
	return &Function{
		Module: "water", Name: "reading", Brief: "records what was measured in a tank's water",
		Args: []Arg{
			{Name: "tank", Kind: ArgLink, Of: "tank", Need: true, Doc: "the tank"}, {Name: "date", Kind: ArgDate, Need: true, Doc: "the day"},
			{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: salinity.MinC, Top: salinity.MaxC, Default: "the tank's", Doc: "of the water"}, {Name: "salinity", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "the tank's", Doc: "of the water"}, phArg(false),
			mg("ammonia", "total ammonia, in the basis of as"), mg("nitrite", "nitrite, in the basis of as"), mg("nitrate", "nitrate, in the basis of as"), mg("oxygen", "dissolved oxygen"),
			hardnessArg("hardness", "dGH", "total hardness"), hardnessArg("alkalinity", "dKH", "carbonate hardness"),
			{Name: "as", Kind: ArgText, Default: "ions", Doc: `what the nitrogen figures count: "N", or "ions" (NH4, NO2, NO3) as most test kits do`},
		},
		Fields: []Field{{"tank", "", "the tank"}, {"date", "", "the day"}},
		Makes:  []plan.Kind{plan.KindReading}, Checks: "the tank is recorded; ammonia (un-ionised, which takes the pH), nitrite, nitrate and oxygen against thresholds; nitrate against what water.nitrate worked out for the tank",
		Range: "pH 4 to 11", Accuracy: "as the test kit", Source: "the thresholds with their sources", Caution: "a fish in distress needs a water change, not a figure",
		Example: `for _, row in ipairs(rows "Readings") do water.reading(row) end`, run: runReading,
	}
}

func runReading(c *callArgs) (any, error) {
	r := &plan.Reading{Tank: c.text("tank"), Date: c.values["date"].(quantity.Date), Temperature: c.optional("temperature"), Salinity: c.optional("salinity"), PH: c.number("pH", 0), Oxygen: c.optional("oxygen"), Hardness: c.optional("hardness"), Alkalinity: c.optional("alkalinity")}
	ions := true
	switch as := c.text("as"); as {
	case "", "ions":
	case "N":
		ions = false
	default:
		return nil, wrong("as", fmt.Sprintf("got %q, want \"N\" or \"ions\"", as), "read it on the test's leaflet")
	}
	for _, n := range []struct {
		name  string
		basis water.NitrogenBasis
		to    *plan.Optional
	}{{"ammonia", water.AsNH4, &r.Ammonia}, {"nitrite", water.AsNO2, &r.Nitrite}, {"nitrate", water.AsNO3, &r.Nitrate}} {
		if !c.has(n.name) {
			continue
		}
		v := c.in(n.name, "mg/L")
		if ions {
			var err error
			if v, err = water.ConvertNitrogen(v, n.basis, water.AsN); err != nil {
				return nil, err
			}
		}
		*n.to = plan.Some(quantity.Must(v, "mg/L"))
	}
	return new(result).set("tank", r.Tank).set("date", r.Date), c.record(r)
}
