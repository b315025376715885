package lualib

import (
	"fmt"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/salinity"
	"weirbook/lualib/water"
	"weirbook/notebook/quantity"
)

func blendFunction() *Function {
	return &Function{
		Module: "water", Name: "blend", Brief: "the shares of several waters that meet a hardness, alkalinity or salinity",
		Args: []Arg{
			{Name: "sources", Kind: ArgAny, Rest: true, Doc: "the waters one after another, or a list of them: results of water.source, or tables with a name and the property; at least one"},
			hardnessArg("hardness", "dGH", "target hardness"), hardnessArg("alkalinity", "dKH", "target carbonate hardness"),
			{Name: "to_salinity", Kind: ArgQuantity, Unit: "ppt", Low: salinity.MinPSU, Top: salinity.MaxPSU, Doc: "target salinity"},
			volumeArg("water", "volume of the blend"), temperatureArg(false, "20 degC"),
			{Name: "osmosis_flow", Kind: ArgQuantity, Unit: "L/h", Above: true, Top: 10_000, Doc: "what the reverse osmosis unit makes"},
			{Name: "reject", Kind: ArgNumber, Low: 0, Top: 20, Default: "3", Doc: "litres of reject for a litre of product"},
		},
		Fields: []Field{{"shares", "", "list of name, share and volume"}, {"osmosis", "%", "share from reverse osmosis"}, {"hours", "h", "the unit runs"}, {"rejected", "L", "reject water"}, {"barrel", "L", "mixing barrel for the blend, filled to nine tenths"}},
		Range:  "a target between the lowest and the highest source", Accuracy: "exact for what adds up by volume; pH does not; an osmosis unit falls by some 3 % a kelvin below 25 degC (from memory)", Source: "mass balance, with the least reverse osmosis",
		Example: `water.blend{water.source{name = "Tap", hardness = "14 dGH"}, water.source{name = "RO", hardness = "0 dGH", osmosis = true}, hardness = "6 dGH", water = "120 L", osmosis_flow = "8 L/h"}`,
		Makes:   nil, run: runBlend,
	}
}

// target says which property a blend is for.
func (c *callArgs) blendTarget() (field, unit string, want float64, err error) {
	found := 0
	for _, t := range [][3]string{{"hardness", "hardness", "dGH"}, {"alkalinity", "alkalinity", "dKH"}, {"to_salinity", "salinity", "ppt"}} {
		if c.has(t[0]) {
			found++
			field, unit, want = t[1], t[2], c.in(t[0], t[2])
		}
	}
	switch {
	case found == 0:
		return "", "", 0, wrong("hardness", "got no target, want one of hardness, alkalinity, to_salinity", `add hardness = "6 dGH"`)
	case found > 1:
		return "", "", 0, wrong("hardness", fmt.Sprintf("got %d targets, want one of hardness, alkalinity, to_salinity", found), "one recipe meets one target: leave out the others")
	}
	return field, unit, want, nil
}

func runBlend(c *callArgs) (any, error) {
	field, unit, want, err := c.blendTarget()
	if err != nil {
		return nil, err
	}
	var sources []water.Source
	for _, v := range c.list("sources") {
		s, err := c.blendSource(v, field, unit)
		if err != nil {
			return nil, err
		}
		sources = append(sources, s)
	}
	if err := checkBlend(sources, field, unit, want); err != nil {
		return nil, err
	}
	litres := c.in("water", "L")
	each, osmosis, err := c.blended(sources, field, want, litres)
	if err != nil {
		return nil, err
	}
	return c.blendResult(sources, each, osmosis, litres)
}

// checkBlend refuses a target that no blend of the sources reaches.
func checkBlend(sources []water.Source, field, unit string, want float64) error {
	if len(sources) == 0 {
		return wrong("sources", "got no water to blend, want at least one", `write water.blend{tap, rain, …} with the results of water.source{…}`)
	}
	low, high := sources[0].Value, sources[0].Value
	for _, s := range sources {
		low, high = min(low, s.Value), max(high, s.Value)
	}
	if want >= low && want <= high {
		return nil
	}
	if field == "salinity" {
		field = "to_salinity"
	}
	show := func(v float64) string { return quantity.Must(v, unit).Short() }
	return wrong(field, fmt.Sprintf("got %s, want %s to %s, the lowest and the highest source", show(want), show(low), show(high)), "no blend of these reaches it: add a source beyond it")
}

// blendSource reads one source with the property that is blended for.
func (c *callArgs) blendSource(v lua.LValue, field, unit string) (water.Source, error) {
	top := 200.0
	if unit == "ppt" {
		top = salinity.MaxPSU
	}
	args := []Arg{{Name: "name", Kind: ArgText, Need: true}, {Name: field, Kind: ArgQuantity, Unit: unit, Top: top}, {Name: "osmosis", Kind: ArgBool}}
	for _, other := range []string{"hardness", "alkalinity", "salinity", "pH", "chlorine", "chloramine", "nitrate"} {
		if other != field { // a water has more properties than the recipe is for
			args = append(args, Arg{Name: other, Kind: ArgAny})
		}
	}
	p, err := c.part("sources", args, v)
	if err != nil {
		return water.Source{}, err
	}
	if !p.has(field) {
		return water.Source{}, wrong("sources", fmt.Sprintf("got %q without its %s, want it", p.text("name"), field), fmt.Sprintf("add %s = %q to that source", field, "1 "+unit))
	}
	return water.Source{Name: p.text("name"), Value: p.in(field, unit), Osmosis: p.truth("osmosis", false)}, nil
}

// blended gives the litres of each source and the share of reverse osmosis.
func (c *callArgs) blended(sources []water.Source, field string, want, litres float64) ([]float64, float64, error) {
	if field == "salinity" {
		b, err := water.BlendSalinity(sources, want, c.or("temperature", quantity.Must(20, "degC")).MustIn("degC"), litres)
		return b.LitresEach, b.OsmosisShare, err
	}
	b, err := water.BlendTo(sources, want)
	var each []float64
	for _, share := range b.Shares {
		each = append(each, share*litres)
	}
	return each, b.OsmosisShare, err
}

func (c *callArgs) blendResult(sources []water.Source, each []float64, osmosis, litres float64) (any, error) {
	unit := c.q("water").Unit().Symbol()
	var shares []*result
	product := 0.0
	for i, s := range sources {
		shares = append(shares, new(result).set("name", s.Name).set("share", quantity.Must(100*each[i]/litres, "%")).set("volume", in(each[i]/1000, "m3", unit)))
		if s.Osmosis {
			product += each[i]
		}
	}
	barrel, err := water.BarrelL(litres, 1, 0.9)
	if err != nil {
		return nil, err
	}
	out := new(result).set("shares", shares).set("osmosis", quantity.Must(100*osmosis, "%")).set("barrel", in(barrel/1000, "m3", unit))
	if c.has("osmosis_flow") {
		run, err := water.OsmosisTime(product, c.in("osmosis_flow", "L/h"), c.number("reject", 3))
		if err != nil {
			return nil, err
		}
		out.set("hours", quantity.Must(run.Hours, "h")).set("rejected", in(run.RejectL/1000, "m3", unit))
	}
	return out, nil
}
