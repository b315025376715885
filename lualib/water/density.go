package water

import "weirbook/lualib/salinity"

// PureDensityKgPerM3 gives the density of fresh water at one atmosphere.
//
// Units: degrees Celsius (ITS-90); kg/m3.
// Valid range: -2 to 40 °C.
// Accuracy: 0.006 kg/m3 of printed tables.
// Source: EOS-80 at no salinity, as salinity.DensityKgPerM3.
func PureDensityKgPerM3(temperatureC float64) (float64, error) {
	return salinity.DensityKgPerM3(0, temperatureC)
}
