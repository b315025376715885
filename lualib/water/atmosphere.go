package water

import "math"

// SeaLevelKPa is the pressure of the standard atmosphere at sea level.
const SeaLevelKPa = 101.325

// StandardPressureKPa gives the mean air pressure at an altitude.
//
// Units: m above sea level; kPa.
// Valid range: -500 to 11,000 m.
// Accuracy: within 1 Pa of the printed standard atmosphere; the weather moves
// the true pressure by about 3 % either way (from memory).
// Source: standard atmosphere as in ASHRAE Fundamentals 2017, chapter 1,
// equation 3 (number from memory); table 1 seen.
func StandardPressureKPa(altitudeM float64) (float64, error) {
	if err := within("altitude", "m", altitudeM, -500, 11_000); err != nil {
		return 0, err
	}
	return SeaLevelKPa * math.Pow(1-2.25577e-5*altitudeM, 5.2559), nil
}
