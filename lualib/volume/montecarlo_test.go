package volume

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Points are thrown at a block round the tank and counted by rules that know
// nothing of the formulas: how far a point lies from the walls. The count must
// agree with the formula within four standard errors.
func TestMonteCarlo(t *testing.T) {
	bow := Bow{Length: 1.5, Width: 0.5, Bow: 0.2, Height: 0.6, Wall: 0.05, Bottom: 0.04, Fill: 0.5}
	deep := Bow{Length: 0.8, Width: 0.3, Bow: 0.38, Height: 0.6, Wall: 0.03, Bottom: 0.04, Fill: 0.3}
	kite := Prism{Points: []Point{{0, 0}, {0.9, -0.2}, {1.4, 0.5}, {0.2, 0.7}}, Height: 0.6, Wall: 0.04, Bottom: 0.05, Fill: 0.41}
	corner := Prism{Points: ell, Height: 0.6, Wall: 0.06, Bottom: 0.05, Fill: 0.5}
	tests := []struct {
		name  string
		shape Shape
		depth func(x, y float64) float64 // how far inside the outside outline
		up    upright
	}{
		{"box", Box{Length: 1.2, Width: 0.5, Height: 0.6, Wall: 0.04, Bottom: 0.03, Fill: 0.35}, func(x, y float64) float64 {
			return min(x, 1.2-x, y, 0.5-y)
		}, upright{0.6, 0.04, 0.03, 0.35}},
		{"cylinder", Cylinder{Diameter: 0.9, Height: 0.6, Wall: 0.04, Bottom: 0.03, Fill: 0.35}, func(x, y float64) float64 {
			return 0.45 - math.Hypot(x-0.45, y-0.45)
		}, upright{0.6, 0.04, 0.03, 0.35}},
		{"bow", bow, bowDepth(bow), bow.upright()},
		{"deep bow", deep, bowDepth(deep), deep.upright()},
		{"kite", kite, func(x, y float64) float64 { return convexDepth(kite.Points, x, y) }, kite.upright()},
		{"L", corner, ellDepth, corner.upright()},
	}
	for i, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(1, uint64(i)))
			m := measure(t, test.shape)
			gross, inside, water := throw(random, test.depth, test.up)
			gross.requireNear(t, m.GrossM3)
			inside.requireNear(t, m.InsideM3)
			water.requireNear(t, m.WaterM3)
		})
	}
}

// The block that points are thrown at, in metres, and the number of points.
const (
	fromX, toX, fromY, toY, toZ = 0.0, 1.5, -0.2, 1.0, 0.6
	throws                      = 200_000
)

// count is the number of points that hit.
type count int

// requireNear compares the share of hits with a volume.
func (c count) requireNear(t *testing.T, volumeM3 float64) {
	t.Helper()
	const block = (toX - fromX) * (toY - fromY) * toZ
	share := float64(c) / throws
	standardError := block * math.Sqrt(share*(1-share)/throws)
	require.InDelta(t, volumeM3, block*share, 4*standardError)
}

// throw counts the points in the whole tank, inside its walls, and in its water.
func throw(random *rand.Rand, depth func(x, y float64) float64, u upright) (gross, inside, water count) {
	for range throws {
		x := fromX + random.Float64()*(toX-fromX)
		y := fromY + random.Float64()*(toY-fromY)
		z := random.Float64() * toZ
		d := depth(x, y)
		if d > 0 {
			gross++
		}
		if d > u.wall && z > u.bottom {
			inside++
			if z < u.bottom+u.fill {
				water++
			}
		}
	}
	return gross, inside, water
}

// bowDepth measures to the back, the two ends and the arc.
func bowDepth(b Bow) func(x, y float64) float64 {
	radius := b.Bow/2 + b.Length*b.Length/(8*b.Bow)
	middle := b.Width + b.Bow - radius
	return func(x, y float64) float64 {
		straight := min(x, b.Length-x, y)
		if y < b.Width && y < middle {
			return straight // behind the centre only the straight sides count
		}
		return min(straight, radius-math.Hypot(x-b.Length/2, y-middle))
	}
}

// convexDepth is the least distance to the sides of a counter-clockwise outline.
func convexDepth(points []Point, x, y float64) float64 {
	least := math.Inf(1)
	for i, a := range points {
		b := points[(i+1)%len(points)]
		dx, dy := b.X-a.X, b.Y-a.Y
		least = min(least, (dx*(y-a.Y)-dy*(x-a.X))/math.Hypot(dx, dy))
	}
	return least
}

// ellDepth measures in the L as panes stand: to the outer sides, and to the
// notch as a square reaches into a square.
func ellDepth(x, y float64) float64 {
	outer := min(x, 1.5-x, y, 1-y)
	notch := max(0.6-x, 0.4-y)
	return min(outer, notch)
}
