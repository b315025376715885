package water

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// Geometric mixing per litre; the columns with real densities are for salinity
// by mass and belong elsewhere.
func TestWaterChangeMixing(t *testing.T) {
	rows := table(t, "water_change_mixing.csv")
	require.Equal(t, 20, len(rows))
	for _, r := range rows {
		a, b, c, d := r.Num(t, "a"), r.Num(t, "b"), r.Num(t, "c"), r.Num(t, "d")
		var got float64
		var err error
		switch r["quantity"] {
		case "S_after_n":
			got, err = AfterChanges(a, b, c, int(d))
		case "f_needed":
			got, err = ShareFor(a, b, c, int(d))
		case "n_needed_exact":
			var whole int
			got, whole, err = ChangesFor(a, b, c, d)
			require.InDelta(t, r.Num(t, "value2"), float64(whole), 0)
		case "Sn_needed":
			got, err = NewFor(a, b, c, int(d))
		default:
			require.Fail(t, "unknown row", "%v", r)
		}
		require.NoError(t, err)
		published.RequireDigits(t, r, "value", got)
	}
}

// Each of the four answers, put into the first, gives what was wanted.
func TestDilutionGoesRound(t *testing.T) {
	share, err := ShareFor(80, 5, 20, 4)
	require.NoError(t, err)
	end, err := AfterChanges(80, 5, share, 4)
	require.NoError(t, err)
	require.InDelta(t, 20, end, 1e-12)
	exact, whole, err := ChangesFor(80, 5, 20, share)
	require.NoError(t, err)
	require.InDelta(t, 4, exact, 1e-12)
	require.Equal(t, 4, whole)
	fresh, err := NewFor(80, 20, share, 4)
	require.NoError(t, err)
	require.InDelta(t, 5, fresh, 1e-12)
}

func TestDilutionRefusals(t *testing.T) {
	_, err := AfterChanges(-1, 0, 0.2, 1)
	require.EqualError(t, err, "concentration: got -1, want 0 to 1e+06")
	_, err = AfterChanges(1, 0, 0, 1)
	require.EqualError(t, err, "share changed: got 0, want more than 0 and at most 1")
	_, err = AfterChanges(1, 0, 0.2, -1)
	require.EqualError(t, err, "number of changes: got -1, want 0 to 10000")
	_, err = ShareFor(80, 5, 90, 4)
	require.EqualError(t, err, "want: got 90, want between 80 of now and 5 of the new water")
	_, err = ShareFor(80, 5, 20, 0)
	require.EqualError(t, err, "number of changes: got 0, want 1 to 10000")
	_, err = ShareFor(-80, 5, 20, 1)
	require.EqualError(t, err, "concentration: got -80, want 0 to 1e+06")
	_, _, err = ChangesFor(80, 5, 5, 0.2)
	require.EqualError(t, err, "want: got 5, want short of the new water's 5; changes only come near it")
	_, _, err = ChangesFor(80, 5, 20, 1)
	require.EqualError(t, err, "share changed: got 1, want more than 0 and less than 1")
	_, _, err = ChangesFor(80, 5, 100, 0.2)
	require.ErrorContains(t, err, "want between 80 of now")
	_, _, err = ChangesFor(80, 5, 20, 1e-9)
	require.EqualError(t, err, "share changed: got 1e-09, want a share with which 10000 changes are enough")
	_, err = NewFor(80, 10, 0.2, 4)
	require.EqualError(t, err, "want: got 10, want at least 32.768, the end with pure new water; change more or more often")
	_, err = NewFor(80, 10, 0.2, 0)
	require.EqualError(t, err, "number of changes: got 0, want 1 to 10000")
}
