package plan

import "weirbook/notebook/quantity"

// WaterPlan is a change of salinity by dated steps.
type WaterPlan struct {
	Source
	Name      string // of the tank, or what the call names it
	Tank      string // "" when no tank was given
	Method    string // "water change" or "dissolve in sump"
	From, To  quantity.Quantity
	Water     quantity.Quantity // net volume
	Change    Optional          // share of the water each time
	Every     quantity.Quantity
	AtMost    quantity.Quantity // rise a day that was asked for
	Reference quantity.Quantity // temperature of the specific gravities
	Steps     []WaterStep
	Days      float64 // from the first step to the last
	Finish    OptionalDate
	Salt      quantity.Quantity // mix to weigh in all
	Draw      quantity.Quantity // water drawn in all
	Direct    quantity.Quantity // the mix if all were dissolved at once
	Cost      Optional          // of the mix
	Bought    Optional          // mix that is there
	Species   []string          // named for the check beside the recorded fish
}

// WaterStep is one step of a WaterPlan.
type WaterStep struct {
	Number        int
	Day           float64 // days after the first step
	Date          OptionalDate
	Before, After quantity.Quantity // salinity
	SG            float64           // specific gravity after the step, at the plan's reference
	Density       quantity.Quantity
	Salt          quantity.Quantity // mix to weigh
	Draw, Mix     quantity.Quantity // water to draw and to mix
}

// WaterSource is tap, rain or reverse-osmosis water.
type WaterSource struct {
	Source
	Name                 string
	Hardness, Alkalinity Optional
	Salinity             Optional
	PH                   float64 // 0 when not given
	Chlorine, Chloramine Optional
	Nitrate              Optional
}

// Reading is one measurement of a tank's water.
type Reading struct {
	Source
	Tank                      string
	Date                      quantity.Date
	Temperature, Salinity     Optional
	Ammonia, Nitrite, Nitrate Optional // total ammonia, nitrite and nitrate, as nitrogen
	Oxygen                    Optional
	Hardness, Alkalinity      Optional
	PH                        float64 // 0 when not measured
}

// Nitrate is what a tank's nitrate comes to under its water changes.
type Nitrate struct {
	Source
	Tank          string
	Before, After quantity.Quantity // at steady state, as nitrogen, before and after a change
	Change        quantity.Quantity
	Every         quantity.Quantity
}

// Filter is the biological media of a tank.
type Filter struct {
	Source
	Tank              string
	FeedLow, FeedHigh quantity.Quantity // dry feed a day that it carries
	Turnover          Optional          // of the tank an hour
}

// Title gives the name by which people speak of the record.
func (r *WaterPlan) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *WaterSource) Title() string { return r.Name }

// Title gives the name by which people speak of the record.
func (r *Reading) Title() string { return r.Tank + " " + r.Date.String() }

// Title gives the name by which people speak of the record.
func (r *Nitrate) Title() string { return r.Tank }

// Title gives the name by which people speak of the record.
func (r *Filter) Title() string { return r.Tank }
