package lualib

import (
	"fmt"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func costFunctions() []*Function {
	filters := []Arg{
		{Name: "phase", Kind: ArgText, Doc: "only items of this phase"},
		{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "only items for this tank"},
		{Name: "supplier", Kind: ArgText, Doc: "only items from this supplier"},
	}
	readers := []plan.Kind{plan.KindItem, plan.KindTax, plan.KindContingency}
	const rounding = "every line is rounded half away from zero to the currency's minor unit (ISO 4217); a total is the sum of rounded lines"
	return []*Function{
		{
			Module: "cost", Name: "item", Brief: "records a line of the budget",
			Args: []Arg{
				{Name: "name", Kind: ArgText, Need: true, Place: 1, Column: "item", Doc: "what it is; a table may call the column item"},
				{Name: "price", Kind: ArgMoney, Need: true, Doc: "for one"},
				{Name: "count", Kind: ArgNumber, Low: 0, Top: 1e6, Default: "1", Doc: "how many"},
				{Name: "phase", Kind: ArgText, Doc: "the part of the build it belongs to"},
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it is for"},
				{Name: "supplier", Kind: ArgText, Doc: "where it comes from"},
				{Name: "have", Kind: ArgNumber, Low: 0, Top: 1e6, Default: "0", Doc: "how many are there already"},
				{Name: "lead", Kind: ArgQuantity, Unit: "d", Low: 0, Top: 3650, Doc: "time from order to delivery"},
			},
			Fields: []Field{{"name", "", "what it is"}, {"price", "EUR", "for one"}, {"count", "", "how many"}, {"have", "", "how many are there"}, {"phase", "", "as given"}, {"tank", "", "as given"}, {"supplier", "", "as given"}},
			Makes:  []plan.Kind{plan.KindItem}, Checks: "its tank is recorded; one currency in the notebook", Range: "no negative prices or counts", Accuracy: rounding, Source: "ISO 4217",
			Example: `for _, row in ipairs(rows "Budget") do cost.item(row) end`,
			run:     runItem,
		},
		{
			Module: "cost", Name: "contingency", Brief: "states the share kept for surprises on what is still to be bought, once",
			Args:   []Arg{{Name: "rate", Kind: ArgQuantity, Unit: "%", Need: true, Place: 1, Low: 0, Top: 200, Doc: "a share"}},
			Result: "the share", Makes: []plan.Kind{plan.KindContingency}, Checks: "stated once", Range: "0 to 200 %", Source: "none",
			Example: `cost.contingency "10 %"`,
			run: func(c *callArgs) (any, error) {
				return c.q("rate"), c.record(&plan.Contingency{Rate: c.q("rate")})
			},
		},
		{
			Module: "cost", Name: "tax", Brief: "states the sales tax and whether prices include it, once",
			Args: []Arg{
				{Name: "rate", Kind: ArgQuantity, Unit: "%", Need: true, Place: 1, Low: 0, Top: 100, Doc: "a share of the net price"},
				{Name: "included", Kind: ArgBool, Default: "true", Doc: "whether the prices of items include it"},
			},
			Result: "the rate", Makes: []plan.Kind{plan.KindTax}, Checks: "stated once", Range: "0 to 100 %", Source: "none",
			Example: `cost.tax{rate = "20 %", included = true}`,
			run: func(c *callArgs) (any, error) {
				return c.q("rate"), c.record(&plan.Tax{Rate: c.q("rate"), Included: c.truth("included", true)})
			},
		},
		{
			Module: "cost", Name: "running", Brief: "records a cost that comes back",
			Args: []Arg{
				{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "what it is"},
				{Name: "amount", Kind: ArgMoney, Need: true, Doc: "each time"},
				{Name: "every", Kind: ArgQuantity, Unit: "d", Top: 36500, Above: true, UnitOnly: true, Default: "1 mo", Doc: "the time between two payments"},
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it is for"},
			},
			Result: "the amount", Makes: []plan.Kind{plan.KindRunning}, Checks: "its tank is recorded; one currency in the notebook", Range: "a year is 365 d, a month a twelfth of it", Source: "none",
			Example: `cost.running{name = "Filter floss", amount = "14 EUR", every = "3 mo"}`,
			run: func(c *callArgs) (any, error) {
				r := &plan.Running{Name: c.text("name"), Amount: c.q("amount"), Every: c.or("every", quantity.Must(1, "mo")), Tank: c.text("tank")}
				return r.Amount, c.record(r)
			},
		},
		{
			Module: "cost", Name: "total", Brief: "the sum of all budget lines, tax included, without contingency",
			Args: filters, Result: "money", Reads: readers, Range: "one currency", Accuracy: rounding, Source: "ISO 4217",
			Example: `total = cost.total()`,
			run: func(c *callArgs) (any, error) {
				return c.budget(func(b plan.Budget) float64 { return b.Total })
			},
		},
		{
			Module: "cost", Name: "to_spend", Brief: "what is still to be spent: lines less what is had, tax included, with contingency",
			Args: filters, Result: "money", Reads: readers, Range: "one currency", Accuracy: rounding, Source: "ISO 4217",
			Example: `left = cost.to_spend{phase = "Lids"}`,
			run: func(c *callArgs) (any, error) {
				return c.budget(func(b plan.Budget) float64 { return b.ToSpend })
			},
		},
	}
}

func runItem(c *callArgs) (any, error) {
	r := &plan.Item{
		Name: c.text("name"), Price: c.q("price"), Count: c.number("count", 1), Have: c.number("have", 0),
		Phase: c.text("phase"), Tank: c.text("tank"), Supplier: c.text("supplier"), Lead: c.optional("lead"),
	}
	out := new(result).set("name", r.Name).set("price", r.Price).set("count", r.Count).set("have", r.Have).
		textIf("phase", r.Phase).textIf("tank", r.Tank).textIf("supplier", r.Supplier)
	return out, c.record(r)
}

// budget sums up the items that the filters leave.
func (c *callArgs) budget(part func(plan.Budget) float64) (any, error) {
	items := recordsOf[*plan.Item](c, plan.KindItem)
	for _, filter := range []struct {
		name string
		of   func(*plan.Item) string
	}{{"phase", func(i *plan.Item) string { return i.Phase }}, {"tank", func(i *plan.Item) string { return i.Tank }}, {"supplier", func(i *plan.Item) string { return i.Supplier }}} {
		if err := knownFilter(c, filter.name, items, filter.of, "item"); err != nil {
			return nil, err
		}
	}
	var chosen []*plan.Item
	currency := ""
	for _, i := range items {
		code := i.Price.Dimension().Currency()
		if currency == "" {
			currency = code
		}
		if code != currency {
			return nil, wrong("", fmt.Sprintf("got prices in %s and in %s, want one currency", currency, code), fmt.Sprintf("multiply by a rate of your own, as in price * Q\"1.1 %s/%s\"", currency, code))
		}
		if (c.text("phase") == "" || i.Phase == c.text("phase")) && (c.text("tank") == "" || i.Tank == c.text("tank")) && (c.text("supplier") == "" || i.Supplier == c.text("supplier")) {
			chosen = append(chosen, i)
		}
	}
	if currency == "" {
		return quantity.Bare(0), nil
	}
	sum := plan.Sum(chosen, plan.TaxFactor(recordsOf[*plan.Tax](c, plan.KindTax)), plan.ContingencyRate(recordsOf[*plan.Contingency](c, plan.KindContingency)))
	return quantity.Must(part(sum), currency), nil
}

func buildFunctions() []*Function {
	return []*Function{{
		Module: "build", Name: "step", Brief: "records a piece of work, or a wait",
		Args: []Arg{
			{Name: "name", Kind: ArgText, Need: true, Place: 1, Column: "step", Doc: "what is done; a table may call the column step"},
			{Name: "work", Kind: ArgQuantity, Unit: "h", Low: 0, Top: 10_000, Doc: "time it takes the people at it"},
			{Name: "wait", Kind: ArgQuantity, Unit: "d", Low: 0, Top: 3650, Doc: "time that must pass without work: curing, a leak test"},
			{Name: "people", Kind: ArgCount, Default: "1", Doc: "how many hands"},
			{Name: "after", Kind: ArgNames, Doc: `steps that come before: a name, or several with semicolons`},
			{Name: "phase", Kind: ArgText, Doc: "the part of the build it belongs to"},
			{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it is for"},
		},
		Fields: []Field{{"name", "", "what is done"}, {"work", "h", "as given"}, {"wait", "d", "as given"}, {"people", "", "as given"}},
		Makes:  []plan.Kind{plan.KindStep}, Checks: "one step of a name and tank; the steps after which it comes exist; no circle",
		Source: "none", Caution: "lift with enough people; a filled tank is never moved",
		Example: `build.step{name = "Leak test", wait = "2 d", after = "Level the stand"}`,
		run:     runStep,
	}}
}

func runStep(c *callArgs) (any, error) {
	r := &plan.Step{Name: c.text("name"), Work: c.optional("work"), Wait: c.optional("wait"), People: c.count("people", 1), Phase: c.text("phase"), Tank: c.text("tank")}
	r.After, _ = c.values["after"].([]string)
	return new(result).set("name", r.Name).setIf("work", r.Work).setIf("wait", r.Wait).set("people", r.People), c.record(r)
}

// functions is the whole library.
func functions() []*Function {
	var all []*Function
	for _, list := range [][]*Function{plainFunctions(), roomFunctions(), volumeFunctions(), salinityFunctions(), waterFunctions(), nitrogenFunctions(), filterFunctions(), stockingFunctions(), powerFunctions(), costFunctions(), buildFunctions()} {
		all = append(all, list...)
	}
	return all
}
