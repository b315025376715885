package water

import "weirbook/lualib/salinity"

// ViscosityMPaS gives the dynamic viscosity of fresh to sea water.
//
// Units: practical salinity (PSU), read as g/kg, degrees Celsius; mPa s.
// Valid range: 0 to 42 PSU, 0 to 40 °C.
// Accuracy: 1.5 %; without salt within 0.03 % of PureViscosityMPaS, with salt
// -0.9 to +1.1 % of the older correlation of Boudreau 1997.
// Source: Sharqawy, Lienhard & Zubair 2010, equations 22 and 23 (all from
// memory).
func ViscosityMPaS(salinityPSU, temperatureC float64) (float64, error) {
	err := first(
		within("salinity", "PSU", salinityPSU, 0, salinity.MaxPSU),
		within("temperature", "degC", temperatureC, 0, 40))
	if err != nil {
		return 0, err
	}
	t, s := temperatureC, salinityPSU/1000
	warm := t + 64.993
	pure := 4.2844e-5 + 1/(0.157*warm*warm-91.296)
	a := poly(t, 1.541, 1.998e-2, -9.52e-5)
	b := poly(t, 7.974, -7.561e-2, 4.724e-4)
	return 1000 * pure * poly(s, 1, a, b), nil
}

// KinematicViscosityMm2PerS gives the viscosity that pipe flow asks for.
//
// Units: as ViscosityMPaS; mm2/s.
// Valid range and accuracy: as ViscosityMPaS.
// Source: ViscosityMPaS over salinity.DensityKgPerM3.
func KinematicViscosityMm2PerS(salinityPSU, temperatureC float64) (float64, error) {
	dynamic, err := ViscosityMPaS(salinityPSU, temperatureC)
	if err != nil {
		return 0, err
	}
	density, err := salinity.DensityKgPerM3(salinityPSU, temperatureC)
	if err != nil {
		return 0, err
	}
	return 1000 * dynamic / density, nil
}
