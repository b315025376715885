package lualib_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/plan"
)

// checked runs a notebook without problems and gives its one check of a name.
func checked(t *testing.T, text, name string) *plan.Check {
	t.Helper()
	r := good(t, text)
	var names []string
	var found *plan.Check
	for _, k := range r.Plan.Checks {
		if names = append(names, k.Name); k.Name == name {
			require.Nil(t, found, "two checks of the name %q", name)
			found = k
		}
	}
	require.NotNil(t, found, "no check %q among %q", name, names)
	require.True(t, found.ByLibrary)
	return found
}

// unchecked runs a notebook without problems that must not have a check of a name.
func unchecked(t *testing.T, text, name string) {
	t.Helper()
	for _, k := range good(t, text).Plan.Checks {
		require.NotEqual(t, name, k.Name)
	}
}

func northWith(code string, fields ...string) string {
	tank := strings.Join(append([]string{`name = "North", length = "120 cm", width = "50 cm", height = "50 cm"`}, fields...), ", ")
	return cell("tank", "north = tank{"+tank+"}") + cell("rest", code)
}

// TestPace: one ppt a day is usual, two are the most (common practice).
func TestPace(t *testing.T) {
	for _, c := range []struct {
		step    string
		every   string
		outcome plan.Outcome
		shows   string
	}{
		{"1 ppt", "7 d", plan.Pass, "0.1429 ppt/d"},
		{"1 ppt", "1 d", plan.Pass, "1 ppt/d"},
		{"1.25 ppt", "1 d", plan.Caution, "1.25 ppt/d"},
		{"2 ppt", "1 d", plan.Caution, "2 ppt/d"},
		{"2.5 ppt", "1 d", plan.Fail, "2.5 ppt/d"},
		{"1 ppt", "6 h", plan.Fail, "4 ppt/d"},
		{"10 ppt", "3 d", plan.Fail, "3.333 ppt/d"},
	} {
		for _, way := range []string{`from = "0 ppt", to = "10 ppt"`, `from = "12 ppt", to = "2 ppt", change = "90 %"`, `to = "10 ppt", method = "dissolve in sump"`} {
			if !strings.Contains(way, "dissolve") && !strings.Contains(way, "change") {
				way += `, change = "50 %"`
			}
			k := checked(t, cell("plan", fmt.Sprintf(`salinity.plan{water = "200 L", %s, step_at_most = %q, every = %q, at_most = "42 ppt/d"}`, way, c.step, c.every)), "Pace of salinity, water of 200 L")
			require.Equal(t, c.outcome, k.Outcome, "%s every %s, %s", c.step, c.every, way)
			require.Equal(t, c.shows+"; filter bacteria are the slower partner: 1 ppt a day is the usual pace for all species, 2 the most (common practice); test ammonia and nitrite daily", k.Sentence)
			require.InDelta(t, 2, k.AtMost.Q.MustIn("ppt/d"), 1e-12)
			require.InDelta(t, 1, k.CautionAt.Q.MustIn("ppt/d"), 1e-12)
		}
	}
	unchecked(t, cell("plan", `salinity.plan{water = "200 L", from = "5 ppt", to = "5 ppt"}`), "Pace of salinity, water of 200 L")
}

// TestPlanPassesALimit: a limit of keeping practice is a fail with day, date and
// species; one that rests on the class of water alone is no more than a caution.
func TestPlanPassesALimit(t *testing.T) {
	const steps = `salinity.plan{tank = north, to = "10 ppt", every = "4 d", start = "2027-03-06"}`
	k := checked(t, northWith(steps+` stocking.fish{tank = "North", species = "Brachygobius doriae", count = 10}`), "Bumblebee goby through the salinity plan of North")
	require.Equal(t, plan.Fail, k.Outcome)
	require.Equal(t, "on day 32 (2027-04-07) the water comes to 9 ppt: Bumblebee goby bears 0 to 8 ppt", k.Sentence)
	require.Equal(t, "North", k.Tank)
	k = checked(t, northWith(steps+` stocking.fish{tank = north, species = "Danio rerio", count = 10}`), "Zebrafish through the salinity plan of North")
	require.Equal(t, plan.Caution, k.Outcome)
	require.Equal(t, "on day 0 (2027-03-06) the water comes to 1 ppt: tolerance not known; the table's 0 to 0.5 ppt for Zebrafish is by class of water only", k.Sentence)
	k = checked(t, northWith(steps+` stocking.fish{tank = north, species = "guppy", count = 5}`), "Guppy through the salinity plan of North")
	require.Equal(t, plan.Pass, k.Outcome)
	require.Contains(t, k.Sentence, "every step stays within 0 to 15 ppt (keeping practice)")
	undated := `salinity.plan{water = "200 L", from = "20 ppt", to = "2 ppt", change = "60 %", step_at_most = "2 ppt", species = "Dichotomyctere nigroviridis"}`
	k = checked(t, cell("plan", undated), "Green spotted puffer through the salinity plan of water of 200 L")
	require.Equal(t, plan.Fail, k.Outcome)
	require.Equal(t, "on day 56 the water comes to 2 ppt: Green spotted puffer bears 4 to 30 ppt", k.Sentence)
}

// TestPlanSpecies: those named and those recorded in the tank, each once, and
// none of another tank.
func TestPlanSpecies(t *testing.T) {
	r := good(t, northWith(`salinity.plan{tank = north, to = "5 ppt", species = "Guppy; Platy"}
stocking.fish{tank = north, species = "Poecilia reticulata", count = 5}
stocking.fish{tank = "North", species = "Poecilia reticulata", count = 2}
tank{name = "South", length = "90 cm", width = "45 cm", height = "45 cm"}
stocking.fish{tank = "South", species = "Danio rerio", count = 10}`))
	var names []string
	for _, k := range r.Plan.Checks {
		if strings.Contains(k.Name, "through") {
			names = append(names, k.Name)
		}
	}
	require.Equal(t, []string{"Guppy through the salinity plan of North", "Platy through the salinity plan of North"}, names)
}

// TestMixBought: what is there against what the plan takes, in any unit.
func TestMixBought(t *testing.T) {
	const name = "Salt mix for the plan of water of 200 L"
	for bought, want := range map[string]plan.Outcome{"0 kg": plan.Fail, "1 kg": plan.Fail, "5 lb": plan.Fail, "15 lb": plan.Pass, "9000 g": plan.Pass} {
		k := checked(t, cell("plan", fmt.Sprintf(`salinity.plan{water = "200 L", to = "8 ppt", bought = %q}`, bought)), name)
		require.Equal(t, want, k.Outcome, bought)
	}
	k := checked(t, cell("plan", `salinity.plan{water = "200 L", to = "8 ppt", bought = "1 kg"}`), name)
	missing := k.AtLeast.Q.MustIn("kg") - 1
	require.Contains(t, k.Sentence, fmt.Sprintf("buy %.4g kg more before the first step", missing))
	unchecked(t, cell("plan", `salinity.plan{water = "200 L", to = "8 ppt"}`), name)
}

// TestFishWater compares the tank's own water with what its fish are kept in.
func TestFishWater(t *testing.T) {
	const name = "Water for the fish of North"
	for _, c := range []struct {
		species, salinity, temperature string
		outcome                        plan.Outcome
		says                           string
	}{
		{"Poecilia reticulata", "5 ppt", "25 degC", plan.Pass, "25 degC and 5 ppt suit the ranges in which its fish are kept; hardness, pH and company are not compared here"},
		{"Poecilia reticulata", "15 ppt", "28 degC", plan.Pass, "suit the ranges"},
		{"Poecilia reticulata", "16 ppt", "25 degC", plan.Fail, "Guppy bears 0 to 15 ppt"},
		{"Poecilia reticulata", "5 ppt", "30 degC", plan.Caution, "30 degC, 5 ppt: Guppy is kept at 22 to 28 degC"},
		{"Danio rerio", "2 ppt", "24 degC", plan.Caution, "24 degC, 2 ppt: tolerance not known; the table's 0 to 0.5 ppt for Zebrafish is by class of water only"},
		{"Amphiprion ocellaris", "10 ppt", "26 degC", plan.Fail, "Ocellaris clownfish bears 30 to 36 ppt"},
		{"Poecilia reticulata", "16 ppt", "30 degC", plan.Fail, "Guppy is kept at 22 to 28 degC; Guppy bears 0 to 15 ppt"},
	} {
		k := checked(t, northWith(fmt.Sprintf(`stocking.fish{tank = "North", species = %q, count = 5}`, c.species), fmt.Sprintf("salinity = %q, temperature = %q", c.salinity, c.temperature)), name)
		require.Equal(t, c.outcome, k.Outcome, "%+v", c)
		require.Contains(t, k.Sentence, c.says)
	}
	unchecked(t, northWith(`x = 1`), name)
}

// TestFilterFeed: what the fish eat against what the media carry. Of the two
// ranges, one wholly inside the other's reach is a pass, one wholly outside a
// fail, and what overlaps is a caution.
func TestFilterFeed(t *testing.T) {
	const name = "Filter for the feed of North"
	fish := `f = stocking.fish{tank = north, species = "Poecilia reticulata", count = 40}`
	feed := good(t, northWith(fish+` low, high = f.feed_low:number "g/d", f.feed_high:number "g/d"`))
	low, high := value(t, feed, "low").(float64), value(t, feed, "high").(float64)
	one := good(t, northWith(`c = filter.capacity{media = "moving-bed", volume = "1 L", surface = "500 m2/m3", protein = "42 %"} low, high = c.feed_low:number "g/d", c.feed_high:number "g/d"`))
	perLow, perHigh := value(t, one, "low").(float64), value(t, one, "high").(float64)
	for litres, want := range map[float64]plan.Outcome{
		1.01 * high / perLow: plan.Pass, 0.99 * high / perLow: plan.Caution, 1.01 * low / perHigh: plan.Caution, 0.99 * low / perHigh: plan.Fail,
	} {
		k := checked(t, northWith(fish+fmt.Sprintf("\nfilter.capacity{tank = north, media = \"moving-bed\", volume = \"%.9g L\", surface = \"500 m2/m3\", protein = \"42 %%\"}", litres)), name)
		require.Equal(t, want, k.Outcome, "%g L", litres)
		require.Contains(t, k.Sentence, "the fish eat ")
		require.Equal(t, "North", k.Tank)
	}
	two := fmt.Sprintf("\nfor i = 1, 2 do filter.capacity{tank = \"North\", media = \"moving-bed\", volume = \"%.9g L\", surface = \"500 m2/m3\", protein = \"42 %%\"} end", 0.51*high/perLow)
	require.Equal(t, plan.Pass, checked(t, northWith(fish+two), name).Outcome, "two filters carry together")
	unchecked(t, northWith(fish), name)
	unchecked(t, northWith(`filter.capacity{tank = north, media = "live-rock", volume = "12 kg", protein = "42 %"}`), name)
}

// TestTanksThatNobodyRecorded: every record that names a tank is told of.
func TestTanksThatNobodyRecorded(t *testing.T) {
	for call, subject := range map[string]string{
		`salinity.plan{tank = "Nort", water = "200 L", to = "1 ppt"}`:                              "salinity.plan",
		`water.reading{tank = "Nort", date = "2027-03-06"}`:                                        "water.reading",
		`water.nitrate{tank = "Nort", water = "200 L", production = "1 g/d", change = "20 %"}`:     "water.nitrate",
		`filter.capacity{tank = "Nort", media = "moving-bed", volume = "10 L", protein = "42 %"}`:  "filter.capacity",
		`salinity.plan{tank = "Nort", water = "200 L", to = "1 ppt", method = "dissolve in sump"}`: "salinity.plan",
	} {
		r := runText(t, northWith(call))
		require.NotEmpty(t, r.Problems)
		told := strings.Join(problems(r), "\n")
		require.Contains(t, told, subject+`: tank: got "Nort", a tank that nothing records`)
		require.Contains(t, told, `did you mean "North"?`)
	}
	twice := runText(t, northWith(`salinity.plan{tank = north, to = "1 ppt"} salinity.plan{tank = north, to = "1 ppt"}`))
	require.Contains(t, strings.Join(problems(twice), "\n"), "got a second salinity plan for North, want one")
	sources := badCell(t, `water.source{name = "Tap"} water.source{name = "Tap"}`)
	require.Equal(t, `got a second water source named "Tap", want one`, sources.Message)
}
