package water

import "math"

// ChronicAmmoniaMgNPerL gives the total ammonia that fresh water may hold as a
// mean over 30 days. It protects mussels too and is strict for a tank of fish.
//
// Units: pH, degrees Celsius; mg/L of total ammonia as N.
// Valid range: pH 6.5 to 9, 0 to 30 °C, fresh water.
// Accuracy: exact for the criterion, which prints two digits.
// Source: US EPA 2013, EPA 822-R-13-001 (equation from memory; both brackets
// are 1 at pH 7, and 1.9 at pH 7 and 20 °C is met).
func ChronicAmmoniaMgNPerL(pH, temperatureC float64) (float64, error) {
	if err := checkCriterion(pH, temperatureC); err != nil {
		return 0, err
	}
	shape := 0.0278/(1+math.Pow(10, 7.688-pH)) + 1.1994/(1+math.Pow(10, pH-7.688))
	return 0.8876 * shape * 2.126 * math.Pow(10, 0.028*(20-math.Max(temperatureC, 7))), nil
}

// AcuteAmmoniaMgNPerL gives the total ammonia that fresh water without trout
// or salmon may hold for an hour.
//
// Units, valid range and accuracy: as ChronicAmmoniaMgNPerL.
// Source: US EPA 2013, EPA 822-R-13-001 (equation from memory; 17 at pH 7 and
// 20 °C is met).
func AcuteAmmoniaMgNPerL(pH, temperatureC float64) (float64, error) {
	if err := checkCriterion(pH, temperatureC); err != nil {
		return 0, err
	}
	shape := 0.0114/(1+math.Pow(10, 7.204-pH)) + 1.6181/(1+math.Pow(10, pH-7.204))
	return 0.7249 * shape * math.Min(51.93, 23.12*math.Pow(10, 0.036*(20-temperatureC))), nil
}

func checkCriterion(pH, temperatureC float64) error {
	return first(within("pH", "", pH, 6.5, 9), within("temperature", "degC", temperatureC, 0, 30))
}
