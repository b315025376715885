package salinity

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// brackish is a tank on its way from fresh to brackish by weekly changes.
func brackish() Transition {
	return Transition{
		WaterM3: 1.1, FromPSU: 0.4, ToPSU: 12, TemperatureC: 25, Change: 0.2, EveryDays: 7,
		AtMostPerDayPSU: 0.5, StepAtMostPSU: 2, SourcePSU: 0.3, WaterFraction: 0.08, Scale: At(25),
	}
}

// follow replays a course on masses of salt and water alone: it draws, weighs
// and pours what the steps say, and looks at what is in the tank.
func follow(t *testing.T, plan Transition, course Course) {
	t.Helper()
	kg := plan.WaterM3 * density90(plan.FromPSU, plan.TemperatureC)
	salt := kg * plan.FromPSU / 1000
	var sum Totals
	for i, s := range course.Steps {
		require.Equal(t, i+1, s.Number)
		require.InDelta(t, float64(i)*plan.EveryDays, s.Day, 1e-9)
		require.InDelta(t, 1000*salt/kg, s.BeforePSU, 1e-9)
		volume := kg / density90(1000*salt/kg, plan.TemperatureC)
		salt, kg = salt*(1-s.DrawM3/volume), kg*(1-s.DrawM3/volume)
		salt, kg = salt+s.Batch.MixKg*(1-plan.WaterFraction), kg+s.Batch.MixKg
		if !plan.Dissolve {
			source := s.Batch.SourceM3 * density90(plan.SourcePSU, plan.TemperatureC)
			salt, kg = salt+source*plan.SourcePSU/1000, kg+source
			sum.DrawM3, sum.NewM3, sum.SourceM3 = sum.DrawM3+s.DrawM3, sum.NewM3+s.Batch.M3, sum.SourceM3+s.Batch.SourceM3
			require.InDelta(t, plan.WaterM3, s.TankM3, 1e-9)
			require.InDelta(t, s.DrawM3, s.Batch.M3, 0.002*plan.WaterM3)
		}
		require.InEpsilon(t, kg, s.TankKg, 1e-9)
		require.InDelta(t, 1000*salt/kg, s.AfterPSU, 1e-9)
		require.InEpsilon(t, kg/s.DensityKgPerM3, s.TankM3, 1e-9)
		sum.MixKg, sum.SaltKg = sum.MixKg+s.Batch.MixKg, sum.SaltKg+s.Batch.SaltKg
		requireTotals(t, sum, s.SoFar)
		requireWithinLimits(t, plan, s)
	}
	requireTotals(t, sum, course.Total)
	require.Equal(t, plan.ToPSU, course.Steps[len(course.Steps)-1].AfterPSU)
}

func requireTotals(t *testing.T, want, got Totals) {
	t.Helper()
	require.InDelta(t, want.MixKg, got.MixKg, 1e-9)
	require.InDelta(t, want.SaltKg, got.SaltKg, 1e-9)
	require.InDelta(t, want.DrawM3, got.DrawM3, 1e-9)
	require.InDelta(t, want.NewM3, got.NewM3, 1e-9)
	require.InDelta(t, want.SourceM3, got.SourceM3, 1e-9)
}

func requireWithinLimits(t *testing.T, plan Transition, s Step) {
	t.Helper()
	step := math.Abs(s.AfterPSU - s.BeforePSU)
	if plan.StepAtMostPSU > 0 {
		require.LessOrEqual(t, step, plan.StepAtMostPSU+1e-9)
	}
	if plan.AtMostPerDayPSU > 0 {
		require.LessOrEqual(t, step, plan.AtMostPerDayPSU*plan.EveryDays+1e-9)
	}
	if !plan.Dissolve {
		require.LessOrEqual(t, s.Batch.PSU, plan.mixMax()+1e-9)
		require.GreaterOrEqual(t, s.Batch.PSU, plan.SourcePSU-1e-9)
		require.GreaterOrEqual(t, s.Batch.MixKg, 0.0)
	}
}

func TestPlanByWaterChanges(t *testing.T) {
	course, err := Plan(brackish())
	require.NoError(t, err)
	require.Len(t, course.Steps, 6) // 11.6 in steps of at most 2
	require.InDelta(t, 11.6/6, course.StepPSU, 1e-12)
	require.InDelta(t, 35, course.Days, 0)
	follow(t, brackish(), course)
	first := course.Steps[0]
	require.InDelta(t, 0.22, first.DrawM3, 1e-12)
	// The shortcut for equal densities, S + step/share, is close.
	require.InEpsilon(t, 0.4+course.StepPSU/0.2, first.Batch.PSU, 0.01)
	sg, err := ToSG(12, At(25))
	require.NoError(t, err)
	require.InDelta(t, sg, course.Steps[5].SG, 1e-15)
	once, err := AddMix(1.1, 0.4, 12, 25, 0.08)
	require.NoError(t, err)
	require.InDelta(t, once.MixKg, course.AtOnce.MixKg, 1e-12)
	require.Greater(t, course.Total.MixKg, course.AtOnce.MixKg) // salt leaves with the water drawn
}

func TestPlanByDissolving(t *testing.T) {
	plan := brackish()
	plan.Dissolve, plan.Change, plan.EveryDays = true, 0, 1
	course, err := Plan(plan)
	require.NoError(t, err)
	require.Len(t, course.Steps, 24) // half a PSU a day
	follow(t, plan, course)
	// Nothing is drawn, so many steps take what one would.
	require.InDelta(t, course.AtOnce.MixKg, course.Total.MixKg, 1e-9)
	require.InDelta(t, course.AtOnce.SaltKg, course.Total.SaltKg, 1e-9)
	require.Zero(t, course.Total.DrawM3+course.Total.NewM3+course.Total.SourceM3)
}

func TestPlanDownwards(t *testing.T) {
	plan := brackish()
	plan.FromPSU, plan.ToPSU, plan.SourcePSU, plan.StepAtMostPSU = 35, 15, 0.3, 5
	plan.Change = 0.3
	course, err := Plan(plan)
	require.NoError(t, err)
	require.Len(t, course.Steps, 6) // 20 in steps of at most 3.5
	require.Negative(t, course.StepPSU)
	follow(t, plan, course)
	once, err := ReplaceM3(1.1, 35, 15, 0.3, 25)
	require.NoError(t, err)
	require.InDelta(t, once, course.AtOnce.ReplaceM3, 1e-12)
	require.Zero(t, course.AtOnce.MixKg)
}

// Random wishes: whatever is planned conserves salt and water, keeps its limits
// and ends exactly at the target; what cannot be planned says so.
func TestPlansConserveSaltAndWater(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	planned, refused := 0, 0
	for range 1500 {
		plan := Transition{
			WaterM3: 0.05 + 20*random.Float64(), FromPSU: MaxPSU * random.Float64(), ToPSU: 40 * random.Float64(),
			TemperatureC: 40 * random.Float64(), Change: random.Float64(), EveryDays: float64(1 + random.Intn(14)),
			AtMostPerDayPSU: 2 * random.Float64(), StepAtMostPSU: 0.1 + 4*random.Float64(), SourcePSU: 2 * random.Float64(),
			WaterFraction: 0.2 * random.Float64(), Scale: At(20),
		}
		if random.Intn(3) == 0 && plan.ToPSU > plan.FromPSU {
			plan.Dissolve, plan.Change = true, 0
		}
		course, err := Plan(plan)
		if err != nil {
			refused++
			require.Regexp(t, "^(change|source|new water|steps): got ", err.Error())
			continue
		}
		planned++
		follow(t, plan, course)
	}
	require.Greater(t, planned, 500)
	require.Greater(t, refused, 50)
}

// The share that a refusal names is enough, and a thousandth less is not.
func TestRefusedShareIsTheLeast(t *testing.T) {
	tests := []struct {
		from, to, source, mixMax, enough float64
		want                             string
	}{
		{25, 35, 0, 0, 0.125, "change: got 0.01 of the water, want at least 0.125: the step from 25 to 26 PSU takes new water of at most 42 PSU; raise the share or take smaller steps"},
		{25, 35, 0, 36, 0.5, "change: got 0.01 of the water, want at least 0.5: the step from 25 to 26 PSU takes new water of at most 36 PSU; raise the share or take smaller steps"},
		{25, 35, 0, 35, 1, "change: got 0.01 of the water, want at least 1: the step from 25 to 26 PSU takes new water of at most 35 PSU; raise the share or take smaller steps"},
		{35, 5, 0, 0, 0.168, "change: got 0.01 of the water, want at least 0.168: the step from 35 to 34 PSU takes new water of at least 0 PSU; raise the share or take smaller steps"},
	}
	for _, test := range tests {
		plan := brackish()
		plan.FromPSU, plan.ToPSU, plan.SourcePSU, plan.MixMaxPSU, plan.StepAtMostPSU = test.from, test.to, test.source, test.mixMax, 1
		plan.Change = 0.01
		_, err := Plan(plan)
		require.EqualError(t, err, test.want)
		plan.Change = test.enough
		course, err := Plan(plan)
		require.NoError(t, err)
		follow(t, plan, course)
		plan.Change = test.enough - 0.001
		_, err = Plan(plan)
		require.ErrorContains(t, err, "change: got ")
	}
}

// Three tenths in tenths are three steps, and no way is no steps.
func TestPlanCountsSteps(t *testing.T) {
	plan := brackish()
	plan.FromPSU, plan.ToPSU, plan.StepAtMostPSU, plan.AtMostPerDayPSU = 0.8, 1.1, 0.1, 0
	course, err := Plan(plan)
	require.NoError(t, err)
	require.Len(t, course.Steps, 3)
	plan.ToPSU = 0.8
	course, err = Plan(plan)
	require.NoError(t, err)
	require.Equal(t, Course{}, course)
}
