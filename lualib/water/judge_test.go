package water

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// number reads a column that may be empty or hold the name of an equation.
func number(t *testing.T, r row, column string) float64 {
	t.Helper()
	if r[column] == "" || strings.HasPrefix(r[column], "eq ") {
		return 0
	}
	return r.Num(t, column)
}

// The limits in the code are the limits of the table, with their sources.
func TestSafetyThresholds(t *testing.T) {
	rows := table(t, "safety_thresholds.csv")
	require.Equal(t, len(rows), len(Thresholds()))
	for i, r := range rows {
		got := Thresholds()[i]
		want := Threshold{
			got.ID, r["topic"], r["water"], r["quantity"], number(t, r, "low"), number(t, r, "high"), r["unit"],
			r["exposure"], r["what it means"], r["source"], r["seen_or_recalled"], r["confidence"],
		}
		require.Equal(t, want, got)
		found, ok := ThresholdOf(got.ID)
		require.True(t, ok)
		require.Equal(t, got, found)
	}
	_, ok := ThresholdOf("none")
	require.False(t, ok)
}

// Practice without a source: the code holds the same rows, and nothing is
// checked against them.
func TestCommonPractice(t *testing.T) {
	practices, basis := Practices()
	require.Contains(t, basis, "no published standard")
	var rows []Practice
	for _, r := range table(t, "common_practice.csv") {
		rows = append(rows, Practice{r["topic"], r.Num(t, "low"), r.Num(t, "typical"), r.Num(t, "high"), r["unit"], r["remark"]})
	}
	require.Equal(t, 13, len(rows))
	for _, p := range practices {
		require.True(t, slices.Contains(rows, p), "%+v", p)
	}
}

func TestJudgements(t *testing.T) {
	ammonia := func(v, s float64) (Verdict, error) { return JudgeAmmonia(v, s) }
	oxygen := func(v, _ float64) (Verdict, error) { return JudgeOxygen(v) }
	tests := []struct {
		name     string
		judge    func(v, s float64) (Verdict, error)
		value, s float64
		outcome  Outcome
		limit    string
		bound    float64
	}{
		{"ammonia", ammonia, 0.02, 0, Pass, AmmoniaWorkingFresh, 0.02},
		{"ammonia", ammonia, 0.021, 0, Caution, AmmoniaWorkingFresh, 0.02},
		{"ammonia", ammonia, 0.03, 9.9, Caution, AmmoniaWorkingFresh, 0.02},
		{"ammonia", ammonia, 0.05, 0, Fail, AmmoniaHarmFresh, 0.05},
		{"ammonia", ammonia, 0.03, 10, Pass, AmmoniaChronicSalt, 0.035},
		{"ammonia", ammonia, 0.05, 35, Caution, AmmoniaChronicSalt, 0.035},
		{"ammonia", ammonia, 0.3, 35, Fail, AmmoniaAcuteSalt, 0.233},
		{"nitrite", JudgeNitrite, 0.15, 0, Pass, NitriteWorkingFresh, 0.2},
		{"nitrite", JudgeNitrite, 0.3, 0, Caution, NitriteWorkingFresh, 0.2},
		{"nitrite", JudgeNitrite, 2, 0, Fail, NitriteLethalFresh, 1.7},
		{"nitrite", JudgeNitrite, 0.15, 35, Caution, NitriteWorkingSalt, 0.125},
		{"nitrite", JudgeNitrite, 2, 35, Caution, NitriteWorkingSalt, 0.125},
		{"nitrate", JudgeNitrate, 40, 0, Pass, NitrateFresh, 10},
		{"nitrate", JudgeNitrate, 50, 0, Caution, NitrateFresh, 10},
		{"nitrate", JudgeNitrate, 50, 35, Pass, NitrateSalt, 20},
		{"nitrate", JudgeNitrate, 100, 35, Caution, NitrateSalt, 20},
		{"nitrate", JudgeNitrate, 201, 0, Fail, NitrateCeiling, 200},
		{"oxygen", oxygen, 2.9, 0, Fail, OxygenWarm, 3},
		{"oxygen", oxygen, 5, 0, Caution, OxygenWarm, 5.5},
		{"oxygen", oxygen, 7, 0, Pass, OxygenWarm, 5.5},
	}
	for _, test := range tests {
		got, err := test.judge(test.value, test.s)
		require.NoError(t, err)
		require.Equal(t, test.outcome, got.Outcome, "%s %g at %g", test.name, test.value, test.s)
		require.Equal(t, test.limit, got.Limit.ID)
		require.InDelta(t, test.bound, got.Bound, 0)
	}
	nitrate, err := JudgeNitrate(44.268, 0)
	require.NoError(t, err)
	require.InDelta(t, 10, nitrate.Value, 0.0001)
}

func TestJudgementRefusals(t *testing.T) {
	_, err := JudgeAmmonia(-1, 0)
	require.EqualError(t, err, "un-ionised ammonia: got -1 mg/L, want 0 to 1000 mg/L")
	_, err = JudgeNitrite(1, 50)
	require.EqualError(t, err, "salinity: got 50 PSU, want 0 to 42 PSU")
	_, err = JudgeNitrate(2000, 0)
	require.EqualError(t, err, "nitrate: got 2000 mg/L, want 0 to 1000 mg/L")
	_, err = JudgeOxygen(-1)
	require.EqualError(t, err, "oxygen: got -1 mg/L, want 0 to 60 mg/L")
}

// US EPA 2013: the published values at pH 7 and 20 °C are 1.9 and 17 mg N/L
// (from memory).
func TestAmmoniaCriteria(t *testing.T) {
	chronic, err := ChronicAmmoniaMgNPerL(7, 20)
	require.NoError(t, err)
	require.InDelta(t, 1.9, chronic, 0.05)
	acute, err := AcuteAmmoniaMgNPerL(7, 20)
	require.NoError(t, err)
	require.InDelta(t, 17, acute, 0.5)
	warmer, err := ChronicAmmoniaMgNPerL(8, 28)
	require.NoError(t, err)
	require.Less(t, warmer, chronic)
	_, err = ChronicAmmoniaMgNPerL(9.5, 20)
	require.EqualError(t, err, "pH: got 9.5, want 6.5 to 9")
	_, err = AcuteAmmoniaMgNPerL(7, 31)
	require.EqualError(t, err, "temperature: got 31 degC, want 0 to 30 degC")
}
