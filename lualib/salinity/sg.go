package salinity

// ToSG gives the specific gravity of water of a salinity on a scale.
//
// Units: practical salinity (PSU), scale in degrees Celsius (ITS-90); a ratio
// of densities.
// Valid range: 0 to 42 PSU, reference temperatures -2 to 40 °C.
// Accuracy: the equation to its last digit; 0.000005 against TEOS-10 for
// reference temperatures of 14 to 26 °C, 0.00001 for 0 to 40 °C; in vacuo.
// Source: the definition, rho(S, sample)/rho(0, water), with EOS-80
// (UNESCO Technical Papers in Marine Science 44, eqs 13 and 14).
func ToSG(salinityPSU float64, scale SGScale) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return 0, err
	}
	if err := scale.check(); err != nil {
		return 0, err
	}
	return scale.sg(salinityPSU), nil
}

// FromSG gives the salinity at which a specific gravity stands on a scale.
// The reading is one at the scale's own temperature; at any other
// CorrectHydrometer applies.
//
// Units: ratio of densities, scale in degrees Celsius (ITS-90); PSU.
// Valid range: what 0 to 42 PSU give on the scale, reference temperatures -2
// to 40 °C.
// Accuracy: undoes ToSG to 0.000000001 PSU; 0.0001 of specific gravity is
// about 0.13 PSU.
// Source: as ToSG, solved by halving.
func FromSG(sg float64, scale SGScale) (float64, error) {
	if err := scale.check(); err != nil {
		return 0, err
	}
	if err := scale.holds(sg); err != nil {
		return 0, err
	}
	return scale.psu(sg), nil
}
