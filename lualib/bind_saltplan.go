package lualib

import (
	"fmt"
	"math"

	"weirbook/lualib/salinity"
	"weirbook/lualib/stocking"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// methods of a salinity plan
const (
	byWaterChange = "water change"
	byDissolving  = "dissolve in sump"
)

func saltPlanFunction() *Function {
	return &Function{
		Module: "salinity", Name: "plan", Brief: "records the dated steps that take a tank from one salinity to another",
		Args: []Arg{
			{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank as a record (tank = north), whose water, salinity and temperature are taken; of a name alone (tank = \"North\") they are not, give water then"},
			{Name: "water", Kind: ArgQuantity, Unit: "L", Top: 1e7, Above: true, Default: "the tank's", Doc: "net volume"},
			{Name: "from", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "the tank's salinity, else 0 ppt", Doc: "salinity now"},
			salinityArg("to", "salinity wanted", true),
			{Name: "change", Kind: ArgQuantity, Unit: "%", Top: 100, Above: true, Default: "20 %", Doc: "share of the water each time"},
			{Name: "every", Kind: ArgQuantity, Unit: "d", Top: 365, Above: true, UnitOnly: true, Default: "7 d", Doc: "time between two steps"},
			{Name: "at_most", Kind: ArgQuantity, Unit: "ppt/d", Top: 42, Above: true, Default: "1 ppt/d", Doc: "the most that salinity may change in a day"},
			{Name: "step_at_most", Kind: ArgQuantity, Unit: "ppt", Top: 42, Above: true, Default: "1 ppt", Doc: "the most that one step may change it"},
			{Name: "start", Kind: ArgDate, Doc: "day of the first step; without it the steps have days but no dates"},
			{Name: "method", Kind: ArgText, Default: byWaterChange, Doc: `"water change" or "dissolve in sump"`},
			{Name: "price", Kind: ArgMoney, Unit: "kg", Doc: "of the mix, money per mass"},
			{Name: "bought", Kind: ArgQuantity, Unit: "kg", Low: 0, Top: 1e6, Doc: "mix that is there, for the check that it is enough"},
			{Name: "species", Kind: ArgNames, Doc: "species to check beside those recorded in the tank"},
			{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: salinity.MinC, Top: salinity.MaxC, Default: "the tank's, else 25 degC", Doc: "of the water"},
			{Name: "reference", Kind: ArgQuantity, Unit: "degC", Low: 0, Top: 40, Default: "25 degC", Doc: "temperature that the specific gravities are referred to"},
			{Name: "source", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "0 ppt", Doc: "salinity of the new water before the mix"},
			moistureArg,
			{Name: "upkeep_every", Kind: ArgQuantity, Unit: "d", Top: 365, Above: true, UnitOnly: true, Default: "7 d", Doc: "time between the water changes once the goal is reached, for the running cost"},
			{Name: "after", Kind: ArgNames, Doc: "build steps that come before the first one"},
			{Name: "work", Kind: ArgQuantity, Unit: "h", Low: 0, Top: 100, Doc: "work of one step"},
		},
		Fields: []Field{
			{"steps", "", "list of steps: number, day (from the first), date, salinity before and after, sg and density after, salt (mix to weigh), draw (water to take out), mix (new water to put in)"}, {"count", "", "how many steps"}, {"days", "d", "from the first step to the last"}, {"finish", "", "date of the last step, with start"},
			{"salt", "kg", "mix to weigh in all"}, {"draw", "L", "water drawn in all"}, {"rise", "ppt/d", "change of a step over the time between two; below 0 where salinity falls"}, {"cost", "EUR", "of the mix, with price"},
			{"direct", "kg", "the mix if all were dissolved at once, for comparison: fish and filter would not bear it; 0 where salinity falls"},
			{"direct_draw", "L", "the same where salinity falls: water to replace at once; 0 where it rises"},
			{"final_salt", "kg", "mix for each later change at the end's salinity"}, {"reads_as", "", "how salinity is read, in words"},
		},
		Makes:    []plan.Kind{plan.KindWaterPlan, plan.KindRunning, plan.KindStep},
		Checks:   "the rise a day against the pace that fish and filter bacteria are said to bear (no figure for a single species is known); every species of the tank at every step; enough mix bought",
		Range:    "0 to 42 ppt, -2 to 40 degC; new water to 42 ppt; a change above 0 to 100 %; to 1000 steps",
		Accuracy: "salt and water are conserved to 1e-9; " + asGramsPerKg,
		Source:   "mass balance with EOS-80 densities; the pace of 1 ppt a day, 2 at most: common practice, no source",
		Caution:  "filter bacteria are the slower partner: test ammonia and nitrite daily, halve the feed, and watch the fish; a vet helps where they ail",
		Example:  `salinity.plan{water = "200 L", to = salinity.from_sg{sg = 1.010, reference = "25 degC"}, change = "20 %", every = "3 d", start = "2027-03-06", price = "4 EUR/kg"}`,
		run:      runSaltPlan,
	}
}

func runSaltPlan(c *callArgs) (any, error) {
	w, t, err := c.saltPlanInputs()
	if err != nil {
		return nil, err
	}
	course, err := salinity.Plan(t)
	if err != nil {
		return nil, err
	}
	if err := c.saltSteps(w, t, course); err != nil {
		return nil, err
	}
	final, err := c.saltRunning(w, t)
	if err != nil {
		return nil, err
	}
	if err := c.record(w); err != nil {
		return nil, err
	}
	if err := c.saltBuildSteps(w); err != nil {
		return nil, err
	}
	return saltPlanResult(w, course, final), nil
}

// saltPlanInputs gathers what the call gives and what the tank's record gives.
func (c *callArgs) saltPlanInputs() (*plan.WaterPlan, salinity.Transition, error) {
	var t salinity.Transition
	water, ok := c.given("water", "water")
	if !ok {
		return nil, t, wrong("water", "the argument is missing, want a volume, or the tank as a record", `add water = "200 L", or write tank = north with the result of tank{…}`)
	}
	from, ok := c.given("from", "salinity")
	if !ok {
		from = quantity.Must(0, "ppt")
	}
	temperature, ok := c.given("temperature", "temperature")
	if !ok {
		temperature = quantity.Must(defaultTempDegC, "degC")
	}
	w := &plan.WaterPlan{
		Name: c.text("tank"), Tank: c.text("tank"), Method: c.text("method"), From: from, To: c.q("to"), Water: water,
		Every: c.or("every", quantity.Must(7, "d")), AtMost: c.or("at_most", quantity.Must(1, "ppt/d")), Reference: c.or("reference", quantity.Must(25, "degC")),
		Bought: c.optional("bought"), Change: plan.Some(c.or("change", quantity.Must(20, "%"))),
	}
	if w.Name == "" {
		w.Name = "water of " + water.Short()
	}
	w.Species, _ = c.values["species"].([]string)
	for _, name := range w.Species {
		if _, err := stocking.Lookup(name); err != nil {
			return nil, t, speciesFault(err)
		}
	}
	switch w.Method {
	case "":
		w.Method = byWaterChange
	case byWaterChange, byDissolving:
	default:
		return nil, t, wrong("method", fmt.Sprintf("got %q, want %q or %q", w.Method, byWaterChange, byDissolving), didYouMean(w.Method, []string{byWaterChange, byDissolving}))
	}
	change, _ := w.Change.Q.Number()
	t = salinity.Transition{
		WaterM3: water.SI(), FromPSU: from.MustIn("ppt"), ToPSU: c.in("to", "ppt"), TemperatureC: temperature.MustIn("degC"), Change: change,
		EveryDays: w.Every.MustIn("d"), AtMostPerDayPSU: w.AtMost.MustIn("ppt/d"), StepAtMostPSU: c.or("step_at_most", quantity.Must(1, "ppt")).MustIn("ppt"),
		WaterFraction: c.share("moisture"), Scale: salinity.At(w.Reference.MustIn("degC")),
	}
	if c.has("source") {
		t.SourcePSU = c.in("source", "ppt")
	}
	if w.Method == byDissolving {
		if c.has("change") {
			return nil, t, wrong("change", "got a share of water to change beside the method \"dissolve in sump\", want one of them", "leave change out: no water is drawn")
		}
		t.Dissolve, t.Change, w.Change = true, 0, plan.Optional{}
	}
	return w, t, nil
}

// given is an argument, or the field of the record that the tank was given as.
func (c *callArgs) given(name, field string) (quantity.Quantity, bool) {
	if c.has(name) {
		return c.q(name), true
	}
	if c.linked == nil {
		return quantity.Quantity{}, false
	}
	return asQuantity(c.linked.RawGetString(field))
}

// saltSteps turns the course into dated steps.
func (c *callArgs) saltSteps(w *plan.WaterPlan, t salinity.Transition, course salinity.Course) error {
	u := units{w.Water.Unit().Symbol(), "cm2", "kg"}
	start, dated := c.values["start"].(quantity.Date)
	for _, s := range course.Steps {
		step := plan.WaterStep{
			Number: s.Number, Day: s.Day, Before: quantity.Must(s.BeforePSU, "ppt"), After: quantity.Must(s.AfterPSU, "ppt"), SG: s.SG,
			Density: quantity.Must(s.DensityKgPerM3, "kg/m3"), Salt: in(s.Batch.MixKg, "kg", massUnitFor(s.Batch.MixKg)), Draw: u.volume(s.DrawM3),
		}
		if t.Dissolve {
			step.Mix = u.volume(0)
		} else {
			step.Mix = u.volume(s.Batch.M3)
		}
		if dated {
			day, err := start.Add(quantity.Must(math.Floor(s.Day+1e-6), "d"), 1)
			if err != nil {
				return wrong("start", err.Error(), "")
			}
			step.Date = plan.OptionalDate{Date: day, Has: true}
			w.Finish = step.Date
		}
		w.Steps = append(w.Steps, step)
	}
	w.Days = course.Days
	w.Salt, w.Draw, w.Direct = quantity.Must(course.Total.MixKg, "kg"), u.volume(course.Total.DrawM3), quantity.Must(course.AtOnce.MixKg, "kg")
	if c.has("price") {
		cost, err := c.q("price").Mul(w.Salt)
		if err != nil {
			return err
		}
		w.Cost = plan.Some(cost)
	}
	return nil
}

// saltRunning records what the mix for the later changes costs, and gives its
// mass.
func (c *callArgs) saltRunning(w *plan.WaterPlan, t salinity.Transition) (quantity.Quantity, error) {
	if t.Dissolve || t.ToPSU <= t.SourcePSU {
		return quantity.Must(0, "kg"), nil
	}
	batch, err := salinity.NewWater(t.WaterM3*t.Change, t.SourcePSU, t.ToPSU, t.TemperatureC, t.WaterFraction)
	if err != nil {
		return quantity.Quantity{}, err
	}
	mass := quantity.Must(batch.MixKg, "kg")
	if !c.has("price") {
		return mass, nil
	}
	amount, err := c.q("price").Mul(mass)
	if err != nil {
		return mass, err
	}
	digits := quantity.MinorDigits(amount.Dimension().Currency())
	return mass, c.record(&plan.Running{Name: "Salt mix for water changes of " + w.Name + " once at " + w.To.Short(), Amount: amount.RoundTo(digits), Every: c.or("upkeep_every", quantity.Must(7, "d")), Tank: w.Tank})
}

// saltBuildSteps records the steps as work that waits for the step before.
func (c *callArgs) saltBuildSteps(w *plan.WaterPlan) error {
	before := ""
	for _, s := range w.Steps {
		name := fmt.Sprintf("Salinity of %s, step %d of %d: to %s", w.Name, s.Number, len(w.Steps), s.After.Short())
		step := &plan.Step{Name: name, People: 1, Tank: w.Tank, Phase: "Water"}
		step.Work = c.optional("work")
		if before == "" {
			step.After, _ = c.values["after"].([]string)
		} else {
			step.After = []string{before}
			step.Wait = plan.Some(w.Every)
		}
		if err := c.record(step); err != nil {
			return err
		}
		before = name
	}
	return nil
}

func saltPlanResult(w *plan.WaterPlan, course salinity.Course, final quantity.Quantity) *result {
	var steps []*result
	for _, s := range w.Steps {
		r := new(result).set("number", s.Number).set("day", quantity.Must(s.Day, "d")).set("before", s.Before).set("after", s.After).
			set("sg", s.SG).set("density", s.Density).set("salt", s.Salt).set("draw", s.Draw).set("mix", s.Mix)
		if s.Date.Has {
			r.set("date", s.Date.Date)
		}
		steps = append(steps, r)
	}
	rise := 0.0
	if every := w.Every.MustIn("d"); every > 0 && len(w.Steps) > 0 {
		rise = course.StepPSU / every
	}
	out := new(result).set("steps", steps).set("count", len(steps)).set("days", quantity.Must(w.Days, "d")).set("salt", w.Salt).set("draw", w.Draw).
		set("rise", quantity.Must(rise, "ppt/d")).set("direct", w.Direct).set("direct_draw", in(course.AtOnce.ReplaceM3, "m3", w.Water.Unit().Symbol())).
		set("final_salt", final).set("reads_as", asGramsPerKg).setIf("cost", w.Cost)
	if w.Finish.Has {
		out.set("finish", w.Finish.Date)
	}
	return out
}
