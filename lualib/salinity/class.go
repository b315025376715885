package salinity

// classes are the upper ends of the Venice System's zones, PSU; the end itself
// belongs to the next zone, save 40.
var classes = []struct {
	below float64
	name  string
}{
	{0.5, "fresh"},
	{5, "oligohaline"},
	{18, "mesohaline"},
	{30, "polyhaline"},
}

// Class names the zone of the Venice System that a salinity lies in: fresh
// below 0.5, oligohaline below 5, mesohaline below 18, polyhaline below 30,
// euhaline to 40, hyperhaline above.
//
// Units: practical salinity (PSU).
// Valid range: 0 to 42 PSU.
// Accuracy: a convention; the source leaves open where an end itself belongs.
// Source: Venice System, 1958 symposium on the classification of brackish
// waters (from memory).
func Class(salinityPSU float64) (string, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return "", err
	}
	for _, c := range classes {
		if salinityPSU < c.below {
			return c.name, nil
		}
	}
	if salinityPSU <= 40 {
		return "euhaline", nil
	}
	return "hyperhaline", nil
}
