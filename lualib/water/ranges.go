package water

import "fmt"

const (
	kelvinAt0C = 273.15
	// maxL bounds a volume in litres: far above any tank.
	maxL = 1e7
	// ipts68PerITS90 turns an ITS-90 reading into IPTS-68, in which the older
	// equations were fitted. Source: Saunders 1990 (from memory).
	ipts68PerITS90 = 1.00024
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

// poly sums coefficients times rising powers of x, by Horner's rule.
func poly(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = sum*x + coefficients[i]
	}
	return sum
}
