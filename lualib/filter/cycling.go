package filter

import (
	"fmt"

	"weirbook/lualib/water"
)

// AmmoniaSource is what a tank without fish is fed with.
type AmmoniaSource string

// The sources of ammonia for fishless cycling.
const (
	AmmoniumChloride AmmoniaSource = "ammonium chloride" // NH4Cl
	AmmoniumSulfate  AmmoniaSource = "ammonium sulfate"  // (NH4)2SO4
	AmmoniaSolution  AmmoniaSource = "ammonia solution"  // NH3 in water, without soap or scent
)

// gramsPerGN is the pure compound that carries a gram of nitrogen.
var gramsPerGN = map[AmmoniaSource]float64{
	AmmoniumChloride: (water.MassN + 4*water.MassH + water.MassCl) / water.MassN,
	AmmoniumSulfate:  (2*water.MassN + 8*water.MassH + water.MassS + 4*water.MassO) / (2 * water.MassN),
	AmmoniaSolution:  (water.MassN + 3*water.MassH) / water.MassN,
}

// AmmoniaDose is an amount of a source of ammonia.
type AmmoniaDose struct {
	G  float64
	ML float64 // of a solution; 0 for a salt
}

// FishlessDose gives the source of ammonia that brings a tank without fish to
// a level of TAN; 1 to 4 mg/L as N is common practice, and more than 5 stalls
// the bacteria (from memory).
//
// Units: net litres, mg/L of TAN as N, active share by mass; g and mL.
// Valid range: above 0 to 10,000,000 L, 0 to 10 mg/L, share above 0 to 1; a
// solution holds at most 0.30 of ammonia.
// Accuracy: exact for the share given; mL to 0.5 %.
// Source: molar masses; densities of ammonia solutions at 20 °C (CRC Handbook,
// from memory).
func FishlessDose(source AmmoniaSource, waterL, tanMgPerL, activeShare float64) (AmmoniaDose, error) {
	perN, ok := gramsPerGN[source]
	if !ok {
		return AmmoniaDose{}, fmt.Errorf("source: got %q, want %s, %s or %s", string(source), AmmoniumChloride, AmmoniumSulfate, AmmoniaSolution)
	}
	most := 1.0
	if source == AmmoniaSolution {
		most = 0.30
	}
	err := first(
		positive("water", "L", waterL, maxL),
		within("TAN", "mg/L", tanMgPerL, 0, 10),
		positive("active share", "", activeShare, most))
	if err != nil {
		return AmmoniaDose{}, err
	}
	dose := AmmoniaDose{G: waterL * tanMgPerL / 1000 * perN / activeShare}
	if source == AmmoniaSolution {
		dose.ML = dose.G / solutionGPerML(activeShare)
	}
	return dose, nil
}

// solutionDensity holds the share of NH3 by mass and g/mL at 20 °C.
var solutionDensity = [][2]float64{
	{0, 0.9982}, {0.04, 0.9811}, {0.08, 0.9651}, {0.12, 0.9502}, {0.16, 0.9362},
	{0.20, 0.9229}, {0.24, 0.9101}, {0.28, 0.8980}, {0.30, 0.8920},
}

// solutionGPerML interpolates the density of an ammonia solution.
func solutionGPerML(share float64) float64 {
	for i := 1; i < len(solutionDensity); i++ {
		a, b := solutionDensity[i-1], solutionDensity[i]
		if share <= b[0] {
			return a[1] + (b[1]-a[1])*(share-a[0])/(b[0]-a[0])
		}
	}
	return solutionDensity[len(solutionDensity)-1][1]
}

// cyclingWeeks holds from which temperature on how many weeks are usual.
var cyclingWeeks = []struct {
	fromC float64
	weeks Range
}{
	{10, Range{8, 16}},
	{15, Range{6, 12}},
	{20, Range{4, 8}},
	{24, Range{3, 6}},
}

// CyclingWeeks gives how long a new filter without seed takes to keep up with
// a daily dose of ammonia.
//
// Units: degrees Celsius; weeks.
// Valid range: 10 to 32 °C.
// Accuracy: common practice, no source; soft acid water and cold take longer,
// media from a running filter shorten it to days. Only two tests at zero a day
// after a dose say that it is done.
// Source: common practice (from memory).
func CyclingWeeks(temperatureC float64) (Range, error) {
	if err := within("temperature", "degC", temperatureC, 10, 32); err != nil {
		return Range{}, err
	}
	weeks := cyclingWeeks[0].weeks
	for _, row := range cyclingWeeks {
		if temperatureC >= row.fromC {
			weeks = row.weeks
		}
	}
	return weeks, nil
}
