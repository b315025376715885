package lualib

import (
	"fmt"

	"weirbook/lualib/salinity"
	"weirbook/lualib/stocking"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func salinityArg(name, doc string, need bool) Arg {
	return Arg{Name: name, Kind: ArgQuantity, Unit: "ppt", Need: need, Low: salinity.MinPSU, Top: salinity.MaxPSU, Doc: doc}
}

func temperatureArg(need bool, otherwise string) Arg {
	return Arg{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Need: need, Low: salinity.MinC, Top: salinity.MaxC, Default: otherwise, Doc: "of the water"}
}

func fishFunction() *Function {
	return &Function{
		Module: "stocking", Name: "fish", Brief: "records a group of fish of one species in a tank",
		Args: []Arg{
			{Name: "tank", Kind: ArgLink, Of: "tank", Need: true, Doc: "the tank they live in"},
			{Name: "species", Kind: ArgText, Need: true, Doc: "scientific or common name of the species table"},
			{Name: "count", Kind: ArgCount, Need: true, Doc: "how many"},
			{Name: "length", Kind: ArgQuantity, Unit: "cm", Top: 300, Above: true, Default: "the adult length of the species table", Doc: "total length of one"},
			{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: 0, Top: 36, Default: "the tank's when it is given as a record, else 25 degC", Doc: "of the water"},
		},
		Fields: []Field{
			{"tank", "", "name of the tank"}, {"species", "", "scientific name"}, {"common", "", "common name"}, {"count", "", "how many"}, {"length", "cm", "of one"}, {"mass", "g", "of one"},
			{"factor", "", "uncertainty of the mass: one standard deviation is mass/factor to mass*factor"}, {"oxygen", "g/d", "of the group, daily mean"}, {"oxygen_peak", "mg/h", "of the group, after a meal"},
			{"feed_low", "g/d", "dry feed of the group"}, {"feed_high", "g/d", "dry feed of the group"},
		},
		Makes: []plan.Kind{plan.KindFish}, Checks: "the tank is recorded",
		Range: "length to 300 cm; oxygen 0 to 36 degC; no invertebrates", Accuracy: "mass by a factor of about 2, oxygen of a single fish by a factor of 3, feed as a range",
		Source:  "length-weight by body form (Froese and others 2014, priors; authors from memory); Clarke & Johnston 1999 for oxygen, times 1.5 for the day and 2.5 after a meal (common practice); dry feed: common practice, no source",
		Caution: "an estimate for planning; watch the animals and ask a vet where they ail",
		Example: `stocking.fish{tank = north, species = "Danio rerio", count = 12}`,
		run:     runFish,
	}
}

func runFish(c *callArgs) (any, error) {
	species, err := stocking.Lookup(c.text("species"))
	if err != nil {
		return nil, speciesFault(err)
	}
	f := &plan.Fish{Tank: c.text("tank"), Species: species.ScientificName, Common: species.CommonName, Count: c.count("count", 0), Length: c.or("length", quantity.Must(species.TypicalLengthCm, "cm"))}
	if f.Count == 0 {
		return nil, wrong("count", "got 0, want at least 1", "")
	}
	if err := fishNeeds(f, species, c.waterTemperature()); err != nil {
		return nil, err
	}
	out := new(result).set("tank", f.Tank).set("species", f.Species).set("common", f.Common).set("count", f.Count).set("length", f.Length).
		set("mass", f.Mass).set("factor", f.MassFactor).set("oxygen", f.Oxygen).set("oxygen_peak", f.OxygenPeak).set("feed_low", f.FeedLow).set("feed_high", f.FeedHigh)
	return out, c.record(f)
}

// SpeciesList gives a line for each species of the table: its names and the water
// it is kept in.
func SpeciesList() []string {
	all, err := stocking.All()
	if err != nil {
		return nil
	}
	var lines []string
	for _, s := range all {
		lines = append(lines, fmt.Sprintf("%-34s %-34s %g-%g degC, pH %g-%g, to %g cm", s.CommonName, s.ScientificName, s.TemperatureC.Min, s.TemperatureC.Max, s.PH.Min, s.PH.Max, s.TypicalLengthCm))
	}
	return lines
}

// speciesFault tells of a species that the table does not have.
func speciesFault(err error) error {
	unknown, ok := err.(*stocking.LookupError)
	if !ok {
		return err
	}
	hint := didYouMean(unknown.Name, stocking.Names())
	if hint == "" {
		hint = "weirbook lib species lists them"
	}
	return wrong("species", unknownSpecies(unknown), hint)
}

func unknownSpecies(e *stocking.LookupError) string {
	text := e.Error()
	const subject = "species: "
	if len(text) > len(subject) && text[:len(subject)] == subject {
		return text[len(subject):]
	}
	return text
}

// waterTemperature is the argument, the tank's, or the default.
func (c *callArgs) waterTemperature() float64 {
	if c.has("temperature") {
		return c.in("temperature", "degC")
	}
	if c.linked != nil {
		if q, ok := asQuantity(c.linked.RawGetString("temperature")); ok {
			if v, err := q.In("degC"); err == nil {
				return v
			}
		}
	}
	return defaultTempDegC
}

// fishNeeds works out mass, oxygen and feed of a group.
func fishNeeds(f *plan.Fish, species stocking.Species, temperatureC float64) error {
	mass, err := stocking.BodyMass(species.Form, f.Length.MustIn("cm"))
	if err != nil {
		return err
	}
	oxygen, err := stocking.PlanOxygen(mass.G, temperatureC)
	if err != nil {
		return err
	}
	habit, err := stocking.HabitOf(species)
	if err != nil {
		return err
	}
	ration, err := stocking.DailyFeed(habit, mass.G, temperatureC)
	if err != nil {
		return &diag.Fault{Message: err.Error(), Hint: fmt.Sprintf("is %g degC right for %s?", temperatureC, species.CommonName)}
	}
	n := float64(f.Count)
	f.Mass, f.MassFactor = quantity.Must(mass.G, "g"), mass.Factor
	f.Oxygen, f.OxygenPeak = quantity.Must(oxygen.DailyMeanMgPerH*n*24/1000, "g/d"), quantity.Must(oxygen.PeakMgPerH*n, "mg/h")
	f.FeedLow, f.FeedHigh = quantity.Must(ration.LowGPerDay*n, "g/d"), quantity.Must(ration.HighGPerDay*n, "g/d")
	return nil
}

func stockingFunctions() []*Function { return []*Function{fishFunction()} }
