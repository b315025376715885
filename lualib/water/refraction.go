package water

// RefractiveIndex gives the refractive index of fresh to sea water in yellow
// light (589.3 nm), to explain what a refractometer shows.
//
// Units: practical salinity (PSU), degrees Celsius; a plain number.
// Valid range: 0 to 40 PSU, 0 to 30 °C.
// Accuracy: 0.0003, about 1.6 PSU: not good enough to measure salinity with.
// Source: Quan & Fry 1995, Applied Optics 34:3477 (constants from memory; only
// two printed values, also from memory, stand behind them).
func RefractiveIndex(salinityPSU, temperatureC float64) (float64, error) {
	err := first(
		within("salinity", "PSU", salinityPSU, 0, 40),
		within("temperature", "degC", temperatureC, 0, 30))
	if err != nil {
		return 0, err
	}
	const nm = 589.3
	s, t := salinityPSU, temperatureC
	salt := poly(t, 1.779e-4, -1.05e-6, 1.6e-8) * s
	colour := poly(1/nm, 0, 15.868+0.01155*s-0.00423*t, -4382, 1.1455e6)
	return 1.31405 + salt - 2.02e-6*t*t + colour, nil
}
