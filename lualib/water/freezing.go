package water

import "math"

// FreezingPointC gives the temperature at which sea water begins to freeze.
//
// Units: practical salinity (PSU); degrees Celsius.
// Valid range: 4 to 40 PSU, at the surface; fresh water freezes at 0 °C.
// Accuracy: within 0.004 °C of TEOS-10.
// Source: Millero & Leung 1976 as in Fofonoff & Millard 1983, UNESCO Technical
// Papers in Marine Science 44, equation 25 (seen).
func FreezingPointC(salinityPSU float64) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, 4, 40); err != nil {
		return 0, err
	}
	s := salinityPSU
	return s * (-0.0575 + 1.710523e-3*math.Sqrt(s) - 2.154996e-4*s), nil
}
