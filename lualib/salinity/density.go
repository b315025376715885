package salinity

import "math"

// ipts68PerITS90 turns an ITS-90 reading into the IPTS-68 temperature in which
// the equation of state was fitted, to about 0.001 °C between -2 and 40 °C.
// Source: Saunders 1990 (from memory).
const ipts68PerITS90 = 1.00024

// DensityKgPerM3 gives the density of fresh to sea water at one atmosphere.
//
// Units: practical salinity (PSU), degrees Celsius (ITS-90); kg/m3.
// Valid range: 0 to 42 PSU, -2 to 40 °C.
// Accuracy: within 0.00001 kg/m3 of the published check values, within
// 0.01 kg/m3 of TEOS-10; artificial salt mixes deviate more.
// Source: Millero & Poisson 1981, as printed in Fofonoff & Millard 1983,
// UNESCO Technical Papers in Marine Science 44, eqs 13 and 14.
func DensityKgPerM3(salinityPSU, temperatureC float64) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return 0, err
	}
	if err := within("temperature", "degC", temperatureC, MinC, MaxC); err != nil {
		return 0, err
	}
	return density90(salinityPSU, temperatureC), nil
}

// density90 is DensityKgPerM3 for arguments known to be in range.
func density90(psu, temperatureC float64) float64 {
	return density68(psu, temperatureC*ipts68PerITS90)
}

// density68 is eq. 13 with the temperature t in IPTS-68.
func density68(s, t float64) float64 {
	a := poly(t, 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9)
	b := poly(t, -5.72466e-3, 1.0227e-4, -1.6546e-6)
	const c = 4.8314e-4
	return pureWater68(t) + a*s + b*s*math.Sqrt(s) + c*s*s
}

// pureWater68 is eq. 14, the density of standard mean ocean water without
// salt, with the temperature t in IPTS-68.
func pureWater68(t float64) float64 {
	return poly(t, 999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9)
}

// poly sums coefficients times rising powers of x, by Horner's rule.
func poly(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = sum*x + coefficients[i]
	}
	return sum
}
