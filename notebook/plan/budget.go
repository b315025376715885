package plan

import "weirbook/notebook/quantity"

// Cost is what one item comes to, in the currency's unit, rounded half away
// from zero to its minor unit, tax included. The workbook's formulas do the
// same: a total is the sum of rounded lines.
type Cost struct {
	Total   float64 // for all of them
	ToSpend float64 // for those not had yet
}

// TaxFactor gives what a price is multiplied by to include tax.
func (p *Plan) TaxFactor() float64 { return TaxFactor(p.Taxes) }

// TaxFactor gives what a price is multiplied by to include tax: 1 where prices
// include it or no tax is stated.
func TaxFactor(taxes []*Tax) float64 {
	for _, t := range taxes {
		if !t.Included {
			rate, _ := t.Rate.Number()
			return 1 + rate
		}
	}
	return 1
}

// ContingencyRate gives the share kept for surprises, 0 when none is stated.
func ContingencyRate(list []*Contingency) float64 {
	for _, c := range list {
		rate, _ := c.Rate.Number()
		return rate
	}
	return 0
}

// Cost works out one budget line.
func (r *Item) Cost(taxFactor float64) Cost {
	digits := quantity.MinorDigits(r.Price.Dimension().Currency())
	price := r.Price.Value()
	return Cost{
		Total:   quantity.Round(r.Count*price*taxFactor, digits),
		ToSpend: quantity.Round(max(r.Count-r.Have, 0)*price*taxFactor, digits),
	}
}

// Budget is the sum over budget lines.
type Budget struct {
	Lines       int
	Total       float64 // all lines
	Had         float64 // of that, what is there already
	ToBuy       float64 // of that, what is still to be bought
	Contingency float64 // on what is still to be bought
	ToSpend     float64 // ToBuy and Contingency
}

// Sum adds up budget lines. Every sum is rounded to the minor unit, so that a
// long list gathers no error of binary fractions.
func Sum(items []*Item, taxFactor, contingency float64) Budget {
	var b Budget
	digits := 2
	for _, item := range items {
		digits = quantity.MinorDigits(item.Price.Dimension().Currency())
		line := item.Cost(taxFactor)
		b.Lines++
		b.Total = quantity.Round(b.Total+line.Total, digits)
		b.ToBuy = quantity.Round(b.ToBuy+line.ToSpend, digits)
	}
	b.Had = quantity.Round(b.Total-b.ToBuy, digits)
	b.Contingency = quantity.Round(b.ToBuy*contingency, digits)
	b.ToSpend = quantity.Round(b.ToBuy+b.Contingency, digits)
	return b
}

// EnergyPerDay gives what a load takes in a day, in kWh.
func (r *Load) EnergyPerDay() float64 {
	return r.Power.MustIn("kW") * float64(r.Count) * r.Hours.MustIn("h/d")
}
