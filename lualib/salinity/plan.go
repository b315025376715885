package salinity

import (
	"fmt"
	"math"
)

// Plan gives the way from one salinity to another in equal steps, the fewest
// that keep the limits, by water changes or by dissolving the mix in the
// tank's own water.
//
// Units: those of Transition and Course; day 0 is that of the first step.
// Valid range: water above 0 to 10,000 m3, 0 to 42 PSU, -2 to 40 °C, change
// above 0 to 1, steps 365 days apart at most, at most 1000 steps.
// Accuracy: salt and water balance to 1 part in 1,000,000,000, practical
// salinity read as g per kg of solution; a step may pass its limit by one part
// in 1,000,000,000,000. Limits that animals and filter bacteria bear are
// common practice, 0.5 to 2 PSU a day (from memory).
// Source: mass balance with EOS-80 densities. The new water of a step is
// (rho1 S1 - (1 - f) rho0 S0)/(rho1 - (1 - f) rho0), which for equal densities
// is the shortcut S0 + (S1 - S0)/f.
func Plan(t Transition) (Course, error) {
	if err := t.check(); err != nil {
		return Course{}, err
	}
	count, err := t.steps()
	if err != nil {
		return Course{}, err
	}
	course := Course{AtOnce: t.atOnce()}
	if count == 0 {
		return course, nil
	}
	course.StepPSU = (t.ToPSU - t.FromPSU) / float64(count)
	course.Days = float64(count-1) * t.EveryDays
	if !t.Dissolve {
		if err := t.checkShare(count); err != nil {
			return Course{}, err
		}
	}
	tankKg := t.WaterM3 * density90(t.FromPSU, t.TemperatureC)
	for i := range count {
		step := t.step(i, count, tankKg)
		if err := t.checkBatch(step); err != nil {
			return Course{}, err
		}
		course.Total = course.Total.with(step, !t.Dissolve)
		step.SoFar = course.Total
		course.Steps = append(course.Steps, step)
		tankKg = step.TankKg
	}
	return course, nil
}

// salinityAfter is the tank's salinity after i of count steps; the ends are
// exact.
func (t Transition) salinityAfter(i, count int) float64 {
	if i == count {
		return t.ToPSU
	}
	return t.FromPSU + (t.ToPSU-t.FromPSU)*float64(i)/float64(count)
}

// step works out one step on a tank that holds a mass of water.
func (t Transition) step(i, count int, tankKg float64) Step {
	s := Step{
		Number: i + 1, Day: float64(i) * t.EveryDays,
		BeforePSU: t.salinityAfter(i, count), AfterPSU: t.salinityAfter(i+1, count),
	}
	s.SG, s.DensityKgPerM3 = t.Scale.sg(s.AfterPSU), density90(s.AfterPSU, t.TemperatureC)
	if t.Dissolve {
		s.Batch = batchInto(tankKg, s.BeforePSU, s.AfterPSU, t.TemperatureC, t.WaterFraction)
		s.TankKg, s.TankM3 = s.Batch.Kg, s.Batch.M3
		return s
	}
	s.DrawM3 = t.Change * t.WaterM3
	s.TankM3, s.TankKg = t.WaterM3, t.WaterM3*s.DensityKgPerM3
	stay := (1 - t.Change) * tankKg
	newKg := s.TankKg - stay
	newPSU := (s.TankKg*s.AfterPSU - stay*s.BeforePSU) / newKg
	s.Batch = batchOf(newKg, t.SourcePSU, newPSU, t.TemperatureC, t.WaterFraction)
	return s
}

// checkShare refuses a change so small that the new water would have to be
// saltier than can be mixed, or fresher than the source.
func (t Transition) checkShare(count int) error {
	limit, word := t.SourcePSU, "at least"
	if t.rising() {
		limit, word = t.mixMax(), "at most"
	}
	for i := range count {
		before, after := t.salinityAfter(i, count), t.salinityAfter(i+1, count)
		need := t.leastShare(before, after, limit)
		if t.Change >= need*(1-1e-12) {
			continue
		}
		// The worst step is the last: there the limit is nearest.
		worst := t.leastShare(t.salinityAfter(count-1, count), t.ToPSU, limit)
		return fmt.Errorf("change: got %.6g of the water, want at least %g: the step from %.6g to %.6g PSU takes new water of %s %.6g PSU; raise the share or take smaller steps",
			t.Change, math.Ceil(1000*max(need, worst))/1000, before, after, word, limit)
	}
	return nil
}

// leastShare is the share of the volume that has to be changed for new water
// of the limit's salinity to make the step.
func (t Transition) leastShare(before, after, limit float64) float64 {
	stay := (limit - after) * density90(after, t.TemperatureC) / ((limit - before) * density90(before, t.TemperatureC))
	return 1 - stay
}

// checkBatch refuses new water on the wrong side: fresher than the source on
// the way up, saltier than can be mixed on the way down.
func (t Transition) checkBatch(s Step) error {
	const hair = 1e-9
	if t.Dissolve || s.Batch.PSU >= t.SourcePSU-hair && s.Batch.PSU <= t.mixMax()+hair {
		return nil
	}
	return fmt.Errorf("new water: got %.6g PSU for the step from %.6g to %.6g PSU, want %.6g PSU of the source to %.6g PSU; change a smaller share or take fresher source water",
		s.Batch.PSU, s.BeforePSU, s.AfterPSU, t.SourcePSU, t.mixMax())
}

// atOnce is the whole change in one go.
func (t Transition) atOnce() AtOnce {
	if !t.rising() {
		return AtOnce{ReplaceM3: t.WaterM3 * replaced(t.FromPSU, t.ToPSU, t.SourcePSU, t.TemperatureC)}
	}
	kg := t.WaterM3 * density90(t.FromPSU, t.TemperatureC)
	b := batchInto(kg, t.FromPSU, t.ToPSU, t.TemperatureC, t.WaterFraction)
	return AtOnce{MixKg: b.MixKg, SaltKg: b.SaltKg}
}
