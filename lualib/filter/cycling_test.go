package filter

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Molar masses: 53.49 g of ammonium chloride, 66.07 g of half an ammonium
// sulfate and 17.03 g of ammonia hold 14.01 g of nitrogen.
func TestFishlessDose(t *testing.T) {
	for source, molar := range map[AmmoniaSource]float64{AmmoniumChloride: 53.4915, AmmoniumSulfate: 132.14 / 2, AmmoniaSolution: 17.0305} {
		got, err := FishlessDose(source, 400, 2, 0.25)
		require.NoError(t, err)
		require.InEpsilon(t, 0.8*molar/14.0067/0.25, got.G, 1e-4, source)
		require.Equal(t, source == AmmoniaSolution, got.ML > 0)
	}
	solution, err := FishlessDose(AmmoniaSolution, 400, 2, 0.24)
	require.NoError(t, err)
	require.InDelta(t, solution.G/0.9101, solution.ML, 1e-9)
	weak, err := FishlessDose(AmmoniaSolution, 400, 2, 0.10)
	require.NoError(t, err)
	require.InDelta(t, weak.G/0.9575, weak.ML, 0.002*weak.ML)
}

// Colder never means sooner.
func TestCyclingWeeks(t *testing.T) {
	before := Range{99, 99}
	for c := 10.0; c <= 32; c++ {
		got, err := CyclingWeeks(c)
		require.NoError(t, err)
		require.True(t, got.Low < got.High && got.Low <= before.Low && got.High <= before.High)
		before = got
	}
}

func TestCyclingRefusals(t *testing.T) {
	_, err := FishlessDose("shrimp", 400, 2, 1)
	require.EqualError(t, err, `source: got "shrimp", want ammonium chloride, ammonium sulfate or ammonia solution`)
	_, err = FishlessDose(AmmoniumChloride, 0, 2, 1)
	require.EqualError(t, err, "water: got 0 L, want more than 0 and at most 1e+07 L")
	_, err = FishlessDose(AmmoniumChloride, 400, 20, 1)
	require.EqualError(t, err, "TAN: got 20 mg/L, want 0 to 10 mg/L")
	_, err = FishlessDose(AmmoniaSolution, 400, 2, 0.5)
	require.EqualError(t, err, "active share: got 0.5, want more than 0 and at most 0.3")
	_, err = CyclingWeeks(5)
	require.EqualError(t, err, "temperature: got 5 degC, want 10 to 32 degC")
}
