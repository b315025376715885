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
	require.Equal(t, "F8/1000*G8*H8", f.formula("Running cost", "I8"))
	require.Equal(t, "I8*365/12*electricity_price", f.formula("Running cost", "M8"))
	require.Equal(t, "M8*12", f.formula("Running cost", "N8"))
	require.Equal(t, "J11*365/12/L11", f.formula("Running cost", "M11"))
	require.InDelta(t, 0.648, f.number("Running cost", "I8"), 1e-12)
	require.InDelta(t, 6.1101, f.number("Running cost", "M8"), 1e-9)
	require.InDelta(t, 18, f.number("Running cost", "M11"), 1e-9, "a cost that comes each month")
	require.InDelta(t, 194.666666666667, f.number("Running cost", "N12"), 1e-9, "22.40 every 42 days")
	require.Equal(t, "1 mo", f.text("Running cost", "K11"))
	require.Equal(t, "30.4", f.shown("Running cost", "L11"))
	require.Equal(t, "6 wk", f.text("Running cost", "K12"))
	require.Equal(t, "42", f.shown("Running cost", "L12"))
	require.Equal(t, `SUMIFS($M$8:$M$12,$A$8:$A$12,"electricity")`, f.formula("Running cost", "M5"))
	require.InDelta(t, 24.8647125, f.number("Running cost", "M5"), 1e-9)
	require.InDelta(t, 2.637, f.number("Running cost", "I4"), 1e-9)
	rail := f.row("Running cost", "C", "Rail", 3)
	require.InDelta(t, 10.6078125+16.2222222222222, f.number("Running cost", "M"+rail), 1e-9, "heater and salt")
}

func TestRunningCostWithoutPrice(t *testing.T) {
	r := sample()
	r.Plan.Tariffs = nil
	f := read(t, r)
	require.Contains(t, f.text("Running cost", "A3"), "no price of electricity")
	require.Empty(t, f.text("Running cost", "M8"))
	require.InDelta(t, 34.2222222222222, f.number("Running cost", "M4"), 1e-9)
	require.Equal(t, "not worked out", f.text("Running cost", "M5"))
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
	require.Equal(t, "bottom 12 mm; no substrate", f.text("Tanks", "N6"))
	require.Contains(t, f.text("Tanks", "A2"), "All tanks here hold fresh water.")
	require.NotContains(t, f.all("Tanks"), "Salinity")
}

// Inches make gallons and pounds, in the sums too: 274.2 L and 181.9 L are
// 120.49 US gallons (3.785411784 L, NIST SP 811), 585.9 kg are 1291.69 lb.
func TestTanksInInches(t *testing.T) {
	r := sample()
	for _, tank := range r.Plan.Tanks {
		tank.Length, tank.Temperature = q("48 in"), q("76 degF")
	}
	r.Plan.Tanks[1].Salinity = q("12 ppt")
	f := read(t, r)
	require.Equal(t, "Length (in)", f.text("Tanks", "E5"))
	require.Equal(t, 48.0, f.number("Tanks", "E6"))
	require.Equal(t, "0.394", f.shown("Tanks", "H6"))
	require.Equal(t, "Water (gal)", f.text("Tanks", "J5"))
	require.Equal(t, "Filled (lb)", f.text("Tanks", "L5"))
	require.Equal(t, "Salinity (g/kg)", f.text("Tanks", "M5"))
	require.Equal(t, "Water (°F)", f.text("Tanks", "N5"))
	require.InDelta(t, 120.489, f.number("Tanks", "J4"), 1e-3)
	require.InDelta(t, 1291.688, f.number("Tanks", "L4"), 1e-3)
	water := f.row("Start here", "A", "Water in all tanks", 1)
	require.Equal(t, "120", f.shown("Start here", "B"+water))
	require.Equal(t, "gal", f.text("Start here", "D"+water))
	require.Equal(t, "lb", f.text("Start here", "D"+f.row("Start here", "A", "Weight of all tanks, filled", 1)))
	require.Equal(t, "Length of one (in)", f.text("Fish", "E4"))
}

// A tank stands in the room of its rack when it names none.
func TestTanksRoom(t *testing.T) {
	r := sample()
	r.Plan.Racks = []*plan.Rack{{Name: "Long wall", Room: "Attic"}}
	r.Plan.Tanks[0].Room, r.Plan.Tanks[1].Room = "", "Cellar"
	f := read(t, r)
	require.Equal(t, "Attic", f.text("Tanks", "B6"))
	require.Equal(t, "Cellar", f.text("Tanks", "B7"))
}

func TestFish(t *testing.T) {
	r := sample()
	f := read(t, r)
	require.Equal(t, "D5*F5", f.formula("Fish", "G5"))
	require.InDelta(t, 37.2, f.number("Fish", "G5"), 1e-9)
	require.Equal(t, "0.40", f.shown("Fish", "J5"))

	r.Plan.Fish = nil
	require.NotContains(t, read(t, r).GetSheetList(), "Fish")
}

// Columns in which nothing would stand are left out, and formulas find theirs.
func TestEmptyColumnsAreLeftOut(t *testing.T) {
	r := sample()
	for _, i := range r.Plan.Items {
		i.Phase, i.Tank, i.Supplier = "", "", ""
	}
	for _, l := range r.Plan.Loads {
		l.Tank, l.Group, l.Circuit = "", "", ""
	}
	for _, tank := range r.Plan.Tanks {
		tank.Room, tank.Rack, tank.Tier, tank.Defaults = "", "", 0, nil
	}
	r.Plan.Running = nil
	f := read(t, r)
	require.Equal(t, "Item", f.text("Budget", "A9"))
	require.Equal(t, "ROUND(MAX(B10-E10,0)*C10*(1+tax_rate),2)", f.formula("Budget", "F10"))
	require.Equal(t, "ROUND(SUM($D$10:$D$14),2)", f.formula("Budget", "D4"))
	require.NotContains(t, f.all("Budget"), "Sums by")
	require.Equal(t, "C8/1000*D8*E8", f.formula("Running cost", "F8"))
	require.Equal(t, "A year (EUR)", f.text("Running cost", "H7"))
	require.Empty(t, f.text("Running cost", "I7"))
	require.Equal(t, "Length (cm)", f.text("Tanks", "B5"))
	require.Equal(t, "SUM($G$6:$G$7)", f.formula("Tanks", "G4"))
	require.Equal(t, "'Tanks'!$G$4", f.formula("Start here", "B"+f.row("Start here", "A", "Water in all tanks", 1)))
}

func TestChecks(t *testing.T) {
	f := read(t, sample())
	for row, want := range map[string]string{"4": "fail", "5": "caution", "6": "pass", "8": "fail", "9": "caution", "10": "pass"} {
		require.Equal(t, want, f.text("Checks", "A"+row))
	}
	require.Equal(t, `COUNTIF($A$8:$A$10,"fail")`, f.formula("Checks", "B4"))
	require.Equal(t, "13.1", f.shown("Checks", "C9"))
	require.Equal(t, "A", f.text("Checks", "D9"))
	require.Equal(t, "at most 16 A; caution at 12.8 A", f.text("Checks", "E9"))
	require.Equal(t, "40", f.text("Checks", "H9"))
	require.Empty(t, f.text("Checks", "H8"))
	formats, err := f.GetConditionalFormats("Checks")
	require.NoError(t, err)
	require.Len(t, formats["A4:A10"], 3)
	require.Equal(t, `"fail"`, formats["A4:A10"][0].Value)
}

func TestValues(t *testing.T) {
	f := read(t, sample())
	for i, want := range []struct{ name, shown, unit, mark, how string }{
		{"Electricity price", "0.31", "EUR/kWh", "live", ""}, {"All water", "456.1", "L", "fixed", "heron_water + rail_water"},
		{"First day", "2027-03-06", "", "fixed", ""}, {"Ready", "TRUE", "", "fixed", ""}, {"Shelves", "4", "", "fixed", ""},
		{"Total", "1,234.50", "EUR", "fixed", ""}, {"Motto", "measure twice", "", "fixed", ""},
		{"Heron: name", "Heron", "", "fixed", ""}, {"Heron: water", "274.2", "L", "fixed", ""}, {"Heron: 1", "0.0000123", "m", "fixed", ""},
		{"Kept for surprises", "12%", "", "live", ""},
	} {
		row := strconv.Itoa(i + 5)
		require.Equal(t, want, struct{ name, shown, unit, mark, how string }{
			f.text("Values", "A"+row), f.shown("Values", "B"+row), f.text("Values", "C"+row), f.text("Values", "D"+row), f.text("Values", "E"+row)})
	}
	require.Equal(t, "'Start here'!$B$23", f.formula("Values", "B5"))
	require.Equal(t, "'Start here'!$B$25", f.formula("Values", "B15"))
	require.Equal(t, "heron[1]", f.text("Values", "F14"))
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
