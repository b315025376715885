package xlsx_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
	"weirbook/xlsx"
)

// write gives the bytes of a result's workbook.
func write(t testing.TB, r *notebook.Result) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, xlsx.Write(&out, r))
	return out.Bytes()
}

// q makes a quantity of a text.
func q(text string) quantity.Quantity {
	v, err := quantity.Parse(text)
	if err != nil {
		panic(err)
	}
	return v
}

func some(text string) plan.Optional { return plan.Some(q(text)) }

// item is a budget line: phase, tank and supplier may be empty.
func item(phase, name, tank, supplier string, count float64, price string, have float64) *plan.Item {
	return &plan.Item{Name: name, Price: q(price), Count: count, Have: have, Phase: phase, Tank: tank, Supplier: supplier}
}

func load(name, power string, count int, hours, tank, group string) *plan.Load {
	return &plan.Load{Name: name, Power: q(power), Count: count, Hours: q(hours), Tank: tank, Group: group, Circuit: "Attic"}
}

func tank(name, length, water, empty, filled string) *plan.Tank {
	return &plan.Tank{Name: name, Length: q(length), Width: q("50 cm"), Height: q("55 cm"), Glass: q("10 mm"), Bottom: q("12 mm"), Fill: q("48 cm"),
		Water: q(water), Empty: q(empty), Filled: q(filled), Salinity: q("0 ppt"), Temperature: q("24.5 degC"), Room: "Attic", Rack: "Long wall", Tier: 1,
		Defaults: []string{"bottom 12 mm", "no substrate"}}
}

// sample is a small plan in which every sheet has something, with prices
// without tax and an electricity price that is an assumption.
func sample() *notebook.Result {
	price := q("0.31 EUR/kWh")
	electricity := &plan.Assumption{Name: "electricity", Label: "Electricity price", Value: price, Given: price,
		Low: some("0.26 EUR/kWh"), High: some("0.42 EUR/kWh"), Basis: "supplier's bill, October"}
	air := &plan.Assumption{Name: "air", Label: "Room air in winter", Value: q("17 degC"), Given: q("17 degC"), Low: some("14 degC"), High: some("62 degF"), Basis: "a guess"}
	spare := &plan.Assumption{Name: "spare", Label: "Kept for surprises", Value: q("12 %"), Given: q("10 %"), Overridden: true, Low: some("5 %"), High: some("20 %"), Basis: "two earlier rooms"}
	p := &plan.Plan{
		Assumptions:   []*plan.Assumption{electricity, air, spare},
		Tariffs:       []*plan.Tariff{{Price: price.WithOrigin(quantity.Named("electricity"))}},
		Taxes:         []*plan.Tax{{Rate: q("19 %")}},
		Contingencies: []*plan.Contingency{{Rate: q("12 %").WithOrigin(quantity.Named("spare"))}},
		Items: []*plan.Item{
			item("Racks", "Steel rack, four posts, 200 kg a shelf", "", "Ironmonger", 2, "185.50 EUR", 0),
			item("Tanks", "Glass tank 120 x 50 x 55 cm", "Heron", "Glazier", 1, "240 EUR", 1),
			item("Tanks", "Glass tank 80 x 50 x 55 cm", "Rail", "Glazier", 1, "155 EUR", 0),
			item("Phase 2", "Return pump 1500 L/h", "Heron", "", 2, "41.35 EUR", 1),
			item("", "Silicone, cartridges", "", "", 3.5, "9.995 EUR", 1),
		},
		Loads: []*plan.Load{
			load("Light", "24 W", 3, "9 h/d", "Heron", "lights"), load("Return pump", "18 W", 2, "24 h/d", "Heron", "pumps"),
			load("Heater", "150 W", 1, "7.5 h/d", "Rail", "heat"),
		},
		Running: []*plan.Running{{Name: "Water and sewage", Amount: q("18 EUR"), Every: q("1 mo")}, {Name: "Salt", Amount: q("22.40 EUR"), Every: q("6 wk"), Tank: "Rail"}},
		Steps: []*plan.Step{
			{Name: "Leak test", Wait: some("2 d"), After: []string{"Level the racks"}, Phase: "Tanks", Order: 2},
			{Name: "Level the racks", Work: some("3 h"), People: 2, Phase: "Racks", Order: 1},
		},
		Tanks: []*plan.Tank{tank("Heron", "120 cm", "274.2 L", "61.4 kg", "349.8 kg"), tank("Rail", "80 cm", "181.9 L", "42.8 kg", "236.1 kg")},
		Fish: []*plan.Fish{{Tank: "Heron", Species: "Melanotaenia praecox", Common: "Dwarf rainbowfish", Count: 12, Length: q("6 cm"), Mass: q("3.1 g"),
			Oxygen: q("14 mg/h"), OxygenPeak: q("21 mg/h"), FeedLow: q("0.4 g/d"), FeedHigh: q("0.9 g/d"), MassFactor: 1.5}},
		Checks: []*plan.Check{
			{Name: "Arm's reach over the lower tier", Outcome: plan.Pass, Value: some("48 cm"), AtLeast: some("40 cm"), Sentence: "48 cm above the rim, 40 cm is enough", Source: plan.Source{Line: 31}},
			{Name: "Circuit Attic", Outcome: plan.Caution, Value: some("13.1 A"), AtMost: some("16 A"), CautionAt: some("12.8 A"), Sentence: "82 % of the breaker", Source: plan.Source{Line: 40}},
			{Name: "Floor under the long wall", Outcome: plan.Fail, Value: some("2.6 kPa"), AtMost: some("2 kPa"), Sentence: "the floor would carry more than its class; ask a structural engineer", Tank: "Heron"},
		},
	}
	day, err := quantity.ParseDate("2027-03-06")
	if err != nil {
		panic(err)
	}
	water := q("456.1 L").WithOrigin(&quantity.Origin{Op: '+', Left: quantity.Named("heron_water"), Right: quantity.Named("rail_water")})
	return &notebook.Result{
		Document: &notebook.Document{File: "attic.md", Title: "Two tanks in the attic"},
		Plan:     p,
		Values: []notebook.Named{
			{Name: "electricity", Value: price.WithOrigin(quantity.Named("electricity"))},
			{Name: "all_water", Value: water}, {Name: "first_day", Value: day}, {Name: "ready", Value: true}, {Name: "shelves", Value: 4.0},
			{Name: "total", Value: q("1234.5 EUR")}, {Name: "motto", Value: "measure twice"}, {Name: "helper", Value: notebook.Function{}},
			{Name: "heron", Value: notebook.NewData("tank", []notebook.Pair{{Key: "name", Value: "Heron"}, {Key: "water", Value: q("274.2 L")},
				{Key: 1.0, Value: q("0.0000123 m")}, {Key: "fish", Value: notebook.NewData("", nil)}})},
			{Name: "spare", Value: q("12 %").WithOrigin(quantity.Named("spare"))},
		},
	}
}

// incomplete is a run that went wrong.
func incomplete() *notebook.Result {
	r := sample()
	r.Cells = []notebook.CellResult{{Status: notebook.Done}, {Status: notebook.Failed}, {Status: notebook.Waiting}}
	r.Problems = []diag.Problem{
		{Pos: diag.Pos{File: "plans/attic.md", Line: 43, Column: 12}, Subject: "tank: height", Message: "got 600 without a unit, want a length", Hint: `write "600 mm"`},
		{Pos: diag.Pos{File: "attic.md", Line: 50}, Message: "the tank Rail stands in no rack", Caution: true},
	}
	return r
}
