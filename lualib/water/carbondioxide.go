package water

import "math"

// CarbonDioxide is the dissolved carbon dioxide that pH and alkalinity imply.
type CarbonDioxide struct {
	MgPerL     float64
	LowMgPerL  float64 // if the pH is 0.1 higher
	HighMgPerL float64 // if the pH is 0.1 lower
	// RuleMgPerL is the trade's rule, 3 times dKH times 10 to the 7 - pH.
	RuleMgPerL float64
	// RuleOffPercent is how far the rule stands off: -15 at 25 °C, -21 at 20 °C.
	RuleOffPercent float64
}

// CarbonDioxideOf gives the carbon dioxide dissolved in fresh water.
//
// Units: pH, alkalinity in meq/L, degrees Celsius, practical salinity (PSU);
// mg/L as CO2.
// Valid range: pH 6 to 8, 0.05 to 20 meq/L, 0 to 40 °C, 0 to 0.5 PSU. All
// alkalinity must be carbonate: phosphate buffers, humic acids and the borate
// of sea water break it, which no range can catch.
// Accuracy: an error of 0.1 pH is 26 %; no correction for ions, some 5 % (a
// judgement).
// Source: constants of Plummer & Busenberg 1982, Geochim. Cosmochim. Acta
// 46:1011 (seen in public code); the rule of three is common practice.
func CarbonDioxideOf(pH, alkalinityMeqPerL, temperatureC, salinityPSU float64) (CarbonDioxide, error) {
	err := first(
		within("pH", "", pH, 6, 8),
		within("alkalinity", "meq/L", alkalinityMeqPerL, 0.05, 20),
		within("temperature", "degC", temperatureC, 0, 40),
		within("salinity", "PSU", salinityPSU, 0, 0.5))
	if err != nil {
		return CarbonDioxide{}, err
	}
	of := func(pH float64) float64 { return carbonDioxide(pH, alkalinityMeqPerL, temperatureC) }
	rule := 3 * alkalinityMeqPerL * meqCaCO3 / degreeCaCO3 * math.Pow(10, 7-pH)
	return CarbonDioxide{
		MgPerL:         of(pH),
		LowMgPerL:      of(pH + meterPH),
		HighMgPerL:     of(pH - meterPH),
		RuleMgPerL:     rule,
		RuleOffPercent: 100 * (rule/of(pH) - 1),
	}, nil
}

// carbonDioxide shares alkalinity among the species of carbonate and water.
func carbonDioxide(pH, alkalinityMeqPerL, temperatureC float64) float64 {
	t := temperatureC + kelvinAt0C
	perBicarbonate := math.Pow(10, carbonicPK1(t)-pH)
	carbonate := math.Pow(10, pH-carbonicPK2(t))
	hydrogen, hydroxide := 1000*math.Pow(10, -pH), 1000*math.Pow(10, pH-waterPK(t))
	return massCO2 * (alkalinityMeqPerL + hydrogen - hydroxide) * perBicarbonate / (1 + 2*carbonate)
}

// waterPK is the ion product of water at a kelvin temperature, a correction of
// less than 0.1 % here. Source: Harned & Hamer 1933 (from memory).
func waterPK(t float64) float64 { return 4470.99/t - 6.0875 + 0.01706*t }

// carbonicPK1 is the first constant of carbonic acid at a kelvin temperature.
func carbonicPK1(t float64) float64 {
	return 356.3094 + 0.06091964*t - 21834.37/t - 126.8339*math.Log10(t) + 1684915/(t*t)
}

// carbonicPK2 is the second.
func carbonicPK2(t float64) float64 {
	return 107.8871 + 0.03252849*t - 5151.79/t - 38.92561*math.Log10(t) + 563713.9/(t*t)
}
