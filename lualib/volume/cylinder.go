package volume

import "math"

// Cylinder is a round vessel standing upright. All lengths are in metres;
// Diameter and Height are outside dimensions. See Measure for the range, the
// accuracy and what a Fill of Full means.
type Cylinder struct {
	Diameter, Height float64
	Wall, Bottom     float64 // thickness; 0 for none
	Fill             float64 // height of water above the inside of the bottom
}

func (c Cylinder) upright() upright { return upright{c.Height, c.Wall, c.Bottom, c.Fill} }

func (c Cylinder) outlines() (outside, inside outline, err error) {
	if err := length("diameter", c.Diameter); err != nil {
		return nil, nil, err
	}
	if err := room(c.Wall, "diameter", c.Diameter); err != nil {
		return nil, nil, err
	}
	return disc(c.Diameter), disc(c.Diameter - 2*c.Wall), nil
}

// disc is a circle by its diameter.
func disc(diameterM float64) straight { return straight(math.Pi * diameterM * diameterM / 4) }
