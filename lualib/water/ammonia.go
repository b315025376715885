package water

import "math"

// meterPH is what a hobby meter or a drop test may be off by.
const meterPH = 0.1

// Ammonia is the un-ionised, toxic part of total ammonia.
type Ammonia struct {
	PKa       float64 // of ammonium, on the free scale
	Fraction  float64 // un-ionised share of total ammonia, 0 to 1
	MgPerL    float64 // un-ionised, as NH3
	LowMgPerL float64 // the same at a pH 0.1 lower
	// HighMgPerL is the same at a pH 0.1 higher: about 25 % more.
	HighMgPerL float64
}

// UnionisedAmmonia gives the un-ionised part of a total ammonia reading, and
// how far an error of 0.1 pH moves it: by about 25 % as long as it is small.
//
// Units: mg/L of total ammonia counted as N, pH, degrees Celsius, PSU; mg/L
// counted as NH3.
// Valid range: 0 to 1,000 mg/L, otherwise as UnionisedFraction.
// Accuracy: that of the pH: 0.1 is about 25 %.
// Source: UnionisedFraction; NH3 over N by molar mass.
func UnionisedAmmonia(totalMgNPerL, pH, temperatureC, salinityPSU float64) (Ammonia, error) {
	if err := within("total ammonia", "mg/L", totalMgNPerL, 0, 1000); err != nil {
		return Ammonia{}, err
	}
	fraction, err := UnionisedFraction(pH, temperatureC, salinityPSU)
	if err != nil {
		return Ammonia{}, err
	}
	pKa := ammoniumPKa(salinityPSU, temperatureC)
	nh3 := totalMgNPerL * (MassN + 3*MassH) / MassN
	return Ammonia{
		PKa:        pKa,
		Fraction:   fraction,
		MgPerL:     nh3 * fraction,
		LowMgPerL:  nh3 * unionised(pKa, pH-meterPH),
		HighMgPerL: nh3 * unionised(pKa, pH+meterPH),
	}, nil
}

// UnionisedFraction gives the un-ionised share of total ammonia in fresh,
// brackish and sea water by one formula.
//
// Units: pH as a meter shows it after calibration in ordinary buffers, degrees
// Celsius, practical salinity (PSU); a share, 0 to 1.
// Valid range: pH 4 to 10, -2 to 40 °C, 0 to 40 PSU.
// Accuracy: 0.00005 of printed values; without salt 0.002 in pKa of Emerson et
// al. 1975; in sea water 1 to 4 % more than Bower & Bidwell 1978. A pH on the
// total scale would give 26 % more at 35 PSU. An error of 0.1 pH is about 25 %.
// Source: Clegg & Whitfield 1995, Geochim. Cosmochim. Acta 59:2403, on the
// free scale (seen in public code).
func UnionisedFraction(pH, temperatureC, salinityPSU float64) (float64, error) {
	err := first(
		within("pH", "", pH, 4, 10),
		within("temperature", "degC", temperatureC, -2, 40),
		within("salinity", "PSU", salinityPSU, 0, 40))
	if err != nil {
		return 0, err
	}
	return unionised(ammoniumPKa(salinityPSU, temperatureC), pH), nil
}

// unionised is the law of mass action.
func unionised(pKa, pH float64) float64 {
	return 1 / (1 + math.Pow(10, pKa-pH))
}

// ammoniumPKa is the pKa of ammonium on the free scale.
func ammoniumPKa(s, temperatureC float64) float64 {
	t := temperatureC + kelvinAt0C
	return 9.244605 - 2729.33*(1/298.15-1/t) +
		(0.0500616-9.412696/t-2.029559e-7*t*t)*math.Sqrt(s) +
		(-0.0142372+1.46041e-5*t+3.730005/t)*s +
		(7.14045e-5-0.0229021/t)*s*s +
		(-5.521278e-7+1.95413e-4/t)*s*s*s
}
