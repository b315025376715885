package plan

import "weirbook/notebook/quantity"

// Assumption is a value that the builder takes for granted and may vary.
type Assumption struct {
	Source
	Name       string // the named value that holds it
	Label      string // what it is, in words
	Value      quantity.Quantity
	Given      quantity.Quantity // as written in the notebook, before an override
	Low, High  Optional
	Basis      string // where the number comes from
	Overridden bool
}

// Today is the day that the notebook counts from.
type Today struct {
	Source
	Date quantity.Date
}

// Room is a room of the house.
type Room struct {
	Source
	Name                  string
	Length, Width, Height Optional
}

// Rack is a stand with one or more tiers.
type Rack struct {
	Source
	Name          string
	Room          string
	Length, Width Optional
	Height        Optional
	Tiers         []quantity.Quantity // heights of the tiers above the floor
}

// Tank is one aquarium or vessel.
type Tank struct {
	Source
	Name                  string
	Length, Width, Height quantity.Quantity // outside
	Glass, Bottom         quantity.Quantity // thickness of walls and bottom
	Fill, Substrate       quantity.Quantity // from the inside of the bottom
	Gross, Water, Surface quantity.Quantity // outside volume; net water; water surface
	Footprint             quantity.Quantity
	Empty, Filled         quantity.Quantity // masses
	Rock                  Optional          // as a mass
	Salinity              quantity.Quantity
	Temperature           quantity.Quantity
	Room, Rack            string
	Tier                  int // 0 when not given
	X, Y                  Optional
	Defaults              []string // the defaults that were taken, in words
}

// Fish is a group of fish of one species in a tank.
type Fish struct {
	Source
	Tank       string
	Species    string // scientific name
	Common     string
	Count      int
	Length     quantity.Quantity // total length of one
	Mass       quantity.Quantity // of one
	Oxygen     quantity.Quantity // of the group, daily mean, per hour
	OxygenPeak quantity.Quantity
	FeedLow    quantity.Quantity // of the group, dry, per day
	FeedHigh   quantity.Quantity
	MassFactor float64 // the factor of uncertainty of the mass
}

// Title of each record: the name by which people speak of it.
func (r *Assumption) Title() string { return r.Label }

// Title gives the name by which people speak of the record.
func (r *Today) Title() string { return r.Date.String() }

// Title gives the name by which people speak of the record.
func (r *Room) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Rack) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Tank) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Fish) Title() string { return r.Species }
