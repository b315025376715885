package water

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// Only the IF97 column is this package's formula; it lies within the spread of
// the older ones.
func TestVapourPressureTable(t *testing.T) {
	rows := table(t, "vapour_pressure_table.csv")
	require.Equal(t, 21, len(rows))
	for _, r := range rows {
		got, err := VapourPressurePa(0, r.Num(t, "t_C"))
		require.NoError(t, err)
		published.RequireDigits(t, r, "p_IF97", got)
		require.InEpsilon(t, r.Num(t, "p_hyland_wexler"), got, 0.00019)
		back, err := SaturationTemperatureC(got)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "t_C"), back, 1e-6)
	}
}

// IAPWS R7-97(2012), tables 35 and 36.
func TestIf97SaturationCheck(t *testing.T) {
	rows := table(t, "if97_saturation_check.csv")
	require.Equal(t, 4, len(rows))
	for _, r := range rows {
		got := saturationMPa(r.Num(t, "x_in"))
		if r["quantity"] == "tsat_IF97" {
			got = saturationK(r.Num(t, "x_in"))
		}
		require.InDelta(t, r.Num(t, "published"), got, r.Num(t, "tol_abs"), "%v", r)
	}
}

// The evaporation heat of IF97 and the lowering of vapour pressure by salt.
func TestLatentHeat(t *testing.T) {
	rows := table(t, "latent_heat.csv")
	require.Equal(t, 11, len(rows))
	for _, r := range rows {
		got, err := LatentHeatKJPerKg(r.Num(t, "t_C"))
		require.NoError(t, err)
		// Half a printed digit and the 0.0001 of the fit.
		require.InDelta(t, r.Num(t, "hfg_IF97_fresh_kJ_kg"), got, 0.0006, "%v", r)
		require.InDelta(t, r.Num(t, "linear_kJ_kg"), got, 0.5)
		fresh, err := VapourPressurePa(0, r.Num(t, "t_C"))
		require.NoError(t, err)
		published.RequireDigits(t, r, "psat_fresh_Pa", fresh)
		salt, err := VapourPressurePa(r.Num(t, "S"), r.Num(t, "t_C"))
		require.NoError(t, err)
		published.RequireDigits(t, r, "psat_at_S_Pa", salt)
	}
}

func TestVapourRefusals(t *testing.T) {
	_, err := VapourPressurePa(0, -1)
	require.EqualError(t, err, "temperature: got -1 degC, want 0 to 100 degC")
	_, err = VapourPressurePa(45, 20)
	require.EqualError(t, err, "salinity: got 45 PSU, want 0 to 40 PSU")
	_, err = VapourPressurePa(35, 60)
	require.EqualError(t, err, "temperature of salt water: got 60 degC, want 0 to 40 degC")
	_, err = SaturationTemperatureC(500)
	require.EqualError(t, err, "vapour pressure: got 500 Pa, want 611.213 to 101419 Pa")
	_, err = LatentHeatKJPerKg(60)
	require.EqualError(t, err, "temperature: got 60 degC, want 0 to 45 degC")
	boiling, err := SaturationTemperatureC(101_325)
	require.NoError(t, err)
	require.InDelta(t, 99.974, boiling, 0.001)
}
