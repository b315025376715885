package volume

import (
	"fmt"
	"math"
)

// Bow is a box whose front is an arc of a circle: Width is the depth from
// front to back at the two ends, Bow the extra depth in the middle. All
// lengths are in metres; all but Wall, Bottom and Fill are outside dimensions.
// See Measure for the range, the accuracy and what a Fill of Full means; Bow
// is at least 1e-6 m and at most half the length (a half circle).
type Bow struct {
	Length, Width, Bow, Height float64
	Wall, Bottom               float64 // thickness; 0 for none
	Fill                       float64 // height of water above the inside of the bottom
}

// leastBowM is far below what can be built; under it the arc's radius would
// outgrow the digits of a float64.
const leastBowM = 1e-6

func (b Bow) upright() upright { return upright{b.Height, b.Wall, b.Bottom, b.Fill} }

func (b Bow) outlines() (outside, inside outline, err error) {
	back := Box{Length: b.Length, Width: b.Width, Wall: b.Wall}
	if _, _, err := back.outlines(); err != nil {
		return nil, nil, err
	}
	if !(b.Bow >= leastBowM) {
		return nil, nil, fmt.Errorf("bow: got %.6g m, want at least %g m; without a bow the tank is a box", b.Bow, leastBowM)
	}
	if b.Bow > b.Length/2*(1+slack) {
		return nil, nil, fmt.Errorf("bow: got %.6g m, want at most %.6g m, half the length of %.6g m", b.Bow, b.Length/2, b.Length)
	}
	return straight(b.Length*b.Width + segment(b.Length, b.Bow)), straight(b.insideM2()), nil
}

// insideM2 is the area inside the walls: the front arc keeps its centre and
// loses the wall from its radius, the three straight sides move in by the wall.
func (b Bow) insideM2() float64 {
	half := b.Length / 2
	radius := (half*half + b.Bow*b.Bow) / (2 * b.Bow)
	// Where the inside arc meets the inside of the end walls the depth has
	// shrunk by lost. Written as a quotient, since for a flat bow the radius is
	// long and the plain difference of two roots would lose its digits.
	reach := radius - b.Bow
	gap := 2 * b.Wall * (radius - half)
	lost := 0.0
	if gap > 0 {
		lost = gap / (reach + math.Sqrt(math.Max(reach*reach-gap, 0)))
	}
	chord := b.Length - 2*b.Wall
	return chord*(b.Width-lost-b.Wall) + segment(chord, b.Bow-b.Wall+lost)
}

// segment is the area between a chord and the arc that rises by sagitta above
// its middle: r^2 (a - sin a)/2 with a the angle of the whole arc.
func segment(chord, sagitta float64) float64 {
	radius := (chord*chord/4 + sagitta*sagitta) / (2 * sagitta)
	angle := 4 * math.Atan2(2*sagitta, chord)
	return radius * radius * lessSine(angle) / 2
}

// lessSine is x - sin x, by its series where the difference would lose digits.
func lessSine(x float64) float64 {
	if x > 0.5 {
		return x - math.Sin(x)
	}
	term := x * x * x / 6
	sum := term
	for n := 4.0; n <= 12; n += 2 {
		term *= -x * x / (n * (n + 1))
		sum += term
	}
	return sum
}
