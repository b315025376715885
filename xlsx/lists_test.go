package xlsx_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func mustAtoi(t testing.TB, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	require.NoError(t, err)
	return n
}

// By hand: 24 W x 3 x 9 h is 0.648 kWh a day, and 0.648 x 365 / 12 x 0.31 is
// 6.1101 a month; all loads take 2.637 kWh a day.
func TestRunningCost(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, "F9/1000*G9*H9", f.formula("Running cost", "I9"))
	require.Equal(t, "I9*365/12*electricity_price", f.formula("Running cost", "L9"))
	require.Equal(t, "L9*12", f.formula("Running cost", "M9"))
	require.Equal(t, "J12*365/12/K12", f.formula("Running cost", "L12"))
	require.InDelta(t, 0.648, f.number("Running cost", "I9"), 1e-12)
	require.InDelta(t, 6.1101, f.number("Running cost", "L9"), 1e-9)
	require.InDelta(t, 18, f.number("Running cost", "L12"), 1e-9, "a cost that comes each month")
	require.InDelta(t, 194.666666666667, f.number("Running cost", "M13"), 1e-9, "22.40 every 42 days")
	require.Equal(t, `SUMIFS($L$9:$L$13,$A$9:$A$13,"electricity")`, f.formula("Running cost", "C5"))
	require.InDelta(t, 24.8647125, f.number("Running cost", "C5"), 1e-9)
	rail := f.row("Running cost", "B", "Rail", 1)
	require.InDelta(t, 10.6078125+16.2222222222222, f.number("Running cost", "L"+rail), 1e-9, "heater and salt")
}

func TestRunningCostWithoutPrice(t *testing.T) {
	r := sample()
	r.Plan.Tariffs = nil
	f := read(t, r)
	require.Contains(t, f.text("Running cost", "A3"), "no price of electricity")
	require.Empty(t, f.text("Running cost", "L9"))
	require.InDelta(t, 34.2222222222222, f.number("Running cost", "C4"), 1e-9)
	require.Contains(t, f.text("Start here", "E8"), "other costs only")
	for _, n := range f.GetDefinedName() {
		require.NotEqual(t, "electricity_price", n.Name)
	}
}

func TestBuild(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, "Level the racks", f.text("Build", "B6"))
	require.Equal(t, "Leak test", f.text("Build", "B7"))
	require.Equal(t, "Level the racks", f.text("Build", "C7"))
	require.Equal(t, 3.0, f.number("Build", "E6"), "three hours for two people")
	require.Equal(t, "D6*E6", f.formula("Build", "F6"))
	require.Equal(t, 6.0, f.number("Build", "F6"))
	require.Equal(t, "SUM($F$6:$F$7)", f.formula("Build", "F4"))
	require.Equal(t, 6.0, f.number("Build", "F4"))
	require.Equal(t, 2.0, f.number("Build", "G7"))
	require.Empty(t, f.text("Build", "E7"))
	require.Empty(t, f.text("Build", "F7"))
}

func TestTanks(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, "Length (cm)", f.text("Tanks", "E5"))
	require.Equal(t, 120.0, f.number("Tanks", "E6"))
	require.Equal(t, "SUM($L$6:$L$7)", f.formula("Tanks", "L4"))
	require.InDelta(t, 585.9, f.number("Tanks", "L4"), 1e-9)
	require.Equal(t, "bottom 12 mm; no substrate", f.text("Tanks", "O6"))
	fish := f.row("Tanks", "B", "Melanotaenia praecox", 1)
	require.Equal(t, "D"+fish+"*F"+fish, f.formula("Tanks", "K"+fish))
	require.InDelta(t, 37.2, f.number("Tanks", "K"+fish), 1e-9)

	r := sample()
	r.Plan.Fish = nil
	for _, tank := range r.Plan.Tanks {
		tank.Length, tank.Temperature = q("48 in"), q("76 degF")
	}
	inches := read(t, r)
	require.Equal(t, "Length (in)", inches.text("Tanks", "E5"))
	require.Equal(t, 48.0, inches.number("Tanks", "E6"))
	require.Equal(t, "0.394", inches.shown("Tanks", "H6"))
	require.Equal(t, "Water (°F)", inches.text("Tanks", "N5"))
	rows, err := inches.GetRows("Tanks")
	require.NoError(t, err)
	require.Len(t, rows, 7, "without fish there is no block for them")
}

func TestChecks(t *testing.T) {
	f := read(t, sample())
	for row, want := range map[string]string{"3": "fail", "4": "caution", "5": "pass", "8": "fail", "9": "caution", "10": "pass"} {
		require.Equal(t, want, f.text("Checks", "A"+row))
	}
	require.Equal(t, `COUNTIF($A$8:$A$10,"fail")`, f.formula("Checks", "B3"))
	require.Equal(t, "13.1", f.shown("Checks", "C9"))
	require.Equal(t, "A", f.text("Checks", "D9"))
	require.Equal(t, "at most 16 A; caution at 12.8 A", f.text("Checks", "E9"))
	require.Equal(t, "40", f.text("Checks", "H9"))
	require.Empty(t, f.text("Checks", "H8"))
	formats, err := f.GetConditionalFormats("Checks")
	require.NoError(t, err)
	require.Len(t, formats["A3:A10"], 3)
	require.Equal(t, `"fail"`, formats["A3:A10"][0].Value)
}

func TestValues(t *testing.T) {
	f := read(t, sample())
	for i, want := range []struct{ name, shown, unit, mark, how string }{
		{"electricity", "0.31", "EUR/kWh", "live", "electricity"}, {"all_water", "456.1", "L", "fixed", "heron_water + rail_water"},
		{"first_day", "2027-03-06", "", "fixed", ""}, {"ready", "TRUE", "", "fixed", ""}, {"shelves", "4", "", "fixed", ""},
		{"total", "1,234.50 EUR", "EUR", "fixed", ""}, {"motto", "measure twice", "", "fixed", ""},
		{"heron.name", "Heron", "", "fixed", ""}, {"heron.water", "274.2", "L", "fixed", ""}, {"heron[1]", "0.0000123", "m", "fixed", ""},
		{"heron.fish", "a table of 0 entries", "", "fixed", ""}, {"spare", "12", "%", "live", "spare"},
	} {
		row := strconv.Itoa(i + 5)
		require.Equal(t, want, struct{ name, shown, unit, mark, how string }{
			f.text("Values", "A"+row), f.shown("Values", "B"+row), f.text("Values", "C"+row), f.text("Values", "D"+row), f.text("Values", "E"+row)})
	}
	require.Equal(t, "'Start here'!$B$18", f.formula("Values", "B5"))
	require.Equal(t, "'Start here'!$B$20*100", f.formula("Values", "B16"))
	require.Equal(t, "46452", f.text("Values", "B7"), "the day's number: 2027-03-06 is 46452 days after 1899-12-30")
}

// A table too large to read ends with a line that says so.
func TestValuesTooMany(t *testing.T) {
	pairs := make([]notebook.Pair, 50_007)
	for i := range pairs {
		pairs[i] = notebook.Pair{Key: float64(i + 1), Value: float64(i)}
	}
	f := read(t, &notebook.Result{Plan: &plan.Plan{}, Values: []notebook.Named{{Name: "big", Value: notebook.NewData("", pairs)}}})
	f.row("Values", "A", "… and 7 more values, which are left out", 1)
}

// What spreadsheets cannot hold, or hold wrongly, stands as text.
func TestValuesOutOfRange(t *testing.T) {
	old, err := quantity.ParseDate("1900-02-14")
	require.NoError(t, err)
	inf := quantity.Must(1e308, "m")
	inf, err = inf.Mul(quantity.Bare(10))
	require.NoError(t, err)
	f := read(t, &notebook.Result{Plan: &plan.Plan{}, Values: []notebook.Named{{Name: "old", Value: old}, {Name: "inf", Value: inf}, {Name: "tiny", Value: 1.5e-9}, {Name: "nothing"}}})
	require.Equal(t, "1900-02-14", f.text("Values", "B5"))
	require.Equal(t, "inf", f.text("Values", "B6"))
	require.Equal(t, "1.500E-09", f.shown("Values", "B7"))
	require.Empty(t, f.text("Values", "A8"))
}
