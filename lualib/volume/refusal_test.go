package volume

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestRefusals(t *testing.T) {
	bowTie := []Point{{0, 0}, {1, 1}, {1, 0}, {0, 1}}
	// Two rooms of 1 x 1 m joined by a passage 0.1 m wide.
	dumbbell := []Point{{0, 0}, {1, 0}, {1, 0.45}, {1.2, 0.45}, {1.2, 0}, {2.2, 0}, {2.2, 1}, {1.2, 1}, {1.2, 0.55}, {1, 0.55}, {1, 1}, {0, 1}}
	tests := []struct {
		name  string
		shape Shape
		want  string
	}{
		{"no length", Box{Width: 1, Height: 1}, "length: got 0 m, want more than 0 m and at most 100 m"},
		{"millimetres", Box{Length: 1200, Width: 500, Height: 50}, "length: got 1200 m, want more than 0 m and at most 100 m"},
		{"negative width", Box{Length: 1, Width: -1, Height: 1}, "width: got -1 m, want more than 0 m and at most 100 m"},
		{"no height", Box{Length: 1, Width: 1}, "height: got 0 m, want more than 0 m and at most 100 m"},
		{"not a number", Box{Length: math.NaN(), Width: 1, Height: 1}, "length: got NaN m, want more than 0 m and at most 100 m"},
		{"negative wall", Box{Length: 1, Width: 1, Height: 1, Wall: -0.01}, "wall: got -0.01 m, want at least 0 m and at most 100 m"},
		{"infinite bottom", Box{Length: 1, Width: 1, Height: 1, Bottom: math.Inf(1)}, "bottom: got +Inf m, want at least 0 m and at most 100 m"},
		{"thick wall", Box{Length: 1, Width: 0.4, Height: 1, Wall: 0.2}, "wall: got 0.2 m, want less than 0.2 m, half the width of 0.4 m"},
		{"thick bottom", Box{Length: 1, Width: 1, Height: 0.5, Bottom: 0.5}, "bottom: got 0.5 m, want less than the height of 0.5 m"},
		{"above the rim", Box{Length: 1, Width: 1, Height: 0.5, Bottom: 0.01, Fill: 0.5},
			"fill: got 0.5 m, want at most the inside height of 0.49 m (height 0.5 m less bottom 0.01 m)"},
		{"negative fill", Box{Length: 1, Width: 1, Height: 0.5, Fill: -0.1}, "fill: got -0.1 m, want more than 0 m"},
		{"fill not a number", Box{Length: 1, Width: 1, Height: 0.5, Fill: math.NaN()}, "fill: got NaN m, want more than 0 m"},
		{"no diameter", Cylinder{Height: 1}, "diameter: got 0 m, want more than 0 m and at most 100 m"},
		{"thick round wall", Cylinder{Diameter: 0.5, Height: 1, Wall: 0.3}, "wall: got 0.3 m, want less than 0.25 m, half the diameter of 0.5 m"},
		{"no bow", Bow{Length: 1, Width: 0.5, Height: 1}, "bow: got 0 m, want at least 1e-06 m; without a bow the tank is a box"},
		{"too much bow", Bow{Length: 1, Width: 0.5, Bow: 0.6, Height: 1}, "bow: got 0.6 m, want at most 0.5 m, half the length of 1 m"},
		{"bow with thick walls", Bow{Length: 1, Width: 0.5, Bow: 0.1, Height: 1, Wall: 0.25},
			"wall: got 0.25 m, want less than 0.25 m, half the width of 0.5 m"},
		{"crossing", Prism{Points: bowTie, Height: 1},
			"points: got a side from (0, 0) to (1, 1) that meets the side from (1, 0) to (0, 1), want an outline that does not cross itself"},
		{"touching", Prism{Points: []Point{{0, 0}, {2, 0}, {2, 1}, {1, 0}, {0, 1}}, Height: 1},
			"points: got a side from (0, 0) to (2, 0) that meets the side from (2, 1) to (1, 0), want an outline that does not cross itself"},
		{"folding back", Prism{Points: []Point{{0, 0}, {2, 0}, {1, 0}, {1, 1}}, Height: 1},
			"points: got a side from (0, 0) to (2, 0) that meets the side from (2, 0) to (1, 0), want an outline that does not cross itself"},
		{"two corners", Prism{Points: []Point{{0, 0}, {1, 0}, {0, 0}}, Height: 1}, "points: got 2 corners, want 3 to 500"},
		{"too many corners", Prism{Points: make([]Point, 502), Height: 1}, "points: got 501 corners, want 3 to 500"},
		{"twice", Prism{Points: []Point{{0, 0}, {1, 0}, {1, 0}, {0, 1}}, Height: 1},
			"points: got corners 2 and 3 both at (1, 0), want each corner once"},
		{"far away", Prism{Points: []Point{{0, 0}, {1000, 0}, {0, 1}}, Height: 1},
			"points: got corner 2 at (1000, 0), want coordinates within 100 m"},
		{"thick walls in a triangle", Prism{Points: regular(3, 1), Height: 1, Wall: 0.3},
			"wall: got 0.3 m, want it thin enough to leave an inside along the side from (0.57735, 0) to (-0.288675, 0.5) (1 m)"},
		{"thick walls in a passage", Prism{Points: dumbbell, Height: 1, Wall: 0.06},
			"wall: got 0.06 m, want it so thin that the insides of the side from (1, 0) to (1, 0.45) and the side from (1.2, 0.55) to (1, 0.55) do not meet"},
		{"points and area", Prism{Points: bowTie, Area: 1, Height: 1},
			"points: got points as well as an area or a perimeter, want only one of them"},
		{"no area", Prism{Height: 1}, "area: got 0 m2, want more than 0 m2 and at most 10000 m2"},
		{"area without perimeter", Prism{Area: 1, Height: 1, Wall: 0.01},
			"wall: got 0.01 m and an area without a perimeter, want no wall, a perimeter or the corners"},
		{"short perimeter", Prism{Area: 1, Perimeter: 3, Height: 1}, "perimeter: got 3 m, want at least 3.54491 m, the circle round 1 m2"},
		{"thick walls round an area", Prism{Area: 1, Perimeter: 4, Height: 1, Wall: 0.5},
			"wall: got 0.5 m, want walls thin enough to leave an inside in 1 m2 with a perimeter of 4 m"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Measure(test.shape)
			require.EqualError(t, err, test.want)
		})
	}
}

// 0.3 m less 0.1 m is a little less than 0.2 m to a computer, not to a keeper.
func TestFillToTheRimIsNotAboveIt(t *testing.T) {
	m := measure(t, Box{Length: 1, Width: 1, Height: 0.3, Bottom: 0.1, Fill: 0.2})
	require.LessOrEqual(t, m.WaterM3, m.InsideM3)
	require.InDelta(t, 0.2, m.WaterM3, 1e-12)
}

func TestSubstrateRefusals(t *testing.T) {
	tests := []struct {
		volume, porosity, grain, water float64
		want                           string
	}{
		{-1, 0.4, 2650, 998, "bed: got -1 m3, want 0 to 10000 m3"},
		{1, 1, 2650, 998, "porosity: got 1, want at least 0 and less than 1"},
		{1, 40, 2650, 998, "porosity: got 40, want at least 0 and less than 1"},
		{1, math.NaN(), 2650, 998, "porosity: got NaN, want at least 0 and less than 1"},
		{1, 0.4, -2, 998, "grain density: got -2 kg/m3, want 0 to 10000 kg/m3"},
		{1, 0.4, 2650, 1e6, "water density: got 1e+06 kg/m3, want 0 to 10000 kg/m3"},
	}
	for _, test := range tests {
		_, err := Bed(test.volume, test.porosity, test.grain, test.water)
		require.EqualError(t, err, test.want)
	}
	_, err := Displaced(1, 1.5)
	require.EqualError(t, err, "porosity: got 1.5, want at least 0 and less than 1")
}
