package plan

// Kind and Copy of every record, in the order of the kinds.

// Kind gives KindAssumption.
func (r *Assumption) Kind() Kind { return KindAssumption }

// Copy gives a shallow copy.
func (r *Assumption) Copy() Record { c := *r; return &c }

// Kind gives KindToday.
func (r *Today) Kind() Kind { return KindToday }

// Copy gives a shallow copy.
func (r *Today) Copy() Record { c := *r; return &c }

// Kind gives KindRoom.
func (r *Room) Kind() Kind { return KindRoom }

// Copy gives a shallow copy.
func (r *Room) Copy() Record { c := *r; return &c }

// Kind gives KindRack.
func (r *Rack) Kind() Kind { return KindRack }

// Copy gives a shallow copy.
func (r *Rack) Copy() Record { c := *r; return &c }

// Kind gives KindTank.
func (r *Tank) Kind() Kind { return KindTank }

// Copy gives a shallow copy.
func (r *Tank) Copy() Record { c := *r; return &c }

// Kind gives KindFish.
func (r *Fish) Kind() Kind { return KindFish }

// Copy gives a shallow copy.
func (r *Fish) Copy() Record { c := *r; return &c }

// Kind gives KindCircuit.
func (r *Circuit) Kind() Kind { return KindCircuit }

// Copy gives a shallow copy.
func (r *Circuit) Copy() Record { c := *r; return &c }

// Kind gives KindLoad.
func (r *Load) Kind() Kind { return KindLoad }

// Copy gives a shallow copy.
func (r *Load) Copy() Record { c := *r; return &c }

// Kind gives KindTariff.
func (r *Tariff) Kind() Kind { return KindTariff }

// Copy gives a shallow copy.
func (r *Tariff) Copy() Record { c := *r; return &c }

// Kind gives KindItem.
func (r *Item) Kind() Kind { return KindItem }

// Copy gives a shallow copy.
func (r *Item) Copy() Record { c := *r; return &c }

// Kind gives KindTax.
func (r *Tax) Kind() Kind { return KindTax }

// Copy gives a shallow copy.
func (r *Tax) Copy() Record { c := *r; return &c }

// Kind gives KindContingency.
func (r *Contingency) Kind() Kind { return KindContingency }

// Copy gives a shallow copy.
func (r *Contingency) Copy() Record { c := *r; return &c }

// Kind gives KindRunning.
func (r *Running) Kind() Kind { return KindRunning }

// Copy gives a shallow copy.
func (r *Running) Copy() Record { c := *r; return &c }

// Kind gives KindStep.
func (r *Step) Kind() Kind { return KindStep }

// Copy gives a shallow copy.
func (r *Step) Copy() Record { c := *r; return &c }

// Kind gives KindCheck.
func (r *Check) Kind() Kind { return KindCheck }

// Copy gives a shallow copy.
func (r *Check) Copy() Record { c := *r; return &c }

// Kind gives KindWaterPlan.
func (r *WaterPlan) Kind() Kind { return KindWaterPlan }

// Copy gives a shallow copy.
func (r *WaterPlan) Copy() Record { c := *r; return &c }

// Kind gives KindWaterSource.
func (r *WaterSource) Kind() Kind { return KindWaterSource }

// Copy gives a shallow copy.
func (r *WaterSource) Copy() Record { c := *r; return &c }

// Kind gives KindReading.
func (r *Reading) Kind() Kind { return KindReading }

// Copy gives a shallow copy.
func (r *Reading) Copy() Record { c := *r; return &c }

// Kind gives KindNitrate.
func (r *Nitrate) Kind() Kind { return KindNitrate }

// Copy gives a shallow copy.
func (r *Nitrate) Copy() Record { c := *r; return &c }

// Kind gives KindFilter.
func (r *Filter) Kind() Kind { return KindFilter }

// Copy gives a shallow copy.
func (r *Filter) Copy() Record { c := *r; return &c }
