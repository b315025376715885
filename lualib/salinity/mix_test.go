package salinity

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMixingKeepsSaltAndMass(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 300 {
		var waters []Water
		kg, salt := 0.0, 0.0
		for range 1 + random.Intn(5) {
			w := Water{M3: 0.001 + 3*random.Float64(), PSU: MaxPSU * random.Float64(), C: MinC + (MaxC-MinC)*random.Float64()}
			waters = append(waters, w)
			density, err := DensityKgPerM3(w.PSU, w.C)
			require.NoError(t, err)
			kg += w.M3 * density
			salt += w.M3 * density * w.PSU / 1000
		}
		got, err := Mix(waters...)
		require.NoError(t, err)
		require.InDelta(t, kg, got.Kg, 1e-9)
		require.InDelta(t, salt, got.SaltKg, 1e-9)
		density, err := DensityKgPerM3(got.PSU, got.C)
		require.NoError(t, err)
		require.InDelta(t, kg, got.M3*density, 1e-9)
		require.InDelta(t, salt, got.M3*density*got.PSU/1000, 1e-9)
	}
}

func TestMixingEqualWatersChangesNothing(t *testing.T) {
	for _, w := range []Water{{0.3, 42, 40}, {0.1, 0, -2}, {1, 35, 25}} {
		got, err := Mix(w, w, w)
		require.NoError(t, err)
		require.InDelta(t, 3*w.M3, got.M3, 1e-12)
		require.InDelta(t, w.PSU, got.PSU, 1e-12)
		require.InDelta(t, w.C, got.C, 1e-12)
	}
}

func TestMixingRefusals(t *testing.T) {
	_, err := Mix()
	require.EqualError(t, err, "waters: got none, want at least one")
	_, err = Mix(Water{1, 35, 25}, Water{1, 50, 25})
	require.EqualError(t, err, "water 2: salinity: got 50 PSU, want 0 to 42 PSU")
	_, err = Mix(Water{0, 35, 25})
	require.EqualError(t, err, "water 1: volume: got 0 m3, want more than 0 and at most 10000 m3")
}
