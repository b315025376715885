package salinity

// The temperatures of the practical salinity scale.
// Source: UNESCO 44, eqs 1 to 6.
const (
	MinConductivityC = -2.0
	MaxConductivityC = 35.0
)

// FromConductivity gives the practical salinity of water from its conductivity
// at its own temperature. A meter that shows a value brought to 25 °C is read
// with FromSpecificConductance first.
//
// Units: mS/cm, degrees Celsius (ITS-90); PSU.
// Valid range: what 0 to 42 PSU conduct, -2 to 35 °C, one atmosphere.
// Accuracy: within 0.000002 PSU of the published check values and of the
// TEOS-10 toolbox; salts other than sea salt conduct otherwise, and
// below about 0.5 PSU tap water does.
// Source: PSS-78 (Lewis 1980), UNESCO Technical Papers in Marine Science 44,
// eqs 1 to 3; below 2 PSU Hill, Dauphinee & Woods 1986 as in TEOS-10.
func FromConductivity(mSPerCm, temperatureC float64) (float64, error) {
	if err := within("temperature", "degC", temperatureC, MinConductivityC, MaxConductivityC); err != nil {
		return 0, err
	}
	if err := within("conductivity", "mS/cm", mSPerCm, 0, conducted(MaxPSU, temperatureC)); err != nil {
		return 0, err
	}
	return fromConducted(mSPerCm, temperatureC), nil
}

// ToConductivity gives the conductivity of water of a salinity.
//
// Units: PSU, degrees Celsius (ITS-90); mS/cm.
// Valid range: 0 to 42 PSU, -2 to 35 °C, one atmosphere.
// Accuracy: undoes FromConductivity to 0.000001 mS/cm; pure water is given
// 0.0007 to 0.0022 mS/cm.
// Source: as FromConductivity, solved by halving.
func ToConductivity(salinityPSU, temperatureC float64) (float64, error) {
	if err := within("salinity", "PSU", salinityPSU, MinPSU, MaxPSU); err != nil {
		return 0, err
	}
	if err := within("temperature", "degC", temperatureC, MinConductivityC, MaxConductivityC); err != nil {
		return 0, err
	}
	return conducted(salinityPSU, temperatureC), nil
}

func fromConducted(mSPerCm, temperatureC float64) float64 {
	t68 := temperatureC * ipts68PerITS90
	return practical(mSPerCm/(standardMSPerCm*ratioAt(t68)), t68)
}

func conducted(psu, temperatureC float64) float64 {
	t68 := temperatureC * ipts68PerITS90
	return standardMSPerCm * ratioAt(t68) * ratioOf(psu, t68)
}
