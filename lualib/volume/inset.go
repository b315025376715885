package volume

import "fmt"

// inset moves every side of the polygon inward by the wall, as flat panes of
// one thickness meet, and refuses a wall that leaves no such outline: a side
// would vanish, or the inside would fall apart at a narrow place.
func (p polygon) inset(wall float64) (polygon, error) {
	if wall == 0 {
		return p, nil
	}
	in := make(polygon, len(p))
	for i := range p {
		in[i] = p.mitre(i, wall)
	}
	for i := range p {
		if side := p.side(i); !(in.side(i).along(side) > slack*side.along(side)) {
			return nil, fmt.Errorf("wall: got %.6g m, want it thin enough to leave an inside along the side from %v to %v (%.6g m)",
				wall, p.at(i), p.at(i+1), side.length())
		}
	}
	if i, j, crossed := in.crossing(); crossed {
		return nil, fmt.Errorf("wall: got %.6g m, want it so thin that the insides of the side from %v to %v and the side from %v to %v do not meet",
			wall, p.at(i), p.at(i+1), p.at(j), p.at(j+1))
	}
	return in, nil
}

// mitre is the inside corner i: where its two sides meet once both have moved
// to the left, inward, by the wall.
func (p polygon) mitre(i int, wall float64) Point {
	into, out := unit(p.side(i-1)), unit(p.side(i))
	// The inside corner lies along the sum of the two inward normals.
	normals := Point{-into.Y - out.Y, into.X + out.X}
	return p.at(i).step(normals, wall/(1+into.along(out)))
}

// unit is a side's direction.
func unit(p Point) Point {
	return Point{p.X / p.length(), p.Y / p.length()}
}
