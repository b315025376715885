package salinity

import (
	"fmt"
	"math"
)

// SGReading is what a specific gravity means on one scale.
type SGReading struct {
	Scale SGScale
	PSU   float64
}

// SGReadings gives what a specific gravity means on each usual scale, for a
// reading that names none. Scales on which it lies outside 0 to 42 PSU are
// left out.
//
// Units: ratio of densities; PSU.
// Valid range: a specific gravity that at least one usual scale holds.
// Accuracy and source: as FromSG; the list of scales is common practice, from
// memory.
func SGReadings(sg float64) ([]SGReading, error) {
	var readings []SGReading
	low, high := math.Inf(1), math.Inf(-1)
	for _, scale := range UsualScales() {
		low, high = min(low, scale.sg(MinPSU)), max(high, scale.sg(MaxPSU))
		if scale.holds(sg) == nil {
			readings = append(readings, SGReading{scale, scale.psu(sg)})
		}
	}
	if readings == nil {
		return nil, fmt.Errorf("specific gravity: got %.6g, want %.5f to %.5f", sg, low, high)
	}
	return readings, nil
}

// SGAmbiguityPSU gives by how much the salinity of a specific gravity differs
// between the usual scales, the largest less the smallest of SGReadings.
//
// Units: ratio of densities; PSU.
// Valid range, accuracy and source: as SGReadings.
func SGAmbiguityPSU(sg float64) (float64, error) {
	readings, err := SGReadings(sg)
	if err != nil {
		return 0, err
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range readings {
		low, high = min(low, r.PSU), max(high, r.PSU)
	}
	return high - low, nil
}
