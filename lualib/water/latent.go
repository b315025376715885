package water

// LatentHeatKJPerKg gives the heat that evaporates a kilogram of water.
//
// Units: degrees Celsius (ITS-90); kJ/kg.
// Valid range: 0 to 45 °C. The heat that salt adds is far below 0.1 %.
// Accuracy: within 0.0001 kJ/kg of IAPWS-IF97, in 451 points.
// Source: a polynomial fitted for this package to the enthalpies of saturated
// vapour and water of IAPWS-IF97, regions 2 and 1.
func LatentHeatKJPerKg(temperatureC float64) (float64, error) {
	if err := within("temperature", "degC", temperatureC, 0, 45); err != nil {
		return 0, err
	}
	return poly(temperatureC, 2500.93412, -2.38217632, 0.00140493942, -5.22151672e-05,
		9.12049472e-07, -1.08408546e-08, 5.45448861e-11), nil
}
