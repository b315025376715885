package stocking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The specific rates of Clarke & Johnston's equation, mg O2 per kg and hour,
// computed apart and rounded to whole numbers.
func TestRestingOxygenTable(t *testing.T) {
	temperatures := []float64{15, 20, 25, 28}
	tests := []struct {
		mass float64
		want []float64
	}{
		{1, []float64{250, 337, 449, 531}},
		{10, []float64{158, 213, 283, 335}},
		{100, []float64{100, 134, 179, 211}},
		{1000, []float64{63, 85, 113, 133}},
	}
	for _, test := range tests {
		for i, temperature := range temperatures {
			got, err := PlanOxygen(test.mass, temperature)
			require.NoError(t, err)
			require.InDelta(t, test.want[i], got.RestingMgPerH*1000/test.mass, 0.6)
			require.Equal(t, 1.5*got.RestingMgPerH, got.DailyMeanMgPerH)
			require.Equal(t, 2.5*got.RestingMgPerH, got.PeakMgPerH)
		}
	}
}

// Body-shape priors (FishBase June 2021, seen), by hand.
func TestBodyMassByForm(t *testing.T) {
	tests := []struct {
		form   Form
		length float64
		want   float64
	}{
		{Fusiform, 10, 0.01122 * math.Pow(10, 3.04)},
		{ShortDeep, 10, 0.01995 * math.Pow(10, 3.01)},
		{Elongated, 10, 0.00389 * math.Pow(10, 3.12)},
		{EelLike, 10, 0.00102 * math.Pow(10, 3.06)},
		{Depressed, 10, 0.01 * math.Pow(10, 3.04)},
		{Globiform, 1, 0.01},
		{Seahorse, 1, 0.01},
	}
	for _, test := range tests {
		got, err := BodyMass(test.form, test.length)
		require.NoError(t, err)
		require.InEpsilon(t, test.want, got.G, 1e-12, test.form)
		require.InDelta(t, 2.05, got.Factor, 0.02, test.form)
	}
}

// The priors must agree with species' own fits within their two factors.
func TestPriorsAgainstSpeciesFits(t *testing.T) {
	lengths := map[string]Form{
		"S001": Fusiform, "S002": ShortDeep, "S003": ShortDeep, "S004": Elongated, "S005": ShortDeep, "S006": ShortDeep, "S007": Elongated,
	}
	for _, r := range checks(t, "LW", 7) {
		got, err := BodyMass(lengths[r["id"]], input(t, r, `\bL=`))
		require.NoError(t, err)
		ratio := got.G / r.Num(t, "value")
		require.True(t, ratio > 1/(got.Factor*got.Factor) && ratio < got.Factor*got.Factor, "%g of %v", ratio, r)
	}
}

// Every fish of the table gets a mass, oxygen and, but for the odd form,
// proportions; no adult is so light that the ration table would take it for fry.
func TestModelsCoverTheSpeciesTable(t *testing.T) {
	for _, s := range species(t) {
		mass, err := BodyMass(s.Form, s.TypicalLengthCm)
		habit, habitErr := HabitOf(s)
		if s.Form == Shrimp || s.Form == Snail {
			require.ErrorContains(t, err, "want a fish's")
			require.ErrorContains(t, habitErr, "want a fish; the ration table has no invertebrates")
			continue
		}
		require.NoError(t, err, s.ScientificName)
		require.NoError(t, habitErr, s.ScientificName)
		for _, temperature := range []float64{s.TemperatureC.Min, s.TemperatureC.Max} {
			_, err = PlanOxygen(mass.G, temperature)
			require.NoError(t, err, s.ScientificName)
			ration, err := DailyFeed(habit, mass.G, temperature)
			require.NoError(t, err, s.ScientificName)
			require.LessOrEqual(t, ration.HighPercent, 5.0, s.ScientificName)
		}
		if s.Form != Seahorse {
			standard, err := StandardLengthCm(s.Form, s.TypicalLengthCm)
			require.NoError(t, err)
			depth, err := BodyDepthCm(s.Form, s.TypicalLengthCm)
			require.NoError(t, err)
			require.True(t, depth < standard && standard < s.TypicalLengthCm, s.ScientificName)
		}
	}
}

func TestProportions(t *testing.T) {
	standard, err := StandardLengthCm(Fusiform, 10)
	require.NoError(t, err)
	require.InDelta(t, 8.1, standard, 1e-12)
	depth, err := BodyDepthCm(ShortDeep, 10)
	require.NoError(t, err)
	require.InDelta(t, 3.8, depth, 1e-12)
}

// The three forms of the growth curve are one curve.
func TestGrowthFormsAgree(t *testing.T) {
	g := Growth{LinfCm: 60, KPerYr: 0.3, T0Yr: -0.4}
	two, err := g.LengthAtCm(2)
	require.NoError(t, err)
	five, err := g.LengthAtCm(5)
	require.NoError(t, err)
	stepped, err := g.LengthAfterCm(two, 3)
	require.NoError(t, err)
	require.InDelta(t, five, stepped, 1e-12)
	years, err := g.YearsBetween(two, five)
	require.NoError(t, err)
	require.InDelta(t, 3, years, 1e-12)
	start, err := g.LengthAtCm(-0.4)
	require.NoError(t, err)
	require.Zero(t, start)
}
