package salinity

// The temperatures at which the linear rule is offered: beyond them it is
// wrong by more than 2.3 %.
const (
	minSpecificC = 5.0
	maxSpecificC = 35.0
)

// perC is the rise of conductivity per °C that meters take.
// Source: instrument manuals, 1.91 % per °C (Standard Methods 2510 B, from
// memory); some meters take 2 %.
const perC = 0.0191

// greatestMSPerCm lies above what 42 PSU conduct at any temperature in range.
const greatestMSPerCm = 100.0

// SpecificConductance brings a conductivity to 25 °C by the straight line that
// meters use. It is meant for fresh water and for comparing with a display;
// for salinity use FromConductivity.
//
// Units: mS/cm, degrees Celsius; mS/cm at 25 °C.
// Valid range: 0 to 100 mS/cm, 5 to 35 °C.
// Accuracy: for sea salt up to 1.1 % off between 10 and 32 °C, up to 2.3 % beyond.
// Source: C/(1 + 0.0191 (t - 25)), instrument manuals.
func SpecificConductance(mSPerCm, temperatureC float64) (float64, error) {
	if err := checkSpecific(mSPerCm, temperatureC); err != nil {
		return 0, err
	}
	return mSPerCm / (1 + perC*(temperatureC-25)), nil
}

// FromSpecificConductance gives back the conductivity at the water's own
// temperature from a display that a meter brought to 25 °C.
//
// Units: mS/cm at 25 °C, degrees Celsius; mS/cm.
// Valid range: as SpecificConductance.
// Accuracy: exact if the meter takes 1.91 % per °C; a meter of 2 % is up to
// 3 % off at 5 °C, 1 % at 35 °C.
// Source: as SpecificConductance.
func FromSpecificConductance(mSPerCm25, temperatureC float64) (float64, error) {
	if err := checkSpecific(mSPerCm25, temperatureC); err != nil {
		return 0, err
	}
	return mSPerCm25 * (1 + perC*(temperatureC-25)), nil
}

func checkSpecific(mSPerCm, temperatureC float64) error {
	if err := within("conductivity", "mS/cm", mSPerCm, 0, greatestMSPerCm); err != nil {
		return err
	}
	return within("temperature", "degC", temperatureC, minSpecificC, maxSpecificC)
}
