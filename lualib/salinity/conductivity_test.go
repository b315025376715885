package salinity

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// deep is R_p, by which pressure raises a conductivity ratio R; published
// values from the deep sea are brought to the surface with it.
// Source: UNESCO 44, eq. 4 (coefficients from memory, borne out by the rows).
func deep(r, t68, dbar float64) float64 {
	return 1 + dbar*poly(dbar, 2.070e-5, -6.370e-10, 3.989e-15)/(1+3.426e-2*t68+4.464e-4*t68*t68+(4.215e-1-3.107e-3*t68)*r)
}

// The values printed in Fofonoff & Millard 1983, pages 9 and 11 to 14, and the
// equation's own digits. Some rows lie outside the validity box, so the bare
// equation is compared.
func TestPracticalSalinityAgreesWithPss78Check(t *testing.T) {
	rows := table(t, "pss78_check.csv")
	require.Len(t, rows, 28)
	for _, r := range rows {
		require.Equal(t, "seen", r["status"])
		x, t68, dbar := r.Num(t, "x_in"), r.Num(t, "t68_C"), r.Num(t, "p_dbar")
		var got float64
		switch r["quantity"] {
		case "S_from_R":
			got = pss78(x/(deep(x, t68, dbar)*ratioAt(t68)), t68)
		case "R_from_S":
			surface := ratioOf(x, t68) * ratioAt(t68)
			got = surface
			for range 50 { // R stands on both sides of eq. 4
				got = surface * deep(got, t68, dbar)
			}
		}
		require.InDelta(t, r.Num(t, "published"), got, r.Num(t, "tol_abs"), "%v", r)
		require.InEpsilon(t, r.Num(t, "equation"), got, 1e-9, "%v", r)
	}
}

// Culkin & Smith's standard, the examples printed for the TEOS-10 toolbox, and
// a grid that the toolbox computed.
func TestConductivityAgreesWithConductivityTable(t *testing.T) {
	rows := table(t, "conductivity.csv")
	require.Len(t, rows, 56)
	for _, r := range rows {
		x, c, dbar := r.Num(t, "x_in"), r.Num(t, "t90_C"), r.Num(t, "p_dbar")
		var got float64
		var err error
		switch r["quantity"] {
		case "C_from_SP":
			require.Zero(t, dbar)
			got, err = ToConductivity(x, c)
		case "SP_from_C":
			got, err = FromConductivity(x/deep(x/standardMSPerCm, c*ipts68PerITS90, dbar), c)
		}
		require.NoError(t, err)
		// The toolbox's examples print ten figures, some of them eight decimals.
		require.InDelta(t, r.Num(t, "value"), got, max(r.Num(t, "tol_abs"), 6e-9), "%v", r)
		require.InEpsilon(t, r.Num(t, "own_equation"), got, 1e-9, "%v", r)
	}
}

// The extension below 2 PSU as the TEOS-10 toolbox and other codes compute it.
func TestLowSalinityAgreesWithLowSalinityHill(t *testing.T) {
	rows := table(t, "low_salinity_hill.csv")
	require.Len(t, rows, 23)
	for _, r := range rows {
		s, c := r.Num(t, "SP_gsw"), r.Num(t, "t90_C")
		t68 := c * ipts68PerITS90
		got, err := ToConductivity(s, c)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "C_mS_cm"), got, 0.51e-7, "%v", r)
		rt := ratioOf(s, t68)
		require.InDelta(t, r.Num(t, "Rt"), rt, 0.51e-7, "%v", r)
		require.InDelta(t, r.Num(t, "SP_pss78_uncorrected"), pss78(rt, t68), 0.51e-6, "%v", r)
		require.InDelta(t, r.Num(t, "SP_hill_plain_withY"), hill(rt, t68), 0.51e-6, "%v", r)
		require.InDelta(t, r.Num(t, "hill_ratio"), meeting(t68), 0.51e-8, "%v", r)
	}
}

func TestSpecificConductanceAgreesWithSpecificConductanceTable(t *testing.T) {
	rows := table(t, "specific_conductance.csv")
	require.Len(t, rows, 33)
	for _, r := range rows {
		s, c := r.Num(t, "SP"), r.Num(t, "t90_C")
		own, err := ToConductivity(s, c)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "C_mS_cm"), own, 0.51e-5, "%v", r)
		true25, err := ToConductivity(s, 25)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "true_C25_mS_cm"), true25, 0.51e-5, "%v", r)
		line, err := SpecificConductance(own, c)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "SC25_linear_0.0191"), line, 0.51e-5, "%v", r)
		require.InDelta(t, r.Num(t, "SC25_linear_0.02"), own/(1+0.02*(c-25)), 0.51e-5, "%v", r)
		require.InDelta(t, r.Num(t, "err_pct_0.0191"), 100*(line/true25-1), 0.51e-3, "%v", r)
		back, err := FromSpecificConductance(line, c)
		require.NoError(t, err)
		require.InDelta(t, own, back, 1e-12)
	}
}

// What the doc comments promise of the straight line, for sea salt.
func TestSpecificConductanceKeepsItsPromise(t *testing.T) {
	for c := minSpecificC; c <= maxSpecificC; c++ {
		for s := 0.5; s <= MaxPSU; s += 0.5 {
			line, err := SpecificConductance(conducted(s, c), c)
			require.NoError(t, err)
			limit := 0.023
			if c >= 10 && c <= 32 {
				limit = 0.011
			}
			require.InEpsilon(t, conducted(s, 25), line, limit, "%g PSU at %g degC", s, c)
		}
		require.InEpsilon(t, 1+0.02*(c-25), 1+perC*(c-25), 0.0301)
	}
}

func TestConductivityRoundTripAndRise(t *testing.T) {
	for c := MinConductivityC; c <= MaxConductivityC; c += 3.7 {
		last := 0.0
		for s := 0.0; s <= MaxPSU; s += 0.01 + s/40 {
			mS, err := ToConductivity(s, c)
			require.NoError(t, err)
			require.Greater(t, mS, last, "%g PSU at %g degC", s, c)
			last = mS
			back, err := FromConductivity(mS, c)
			require.NoError(t, err)
			require.InDelta(t, s, back, 1e-12)
			again, err := ToConductivity(back, c)
			require.NoError(t, err)
			require.InDelta(t, mS, again, 1e-6)
		}
	}
}

// Halving needs one root only: below the start of the bracket no salinity is
// above 0, above it all rise.
func TestLowSalinityRisesInTheBracket(t *testing.T) {
	for c := -2.0; c <= MaxC; c++ {
		t68 := c * ipts68PerITS90
		require.Negative(t, hill(leastRatio, t68))
		last := math.Inf(-1)
		for rt := leastRatio; rt < 0.08; rt *= 1.02 {
			s := hill(rt, t68)
			require.Greater(t, s, last, "%g at %g degC", rt, c)
			last = s
		}
		require.InDelta(t, 1, meeting(t68), 2e-4)
		require.Greater(t, pss78(greatestRatio, t68), MaxPSU)
	}
}

func TestPureWaterReadsFresh(t *testing.T) {
	for _, mS := range []float64{0, 0.0001, 0.0005} {
		got, err := FromConductivity(mS, 25)
		require.NoError(t, err)
		require.Zero(t, got)
	}
}

func TestConductivityRefusals(t *testing.T) {
	_, err := FromConductivity(53, 36)
	require.EqualError(t, err, "temperature: got 36 degC, want -2 to 35 degC")
	_, err = FromConductivity(530, 25)
	require.Error(t, err)
	require.True(t, strings.HasPrefix(err.Error(), "conductivity: got 530 mS/cm, want 0 to 62.3"), err)
	_, err = FromConductivity(-1, 25)
	require.Error(t, err)
	_, err = ToConductivity(43, 25)
	require.EqualError(t, err, "salinity: got 43 PSU, want 0 to 42 PSU")
	_, err = ToConductivity(35, -3)
	require.EqualError(t, err, "temperature: got -3 degC, want -2 to 35 degC")
	_, err = SpecificConductance(101, 25)
	require.EqualError(t, err, "conductivity: got 101 mS/cm, want 0 to 100 mS/cm")
	_, err = FromSpecificConductance(1, 4)
	require.EqualError(t, err, "temperature: got 4 degC, want 5 to 35 degC")
}
