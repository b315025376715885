package lualib_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/plan"
)

const readingName = "Water of North on 2027-03-06"

// read runs one reading of the tank North.
func read(args string, tank ...string) string {
	return northWith(`water.reading{tank = north, date = "2027-03-06", `+args+`}`, tank...)
}

// TestReadings: each threshold from both of its sides, in fresh water and, from
// 10 ppt on, in salt water. Limits of testdata/water/safety_thresholds.csv.
func TestReadings(t *testing.T) {
	for _, c := range []struct {
		args    string
		outcome plan.Outcome
		says    string
	}{
		// total ammonia of 1 mg/L as N holds 0.00693 mg/L of NH3 at pH 7, 25 degC; 0.0655 at pH 8
		{`ammonia = "2.8 mg/L", pH = 7, as = "N"`, plan.Pass, "within the thresholds that were compared"},
		{`ammonia = "3.0 mg/L", pH = 7, as = "N"`, plan.Caution, "un-ionised ammonia 0.0207 mg NH3/L against 0.02 (trade and welfare limit; OATA"},
		{`ammonia = "7.5 mg/L", pH = 7, as = "N"`, plan.Fail, "against 0.05 (0.05 tissue damage; 2 deaths; "},
		{`ammonia = "0.30 mg/L", pH = 8, as = "N"`, plan.Pass, ""},
		{`ammonia = "0.30 mg/L", pH = 8, temperature = "30 degC", as = "N"`, plan.Caution, "un-ionised ammonia"},
		{`ammonia = "0.50 mg/L", pH = 8, salinity = "35 ppt", as = "N"`, plan.Pass, ""},
		{`ammonia = "0.70 mg/L", pH = 8, salinity = "35 ppt", as = "N"`, plan.Caution, "against 0.035"},
		{`ammonia = "5 mg/L", pH = 8, salinity = "35 ppt", as = "N"`, plan.Fail, "against 0.233"},
		{`ammonia = "0 mg/L"`, plan.Pass, ""},
		{`ammonia = "0.5 mg/L"`, plan.Caution, "un-ionised ammonia cannot be judged: the reading has no pH"},
		{`ammonia = "0.5 mg/L", pH = 10.5`, plan.Caution, "un-ionised ammonia cannot be judged: pH: got 10.5, want 4 to 10"},
		{`nitrite = "0.2 mg/L"`, plan.Pass, ""},
		{`nitrite = "0.21 mg/L"`, plan.Caution, "nitrite 0.21 mg/L against 0.2 (trade limit; OATA criteria, recalled)"},
		{`nitrite = "1.7 mg/L"`, plan.Fail, "nitrite 1.7 mg/L against 1.7"},
		{`nitrite = "0.12 mg/L", salinity = "34 ppt"`, plan.Pass, ""},
		{`nitrite = "0.13 mg/L", salinity = "34 ppt"`, plan.Caution, "against 0.125"},
		{`nitrite = "3 mg/L", salinity = "34 ppt"`, plan.Caution, "against 0.125"},
		{`nitrite = "0.06 mg/L", as = "N"`, plan.Pass, ""},
		{`nitrite = "0.07 mg/L", as = "N"`, plan.Caution, "nitrite 0.2299 mg/L against 0.2"},
		{`nitrate = "44 mg/L"`, plan.Pass, ""},
		{`nitrate = "45 mg/L"`, plan.Caution, "nitrate 10.17 mg N/L against 10 (most sensitive freshwater animals (about 44 mg NO3/L)"},
		{`nitrate = "45 mg/L", salinity = "34 ppt"`, plan.Pass, ""},
		{`nitrate = "90 mg/L", salinity = "34 ppt"`, plan.Caution, "against 20"},
		{`nitrate = "201 mg/L"`, plan.Fail, "nitrate 201 mg/L against 200"},
		{`nitrate = "11 mg/L", as = "N"`, plan.Caution, "nitrate 11 mg N/L against 10"},
		{`oxygen = "5.5 mg/L"`, plan.Pass, ""},
		{`oxygen = "5.4 mg/L"`, plan.Caution, "oxygen 5.4 mg/L against 5.5"},
		{`oxygen = "3 mg/L"`, plan.Caution, "oxygen 3 mg/L against 5.5"},
		{`oxygen = "2.9 mg/L"`, plan.Fail, "oxygen 2.9 mg/L against 3"},
	} {
		k := checked(t, read(c.args), readingName)
		require.Equal(t, c.outcome, k.Outcome, "%s: %s", c.args, k.Sentence)
		require.Contains(t, k.Sentence, c.says, c.args)
	}
}

// TestReadingOfSeveral: the worst counts, and all that is not a pass is named.
func TestReadingOfSeveral(t *testing.T) {
	k := checked(t, read(`pH = 7, ammonia = "0.1 mg/L", nitrite = "0.5 mg/L", nitrate = "210 mg/L", oxygen = "7 mg/L"`), readingName)
	require.Equal(t, plan.Fail, k.Outcome)
	require.Equal(t, 1, strings.Count(k.Sentence, "nitrite 0.5"))
	require.Contains(t, k.Sentence, "nitrate 210")
	require.NotContains(t, k.Sentence, "oxygen")
	require.NotContains(t, k.Sentence, "ammonia")
	unchecked(t, read(`hardness = "8 dGH", pH = 7`), readingName)
	// the tank's own salinity stands where the reading has none
	require.Equal(t, plan.Pass, checked(t, read(`nitrate = "45 mg/L"`, `salinity = "34 ppt"`), readingName).Outcome)
	require.Equal(t, plan.Caution, checked(t, read(`nitrate = "45 mg/L", salinity = "0 ppt"`, `salinity = "34 ppt"`), readingName).Outcome)
	cold, warm := read(`ammonia = "0.3 mg/L", pH = 8, as = "N"`, `temperature = "20 degC"`), read(`ammonia = "0.3 mg/L", pH = 8, as = "N"`, `temperature = "30 degC"`)
	require.Equal(t, plan.Pass, checked(t, cold, readingName).Outcome)
	require.Equal(t, plan.Caution, checked(t, warm, readingName).Outcome)
}

// TestReadingsFromATable: a row a reading, empty cells left out, the check at the
// row's own line.
func TestReadingsFromATable(t *testing.T) {
	r := good(t, "# Readings\n\n| tank | date | pH | ammonia | nitrite | nitrate | remark |\n|---|---|---|---|---|---|---|\n| North | 2027-03-06 | 7.2 | 0.1 mg/L | | 20 mg/L | new kit |\n| North | 2027-03-13 | | | 0.4 mg/L | | |\n\n"+
		northWith(`for _, row in ipairs(rows "Readings") do water.reading(row) end`))
	require.Len(t, r.Plan.Readings, 2)
	first, second := r.Plan.Readings[0], r.Plan.Readings[1]
	require.InDelta(t, 7.2, first.PH, 1e-12)
	require.InEpsilon(t, 0.1*14.007/18.039, first.Ammonia.Q.MustIn("mg/L"), 1e-4, "kept as N")
	require.False(t, first.Nitrite.Has)
	require.Equal(t, "remark: new kit", first.Note)
	require.Zero(t, second.PH)
	require.Equal(t, 6, second.Line)
	outcomes := map[string]plan.Outcome{}
	for _, k := range r.Plan.Checks {
		outcomes[k.Name] = k.Outcome
	}
	require.Equal(t, map[string]plan.Outcome{readingName: plan.Pass, "Water of North on 2027-03-13": plan.Caution}, outcomes)
}

// TestNitrateAgainstThePlan: more than half as much again as was worked out says
// that something is not as planned, whatever the two figures count.
func TestNitrateAgainstThePlan(t *testing.T) {
	const name = "Nitrate of North on 2027-03-06 against the plan"
	// 200 L, 0.2 g/d as N, a quarter a week: 28 mg/L as N before a change, 123.9 as NO3
	run := func(reading string) string {
		return northWith(fmt.Sprintf("water.nitrate{tank = north, water = \"200 L\", production = \"0.2 g/d\", change = \"25 %%\", as = \"N\"}\nwater.reading{tank = north, date = \"2027-03-06\", %s}", reading))
	}
	for reading, want := range map[string]plan.Outcome{
		`nitrate = "20 mg/L", as = "N"`: plan.Pass, `nitrate = "41.9 mg/L", as = "N"`: plan.Pass, `nitrate = "42.1 mg/L", as = "N"`: plan.Caution,
		`nitrate = "185 mg/L"`: plan.Pass, `nitrate = "187 mg/L"`: plan.Caution,
	} {
		k := checked(t, run(reading), name)
		require.Equal(t, want, k.Outcome, reading)
		require.Contains(t, k.Sentence, "worked out at most 124 mg/L in the long run (as NO3; as N ")
		require.Contains(t, k.Sentence, " and 28 mg/L)")
	}
	ions := checked(t, northWith(`water.nitrate{tank = north, water = "200 L", production = "0.88536 g/d", change = "25 %", as = "NO3"} water.reading{tank = north, date = "2027-03-06", nitrate = "100 mg/L"}`), name)
	require.Contains(t, ions.Sentence, "measured 100 mg/L, worked out at most 124 mg/L in the long run (as NO3; as N 22.59 mg/L and 28 mg/L)")
	unchecked(t, run(`nitrite = "0 mg/L"`), name)
	unchecked(t, northWith(`water.nitrate{water = "200 L", production = "0.2 g/d", change = "25 %"} water.reading{tank = north, date = "2027-03-06", nitrate = "100 mg/L"}`), name)
}
