// Package plan holds the records of a run: what the library calls of a notebook
// set down about the room. It is data only; the outputs are written from it.
package plan

import "weirbook/notebook/quantity"

// Kind names one kind of record.
type Kind string

// The kinds of records.
const (
	KindAssumption  Kind = "assumption"
	KindToday       Kind = "today"
	KindRoom        Kind = "room"
	KindRack        Kind = "rack"
	KindTank        Kind = "tank"
	KindFish        Kind = "fish"
	KindWaterPlan   Kind = "water plan"
	KindWaterSource Kind = "water source"
	KindReading     Kind = "reading"
	KindNitrate     Kind = "nitrate course"
	KindFilter      Kind = "filter"
	KindCircuit     Kind = "circuit"
	KindLoad        Kind = "load"
	KindTariff      Kind = "tariff"
	KindItem        Kind = "item"
	KindTax         Kind = "tax"
	KindContingency Kind = "contingency"
	KindRunning     Kind = "running cost"
	KindStep        Kind = "step"
	KindCheck       Kind = "check"
)

// Kinds lists every kind in the order of the outputs.
func Kinds() []Kind {
	return []Kind{
		KindAssumption, KindToday, KindRoom, KindRack, KindTank, KindFish,
		KindWaterPlan, KindWaterSource, KindReading, KindNitrate, KindFilter, KindCircuit, KindLoad, KindTariff,
		KindItem, KindTax, KindContingency, KindRunning, KindStep, KindCheck,
	}
}

// Place says where a record or a problem came from without naming lines of the
// file, so that a remembered result stays right when text above it moves.
type Place struct {
	Cell   string // "" for the cell itself, else a name that the other cell assigns
	Line   int    // line of the cell's code that holds it, counted over lines with code from 0; -1 not known
	Table  string // heading of the table it came from, "" for none
	Row    int    // row of that table from 0
	Column string // heading key of the table's column, "" for the whole row
}

// Source is the part that all records share.
type Source struct {
	Place Place
	Cell  int // index of the cell on the page
	Line  int // line of the notebook, set when the plan is put together
	Col   int // column of the notebook, 0 unknown
	Note  string
}

// Origin gives the record's source for reading and setting.
func (s *Source) Origin() *Source { return s }

// Record is one thing set down by a library call. Records are immutable once
// the call has returned; the plan holds copies.
type Record interface {
	Kind() Kind
	Title() string // the name by which people speak of it
	Origin() *Source
	Copy() Record
}

// Plan is all records of a run, each kind in the order of the page.
type Plan struct {
	Assumptions   []*Assumption
	Today         []*Today
	Rooms         []*Room
	Racks         []*Rack
	Tanks         []*Tank
	Fish          []*Fish
	WaterPlans    []*WaterPlan
	WaterSources  []*WaterSource
	Readings      []*Reading
	Nitrates      []*Nitrate
	Filters       []*Filter
	Circuits      []*Circuit
	Loads         []*Load
	Tariffs       []*Tariff
	Items         []*Item
	Taxes         []*Tax
	Contingencies []*Contingency
	Running       []*Running
	Steps         []*Step
	Checks        []*Check
	Lacking       map[Kind]bool // kinds of which a cell that failed may have made more
}

// Add puts a record into its list.
func (p *Plan) Add(r Record) {
	switch r := r.(type) {
	case *Assumption:
		p.Assumptions = append(p.Assumptions, r)
	case *Today:
		p.Today = append(p.Today, r)
	case *Room:
		p.Rooms = append(p.Rooms, r)
	case *Rack:
		p.Racks = append(p.Racks, r)
	case *Tank:
		p.Tanks = append(p.Tanks, r)
	case *Fish:
		p.Fish = append(p.Fish, r)
	case *WaterPlan:
		p.WaterPlans = append(p.WaterPlans, r)
	case *WaterSource:
		p.WaterSources = append(p.WaterSources, r)
	case *Reading:
		p.Readings = append(p.Readings, r)
	case *Nitrate:
		p.Nitrates = append(p.Nitrates, r)
	case *Filter:
		p.Filters = append(p.Filters, r)
	case *Circuit:
		p.Circuits = append(p.Circuits, r)
	case *Load:
		p.Loads = append(p.Loads, r)
	case *Tariff:
		p.Tariffs = append(p.Tariffs, r)
	case *Item:
		p.Items = append(p.Items, r)
	case *Tax:
		p.Taxes = append(p.Taxes, r)
	case *Contingency:
		p.Contingencies = append(p.Contingencies, r)
	case *Running:
		p.Running = append(p.Running, r)
	case *Step:
		p.Steps = append(p.Steps, r)
	case *Check:
		p.Checks = append(p.Checks, r)
	}
}

// Records lists every record, kind by kind.
func (p *Plan) Records() []Record {
	var all []Record
	all = appendAll(all, p.Assumptions)
	all = appendAll(all, p.Today)
	all = appendAll(all, p.Rooms)
	all = appendAll(all, p.Racks)
	all = appendAll(all, p.Tanks)
	all = appendAll(all, p.Fish)
	all = appendAll(all, p.WaterPlans)
	all = appendAll(all, p.WaterSources)
	all = appendAll(all, p.Readings)
	all = appendAll(all, p.Nitrates)
	all = appendAll(all, p.Filters)
	all = appendAll(all, p.Circuits)
	all = appendAll(all, p.Loads)
	all = appendAll(all, p.Tariffs)
	all = appendAll(all, p.Items)
	all = appendAll(all, p.Taxes)
	all = appendAll(all, p.Contingencies)
	all = appendAll(all, p.Running)
	all = appendAll(all, p.Steps)
	return appendAll(all, p.Checks)
}

func appendAll[R Record](all []Record, list []R) []Record {
	for _, r := range list {
		all = append(all, r)
	}
	return all
}

// Currency gives the code of the first money in the plan, "" without any.
func (p *Plan) Currency() string {
	for _, i := range p.Items {
		return i.Price.Dimension().Currency()
	}
	for _, t := range p.Tariffs {
		return t.Price.Dimension().Currency()
	}
	for _, r := range p.Running {
		return r.Amount.Dimension().Currency()
	}
	return ""
}

// Optional is a quantity that may be absent.
type Optional struct {
	Q   quantity.Quantity
	Has bool
}

// Some makes a present Optional.
func Some(q quantity.Quantity) Optional { return Optional{q, true} }

// OptionalDate is a date that may be absent.
type OptionalDate struct {
	Date quantity.Date
	Has  bool
}
