package xlsx

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// The names of the rates' cells, as formulas write them.
const (
	taxName         = "tax_rate"
	contingencyName = "contingency_rate"
	electricityName = "electricity_price"
)

// inputs are the numbers that stand once, on the first sheet.
type inputs struct {
	assumptions []assumed
	rates       []rate // those with a row of their own
	names       []cellOf
	taxIncluded bool
	tax         float64 // as a share
	contingency float64 // as a share
	electricity float64 // in the notebook's money for a kWh
	hasPrice    bool
}

// cellOf is a defined name with the cell that it stands for.
type cellOf struct {
	name string
	cell address
}

// assumed is an assumption with its cell and what follows it.
type assumed struct {
	*plan.Assumption
	cell    address
	used    []string
	remarks string // what the rate that it is has to say
}

// rate is a rate of the whole plan with its cell.
type rate struct {
	name    string // the defined name
	label   string
	value   float64
	unit    string
	share   bool
	formula string // set when it follows an assumption
	basis   string
	used    string
}

// Columns of the input block.
const (
	inputLabel = iota + 1
	inputValue
	inputMark
	inputUnit
	inputLow
	inputHigh
	inputBasis
	inputUsed
)

// layInputs gives every input its cell and works out the rates.
func (b *book) layInputs() {
	row := b.inputsRow()
	for _, a := range b.plan.Assumptions {
		b.inputs.assumptions = append(b.inputs.assumptions, assumed{Assumption: a, cell: address{startSheet, inputValue, row}})
		row++
	}
	b.layTax()
	b.layContingency()
	b.layElectricity()
}

// addRate gives a rate its name: that of the assumption's cell where it is an
// assumption as it stands, else that of a row of its own.
func (b *book) addRate(r rate) {
	for i := range b.inputs.assumptions {
		a := &b.inputs.assumptions[i]
		if r.formula != "" && r.formula == a.cell.from(startSheet) {
			a.remarks = joinText(a.remarks, r.basis)
			b.inputs.names = append(b.inputs.names, cellOf{r.name, a.cell})
			return
		}
	}
	row := b.inputsRow() + len(b.inputs.assumptions) + len(b.inputs.rates)
	b.inputs.rates = append(b.inputs.rates, r)
	b.inputs.names = append(b.inputs.names, cellOf{r.name, address{startSheet, inputValue, row}})
}

// user says what follows an assumption that is a rate.
func (r *rate) user() string { return r.used + " (" + strings.ToLower(r.label) + ")" }

func (b *book) layTax() {
	r := rate{name: taxName, label: "Tax rate", share: true, used: budgetSheet}
	tax := taxOf(b.plan.Taxes)
	switch {
	case tax == nil:
		b.inputs.taxIncluded = true
		r.basis = "no tax is stated in the notebook: prices are taken as what is paid"
		if b.lacking(plan.KindTax) {
			r.basis = "not worked out: prices are shown as they are given"
		}
	case tax.Included:
		b.inputs.taxIncluded = true
		r.basis = "prices include it: a change alters only the tax shown as contained"
	default:
		r.basis = "prices are without it: the Budget adds it to every line"
	}
	if tax != nil {
		b.inputs.tax = b.shareOf(&r, tax.Rate)
		r.basis = joinText(r.basis, tax.Note)
	}
	b.addRate(r)
}

// taxOf gives the tax that counts: one that prices lack, else the first.
func taxOf(taxes []*plan.Tax) *plan.Tax {
	for _, t := range taxes {
		if !t.Included {
			return t
		}
	}
	if len(taxes) == 0 {
		return nil
	}
	return taxes[0]
}

func (b *book) layContingency() {
	r := rate{name: contingencyName, label: "Contingency", share: true, used: budgetSheet}
	r.basis = "kept for surprises, on what is still to be bought"
	if len(b.plan.Contingencies) > 0 {
		c := b.plan.Contingencies[0]
		b.inputs.contingency = b.shareOf(&r, c.Rate)
		r.basis = joinText(r.basis, c.Note)
	} else if r.basis = "none is stated in the notebook"; b.lacking(plan.KindContingency) {
		r.basis = "not worked out"
	}
	b.addRate(r)
}

// shareOf sets a rate from a dimensionless quantity.
func (b *book) shareOf(r *rate, q quantity.Quantity) float64 {
	r.value, _ = q.Number()
	r.formula, _ = b.follow(q, "", startSheet, r.user())
	return r.value
}

func (b *book) layElectricity() {
	if len(b.plan.Tariffs) == 0 {
		return
	}
	t := b.plan.Tariffs[0]
	unit := b.currency + "/kWh"
	price, ok := in(t.Price, unit)
	if !ok {
		return
	}
	b.inputs.electricity, b.inputs.hasPrice = price, true
	r := rate{name: electricityName, label: "Electricity price", value: price, unit: unit, basis: clean(t.Note), used: runningSheet}
	r.formula, _ = b.follow(t.Price, unit, startSheet, r.user())
	b.addRate(r)
}

func joinText(a, b string) string {
	switch {
	case b == "":
		return a
	case a == "":
		return b
	}
	return a + "; " + b
}

// cellNumber gives the number that stands in an assumption's cell, and its
// unit: a percentage stands as a share, so that the cell can show it as one.
func cellNumber(q quantity.Quantity) (v float64, unit string) {
	if isShare(q) {
		v, _ = q.Number()
		return v, ""
	}
	return q.Value(), q.Unit().Symbol()
}

func isShare(q quantity.Quantity) bool { return q.Unit().Symbol() == "%" }

// follow gives the formula, as seen from a sheet, by which a quantity follows
// the assumption that it is: nothing but that assumption's name stands behind
// it. The user's words are noted with the assumption; without a user it follows
// only an assumption that something else follows.
func (b *book) follow(q quantity.Quantity, unit, sheet, user string) (formula string, ok bool) {
	a := b.assumption(q)
	if a == nil {
		return "", false
	}
	v, own := cellNumber(a.Value)
	factor, ok := b.factor(a.Value, own, unit)
	if !ok {
		return "", false
	}
	want, err := q.In(unit)
	if err != nil || math.Abs(want-v*factor) > 1e-12*math.Abs(want) {
		return "", false
	}
	switch {
	case user == "" && len(a.used) == 0:
		return "", false
	case user != "" && !slices.Contains(a.used, user):
		a.used = append(a.used, user)
	}
	formula = a.cell.from(sheet)
	switch inverse := 1 / factor; {
	case factor == 1:
	case inverse == math.Trunc(inverse) && inverse < 1e15:
		formula += "/" + strconv.FormatFloat(inverse, 'f', -1, 64)
	default:
		formula += "*" + strconv.FormatFloat(factor, 'G', -1, 64)
	}
	return formula, true
}

// factor gives what a number in one unit is multiplied by to be in another.
// Between two temperature scales there is none.
func (b *book) factor(q quantity.Quantity, from, to string) (float64, bool) {
	if from == to {
		return 1, true
	}
	if q.IsPoint() {
		return 0, false
	}
	one, err := quantity.New(1, from)
	if err != nil {
		return 0, false
	}
	f, err := one.In(to)
	return f, err == nil && f != 0
}

// nameDepth bounds how many names in a row lead to an assumption.
const nameDepth = 16

// assumption finds the assumption that a quantity is, through names that stand
// for it.
func (b *book) assumption(q quantity.Quantity) *assumed {
	if len(b.inputs.assumptions) == 0 {
		return nil
	}
	for range nameDepth {
		o := q.Origin()
		if o == nil || o.Op != 'N' {
			return nil
		}
		for i := range b.inputs.assumptions {
			if b.inputs.assumptions[i].Name == o.Text {
				return &b.inputs.assumptions[i]
			}
		}
		v, _ := b.result.Value(o.Text)
		next, ok := v.(quantity.Quantity)
		if !ok {
			return nil
		}
		q = next
	}
	return nil
}
