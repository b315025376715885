package volume

import (
	"fmt"
	"slices"
)

// Densities of the usual tank materials, kg/m3.
// Source: glass EN 572-1 and ISO 10456 (seen in copies); acrylic makers'
// 1190 (recalled; ISO 10456 has 1180).
const (
	GlassKgPerM3   = 2500.0
	AcrylicKgPerM3 = 1190.0
)

// Displaced gives the water that a bed of grains pushes aside; the rest of the
// bed is pores that fill with water.
//
// Units: m3 of bed, porosity as a fraction; m3.
// Valid range: bed 0 to 10,000 m3, porosity 0 to below 1.
// Accuracy: that of the porosity, about 0.05.
// Source: the definition of porosity, displaced = (1 - porosity) volume.
func Displaced(volumeM3, porosity float64) (float64, error) {
	if err := between0and("bed", "m3", volumeM3, maxBedM3); err != nil {
		return 0, err
	}
	if !(porosity >= 0 && porosity < 1) {
		return 0, fmt.Errorf("porosity: got %.6g, want at least 0 and less than 1", porosity)
	}
	return (1 - porosity) * volumeM3, nil
}

const (
	maxBedM3   = 10_000.0 // as for water: catches litres given as m3
	maxDensity = 10_000.0 // kg/m3, above any rock or metal in a tank
)

// between0and refuses what is below 0 or above high.
func between0and(name, unit string, got, high float64) error {
	if got >= 0 && got <= high {
		return nil
	}
	return fmt.Errorf("%s: got %.6g %s, want 0 to %g %s", name, got, unit, high, unit)
}

// BedMass is what a bed of substrate weighs.
type BedMass struct {
	DryKg       float64 // grains alone, as bought
	SaturatedKg float64 // grains and the water in the pores
	NetKg       float64 // more than the water that stood there before
	DisplacedM3 float64 // water pushed aside
}

// Bed gives the masses of a bed of substrate under water.
//
// Units: m3 of bed, porosity as a fraction, kg/m3 of grains and of water; kg, m3.
// Valid range: as Displaced; densities 0 to 10,000 kg/m3.
// Accuracy: that of the porosity: 0.05 is about 8 % of the dry mass.
// Source: the definition of porosity, dry = (1 - porosity) grain volume.
func Bed(volumeM3, porosity, grainKgPerM3, waterKgPerM3 float64) (BedMass, error) {
	solid, err := Displaced(volumeM3, porosity)
	if err != nil {
		return BedMass{}, err
	}
	if err := between0and("grain density", "kg/m3", grainKgPerM3, maxDensity); err != nil {
		return BedMass{}, err
	}
	if err := between0and("water density", "kg/m3", waterKgPerM3, maxDensity); err != nil {
		return BedMass{}, err
	}
	dry := solid * grainKgPerM3
	return BedMass{
		DryKg:       dry,
		SaturatedKg: dry + (volumeM3-solid)*waterKgPerM3,
		NetKg:       dry - solid*waterKgPerM3,
		DisplacedM3: solid,
	}, nil
}

// Substrate is a granular material for the floor of a tank.
type Substrate struct {
	Name                      string
	PorosityLow, PorosityHigh float64 // loosely poured beds are the high end
	Porosity, GrainKgPerM3    float64 // the usual values
}

// substrates: porosity ranges as derived from dry bulk densities, grain
// densities 2650 (quartz), 2600 (mixed rock), 2930 kg/m3 (aragonite, recalled).
// Aragonite grains have pores of their own, so its bed can weigh 10 % less.
var substrates = []Substrate{
	{"silica sand", 0.36, 0.46, 0.40, 2650},
	{"gravel", 0.38, 0.45, 0.40, 2600},
	{"aragonite", 0.45, 0.55, 0.50, 2930},
}

// Substrates lists the materials known by name.
//
// Units: porosity as a fraction, kg/m3 of grains.
// Accuracy: dry bulk densities within 2 % of the published range for sand and
// gravel, within 10 % for aragonite.
// Source: dry bulk densities of sand (1440 to 1700), gravel (1450 to 1600) and
// coral sand (1200 to 1600 kg/m3), partly recalled.
func Substrates() []Substrate { return slices.Clone(substrates) }
