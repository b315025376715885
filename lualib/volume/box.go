package volume

// Box is a vessel with four walls at right angles. All lengths are in metres;
// Length, Width and Height are outside dimensions. See Measure for the range,
// the accuracy and what a Fill of Full means.
type Box struct {
	Length, Width, Height float64
	Wall, Bottom          float64 // thickness; 0 for none
	Fill                  float64 // height of water above the inside of the bottom
}

func (b Box) upright() upright { return upright{b.Height, b.Wall, b.Bottom, b.Fill} }

func (b Box) outlines() (outside, inside outline, err error) {
	for _, side := range []struct {
		name string
		m    float64
	}{{"length", b.Length}, {"width", b.Width}} {
		if err := length(side.name, side.m); err != nil {
			return nil, nil, err
		}
		if err := room(b.Wall, side.name, side.m); err != nil {
			return nil, nil, err
		}
	}
	return straight(b.Length * b.Width), straight((b.Length - 2*b.Wall) * (b.Width - 2*b.Wall)), nil
}
