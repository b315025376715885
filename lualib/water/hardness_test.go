package water

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// Definitions of the units and molar masses.
func TestHardnessConversions(t *testing.T) {
	pairs := map[string][2]HardnessUnit{
		"dGH_to_mgL_CaCO3": {DGH, MgPerLCaCO3}, "dKH_to_meqL": {DKH, MeqPerL},
		"meqL_to_mgL_CaCO3": {MeqPerL, MgPerLCaCO3}, "meqL_to_dKH": {MeqPerL, DKH},
		"dGH_to_mmolL_CaMg": {DGH, MmolPerL}, "dGH_to_mgL_Ca_only": {DGH, MgPerLCa},
		"gpg_US_to_mgL_CaCO3": {GrainPerGal, MgPerLCaCO3}, "clarke_to_mgL_CaCO3": {Clark, MgPerLCaCO3},
		"french_deg_to_mgL_CaCO3": {French, MgPerLCaCO3}, "dKH_to_mgL_HCO3": {DKH, MgPerLHCO3},
		"mgL_CaCO3_to_meqL": {MgPerLCaCO3, MeqPerL},
	}
	salts := map[string]Hardener{
		"dGH_to_g_CaCl2_2H2O_per_100L": CalciumChlorideDihydrate,
		"dGH_to_g_MgSO4_7H2O_per_100L": MagnesiumSulfateHeptahydrate,
	}
	rows := table(t, "hardness_conversions.csv")
	require.Equal(t, 13, len(rows))
	for _, r := range rows {
		x := r.Num(t, "x_in")
		var got float64
		var err error
		if salt, ok := salts[r["conversion"]]; ok {
			got, err = HardenerG(salt, 100, x)
		} else {
			pair, ok := pairs[r["conversion"]]
			require.True(t, ok, "%v", r)
			got, err = ConvertHardness(x, pair[0], pair[1])
		}
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "value"), got, r.Num(t, "tol_abs"), "%v", r)
		// The rows were computed from molar masses rounded to four decimals.
		require.InEpsilon(t, r.Num(t, "value"), got, 1e-6, "%v", r)
	}
}

// A milliequivalent of bicarbonate weighs its molar mass.
func TestBicarbonateRaisesAlkalinity(t *testing.T) {
	degrees, err := ConvertHardness(1, MeqPerL, DKH)
	require.NoError(t, err)
	got, err := HardenerG(SodiumBicarbonate, 1000, degrees)
	require.NoError(t, err)
	require.InDelta(t, 84.007, got, 0.001)
}

func TestHardnessRefusals(t *testing.T) {
	_, err := ConvertHardness(5, DGH, DKH)
	require.EqualError(t, err, "hardness: got dGH to dKH, want both of hardness or both of alkalinity")
	_, err = ConvertHardness(5, MmolPerL, MgPerLHCO3)
	require.ErrorContains(t, err, "want both of hardness or both of alkalinity")
	_, err = ConvertHardness(5, "mg/L", DKH)
	require.ErrorContains(t, err, `hardness: got unit "mg/L", want dGH, dKH`)
	_, err = ConvertHardness(5, DKH, "x")
	require.ErrorContains(t, err, `hardness: got unit "x", want dGH, dKH`)
	_, err = ConvertHardness(-1, DKH, MeqPerL)
	require.EqualError(t, err, "hardness: got -1 dKH, want 0 to 100000 dKH")
	_, err = HardenerG("chalk", 100, 1)
	require.EqualError(t, err, `salt: got "chalk", want calcium chloride dihydrate, magnesium sulfate heptahydrate or sodium bicarbonate`)
	_, err = HardenerG(SodiumBicarbonate, 0, 1)
	require.EqualError(t, err, "water: got 0 L, want more than 0 and at most 1e+07 L")
	_, err = HardenerG(SodiumBicarbonate, 1, -1)
	require.EqualError(t, err, "rise: got -1 degrees, want 0 to 100 degrees")
}

// Plummer & Busenberg 1982 and the rule of three.
func TestCarbonateCo2(t *testing.T) {
	rows := table(t, "carbonate_co2.csv")
	require.Equal(t, 25, len(rows))
	for _, r := range rows {
		kelvin := r.Num(t, "t_C") + kelvinAt0C
		var got float64
		switch r["quantity"] {
		case "pK1":
			got = carbonicPK1(kelvin)
		case "pK2":
			got = carbonicPK2(kelvin)
		default:
			alkalinity, err := ConvertHardness(r.Num(t, "dKH"), DKH, MeqPerL)
			require.NoError(t, err)
			co2, err := CarbonDioxideOf(r.Num(t, "pH"), alkalinity, r.Num(t, "t_C"), 0)
			require.NoError(t, err)
			got = co2.MgPerL
			if r["quantity"] == "CO2_rule_3KH" {
				got = co2.RuleMgPerL
			}
		}
		require.InDelta(t, r.Num(t, "value"), got, r.Num(t, "tol_abs"), "%v", r)
		published.RequireDigits(t, r, "value", got)
	}
}

func TestCarbonDioxideShowsItsDoubt(t *testing.T) {
	for c, off := range map[float64]float64{25: -15, 20: -21} {
		got, err := CarbonDioxideOf(7, 1.5, c, 0)
		require.NoError(t, err)
		require.InDelta(t, off, got.RuleOffPercent, 1)
		require.InDelta(t, 1.26, got.HighMgPerL/got.MgPerL, 0.002)
		require.InDelta(t, 1/1.26, got.LowMgPerL/got.MgPerL, 0.002)
	}
	for _, bad := range []struct {
		pH, alkalinity, c, s float64
		want                 string
	}{
		{8.3, 2, 25, 0, "pH: got 8.3, want 6 to 8"},
		{7, 0, 25, 0, "alkalinity: got 0 meq/L, want 0.05 to 20 meq/L"},
		{7, 2, 50, 0, "temperature: got 50 degC, want 0 to 40 degC"},
		{7, 2, 25, 35, "salinity: got 35 PSU, want 0 to 0.5 PSU"},
	} {
		_, err := CarbonDioxideOf(bad.pH, bad.alkalinity, bad.c, bad.s)
		require.EqualError(t, err, bad.want)
	}
}
