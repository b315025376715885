package salinity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Computed rows: exact for the definition of salinity and EOS-80 densities, so
// they hold to the printed digit.
const (
	lastKg = 0.51e-5
	lastL  = 0.51e-4
)

func TestSaltIntoFreshWater(t *testing.T) {
	seen := 0
	for _, r := range table(t, "salt_mass.csv") {
		if r["mode"] != "into_fresh_volume" {
			continue
		}
		seen++
		temperature, to := r.Num(t, "t_C"), r.Num(t, "S")
		got, err := SaltMass(r.Num(t, "V_L")/1000, 0, to, temperature)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "water_kg_simple"), got.BeforeKg, lastKg, "%v", r)
		require.InDelta(t, r.Num(t, "V_final_L_simple"), 1000*got.AfterM3, lastL, "%v", r)
		density, err := DensityKgPerM3(to, temperature)
		require.NoError(t, err)
		finalL := 1000 * (got.BeforeKg + got.ReferenceSaltKg) / density
		require.InDelta(t, r.Num(t, "V_final_L_SA"), finalL, lastL, "%v", r)
		requireSalt(t, r, got)
	}
	require.Equal(t, 8, seen)
}

func TestSaltInAFinishedVolume(t *testing.T) {
	seen := 0
	for _, r := range table(t, "salt_mass.csv") {
		if r["mode"] != "final_volume" {
			continue
		}
		seen++
		got, err := SaltMassFinished(r.Num(t, "V_L")/1000, 0, r.Num(t, "S"), r.Num(t, "t_C"))
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "water_kg_simple"), got.BeforeKg, lastKg, "%v", r)
		require.InDelta(t, r.Num(t, "V_final_L_simple"), 1000*got.AfterM3, lastL, "%v", r)
		requireSalt(t, r, got)
	}
	require.Equal(t, 8, seen)
}

// requireSalt compares both readings of salinity, as dry salt and as a mix.
func requireSalt(t *testing.T, r row, got Dose) {
	t.Helper()
	moisture := r.Num(t, "w_moisture")
	for suffix, salt := range map[string]float64{"simple": got.SaltKg, "SA": got.ReferenceSaltKg} {
		require.InDelta(t, r.Num(t, "salt_kg_"+suffix), salt, lastKg, "%v", r)
		mix, err := MixKg(salt, moisture)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "mix_kg_"+suffix), mix, lastKg, "%v", r)
	}
}

// From any start the salt balance must close, and two small rises must take
// the same salt as one large one.
func TestSaltBalanceCloses(t *testing.T) {
	first, err := SaltMass(0.757082, 5, 18, 24)
	require.NoError(t, err)
	require.InDelta(t, 18, (first.BeforeKg*5+1000*first.SaltKg)/first.AfterKg, 1e-12)
	require.InDelta(t, 0.757082, first.BeforeM3, 1e-12)

	second, err := SaltMassByWeight(first.AfterKg, 18, 33, 24)
	require.NoError(t, err)
	whole, err := SaltMass(0.757082, 5, 33, 24)
	require.NoError(t, err)
	require.InDelta(t, whole.SaltKg, first.SaltKg+second.SaltKg, 1e-12)
	require.InDelta(t, whole.ReferenceSaltKg/whole.SaltKg, 1.0048, 1.0e-4)

	finished, err := SaltMassFinished(whole.AfterM3, 5, 33, 24)
	require.NoError(t, err)
	require.InDelta(t, whole.SaltKg, finished.SaltKg, 1e-12)
	require.InDelta(t, whole.BeforeM3, finished.BeforeM3, 1e-12)
}

func TestSaltForNoRiseIsNothing(t *testing.T) {
	got, err := SaltMass(1, 35, 35, 25)
	require.NoError(t, err)
	require.Zero(t, got.SaltKg)
	require.InDelta(t, got.BeforeM3, got.AfterM3, 1e-15)
}

func TestSaltRefusals(t *testing.T) {
	const lower = "to: got 10 PSU, want at least the 35 PSU of now; salt cannot lower salinity: change water instead"
	const noVolume = "volume: got 0 m3, want more than 0 and at most 10000 m3"
	tests := []struct {
		name string
		call func() (Dose, error)
		want string
	}{
		{"lower", func() (Dose, error) { return SaltMass(1, 35, 10, 25) }, lower},
		{"lower by weight", func() (Dose, error) { return SaltMassByWeight(1, 35, 10, 25) }, lower},
		{"lower finished", func() (Dose, error) { return SaltMassFinished(1, 35, 10, 25) }, lower},
		{"no water", func() (Dose, error) { return SaltMass(0, 0, 35, 25) }, noVolume},
		{"no finished water", func() (Dose, error) { return SaltMassFinished(0, 0, 35, 25) }, noVolume},
		{"litres as m3", func() (Dose, error) { return SaltMass(25000, 0, 35, 25) },
			"volume: got 25000 m3, want more than 0 and at most 10000 m3"},
		{"no weight", func() (Dose, error) { return SaltMassByWeight(math.NaN(), 0, 35, 25) },
			"water: got NaN kg, want more than 0 and at most 1e+07 kg"},
		{"from", func() (Dose, error) { return SaltMass(1, -1, 35, 25) },
			"from: salinity: got -1 PSU, want 0 to 42 PSU"},
		{"to", func() (Dose, error) { return SaltMass(1, 0, 50, 25) },
			"to: salinity: got 50 PSU, want 0 to 42 PSU"},
		{"warm", func() (Dose, error) { return SaltMass(1, 0, 35, 78) },
			"temperature: got 78 degC, want -2 to 40 degC"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := test.call()
			require.EqualError(t, err, test.want)
		})
	}
}

func TestMixRefusals(t *testing.T) {
	_, err := MixKg(-1, 0.1)
	require.EqualError(t, err, "salt: got -1 kg, want 0 to 1e+07 kg")
	_, err = MixKg(10, 0.9)
	require.EqualError(t, err, "water in the mix: got 0.9 of its mass, want 0 to 0.5 of its mass")
}
