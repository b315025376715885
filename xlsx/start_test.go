package xlsx_test

import (
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
	require.Equal(t, "'Start here'!$B$21", names["tax_rate"])
	require.Equal(t, "'Start here'!$B$22", names["contingency_rate"])
	require.Equal(t, "'Start here'!$B$23", names["electricity_price"])
	for cell, want := range map[string]string{"B18": "", "B19": "", "B20": "", "B21": "", "B22": "$B$20", "B23": "$B$18"} {
		require.Equal(t, want, f.formula("Start here", cell), cell)
		mark, fill := "input", 1
		if want != "" {
			mark, fill = "follows", 0
		}
		require.Equal(t, mark, f.text("Start here", "C"+cell[1:]), cell)
		require.Equal(t, fill, f.style("Start here", cell).Fill.Pattern, cell)
	}
	require.InDelta(t, 0.12, f.number("Start here", "B20"), 0, "a percentage stands as a share")
	require.Equal(t, "0.0##%", *f.style("Start here", "B20").CustomNumFmt)
	require.InDelta(t, 16.6666666666667, f.number("Start here", "F19"), 1e-12, "the high end is in the unit of the cell")
	require.Equal(t, "live: Electricity price", f.text("Start here", "H18"))
	require.Equal(t, "fixed: run the notebook with it", f.text("Start here", "H19"))
	require.Contains(t, f.text("Start here", "G20"), "changed for this run; the notebook says 10 %")
}

// A price that is an assumption in another unit, or through another name,
// follows it; a price worked out from one is an input of its own.
func TestInputsFollow(t *testing.T) {
	for name, c := range map[string]struct {
		price   quantity.Quantity
		formula string
	}{
		"another unit":  {q("0.31 EUR/kWh").WithOrigin(quantity.Named("electricity")), "$B$18/1000"},
		"another name":  {q("310 EUR/MWh").WithOrigin(quantity.Named("price")), "$B$18/1000"},
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
			require.Equal(t, c.formula, f.formula("Start here", "B23"))
			require.InDelta(t, c.price.MustIn("EUR/kWh"), f.number("Start here", "B23"), 1e-12)
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
	require.Equal(t, "'Start here'!$B$18", f.formula("Budget", "F10"))
	require.Equal(t, "'Start here'!$B$19*1000", f.formula("Running cost", "F9"))
	require.Equal(t, "'Start here'!$B$20", f.formula("Running cost", "J12"))
	require.Equal(t, 24.0, f.number("Running cost", "F9"))
	require.Equal(t, "live: Budget", f.text("Start here", "H18"))
	require.Equal(t, "live: Running cost", f.text("Start here", "H19"))
}

func TestKeyFigures(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, "Two tanks in the attic", f.text("Start here", "A1"))
	for row, want := range map[string]struct {
		formula string
		value   float64
	}{
		"5": {"'Budget'!$C$4", 1051.58}, "6": {"'Budget'!$C$5", 346.69}, "7": {"'Budget'!$G$5", 789.48}, "8": {"'Running cost'!$C$4", 59.0869347222222},
		"9": {"'Tanks'!$J$4", 456.1}, "10": {"'Tanks'!$L$4", 585.9}, "11": {"'Checks'!$B$3", 1}, "12": {"'Checks'!$B$4", 1}, "13": {"'Checks'!$B$5", 1},
	} {
		require.Equal(t, want.formula, f.formula("Start here", "B"+row), row)
		require.InDelta(t, want.value, f.number("Start here", "B"+row), 1e-9, row)
	}
	linked, target, err := f.GetCellHyperLink("Start here", "A"+f.row("Start here", "A", "Running cost", 1))
	require.NoError(t, err)
	require.True(t, linked)
	require.Equal(t, "'Running cost'!A1", target)
}

func TestIncompleteRun(t *testing.T) {
	f := read(t, incomplete())
	require.Contains(t, f.text("Start here", "A3"), "This workbook is incomplete: the notebook has 1 mistake, and 2 cells did not run.")
	f.row("Start here", "A", `mistake: attic.md:43:12: tank: height: got 600 without a unit, want a length (write "600 mm")`, 1)
	f.row("Start here", "A", "caution: attic.md:50: the tank Rail stands in no rack", 1)
	require.Equal(t, "$B$19", f.formula("Start here", "B24"), "the inputs moved down with their names")

	whole := read(t, sample())
	rows, err := whole.GetRows("Start here")
	require.NoError(t, err)
	for _, row := range rows {
		for _, text := range row {
			require.NotContains(t, text, "incomplete")
			require.NotContains(t, text, "What the run of the notebook reported")
		}
	}
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
	require.Equal(t, 3, count(&plan.Plan{Tanks: []*plan.Tank{salty}}))
	require.Equal(t, 4, count(sample().Plan))
}
