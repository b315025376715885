package lualib

import (
	"fmt"

	"weirbook/lualib/salinity"
	"weirbook/lualib/volume"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// length is an argument that takes a length above zero.
func length(name, doc string, need bool) Arg {
	return Arg{Name: name, Kind: ArgQuantity, Unit: "cm", Need: need, Top: 10_000, Above: true, Doc: doc}
}

func roomFunctions() []*Function {
	name := Arg{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "its name; a second one of the same name is an error"}
	return []*Function{
		{
			Name: "room", Brief: "records a room of the house",
			Args:   []Arg{name, length("length", "inside length", false), length("width", "inside width", false), length("height", "clear height", false)},
			Fields: []Field{{"name", "", "its name"}, {"length", "cm", "as given"}, {"width", "cm", "as given"}, {"height", "cm", "as given"}},
			Makes:  []plan.Kind{plan.KindRoom}, Checks: "one room of a name", Source: "none",
			Example: `room{name = "Store", length = "5.2 m", width = "3.1 m", height = "2.4 m"}`,
			run:     runRoom,
		},
		{
			Name: "rack", Brief: "records a rack or stand with its tiers",
			Args: []Arg{
				name, {Name: "room", Kind: ArgLink, Of: "room", Doc: "the room it stands in"},
				length("length", "along the wall", false), length("width", "from the wall into the room", false), length("height", "over all", false),
				{Name: "tiers", Kind: ArgList, Unit: "cm", Low: 0, Top: 10_000, Doc: `heights of the tiers above the floor, lowest first: "40 cm; 110 cm"`},
			},
			Fields: []Field{{"name", "", "its name"}, {"room", "", "as given"}, {"length", "cm", "as given"}, {"width", "cm", "as given"}, {"height", "cm", "as given"}, {"tiers", "cm", "list of heights"}},
			Makes:  []plan.Kind{plan.KindRack}, Checks: "one rack of a name; its room is recorded", Source: "none",
			Example: `rack{name = "North wall", length = "2.6 m", width = "60 cm", tiers = "35 cm; 115 cm"}`,
			run:     runRack,
		},
		tankFunction(name),
	}
}

func runRoom(c *callArgs) (any, error) {
	r := &plan.Room{Name: c.text("name"), Length: c.optional("length"), Width: c.optional("width"), Height: c.optional("height")}
	out := new(result).set("name", r.Name).setIf("length", r.Length).setIf("width", r.Width).setIf("height", r.Height)
	return out, c.record(r)
}

func runRack(c *callArgs) (any, error) {
	r := &plan.Rack{Name: c.text("name"), Room: c.text("room"), Length: c.optional("length"), Width: c.optional("width"), Height: c.optional("height")}
	r.Tiers, _ = c.values["tiers"].([]quantity.Quantity)
	for i := 1; i < len(r.Tiers); i++ {
		if n, err := r.Tiers[i-1].Compare(r.Tiers[i]); err == nil && n >= 0 {
			return nil, wrong("tiers", fmt.Sprintf("got %s after %s, want rising heights", r.Tiers[i].Short(), r.Tiers[i-1].Short()), "give the lowest tier first")
		}
	}
	out := new(result).set("name", r.Name).textIf("room", r.Room).setIf("length", r.Length).setIf("width", r.Width).setIf("height", r.Height)
	if r.Tiers != nil {
		out.set("tiers", r.Tiers)
	}
	return out, c.record(r)
}

func tankFunction(name Arg) *Function {
	return &Function{
		Name: "tank", Brief: "records a rectangular tank and works out what it holds and weighs",
		Args: []Arg{
			name,
			length("length", "outside length", true), length("width", "outside width, front to back", true), length("height", "outside height", true),
			{Name: "glass", Kind: ArgQuantity, Unit: "mm", Top: 100, Above: true, Default: "10 mm", Doc: "thickness of the walls"},
			{Name: "bottom", Kind: ArgQuantity, Unit: "mm", Top: 100, Above: true, Default: "as glass", Doc: "thickness of the bottom pane"},
			{Name: "fill", Kind: ArgQuantity, Unit: "cm", Top: 10_000, Above: true, Default: "2 cm below the rim", Doc: "height of the water from the inside of the bottom"},
			{Name: "substrate", Kind: ArgQuantity, Unit: "cm", Low: 0, Top: 1_000, Default: "none", Doc: "depth of sand or gravel from the inside of the bottom"},
			{Name: "rock", Kind: ArgQuantity, Unit: "kg", Also: "L", Low: 0, Top: 20_000, Default: "none", Doc: "rock, as a mass (at 2600 kg/m3) or a volume; give wood as a volume with its own mass apart"},
			{Name: "salinity", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Default: "0 ppt", Doc: "of the water"},
			{Name: "temperature", Kind: ArgQuantity, Unit: "degC", Low: salinity.MinC, Top: salinity.MaxC, Default: "25 degC", Doc: "of the water"},
			{Name: "room", Kind: ArgLink, Of: "room", Doc: "the room it stands in"},
			{Name: "rack", Kind: ArgLink, Of: "rack", Doc: "the rack it stands on"},
			{Name: "tier", Kind: ArgCount, Doc: "the tier of the rack, 1 the lowest"},
			{Name: "x", Kind: ArgQuantity, Unit: "cm", Top: 100_000, Doc: "place along the rack or room"},
			{Name: "y", Kind: ArgQuantity, Unit: "cm", Top: 100_000, Doc: "place across it"},
		},
		Fields: []Field{
			{"name", "", "its name"}, {"length", "cm", "outside"}, {"width", "cm", "outside"}, {"height", "cm", "outside"}, {"glass", "mm", "walls"}, {"bottom", "mm", "bottom pane"},
			{"fill", "cm", "water height from the inside of the bottom"}, {"substrate", "cm", "depth"}, {"rock", "kg", "mass"}, {"salinity", "ppt", "of the water"}, {"temperature", "degC", "of the water"},
			{"room", "", "as given"}, {"rack", "", "as given"}, {"tier", "", "as given"}, {"x", "cm", "as given"}, {"y", "cm", "as given"},
			{"gross", "L", "outside volume, as tanks are sold"}, {"water", "L", "net water: inside the walls to the fill, less grains and rock"}, {"surface", "cm2", "water surface"},
			{"footprint", "cm2", "outside area of the bottom"}, {"empty", "kg", "dry mass of the panes"}, {"filled", "kg", "empty, water, substrate and rock together"}, {"defaults", "", "list of the defaults taken, in words"},
		},
		Makes:    []plan.Kind{plan.KindTank},
		Checks:   "one tank of a name; its room and rack are recorded",
		Range:    "lengths to 100 m; fill not above the rim; salinity 0 to 42 ppt, -2 to 40 degC",
		Accuracy: "the geometry exactly; water some 2 % with substrate (porosity 0.40, taken), masses some 3 %: seams, braces and fittings are left out",
		Source:   "geometry; glass 2500 kg/m3 (EN 572-1); sand 2650 kg/m3 at porosity 0.40; rock 2600 kg/m3 (common practice, no source); EOS-80 density of water",
		Caution:  "what a floor or rack bears is a matter for a licensed professional; weights here are estimates",
		Example:  `north = tank{name = "North", length = "120 cm", width = "50 cm", height = "50 cm", glass = "10 mm", substrate = "4 cm"}`,
		run:      runTank,
	}
}

// Values taken for a tank where the notebook gives none.
const (
	defaultGlassMM  = 10.0
	belowRimCM      = 2.0
	sandPorosity    = 0.40
	sandKgPerM3     = 2650.0
	rockKgPerM3     = 2600.0 // common practice, no source: between limestone and granite
	defaultTempDegC = 25.0
)

func runTank(c *callArgs) (any, error) {
	t := &plan.Tank{
		Name: c.text("name"), Length: c.q("length"), Width: c.q("width"), Height: c.q("height"),
		Room: c.text("room"), Rack: c.text("rack"), Tier: c.count("tier", 0), X: c.optional("x"), Y: c.optional("y"),
		Substrate: c.or("substrate", quantity.Must(0, "cm")),
		Salinity:  c.or("salinity", quantity.Must(0, "ppt")), Temperature: c.or("temperature", quantity.Must(defaultTempDegC, "degC")),
	}
	c.tankDefaults(t)
	m, err := volume.Measure(volume.Box{Length: t.Length.SI(), Width: t.Width.SI(), Height: t.Height.SI(), Wall: t.Glass.SI(), Bottom: t.Bottom.SI(), Fill: t.Fill.SI()})
	if err != nil {
		return nil, metresAs(err, t.Height)
	}
	if err := c.tankContents(t, m); err != nil {
		return nil, err
	}
	return tankResult(t), c.record(t)
}

// tankDefaults fills in what was not given and says so.
func (c *callArgs) tankDefaults(t *plan.Tank) {
	say := func(format string, q quantity.Quantity) quantity.Quantity {
		t.Defaults = append(t.Defaults, fmt.Sprintf(format, q.Short()))
		return q
	}
	if t.Glass = c.q("glass"); !c.has("glass") {
		t.Glass = say("glass taken as %s", quantity.Must(defaultGlassMM, "mm"))
	}
	if t.Bottom = c.q("bottom"); !c.has("bottom") {
		t.Bottom = t.Glass
	}
	if t.Fill = c.q("fill"); !c.has("fill") {
		inside := t.Height.MustIn("cm") - t.Bottom.MustIn("cm")
		t.Fill = say("filled to %s, 2 cm below the rim", quantity.Must(quantity.Round(max(inside-belowRimCM, inside/2), 6), "cm"))
	}
	if !c.has("temperature") {
		say("water taken at %s", t.Temperature)
	}
	if !c.has("salinity") {
		t.Defaults = append(t.Defaults, "fresh water")
	}
	if c.has("rock") {
		t.Defaults = append(t.Defaults, "rock taken at 2600 kg/m3")
	}
	if c.has("substrate") && t.Substrate.Value() > 0 {
		t.Defaults = append(t.Defaults, "substrate taken as sand, porosity 0.40")
	}
}

// tankContents works out water and masses.
func (c *callArgs) tankContents(t *plan.Tank, m volume.Measures) error {
	depth := t.Substrate.SI()
	if depth > m.FillM {
		return wrong("substrate", fmt.Sprintf("got %s, want at most the fill of %s", t.Substrate.Short(), t.Fill.Short()), "")
	}
	density, err := salinity.DensityKgPerM3(t.Salinity.MustIn("ppt"), t.Temperature.MustIn("degC"))
	if err != nil {
		return err
	}
	bed, err := volume.Bed(depth*m.FloorM2, sandPorosity, sandKgPerM3, density)
	if err != nil {
		return err
	}
	rockM3, rockKg := 0.0, 0.0
	if c.has("rock") {
		rockM3, rockKg = rockOf(c.q("rock"))
		t.Rock = plan.Some(quantity.Must(rockKg, "kg"))
	}
	water := m.WaterM3 - bed.DisplacedM3 - rockM3
	if water <= 0 {
		return wrong("rock", fmt.Sprintf("got %s of rock, want less than the water it stands in", c.q("rock").Short()), "")
	}
	u := unitsFor(t.Length)
	empty := m.MaterialM3 * volume.GlassKgPerM3
	t.Gross, t.Water = u.volume(m.GrossM3), u.volume(water)
	t.Surface, t.Footprint = u.area(m.SurfaceM2), u.area(m.FootprintM2)
	t.Empty, t.Filled = u.mass(empty), u.mass(empty+water*density+bed.DryKg+rockKg)
	return nil
}

// rockOf gives volume and mass of rock given as either.
func rockOf(q quantity.Quantity) (m3, kg float64) {
	if v, err := q.In("m3"); err == nil {
		return v, v * rockKgPerM3
	}
	kg = q.MustIn("kg")
	return kg / rockKgPerM3, kg
}

// units are those in which a person who gave a length reads results.
type units struct{ volumeUnit, areaUnit, massUnit string }

func unitsFor(given quantity.Quantity) units {
	switch given.Unit().Symbol() {
	case "in", "ft", "yd":
		return units{"gal", "in2", "lb"}
	}
	return units{"L", "cm2", "kg"}
}

func in(si float64, base, unit string) quantity.Quantity {
	q := quantity.Must(si, base)
	u, err := quantity.ParseUnit(unit)
	if err != nil {
		panic("lualib: " + err.Error())
	}
	shown, err := q.To(u)
	if err != nil {
		panic("lualib: " + err.Error())
	}
	return shown
}

func (u units) volume(m3 float64) quantity.Quantity { return in(m3, "m3", u.volumeUnit) }
func (u units) area(m2 float64) quantity.Quantity   { return in(m2, "m2", u.areaUnit) }
func (u units) mass(kg float64) quantity.Quantity   { return in(kg, "kg", u.massUnit) }

func tankResult(t *plan.Tank) *result {
	out := new(result).set("name", t.Name).set("length", t.Length).set("width", t.Width).set("height", t.Height).
		set("glass", t.Glass).set("bottom", t.Bottom).set("fill", t.Fill).set("substrate", t.Substrate).setIf("rock", t.Rock).
		set("salinity", t.Salinity).set("temperature", t.Temperature).textIf("room", t.Room).textIf("rack", t.Rack)
	if t.Tier > 0 {
		out.set("tier", t.Tier)
	}
	out.setIf("x", t.X).setIf("y", t.Y).set("gross", t.Gross).set("water", t.Water).set("surface", t.Surface).
		set("footprint", t.Footprint).set("empty", t.Empty).set("filled", t.Filled)
	if t.Defaults != nil {
		out.set("defaults", t.Defaults)
	}
	return out
}
