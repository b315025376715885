package lualib

import (
	"fmt"
	"strings"

	"weirbook/lualib/filter"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func mediaNames() string {
	var names []string
	for _, m := range filter.AllMedia() {
		names = append(names, m.ID)
	}
	return strings.Join(names, ", ")
}

func ammoniaNames() string {
	return strings.Join([]string{string(filter.AmmoniumChloride), string(filter.AmmoniumSulfate), string(filter.AmmoniaSolution)}, ", ")
}

func filterFunctions() []*Function {
	protein := Arg{Name: "protein", Kind: ArgQuantity, Unit: "%", Need: true, Low: 20, Top: 70, Doc: "share of protein in the dry feed, as the label says"}
	tan := Arg{Name: "tan", Kind: ArgQuantity, Unit: "g/d", Need: true, Above: true, Top: 1e5, Doc: "total ammonia nitrogen a day"}
	media := Arg{Name: "media", Kind: ArgText, Need: true, Doc: "kind of media: " + mediaNames()}
	optionalMedia := media
	optionalMedia.Need, optionalMedia.Default = false, "none, where a rate of your own is given"
	temperature := Arg{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: 0, Top: 40, Default: "25 degC", Doc: "of the water"}
	tanksTemperature := temperature
	tanksTemperature.Default = "the tank's when it is given as a record, else 25 degC"
	surface := Arg{Name: "surface", Kind: ArgQuantity, Unit: "m2/m3", Low: 10, Top: 50_000, Default: "the media table's; sponge and trickling media have none there", Doc: "specific surface of the media as sold"}
	level := Arg{Name: "level", Kind: ArgQuantity, Unit: "mg/L", Low: 0.01, Top: 10, Default: "0.5 mg/L", Doc: "total ammonia nitrogen to hold in the water: clean water feeds a filter poorly"}
	const ranges = "recalled ranges of the trade and of fish farming, defaults only: build for the high end"
	return []*Function{
		{
			Module: "filter", Name: "tan", Brief: "the total ammonia nitrogen that a day's feed becomes",
			Args:   []Arg{{Name: "feed", Kind: ArgQuantity, Unit: "g/d", Need: true, Low: 0, Top: 1e5, Doc: "dry feed a day"}, protein},
			Result: "g/d as N", Range: "to 100 kg/d; protein 20 to 70 %", Accuracy: "20 % for dry pellets (a judgement); frozen food is a fifth dry (common practice)", Source: "feed x protein x 0.092: Timmons & Ebeling, Recirculating Aquaculture, recalled", Example: `filter.tan{feed = "12 g/d", protein = "42 %"}`,
			run: func(c *callArgs) (any, error) {
				v, err := filter.TANGPerDay(c.in("feed", "g/d"), c.share("protein"))
				return quantity.Must(v, "g/d"), err
			},
		},
		{
			Module: "filter", Name: "nitrify", Brief: "what turning ammonia into nitrate takes", Args: []Arg{tan},
			Fields: []Field{{"oxygen", "g/d", "oxygen used"}, {"alkalinity", "meq/d", "alkalinity used"}, {"alkalinity_as", "g/d", "the same as CaCO3"}, {"nitrate", "g/d", "nitrate made, as NO3"}},
			Range:  "to 100 kg/d", Accuracy: "stoichiometry; cell growth takes some per cent off", Source: "4.57 g oxygen and 7.14 g CaCO3 for a gram of N", Example: `filter.nitrify{tan = "0.46 g/d"}.oxygen`, run: runNitrify,
		},
		{
			Module: "filter", Name: "media", Brief: "the media that a day's ammonia needs, as a range",
			Args:   []Arg{tan, optionalMedia, {Name: "rate", Kind: ArgQuantity, Unit: "g/(m2.d)", Above: true, Top: 10, Doc: "a rate of your own, g TAN per m2 of surface and day, in place of the table's; the range is then half as much and half as much again; not for rock"}, temperature, surface, level},
			Fields: []Field{{"area_low", "m2", "surface, if the media are at their best; not for rock"}, {"area_high", "m2", "surface to build for"}, {"volume_low", "L", "of media at their best; not for rock"}, {"volume_high", "L", "of media to build for"}, {"mass_low", "kg", "of live rock at its best; only for rock"}, {"mass_high", "kg", "of live rock to build for"}},
			Range:  "8 K below to 4 K above the media's told temperatures; level 0.01 to 10 mg/L", Accuracy: "a factor of 2 to 3 on each end", Source: ranges, Example: `filter.media{tan = "0.46 g/d", media = "moving-bed", surface = "500 m2/m3"}.volume_high`, run: runMedia,
		},
		{
			Module: "filter", Name: "turnover", Brief: "how often a flow turns a tank over",
			Args:   []Arg{{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank as a record (tank = north), whose water is taken"}, {Name: "water", Kind: ArgQuantity, Unit: "L", Above: true, Top: 1e7, Default: "the tank's", Doc: "net volume"}, {Name: "flow", Kind: ArgQuantity, Unit: "L/h", Need: true, Above: true, Top: 1e6, Doc: "real flow, with head and dirt, not the pump's printed one"}},
			Result: "times an hour", Range: "to 1 000 000 L/h", Accuracy: "as the flow", Source: "flow over volume", Example: `filter.turnover{water = "240 L", flow = "900 L/h"}`,
			run: func(c *callArgs) (any, error) {
				volume, ok := c.given("water", "water")
				if !ok {
					return nil, wrong("water", "the argument is missing, want a volume, or the tank as a record", `add water = "200 L", or write tank = north with the result of tank{…}`)
				}
				v, err := filter.TurnoverPerH(c.in("flow", "L/h"), volume.MustIn("L"))
				return quantity.Must(v, "1/h"), err
			},
		},
		{
			Module: "filter", Name: "fishless", Brief: "the ammonia that ripens a filter without fish, and how long that takes",
			Args: []Arg{
				volumeArg("water", "net volume"), {Name: "target", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Default: "2 mg/L", Doc: "total ammonia nitrogen to bring it to; above 5 mg/L the bacteria stall"},
				{Name: "agent", Kind: ArgText, Default: "ammonium chloride", Doc: "what brings the ammonia: " + ammoniaNames()}, {Name: "strength", Kind: ArgQuantity, Unit: "%", Above: true, Top: 100, Default: "100 %, for a solution 9.5 %", Doc: "active share by mass"}, temperature,
			},
			Fields: []Field{{"mass", "g", "of the agent"}, {"volume", "mL", "of the agent, for a solution"}, {"weeks_low", "wk", "at best"}, {"weeks_high", "wk", "what to plan for"}},
			Range:  "0 to 10 mg/L; 10 to 32 degC; a solution to 30 %", Accuracy: "the dose exactly; the weeks are common practice, no source", Source: "molar masses", Caution: "ammonia burns eyes and lungs: air the room, wear gloves and glasses, never mix it with bleach",
			Example: `filter.fishless{water = "240 L", target = "2 mg/L"}.mass`, run: runFishless,
		},
		{
			Module: "filter", Name: "capacity", Brief: "records a tank's filter: the feed a day that its media carry, as a range",
			Args: []Arg{
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it serves, as a record (tank = north) or by its name; without it nothing is recorded"}, media,
				{Name: "volume", Kind: ArgQuantity, Unit: "L", Also: "kg", Need: true, Above: true, Top: 1e6, Doc: "of media; for live rock its mass, as in \"12 kg\""}, protein, tanksTemperature, surface, level,
				{Name: "flow", Kind: ArgQuantity, Unit: "L/h", Above: true, Top: 1e6, Doc: "real flow, for the turnover; takes the tank as a record (tank = north)"},
			},
			Fields: []Field{{"feed_low", "g/d", "dry feed that it carries for certain"}, {"feed_high", "g/d", "at its best"}, {"turnover", "1/h", "of the tank, with flow"}},
			Makes:  []plan.Kind{plan.KindFilter}, Checks: "the tank is recorded; feed of its fish against what the media carry", Range: "as filter.media", Accuracy: "a factor of 2 to 3 on each end", Source: ranges,
			Example: `filter.capacity{media = "moving-bed", volume = "10 L", surface = "500 m2/m3", protein = "42 %"}.feed_low`, run: runCapacity,
		},
	}
}

func runNitrify(c *callArgs) (any, error) {
	n, err := filter.Nitrify(c.in("tan", "g/d"))
	if err != nil {
		return nil, err
	}
	return new(result).set("oxygen", quantity.Must(n.OxygenGPerDay, "g/d")).set("alkalinity", quantity.Must(n.AlkalinityMeqPerDay, "meq/d")).
		set("alkalinity_as", quantity.Must(n.AlkalinityGCaCO3PerDay, "g/d")).set("nitrate", quantity.Must(n.NitrateGNO3PerDay, "g/d")), nil
}

// mediaAt reads the kind of media and the conditions it works under.
func (c *callArgs) mediaAt() (filter.Media, filter.Conditions, error) {
	m, err := filter.MediaOf(c.text("media"))
	if err != nil {
		return m, filter.Conditions{}, wrong("media", fmt.Sprintf("got %q, want one of %s", c.text("media"), mediaNames()), didYouMean(c.text("media"), strings.Split(mediaNames(), ", ")))
	}
	temperature, ok := c.given("temperature", "temperature")
	if !ok {
		temperature = quantity.Must(defaultTempDegC, "degC")
	}
	at := filter.Conditions{TemperatureC: temperature.MustIn("degC"), TANMgPerL: c.or("level", quantity.Must(0.5, "mg/L")).MustIn("mg/L")}
	switch {
	case c.has("surface"):
		at.SurfaceM2PerM3 = c.in("surface", "m2/m3")
	case m.Basis == filter.PerM2 && m.SurfaceM2PerM3.High == 0:
		return m, at, wrong("surface", fmt.Sprintf("the argument is missing: %s differs too much for a default", m.Name), `add surface = "500 m2/m3", as the media are sold`)
	}
	return m, at, nil
}

func runMedia(c *callArgs) (any, error) {
	size, err := c.mediaSize()
	if err != nil {
		return nil, err
	}
	out := new(result)
	pair := func(name, unit string, r filter.Range) {
		if r.High > 0 {
			out.set(name+"_low", quantity.Must(r.Low, unit)).set(name+"_high", quantity.Must(r.High, unit))
		}
	}
	pair("area", "m2", size.AreaM2)
	pair("volume", "L", size.VolumeL)
	pair("mass", "kg", size.MassKg)
	return out, nil
}

// mediaSize sizes by the media table, or by a rate of the builder's own.
func (c *callArgs) mediaSize() (filter.Size, error) {
	if c.has("rate") {
		return c.ownRate()
	}
	if !c.has("media") {
		return filter.Size{}, wrong("media", "the argument is missing, want a kind of media, or a rate of your own", "add media = \"moving-bed\"")
	}
	m, at, err := c.mediaAt()
	if err != nil {
		return filter.Size{}, err
	}
	return filter.MediaFor(m, c.in("tan", "g/d"), at)
}

// ownRate sizes by a rate of the builder's own, good to a half.
func (c *callArgs) ownRate() (filter.Size, error) {
	area := c.in("tan", "g/d") / c.in("rate", "g/(m2.d)")
	size := filter.Size{AreaM2: filter.Range{Low: area / 1.5, High: area / 0.5}}
	surface := filter.Range{}
	switch {
	case c.has("surface"):
		surface = filter.Range{Low: c.in("surface", "m2/m3"), High: c.in("surface", "m2/m3")}
	case c.has("media"):
		m, _, err := c.mediaAt()
		if err != nil {
			return size, err
		}
		if m.Basis == filter.PerKg {
			return size, wrong("rate", "got a rate per m2 for "+m.Name+", whose surface is not known; want it left out", "size rock by its mass")
		}
		surface = m.SurfaceM2PerM3
	}
	if surface.High > 0 {
		size.VolumeL = filter.Range{Low: 1000 * size.AreaM2.Low / surface.High, High: 1000 * size.AreaM2.High / surface.Low}
	}
	return size, nil
}

func runFishless(c *callArgs) (any, error) {
	agent := filter.AmmoniaSource(c.text("agent"))
	if agent == "" {
		agent = filter.AmmoniumChloride
	}
	strength, most := 1.0, 1.0
	switch agent {
	case filter.AmmoniumChloride, filter.AmmoniumSulfate:
	case filter.AmmoniaSolution:
		strength, most = 0.095, 0.30
	default:
		return nil, wrong("agent", fmt.Sprintf("got %q, want one of %s", agent, ammoniaNames()), didYouMean(string(agent), strings.Split(ammoniaNames(), ", ")))
	}
	if c.has("strength") {
		if strength = c.share("strength"); strength > most {
			return nil, wrong("strength", fmt.Sprintf("got %s, want at most %g %%", c.q("strength").Short(), 100*most), "a solution of ammonia in water holds no more")
		}
	}
	dose, err := filter.FishlessDose(agent, c.in("water", "L"), c.or("target", quantity.Must(2, "mg/L")).MustIn("mg/L"), strength)
	if err != nil {
		return nil, err
	}
	weeks, err := filter.CyclingWeeks(c.or("temperature", quantity.Must(defaultTempDegC, "degC")).MustIn("degC"))
	if err != nil {
		return nil, err
	}
	out := new(result).set("mass", quantity.Must(dose.G, "g"))
	if dose.ML > 0 {
		out.set("volume", quantity.Must(dose.ML, "mL"))
	}
	return out.set("weeks_low", quantity.Must(weeks.Low, "wk")).set("weeks_high", quantity.Must(weeks.High, "wk")), nil
}

func runCapacity(c *callArgs) (any, error) {
	m, at, err := c.mediaAt()
	if err != nil {
		return nil, err
	}
	unit, what, example := "L", "a volume", "10 L"
	if m.Basis == filter.PerKg {
		unit, what, example = "kg", "a mass", "12 kg"
	}
	amount, err := c.q("volume").In(unit)
	if err != nil || !(amount > 0) {
		return nil, wrong("volume", fmt.Sprintf("got %s of %s, want %s above 0", c.q("volume").Short(), m.Name, what), fmt.Sprintf("write volume = %q", example))
	}
	volume, known := c.given("", "water")
	if c.has("flow") && !known {
		return nil, wrong("flow", "got a flow without the tank as a record, want both for the turnover", "write tank = north with the result of tank{…}, or leave flow out")
	}
	feed, err := filter.FeedFor(m, amount, c.share("protein"), at)
	if err != nil {
		return nil, err
	}
	r := &plan.Filter{Tank: c.text("tank"), FeedLow: quantity.Must(feed.FeedGPerDay.Low, "g/d"), FeedHigh: quantity.Must(feed.FeedGPerDay.High, "g/d")}
	if c.has("flow") {
		times, err := filter.TurnoverPerH(c.in("flow", "L/h"), volume.MustIn("L"))
		if err != nil {
			return nil, err
		}
		r.Turnover = plan.Some(quantity.Must(times, "1/h"))
	}
	out := new(result).set("feed_low", r.FeedLow).set("feed_high", r.FeedHigh).setIf("turnover", r.Turnover)
	if r.Tank == "" {
		return out, nil
	}
	return out, c.record(r)
}
