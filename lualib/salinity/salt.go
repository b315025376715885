package salinity

import "fmt"

// referenceSalt is the mass of salt per unit of practical salinity in sea
// water of the reference composition, g/kg per PSU.
// Source: TEOS-10, 35.16504 g/kg at a practical salinity of 35.
const referenceSalt = 35.16504 / 35

// Dose is the salt that a change of salinity takes, and what it leads to.
type Dose struct {
	// SaltKg is the dry salt to add, taking 35 PSU as 35 g per kg of solution.
	SaltKg float64
	// ReferenceSaltKg is the same if the salt has the composition of sea water
	// and the salinity is judged by conductivity: 0.47 to 0.50 % more.
	ReferenceSaltKg float64
	// BeforeKg and BeforeM3 are the water before the salt goes in.
	BeforeKg, BeforeM3 float64
	// AfterKg and AfterM3 are the water with SaltKg dissolved in it.
	AfterKg, AfterM3 float64
}

// SaltMass gives the salt that raises a volume of water, all of which stays in
// the tank, from one salinity to another.
//
// Units: m3 of water as it is now, practical salinity (PSU) read as g per kg
// of solution, degrees Celsius (ITS-90); kg and m3.
// Valid range: volume above 0 to 10,000 m3, 0 to 42 PSU, -2 to 40 °C.
// Accuracy: the arithmetic is exact for the definition; a mix as sold holds
// 2 to 15 % water (recalled, common practice) and wants that much more: MixKg.
// Source: mass balance on the definition of salinity as g per kg of solution
// (TEOS-10), salt = M (to - from)/(1000 - to); densities by DensityKgPerM3.
func SaltMass(volumeM3, fromPSU, toPSU, temperatureC float64) (Dose, error) {
	if err := positive("volume", "m3", volumeM3, maxAmount); err != nil {
		return Dose{}, err
	}
	before, after, err := densities(fromPSU, toPSU, temperatureC)
	if err != nil {
		return Dose{}, err
	}
	return dose(volumeM3*before, fromPSU, toPSU, before, after), nil
}

// SaltMassByWeight is SaltMass for water that was weighed, not measured.
//
// Units: kg of water as it is now, otherwise as SaltMass; kg and m3.
// Valid range: above 0 to 10,000,000 kg, otherwise as SaltMass.
// Accuracy and source: as SaltMass.
func SaltMassByWeight(solutionKg, fromPSU, toPSU, temperatureC float64) (Dose, error) {
	if err := positive("water", "kg", solutionKg, 1000*maxAmount); err != nil {
		return Dose{}, err
	}
	before, after, err := densities(fromPSU, toPSU, temperatureC)
	if err != nil {
		return Dose{}, err
	}
	return dose(solutionKg, fromPSU, toPSU, before, after), nil
}

// SaltMassFinished gives the salt and the water of which a wanted volume of
// finished water is made, for a mixing vat that must not run over.
//
// Units: m3 of water when the salt is dissolved, otherwise as SaltMass.
// Valid range and accuracy: as SaltMass.
// Source: the same balance from the other end, salt = M (to - from)/(1000 - from)
// with M the mass of the finished water.
func SaltMassFinished(volumeM3, fromPSU, toPSU, temperatureC float64) (Dose, error) {
	if err := positive("volume", "m3", volumeM3, maxAmount); err != nil {
		return Dose{}, err
	}
	before, after, err := densities(fromPSU, toPSU, temperatureC)
	if err != nil {
		return Dose{}, err
	}
	finishedKg := volumeM3 * after
	start := finishedKg * (1000 - toPSU) / (1000 - fromPSU)
	d := dose(start, fromPSU, toPSU, before, after)
	// The reference composition leaves less of the finished mass to water.
	from, to := fromPSU*referenceSalt, toPSU*referenceSalt
	d.ReferenceSaltKg = finishedKg * (to - from) / (1000 - from)
	return d, nil
}

// densities checks a rise of salinity and gives the density at its two ends.
func densities(fromPSU, toPSU, temperatureC float64) (before, after float64, err error) {
	if err = within("temperature", "degC", temperatureC, MinC, MaxC); err != nil {
		return 0, 0, err
	}
	if before, err = DensityKgPerM3(fromPSU, temperatureC); err != nil {
		return 0, 0, fmt.Errorf("from: %w", err)
	}
	if after, err = DensityKgPerM3(toPSU, temperatureC); err != nil {
		return 0, 0, fmt.Errorf("to: %w", err)
	}
	if toPSU < fromPSU {
		return 0, 0, fmt.Errorf("to: got %.6g PSU, want at least the %.6g PSU of now; salt cannot lower salinity: change water instead", toPSU, fromPSU)
	}
	return before, after, nil
}

// dose adds salt to a known mass of solution.
func dose(solutionKg, fromPSU, toPSU, before, after float64) Dose {
	salt := saltInto(solutionKg, fromPSU, toPSU)
	return Dose{
		SaltKg:          salt,
		ReferenceSaltKg: saltInto(solutionKg, fromPSU*referenceSalt, toPSU*referenceSalt),
		BeforeKg:        solutionKg,
		BeforeM3:        solutionKg / before,
		AfterKg:         solutionKg + salt,
		AfterM3:         (solutionKg + salt) / after,
	}
}

// saltInto is the balance M from + 1000 salt = (M + salt) to, in g/kg.
func saltInto(solutionKg, from, to float64) float64 {
	return solutionKg * (to - from) / (1000 - to)
}

// MixKg gives the mass of a salt mix as sold that carries a mass of dry salt.
//
// Units: kg of dry salt, water as a fraction of the mix's mass; kg.
// Valid range: salt 0 to 10,000,000 kg, water fraction 0 to 0.5.
// Accuracy: that of the fraction, 0.02 to 0.15 by the mix (recalled, common practice).
// Source: the definition of the fraction, mix = salt/(1 - water).
func MixKg(saltKg, waterFraction float64) (float64, error) {
	if err := within("salt", "kg", saltKg, 0, 1000*maxAmount); err != nil {
		return 0, err
	}
	if err := within("water in the mix", "of its mass", waterFraction, 0, 0.5); err != nil {
		return 0, err
	}
	return saltKg / (1 - waterFraction), nil
}
