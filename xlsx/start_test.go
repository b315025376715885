package xlsx_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// What an assumption gives stands in one cell, which all that follows it names.
func TestInputsStandOnce(t *testing.T) {
	f := read(t, sample())
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Name] = n.RefersTo
	}
	require.Equal(t, "'Start here'!$B$26", names["tax_rate"])
	require.Equal(t, "'Start here'!$B$25", names["contingency_rate"], "the assumption's own cell")
	require.Equal(t, "'Start here'!$B$23", names["electricity_price"], "the assumption's own cell")
	require.Equal(t, "The sheets", f.text("Start here", "A28"), "neither has a second row")
	for cell, mark := range map[string]string{"B23": "input", "B24": "fixed", "B25": "input", "B26": "input"} {
		fill := 1
		if mark == "fixed" {
			fill = 0
		}
		require.Empty(t, f.formula("Start here", cell), cell)
		require.Equal(t, mark, f.text("Start here", "C"+cell[1:]), cell)
		require.Equal(t, fill, f.style("Start here", cell).Fill.Pattern, cell)
	}
	require.InDelta(t, 0.12, f.number("Start here", "B25"), 0, "a percentage stands as a share")
	require.Equal(t, "0.0##%", *f.style("Start here", "B25").CustomNumFmt)
	require.InDelta(t, 16.6666666666667, f.number("Start here", "F24"), 1e-12, "the high end is in the unit of the cell")
	require.Equal(t, "Running cost (electricity price)", f.text("Start here", "H23"))
	require.Equal(t, "only a run of the notebook with it", f.text("Start here", "H24"))
	require.Contains(t, f.text("Start here", "G25"), "changed for this run; the notebook says 10 %")
}

// A price that is an assumption in another unit, or through another name,
// follows it; a price worked out from one is an input of its own.
func TestInputsFollow(t *testing.T) {
	for name, c := range map[string]struct {
		price   quantity.Quantity
		formula string
	}{
		"another unit":  {q("0.31 EUR/kWh").WithOrigin(quantity.Named("electricity")), "$B$23/1000"},
		"another name":  {q("310 EUR/MWh").WithOrigin(quantity.Named("price")), "$B$23/1000"},
		"an expression": {q("0.37 EUR/kWh").WithOrigin(&quantity.Origin{Op: '*', Left: quantity.Named("electricity")}), ""},
		"an old value":  {q("0.30 EUR/kWh").WithOrigin(quantity.Named("electricity")), ""},
		"a circle":      {q("0.31 EUR/kWh").WithOrigin(quantity.Named("circle")), ""},
	} {
		t.Run(name, func(t *testing.T) {
			r := sample()
			r.Plan.Assumptions[0].Value = q("310 EUR/MWh")
			r.Plan.Tariffs[0].Price = c.price
			r.Values = []notebook.Named{
				{Name: "price", Value: q("310 EUR/MWh").WithOrigin(quantity.Named("electricity"))},
				{Name: "circle", Value: q("0.31 EUR/kWh").WithOrigin(quantity.Named("circle"))},
			}
			f := read(t, r)
			require.Equal(t, c.formula, f.formula("Start here", "B27"))
			require.InDelta(t, c.price.MustIn("EUR/kWh"), f.number("Start here", "B27"), 1e-12)
		})
	}
}

// Prices, powers and amounts that are an assumption follow its cell too.
func TestListsFollow(t *testing.T) {
	r := sample()
	named := func(text, name string) quantity.Quantity { return q(text).WithOrigin(quantity.Named(name)) }
	r.Plan.Assumptions = []*plan.Assumption{
		{Name: "glass", Label: "Glass", Value: q("240 EUR")}, {Name: "lamp", Label: "Lamp", Value: q("0.024 kW")}, {Name: "water", Label: "Water", Value: q("18 EUR")},
	}
	r.Plan.Items[1].Price, r.Plan.Loads[0].Power, r.Plan.Running[0].Amount = named("240 EUR", "glass"), named("24 W", "lamp"), named("18 EUR", "water")
	f := read(t, r)
	require.Equal(t, "'Start here'!$B$23", f.formula("Budget", "F11"))
	require.Equal(t, "'Start here'!$B$24*1000", f.formula("Running cost", "F8"))
	require.Equal(t, "'Start here'!$B$25", f.formula("Running cost", "J11"))
	require.Equal(t, 24.0, f.number("Running cost", "F8"))
	require.Equal(t, "Budget", f.text("Start here", "H23"))
	require.Equal(t, "Running cost", f.text("Start here", "H24"))
}

func TestKeyFigures(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, "Two tanks in the attic", f.text("Start here", "A1"))
	for row, want := range map[string]struct {
		formula string
		value   float64
	}{
		"5": {"'Budget'!$G$4", 1051.58}, "6": {"'Budget'!$G$5", 346.69}, "7": {"'Budget'!$I$7", 789.48}, "8": {"'Running cost'!$M$4", 59.0869347222222},
		"9": {"'Running cost'!$I$4*365", 962.505}, "10": {"'Tanks'!$J$4", 456.1}, "11": {"'Tanks'!$L$4", 585.9}, "12": {"'Checks'!$B$4", 1}, "13": {"'Checks'!$B$5", 1}, "14": {"'Checks'!$B$6", 1},
	} {
		require.Equal(t, want.formula, f.formula("Start here", "B"+row), row)
		require.InDelta(t, want.value, f.number("Start here", "B"+row), 1e-9, row)
	}
	linked, target, err := f.GetCellHyperLink("Start here", "A"+f.row("Start here", "A", "Running cost", 1))
	require.NoError(t, err)
	require.True(t, linked)
	require.Equal(t, "'Running cost'!A1", target)
}

// An incomplete workbook says so on every sheet.
func TestIncompleteRun(t *testing.T) {
	f := read(t, incomplete())
	require.Equal(t, "incomplete: 1 problem in the notebook; figures that need them are missing — the list stands at the end of this sheet", f.text("Start here", "A3"))
	for _, sheet := range f.GetSheetList()[1:] {
		require.Equal(t, "incomplete: 1 problem in the notebook; figures that need them are missing — see Start here", f.text(sheet, "A3"), sheet)
	}
	f.row("Start here", "A", `mistake: attic.md:43:12: tank: height: got 600 without a unit, want a length (write "600 mm")`, 1)
	f.row("Start here", "A", "caution: attic.md:50: the tank Rail stands in no rack", 1)
	require.Equal(t, "input", f.text("Start here", "C24"), "the inputs moved down with their names")

	r := incomplete()
	r.Problems = r.Problems[1:]
	require.Contains(t, read(t, r).text("Build", "A3"), "incomplete: 2 cells of the notebook did not run")

	whole := read(t, sample())
	for _, sheet := range whole.GetSheetList() {
		require.NotContains(t, whole.all(sheet), "incomplete")
		require.NotContains(t, whole.all(sheet), "not worked out")
		require.NotContains(t, whole.all(sheet), "What the run of the notebook reported")
	}
}

// A sum of which a part may be missing is not shown as a fact.
func TestLacking(t *testing.T) {
	missing := func(r *notebook.Result, kinds ...plan.Kind) *reader {
		r.Problems, r.Cells = incomplete().Problems, incomplete().Cells
		r.Plan.Lacking = map[plan.Kind]bool{}
		for _, kind := range kinds {
			r.Plan.Lacking[kind] = true
		}
		return read(t, r)
	}
	for name, c := range map[string]struct {
		kind plan.Kind
		lost []string
	}{
		"items":       {plan.KindItem, []string{"All to buy", "of that, there already", "Still to spend"}},
		"tax":         {plan.KindTax, []string{"All to buy", "of that, there already", "Still to spend"}},
		"contingency": {plan.KindContingency, []string{"Still to spend"}},
		"loads":       {plan.KindLoad, []string{"Running cost a month", "Electricity in a year"}},
		"tariff":      {plan.KindTariff, []string{"Running cost a month"}},
		"tanks":       {plan.KindTank, []string{"Water in all tanks", "Weight of all tanks, filled"}},
		"steps":       {plan.KindStep, nil},
	} {
		t.Run(name, func(t *testing.T) {
			f := missing(sample(), c.kind)
			require.Equal(t, len(c.lost), strings.Count(f.all("Start here"), "not worked out"))
			for _, words := range c.lost {
				require.Equal(t, "not worked out", f.text("Start here", "B"+f.row("Start here", "A", words, 1)))
			}
		})
	}
	empty := missing(&notebook.Result{Plan: &plan.Plan{}}, plan.Kinds()...)
	for sheet, words := range map[string]string{"Budget": "budget lines", "Running cost": "running costs", "Build": "steps of work", "Tanks": "tanks", "Checks": "checks"} {
		require.Contains(t, empty.text(sheet, "A4"), "Not all "+words+" are here", sheet)
		require.Contains(t, empty.all(sheet), "not worked out", sheet)
		require.NotContains(t, empty.all(sheet), "0.00", sheet)
	}
	for row := 6; row <= 14; row++ {
		require.Equal(t, "not worked out", empty.text("Start here", "B"+strconv.Itoa(row)))
	}
	nothing := read(t, &notebook.Result{Problems: incomplete().Problems})
	require.Contains(t, nothing.text("Budget", "A4"), "Not all budget lines are here")

	some := missing(sample(), plan.KindCheck)
	fail := some.row("Start here", "A", "Checks that fail", 1)
	require.Equal(t, "1", some.text("Start here", "B"+fail))
	require.Contains(t, some.text("Start here", "E"+fail), "at least")
}

// The first sheet names the checks that fail or caution, the worst first.
func TestAttention(t *testing.T) {
	f := read(t, sample())
	row := mustAtoi(t, f.row("Start here", "A", "What needs attention", 1))
	require.Equal(t, "Floor under the long wall", f.text("Start here", "A"+strconv.Itoa(row+1)))
	require.Equal(t, "fail", f.text("Start here", "B"+strconv.Itoa(row+1)))
	require.Equal(t, "the floor would carry more than its class; ask a structural engineer", f.text("Start here", "C"+strconv.Itoa(row+1)))
	require.Equal(t, "Circuit Attic", f.text("Start here", "A"+strconv.Itoa(row+2)))

	r := sample()
	for range 10 {
		r.Plan.Checks = append(r.Plan.Checks, &plan.Check{Name: "Another", Outcome: plan.Caution, Sentence: "think again"})
	}
	many := read(t, r)
	more := mustAtoi(t, many.row("Start here", "A", "and 4 more on Checks", 1))
	require.Equal(t, row+9, more)
	require.Equal(t, "'Start here'!$B$30", nameOf(many, "electricity_price"))
	require.Equal(t, "Electricity price", many.text("Start here", "A30"))

	r.Plan.Checks = r.Plan.Checks[:1]
	require.NotContains(t, read(t, r).all("Start here"), "What needs attention")
}

func nameOf(f *reader, name string) string {
	for _, n := range f.GetDefinedName() {
		if n.Name == name {
			return n.RefersTo
		}
	}
	return ""
}

// A line for each circuit, with the share that its loads take (24 W x 3, 18 W x
// 2 and 150 W are 258 W of 3680 W) and the library's check of it, whatever that
// is called; and the notebook's day as a date.
func TestCircuitsAndDay(t *testing.T) {
	r := sample()
	r.Plan.Circuits = []*plan.Circuit{
		{Name: "Attic", Voltage: q("230 V"), Breaker: q("16 A"), Protection: "RCD 30 mA"}, {Name: "Attic west", Voltage: q("120 V"), Breaker: q("15 A")},
	}
	r.Plan.Checks = append(r.Plan.Checks, &plan.Check{Name: "Whatever its name", Outcome: plan.Caution, Value: plan.Some(quantity.Must(100*258.0/230/16, "%")), Sentence: "1.1 A of 16 A", ByLibrary: true})
	day, err := quantity.ParseDate("2027-03-06")
	require.NoError(t, err)
	r.Plan.Today = []*plan.Today{{Date: day}}
	f := read(t, r)
	row := f.row("Start here", "A", "Attic", 1)
	for column, want := range map[string]string{"B": "7.0%", "C": "caution", "E": "230 V", "F": "16 A", "G": "1.1 A of 16 A", "H": "RCD 30 mA"} {
		require.Equal(t, want, f.shown("Start here", column+row), column)
	}
	require.Equal(t, "SUMPRODUCT(--EXACT('Running cost'!$E$8:$E$12,$A$"+row+"),'Running cost'!$F$8:$F$12,'Running cost'!$G$8:$G$12)/230/16", f.formula("Start here", "B"+row))
	west := f.row("Start here", "A", "Attic west", 1)
	require.Equal(t, "no loads on it", f.text("Start here", "G"+west))
	require.Equal(t, "not stated", f.text("Start here", "H"+west))
	require.Equal(t, "2027-03-06", f.shown("Start here", "B5"))
	require.Equal(t, "46452", f.text("Start here", "B5"))
	require.Equal(t, "'Start here'!$B$30", nameOf(f, "electricity_price"))
	require.Equal(t, "Electricity price", f.text("Start here", "A30"))
}

// The cautions are those of what the plan has.
func TestCautions(t *testing.T) {
	count := func(p *plan.Plan) int {
		f := read(t, &notebook.Result{Plan: p})
		rows, err := f.GetRows("Start here")
		require.NoError(t, err)
		head := f.row("Start here", "A", "Take care", 1)
		n := 0
		for i, row := range rows {
			if len(row) > 0 && i >= mustAtoi(t, head) {
				n++
			}
		}
		return n
	}
	salty := tank("Rail", "80 cm", "100 L", "20 kg", "130 kg")
	salty.Salinity = q("12 ppt")
	require.Equal(t, 1, count(&plan.Plan{}))
	require.Equal(t, 2, count(&plan.Plan{Circuits: []*plan.Circuit{{Name: "Attic", Voltage: q("230 V"), Breaker: q("16 A")}}}))
	require.Equal(t, 3, count(&plan.Plan{Tanks: []*plan.Tank{salty}}), "weights, salts and the last line")
	require.Equal(t, 4, count(sample().Plan))
}
