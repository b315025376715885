package salinity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The values printed in Fofonoff & Millard 1983, pages 16, 19 and 23.
func TestDensityAgreesWithPrintedValues(t *testing.T) {
	rows := table(t, "eos80_check.csv")
	require.Len(t, rows, 17)
	for _, r := range rows {
		require.Equal(t, "seen", r["status"])
		t90 := r.Num(t, "t68_C") / ipts68PerITS90
		got, err := DensityKgPerM3(r.Num(t, "S"), t90)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "rho_published"), got, r.Num(t, "tol_abs"), "%v", r)
		require.InDelta(t, r.Num(t, "rho_equation"), got, 0.6e-6, "%v", r)
	}
}

// A grid over the whole range: the equation to its printed digits, and TEOS-10
// (full Gibbs function) within the 0.01 kg/m3 that the doc comment promises.
func TestDensityOverTheWholeRange(t *testing.T) {
	rows := table(t, "eos80_grid.csv")
	require.Greater(t, len(rows), 400)
	for _, r := range rows {
		s, temperature := r.Num(t, "SP"), r.Num(t, "t_C")
		got, err := DensityKgPerM3(s, temperature)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "rho_eos80_t90"), got, 5.1e-6, "%v", r)
		require.InDelta(t, r.Num(t, "rho_eos80_t_as_t68"), density68(s, temperature), 5.1e-6, "%v", r)
		require.InDelta(t, r.Num(t, "rho_teos10_exact"), got, 0.01, "%v", r)
	}
}

func TestDensityRefusesWhatLiesOutside(t *testing.T) {
	tests := []struct {
		salinity, temperature float64
		want                  string
	}{
		{-0.1, 20, "salinity: got -0.1 PSU, want 0 to 42 PSU"},
		{42.1, 20, "salinity: got 42.1 PSU, want 0 to 42 PSU"},
		{math.NaN(), 20, "salinity: got NaN PSU, want 0 to 42 PSU"},
		{35, -2.1, "temperature: got -2.1 degC, want -2 to 40 degC"},
		{35, 77, "temperature: got 77 degC, want -2 to 40 degC"},
		{35, math.Inf(1), "temperature: got +Inf degC, want -2 to 40 degC"},
	}
	for _, test := range tests {
		_, err := DensityKgPerM3(test.salinity, test.temperature)
		require.EqualError(t, err, test.want)
	}
}

func TestDensityAtTheEndsOfTheRange(t *testing.T) {
	for _, s := range []float64{MinPSU, MaxPSU} {
		for _, temperature := range []float64{MinC, MaxC} {
			got, err := DensityKgPerM3(s, temperature)
			require.NoError(t, err)
			require.True(t, got > 990 && got < 1035, "%g at %g, %g", got, s, temperature)
		}
	}
}
