package lualib_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
)

// refusal is a call of the library that must end in one error: what it says,
// and what its hint says, "" for no claim about the hint.
type refusal struct{ call, says, hint string }

// refused checks that each call ends in one error, in the one grammar.
func refused(t *testing.T, list []refusal) {
	t.Helper()
	for _, c := range list {
		p := badCell(t, "local r = "+c.call)
		require.Contains(t, p.Error(), c.says, c.call)
		require.Contains(t, p.Hint, c.hint, c.call)
		require.Equal(t, 2, p.Pos.Line, c.call)
		inGrammar(t, c.call, p.Error(), p.Hint)
	}
}

// inGrammar checks a message: the function first, what was got and what is
// wanted, lower case, no full stop, nothing of the machine.
func inGrammar(t *testing.T, call, text, hint string) {
	t.Helper()
	name, _, _ := strings.Cut(call, "{")
	require.Contains(t, text, " "+name+": ", "the function's name: %s", call)
	_, text, _ = strings.Cut(text, " "+name+": ")
	missing, unit := strings.Contains(text, "the argument is missing"), strings.Contains(text, "unknown unit")
	require.True(t, missing || unit || (strings.Contains(text, "got ") && strings.Contains(text, "want ")) || strings.Contains(text, "the function does not have"), "%s: %s", call, text)
	for _, words := range []string{text, hint} {
		require.False(t, strings.HasSuffix(words, "."), "%s: %s", call, words)
		require.NotRegexp(t, `e\+\d|%!|NaN|\bnil\b|0x`, words, call)
	}
	require.Equal(t, strings.ToLower(text[:1]), text[:1], "%s: %s", call, text)
}

// TestSalinityRefusals: outside the equation of state, and what is no salinity.
func TestSalinityRefusals(t *testing.T) {
	refused(t, []refusal{
		{`salinity.density{salinity = "43 ppt", temperature = "25 degC"}`, "salinity: got 43 ppt, want at most 42 ppt", ""},
		{`salinity.density{salinity = "-1 ppt", temperature = "25 degC"}`, "salinity: got -1 ppt, want at least 0 ppt", ""},
		{`salinity.density{salinity = "35 ppt", temperature = "41 degC"}`, "temperature: got 41 degC, want at most 40 degC", ""},
		{`salinity.density{salinity = "35 ppt", temperature = "-2.5 degC"}`, "want at least -2 degC", ""},
		{`salinity.density{salinity = 35, temperature = "20 degC"}`, "salinity: got 35 without a unit, want a salinity", `write "35 ppt"`},
		{`salinity.density{salinity = "35 g/L", temperature = "20 degC"}`, "got 35 g/L, a density or concentration; want a salinity", ""},
		{`salinity.density{salinity = "35 ppt", temperature = "20 K"}`, "a temperature difference; want a temperature", "a difference is no temperature"},
		{`salinity.salt{water = "-240 L", to = "5 ppt", temperature = "24 degC"}`, "water: got -240 L, want more than 0 L", ""},
		{`salinity.salt{water = "0 L", to = "5 ppt", temperature = "24 degC"}`, "water: got 0 L, want more than 0 L", ""},
		{`salinity.salt{water = "240 L", from = "10 ppt", to = "5 ppt", temperature = "24 degC"}`, "to: got 5 PSU, want at least the 10 PSU of now; salt cannot lower salinity: change water instead", ""},
		{`salinity.salt{water = "240 L", to = "5 ppt", temperature = "24 degC", moisture = 8}`, "moisture: got 8 without a unit, want a share", `"8 %", or 0.08`},
		{`salinity.mix{}`, "waters: got no water to mix, want at least one", "write salinity.mix{{volume"},
		{`salinity.mix{{volume = "80 L", salinity = "12 ppt"}}`, "temperature: the argument is missing", "add temperature"},
		{`salinity.mix{{volume = "80 L", salinty = "12 ppt", temperature = "20 degC"}}`, "salinty: got an argument that the function does not have", `did you mean "salinity"?`},
		{`salinity.mix{waters = {"80 L"}}`, `waters: got the text "80 L" in the list, want a table of named values`, ""},
		{`salinity.mix{{volume = "-80 L", salinity = "12 ppt", temperature = "20 degC"}}`, "volume: got -80 L, want more than 0 L", ""},
		{`salinity.topup{water = "240 L", salinity = "15 ppt", temperature = "25 degC", evaporated = "240 L"}`, "evaporated: got 240 L, want less than the 240 L of water there was", ""},
		{`salinity.topup{water = "240 L", salinity = "15 ppt", temperature = "25 degC", evaporated = "200 L"}`, "salinity after the loss: got 85.2433 PSU, want 0 to 42 PSU", ""},
		{`salinity.from_conductivity{conductivity = "120 mS/cm", temperature = "25 degC"}`, "conductivity: got 120 mS/cm, want 0 to 62.3581 mS/cm", ""},
		{`salinity.from_conductivity{conductivity = "24 mS/cm", temperature = "36 degC"}`, "temperature: got 36 degC, want at most 35 degC", ""},
		{`salinity.from_conductivity{conductivity = "24 mS", temperature = "25 degC"}`, "want a conductivity", ""},
		{`salinity.class{"50 ppt"}`, "salinity: got 50 ppt, want at most 42 ppt", ""},
	})
}

// TestMixedUpSalinities: specific gravity, ppt, percent and density are told
// apart, and the usual references of a specific gravity are named with what it
// would mean on each.
func TestMixedUpSalinities(t *testing.T) {
	const spread = "1.01 means 13.0 ppt at 60/60 degF, 13.2 ppt at 20/20 degC, 13.3 ppt at 25/25 degC, 15.5 ppt at 20/4 degC"
	const asSG = `write salinity.from_sg{sg = 1.015, reference = "25 degC"}, with the temperature that your instrument names`
	refused(t, []refusal{
		{`salinity.plan{water = "200 L", to = 1.015}`, "to: got 1.015 without a unit, want a salinity; it looks like a specific gravity", asSG},
		{`salinity.class{1.015}`, "it looks like a specific gravity", asSG},
		{`salinity.plan{water = "200 L", to = "15 %"}`, "to: got 15 %, want at most 42 ppt", `1 % of salt is 10 ppt; for parts of a thousand write "15 ppt"`},
		{`salinity.salt{water = "200 L", to = "35 %", temperature = "25 degC"}`, "to: got 35 %, want at most 42 ppt", `write "35 ppt"`},
		{`salinity.from_sg{sg = 15}`, "sg: got 15, want a specific gravity between 0.98 and 1.04", `a salinity is written "15 ppt"`},
		{`salinity.from_sg{sg = Q"15 ppt", reference = "25 degC"}`, "sg: got 0.015, want a specific gravity", `a salinity is written "15 ppt"`},
		{`salinity.from_sg{sg = 1010, reference = "25 degC"}`, "sg: got 1010, want a specific gravity", "write 1.010"},
		{`salinity.from_sg{sg = 0, reference = "25 degC"}`, "sg: got 0, want a specific gravity", "1.010"},
		{`salinity.hydrometer{reading = 15, temperature = "25 degC"}`, "reading: got 15, want a specific gravity", `"15 ppt"`},
		{`salinity.from_sg{sg = 1.010}`, "reference: the argument is missing: a specific gravity needs the temperature it is referred to; " + spread, `add reference = "25 degC", as your instrument names it`},
		{`salinity.hydrometer{reading = 1.010, temperature = "25 degC"}`, spread, `add reference = "25 degC"`},
		{`salinity.to_sg{salinity = "15 ppt"}`, "reference: the argument is missing", `add reference = "25 degC"`},
		{`salinity.from_sg{sg = 1.040, reference = "25 degC"}`, "specific gravity: got 1.04 at 25/25 degC, want 1 to 1.03169", ""},
		{`salinity.hydrometer{reading = 1.05, temperature = "18 degC", reference = "25 degC"}`, "reading: got 1.05 at 25/25 degC, want 1.00138 to 1.03352", ""},
	})
}

// TestPlanRefusals: limits that no plan can keep, and what a plan cannot be of.
func TestPlanRefusals(t *testing.T) {
	refused(t, []refusal{
		{`salinity.plan{to = "10 ppt"}`, "water: the argument is missing, want a volume, or the tank as a record", `add water = "200 L", or write tank = north`},
		{`salinity.plan{water = "-200 L", to = "10 ppt"}`, "water: got -200 L, want more than 0 L", ""},
		{`salinity.plan{water = "200 L", to = "43 ppt"}`, "to: got 43 ppt, want at most 42 ppt", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", temperature = "41 degC"}`, "temperature: got 41 degC, want at most 40 degC", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", change = "0 %"}`, "change: got 0 %, want more than 0 %", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", change = "120 %"}`, "change: got 120 %, want at most 100 %", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", change = 20}`, "change: got 20 without a unit, want a share", `write "20 %"`},
		{`salinity.plan{water = "200 L", to = "10 ppt", change = "2 %"}`, "change: got 0.02 of the water, want at least 0.03: the step from 0 to 1 PSU takes new water of at most 42 PSU", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", every = "0 d"}`, "every: got 0 d, want more than 0 d", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", at_most = "1 ppt"}`, "at_most: got 1 ppt, a bare number; want a rate per time", "ppt/d"},
		{`salinity.plan{water = "200 L", to = "10 ppt", at_most = "0 ppt/d"}`, "at_most: got 0 ppt/d, want more than 0 ppt/d", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", step_at_most = "0.001 ppt"}`, "steps: got 10000 of at most 0.001 PSU, want at most 1000", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", method = "dissolve in samp"}`, `method: got "dissolve in samp", want "water change" or "dissolve in sump"`, `did you mean "dissolve in sump"?`},
		{`salinity.plan{water = "200 L", to = "10 ppt", method = "dissolve in sump", change = "20 %"}`, "change: got a share of water to change beside the method", "leave change out"},
		{`salinity.plan{water = "200 L", from = "10 ppt", to = "5 ppt", method = "dissolve in sump"}`, "to: got 5 PSU, want at least the 10 PSU of now; salt cannot lower salinity: change water instead", ""},
		{`salinity.plan{water = "200 L", from = "10 ppt", to = "5 ppt", source = "6 ppt"}`, "source: got 6 PSU, want at most the 5 PSU that the tank is to reach", ""},
		{`salinity.plan{water = "200 L", from = "10 ppt", to = "0 ppt"}`, "change: got 0.2 of the water, want at least 1: the step from 5 to 4 PSU", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", species = "Gupy"}`, `species: got "Gupy", want a scientific or common name of the species table`, `did you mean "Guppy"?`},
		{`salinity.plan{water = "200 L", to = "10 ppt", species = {"Guppy", "wolpertinger of the woods"}}`, `species: got "wolpertinger of the woods"`, "weirbook lib species lists them"},
		{`salinity.plan{water = "200 L", to = "10 ppt", start = "6.3.2027"}`, `start: got the text "6.3.2027", want a date`, "2027-03-06"},
		{`salinity.plan{water = "200 L", to = "10 ppt", price = "4 EUR"}`, "price: got 4.00 EUR, an amount of EUR; want an amount of money per kg", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", moisture = "60 %"}`, "moisture: got 60 %, want at most 50 %", ""},
		{`salinity.plan{water = "200 L", to = "10 ppt", bought = "-1 kg"}`, "bought: got -1 kg, want at least 0 kg", ""},
	})
}

// TestWaterRefusals of the chemistry.
func TestWaterRefusals(t *testing.T) {
	refused(t, []refusal{
		{`water.ammonia{total = "0.5 mg/L", pH = 12, temperature = "25 degC"}`, "pH: got 12, want 4 to 11", ""},
		{`water.ammonia{total = "0.5 mg/L", pH = 10.5, temperature = "25 degC"}`, "pH: got 10.5, want 4 to 10", ""},
		{`water.ammonia{total = "-0.5 mg/L", pH = 8, temperature = "25 degC"}`, "total: got -0.5 mg/L, want at least 0 mg/L", ""},
		{`water.ammonia{total = "0.5 ppm", pH = 8, temperature = "25 degC"}`, `total: unknown unit "ppm"`, "write mg/L"},
		{`water.ammonia{total = "0.5 mg/L", pH = 8, temperature = "25 degC", as = "NH4"}`, `as: got "NH4", want "N" or "NH3"`, "leaflet"},
		{`water.co2{pH = 12, alkalinity = "4 dKH", temperature = "25 degC"}`, "pH: got 12, want 4 to 11", ""},
		{`water.co2{pH = 8.5, alkalinity = "4 dKH", temperature = "25 degC"}`, "pH: got 8.5, want 6 to 8", ""},
		{`water.co2{pH = 7, alkalinity = "40 mg/L", temperature = "25 degC"}`, "alkalinity: got 40 mg/L, a density or concentration; want a hardness or alkalinity", `plain mg/L does not say of what: write "40 mg/L_CaCO3"`},
		{`water.reading{tank = "T", date = "2027-03-06", alkalinity = "80 mg/L"}`, "alkalinity: got 80 mg/L", "dGH, dKH, meq/L"},
		{`water.source{name = "Tap", hardness = "-1 dGH"}`, "hardness: got -1 dGH, want at least 0 dGH", ""},
		{`water.oxygen{temperature = "41 degC"}`, "temperature: got 41 degC, want at most 40 degC", ""},
		{`water.oxygen{temperature = "-1 degC"}`, "temperature: got -1 degC, want 0 to 40 degC", ""},
		{`water.oxygen{temperature = "20 degC", salinity = "43 ppt"}`, "salinity: got 43 ppt, want at most 42 ppt", ""},
		{`water.oxygen{temperature = "20 degC", altitude = "600 m", pressure = "100 kPa"}`, "altitude: got a pressure and an altitude, want one of them", "leave"},
		{`water.dechlorinate{water = "200 L"}`, "chlorine: the argument is missing, want chlorine or chloramine", "add chlorine"},
		{`water.dechlorinate{water = "-200 L", chlorine = "1 mg/L"}`, "water: got -200 L, want more than 0 L", ""},
		{`water.dechlorinate{water = "200 L", chlorine = "20 mg/L"}`, "chlorine: got 20 mg/L, want at most 10 mg/L", ""},
		{`water.dechlorinate{water = "200 L", chlorine = "1 mg/L", agent = "sodium tiosulfate pentahydrate"}`, `agent: got "sodium tiosulfate pentahydrate", want one of sodium thiosulfate`, `did you mean "sodium thiosulfate pentahydrate"?`},
		{`water.dose{water = "240 L", concentration = "2 mg/L", strength = "120 %"}`, "strength: got 120 %, want at most 100 %", ""},
		{`water.dose{water = "240 L", concentration = "2 mg/L", strength = "0 g/L"}`, "strength: got 0 g/L, want more than 0 and at most 2000 g/L", ""},
		{`water.nitrate{production = "0.4 g/d", water = "240 L", change = "0 %"}`, "change: got 0 %, want more than 0 %", ""},
		{`water.nitrate{production = "0.4 g/d", water = "240 L", change = "120 %"}`, "change: got 120 %, want at most 100 %", ""},
		{`water.nitrate{production = "0.4 g/d", water = "240 L", change = "20 %", changes = 0}`, "changes: got 0, want 1 to 10000", ""},
		{`water.nitrate{production = "0.4 g/d", tank = "North", change = "20 %"}`, "water: the argument is missing", "tank = north"},
		{`water.nitrate{production = "0.4 g/d", water = "240 L", change = "20 %", as = "NO2"}`, `as: got "NO2", want "N" or "NO3"`, ""},
		{`water.change_for{limit = "5 mg/L", production = "1.2 g/d", water = "240 L", source = "10 mg/L"}`, "limit: got 5 mg/L, want more than the 10 mg/L of the new water", ""},
		{`water.change_for{limit = "5 mg/L", production = "1.2 g/d", water = "240 L"}`, "limit: got 5 mg/L, want at least 35 mg/L with all water changed every 7 d", ""},
		{`water.reading{tank = "T", date = "2027-03-06", pH = 12}`, "pH: got 12, want 4 to 11", ""},
		{`water.reading{tank = "T", date = "2027-03-06", ammonia = "1 mg/L", as = "NO3"}`, `as: got "NO3", want "N" or "ions"`, ""},
	})
}

const twoWaters = `{name = "Tap", hardness = "14 dGH", alkalinity = "9 dKH"}, {name = "Rain", hardness = "1 dGH"}`

func TestBlendRefusals(t *testing.T) {
	refused(t, []refusal{
		{`water.blend{hardness = "6 dGH", water = "120 L"}`, "sources: got no water to blend, want at least one", "water.source"},
		{`water.blend{` + twoWaters + `, hardness = "20 dGH", water = "120 L"}`, "hardness: got 20 dGH, want 1 dGH to 14 dGH, the lowest and the highest source", "add a source"},
		{`water.blend{` + twoWaters + `, water = "120 L"}`, "hardness: got no target, want one of hardness, alkalinity, to_salinity", ""},
		{`water.blend{` + twoWaters + `, water = "120 L", hardness = "6 dGH", alkalinity = "2 dKH"}`, "hardness: got 2 targets, want one of", "leave out"},
		{`water.blend{` + twoWaters + `, water = "120 L", alkalinity = "2 dKH"}`, `sources: got "Rain" without its alkalinity, want it`, "add alkalinity"},
		{`water.blend{{name = "A", salinity = "35 ppt"}, {name = "B", salinity = "1 ppt"}, water = "120 L", to_salinity = "40 ppt"}`, "to_salinity: got 40 ppt, want 1 ppt to 35 ppt", ""},
		{`water.blend{` + twoWaters + `, water = "-120 L", hardness = "6 dGH"}`, "water: got -120 L, want more than 0 L", ""},
	})
}

func TestFilterRefusals(t *testing.T) {
	refused(t, []refusal{
		{`filter.tan{feed = "-12 g/d", protein = "42 %"}`, "feed: got -12 g/d, want at least 0 g/d", ""},
		{`filter.tan{feed = "12 g", protein = "42 %"}`, "feed: got 12 g, a mass; want a mass per time", ""},
		{`filter.tan{feed = "12 g/d", protein = "10 %"}`, "protein: got 10 %, want at least 20 %", ""},
		{`filter.media{tan = "0.46 g/d", media = "spong"}`, `media: got "spong", want one of trickling, moving-bed`, `did you mean "sponge"?`},
		{`filter.media{tan = "0.46 g/d", media = "moving bed"}`, `media: got "moving bed"`, `did you mean "moving-bed"?`},
		{`filter.media{tan = "0.46 g/d", media = "sponge"}`, "surface: the argument is missing", `add surface = "500 m2/m3"`},
		{`filter.media{tan = "0.46 g/d", media = "live-rock", rate = "0.2 g/(m2.d)"}`, "rate: got a rate per m2 for live rock", "size rock by its mass"},
		{`filter.media{tan = "0.46 g/d", media = "moving-bed", temperature = "5 degC"}`, "temperature: got 5 degC, want 12 to 32 degC", ""},
		{`filter.turnover{flow = "900 L/h"}`, "water: the argument is missing", "tank = north"},
		{`filter.fishless{water = "240 L", agent = "ammonium cloride"}`, `agent: got "ammonium cloride", want one of ammonium chloride`, `did you mean "ammonium chloride"?`},
		{`filter.fishless{water = "240 L", agent = "ammonia solution", strength = "40 %"}`, "strength: got 40 %, want at most 30 %", ""},
		{`filter.fishless{water = "240 L", temperature = "33 degC"}`, "temperature: got 33 degC, want 10 to 32 degC", ""},
		{`filter.capacity{media = "live-rock", volume = "10 L", protein = "42 %"}`, "volume: got 10 L of live rock, want a mass above 0", "kg"},
		{`filter.capacity{media = "moving-bed", volume = "10 kg", protein = "42 %"}`, "want a volume above 0", "L"},
		{`filter.capacity{media = "live-rock", volume = "-1 kg", protein = "42 %"}`, "volume: got -1 kg of live rock, want a mass above 0", ""},
		{`filter.capacity{media = "moving-bed", volume = "10 L", protein = "42 %", flow = "900 L/h"}`, "flow: got a flow without the tank as a record, want both", "tank = north"},
	})
}

// TestMessagesOfTheTable: whatever argument of the new functions is left out or
// takes a text, the message keeps the grammar.
func TestMessagesOfTheTable(t *testing.T) {
	for _, f := range lualib.New().Functions() {
		args := waterCalls[f.FullName()]
		for _, a := range f.Args {
			if _, ok := args[a.Name]; !ok || a.Kind == lualib.ArgText || a.Kind == lualib.ArgLink || a.Kind == lualib.ArgNames {
				continue
			}
			call := callOf(f, args, a.Name, `"a heap"`)
			p := badText(t, supplied(f)+cell("call", "local r = "+call))
			inGrammar(t, call, p.Error(), p.Hint)
			require.Contains(t, p.Error(), a.Name)
		}
	}
}
