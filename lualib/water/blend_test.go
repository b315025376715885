package water

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/salinity"
)

func TestBlendOfTapAndOsmosis(t *testing.T) {
	got, err := BlendTo([]Source{{"tap", 14, false}, {"osmosis", 0, true}}, 6)
	require.NoError(t, err)
	require.InDelta(t, 6.0/14, got.Shares[0], 1e-15)
	require.InDelta(t, 8.0/14, got.OsmosisShare, 1e-15)
	alkalinity, err := Blended(got.Shares, []float64{9, 0.2})
	require.NoError(t, err)
	require.InDelta(t, 6.0/14*9+8.0/14*0.2, alkalinity, 1e-12)
}

// Rain water that is soft enough makes osmosis needless.
func TestBlendSparesOsmosis(t *testing.T) {
	got, err := BlendTo([]Source{{"tap", 14, false}, {"osmosis", 0, true}, {"rain", 2, false}}, 6)
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{4.0 / 12, 0, 8.0 / 12}, got.Shares, 1e-15)
	require.Zero(t, got.OsmosisShare)
	got, err = BlendTo([]Source{{"osmosis", 6, true}, {"tap", 6, false}}, 6)
	require.NoError(t, err)
	require.Equal(t, []float64{0, 1}, got.Shares)
}

// Every blend meets its target with shares that sum to 1, and no random recipe
// that meets it takes less from osmosis.
func TestBlendsConserveAndSpareOsmosis(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for range 200 {
		sources := make([]Source, 2+random.Intn(4))
		values := make([]float64, len(sources))
		for i := range sources {
			values[i] = 20 * random.Float64()
			sources[i] = Source{"w", values[i], random.Intn(2) == 0}
		}
		shares := randomShares(random, len(sources))
		target, err := Blended(shares, values)
		require.NoError(t, err)
		best, err := BlendTo(sources, target)
		require.NoError(t, err)
		met, err := Blended(best.Shares, values)
		require.NoError(t, err)
		require.InDelta(t, target, met, 1e-9)
		osmosis := 0.0
		for i, s := range sources {
			if s.Osmosis {
				osmosis += shares[i]
			}
		}
		require.LessOrEqual(t, best.OsmosisShare, osmosis+1e-9)
	}
}

func randomShares(random *rand.Rand, n int) []float64 {
	shares, sum := make([]float64, n), 0.0
	for i := range shares {
		shares[i] = random.Float64()
		sum += shares[i]
	}
	for i := range shares {
		shares[i] /= sum
	}
	return shares
}

// By mass, salt and water are conserved.
func TestBlendSalinityConserves(t *testing.T) {
	sources := []Source{{"sea", 35, false}, {"osmosis", 0, true}, {"bay", 12, false}}
	for _, target := range []float64{5, 12, 15, 30, 35} {
		got, err := BlendSalinity(sources, target, 24, 500)
		require.NoError(t, err)
		density, err := salinity.DensityKgPerM3(target, 24)
		require.NoError(t, err)
		var kg, salt float64
		for i, s := range sources {
			kg += got.KgEach[i]
			salt += got.KgEach[i] * s.Value
			own, err := salinity.DensityKgPerM3(s.Value, 24)
			require.NoError(t, err)
			require.InDelta(t, got.KgEach[i], got.LitresEach[i]*own/1000, 1e-9)
		}
		require.InDelta(t, 0.5*density, kg, 1e-9)
		require.InDelta(t, kg*target, salt, 1e-9*kg)
		require.Equal(t, target < 12, got.OsmosisShare > 0)
	}
}

func TestBlendRefusals(t *testing.T) {
	two := []Source{{"tap", 14, false}, {"osmosis", 0, true}}
	_, err := BlendTo(two, 15)
	require.EqualError(t, err, "target: got 15, want 0 to 14, the lowest and the highest source; no blend of them reaches it")
	_, err = BlendTo(two, math.NaN())
	require.ErrorContains(t, err, "target: got NaN")
	_, err = BlendTo(nil, 5)
	require.EqualError(t, err, "number of sources: got 0, want 1 to 50")
	_, err = BlendTo([]Source{{"tap", -1, false}}, 5)
	require.EqualError(t, err, `source "tap": got -1, want 0 to 100000`)
	_, err = Blended([]float64{1}, nil)
	require.EqualError(t, err, "values: got 0 for 1 shares, want one for each")
	_, err = Blended([]float64{0.5}, []float64{1})
	require.EqualError(t, err, "shares: got a sum of 0.5, want 1")
	_, err = Blended([]float64{-0.5}, []float64{1})
	require.EqualError(t, err, "share: got -0.5, want 0 to 1")
	_, err = BlendSalinity(two, 5, 24, 0)
	require.EqualError(t, err, "water: got 0 L, want more than 0 and at most 1e+07 L")
	_, err = BlendSalinity(two, 50, 24, 10)
	require.ErrorContains(t, err, "no blend of them reaches it")
	_, err = BlendSalinity(two, 5, 50, 10)
	require.EqualError(t, err, "target: temperature: got 50 degC, want -2 to 40 degC")
	_, err = BlendSalinity([]Source{{"brine", 50, false}, {"tap", 0, false}}, 5, 24, 10)
	require.EqualError(t, err, `source "brine": salinity: got 50 PSU, want 0 to 42 PSU`)
}

func TestOsmosisAndBarrel(t *testing.T) {
	run, err := OsmosisTime(120, 8, 2.5)
	require.NoError(t, err)
	require.Equal(t, OsmosisRun{Hours: 15, RejectL: 300, FeedL: 420}, run)
	_, err = OsmosisTime(120, 0, 1)
	require.EqualError(t, err, "flow: got 0 L/h, want more than 0 and at most 10000 L/h")
	_, err = OsmosisTime(120, 1, -1)
	require.EqualError(t, err, "reject per product: got -1, want 0 to 20")
	barrel, err := BarrelL(180, 2, 0.9)
	require.NoError(t, err)
	require.InDelta(t, 100, barrel, 1e-12)
	_, err = BarrelL(180, 0, 0.9)
	require.EqualError(t, err, "batches: got 0, want 1 to 100")
	_, err = BarrelL(180, 1, 0)
	require.EqualError(t, err, "filled share: got 0, want 0.1 to 1")
}
