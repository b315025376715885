package salinity

// GramsPerKg gives the salt in a kilogram of solution whose practical salinity
// was found by conductivity, if it has the composition of sea water.
//
// Units: PSU; g of salt per kg of solution.
// Valid range: 0 to 42 PSU.
// Accuracy: exact for sea water of the reference composition, where it is
// 0.47 % above the practical salinity; artificial mixes deviate more.
// Source: TEOS-10, S_R = 35.16504/35 S_P.
func GramsPerKg(salinityPSU float64) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return 0, err
	}
	return referenceSalt * salinityPSU, nil
}

// GramsPerL gives the salt in a litre of finished water, with practical
// salinity read as g per kg of solution.
//
// Units: PSU, degrees Celsius (ITS-90); g of salt per L of solution.
// Valid range: 0 to 42 PSU, -2 to 40 °C.
// Accuracy: that of DensityKgPerM3.
// Source: the definition, salinity times density.
func GramsPerL(salinityPSU, temperatureC float64) (float64, error) {
	density, err := DensityKgPerM3(salinityPSU, temperatureC)
	if err != nil {
		return 0, err
	}
	return salinityPSU * density / 1000, nil
}

// FromMasses gives the salinity of dry salt dissolved in pure water.
//
// Units: kg of dry salt, kg of water; PSU, as g per kg of solution.
// Valid range: salt 0 to 10,000,000 kg, water above 0 to 10,000,000 kg, and a
// result of at most 42 PSU.
// Accuracy: exact for the definition.
// Source: the definition, 1000 salt/(salt + water).
func FromMasses(saltKg, waterKg float64) (float64, error) {
	if err := within("salt", "kg", saltKg, 0, 1000*maxAmount); err != nil {
		return 0, err
	}
	if err := positive("water", "kg", waterKg, 1000*maxAmount); err != nil {
		return 0, err
	}
	psu := 1000 * saltKg / (saltKg + waterKg)
	return psu, within("salinity", "PSU", psu, MinPSU, MaxPSU)
}
