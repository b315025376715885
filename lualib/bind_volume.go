package lualib

import (
	"regexp"

	"weirbook/lualib/volume"
	"weirbook/notebook/diag"
	"weirbook/notebook/quantity"
)

func volumeFunctions() []*Function {
	upright := []Arg{
		length("height", "outside height", true),
		{Name: "fill", Kind: ArgQuantity, Unit: "cm", Top: 10_000, Above: true, Default: "to the rim", Doc: "height of the water from the inside of the bottom"},
		{Name: "wall", Kind: ArgQuantity, Unit: "mm", Low: 0, Top: 1_000, Default: "none", Doc: "thickness of the walls"},
		{Name: "bottom", Kind: ArgQuantity, Unit: "mm", Low: 0, Top: 1_000, Default: "none", Doc: "thickness of the bottom"},
	}
	shape := func(name, brief, example string, run func(c *callArgs) (any, error), args ...Arg) *Function {
		return &Function{
			Module: "volume", Name: name, Brief: brief, Args: append(args, upright...),
			Fields: []Field{{"gross", "L", "outside volume, as tanks are sold"}, {"inside", "L", "inside the walls to the rim"}, {"water", "L", "inside the walls to the fill"}, {"surface", "cm2", "water surface"}, {"footprint", "cm2", "outside area of the bottom"}},
			Range:  "lengths above 0 to 100 m; walls that leave an inside; fill not above the rim", Accuracy: "exact for the geometry given; seams, braces and bulge are left out",
			Source: "elementary geometry", Example: example, run: run,
		}
	}
	return []*Function{
		shape("box", "the volumes of a rectangular tank", `volume.box{length = "120 cm", width = "50 cm", height = "50 cm", wall = "10 mm", bottom = "10 mm", fill = "46 cm"}`, runBox,
			length("length", "outside length", true), length("width", "outside width", true)),
		shape("cylinder", "the volumes of an upright round vessel", `volume.cylinder{diameter = "58 cm", height = "90 cm", fill = "80 cm"}`, runCylinder,
			length("diameter", "outside diameter", true)),
		shape("prism", "the volumes of an upright vessel on any outline", `volume.prism{points = {{"0 cm", "0 cm"}, {"120 cm", "0 cm"}, {"90 cm", "60 cm"}, {"0 cm", "60 cm"}}, height = "40 cm"}`, runPrism,
			Arg{Name: "points", Kind: ArgPoints, Unit: "cm", Doc: "the corners of the outside in order; or give area"},
			Arg{Name: "area", Kind: ArgQuantity, Unit: "cm2", Top: 1e8, Above: true, Doc: "outside area, without walls"}),
		shape("bow", "the volumes of a box whose front is an arc", `volume.bow{length = "120 cm", width = "45 cm", bow = "12 cm", height = "55 cm"}`, runBow,
			length("length", "outside length, the chord of the arc", true), length("width", "outside width at the ends", true), length("bow", "how far the front stands out in the middle", true)),
	}
}

func runBox(c *callArgs) (any, error) {
	return c.measured("length", volume.Box{Length: c.metres("length"), Width: c.metres("width"), Height: c.metres("height"), Wall: c.metres("wall"), Bottom: c.metres("bottom"), Fill: c.metres("fill")})
}

func runCylinder(c *callArgs) (any, error) {
	return c.measured("diameter", volume.Cylinder{Diameter: c.metres("diameter"), Height: c.metres("height"), Wall: c.metres("wall"), Bottom: c.metres("bottom"), Fill: c.metres("fill")})
}

func runBow(c *callArgs) (any, error) {
	return c.measured("length", volume.Bow{Length: c.metres("length"), Width: c.metres("width"), Bow: c.metres("bow"), Height: c.metres("height"), Wall: c.metres("wall"), Bottom: c.metres("bottom"), Fill: c.metres("fill")})
}

func runPrism(c *callArgs) (any, error) {
	p := volume.Prism{Height: c.metres("height"), Wall: c.metres("wall"), Bottom: c.metres("bottom"), Fill: c.metres("fill"), Area: c.metres("area")}
	if points, ok := c.values["points"].([][2]float64); ok {
		for _, xy := range points {
			p.Points = append(p.Points, volume.Point{X: xy[0], Y: xy[1]})
		}
	}
	if !c.has("points") && !c.has("area") {
		return nil, wrong("points", "the argument is missing, want points or area", `add area = "4000 cm2"`)
	}
	return c.measured("height", p)
}

// metres gives a length in metres, 0 where it was not given.
func (c *callArgs) metres(name string) float64 {
	if !c.has(name) {
		return 0
	}
	return c.q(name).SI()
}

func (c *callArgs) measured(lead string, shape volume.Shape) (any, error) {
	given := c.or(lead, quantity.Must(0, "cm"))
	m, err := volume.Measure(shape)
	if err != nil {
		return nil, metresAs(err, given)
	}
	u := unitsFor(given)
	return new(result).set("gross", u.volume(m.GrossM3)).set("inside", u.volume(m.InsideM3)).set("water", u.volume(m.WaterM3)).
		set("surface", u.area(m.SurfaceM2)).set("footprint", u.area(m.FootprintM2)), nil
}

var metres = regexp.MustCompile(`(\d+(?:\.\d+)?(?:e-?\d+)?) m\b`)

// metresAs rewrites the metres of an error in the unit that the person used.
func metresAs(err error, given quantity.Quantity) error {
	f := *diag.AsFault(err)
	f.Message = metres.ReplaceAllStringFunc(f.Message, func(found string) string {
		q, err := quantity.Parse(found)
		if err == nil {
			q, err = q.To(given.Unit())
		}
		if err != nil {
			return found
		}
		return q.Short()
	})
	return &f
}
