package volume

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Random outlines with inner corners: whatever inset lets through must keep
// every inside corner at least a wall away from every side.
func TestInsetKeepsItsDistance(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 3))
	passed, refused := 0, 0
	for range 3000 {
		p, err := newPolygon(star(random))
		require.NoError(t, err)
		wall := 0.6 * random.Float64()
		in, err := p.inset(wall)
		if err != nil {
			refused++
			continue
		}
		passed++
		require.Less(t, in.area(), p.area())
		for _, corner := range in {
			for i := range p {
				require.GreaterOrEqual(t, distance(corner, p.at(i), p.at(i+1)), wall-1e-9, "wall %g of %v", wall, p)
			}
		}
	}
	require.Greater(t, passed, 500)
	require.Greater(t, refused, 500)
}

// star gives corners round the origin at rising angles and random distances.
func star(random *rand.Rand) []Point {
	corners := 4 + random.IntN(6)
	var points []Point
	for i := range corners {
		angle := 2 * math.Pi * (float64(i) + 0.5*random.Float64()) / float64(corners)
		radius := 0.3 + 0.7*random.Float64()
		points = append(points, Point{radius * math.Cos(angle), radius * math.Sin(angle)})
	}
	return points
}

// distance is from a point to a side.
func distance(p, a, b Point) float64 {
	side := b.minus(a)
	t := p.minus(a).along(side) / side.along(side)
	return p.minus(a.step(side, min(max(t, 0), 1))).length()
}
