package water

import (
	"fmt"

	"weirbook/lualib/salinity"
)

// SaltBlend is a recipe of waters of different salinity.
type SaltBlend struct {
	MassShares   []float64 // in the order of the sources; they sum to 1
	LitresEach   []float64 // to measure out, before mixing
	KgEach       []float64 // the same by weight
	OsmosisShare float64   // by mass
	MixedL       float64   // volume of the mixture, as asked for
}

// BlendSalinity gives what to measure out of each source for a volume of a
// wanted salinity, with the least water from reverse osmosis.
//
// Units: sources and target in PSU read as g per kg, degrees Celsius for all
// of them, litres of finished mixture; L and kg.
// Valid range: 0 to 42 PSU, -2 to 40 °C, above 0 to 10,000,000 L, otherwise as
// BlendTo.
// Accuracy: conserves salt and water; densities to 0.01 kg/m3.
// Source: mass balance, salinity.DensityKgPerM3.
func BlendSalinity(sources []Source, targetPSU, temperatureC, mixedL float64) (SaltBlend, error) {
	if err := positive("water", "L", mixedL, maxL); err != nil {
		return SaltBlend{}, err
	}
	blend, err := BlendTo(sources, targetPSU)
	if err != nil {
		return SaltBlend{}, err
	}
	mixed, err := salinity.DensityKgPerM3(targetPSU, temperatureC)
	if err != nil {
		return SaltBlend{}, fmt.Errorf("target: %w", err)
	}
	out := SaltBlend{MassShares: blend.Shares, OsmosisShare: blend.OsmosisShare, MixedL: mixedL}
	for i, s := range sources {
		density, err := salinity.DensityKgPerM3(s.Value, temperatureC)
		if err != nil {
			return SaltBlend{}, fmt.Errorf("source %q: %w", s.Name, err)
		}
		kg := blend.Shares[i] * mixedL * mixed / 1000
		out.KgEach = append(out.KgEach, kg)
		out.LitresEach = append(out.LitresEach, 1000*kg/density)
	}
	return out, nil
}
