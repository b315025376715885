package water

// Outcome is what a reading means beside the limits.
type Outcome string

// The outcomes, from good to bad.
const (
	Pass    Outcome = "pass"
	Caution Outcome = "caution"
	Fail    Outcome = "fail"
)

// Verdict is an outcome with the limit that decided it.
type Verdict struct {
	Outcome Outcome
	Value   float64   // the reading, in the limit's unit
	Bound   float64   // the number it was compared with
	Limit   Threshold // where that number comes from
}

// saltFromPSU is where the salt water criteria begin; below it the stricter
// freshwater limits hold. Source: US EPA practice, 10 PSU (from memory).
const saltFromPSU = 10.0

// JudgeAmmonia compares un-ionised ammonia with the limits: in fresh and
// slightly brackish water 0.02 (caution) and 0.05 (fail), from 10 PSU on 0.035
// and 0.233.
//
// Units: mg/L counted as NH3, practical salinity (PSU).
// Valid range: 0 to 1,000 mg/L, 0 to 42 PSU.
// Accuracy: species differ by a factor of 10; see UnionisedAmmonia for the pH.
// Source: Thresholds.
func JudgeAmmonia(nh3MgPerL, salinityPSU float64) (Verdict, error) {
	if err := checkReading("un-ionised ammonia", nh3MgPerL, salinityPSU); err != nil {
		return Verdict{}, err
	}
	if salinityPSU >= saltFromPSU {
		return rising(nh3MgPerL, high(AmmoniaChronicSalt), high(AmmoniaAcuteSalt)), nil
	}
	return rising(nh3MgPerL, high(AmmoniaWorkingFresh), low(AmmoniaHarmFresh)), nil
}

// JudgeNitrite compares nitrite with the trade's limits, 0.2 in fresh water
// and 0.125 from 10 PSU on (caution), and in fresh water with the lowest lethal
// record, 1.7 (fail). Chloride protects: sea water has no fail.
//
// Units: mg/L counted as NO2, practical salinity (PSU).
// Valid range: 0 to 1,000 mg/L, 0 to 42 PSU.
// Accuracy: a factor of 10 by species and chloride; the record does not say
// whether it counts NO2 or N.
// Source: Thresholds.
func JudgeNitrite(no2MgPerL, salinityPSU float64) (Verdict, error) {
	if err := checkReading("nitrite", no2MgPerL, salinityPSU); err != nil {
		return Verdict{}, err
	}
	if salinityPSU >= saltFromPSU {
		return rising(no2MgPerL, high(NitriteWorkingSalt)), nil
	}
	return rising(no2MgPerL, high(NitriteWorkingFresh), low(NitriteLethalFresh)), nil
}

// JudgeNitrate compares nitrate with guidance for sensitive animals, 10 mg N/L
// in fresh water and 20 from 10 PSU on (caution), and with a legal ceiling of
// 200 mg NO3/L (fail).
//
// Units: mg/L counted as NO3, practical salinity (PSU).
// Valid range: 0 to 1,000 mg/L, 0 to 42 PSU.
// Accuracy: many hardy fish bear several times the guidance.
// Source: Thresholds; a value is turned into the limit's basis.
func JudgeNitrate(no3MgPerL, salinityPSU float64) (Verdict, error) {
	if err := checkReading("nitrate", no3MgPerL, salinityPSU); err != nil {
		return Verdict{}, err
	}
	ceiling := high(NitrateCeiling)
	if no3MgPerL > ceiling.bound {
		return Verdict{Fail, no3MgPerL, ceiling.bound, ceiling.from}, nil
	}
	guidance := high(NitrateFresh)
	if salinityPSU >= saltFromPSU {
		guidance = high(NitrateSalt)
	}
	return rising(no3MgPerL*MassN/gramsPerMolN[AsNO3], guidance), nil
}

// JudgeOxygen compares dissolved oxygen with the criteria for warm fresh
// water: below 5.5 caution, below 3.0 fail. Salt water has no row of its own
// and is judged by the same.
//
// Units: mg/L.
// Valid range: 0 to 60 mg/L.
// Accuracy: species differ; fish of cold water need more.
// Source: Thresholds.
func JudgeOxygen(oxygenMgPerL float64) (Verdict, error) {
	if err := within("oxygen", "mg/L", oxygenMgPerL, 0, 60); err != nil {
		return Verdict{}, err
	}
	worst, good := low(OxygenWarm), high(OxygenWarm)
	switch {
	case oxygenMgPerL < worst.bound:
		return Verdict{Fail, oxygenMgPerL, worst.bound, worst.from}, nil
	case oxygenMgPerL < good.bound:
		return Verdict{Caution, oxygenMgPerL, good.bound, good.from}, nil
	}
	return Verdict{Pass, oxygenMgPerL, good.bound, good.from}, nil
}

// level is one end of a threshold.
type level struct {
	bound float64
	from  Threshold
}

func high(id string) level {
	t, _ := ThresholdOf(id)
	return level{t.High, t}
}

func low(id string) level {
	t, _ := ThresholdOf(id)
	return level{t.Low, t}
}

// rising judges what is worse the more there is: above the first level is a
// caution, at the second, where there is one, a fail.
func rising(value float64, caution level, fail ...level) Verdict {
	for _, f := range fail {
		if value >= f.bound {
			return Verdict{Fail, value, f.bound, f.from}
		}
	}
	if value > caution.bound {
		return Verdict{Caution, value, caution.bound, caution.from}
	}
	return Verdict{Pass, value, caution.bound, caution.from}
}

func checkReading(name string, value, salinityPSU float64) error {
	return first(
		within(name, "mg/L", value, 0, 1000),
		within("salinity", "PSU", salinityPSU, 0, 42))
}
