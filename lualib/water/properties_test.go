package water

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
	"weirbook/lualib/salinity"
)

// Printed values of handbooks and steam tables.
func TestWaterProperties(t *testing.T) {
	functions := map[string]func(c float64) (float64, error){
		"hfg_kJ_kg":       LatentHeatKJPerKg,
		"rho_water_kg_m3": PureDensityKgPerM3,
		"mu_water_mPa_s":  PureViscosityMPaS,
		"mu_water_mPa_s_at_rho998_298.15K": func(float64) (float64, error) {
			return iapwsViscosity(998, 298.15), nil
		},
		"cp_water_kJ_kgK": func(c float64) (float64, error) {
			cp, err := HeatCapacityJPerKgK(0, c)
			return cp / 1000, err
		},
	}
	rows := table(t, "water_properties.csv")
	require.Equal(t, 23, len(rows))
	for _, r := range rows {
		got, err := functions[r["quantity"]](r.Num(t, "t_C"))
		require.NoError(t, err)
		require.Contains(t, []string{"seen", "recalled"}, r["status"])
		require.InDelta(t, r.Num(t, "published"), got, r.Num(t, "tol_abs"), "%v", r)
	}
}

// The correlation's own values, and its distance from Boudreau's. The
// constants are from memory, so these rows test the arithmetic alone.
func TestSeawaterViscosity(t *testing.T) {
	rows := table(t, "seawater_viscosity.csv")
	require.Equal(t, 24, len(rows))
	for _, r := range rows {
		s, c := r.Num(t, "S"), r.Num(t, "t_C")
		got, err := ViscosityMPaS(s, c)
		require.NoError(t, err)
		published.RequireDigits(t, r, "mu_sharqawy", got)
		require.InEpsilon(t, r.Num(t, "mu_boudreau"), got, 0.011)
		kinematic, err := KinematicViscosityMm2PerS(s, c)
		require.NoError(t, err)
		published.RequireDigits(t, r, "nu_mm2_s", kinematic)
		pure, err := PureViscosityMPaS(c)
		require.NoError(t, err)
		if s == 0 {
			require.InEpsilon(t, pure, got, 0.0003)
		}
	}
}

// Fofonoff & Millard 1983, pages 30, 32 and 37.
func TestSeawaterCpFreezing(t *testing.T) {
	rows := table(t, "seawater_cp_freezing.csv")
	require.Equal(t, 19, len(rows))
	for _, r := range rows {
		var got float64
		var err error
		if r["quantity"] == "t_freeze_C" {
			got, err = FreezingPointC(r.Num(t, "S"))
			require.InDelta(t, r.Num(t, "teos10"), got, 0.004)
		} else {
			t68 := r.Num(t, "t68_C")
			got, err = HeatCapacityJPerKgK(r.Num(t, "S"), t68/ipts68PerITS90)
			require.InDelta(t, r.Num(t, "teos10"), got, 4.3)
		}
		require.NoError(t, err)
		require.Equal(t, "seen", r["status"])
		require.InDelta(t, r.Num(t, "published"), got, r.Num(t, "tol_abs"), "%v", r)
		published.RequireDigits(t, r, "equation", got)
	}
}

// The formula's own values only: it has no check but two remembered anchors,
// 1.3330 and 1.3394, and is good to 0.0003.
func TestRefractiveIndex(t *testing.T) {
	rows := table(t, "refractive_index.csv")
	require.Equal(t, 22, len(rows))
	for _, r := range rows {
		got, err := RefractiveIndex(r.Num(t, "S"), r.Num(t, "t_C"))
		require.NoError(t, err)
		published.RequireDigits(t, r, "n_589.3nm", got)
		fresh, err := RefractiveIndex(0, r.Num(t, "t_C"))
		require.NoError(t, err)
		published.RequireDigits(t, r, "n_minus_n_freshwater", got-fresh)
	}
	for s, anchor := range map[float64]float64{0: 1.3330, 35: 1.3394} {
		got, err := RefractiveIndex(s, 20)
		require.NoError(t, err)
		require.InDelta(t, anchor, got, 3e-4)
	}
}

func TestPropertyRefusals(t *testing.T) {
	const warm = "temperature: got 45 degC, want 0 to 40 degC"
	for name, f := range map[string]func(s, c float64) (float64, error){
		"viscosity": ViscosityMPaS, "kinematic": KinematicViscosityMm2PerS, "heat capacity": HeatCapacityJPerKgK,
		"pure viscosity": func(_, c float64) (float64, error) { return PureViscosityMPaS(c) },
	} {
		_, err := f(0, 45)
		require.EqualError(t, err, warm, name)
	}
	_, err := ViscosityMPaS(50, 20)
	require.EqualError(t, err, "salinity: got 50 PSU, want 0 to 42 PSU")
	_, err = RefractiveIndex(0, 31)
	require.EqualError(t, err, "temperature: got 31 degC, want 0 to 30 degC")
	_, err = FreezingPointC(0)
	require.EqualError(t, err, "salinity: got 0 PSU, want 4 to 40 PSU")
	_, err = PureDensityKgPerM3(45)
	require.EqualError(t, err, "temperature: got 45 degC, want -2 to 40 degC")
	pure, err := PureDensityKgPerM3(4)
	require.NoError(t, err)
	same, err := salinity.DensityKgPerM3(0, 4)
	require.NoError(t, err)
	require.InDelta(t, same, pure, 0)
}
