package salinity

import "fmt"

// The range of the one-atmosphere equation of state: practical salinity and
// degrees Celsius. Source: Fofonoff & Millard 1983, eq. 13.
const (
	MinPSU = 0.0
	MaxPSU = 42.0
	MinC   = -2.0
	MaxC   = 40.0
)

// maxAmount bounds a volume in cubic metres and a mass in tonnes: far above
// any tank, low enough to catch litres given as cubic metres.
const maxAmount = 10_000.0

// within refuses what lies outside low to high; NaN lies outside everything.
func within(name, unit string, got, low, high float64) error {
	if got >= low && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %.6g %s, want %.6g to %.6g %s", name, got, unit, low, high, unit)
}

// positive refuses what is not above 0 and at most high.
func positive(name, unit string, got, high float64) error {
	if got > 0 && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %.6g %s, want more than 0 and at most %.6g %s", name, got, unit, high, unit)
}

// share refuses what is not a share of the water above 0 and at most all of it.
func share(name string, got float64) error {
	return positive(name, "of the water", got, 1)
}

// salinities refuses any named practical salinity outside the range.
func salinities(names []string, psu ...float64) error {
	for i, s := range psu {
		if err := within(names[i], "PSU", s, MinPSU, MaxPSU); err != nil {
			return err
		}
	}
	return nil
}
