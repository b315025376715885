package water

import "math"

// HeatCapacityJPerKgK gives the heat that warms a kilogram of fresh to sea
// water by one kelvin.
//
// Units: practical salinity (PSU), degrees Celsius (ITS-90); J/(kg K).
// Valid range: 0 to 40 PSU, 0 to 40 °C; above 35 °C extrapolated, as in the
// printed table.
// Accuracy: within 4.3 J/(kg K) of TEOS-10 and of printed freshwater values.
// Source: Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science
// 44, equation 26 (constants from memory; all printed values reproduced).
func HeatCapacityJPerKgK(salinityPSU, temperatureC float64) (float64, error) {
	err := first(
		within("salinity", "PSU", salinityPSU, 0, 40),
		within("temperature", "degC", temperatureC, 0, 40))
	if err != nil {
		return 0, err
	}
	return heatCapacity68(salinityPSU, temperatureC*ipts68PerITS90), nil
}

// heatCapacity68 is equation 26 with the temperature in IPTS-68.
func heatCapacity68(s, t float64) float64 {
	pure := poly(t, 4217.4, -3.720283, 0.1412855, -2.654387e-3, 2.093236e-5)
	a := poly(t, -7.643575, 0.1072763, -1.38385e-3)
	b := poly(t, 0.1770383, -4.07718e-3, 5.148e-5)
	return pure + a*s + b*s*math.Sqrt(s)
}
