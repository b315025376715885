package salinity

import "fmt"

// Batch is salt mix dissolved in water. A mix as sold holds water of its own,
// which is counted: Kg is MixKg and SourceKg together.
type Batch struct {
	// MixKg is the mix to weigh, SaltKg the dry salt in it.
	MixKg, SaltKg float64
	// SourceKg and SourceM3 are the water that the mix goes into.
	SourceKg, SourceM3 float64
	// Kg and M3 are the finished water, PSU its salinity.
	Kg, M3, PSU float64
}

// AddMix gives the salt mix that raises a volume of water, all of which stays
// in the tank. It is SaltMass with the water in the mix counted as water:
// 0.4 % more than MixKg says at 35 PSU and a tenth of water.
//
// Units: m3 of water as it is now, practical salinity (PSU) read as g per kg
// of solution, degrees Celsius (ITS-90), water as a fraction of the mix's
// mass; kg and m3.
// Valid range: volume above 0 to 10,000 m3, 0 to 42 PSU, -2 to 40 °C,
// fraction 0 to 0.5.
// Accuracy: exact for the definition; the fraction is 0.02 to 0.15 by the mix
// (from memory, common practice).
// Source: mass balance, mix = M (to - from)/(1000 (1 - w) - to); EOS-80.
func AddMix(volumeM3, fromPSU, toPSU, temperatureC, waterFraction float64) (Batch, error) {
	if err := checkMix(volumeM3, waterFraction); err != nil {
		return Batch{}, err
	}
	before, _, err := densities(fromPSU, toPSU, temperatureC)
	if err != nil {
		return Batch{}, err
	}
	return batchInto(volumeM3*before, fromPSU, toPSU, temperatureC, waterFraction), nil
}

// NewWater gives the salt mix and the source water of which a wanted volume of
// finished water is made.
//
// Units: m3 of finished water, otherwise as AddMix.
// Valid range and accuracy: as AddMix.
// Source: the same balance from the other end,
// mix = M (to - source)/(1000 (1 - w) - source).
func NewWater(volumeM3, sourcePSU, toPSU, temperatureC, waterFraction float64) (Batch, error) {
	if err := checkMix(volumeM3, waterFraction); err != nil {
		return Batch{}, err
	}
	if err := salinities([]string{"source", "to"}, sourcePSU, toPSU); err != nil {
		return Batch{}, err
	}
	if sourcePSU > toPSU {
		return Batch{}, fmt.Errorf("source: got %.6g PSU, want at most the %.6g PSU of the new water", sourcePSU, toPSU)
	}
	after, err := DensityKgPerM3(toPSU, temperatureC)
	if err != nil {
		return Batch{}, err
	}
	return batchOf(volumeM3*after, sourcePSU, toPSU, temperatureC, waterFraction), nil
}

func checkMix(volumeM3, waterFraction float64) error {
	if err := positive("volume", "m3", volumeM3, maxAmount); err != nil {
		return err
	}
	return within("water in the mix", "of its mass", waterFraction, 0, 0.5)
}

// batchInto dissolves mix in a known mass of water.
func batchInto(sourceKg, from, to, temperatureC, waterFraction float64) Batch {
	mix := sourceKg * (to - from) / (1000*(1-waterFraction) - to)
	return batch(mix, sourceKg, from, to, temperatureC, waterFraction)
}

// batchOf splits a known mass of finished water into mix and source.
func batchOf(kg, source, to, temperatureC, waterFraction float64) Batch {
	// Rounding must not ask for less than nothing where source and to are equal.
	mix := max(0, kg*(to-source)/(1000*(1-waterFraction)-source))
	return batch(mix, kg-mix, source, to, temperatureC, waterFraction)
}

func batch(mixKg, sourceKg, source, to, temperatureC, waterFraction float64) Batch {
	kg := mixKg + sourceKg
	return Batch{
		MixKg: mixKg, SaltKg: mixKg * (1 - waterFraction),
		SourceKg: sourceKg, SourceM3: sourceKg / density90(source, temperatureC),
		Kg: kg, M3: kg / density90(to, temperatureC), PSU: to,
	}
}
