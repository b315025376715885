package plan

import "weirbook/notebook/quantity"

// Circuit is one protected circuit of the house.
type Circuit struct {
	Source
	Name       string
	Voltage    quantity.Quantity
	Breaker    quantity.Quantity
	Protection string
}

// Load is one thing that takes power.
type Load struct {
	Source
	Name      string
	Power     quantity.Quantity // of one
	Count     int
	Hours     quantity.Quantity // hours a day, dimensionless share of the day times 24, unit h/d
	On        string            // time of day at which it switches on, "" unknown
	Circuit   string
	Tank      string
	Group     string
	Essential bool
}

// Tariff is the price of electricity.
type Tariff struct {
	Source
	Price quantity.Quantity
}

// Item is one line of the budget.
type Item struct {
	Source
	Name     string
	Price    quantity.Quantity // for one
	Count    float64
	Have     float64 // how many are there already
	Phase    string
	Tank     string
	Supplier string
	Lead     Optional // time from order to delivery
}

// Tax is the sales tax rule, stated once.
type Tax struct {
	Source
	Rate     quantity.Quantity
	Included bool // prices contain it already
}

// Contingency is the share kept for surprises on what is still to be bought.
type Contingency struct {
	Source
	Rate quantity.Quantity
}

// Running is a cost that comes back.
type Running struct {
	Source
	Name   string
	Amount quantity.Quantity
	Every  quantity.Quantity
	Tank   string
}

// Step is one piece of work or waiting.
type Step struct {
	Source
	Name   string
	Work   Optional // time of work for all the people together at it
	Wait   Optional // time that passes without work
	People int
	After  []string
	Phase  string
	Tank   string
	Order  int // position in the order of work from 1, set after the cells
}

// Outcome says how a check came out.
type Outcome string

// The outcomes of a check.
const (
	Pass    Outcome = "pass"
	Caution Outcome = "caution"
	Fail    Outcome = "fail"
)

// Check is one comparison with its outcome, the numbers and a sentence.
type Check struct {
	Source
	Name      string
	Outcome   Outcome
	Value     Optional
	AtMost    Optional
	AtLeast   Optional
	CautionAt Optional
	Sentence  string
	Tank      string
	ByLibrary bool // worked out by the library, not written by the user
}

// Title gives the name by which people speak of the record.
func (r *Circuit) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Load) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Tariff) Title() string { return r.Price.Short() }

// Title gives the name by which people speak of the record.
func (r *Item) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Tax) Title() string { return r.Rate.Short() }

// Title gives the name by which people speak of the record.
func (r *Contingency) Title() string { return r.Rate.Short() }

// Title gives the name by which people speak of the record.
func (r *Running) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Step) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Check) Title() string { return r.Name }
