package salinity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Closed forms and exact mixing, computed rows: they hold to the printed digit.
func TestChangesAgreeWithWaterChangeMixing(t *testing.T) {
	rows := table(t, "water_change_mixing.csv")
	require.Len(t, rows, 20)
	for _, r := range rows {
		a, b, c, d, value := r.Num(t, "a"), r.Num(t, "b"), r.Num(t, "c"), r.Num(t, "d"), r.Num(t, "value")
		var got float64
		var err error
		switch r["quantity"] {
		case "S_after_n":
			got = b + (a-b)*math.Pow(1-c, d) // by mass: what the inverses below undo
			exact, err := AfterChanges(a, b, c, int(d), 25)
			require.NoError(t, err)
			require.InDelta(t, r.Num(t, "value2"), exact, 0.51e-8, "%v", r)
			require.InDelta(t, r.Num(t, "diff"), exact-got, 0.51e-5, "%v", r)
		case "f_needed":
			got, err = ShareFor(a, b, c, int(d))
		case "n_needed_exact":
			var whole int
			got, whole, err = ChangesFor(a, b, c, d)
			require.Equal(t, int(r.Num(t, "value2")), whole, "%v", r)
		case "Sn_needed":
			got, err = NewWaterFor(a, b, c, int(d))
		}
		require.NoError(t, err)
		require.InDelta(t, value, got, 0.51e-8, "%v", r)
	}
}

// What the doc comments promise of shares by mass and of volumes.
func TestSharesByMassKeepTheirPromise(t *testing.T) {
	for start := 0.0; start <= MaxPSU; start += 6 {
		for newPSU := 0.0; newPSU <= MaxPSU; newPSU += 6 {
			for f := 0.05; f < 1; f += 0.05 {
				exact, err := AfterChanges(start, newPSU, f, 3, 20)
				require.NoError(t, err)
				byMass := newPSU + (start-newPSU)*math.Pow(1-f, 3)
				require.True(t, exact-byMass > -1e-12 && exact-byMass < 0.36, "%g to %g by %g", start, newPSU, f)
			}
		}
	}
}

// Three halvings are three, not four, whatever rounding says.
func TestWholeChanges(t *testing.T) {
	exact, whole, err := ChangesFor(32, 0, 4, 0.5)
	require.NoError(t, err)
	require.InDelta(t, 3, exact, 1e-12)
	require.Equal(t, 3, whole)
	exact, whole, err = ChangesFor(35, 0, 35, 0.5)
	require.NoError(t, err)
	require.Zero(t, exact)
	require.Zero(t, whole)
	same, err := AfterChanges(12, 30, 0.2, 0, 25)
	require.NoError(t, err)
	require.InDelta(t, 12, same, 0)
}

func TestChangesRefusals(t *testing.T) {
	tests := []struct {
		call func() error
		want string
	}{
		{func() error { _, err := AfterChanges(50, 0, 0.1, 1, 25); return err }, "start: got 50 PSU, want 0 to 42 PSU"},
		{func() error { _, err := AfterChanges(5, 0, 0, 1, 25); return err }, "share: got 0 of the water, want more than 0 and at most 1 of the water"},
		{func() error { _, err := AfterChanges(5, 0, 0.1, -1, 25); return err }, "changes: got -1 of them, want 0 to 1000 of them"},
		{func() error { _, err := AfterChanges(5, 0, 0.1, 1, 50); return err }, "temperature: got 50 degC, want -2 to 40 degC"},
		{func() error { _, err := ShareFor(5, 20, 30, 2); return err }, "want: got 30 PSU, want it from the 5 PSU of now to short of the new water's 20 PSU"},
		{func() error { _, err := ShareFor(5, 20, 10, 0); return err }, "changes: got 0 of them, want 1 to 1000 of them"},
		{func() error { _, err := ShareFor(5, 60, 10, 1); return err }, "new water: got 60 PSU, want 0 to 42 PSU"},
		{func() error { _, _, err := ChangesFor(5, 20, 20, 0.1); return err }, "want: got 20 PSU, want it from the 5 PSU of now to short of the new water's 20 PSU"},
		{func() error { _, _, err := ChangesFor(5, 20, 10, 1); return err }, "share: got 1 of the water, want more than 0 and less than 1"},
		{func() error { _, _, err := ChangesFor(5, 20, 19.9, 1e-6); return err }, "changes needed: got 5.01063e+06 of them, want 0 to 1000 of them"},
		{func() error { _, err := NewWaterFor(5, 30, 0.1, 1); return err }, "new water: got 255 PSU, want 0 to 42 PSU"},
		{func() error { _, err := NewWaterFor(5, 30, 0.1, 0); return err }, "changes: got 0 of them, want 1 to 1000 of them"},
	}
	for _, test := range tests {
		require.EqualError(t, test.call(), test.want)
	}
}
