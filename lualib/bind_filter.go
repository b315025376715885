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

func filterFunctions() []*Function {
	protein := Arg{Name: "protein", Kind: ArgQuantity, Unit: "%", Need: true, Above: true, Top: 100, Doc: "share of protein in the dry feed, as the label says"}
	tan := Arg{Name: "tan", Kind: ArgQuantity, Unit: "g/d", Need: true, Above: true, Top: 1e5, Doc: "total ammonia nitrogen a day"}
	media := Arg{Name: "media", Kind: ArgText, Need: true, Doc: "kind of media: " + mediaNames()}
	temperature := Arg{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: 0, Top: 40, Default: "25 degC", Doc: "of the water"}
	surface := Arg{Name: "surface", Kind: ArgQuantity, Unit: "m2/m3", Low: 10, Top: 50_000, Default: "the media table's", Doc: "specific surface of the media as sold"}
	level := Arg{Name: "level", Kind: ArgQuantity, Unit: "mg/L", Low: 0.01, Top: 10, Default: "0.5 mg/L", Doc: "total ammonia nitrogen to hold in the water: clean water feeds a filter poorly"}
	const ranges = "recalled ranges of the trade and of fish farming, defaults only: build for the high end"
	return []*Function{
		{
			Module: "filter", Name: "tan", Brief: "the total ammonia nitrogen that a day's feed becomes",
			Args:   []Arg{{Name: "feed", Kind: ArgQuantity, Unit: "g/d", Need: true, Low: 0, Top: 1e5, Doc: "dry feed a day"}, protein},
			Result: "g/d as N", Range: "to 100 kg/d", Accuracy: "30 %", Source: "feed x protein x 0.092: Timmons & Ebeling, Recirculating Aquaculture, recalled", Example: `filter.tan{feed = "12 g/d", protein = "42 %"}`,
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
			Args:   []Arg{tan, media, {Name: "rate", Kind: ArgQuantity, Unit: "g/(m2.d)", Above: true, Top: 10, Doc: "a rate of your own, g TAN per m2 and day; taken to be good to a half"}, temperature, surface, level},
			Fields: []Field{{"area_low", "m2", "media at their best"}, {"area_high", "m2", "what to build for"}, {"volume_low", "L", "media at their best"}, {"volume_high", "L", "what to build for"}, {"mass_low", "kg", "of rock"}, {"mass_high", "kg", "of rock"}},
			Range:  "8 K below to 4 K above the media's told temperatures; level 0.01 to 10 mg/L", Accuracy: "a factor of 2 to 3 on each end", Source: ranges, Example: `filter.media{tan = "0.46 g/d", media = "moving-bed", surface = "500 m2/m3"}.volume_high`, run: runMedia,
		},
		{
			Module: "filter", Name: "turnover", Brief: "how often a flow turns a tank over",
			Args:   []Arg{{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank as a record"}, {Name: "water", Kind: ArgQuantity, Unit: "L", Above: true, Top: 1e7, Default: "the tank's", Doc: "net volume"}, {Name: "flow", Kind: ArgQuantity, Unit: "L/h", Need: true, Above: true, Top: 1e6, Doc: "real flow, with head and dirt, not the pump's printed one"}},
			Result: "times an hour", Range: "to 1 000 000 L/h", Accuracy: "as the flow", Source: "flow over volume", Example: `filter.turnover{water = "240 L", flow = "900 L/h"}`,
			run: func(c *callArgs) (any, error) {
				volume, ok := c.given("water", "water")
				if !ok {
					return nil, wrong("water", "the argument is missing, want a volume, or the tank as a record", `add water = "200 L"`)
				}
				v, err := filter.TurnoverPerH(c.in("flow", "L/h"), volume.MustIn("L"))
				return quantity.Must(v, "1/h"), err
			},
		},
		{
			Module: "filter", Name: "fishless", Brief: "the ammonia that ripens a filter without fish, and how long that takes",
			Args: []Arg{
				volumeArg("water", "net volume"), {Name: "target", Kind: ArgQuantity, Unit: "mg/L", Low: 0, Top: 10, Default: "2 mg/L", Doc: "total ammonia nitrogen to bring it to; above 5 mg/L the bacteria stall"},
				{Name: "agent", Kind: ArgText, Default: "ammonium chloride", Doc: "ammonium chloride, ammonium sulfate, ammonia solution"}, {Name: "strength", Kind: ArgQuantity, Unit: "%", Above: true, Top: 100, Default: "100 %, for a solution 9.5 %", Doc: "active share by mass"}, temperature,
			},
			Fields: []Field{{"mass", "g", "of the agent"}, {"volume", "mL", "of a solution"}, {"weeks_low", "wk", "at best"}, {"weeks_high", "wk", "what to plan for"}},
			Range:  "0 to 10 mg/L; 10 to 34 degC", Accuracy: "the dose exactly; the weeks are common practice, no source", Source: "molar masses", Caution: "ammonia burns eyes and lungs: air the room, wear gloves and glasses, never mix it with bleach",
			Example: `filter.fishless{water = "240 L", target = "2 mg/L"}.mass`, run: runFishless,
		},
		{
			Module: "filter", Name: "capacity", Brief: "records a tank's filter: the feed a day that its media carry, as a range",
			Args: []Arg{
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it serves; without it nothing is recorded"}, media,
				{Name: "volume", Kind: ArgQuantity, Unit: "L", Also: "kg", Need: true, Above: true, Top: 1e6, Doc: "of media; for rock its mass"}, protein, temperature, surface, level,
				{Name: "flow", Kind: ArgQuantity, Unit: "L/h", Above: true, Top: 1e6, Doc: "real flow, for the turnover; needs the tank as a record"},
			},
			Fields: []Field{{"feed_low", "g/d", "dry feed that it carries for certain"}, {"feed_high", "g/d", "at its best"}, {"turnover", "1/h", "of the tank"}},
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
	at := filter.Conditions{TemperatureC: c.or("temperature", quantity.Must(defaultTempDegC, "degC")).MustIn("degC"), TANMgPerL: c.or("level", quantity.Must(0.5, "mg/L")).MustIn("mg/L")}
	if c.has("surface") {
		at.SurfaceM2PerM3 = c.in("surface", "m2/m3")
	}
	return m, at, nil
}

func runMedia(c *callArgs) (any, error) {
	m, at, err := c.mediaAt()
	if err != nil {
		return nil, err
	}
	var size filter.Size
	if c.has("rate") {
		size, err = ownRate(c, at)
	} else {
		size, err = filter.MediaFor(m, c.in("tan", "g/d"), at)
	}
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

// ownRate sizes by a rate of the builder's own, good to a half.
func ownRate(c *callArgs, at filter.Conditions) (filter.Size, error) {
	area := c.in("tan", "g/d") / c.in("rate", "g/(m2.d)")
	size := filter.Size{AreaM2: filter.Range{Low: area / 1.5, High: area / 0.5}}
	if at.SurfaceM2PerM3 == 0 {
		return size, wrong("surface", "the argument is missing: a rate of your own is per m2 of media", `add surface = "500 m2/m3", as the media are sold`)
	}
	size.VolumeL = filter.Range{Low: 1000 * size.AreaM2.Low / at.SurfaceM2PerM3, High: 1000 * size.AreaM2.High / at.SurfaceM2PerM3}
	return size, nil
}

func runFishless(c *callArgs) (any, error) {
	agent := filter.AmmoniaSource(c.text("agent"))
	if agent == "" {
		agent = filter.AmmoniumChloride
	}
	strength := 1.0
	if agent == filter.AmmoniaSolution {
		strength = 0.095
	}
	if c.has("strength") {
		strength = c.share("strength")
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
	amount, err := c.q("volume").In("L")
	if rock := m.Basis == filter.PerKg; err != nil || rock {
		if amount, err = c.q("volume").In("kg"); err != nil || !rock {
			return nil, wrong("volume", fmt.Sprintf("got %s of %s", c.q("volume").Short(), m.Name), "give rock by its mass, other media by their volume")
		}
	}
	feed, err := filter.FeedFor(m, amount, c.share("protein"), at)
	if err != nil {
		return nil, err
	}
	r := &plan.Filter{Tank: c.text("tank"), FeedLow: quantity.Must(feed.FeedGPerDay.Low, "g/d"), FeedHigh: quantity.Must(feed.FeedGPerDay.High, "g/d")}
	if volume, ok := c.given("", "water"); ok && c.has("flow") {
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
