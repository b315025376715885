package water

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// The table of Standard Methods 4500-O as reprinted in an instrument manual.
// One row is a misprint of the copy and says so.
func TestDoSaturationApha(t *testing.T) {
	rows := table(t, "do_saturation_apha.csv")
	checked := 0
	for _, r := range rows {
		s, c := r.Num(t, "S"), r.Num(t, "t_C")
		got := oxygenAtSeaLevel(s, c)
		require.InDelta(t, r.Num(t, "equation_S"), got, 1e-4, "%v", r)
		require.InDelta(t, r.Num(t, "gsw_mg_L"), got, 0.005, "%v", r)
		exported, err := OxygenSaturationMgPerL(s, c, SeaLevelKPa)
		if s > 40 {
			require.ErrorContains(t, err, "want 0 to 40 PSU")
		} else {
			require.NoError(t, err)
			require.InDelta(t, got, exported, 1e-12)
		}
		if r["t_C"] == "25" && r["chlorinity"] == "15" {
			continue
		}
		require.Equal(t, "seen", r["status"])
		require.InDelta(t, r.Num(t, "published_mg_L"), got, r.Num(t, "tol_abs"), "%v", r)
		checked++
	}
	require.Equal(t, len(rows)-1, checked)
	require.Equal(t, 124, len(rows))
}

// ISO 5814's fresh column; its linear salinity rule reads 0.02 to 0.11 mg/L
// high at 35 PSU and is not used.
func TestDoSaturationIso5814(t *testing.T) {
	rows := table(t, "do_saturation_iso5814.csv")
	require.Equal(t, 21, len(rows))
	for _, r := range rows {
		fresh, err := OxygenSaturationMgPerL(0, r.Num(t, "t_C"), SeaLevelKPa)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "published_fresh_mg_L"), fresh, r.Num(t, "tol_abs"), "%v", r)
		published.RequireDigits(t, r, "eq_fresh", fresh)
		salt, err := OxygenSaturationMgPerL(35, r.Num(t, "t_C"), SeaLevelKPa)
		require.NoError(t, err)
		published.RequireDigits(t, r, "eq_S35", salt)
		high := r.Num(t, "iso_linear_S35") - salt
		require.True(t, high > 0.01 && high < 0.12, "linear rule off by %g", high)
	}
}

// Coarse printed tables (0.1 mg/L), and the equation to its printed digits.
func TestDoPressure(t *testing.T) {
	rows := table(t, "do_pressure.csv")
	require.Equal(t, 68, len(rows))
	for _, r := range rows {
		var got float64
		var err error
		if r["kind"] == "elevation_m" {
			got, err = OxygenSaturationAtAltitudeMgPerL(0, r.Num(t, "t_C"), r.Num(t, "x"))
		} else {
			got, err = OxygenSaturationMgPerL(0, r.Num(t, "t_C"), r.Num(t, "x")/760*SeaLevelKPa)
		}
		require.NoError(t, err)
		require.Equal(t, "seen", r["status"])
		require.InDelta(t, r.Num(t, "published_mg_L"), got, r.Num(t, "tol_abs"), "%v", r)
		published.RequireDigits(t, r, "equation_mg_L", got)
	}
}

// ASHRAE Fundamentals 2017, chapter 1, table 1.
func TestStandardAtmosphere(t *testing.T) {
	rows := table(t, "standard_atmosphere.csv")
	require.Equal(t, 4, len(rows))
	for _, r := range rows {
		got, err := StandardPressureKPa(r.Num(t, "z_m"))
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "published_Pa"), 1000*got, r.Num(t, "tol_abs"), "%v", r)
		published.RequireDigits(t, r, "equation_Pa", 1000*got)
	}
}

func TestOxygenPercent(t *testing.T) {
	full, err := OxygenSaturationMgPerL(20, 24, 95)
	require.NoError(t, err)
	percent, err := OxygenPercent(0.8*full, 20, 24, 95)
	require.NoError(t, err)
	require.InDelta(t, 80, percent, 1e-12)
}

func TestOxygenRefusals(t *testing.T) {
	refused := func(want string, _ float64, err error) {
		t.Helper()
		require.EqualError(t, err, want)
	}
	call := func(f func(a, b, c float64) (float64, error), a, b, c float64, want string) {
		t.Helper()
		got, err := f(a, b, c)
		refused(want, got, err)
	}
	call(OxygenSaturationMgPerL, 41, 20, 101, "salinity: got 41 PSU, want 0 to 40 PSU")
	call(OxygenSaturationMgPerL, 0, 41, 101, "temperature: got 41 degC, want 0 to 40 degC")
	call(OxygenSaturationMgPerL, 0, 20, 1013, "pressure: got 1013 kPa, want 50 to 110 kPa")
	call(OxygenSaturationMgPerL, 0, 20, math.NaN(), "pressure: got NaN kPa, want 50 to 110 kPa")
	call(OxygenSaturationAtAltitudeMgPerL, 0, 20, 6000, "altitude: got 6000 m, want -500 to 5000 m")
	_, err := OxygenPercent(-1, 0, 20, 101)
	require.EqualError(t, err, "oxygen: got -1 mg/L, want 0 to 60 mg/L")
	_, err = OxygenPercent(5, 0, 50, 101)
	require.EqualError(t, err, "saturation: temperature: got 50 degC, want 0 to 40 degC")
	_, err = StandardPressureKPa(12_000)
	require.EqualError(t, err, "altitude: got 12000 m, want -500 to 11000 m")
}
