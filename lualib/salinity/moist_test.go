package salinity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Without water in the mix the batches are the doses of salt_mass.csv.
func TestDryMixAgreesWithSaltMass(t *testing.T) {
	rows := table(t, "salt_mass.csv")
	require.Len(t, rows, 16)
	for _, r := range rows {
		volume, s, c := r.Num(t, "V_L")/1000, r.Num(t, "S"), r.Num(t, "t_C")
		got, err := AddMix(volume, 0, s, c, 0)
		if r["mode"] == "final_volume" {
			got, err = NewWater(volume, 0, s, c, 0)
		}
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "salt_kg_simple"), got.SaltKg, lastKg, "%v", r)
		require.InDelta(t, r.Num(t, "water_kg_simple"), got.SourceKg, lastKg, "%v", r)
		require.InDelta(t, r.Num(t, "V_final_L_simple"), 1000*got.M3, lastL, "%v", r)
	}
}

// A moist mix brings water: salt and water balance with it counted.
func TestMoistMixBalances(t *testing.T) {
	for _, moist := range []float64{0, 0.02, 0.08, 0.15, 0.5} {
		into, err := AddMix(1.2, 5, 36, 24, moist)
		require.NoError(t, err)
		of, err := NewWater(into.M3, 5, 36, 24, moist)
		require.NoError(t, err)
		require.InDelta(t, into.MixKg, of.MixKg, 1e-9)
		require.InDelta(t, into.SourceM3, of.SourceM3, 1e-12)
		for _, b := range []Batch{into, of} {
			require.InDelta(t, b.Kg*36, b.SourceKg*5+1000*b.MixKg*(1-moist), 1e-9)
			require.InDelta(t, b.Kg, b.SourceKg+b.MixKg, 1e-9)
			require.InDelta(t, b.SaltKg, b.MixKg*(1-moist), 1e-12)
			require.InDelta(t, 36, b.PSU, 0)
		}
		require.InDelta(t, 1.2, into.SourceM3, 1e-12)
	}
	dry, err := SaltMass(1, 0, 35, 25)
	require.NoError(t, err)
	short, err := MixKg(dry.SaltKg, 0.1)
	require.NoError(t, err)
	moist, err := AddMix(1, 0, 35, 25, 0.1)
	require.NoError(t, err)
	require.InDelta(t, 1.004, moist.MixKg/short, 0.0005)
}

func TestMoistMixRefusals(t *testing.T) {
	tests := []struct {
		call func() error
		want string
	}{
		{func() error { _, err := AddMix(0, 0, 35, 25, 0); return err }, "volume: got 0 m3, want more than 0 and at most 10000 m3"},
		{func() error { _, err := AddMix(1, 0, 35, 25, 0.6); return err }, "water in the mix: got 0.6 of its mass, want 0 to 0.5 of its mass"},
		{func() error { _, err := AddMix(1, 36, 35, 25, 0); return err }, "to: got 35 PSU, want at least the 36 PSU of now; salt cannot lower salinity: change water instead"},
		{func() error { _, err := NewWater(1, -1, 35, 25, 0); return err }, "source: got -1 PSU, want 0 to 42 PSU"},
		{func() error { _, err := NewWater(1, 36, 35, 25, 0); return err }, "source: got 36 PSU, want at most the 35 PSU of the new water"},
		{func() error { _, err := NewWater(1, 0, 35, 45, 0); return err }, "temperature: got 45 degC, want -2 to 40 degC"},
		{func() error { _, err := NewWater(-1, 0, 35, 25, 0); return err }, "volume: got -1 m3, want more than 0 and at most 10000 m3"},
	}
	for _, test := range tests {
		require.EqualError(t, test.call(), test.want)
	}
}

// TEOS-10's reference salinity, and the definition both ways.
func TestConcentrations(t *testing.T) {
	got, err := GramsPerKg(35)
	require.NoError(t, err)
	require.InDelta(t, 35.16504, got, 1e-12)
	// Salinity 35 at 15 degC (IPTS-68) has a density of 1025.97 kg/m3.
	perL, err := GramsPerL(35, 15)
	require.NoError(t, err)
	require.InDelta(t, 35*1.02597, perL, 0.0005)
	dose, err := SaltMass(1, 0, 35, 25)
	require.NoError(t, err)
	psu, err := FromMasses(dose.SaltKg, dose.BeforeKg)
	require.NoError(t, err)
	require.InDelta(t, 35, psu, 1e-12)

	_, err = GramsPerKg(43)
	require.EqualError(t, err, "salinity: got 43 PSU, want 0 to 42 PSU")
	_, err = GramsPerL(35, 50)
	require.EqualError(t, err, "temperature: got 50 degC, want -2 to 40 degC")
	_, err = FromMasses(-1, 1)
	require.EqualError(t, err, "salt: got -1 kg, want 0 to 1e+07 kg")
	_, err = FromMasses(1, 0)
	require.EqualError(t, err, "water: got 0 kg, want more than 0 and at most 1e+07 kg")
	_, err = FromMasses(1, 1)
	require.EqualError(t, err, "salinity: got 500 PSU, want 0 to 42 PSU")
}

// The Venice System, from memory; the ends as the doc comment puts them.
func TestClass(t *testing.T) {
	for psu, want := range map[float64]string{
		0: "fresh", 0.49: "fresh", 0.5: "oligohaline", 4.9: "oligohaline", 5: "mesohaline", 17.9: "mesohaline",
		18: "polyhaline", 29.9: "polyhaline", 30: "euhaline", 40: "euhaline", 40.1: "hyperhaline", 42: "hyperhaline",
	} {
		got, err := Class(psu)
		require.NoError(t, err)
		require.Equal(t, want, got, "%g", psu)
	}
	_, err := Class(-0.1)
	require.EqualError(t, err, "salinity: got -0.1 PSU, want 0 to 42 PSU")
}
