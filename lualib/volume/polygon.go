package volume

import (
	"fmt"
	"math"
	"slices"
)

// Point is a corner of an outline seen from above, in metres.
type Point struct{ X, Y float64 }

func (p Point) minus(q Point) Point           { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) along(q Point) float64         { return p.X*q.X + p.Y*q.Y }
func (p Point) cross(q Point) float64         { return p.X*q.Y - p.Y*q.X }
func (p Point) length() float64               { return math.Hypot(p.X, p.Y) }
func (p Point) step(d Point, t float64) Point { return Point{p.X + t*d.X, p.Y + t*d.Y} }

// String writes the point as it is given: (0.5, 0).
func (p Point) String() string { return fmt.Sprintf("(%.6g, %.6g)", p.X, p.Y) }

// maxPoints bounds the corners of a polygon, so that comparing every side with
// every other stays quick.
const maxPoints = 500

// polygon is a closed outline that does not cross itself, counter-clockwise.
type polygon []Point

// newPolygon checks the corners and turns them counter-clockwise. The first
// corner may be repeated at the end.
func newPolygon(points []Point) (polygon, error) {
	p := polygon(slices.Clone(points))
	if len(p) > 1 && p[0] == p[len(p)-1] {
		p = p[:len(p)-1]
	}
	if len(p) < 3 || len(p) > maxPoints {
		return nil, fmt.Errorf("points: got %d corners, want 3 to %d", len(p), maxPoints)
	}
	for i, corner := range p {
		if !(math.Abs(corner.X) <= maxM && math.Abs(corner.Y) <= maxM) {
			return nil, fmt.Errorf("points: got corner %d at %v, want coordinates within %g m", i+1, corner, maxM)
		}
		if next := p.at(i + 1); next == corner {
			return nil, fmt.Errorf("points: got corners %d and %d both at %v, want each corner once", i+1, (i+1)%len(p)+1, corner)
		}
	}
	if i, j, crossed := p.crossing(); crossed {
		return nil, fmt.Errorf("points: got a side from %v to %v that meets the side from %v to %v, want an outline that does not cross itself",
			p.at(i), p.at(i+1), p.at(j), p.at(j+1))
	}
	if p.area() < 0 {
		slices.Reverse(p)
	}
	return p, nil
}

// at is the corner i, counting round and round.
func (p polygon) at(i int) Point { return p[(i+len(p))%len(p)] }

// side is the vector from corner i to the next.
func (p polygon) side(i int) Point { return p.at(i + 1).minus(p.at(i)) }

// area is the area inside, negative for a clockwise outline (shoelace formula,
// taken from the first corner so that a far-off origin costs no digits).
func (p polygon) area() float64 {
	sum := 0.0
	for i := 1; i+1 < len(p); i++ {
		sum += p[i].minus(p[0]).cross(p[i+1].minus(p[0]))
	}
	return sum / 2
}

// crossing finds two sides that touch elsewhere than in a shared corner.
func (p polygon) crossing() (i, j int, found bool) {
	for i := range p {
		for j := i + 1; j < len(p); j++ {
			if p.touch(i, j) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// touch tells whether two sides of the polygon meet where they should not.
func (p polygon) touch(i, j int) bool {
	switch {
	case j == i+1:
		return p.foldsBack(j)
	case i == 0 && j == len(p)-1:
		return p.foldsBack(0)
	}
	a, b, c, d := p.at(i), p.at(i+1), p.at(j), p.at(j+1)
	ab, cd := b.minus(a), d.minus(c)
	c1, c2 := ab.cross(c.minus(a)), ab.cross(d.minus(a))
	a1, a2 := cd.cross(a.minus(c)), cd.cross(b.minus(c))
	if opposite(c1, c2) && opposite(a1, a2) {
		return true
	}
	return on(c, a, b, c1) || on(d, a, b, c2) || on(a, c, d, a1) || on(b, c, d, a2)
}

// foldsBack tells whether the outline returns on itself at a corner.
func (p polygon) foldsBack(i int) bool {
	into, out := p.side(i-1), p.side(i)
	return into.cross(out) == 0 && into.along(out) < 0
}

// opposite tells whether two numbers lie on different sides of 0.
func opposite(x, y float64) bool { return x < 0 && y > 0 || x > 0 && y < 0 }

// on tells whether a point, whose cross product with the side from a to b is
// known, lies on that side.
func on(q, a, b Point, cross float64) bool {
	return cross == 0 && q.minus(a).along(q.minus(b)) <= 0
}
