package salinity

// Step is one step of a Course.
type Step struct {
	// Number counts from 1; Day is the time since the first step, days.
	Number int
	Day    float64
	// BeforePSU and AfterPSU are the tank's salinity; SG, on the transition's
	// scale, and DensityKgPerM3, at the tank's temperature, are those after.
	BeforePSU, AfterPSU float64
	SG, DensityKgPerM3  float64
	// DrawM3 is the water to draw, before the new water goes in.
	DrawM3 float64
	// Batch is what to weigh and mix: the new water or, where the mix is
	// dissolved in the tank, the mix alone and the tank's own water.
	Batch Batch
	// TankM3 and TankKg are the tank's water after the step.
	TankM3, TankKg float64
	// SoFar sums the steps up to and with this one.
	SoFar Totals
}

// Totals are sums over steps.
type Totals struct {
	// MixKg is the mix weighed, SaltKg the dry salt in it.
	MixKg, SaltKg float64
	// DrawM3 is the water drawn, NewM3 the new water mixed and SourceM3 the
	// source water that went into it; all 0 where the mix is dissolved in the
	// tank's own water.
	DrawM3, NewM3, SourceM3 float64
}

// Course is the way from one salinity to another, step by step.
type Course struct {
	Steps []Step
	// StepPSU is the change of each step, below 0 where salinity falls.
	StepPSU float64
	// Days is the time from the first step to the last.
	Days  float64
	Total Totals
	// AtOnce is the same change in one go, for comparison only.
	AtOnce AtOnce
}

// AtOnce is a whole change of salinity in one go.
type AtOnce struct {
	// MixKg and SaltKg raise the tank's own water, none of it drawn.
	MixKg, SaltKg float64
	// ReplaceM3 is the water to replace by source water to lower the salinity.
	ReplaceM3 float64
}

// with adds a step to the sums.
func (t Totals) with(s Step, changed bool) Totals {
	t.MixKg += s.Batch.MixKg
	t.SaltKg += s.Batch.SaltKg
	if changed {
		t.DrawM3 += s.DrawM3
		t.NewM3 += s.Batch.M3
		t.SourceM3 += s.Batch.SourceM3
	}
	return t
}
