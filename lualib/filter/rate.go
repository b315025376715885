package filter

import (
	"fmt"
	"math"
)

// How far outside its told temperatures a rate is still given, in kelvin, and
// the change per kelvin by which it then grows uncertain.
// Source: factors of 1.03 to 1.10 a kelvin, common practice (from memory).
const (
	colderK  = 8.0
	warmerK  = 4.0
	gentlePK = 1.03
	steepPK  = 1.10
)

// Rate gives the range of nitrification that a kind of media is told to reach.
//
// Between two told temperatures it spans from the low of the colder to the
// high of the warmer; below the coldest it falls by 3 to 10 % a kelvin; above
// the warmest no gain is counted. Below the told level of TAN it falls in
// proportion: clean water feeds a filter poorly, so an aquarium's filter
// reaches a small part of a farm's rate.
//
// Units: degrees Celsius, mg/L of TAN as N in the water; g TAN per day and
// m2, m3 or kg by the media's basis.
// Valid range: 8 °C below to 4 °C above the media's temperatures; 0.01 to 10 mg/L.
// Accuracy: none promised; recalled ranges, a factor of 2 to 3 on each end.
// Source: ranges from Timmons & Ebeling and Malone & Pfeiffer 2006 (from
// memory); linear in TAN below 1 mg/L, Malone & Pfeiffer (abstract seen).
func Rate(m Media, temperatureC, tanMgPerL float64) (Range, error) {
	if len(m.Bands) == 0 {
		return Range{}, fmt.Errorf("media: got %q without rates, want one of the media table", m.ID)
	}
	cold, warm := m.Bands[0], m.Bands[len(m.Bands)-1]
	err := first(
		within("temperature", "degC", temperatureC, cold.MinC-colderK, warm.MaxC+warmerK),
		within("TAN", "mg/L", tanMgPerL, 0.01, 10))
	if err != nil {
		return Range{}, err
	}
	return rateAt(m.Bands, temperatureC).times(math.Min(1, tanMgPerL/cold.TANMgPerL.Low)), nil
}

// rateAt gives the rates at a temperature, at the told level of TAN.
func rateAt(bands []Band, temperatureC float64) Range {
	if below := bands[0].MinC - temperatureC; below > 0 {
		r := bands[0].RateTANPerDay
		return Range{r.Low * math.Pow(steepPK, -below), r.High * math.Pow(gentlePK, -below)}
	}
	for i, b := range bands {
		if temperatureC <= b.MaxC {
			if i > 0 && temperatureC < b.MinC {
				return Range{bands[i-1].RateTANPerDay.Low, b.RateTANPerDay.High}
			}
			return b.RateTANPerDay
		}
	}
	return bands[len(bands)-1].RateTANPerDay
}
