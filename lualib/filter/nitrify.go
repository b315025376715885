package filter

import "weirbook/lualib/water"

// What a gram of nitrogen takes on its way from ammonia to nitrate.
const (
	oxygenPerN           = 4.57 // g O2, 3.43 to nitrite and 1.14 to nitrate
	oxygenPerNGrowing    = 4.18 // g O2, with the bacteria that grow from it
	alkalinityPerN       = 7.14 // g CaCO3
	alkalinityPerNGrowth = 7.05 // g CaCO3, with the bacteria that grow from it
	caCO3PerMeq          = 50.04345e-3
)

// Nitrification is what the bacteria use up and make in a day.
type Nitrification struct {
	OxygenGPerDay          float64 // to plan with
	OxygenLowGPerDay       float64 // with the growth of the bacteria
	AlkalinityGCaCO3PerDay float64 // to plan with
	AlkalinityLowGPerDay   float64 // with the growth of the bacteria
	AlkalinityMeqPerDay    float64 // the planning value in milliequivalents
	NitrateGNO3PerDay      float64 // counted as NO3
}

// Nitrify gives what full nitrification of a day's TAN takes and makes.
//
// Units: g N per day; g O2, g CaCO3, meq and g NO3 per day.
// Valid range: 0 to 100,000 g/d.
// Accuracy: stoichiometry; observed alkalinity use is 6.3 to 7.4 g per g N
// (EPA 1975, seen).
// Source: 4.57 g O2 per g N (seen) and 7.14 g CaCO3 by stoichiometry; 4.18 and
// 7.05 with growth, Ebeling, Timmons & Bisogni 2006 (from memory).
func Nitrify(tanGPerDay float64) (Nitrification, error) {
	if err := within("TAN", "g/d", tanGPerDay, 0, maxGPerDay); err != nil {
		return Nitrification{}, err
	}
	nitrate, err := water.ConvertNitrogen(tanGPerDay, water.AsN, water.AsNO3)
	if err != nil {
		return Nitrification{}, err
	}
	return Nitrification{
		OxygenGPerDay:          oxygenPerN * tanGPerDay,
		OxygenLowGPerDay:       oxygenPerNGrowing * tanGPerDay,
		AlkalinityGCaCO3PerDay: alkalinityPerN * tanGPerDay,
		AlkalinityLowGPerDay:   alkalinityPerNGrowth * tanGPerDay,
		AlkalinityMeqPerDay:    alkalinityPerN * tanGPerDay / caCO3PerMeq,
		NitrateGNO3PerDay:      nitrate,
	}, nil
}
