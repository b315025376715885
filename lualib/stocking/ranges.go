package stocking

import "fmt"

// Ranges that several models share.
const (
	maxLengthCm = 300.0     // longer than any fish that is kept
	maxMassG    = 500_000.0 // a fish of 300 cm by the fusiform prior weighs 380 kg
)

// within refuses what lies outside low to high; NaN lies outside everything.
func within(name, unit string, got, low, high float64) error {
	if got >= low && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %.6g %s, want %g to %g %s", name, got, unit, low, high, unit)
}

// positive refuses what is not above 0 and at most high.
func positive(name, unit string, got, high float64) error {
	if got > 0 && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %.6g %s, want more than 0 and at most %.6g %s", name, got, unit, high, unit)
}
