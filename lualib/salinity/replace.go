package salinity

import "fmt"

// ReplaceM3 gives the water to draw, and to replace by as much of another, for
// a salinity between the two in one go.
//
// Units: m3 of water as it is now, practical salinity (PSU) read as g per kg
// of solution, degrees Celsius (ITS-90); m3.
// Valid range: volume above 0 to 10,000 m3, 0 to 42 PSU, to between from and
// with, -2 to 40 °C.
// Accuracy: exact for the balance; the volume after it differs by less than
// 0.04 % as unlike waters meet.
// Source: mass balance with EOS-80 densities.
func ReplaceM3(volumeM3, fromPSU, toPSU, withPSU, temperatureC float64) (float64, error) {
	if err := (Water{volumeM3, fromPSU, temperatureC}).check(); err != nil {
		return 0, err
	}
	if err := salinities([]string{"to", "with"}, toPSU, withPSU); err != nil {
		return 0, err
	}
	if (toPSU-fromPSU)*(withPSU-toPSU) < 0 {
		return 0, fmt.Errorf("to: got %.6g PSU, want it between the %.6g PSU of now and the new water's %.6g PSU", toPSU, fromPSU, withPSU)
	}
	return volumeM3 * replaced(fromPSU, toPSU, withPSU, temperatureC), nil
}

// replaced is the share of the volume to replace.
func replaced(from, to, with, temperatureC float64) float64 {
	if to == from {
		return 0
	}
	gone := density90(from, temperatureC) * (from - to)
	come := density90(with, temperatureC) * (to - with)
	return gone / (gone + come)
}
