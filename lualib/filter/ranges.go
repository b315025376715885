package filter

import "fmt"

// Bounds that several functions share.
const (
	maxGPerDay = 100_000.0 // of feed; a farm of 100 kg a day
	maxL       = 1e7
)

// within refuses what lies outside low to high; NaN lies outside everything.
func within(name, unit string, got, low, high float64) error {
	if got >= low && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %s, want %.6g to %s", name, amount(got, unit), low, amount(high, unit))
}

// positive refuses what is not above 0 and at most high.
func positive(name, unit string, got, high float64) error {
	if got > 0 && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %s, want more than 0 and at most %s", name, amount(got, unit), amount(high, unit))
}

// amount writes a number with its unit, if it has one.
func amount(value float64, unit string) string {
	if unit == "" {
		return fmt.Sprintf("%.6g", value)
	}
	return fmt.Sprintf("%.6g %s", value, unit)
}

// first gives the first error of a list of checks.
func first(checks ...error) error {
	for _, err := range checks {
		if err != nil {
			return err
		}
	}
	return nil
}

// Range is a lower and an upper value, for what is not known better.
type Range struct{ Low, High float64 }

func (r Range) times(factor float64) Range { return Range{factor * r.Low, factor * r.High} }
