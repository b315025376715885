package salinity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Salt balances with EOS-80, computed rows: they hold to the printed digit.
func TestBalancesAgreeWithEvaporationSalinity(t *testing.T) {
	rows := table(t, "evaporation_salinity.csv")
	require.Len(t, rows, 13)
	for _, r := range rows {
		volume, s, c, d := r.Num(t, "V_L")/1000, r.Num(t, "S0"), r.Num(t, "t_C"), r.Num(t, "d")
		switch r["quantity"] {
		case "S_after_evaporating":
			got, err := AfterEvaporation(volume, s, c, d/1000)
			require.NoError(t, err)
			require.InDelta(t, r.Num(t, "value"), got.PSU, 0.51e-6, "%v", r)
			require.InDelta(t, r.Num(t, "value2"), 1000*got.M3, 0.51e-4, "%v", r)
		case "dry_salt_to_raise_kg":
			got, err := AddMix(volume, s, d, c, 0)
			require.NoError(t, err)
			require.InDelta(t, r.Num(t, "value"), got.MixKg, 0.51e-6, "%v", r)
			require.InDelta(t, r.Num(t, "value2"), 1000*got.M3, 0.51e-4, "%v", r)
		case "fresh_replacement_to_lower_L":
			got, err := ReplaceM3(volume, s, d, 0, c)
			require.NoError(t, err)
			require.InDelta(t, r.Num(t, "value"), 1000*got, 0.51e-5, "%v", r)
		default:
			require.Fail(t, "unknown quantity", "%v", r)
		}
	}
}

// What left as vapour comes back as top-up: the same kilograms, and the tank
// is as it was.
func TestTopUpBringsTheTankBack(t *testing.T) {
	left, err := AfterEvaporation(2.4, 33, 26, 0.07)
	require.NoError(t, err)
	back, err := TopUpTo(left.M3, left.PSU, 33, 26)
	require.NoError(t, err)
	require.InDelta(t, left.LostKg, back.FreshKg, 1e-9)
	require.InDelta(t, 0.07, back.FreshM3, 1e-12)
	require.InDelta(t, 2.4, back.AfterM3, 1e-12)
}

// Salt, then dilution, returns to the start.
func TestSaltThenDilutionReturns(t *testing.T) {
	for _, c := range []float64{0, 24, 40} {
		salted, err := AddMix(0.9, 12, 34, c, 0)
		require.NoError(t, err)
		diluted, err := TopUpTo(salted.M3, 34, 12, c)
		require.NoError(t, err)
		require.InDelta(t, 0.9*density90(12, c)*12/1000+salted.SaltKg, (salted.Kg+diluted.FreshKg)*12/1000, 1e-9)
		mixed, err := Mix(Water{salted.M3, 34, c}, Water{diluted.FreshM3, 0, c})
		require.NoError(t, err)
		require.InDelta(t, 12, mixed.PSU, 1e-9)
		require.InDelta(t, diluted.AfterM3, mixed.M3, 1e-9)
	}
}

func TestReplacingIsAChange(t *testing.T) {
	for _, to := range []float64{10, 20, 30} {
		m3, err := ReplaceM3(1.5, 20, to, to+(to-20)/2, 25)
		require.NoError(t, err)
		if to == 20 {
			require.Zero(t, m3)
			continue
		}
		got, err := AfterChanges(20, to+(to-20)/2, m3/1.5, 1, 25)
		require.NoError(t, err)
		require.InDelta(t, to, got, 1e-9)
	}
}

func TestEvaporationRefusals(t *testing.T) {
	tests := []struct {
		call func() error
		want string
	}{
		{func() error { _, err := AfterEvaporation(0, 35, 25, 0); return err }, "volume: got 0 m3, want more than 0 and at most 10000 m3"},
		{func() error { _, err := AfterEvaporation(1, 35, 25, 2); return err }, "loss: got 2 m3, want 0 to 1 m3"},
		{func() error { _, err := AfterEvaporation(1, 0, 25, 1); return err }, "loss: got 1 m3, want less than the water there is"},
		{func() error { _, err := AfterEvaporation(1, 35, 25, 0.5); return err }, "salinity after the loss: got 68.2464 PSU, want 0 to 42 PSU"},
		{func() error { _, err := TopUpTo(1, 50, 35, 25); return err }, "salinity: got 50 PSU, want 0 to 42 PSU"},
		{func() error { _, err := TopUpTo(1, 35, 36, 25); return err }, "to: got 36 PSU, want more than 0 and at most the 35 PSU of now"},
		{func() error { _, err := TopUpTo(1, 35, 0, 25); return err }, "to: got 0 PSU, want more than 0 and at most the 35 PSU of now"},
		{func() error { _, err := ReplaceM3(1, 35, 20, 25, 25); return err }, "to: got 20 PSU, want it between the 35 PSU of now and the new water's 25 PSU"},
		{func() error { _, err := ReplaceM3(1, 35, 20, -1, 25); return err }, "with: got -1 PSU, want 0 to 42 PSU"},
		{func() error { _, err := ReplaceM3(-1, 35, 20, 0, 25); return err }, "volume: got -1 m3, want more than 0 and at most 10000 m3"},
	}
	for _, test := range tests {
		require.EqualError(t, test.call(), test.want)
	}
}
