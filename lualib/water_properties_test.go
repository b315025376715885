package lualib_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
)

// TestSaltThenDilution: what salt raises, fresh water brings back: the salinity
// to 1 part in 1,000,000,000, whatever the water.
func TestSaltThenDilution(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	for range 20 {
		from, up, c, litres := 0.2+15*random.Float64(), 0.1+20*random.Float64(), 5+25*random.Float64(), 10+990*random.Float64()
		r := goodCell(t, fmt.Sprintf(`local from, to, c, water = Q"%g ppt", Q"%g ppt", Q"%g degC", Q"%g L"
local s = salinity.salt{water = water, from = from, to = to, temperature = c}
local salted = {volume = s.final_volume, salinity = to, temperature = c}
local kg = (salinity.density{salinity = to, temperature = c} * s.final_volume)
local fresh = kg * ((to - from) / from) / salinity.density{salinity = "0 ppt", temperature = c}
local m = salinity.mix{salted, {volume = fresh, salinity = "0 ppt", temperature = c}}
before, after, warmth = from, m.salinity, m.temperature - c
-- and by removing: the salt weighed is the salt that came
local have = salinity.density{salinity = from, temperature = c} * water * from
added = (kg * to - have) / s.mass`, from, from+up, c, litres))
		require.InEpsilon(t, in(t, r, "before", "ppt"), in(t, r, "after", "ppt"), 1e-9)
		require.InDelta(t, 0, in(t, r, "warmth", "K"), 1e-9)
		require.InDelta(t, 1, in(t, r, "added", ""), 1e-9)
	}
}

// TestTopUpBringsBack: evaporation and the fresh water that mends it.
func TestTopUpBringsBack(t *testing.T) {
	r := goodCell(t, `off, short = 0, 0
for _, s in ipairs{"0.3 ppt", "5 ppt", "15 ppt", "35 ppt"} do
  local t = salinity.topup{water = "240 L", salinity = s, temperature = "25 degC", evaporated = "20 L"}
  local m = salinity.mix{{volume = t.left, salinity = t.salinity, temperature = "25 degC"}, {volume = t.fresh, salinity = "0 ppt", temperature = "25 degC"}}
  off, short = max(off, abs(m.salinity / Q(s) - 1)), max(short, abs(m.volume / Q"240 L" - 1))
end
plain = salinity.topup{water = "240 L", salinity = "0 ppt", temperature = "25 degC", evaporated = "20 L"}.fresh`)
	require.LessOrEqual(t, in(t, r, "off", ""), 1e-9)
	require.LessOrEqual(t, in(t, r, "short", ""), 1e-9)
	require.InEpsilon(t, 20, in(t, r, "plain", "L"), 1e-12, "fresh water loses what it loses")
}

// TestThereAndBack: from_sg undoes to_sg, from_conductivity conductivity, and
// change_for nitrate.
func TestThereAndBack(t *testing.T) {
	r := goodCell(t, `gravity, conducts, shares = 0, 0, 0
for i = 0, 84 do
  local x = Q"0.5 ppt" * i
  for _, reference in ipairs{"60 degF", "20 degC", "25 degC", "4 degC"} do
    gravity = max(gravity, abs(salinity.from_sg{sg = salinity.to_sg{salinity = x, reference = reference}, reference = reference} - x):number "ppt")
  end
  for _, c in ipairs{"-2 degC", "15 degC", "35 degC"} do
    conducts = max(conducts, abs(salinity.from_conductivity{conductivity = salinity.conductivity{salinity = x, temperature = c}, temperature = c} - x):number "ppt")
  end
end
for percent = 5, 100, 5 do
  local args = {production = "0.4 g/d", water = "240 L", source = "3 mg/L", every = "10 d"}
  local level = water.nitrate{production = args.production, water = args.water, source = args.source, every = args.every, change = percent / 100}.before
  shares = max(shares, abs(water.change_for{limit = level, production = args.production, water = args.water, source = args.source, every = args.every} - percent / 100))
end`)
	require.LessOrEqual(t, value(t, r, "gravity"), 1e-9)
	require.LessOrEqual(t, value(t, r, "conducts"), 1e-9)
	require.LessOrEqual(t, in(t, r, "shares", ""), 1e-9)
}

// TestSteadyNitrate: the long run is where the course arrives, from above, from
// below and from the source's level.
func TestSteadyNitrate(t *testing.T) {
	for _, share := range []string{"5 %", "25 %", "100 %"} {
		for _, initial := range []string{"", `initial = "0 mg/L", `, `initial = "900 mg/L", `} {
			r := goodCell(t, fmt.Sprintf(`n = water.nitrate{production = "0.4 g/d", water = "240 L", change = %q, source = "3 mg/L", %schanges = 500}
before, after = n.course[500].before / n.before, n.course[500].after / n.after
count, day, first = #n.course, n.course[500].day, n.course[1].before`, share, initial))
			require.InDelta(t, 1, in(t, r, "before", ""), 1e-9)
			require.InDelta(t, 1, in(t, r, "after", ""), 1e-9)
			require.InDelta(t, 500, value(t, r, "count"), 0)
			require.InDelta(t, 3500, in(t, r, "day", "d"), 1e-9)
		}
	}
}

// TestBlendsMeetTheirTarget: the shares add up to the target and to the volume,
// with the least reverse osmosis, and sources may have more properties than are
// asked for.
func TestBlendsMeetTheirTarget(t *testing.T) {
	const waters = `local tap = water.source{name = "Tap", hardness = "14 dGH", alkalinity = "9 dKH", salinity = "0.4 ppt"}
local ro = water.source{name = "RO", hardness = "0 dGH", alkalinity = "0 dKH", salinity = "0 ppt", osmosis = true}
local rain = {name = "Rain", hardness = "2 dGH", alkalinity = "1 dKH", pH = 6.5}
`
	r := goodCell(t, waters+`b = water.blend{tap, ro, rain, hardness = "6 dGH", water = "120 L", osmosis_flow = "8 L/h"}
list = water.blend{sources = {tap, ro, rain}, hardness = "6 dGH", water = "120 L"}.shares
total, litres, same = 0, 0, true
for i, s in ipairs(b.shares) do
  total = total + s.share:number() * ({14, 0, 2})[i] litres = litres + s.volume:number "L" same = same and s.volume == list[i].volume and s.name == ({"Tap", "RO", "Rain"})[i]
end
osmosis = b.osmosis:number()
hard = water.blend{tap, ro, alkalinity = "5 dKH", water = "90 L", osmosis_flow = "10 L/h", reject = 4}
run, waste, barrel = hard.hours, hard.rejected, hard.barrel`)
	require.InDelta(t, 6, value(t, r, "total"), 1e-9)
	require.InDelta(t, 120, value(t, r, "litres"), 1e-9)
	require.Equal(t, true, value(t, r, "same"))
	require.Zero(t, value(t, r, "osmosis"), "rain does it without the osmosis unit")
	require.InEpsilon(t, 4, in(t, r, "run", "h"), 1e-9, "40 L of 90 L at 10 L/h")
	require.InEpsilon(t, 160, in(t, r, "waste", "L"), 1e-9)
	require.InEpsilon(t, 100, in(t, r, "barrel", "L"), 1e-9)
	salty := goodCell(t, `local sea, fresh = {name = "Sea", salinity = "35 ppt"}, {name = "Tap", salinity = "0.3 ppt"}
b = water.blend{sea, fresh, to_salinity = "12 ppt", water = "200 L", temperature = "22 degC"}
m = salinity.mix{{volume = b.shares[1].volume, salinity = "35 ppt", temperature = "22 degC"}, {volume = b.shares[2].volume, salinity = "0.3 ppt", temperature = "22 degC"}}
got, litres = m.salinity, m.volume`)
	require.InEpsilon(t, 12, in(t, salty, "got", "ppt"), 1e-9)
	require.InEpsilon(t, 200, in(t, salty, "litres", "L"), 1e-9)
}

// TestFilterRangesAgree: the media that a feed needs carry that feed, and both
// ends keep their order; a rate of one's own spans a half to either side.
func TestFilterRangesAgree(t *testing.T) {
	r := goodCell(t, `worst = 0 ordered = true
for _, media in ipairs{"moving-bed", "bead", "fluidised-sand"} do
  local tan = filter.tan{feed = "12 g/d", protein = "42 %"}
  local need = filter.media{tan = tan, media = media}
  local high = filter.capacity{media = media, volume = need.volume_high, protein = "42 %"}
  local low = filter.capacity{media = media, volume = need.volume_low, protein = "42 %"}
  worst = max(worst, abs(high.feed_low / Q"12 g/d" - 1), abs(low.feed_high / Q"12 g/d" - 1))
  ordered = ordered and need.volume_low < need.volume_high and need.area_low < need.area_high and low.feed_low < low.feed_high
end
local own = filter.media{tan = "1 g/d", media = "bead", rate = "0.5 g/(m2.d)"}
area_low, area_high, volume_high = own.area_low, own.area_high, own.volume_high
local rock = filter.media{tan = "0.1 g/d", media = "live-rock"}
rock_ordered = rock.mass_low < rock.mass_high
turns = filter.turnover{tank = tank{name = "T", length = "1 m", width = "50 cm", height = "50 cm"}, flow = "1 m3/h"}
turned = turns:number "1/h"
local cool = tank{name = "Cool", length = "1 m", width = "50 cm", height = "50 cm", temperature = "15 degC"}
local function carries(args) args.media, args.volume, args.protein = "moving-bed", "10 L", "42 %" return filter.capacity(args).feed_low end
same = carries{tank = cool} == carries{temperature = "15 degC"}
colder = carries{tank = cool} < carries{}`)
	require.Equal(t, true, value(t, r, "same"), "a tank as a record gives its temperature")
	require.Equal(t, true, value(t, r, "colder"))
	require.LessOrEqual(t, in(t, r, "worst", ""), 1e-9)
	require.Equal(t, true, value(t, r, "ordered"))
	require.Equal(t, true, value(t, r, "rock_ordered"))
	require.InEpsilon(t, 2/1.5, in(t, r, "area_low", "m2"), 1e-9)
	require.InEpsilon(t, 4, in(t, r, "area_high", "m2"), 1e-9)
	require.InEpsilon(t, 4000.0/1150, in(t, r, "volume_high", "L"), 1e-9, "the surface of the media table")
	require.InEpsilon(t, 1/r.Plan.Tanks[0].Water.MustIn("m3"), value(t, r, "turned").(float64), 1e-9)
}

// TestFishless: doses by molar mass, and weeks that grow in the cold.
func TestFishless(t *testing.T) {
	r := goodCell(t, `local function dose(agent, strength) return filter.fishless{water = "100 L", target = "2 mg/L", agent = agent, strength = strength} end
chloride, sulfate, solution = dose().mass, dose("ammonium sulfate").mass, dose("ammonia solution")
half = dose("ammonium chloride", "50 %").mass
drops, grams = solution.volume, solution.mass
local cold = filter.fishless{water = "100 L", temperature = "12 degC"}
slower = cold.weeks_high > solution.weeks_high and cold.weeks_low < cold.weeks_high`)
	require.InEpsilon(t, 0.2*53.491/14.007, in(t, r, "chloride", "g"), 1e-4)
	require.InEpsilon(t, 0.2*132.14/28.014, in(t, r, "sulfate", "g"), 1e-4)
	require.InEpsilon(t, 0.2*17.031/14.007/0.095, in(t, r, "grams", "g"), 1e-4)
	require.InEpsilon(t, 2*in(t, r, "chloride", "g"), in(t, r, "half", "g"), 1e-12)
	require.InEpsilon(t, in(t, r, "grams", "g")/0.96, in(t, r, "drops", "mL"), 0.005)
	require.Equal(t, true, value(t, r, "slower"))
}

// TestSources: what is known of a water is kept, and no more.
func TestSources(t *testing.T) {
	r := goodCell(t, `tap = water.source{name = "Tap", hardness = "250 mg/L_CaCO3", pH = 7.6}
fields = {} for k in pairs(tap) do fields[#fields + 1] = k end table.sort(fields) fields = table.concat(fields, " ")`)
	require.Equal(t, "hardness name osmosis pH", value(t, r, "fields"))
	source := r.Plan.WaterSources[0]
	require.InDelta(t, 250/17.848, source.Hardness.Q.MustIn("dGH"), 1e-3)
	require.False(t, source.Alkalinity.Has)
	require.InDelta(t, 7.6, source.PH, 1e-12)
	require.Equal(t, "water.source", value(t, r, "tap").(*notebook.Data).Of)
}
