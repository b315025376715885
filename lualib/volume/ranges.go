package volume

import "fmt"

// maxM bounds every length in metres: larger than any tank, small enough to
// catch millimetres given as metres.
const maxM = 100.0

// length refuses a length that is not above 0 and at most maxM.
func length(name string, m float64) error {
	if m > 0 && m <= maxM {
		return nil
	}
	return fmt.Errorf("%s: got %.6g m, want more than 0 m and at most %g m", name, m, maxM)
}

// thickness refuses a thickness below 0 or above maxM; 0 is a bare outline.
func thickness(name string, m float64) error {
	if m >= 0 && m <= maxM {
		return nil
	}
	return fmt.Errorf("%s: got %.6g m, want at least 0 m and at most %g m", name, m, maxM)
}

// room refuses walls that meet in the middle of a width.
func room(wall float64, name string, width float64) error {
	if width-2*wall > slack*width {
		return nil
	}
	return fmt.Errorf("wall: got %.6g m, want less than %.6g m, half the %s of %.6g m", wall, width/2, name, width)
}
