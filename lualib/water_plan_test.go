package lualib_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/salinity"
	"weirbook/notebook"
	"weirbook/notebook/plan"
)

const northCell = `north = tank{name = "North", length = "120 cm", width = "50 cm", height = "50 cm", salinity = "1 ppt", temperature = "26 degC"}`

// planned runs a salinity plan of named arguments without a tank, and gives its
// record.
func planned(t *testing.T, args string) (*notebook.Result, *plan.WaterPlan) {
	t.Helper()
	r := goodCell(t, "p = salinity.plan{"+args+"}")
	require.Len(t, r.Plan.WaterPlans, 1)
	return r, r.Plan.WaterPlans[0]
}

func rho(t *testing.T, psu, c float64) float64 {
	t.Helper()
	density, err := salinity.DensityKgPerM3(psu, c)
	require.NoError(t, err)
	return density
}

// TestPlanConservesByChanges follows the records step by step: what is drawn,
// weighed and poured in must give the salt and the water of the next step.
func TestPlanConservesByChanges(t *testing.T) {
	for _, c := range []struct {
		args                     string
		degC, source, wet, final float64
	}{
		{`water = "200 L", to = "13 ppt", change = "20 %", every = "3 d"`, 25, 0, 0, 13},
		{`water = "200 L", from = "2 ppt", to = "9 ppt", change = "35 %", temperature = "18 degC", source = "0.4 ppt", moisture = "8 %"`, 18, 0.4, 0.08, 9},
		{`water = "52 gal", from = "34 ppt", to = "20 ppt", change = "12 %", source = "0.2 ppt", moisture = "5 %"`, 25, 0.2, 0.05, 20},
	} {
		_, w := planned(t, c.args)
		v := w.Water.MustIn("m3")
		mixes, drawn := 0.0, 0.0
		for i, s := range w.Steps {
			before, after := s.Before.MustIn("ppt"), s.After.MustIn("ppt")
			mix, draw := s.Salt.MustIn("kg"), s.Draw.MustIn("m3")
			stays := (v - draw) * rho(t, before, c.degC)
			tank := v * rho(t, after, c.degC)
			poured := tank - stays
			salt := mix*(1-c.wet) + (poured-mix)*c.source/1000
			require.InEpsilon(t, tank*after/1000, stays*before/1000+salt, 1e-6, "salt of step %d of %s", i+1, c.args)
			require.InEpsilon(t, poured/rho(t, 1000*salt/poured, c.degC), s.Mix.MustIn("m3"), 1e-6, "water of step %d of %s", i+1, c.args)
			require.InEpsilon(t, rho(t, after, c.degC), s.Density.MustIn("kg/m3"), 1e-12)
			if i > 0 {
				require.InDelta(t, w.Steps[i-1].After.MustIn("ppt"), before, 1e-12)
			}
			mixes, drawn = mixes+mix, drawn+draw
		}
		require.InDelta(t, c.final, w.Steps[len(w.Steps)-1].After.MustIn("ppt"), 1e-12)
		require.InDelta(t, mixes, w.Salt.MustIn("kg"), 1e-9)
		require.InDelta(t, drawn, w.Draw.MustIn("m3"), 1e-9)
	}
}

// TestPlanConservesByDissolving: all water stays, each step adds its mix.
func TestPlanConservesByDissolving(t *testing.T) {
	r, w := planned(t, `water = "300 L", from = "1 ppt", to = "11 ppt", method = "dissolve in sump", every = "2 d", moisture = "10 %", temperature = "22 degC"`)
	kg, total := 0.3*rho(t, 1, 22), 0.0
	for _, s := range w.Steps {
		mix := s.Salt.MustIn("kg")
		salt := kg*s.Before.MustIn("ppt")/1000 + 0.9*mix
		kg, total = kg+mix, total+mix
		require.InEpsilon(t, kg*s.After.MustIn("ppt")/1000, salt, 1e-6)
		require.Zero(t, s.Draw.MustIn("L"))
		require.Zero(t, s.Mix.MustIn("L"))
	}
	require.Len(t, w.Steps, 10)
	require.InEpsilon(t, total, w.Salt.MustIn("kg"), 1e-9)
	require.InEpsilon(t, total, w.Direct.MustIn("kg"), 1e-9, "nothing is drawn, so at once takes as much as in steps")
	require.False(t, w.Change.Has)
	require.Equal(t, "dissolve in sump", w.Method)
	require.Zero(t, in(t, goodCell(t, `z = salinity.plan{water = "300 L", to = "3 ppt", method = "dissolve in sump", price = "4 EUR/kg"}.final_salt`), "z", "kg"))
	require.Contains(t, value(t, r, "p").(*notebook.Data).Of, "salinity.plan")
}

// TestPlanAtOnce: the one-step answer stands beside the plan, by hand.
func TestPlanAtOnce(t *testing.T) {
	r, w := planned(t, `water = "200 L", to = "10 ppt"`)
	require.InEpsilon(t, 0.2*rho(t, 0, 25)*10/990, w.Direct.MustIn("kg"), 1e-9)
	require.Greater(t, w.Salt.MustIn("kg"), w.Direct.MustIn("kg"), "drawn water takes salt along")
	p := value(t, r, "p").(*notebook.Data)
	text, ok := p.Field("reads_as")
	require.True(t, ok)
	require.Equal(t, "practical salinity is taken as g of salt per kg of solution, 0.47 % below absolute salinity", text)
	down := goodCell(t, `p = salinity.plan{water = "200 L", from = "20 ppt", to = "5 ppt"} at_once, mix, salt, rise = p.direct_draw, p.direct, p.salt, p.rise`)
	gone, come := rho(t, 20, 25)*15, rho(t, 0, 25)*5
	require.InEpsilon(t, 200*gone/(gone+come), in(t, down, "at_once", "L"), 1e-9)
	require.Zero(t, in(t, down, "mix", "kg"))
	require.Positive(t, in(t, down, "salt", "kg"), "with 20 % of fresh water each time a step would be too large")
	require.InEpsilon(t, -1.0/7, in(t, down, "rise", "ppt/d"), 1e-9)
}

// TestPlanLimits: the fewest steps that keep both limits.
func TestPlanLimits(t *testing.T) {
	for args, want := range map[string]int{
		`to = "10 ppt"`: 10,
		`to = "10 ppt", step_at_most = "0.5 ppt"`:                            20,
		`to = "10 ppt", step_at_most = "3 ppt"`:                              4,
		`to = "10 ppt", step_at_most = "3 ppt", every = "1 d"`:               10,
		`to = "10 ppt", step_at_most = "3 ppt", every = "12 h"`:              20,
		`to = "10 ppt", every = "1 d", at_most = "0.5 ppt/d"`:                20,
		`to = "10 ppt", every = "2 d", at_most = "0.25 ppt/d"`:               20,
		`to = "10 ppt", every = "wk", step_at_most = "42 ppt"`:               2,
		`from = "9.7 ppt", to = "10 ppt", step_at_most = "0.1 ppt"`:          3,
		`from = "10 ppt", to = "10 ppt"`:                                     0,
		`from = "10 ppt", to = "3 ppt", change = "30 %"`:                     7,
		`to = "1.5 %", step_at_most = "5 ppt"`:                               3,
		`to = salinity.from_sg{sg = 1.010, reference = "25 degC"}`:           14,
		`to = "10 psu", method = "dissolve in sump", step_at_most = "4 ppt"`: 3,
	} {
		_, w := planned(t, `water = "200 L", `+args)
		require.Len(t, w.Steps, want, args)
		for _, s := range w.Steps {
			step := math.Abs(s.After.MustIn("ppt") - s.Before.MustIn("ppt"))
			require.LessOrEqual(t, step/w.Every.MustIn("d"), w.AtMost.MustIn("ppt/d")*(1+1e-9), args)
		}
		require.InDelta(t, float64(max(want-1, 0))*w.Every.MustIn("d"), w.Days, 1e-9, args)
	}
}

// TestPlanDates: steps are dated from the start; within a day the date stays.
func TestPlanDates(t *testing.T) {
	dates := func(args string) string {
		r, w := planned(t, `water = "200 L", to = "4 ppt", `+args)
		var list []string
		for _, s := range w.Steps {
			require.True(t, s.Date.Has)
			list = append(list, s.Date.Date.String())
		}
		require.Equal(t, list[len(list)-1], w.Finish.Date.String())
		finish, _ := value(t, r, "p").(*notebook.Data).Field("finish")
		require.Equal(t, list[len(list)-1], shown(finish))
		return strings.Join(list, " ")
	}
	require.Equal(t, "2028-02-27 2028-03-01 2028-03-04 2028-03-07", dates(`start = "2028-02-27", every = "3 d"`))
	require.Equal(t, "2027-03-06 2027-03-13 2027-03-20 2027-03-27", dates(`start = "2027-03-06"`))
	require.Equal(t, "2027-03-06 2027-03-06 2027-03-06 2027-03-07", dates(`start = "2027-03-06", every = "8 h", at_most = "3 ppt/d"`))
	_, w := planned(t, `water = "200 L", to = "4 ppt"`)
	require.False(t, w.Finish.Has)
	require.False(t, w.Steps[0].Date.Has)
}

// TestPlanByTank: a tank as a record gives water, salinity and temperature, and
// arguments come before them.
func TestPlanByTank(t *testing.T) {
	r := good(t, cell("tank", northCell)+cell("plan", `p = salinity.plan{tank = north, to = "5 ppt"}`))
	byTank, tank := r.Plan.WaterPlans[0], r.Plan.Tanks[0]
	require.Equal(t, "North", byTank.Tank)
	require.Equal(t, tank.Water.Short(), byTank.Water.Short())
	require.InDelta(t, 1, byTank.From.MustIn("ppt"), 1e-12)
	require.InEpsilon(t, rho(t, 5, 26), byTank.Steps[3].Density.MustIn("kg/m3"), 1e-12)
	same := good(t, cell("tank", northCell)+cell("plan", fmt.Sprintf(`p = salinity.plan{water = "%.15g L", from = "1 ppt", to = "5 ppt", temperature = "26 degC"}`, tank.Water.MustIn("L"))))
	require.InEpsilon(t, byTank.Salt.MustIn("kg"), same.Plan.WaterPlans[0].Salt.MustIn("kg"), 1e-12)
	require.Empty(t, same.Plan.WaterPlans[0].Tank)
	other := good(t, cell("tank", northCell)+cell("plan", `p = salinity.plan{tank = north, water = "100 L", from = "2 ppt", to = "5 ppt"}`)).Plan.WaterPlans[0]
	require.InDelta(t, 100, other.Water.MustIn("L"), 1e-9)
	require.Len(t, other.Steps, 3)
	named := good(t, cell("tank", northCell)+cell("plan", `p = salinity.plan{tank = "North", water = "100 L", to = "5 ppt"}`)).Plan.WaterPlans[0]
	require.Equal(t, "North", named.Tank)
	require.Zero(t, named.From.MustIn("ppt"), "of a name alone nothing is taken")
	p := badText(t, cell("tank", northCell)+cell("plan", `p = salinity.plan{tank = "North", to = "5 ppt"}`))
	require.Contains(t, p.Text(), "salinity.plan: water: the argument is missing, want a volume, or the tank as a record")
	require.Contains(t, p.Hint, "write tank = north")
}

// TestPlanRecords: the plan, what its mix costs from then on, and its steps as
// work in their order.
func TestPlanRecords(t *testing.T) {
	r := good(t, cell("tank", northCell)+cell("plan", `p = salinity.plan{tank = north, to = "4 ppt", every = "5 d", price = "4 EUR/kg", start = "2027-03-06", note = "slowly"}
final, price_of_all = p.final_salt, p.cost`)+cell("after", `build.step{name = "Puffers in", after = p.steps and "Salinity of North, step 3 of 3: to 4 ppt"}`))
	w := r.Plan.WaterPlans[0]
	require.Equal(t, "slowly", w.Note)
	require.InEpsilon(t, 4*w.Salt.MustIn("kg"), w.Cost.Q.MustIn("EUR"), 1e-12)
	require.InEpsilon(t, w.Cost.Q.MustIn("EUR"), in(t, r, "price_of_all", "EUR"), 1e-12)
	require.Len(t, r.Plan.Running, 1)
	running := r.Plan.Running[0]
	batch, err := salinity.NewWater(0.2*w.Water.MustIn("m3"), 0, 4, 26, 0)
	require.NoError(t, err)
	require.InEpsilon(t, batch.MixKg, in(t, r, "final", "kg"), 1e-9)
	require.InDelta(t, 4*batch.MixKg, running.Amount.MustIn("EUR"), 0.005)
	require.Equal(t, "Salt mix for water changes of North once at 4 ppt", running.Name)
	require.Equal(t, "North", running.Tank)
	require.InDelta(t, 7, running.Every.MustIn("d"), 1e-12, "the pace of the change is not that of the years after it")
	var order []string
	for i, s := range r.Plan.Steps {
		require.Equal(t, i+1, s.Order)
		order = append(order, s.Name)
		require.Equal(t, i > 0 && i < 3, s.Wait.Has, s.Name)
	}
	require.Equal(t, []string{"Salinity of North, step 1 of 3: to 2 ppt", "Salinity of North, step 2 of 3: to 3 ppt", "Salinity of North, step 3 of 3: to 4 ppt", "Puffers in"}, order)
	require.Equal(t, order[:1], r.Plan.Steps[1].After)
	require.InDelta(t, 5, r.Plan.Steps[1].Wait.Q.MustIn("d"), 1e-12)
	require.Empty(t, goodCell(t, `salinity.plan{water = "200 L", to = "4 ppt"}`).Plan.Running, "without a price nothing is paid")
	require.Empty(t, goodCell(t, `salinity.plan{water = "200 L", from = "4 ppt", to = "1 ppt", source = "1 ppt", change = "100 %", price = "4 EUR/kg"}`).Plan.Running, "source water needs no mix")
}

// TestPlanWork: the first step waits for others, and each has its work.
func TestPlanWork(t *testing.T) {
	r := good(t, cell("plan", `salinity.plan{water = "200 L", to = "3 ppt", after = "Test the filter", work = "45 min"}`)+cell("first", `build.step{name = "Test the filter", work = "1 h"}`))
	require.Equal(t, "Test the filter", r.Plan.Steps[0].Name)
	require.Equal(t, []string{"Test the filter"}, r.Plan.Steps[1].After)
	require.Equal(t, []string{r.Plan.Steps[1].Name}, r.Plan.Steps[2].After)
	for _, s := range r.Plan.Steps[1:] {
		require.InDelta(t, 45, s.Work.Q.MustIn("min"), 1e-9)
	}
}

// TestPlanSteps: the fields of each step, and its specific gravity at the
// reference asked for.
func TestPlanSteps(t *testing.T) {
	r := goodCell(t, `p = salinity.plan{water = "200 L", to = "3 ppt", start = "2027-03-06", reference = "60 degF"}
fields = {} for k in pairs(p.steps[1]) do fields[#fields + 1] = k end table.sort(fields) fields = table.concat(fields, " ")
off = 0 for _, s in ipairs(p.steps) do off = off + abs(s.sg - salinity.to_sg{salinity = s.after, reference = "60 degF"}) end
count = p.count == #p.steps`)
	require.Equal(t, "after before date day density draw mix number salt sg", value(t, r, "fields"))
	require.Zero(t, value(t, r, "off"))
	require.Equal(t, true, value(t, r, "count"))
	require.Contains(t, badCell(t, `p = salinity.plan{water = "200 L", to = "3 ppt"} print(p.step)`).Text(), "steps")
}
