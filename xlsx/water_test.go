package xlsx_test

import (
	"bytes"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
	"weirbook/xlsx/recalc"
)

func day(text string) quantity.Date {
	d, err := quantity.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

// saltPlan is a plan of three dated steps, 250, 300 and 350 g of mix.
func saltPlan() *plan.WaterPlan {
	w := &plan.WaterPlan{
		Name: "Rail", Tank: "Rail", Method: "water change", From: q("0 ppt"), To: q("3 ppt"), Water: q("181.9 L"), Change: some("20 %"), Every: q("7 d"), AtMost: q("1 ppt/d"),
		Reference: q("25 degC"), Days: 14, Finish: plan.OptionalDate{Date: day("2027-03-20"), Has: true}, Salt: q("0.9 kg"), Draw: q("109.14 L"), Direct: q("0.55 kg"),
		Cost: plan.Some(quantity.Must(7.2, "EUR")),
	}
	for i := range 3 {
		d, err := day("2027-03-06").Add(quantity.Must(float64(7*i), "d"), 1)
		if err != nil {
			panic(err)
		}
		w.Steps = append(w.Steps, plan.WaterStep{
			Number: i + 1, Day: float64(7 * i), Date: plan.OptionalDate{Date: d, Has: true}, Before: quantity.Must(float64(i), "ppt"), After: quantity.Must(float64(i+1), "ppt"),
			SG: 1 + 0.00075*float64(i+1), Density: quantity.Must(997.05+0.75*float64(i+1), "kg/m3"), Salt: quantity.Must(250+50*float64(i), "g"), Draw: q("36.38 L"), Mix: q("36.38 L"),
		})
	}
	return w
}

// watery is the sample with every record of the water.
func watery() *notebook.Result {
	r := sample()
	r.Plan.WaterPlans = []*plan.WaterPlan{saltPlan()}
	r.Plan.Readings = []*plan.Reading{
		{Tank: "Rail", Date: day("2027-03-01"), Temperature: some("25 degC"), PH: 8.1, Ammonia: some("0.388 mg/L"), Nitrite: some("0.03 mg/L"), Nitrate: some("13.55 mg/L"), Alkalinity: some("9 dKH"), Source: plan.Source{Line: 50}},
		{Tank: "Rail", Date: day("2027-03-01"), PH: 7.9, Source: plan.Source{Line: 51, Note: "in the evening"}},
		{Tank: "Heron", Date: day("2027-03-02"), Hardness: some("14 dGH")},
	}
	r.Plan.Checks = append(r.Plan.Checks,
		&plan.Check{Name: "Water of Rail on 2027-03-01", Outcome: plan.Caution, Sentence: "nitrate 13.55 mg N/L against 10", ByLibrary: true, Source: plan.Source{Line: 50}},
		&plan.Check{Name: "Water of Rail on 2027-03-01", Outcome: plan.Pass, Sentence: "within the thresholds", ByLibrary: true, Source: plan.Source{Line: 51}},
		&plan.Check{Name: "Water of Heron on 2027-03-02", Outcome: plan.Fail, Sentence: "a person's own check", Source: plan.Source{Line: 60}})
	r.Plan.WaterSources = []*plan.WaterSource{{Name: "Tap", Hardness: some("14 dGH"), Alkalinity: some("9 dKH"), PH: 7.6, Chlorine: some("0.4 mg/L")}, {Name: "Rain", Hardness: some("0 dGH")}}
	r.Plan.Nitrates = []*plan.Nitrate{{Tank: "Rail", Before: q("10 mg/L"), After: q("7.5 mg/L"), Change: q("25 %"), Every: q("7 d")}}
	r.Plan.Filters = []*plan.Filter{{Tank: "Rail", FeedLow: q("23.29 g/d"), FeedHigh: q("62.11 g/d"), Turnover: some("3.563 1/h")}}
	return r
}

// The sheet is there when the plan has something about the water.
func TestWaterSheetIsListed(t *testing.T) {
	require.NotContains(t, read(t, sample()).GetSheetList(), "Water")
	f := read(t, watery())
	require.Equal(t, []string{"Start here", "Budget", "Running cost", "Build", "Tanks", "Fish", "Water", "Checks", "Values"}, f.GetSheetList())
	link, target, err := f.GetCellHyperLink("Start here", "A"+f.row("Start here", "A", "Water", 1))
	require.NoError(t, err)
	require.True(t, link)
	require.Equal(t, "'Water'!A1", target)
}

// 900 g for 7.20 EUR are 8 EUR/kg; the steps cost 2.00, 2.40 and 2.80 EUR.
func TestSaltPlan(t *testing.T) {
	f := read(t, watery())
	head := mustAtoi(t, f.row("Water", "A", "Step", 1))
	require.Equal(t, "Rail: salinity from 0 ppt to 3 ppt", f.text("Water", "A"+strconv.Itoa(head-6)))
	require.Contains(t, f.text("Water", "A"+strconv.Itoa(head-5)), "every 7 d, 20% of the 181.9 L of water are drawn")
	require.Contains(t, f.text("Water", "A"+strconv.Itoa(head-5)), "neither the fish nor the bacteria of the filter would bear the jump")
	require.Contains(t, f.text("Water", "A"+strconv.Itoa(head-5)), "The cost is without tax.")
	for i, facts := range [][2]string{{"0.900", "2027-03-06"}, {"0.550", "2027-03-20"}, {"109.1", "8"}, {"14", "7.20 EUR"}} {
		row := strconv.Itoa(head - 4 + i)
		require.Equal(t, facts, [2]string{f.shown("Water", "D"+row), f.shown("Water", "I"+row)})
	}
	require.Equal(t, "Specific gravity after (25 °C)", f.text("Water", "F"+strconv.Itoa(head)))
	last := strconv.Itoa(head + 3)
	for column, want := range map[string]string{
		"A": "3", "B": "14", "C": "2027-03-20", "D": "2.00", "E": "3.00", "F": "1.0023", "G": "999.3", "H": "350", "I": "900", "J": "36.4", "K": "36.4", "L": "2.80",
	} {
		require.Equal(t, want, f.shown("Water", column+last), column)
	}
	require.Equal(t, "46466", f.text("Water", "C"+last), "a real date")
	first, price := strconv.Itoa(head+1), "$I$"+strconv.Itoa(head-2)
	require.Equal(t, "SUM($H$"+first+":H"+last+")", f.formula("Water", "I"+last))
	require.Equal(t, "H"+last+"/1000*"+price, f.formula("Water", "L"+last))
	require.Equal(t, "SUM($H$"+first+":$H$"+last+")/1000", f.formula("Water", "D"+strconv.Itoa(head-4)))
	require.Equal(t, "SUM($L$"+first+":$L$"+last+")", f.formula("Water", "I"+strconv.Itoa(head-1)))
	require.Equal(t, "FFF4CC", f.style("Water", "I"+strconv.Itoa(head-2)).Fill.Color[0], "the price is an input")
}

// A price that is an assumption is changed where it stands.
func TestSaltPriceFollowsAssumption(t *testing.T) {
	r := watery()
	price := q("8 EUR/kg")
	r.Plan.Assumptions = append(r.Plan.Assumptions, &plan.Assumption{Name: "salt", Label: "Sea salt", Value: price, Given: price})
	cost, err := price.WithOrigin(quantity.Named("salt")).Mul(q("0.9 kg"))
	require.NoError(t, err)
	r.Plan.WaterPlans[0].Cost = plan.Some(cost)
	f := read(t, r)
	row := f.row("Start here", "A", "Sea salt", 1)
	require.Equal(t, "input", f.text("Start here", "C"+row))
	require.Equal(t, "Water", f.text("Start here", "H"+row))
	at := strconv.Itoa(mustAtoi(t, f.row("Water", "A", "Step", 1)) - 2)
	require.Equal(t, "'Start here'!$B$"+row, f.formula("Water", "I"+at))
	require.Equal(t, "Price, see Start here (EUR/kg)", f.text("Water", "F"+at))
}

// Steps above a kilogram are weighed in kilograms; a plan without dates and
// price, that only dissolves, has no columns for them.
func TestSaltPlanBare(t *testing.T) {
	w := saltPlan()
	w.Name, w.Tank, w.Method, w.Change, w.Cost, w.Finish, w.Direct = "water of 180 L", "", "dissolve in sump", plan.Optional{}, plan.Optional{}, plan.OptionalDate{}, q("0 kg")
	for i := range w.Steps {
		w.Steps[i].Date = plan.OptionalDate{}
	}
	w.Steps[1].Salt = q("1.5 kg")
	f := read(t, &notebook.Result{Plan: &plan.Plan{WaterPlans: []*plan.WaterPlan{w}}})
	require.Contains(t, f.all("Water"), "Water of 180 L: salinity")
	head := f.row("Water", "A", "Step", 1)
	n := mustAtoi(t, head)
	var heads []string
	for column := 'A'; column <= 'H'; column++ {
		heads = append(heads, f.text("Water", string(column)+head))
	}
	require.Equal(t, []string{"Step", "Day", "Salinity before (ppt)", "Salinity after (ppt)", "Specific gravity after (25 °C)", "Density after (kg/m3)", "Mix to weigh (kg)", "Mix so far (kg)"}, heads)
	require.Equal(t, "1.500", f.shown("Water", "G"+strconv.Itoa(n+2)))
	require.Equal(t, "1.750", f.shown("Water", "H"+strconv.Itoa(n+2)))
	for i, facts := range [][2]string{{"2.100", "not given"}, {"none", "not given"}, {"none", "not given"}, {"14", "not worked out"}} {
		row := strconv.Itoa(n - 4 + i)
		require.Equal(t, facts, [2]string{f.shown("Water", "D"+row), f.shown("Water", "I"+row)})
	}
	panes, err := f.GetPanes("Water")
	require.NoError(t, err)
	require.Equal(t, n, panes.YSplit, "the header of the only table stays in sight")
	titles := map[string]string{}
	for _, n := range f.GetDefinedName() {
		titles[n.Scope+n.Name] = n.RefersTo
	}
	require.Equal(t, "'Water'!$"+head+":$"+head, titles["Water_xlnm.Print_Titles"])
}

// A notebook in inches gets gallons: 36.38 L are 9.61 gal (NIST SP 811).
func TestSaltPlanInGallons(t *testing.T) {
	r := watery()
	for _, tank := range r.Plan.Tanks {
		tank.Length = q("48 in")
	}
	f := read(t, r)
	head := mustAtoi(t, f.row("Water", "A", "Step", 1))
	require.Equal(t, "Water to draw (gal)", f.text("Water", "J"+strconv.Itoa(head)))
	require.InDelta(t, 9.6106, f.number("Water", "J"+strconv.Itoa(head+1)), 1e-4)
	require.Contains(t, f.text("Water", "A"+strconv.Itoa(head-5)), "48.05 gal")
}

// Each reading has the outcome of its own check, and none where only a person's
// check has the name. 9 dKH is 9 dKH again from its unit.
func TestReadings(t *testing.T) {
	f := read(t, watery())
	head := mustAtoi(t, f.row("Water", "A", "Readings", 1)) + 2
	var heads []string
	for column := 'A'; column <= 'J'; column++ {
		heads = append(heads, f.text("Water", string(column)+strconv.Itoa(head)))
	}
	require.Equal(t, []string{"Tank", "Date", "Water (°C)", "pH", "Ammonia, as N (mg/L)", "Nitrite, as N (mg/L)", "Nitrate, as N (mg/L)", "Hardness (dGH)", "Alkalinity (dKH)", "Outcome"}, heads)
	for i, want := range [][]string{
		{"Rail", "2027-03-01", "25.0", "8.10", "0.388", "0.030", "13.55", "", "9.0", "caution", "nitrate 13.55 mg N/L against 10"},
		{"Rail", "2027-03-01", "", "7.90", "", "", "", "", "", "pass", "within the thresholds; in the evening"},
		{"Heron", "2027-03-02", "", "", "", "", "", "14.0", "", "", ""},
	} {
		for j, text := range want {
			require.Equal(t, text, f.shown("Water", string(rune('A'+j))+strconv.Itoa(head+1+i)))
		}
	}
}

// 10 mg/L as N are 44.268 mg/L as NO3 (62.0049 over 14.0067).
func TestOtherWaterRecords(t *testing.T) {
	f := read(t, watery())
	n := strconv.Itoa(mustAtoi(t, f.row("Water", "A", "Nitrate in the long run", 1)) + 3)
	require.Equal(t, "D"+n+"*4.4268", f.formula("Water", "F"+n))
	for column, want := range map[string]string{"A": "Rail", "B": "25%", "C": "7 d", "D": "10.00", "E": "7.50", "F": "44.3", "G": "33.2"} {
		require.Equal(t, want, f.shown("Water", column+n), column)
	}
	s := strconv.Itoa(mustAtoi(t, f.row("Water", "A", "Sources of water", 1)) + 3)
	for column, want := range map[string]string{"A": "Tap", "B": "14.0", "C": "9.0", "D": "7.60", "E": "0.40", "F": ""} {
		require.Equal(t, want, f.shown("Water", column+s), column)
	}
	l := strconv.Itoa(mustAtoi(t, f.row("Water", "A", "Filters", 1)) + 3)
	for column, want := range map[string]string{"A": "Rail", "B": "23", "C": "62", "D": "3.6"} {
		require.Equal(t, want, f.shown("Water", column+l), column)
	}
	panes, err := f.GetPanes("Water")
	require.NoError(t, err)
	require.Equal(t, 1, panes.YSplit, "of several tables none has the header of all")
}

// What is missing is said on this sheet too.
func TestWaterLacking(t *testing.T) {
	r := watery()
	r.Plan.Lacking = map[plan.Kind]bool{plan.KindReading: true}
	r.Cells = incomplete().Cells
	require.Contains(t, read(t, r).all("Water"), "Not all records of the water are here")
}

func TestWaterSameBytes(t *testing.T) {
	first := write(t, watery())
	for range 20 {
		require.True(t, bytes.Equal(first, write(t, watery())))
	}
}

// LibreOffice gives the same for the water, its costs in a currency of their own
// and the circuits.
func TestLibreOfficeAgreesOnWater(t *testing.T) {
	r := watery()
	r.Plan.Circuits = []*plan.Circuit{{Name: "Attic", Voltage: q("230 V"), Breaker: q("16 A")}, {Name: "attic", Voltage: q("230 V"), Breaker: q("10 A")}}
	other := saltPlan()
	other.Cost, other.Steps[0].Salt = plan.Some(quantity.Must(1234.567, "SEK")), q("1.25 kg")
	r.Plan.WaterPlans = append(r.Plan.WaterPlans, other, &plan.WaterPlan{Name: "no steps", Method: "water change", From: q("0 ppt"), To: q("0 ppt"), Water: q("10 L"),
		Change: some("20 %"), Every: q("7 d"), Reference: q("25 degC"), Salt: q("0 kg"), Draw: q("0 L"), Direct: q("0 kg")})
	file := write(t, r)
	recalc.Compare(t, file, recalc.LibreOffice(t, file))
}
