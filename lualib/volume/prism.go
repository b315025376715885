package volume

import (
	"errors"
	"fmt"
	"math"
)

// Prism is a vessel with upright walls on any outline: the corners of its
// outside in order, or only its outside area. Lengths are in metres, Area in
// m2. See Measure for the range, the accuracy and what a Fill of Full means.
//
// With corners the walls are flat panes that meet in mitres, so the inside is
// the outline with every side moved in by Wall. With an area alone no wall can
// be taken off; with Area and Perimeter the inside is Area - Perimeter*Wall +
// 4*Wall^2, which is exact where all corners are right angles and wrong by
// less than one Wall^2 for a circle or a regular polygon of five or more sides.
type Prism struct {
	Points          []Point
	Area, Perimeter float64
	Height          float64
	Wall, Bottom    float64 // thickness; 0 for none
	Fill            float64 // height of water above the inside of the bottom
}

func (p Prism) upright() upright { return upright{p.Height, p.Wall, p.Bottom, p.Fill} }

func (p Prism) outlines() (outside, inside outline, err error) {
	switch {
	case len(p.Points) > 0 && (p.Area != 0 || p.Perimeter != 0):
		return nil, nil, errors.New("points: got points as well as an area or a perimeter, want only one of them")
	case len(p.Points) > 0:
		return p.cornered()
	default:
		return p.bare()
	}
}

// cornered is the pair of outlines of a prism given by its corners.
func (p Prism) cornered() (outside, inside outline, err error) {
	out, err := newPolygon(p.Points)
	if err != nil {
		return nil, nil, err
	}
	in, err := out.inset(p.Wall)
	if err != nil {
		return nil, nil, err
	}
	return straight(out.area()), straight(in.area()), nil
}

// bare is the pair of outlines of a prism given by its area.
func (p Prism) bare() (outside, inside outline, err error) {
	if !(p.Area > 0 && p.Area <= maxM*maxM) {
		return nil, nil, fmt.Errorf("area: got %.6g m2, want more than 0 m2 and at most %g m2", p.Area, maxM*maxM)
	}
	if p.Perimeter == 0 {
		if p.Wall > 0 {
			return nil, nil, fmt.Errorf("wall: got %.6g m and an area without a perimeter, want no wall, a perimeter or the corners", p.Wall)
		}
		return straight(p.Area), straight(p.Area), nil
	}
	round := 2 * math.Sqrt(math.Pi*p.Area)
	if !(p.Perimeter >= round*(1-slack) && p.Perimeter <= 1000*maxM) {
		return nil, nil, fmt.Errorf("perimeter: got %.6g m, want at least %.6g m, the circle round %.6g m2", p.Perimeter, round, p.Area)
	}
	left := p.Area - p.Perimeter*p.Wall + 4*p.Wall*p.Wall
	if p.Wall >= p.Perimeter/8 || left <= slack*p.Area {
		return nil, nil, fmt.Errorf("wall: got %.6g m, want walls thin enough to leave an inside in %.6g m2 with a perimeter of %.6g m",
			p.Wall, p.Area, p.Perimeter)
	}
	return straight(p.Area), straight(left), nil
}
