package xlsx_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// The sums are worked out by hand from the rule of the plan: every line is
// rounded to the smallest coin, tax included, and sums add rounded lines.
func TestBudgetSums(t *testing.T) {
	items := []*plan.Item{
		item("Racks", "Rack", "", "", 2, "185.50 EUR", 0), item("Tanks", "Tank", "Heron", "", 1, "240 EUR", 1),
		item("Tanks", "Lid", "Heron", "", 3, "9.995 EUR", 1), item("", "Silicone", "", "", 1, "8.20 EUR", 2),
	}
	yen := []*plan.Item{item("Tanks", "Tank", "", "", 3, "18333 JPY", 1), item("Tanks", "Hose", "", "", 2.5, "155 JPY", 0)}
	for name, c := range map[string]struct {
		plan                                            plan.Plan
		line, total, had, toBuy, extra, spend, included float64
		formula, format                                 string
	}{
		// lines 441.49, 285.60, 35.68, 9.76; to buy 441.49, 0, 23.79, 0
		"without tax": {plan.Plan{Items: items, Taxes: []*plan.Tax{{Rate: q("19 %")}}, Contingencies: []*plan.Contingency{{Rate: q("10 %")}}},
			441.49, 772.53, 307.25, 465.28, 46.53, 511.81, 123.35, "ROUND(D10*E10*(1+tax_rate),2)", `#,##0.00 "EUR"`},
		// lines 371.00, 240.00, 29.99 (29.985), 8.20; to buy 371.00, 0, 19.99, 0
		"with tax": {plan.Plan{Items: items, Taxes: []*plan.Tax{{Rate: q("19 %"), Included: true}}, Contingencies: []*plan.Contingency{{Rate: q("10 %")}}},
			371, 649.19, 258.2, 390.99, 39.1, 430.09, 103.65, "ROUND(D10*E10,2)", `#,##0.00 "EUR"`},
		"no tax, no contingency": {plan.Plan{Items: items}, 371, 649.19, 258.2, 390.99, 0, 390.99, 0, "ROUND(D10*E10,2)", `#,##0.00 "EUR"`},
		// lines 60499 (60498.9), 426 (426.25); to buy 40333 (40332.6), 426
		"yen": {plan.Plan{Items: yen, Taxes: []*plan.Tax{{Rate: q("10 %")}}, Contingencies: []*plan.Contingency{{Rate: q("5 %")}}},
			60499, 60925, 20166, 40759, 2038, 42797, 5539, "ROUND(C10*D10*(1+tax_rate),0)", `#,##0 "JPY"`},
		"nothing to buy": {plan: plan.Plan{}, format: "#,##0.00"},
	} {
		t.Run(name, func(t *testing.T) {
			f := read(t, &notebook.Result{Plan: &c.plan})
			total, spend := f.column("Budget", "9", "Line total"), f.column("Budget", "9", "Still to spend")
			for cell, want := range map[string]float64{total + "4": c.total, total + "5": c.had, spend + "4": c.toBuy, spend + "6": c.extra, spend + "7": c.spend, total + "8": c.included} {
				require.InDelta(t, want, f.number("Budget", cell), 1e-9, cell)
				require.NotEmpty(t, f.formula("Budget", cell), cell)
			}
			require.Equal(t, c.formula, f.formula("Budget", total+"10"))
			if c.formula != "" {
				require.InDelta(t, c.line, f.number("Budget", total+"10"), 1e-9)
				require.Equal(t, c.format, *f.style("Budget", total+"10").CustomNumFmt)
			}
			require.InDelta(t, c.spend, f.number("Start here", "B7"), 1e-9)
		})
	}
}

func TestBudgetFormulas(t *testing.T) {
	f := read(t, sample())
	for cell, want := range map[string]string{
		"G4": "ROUND(SUM($G$10:$G$14),2)", "G5": "ROUND($G$4-$I$4,2)", "I4": "ROUND(SUM($I$10:$I$14),2)", "I6": "ROUND($I$4*contingency_rate,2)",
		"I7": "ROUND($I$4+$I$6,2)", "G8": "ROUND($G$4*tax_rate/(1+tax_rate),2)", "I10": "ROUND(MAX(E10-H10,0)*F10*(1+tax_rate),2)",
	} {
		require.Equal(t, want, f.formula("Budget", cell), cell)
	}
	require.Equal(t, "no phase", f.text("Budget", "A14"))
	require.Equal(t, "9.995 EUR", f.shown("Budget", "F14"), "a price with parts of the smallest coin shows them")
	require.Equal(t, "1,051.58 EUR", f.shown("Budget", "G4"))
	require.Equal(t, "Price each without tax (EUR)", f.text("Budget", "F9"))
}

// A name that SUMIFS would read as a pattern, a number or another name is
// compared as exact text.
func TestBudgetGroups(t *testing.T) {
	r := sample()
	r.Plan.Taxes = nil
	r.Plan.Items = nil
	for i, phase := range []string{"Tanks", "tanks", "1", "01", "*", "<5", "2027-03-06", "Éclairage", "Lids & more"} {
		r.Plan.Items = append(r.Plan.Items, item(phase, "Thing", "", "", 1, "10 EUR", 0), item(phase, "Other", "", "", float64(i), "1 EUR", 0))
	}
	f := read(t, r)
	for i, phase := range []string{"Tanks", "tanks", "1", "01", "*", "<5", "2027-03-06", "Éclairage", "Lids & more"} {
		row := f.row("Budget", "A", phase, 3)
		require.Equal(t, float64(10+i), f.number("Budget", "E"+row), phase)
		if phase == "Lids & more" {
			require.Contains(t, f.formula("Budget", "E"+row), "SUMIFS($E$10:$E$27,$A$10:$A$27,$A")
		} else {
			require.Contains(t, f.formula("Budget", "E"+row), "EXACT($A$10:$A$27,$A")
		}
	}
}

// Money of another currency cannot be added up.
func TestBudgetForeignMoney(t *testing.T) {
	r := sample()
	r.Plan.Items = append(r.Plan.Items, item("Tanks", "From over the sea", "", "", 1, "99 USD", 0))
	f := read(t, r)
	row := f.row("Budget", "B", "From over the sea", 1)
	require.Equal(t, "99.00 USD", f.text("Budget", "F"+row))
	require.Equal(t, "not added up", f.text("Budget", "G"+row))
	require.InDelta(t, 1051.58, f.number("Budget", "G4"), 1e-9)
	require.Contains(t, f.text("Start here", "E5"), "save 1 line in other money")
}
