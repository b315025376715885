package filter

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// The media table holds the recalled defaults as they were recalled; nothing
// is checked against them.
func TestNitrificationRates(t *testing.T) {
	merged := map[string]string{"fluidised sand": "fluidised sand (11500 m2/m3 at 1 mm class)"}
	want := map[string]int{}
	for _, r := range table(t, "nitrification_rates.csv") {
		name := r["media"]
		if whole, ok := merged[name]; ok {
			name = whole
		}
		want[fmt.Sprintf("%s|%s|%s|%s|%g|%g", name, r["basis"], r["TAN_level_mg_L"], r["t_C"], r.Num(t, "rate_low"), r.Num(t, "rate_high"))]++
	}
	require.Len(t, want, 8)
	for _, m := range AllMedia() {
		for _, b := range m.Bands {
			key := fmt.Sprintf("%s|%s|%g-%g|%s|%g|%g", m.Name, basisWord[m.Basis], b.TANMgPerL.Low, b.TANMgPerL.High,
				span(b.MinC, b.MaxC), inTable(m.Basis, b.RateTANPerDay.Low), inTable(m.Basis, b.RateTANPerDay.High))
			require.Equal(t, 1, want[key], key)
			delete(want, key)
		}
	}
	require.Empty(t, want)
}

var basisWord = map[Basis]string{PerM2: "areal", PerM3: "volumetric", PerKg: "mass"}

// inTable is a rate in the unit of the table, which has mg for rock.
func inTable(basis Basis, rate float64) float64 {
	if basis == PerKg {
		return 1000 * rate
	}
	return rate
}

func span(low, high float64) string {
	if low == high {
		return fmt.Sprintf("%g", low)
	}
	return fmt.Sprintf("%g-%g", low, high)
}

// media by its ID where it must be there.
func medium(t *testing.T, id string) Media {
	t.Helper()
	m, err := MediaOf(id)
	require.NoError(t, err)
	return m
}

func TestRateByTemperature(t *testing.T) {
	sand := medium(t, "fluidised-sand")
	for c, want := range map[float64]Range{
		15: {300, 700}, 20: {300, 1500}, 25: {700, 1500}, 30: {700, 1500}, 34: {700, 1500},
		10: {300 / 1.61051, 700 / 1.159274},
	} {
		got, err := Rate(sand, c, 1)
		require.NoError(t, err)
		require.InEpsilon(t, want.Low, got.Low, 1e-6, "at %g", c)
		require.InEpsilon(t, want.High, got.High, 1e-6, "at %g", c)
	}
}

// Over all media and temperatures a rate is a true range that never falls as
// the water gets warmer or richer.
func TestRatesRise(t *testing.T) {
	for _, m := range AllMedia() {
		before := Range{}
		for c := m.Bands[0].MinC - colderK; c <= m.Bands[len(m.Bands)-1].MaxC+warmerK; c += 0.5 {
			got, err := Rate(m, c, 0.2)
			require.NoError(t, err)
			require.True(t, got.Low > 0 && got.Low < got.High, "%s at %g", m.ID, c)
			require.True(t, got.Low >= before.Low && got.High >= before.High, "%s at %g", m.ID, c)
			rich, err := Rate(m, c, 2)
			require.NoError(t, err)
			require.True(t, rich.Low >= got.Low && rich.High >= got.High, "%s at %g", m.ID, c)
			before = got
		}
	}
}

// An aquarium's clean water gives a small part of a farm's rate.
func TestRateFallsWithTAN(t *testing.T) {
	full, err := Rate(medium(t, "moving-bed"), 25, 0.5)
	require.NoError(t, err)
	tenth, err := Rate(medium(t, "moving-bed"), 25, 0.05)
	require.NoError(t, err)
	require.Equal(t, Range{0.3, 0.8}, full)
	require.InDelta(t, 0.03, tenth.Low, 1e-12)
	require.InDelta(t, 0.08, tenth.High, 1e-12)
}

func TestRateRefusals(t *testing.T) {
	_, err := MediaOf("straw")
	require.EqualError(t, err, `media: got "straw", want trickling, moving-bed, bead, fluidised-sand, sponge or live-rock`)
	_, err = Rate(Media{ID: "own"}, 25, 1)
	require.EqualError(t, err, `media: got "own" without rates, want one of the media table`)
	_, err = Rate(medium(t, "sponge"), 15, 0.1)
	require.EqualError(t, err, "temperature: got 15 degC, want 16 to 31 degC")
	_, err = Rate(medium(t, "sponge"), 25, 0)
	require.EqualError(t, err, "TAN: got 0 mg/L, want 0.01 to 10 mg/L")
}

// The table of a caller is a copy.
func TestMediaTableIsSafe(t *testing.T) {
	AllMedia()[0].Bands[0].RateTANPerDay.Low = 99
	require.InDelta(t, 0.2, AllMedia()[0].Bands[0].RateTANPerDay.Low, 0)
}
