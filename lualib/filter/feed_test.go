package filter

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// Ammonia from feed and what its nitrification takes, in kg as the table has
// them.
func TestNitrogenProduction(t *testing.T) {
	rows := table(t, "nitrogen_production.csv")
	require.Equal(t, 26, len(rows))
	for _, r := range rows {
		tan, err := TANGPerDay(1000*r.Num(t, "F_kg_day"), r.Num(t, "protein_fraction"))
		require.NoError(t, err)
		used, err := Nitrify(tan)
		require.NoError(t, err)
		got := map[string]float64{
			"TAN_kg_per_day": tan, "O2_for_nitrification_kg_day": used.OxygenGPerDay,
			"alkalinity_kg_CaCO3_day": used.AlkalinityGCaCO3PerDay, "NO3_kg_day": used.NitrateGNO3PerDay,
		}
		value, ok := got[r["quantity"]]
		require.True(t, ok, "%v", r)
		if r["param"] == "7.05" {
			value = used.AlkalinityLowGPerDay
		}
		published.RequireDigits(t, r, "value", value/1000)
	}
}

// The chain behind 0.092, the stoichiometry behind 4.57 and 7.14, and the
// milliequivalents.
func TestNitrogenFactors(t *testing.T) {
	require.InDelta(t, 0.16*0.8*0.8*0.9, tanPerProtein, 0.0002)
	require.InDelta(t, 64/14.0067, oxygenPerN, 0.001)
	require.InDelta(t, 100.0869/14.0067, alkalinityPerN, 0.006)
	got, err := Nitrify(10)
	require.NoError(t, err)
	require.InDelta(t, 71.4/0.05004345, got.AlkalinityMeqPerDay, 1e-9)
	require.Less(t, got.OxygenLowGPerDay, got.OxygenGPerDay)
	uneaten, err := TANOfUneatenGPerDay(10, 0.5)
	require.NoError(t, err)
	require.InDelta(t, 0.8, uneaten, 1e-12)
}

func TestFeedRefusals(t *testing.T) {
	_, err := TANGPerDay(-1, 0.4)
	require.EqualError(t, err, "feed: got -1 g/d, want 0 to 100000 g/d")
	_, err = TANGPerDay(1, 40)
	require.EqualError(t, err, "protein: got 40 of the feed, want 0.2 to 0.7 of the feed")
	_, err = TANOfUneatenGPerDay(1, math.NaN())
	require.EqualError(t, err, "protein: got NaN of the feed, want 0.2 to 0.7 of the feed")
	_, err = Nitrify(-1)
	require.EqualError(t, err, "TAN: got -1 g/d, want 0 to 100000 g/d")
}
