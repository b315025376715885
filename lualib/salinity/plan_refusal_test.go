package salinity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestPlanRefusals(t *testing.T) {
	tests := []struct {
		change func(*Transition)
		want   string
	}{
		{func(p *Transition) { p.WaterM3 = 0 }, "volume: got 0 m3, want more than 0 and at most 10000 m3"},
		{func(p *Transition) { p.WaterFraction = 0.7 }, "water in the mix: got 0.7 of its mass, want 0 to 0.5 of its mass"},
		{func(p *Transition) { p.FromPSU = -1 }, "from: got -1 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.ToPSU = 50 }, "to: got 50 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.SourcePSU = 50 }, "source: got 50 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.MixMaxPSU = 60 }, "new water at most: got 60 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.MixMaxPSU = 10 }, "to: got 12 PSU, want at most the 10 PSU that new water may have"},
		{func(p *Transition) { p.TemperatureC = 77 }, "temperature: got 77 degC, want -2 to 40 degC"},
		{func(p *Transition) { p.EveryDays = 0 }, "every: got 0 d, want more than 0 and at most 365 d"},
		{func(p *Transition) { p.Scale = At(77) }, "reference temperature of the sample: got 77 degC, want -2 to 40 degC"},
		{func(p *Transition) { p.AtMostPerDayPSU, p.StepAtMostPSU = 0, 0 }, "limits: got none, want a most per day, a most per step, or both"},
		{func(p *Transition) { p.AtMostPerDayPSU = -1 }, "at most per day: got -1 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.StepAtMostPSU = 99 }, "step at most: got 99 PSU, want 0 to 42 PSU"},
		{func(p *Transition) { p.Change = 1.5 }, "change: got 1.5 of the water, want more than 0 and at most 1 of the water"},
		{func(p *Transition) { p.Dissolve = true }, "change: got 0.2 of the water, want none drawn where the mix is dissolved in the tank's own water"},
		{func(p *Transition) { p.Dissolve, p.Change, p.ToPSU = true, 0, 0.1 }, "to: got 0.1 PSU, want at least the 0.4 PSU of now; salt cannot lower salinity: change water instead"},
		{func(p *Transition) { p.FromPSU, p.ToPSU, p.SourcePSU = 12, 1, 2 }, "source: got 2 PSU, want at most the 1 PSU that the tank is to reach; take fresher source water"},
		{func(p *Transition) { p.StepAtMostPSU = 0.001 }, "steps: got 11600 of at most 0.001 PSU, want at most 1000; raise the limits or step less often"},
		{func(p *Transition) { p.SourcePSU = 20 }, "new water: got 10.0106 PSU for the step from 0.4 to 2.33333 PSU, want 20 PSU of the source to 42 PSU; change a smaller share or take fresher source water"},
	}
	for _, test := range tests {
		plan := brackish()
		test.change(&plan)
		_, err := Plan(plan)
		require.EqualError(t, err, test.want)
	}
}
