package volume

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// measure works out a shape that must be possible.
func measure(t *testing.T, s Shape) Measures {
	t.Helper()
	m, err := Measure(s)
	require.NoError(t, err, "%+v", s)
	return m
}

// Elementary geometry, worked by hand.
func TestClosedForms(t *testing.T) {
	hexagon := regular(6, 0.4)
	tests := []struct {
		name  string
		shape Shape
		want  Measures
	}{
		{"box", Box{Length: 1.2, Width: 0.5, Height: 0.5, Wall: 0.01, Bottom: 0.01, Fill: 0.45}, Measures{
			GrossM3: 0.3, InsideM3: 1.18 * 0.48 * 0.49, WaterM3: 0.25488, SurfaceM2: 0.5664, FloorM2: 0.5664,
			FootprintM2: 0.6, MaterialM3: 0.3 - 1.18*0.48*0.49, FillM: 0.45}},
		{"bare box, full", Box{Length: 2, Width: 1, Height: 0.5}, Measures{
			GrossM3: 1, InsideM3: 1, WaterM3: 1, SurfaceM2: 2, FloorM2: 2, FootprintM2: 2, FillM: 0.5}},
		{"cylinder", Cylinder{Diameter: 1, Height: 0.8, Wall: 0.02, Bottom: 0.03, Fill: 0.7}, Measures{
			GrossM3: math.Pi * 0.2, InsideM3: math.Pi * 0.2304 * 0.77, WaterM3: math.Pi * 0.2304 * 0.7,
			SurfaceM2: math.Pi * 0.2304, FloorM2: math.Pi * 0.2304, FootprintM2: math.Pi / 4,
			MaterialM3: math.Pi * (0.2 - 0.2304*0.77), FillM: 0.7}},
		{"half-round bow", Bow{Length: 1, Width: 0.4, Bow: 0.5, Height: 0.5, Wall: 0.01, Bottom: 0.01, Fill: 0.4}, Measures{
			GrossM3: 0.5 * (0.4 + math.Pi/8), InsideM3: 0.49 * (0.98*0.39 + math.Pi*0.2401/2),
			WaterM3: 0.4 * (0.98*0.39 + math.Pi*0.2401/2), SurfaceM2: 0.98*0.39 + math.Pi*0.2401/2,
			FloorM2: 0.98*0.39 + math.Pi*0.2401/2, FootprintM2: 0.4 + math.Pi/8,
			MaterialM3: 0.5*(0.4+math.Pi/8) - 0.49*(0.98*0.39+math.Pi*0.2401/2), FillM: 0.4}},
		// Side 0.4 m, apothem 0.2*sqrt(3); the wall comes off the apothem.
		{"hexagon", Prism{Points: hexagon, Height: 0.5, Wall: 0.012, Bottom: 0.012}, Measures{
			GrossM3: 0.5 * hexArea(0.2*math.Sqrt(3)), InsideM3: 0.488 * hexArea(0.2*math.Sqrt(3)-0.012),
			WaterM3: 0.488 * hexArea(0.2*math.Sqrt(3)-0.012), SurfaceM2: hexArea(0.2*math.Sqrt(3) - 0.012),
			FloorM2: hexArea(0.2*math.Sqrt(3) - 0.012), FootprintM2: hexArea(0.2 * math.Sqrt(3)),
			MaterialM3: 0.5*hexArea(0.2*math.Sqrt(3)) - 0.488*hexArea(0.2*math.Sqrt(3)-0.012), FillM: 0.488}},
		// 1.5 x 1 m less a corner of 0.9 x 0.6 m: two boxes inside.
		{"L", Prism{Points: ell, Height: 0.6, Wall: 0.01, Bottom: 0.02, Fill: 0.5}, Measures{
			GrossM3: 0.6 * 0.96, InsideM3: 0.58 * ellInside, WaterM3: 0.5 * ellInside, SurfaceM2: ellInside,
			FloorM2: ellInside, FootprintM2: 0.96, MaterialM3: 0.6*0.96 - 0.58*ellInside, FillM: 0.5}},
		{"area alone", Prism{Area: 0.7, Height: 0.5, Bottom: 0.1, Fill: 0.3}, Measures{
			GrossM3: 0.35, InsideM3: 0.28, WaterM3: 0.21, SurfaceM2: 0.7, FloorM2: 0.7, FootprintM2: 0.7,
			MaterialM3: 0.07, FillM: 0.3}},
		// The same L by its area and perimeter: right angles, so exact.
		{"area and perimeter", Prism{Area: 0.96, Perimeter: 5, Height: 0.6, Wall: 0.01, Bottom: 0.02, Fill: 0.5}, Measures{
			GrossM3: 0.6 * 0.96, InsideM3: 0.58 * ellInside, WaterM3: 0.5 * ellInside, SurfaceM2: ellInside,
			FloorM2: ellInside, FootprintM2: 0.96, MaterialM3: 0.6*0.96 - 0.58*ellInside, FillM: 0.5}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) { requireMeasures(t, test.want, measure(t, test.shape)) })
	}
}

// requireMeasures compares every field to 1 part in 1e12 of a cubic metre.
func requireMeasures(t *testing.T, want, got Measures) {
	t.Helper()
	const tol = 1e-12
	require.InDelta(t, want.GrossM3, got.GrossM3, tol, "gross")
	require.InDelta(t, want.InsideM3, got.InsideM3, tol, "inside")
	require.InDelta(t, want.WaterM3, got.WaterM3, tol, "water")
	require.InDelta(t, want.SurfaceM2, got.SurfaceM2, tol, "surface")
	require.InDelta(t, want.FloorM2, got.FloorM2, tol, "floor")
	require.InDelta(t, want.FootprintM2, got.FootprintM2, tol, "footprint")
	require.InDelta(t, want.MaterialM3, got.MaterialM3, tol, "material")
	require.InDelta(t, want.FillM, got.FillM, tol, "fill")
}

// ell is an outline with one inner corner, given clockwise and closed.
var ell = []Point{{0, 0}, {0, 1}, {0.6, 1}, {0.6, 0.4}, {1.5, 0.4}, {1.5, 0}, {0, 0}}

const ellInside = 0.58*0.98 + 0.9*0.38

// regular gives the corners of a regular polygon with a side length.
func regular(corners int, side float64) []Point {
	radius := side / 2 / math.Sin(math.Pi/float64(corners))
	var points []Point
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		points = append(points, Point{radius * cos, radius * sin})
	}
	return points
}

// hexArea is the area of a regular hexagon by its apothem.
func hexArea(apothem float64) float64 { return 2 * math.Sqrt(3) * apothem * apothem }

// A flat bow must come out as its parabola, 2/3 chord x sagitta, with no loss
// of digits, and its inside as the box with one more wall taken off.
func TestFlatBowKeepsItsDigits(t *testing.T) {
	flat := Bow{Length: 2, Width: 0.6, Bow: 1e-6, Height: 1, Wall: 0.01}
	m := measure(t, flat)
	require.InDelta(t, 1.2+2.0/3*2*1e-6, m.FootprintM2, 1e-15)
	require.InDelta(t, 1.98*0.58+2.0/3*1.98*1e-6, m.SurfaceM2, 1e-7)
}

// From flat to half round the inside must agree with a plain sum of strips.
func TestBowAgainstStrips(t *testing.T) {
	const strips = 4000
	for _, sagitta := range []float64{0.001, 0.02, 0.1, 0.3, 0.49} {
		b := Bow{Length: 1, Width: 0.3, Bow: sagitta, Height: 0.5, Wall: 0.02}
		radius := sagitta/2 + 1/(8*sagitta)
		sum, step := 0.0, 0.96/strips
		for i := range strips {
			x := -0.48 + (float64(i)+0.5)*step
			front := 0.3 + sagitta - radius + math.Sqrt((radius-0.02)*(radius-0.02)-x*x)
			sum += (front - 0.02) * step
		}
		require.InDelta(t, sum, measure(t, b).SurfaceM2, 2e-6, "bow %g", sagitta)
	}
}

// The order in which corners are given and where the outline starts change
// nothing, nor does the place of the origin.
func TestPolygonOrderDoesNotMatter(t *testing.T) {
	want := measure(t, Prism{Points: ell, Height: 0.6, Wall: 0.01})
	moved := []Point{}
	for i := len(ell) - 2; i >= 0; i-- {
		moved = append(moved, Point{ell[(i+2)%6].X - 50, ell[(i+2)%6].Y + 50})
	}
	requireMeasures(t, want, measure(t, Prism{Points: moved, Height: 0.6, Wall: 0.01}))
}

// A polygon with right angles is the box, with a point on a side or without.
func TestRectangleIsABox(t *testing.T) {
	box := measure(t, Box{Length: 1.2, Width: 0.5, Height: 0.5, Wall: 0.01, Bottom: 0.015, Fill: 0.4})
	for _, points := range [][]Point{
		{{0, 0}, {1.2, 0}, {1.2, 0.5}, {0, 0.5}},
		{{0, 0}, {0.3, 0}, {1.2, 0}, {1.2, 0.5}, {0, 0.5}},
	} {
		requireMeasures(t, box, measure(t, Prism{Points: points, Height: 0.5, Wall: 0.01, Bottom: 0.015, Fill: 0.4}))
	}
}

// frustum shows that a sloping wall fits the same form: a square vessel whose
// sides grow from foot to rim.
type frustum struct{ foot, rim, height float64 }

func (f frustum) upright() upright { return upright{height: f.height, fill: f.height / 2} }

func (f frustum) outlines() (outside, inside outline, err error) { return f, f, nil }

func (f frustum) areaM2(h float64) float64 {
	side := f.foot + (f.rim-f.foot)*h/f.height
	return side * side
}

func TestSlopingWallsFit(t *testing.T) {
	m := measure(t, frustum{foot: 0.4, rim: 0.6, height: 0.9})
	require.InDelta(t, 0.9*(0.16+0.36+0.24)/3, m.GrossM3, 1e-12)
	require.InDelta(t, 0.45*(0.16+0.25+0.20)/3, m.WaterM3, 1e-12)
	require.InDelta(t, 0.25, m.SurfaceM2, 1e-12)
	require.InDelta(t, 0.16, m.FootprintM2, 1e-12)
}
