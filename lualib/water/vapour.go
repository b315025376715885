package water

import "math"

// Saturation constants n1 to n10 of IAPWS-IF97 region 4, table 34 (from
// memory; the release's check values are reproduced to every printed digit).
const (
	n1, n2  = 0.11670521452767e4, -0.72421316703206e6
	n3, n4  = -0.17073846940092e2, 0.12020824702470e5
	n5, n6  = -0.32325550322333e7, 0.14915108613530e2
	n7, n8  = -0.48232657361591e4, 0.40511340542057e6
	n9, n10 = -0.23855557567849, 0.65017534844798e3
)

// VapourPressurePa gives the pressure of water vapour in balance with water.
//
// Units: practical salinity (PSU), degrees Celsius (ITS-90); Pa.
// Valid range: 0 to 100 °C; 0 to 40 PSU, above 40 °C fresh water only.
// Accuracy: fresh water within 0.025 % (uncertainty of the release, from
// memory); the salt term lowers it by 1.9 % at 35 PSU, good to about 0.1 %.
// Source: IAPWS R7-97(2012), equation 30; Green & Carritt 1967 for the salt
// term, 1 - 0.000537 S (seen).
func VapourPressurePa(salinityPSU, temperatureC float64) (float64, error) {
	err := first(
		within("temperature", "degC", temperatureC, 0, 100),
		within("salinity", "PSU", salinityPSU, 0, 40))
	if err == nil && salinityPSU > 0 {
		err = within("temperature of salt water", "degC", temperatureC, 0, 40)
	}
	if err != nil {
		return 0, err
	}
	return 1e6 * saturationMPa(temperatureC+kelvinAt0C) * (1 - 0.000537*salinityPSU), nil
}

// SaturationTemperatureC gives the temperature at which pure water has a
// vapour pressure: the boiling point, or the dew point of air.
//
// Units: Pa; degrees Celsius (ITS-90).
// Valid range: 611.213 to 101,418 Pa, that is 0 to 100 °C.
// Accuracy: the exact inverse of VapourPressurePa.
// Source: IAPWS R7-97(2012), equation 31.
func SaturationTemperatureC(vapourPa float64) (float64, error) {
	if err := within("vapour pressure", "Pa", vapourPa, 611.2126, 101_419); err != nil {
		return 0, err
	}
	return saturationK(vapourPa/1e6) - kelvinAt0C, nil
}

// saturationMPa is equation 30, for 273.15 to 647.096 K.
func saturationMPa(kelvin float64) float64 {
	theta := kelvin + n9/(kelvin-n10)
	a := poly(theta, n2, n1, 1)
	b := poly(theta, n5, n4, n3)
	c := poly(theta, n8, n7, n6)
	return math.Pow(2*c/(-b+math.Sqrt(b*b-4*a*c)), 4)
}

// saturationK is equation 31, for 0.000611213 to 22.064 MPa.
func saturationK(mpa float64) float64 {
	beta := math.Sqrt(math.Sqrt(mpa))
	e := poly(beta, n6, n3, 1)
	f := poly(beta, n7, n4, n1)
	g := poly(beta, n8, n5, n2)
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	sum := n10 + d
	return (sum - math.Sqrt(sum*sum-4*(n9+n10*d))) / 2
}
