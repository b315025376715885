package volume

import (
	"fmt"
	"math"
)

// Full as the fill of a shape means: up to the rim.
const Full = 0.0

// Shape is an open vessel standing upright on a flat bottom.
type Shape interface {
	// outlines gives the shape seen from above, outside and inside the walls.
	outlines() (outside, inside outline, err error)
	// upright gives its measures from the foot to the rim.
	upright() upright
}

// outline is the edge of a shape seen from above.
type outline interface {
	// areaM2 is the area inside the edge at a height above the underside of
	// the bottom; a straight wall has the same at every height.
	areaM2(heightM float64) float64
}

// straight is an outline that is the same at every height: its area in m2.
type straight float64

func (s straight) areaM2(float64) float64 { return float64(s) }

// Measures is what follows from the geometry of a shape.
type Measures struct {
	GrossM3     float64 // outside volume from foot to rim, as tanks are sold
	InsideM3    float64 // inside walls and bottom, up to the rim
	WaterM3     float64 // inside walls and bottom, up to the fill
	SurfaceM2   float64 // inside area at the fill: the water's surface
	FloorM2     float64 // inside area of the bottom: what substrate lies on
	FootprintM2 float64 // outside area of the bottom: what the stand carries
	MaterialM3  float64 // walls and bottom: times their density, the dry mass
	FillM       float64 // height of the water above the inside of the bottom
}

// Measure works out a shape.
//
// Units: metres in, m2 and m3 out.
// Valid range: lengths above 0 to 100 m; walls that leave an inside; fill
// above 0 (or Full) and not above the rim.
// Accuracy: exact for the geometry given, to 1 part in 1e9; seams, braces,
// rims and the bulge of the panes are left out.
// Source: elementary geometry; Simpson's rule over the height, which is exact
// for straight and evenly sloping walls.
func Measure(s Shape) (Measures, error) {
	u := s.upright()
	fill, err := u.check()
	if err != nil {
		return Measures{}, err
	}
	outside, inside, err := s.outlines()
	if err != nil {
		return Measures{}, err
	}
	m := Measures{
		GrossM3:     between(outside, 0, u.height),
		InsideM3:    between(inside, u.bottom, u.height),
		WaterM3:     between(inside, u.bottom, u.bottom+fill),
		SurfaceM2:   inside.areaM2(u.bottom + fill),
		FloorM2:     inside.areaM2(u.bottom),
		FootprintM2: outside.areaM2(0),
		FillM:       fill,
	}
	m.MaterialM3 = m.GrossM3 - m.InsideM3
	return m, nil
}

// between is the volume inside an outline between two heights.
func between(o outline, low, high float64) float64 {
	middle := o.areaM2((low + high) / 2)
	return (high - low) * (o.areaM2(low) + 4*middle + o.areaM2(high)) / 6
}

// upright holds what every shape has from the foot to the rim, in metres.
type upright struct{ height, wall, bottom, fill float64 }

// slack is the part of a length that rounding may take: 0.5 m less 0.01 m is
// not quite the 0.49 m that somebody fills to.
const slack = 1e-9

// check refuses an impossible upright and gives the height of the water.
func (u upright) check() (fillM float64, err error) {
	if err := length("height", u.height); err != nil {
		return 0, err
	}
	if err := thickness("wall", u.wall); err != nil {
		return 0, err
	}
	if err := thickness("bottom", u.bottom); err != nil {
		return 0, err
	}
	depth := u.height - u.bottom
	if depth <= slack*u.height {
		return 0, fmt.Errorf("bottom: got %.6g m, want less than the height of %.6g m", u.bottom, u.height)
	}
	switch {
	case u.fill == Full:
		return depth, nil
	case !(u.fill > 0):
		return 0, fmt.Errorf("fill: got %.6g m, want more than 0 m", u.fill)
	case u.fill > depth+slack*u.height:
		return 0, fmt.Errorf("fill: got %.6g m, want at most the inside height of %.6g m (height %.6g m less bottom %.6g m)",
			u.fill, depth, u.height, u.bottom)
	}
	return math.Min(u.fill, depth), nil
}
