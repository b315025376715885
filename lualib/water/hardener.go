package water

import "fmt"

// Hardener is a salt that raises hardness or alkalinity.
type Hardener string

// The hardeners that keepers weigh.
const (
	CalciumChlorideDihydrate     Hardener = "calcium chloride dihydrate"     // CaCl2.2H2O, hardness
	MagnesiumSulfateHeptahydrate Hardener = "magnesium sulfate heptahydrate" // MgSO4.7H2O, hardness
	SodiumBicarbonate            Hardener = "sodium bicarbonate"             // NaHCO3, alkalinity
)

// mgPerMeq is the mass in mg that adds one milliequivalent.
var mgPerMeq = map[Hardener]float64{
	CalciumChlorideDihydrate:     (MassCa + 2*MassCl + 2*massH2O) / 2,
	MagnesiumSulfateHeptahydrate: (MassMg + MassS + 4*MassO + 7*massH2O) / 2,
	SodiumBicarbonate:            MassNa + massHCO3,
}

// HardenerG gives the salt that raises the hardness (calcium and magnesium
// salts) or the alkalinity (bicarbonate) of water.
//
// Units: net litres of water, rise in German degrees (dGH or dKH); g.
// Valid range: above 0 to 10,000,000 L, 0 to 100 degrees.
// Accuracy: exact for the pure salt with the water of crystals named; salts
// that drew damp hold less.
// Source: stoichiometry.
func HardenerG(salt Hardener, waterL, riseDegrees float64) (float64, error) {
	err := first(
		positive("water", "L", waterL, maxL),
		within("rise", "degrees", riseDegrees, 0, 100))
	if err != nil {
		return 0, err
	}
	perMeq, ok := mgPerMeq[salt]
	if !ok {
		return 0, fmt.Errorf("salt: got %q, want %s, %s or %s", string(salt),
			CalciumChlorideDihydrate, MagnesiumSulfateHeptahydrate, SodiumBicarbonate)
	}
	return riseDegrees * degreeCaCO3 / meqCaCO3 * perMeq * waterL / 1000, nil
}
