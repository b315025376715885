package water

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// The closed form of a tank with production and changes. The rows are for a
// litre, so the production is a concentration per day.
func TestNitrateWaterChange(t *testing.T) {
	rows := table(t, "nitrate_water_change.csv")
	require.Equal(t, 18, len(rows))
	for _, r := range rows {
		c := Changes{1, r.Num(t, "p_per_day"), r.Num(t, "C_tap"), r.Num(t, "f"), r.Num(t, "days_between")}
		steady, err := c.Steady()
		require.NoError(t, err)
		switch r["quantity"] {
		case "before_change":
			published.RequireDigits(t, r, "value", steady.BeforeMgPerL)
		case "after_change":
			published.RequireDigits(t, r, "value", steady.AfterMgPerL)
		case "after_10_changes_from_5":
			course, err := c.Course(5, 10)
			require.NoError(t, err)
			published.RequireDigits(t, r, "value", course[9].AfterMgPerL)
		default:
			require.Fail(t, "unknown row", "%v", r)
		}
	}
}

// anyChanges draws a tank within what a keeper meets.
func anyChanges(random *rand.Rand) Changes {
	return Changes{
		WaterL:             20 + 3000*random.Float64(),
		ProductionMgPerDay: 20_000 * random.Float64(),
		SourceMgPerL:       50 * random.Float64(),
		Share:              0.05 + 0.95*random.Float64(),
		EveryDays:          1 + 20*random.Float64(),
	}
}

// Five hundred simulated changes end at the steady state and follow the closed
// form on the way; each change conserves what is dissolved.
func TestSteadyStateIsWhereTheCourseEnds(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 50 {
		c := anyChanges(random)
		steady, err := c.Steady()
		require.NoError(t, err)
		start := 200 * random.Float64()
		course, err := c.Course(start, 500)
		require.NoError(t, err)
		last := course[499]
		require.InEpsilon(t, steady.BeforeMgPerL, last.BeforeMgPerL, 1e-9, "%+v", c)
		require.InDelta(t, steady.AfterMgPerL, last.AfterMgPerL, 1e-9*steady.BeforeMgPerL, "%+v", c)
		require.InDelta(t, 500*c.EveryDays, last.Day, 1e-9)
		seventh := steady.AfterMgPerL + (start-steady.AfterMgPerL)*math.Pow(1-c.Share, 7)
		require.InDelta(t, seventh, course[6].AfterMgPerL, 1e-9*(1+seventh), "%+v", c)
		requireConserved(t, c, start, course)
	}
}

func requireConserved(t *testing.T, c Changes, start float64, course []Level) {
	t.Helper()
	inTank := start * c.WaterL
	for _, level := range course {
		inTank += c.ProductionMgPerDay*c.EveryDays - level.RemovedMg + level.BroughtWithMg
	}
	end := course[len(course)-1].AfterMgPerL * c.WaterL
	require.InDelta(t, inTank, end, 1e-9*(inTank+float64(len(course))*c.ProductionMgPerDay*c.EveryDays))
}

// The share holds the limit, and nothing less does.
func TestSmallestShareIsMinimal(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	found := 0
	for range 400 {
		c := anyChanges(random)
		limit := c.SourceMgPerL + 150*random.Float64()
		share, err := c.SmallestShare(limit)
		if err != nil {
			c.Share = 1
			steady, steadyErr := c.Steady()
			require.NoError(t, steadyErr)
			require.Greater(t, steady.BeforeMgPerL, limit, "%+v: %v", c, err)
			continue
		}
		found++
		c.Share = share
		steady, err := c.Steady()
		require.NoError(t, err)
		require.InEpsilon(t, limit, steady.BeforeMgPerL, 1e-12)
		c.Share = share * (1 - 1e-9)
		less, err := c.Steady()
		require.NoError(t, err)
		require.Greater(t, less.BeforeMgPerL, limit)
	}
	require.Greater(t, found, 100)
}

func TestAWeekWithoutAChange(t *testing.T) {
	c := Changes{WaterL: 400, ProductionMgPerDay: 2000}
	got, err := c.WithoutChange(20, 7)
	require.NoError(t, err)
	require.InDelta(t, 55, got, 1e-12)
	share, err := Changes{WaterL: 400, SourceMgPerL: 5, EveryDays: 7}.SmallestShare(40)
	require.NoError(t, err)
	require.Zero(t, share)
}

func TestChangesRefusals(t *testing.T) {
	good := Changes{400, 2000, 5, 0.2, 7}
	bad := map[string]Changes{
		"water: got 0 L, want more than 0 and at most 1e+07 L":              {0, 2000, 5, 0.2, 7},
		"production: got -1 mg/d, want 0 to 1e+09 mg/d":                     {400, -1, 5, 0.2, 7},
		"new water: got -5 mg/L, want 0 to 1000 mg/L":                       {400, 2000, -5, 0.2, 7},
		"share changed: got 1.5, want more than 0 and at most 1":            {400, 2000, 5, 1.5, 7},
		"time between changes: got 0 d, want more than 0 and at most 365 d": {400, 2000, 5, 0.2, 0},
		"production: got NaN mg/d, want 0 to 1e+09 mg/d":                    {400, math.NaN(), 5, 0.2, 7},
	}
	for want, c := range bad {
		_, err := c.Steady()
		require.EqualError(t, err, want)
		_, err = c.Course(5, 10)
		require.EqualError(t, err, want)
	}
	_, err := good.Course(5, 0)
	require.EqualError(t, err, "number of changes: got 0, want 1 to 10000")
	_, err = good.Course(-5, 1)
	require.EqualError(t, err, "initial: got -5 mg/L, want 0 to 10000 mg/L")
	_, err = good.WithoutChange(5, -1)
	require.EqualError(t, err, "time: got -1 d, want 0 to 3650 d")
	_, err = good.SmallestShare(4)
	require.EqualError(t, err, "limit: got 4 mg/L, want more than the 5 mg/L of the new water; no change can hold it")
	_, err = good.SmallestShare(30)
	require.EqualError(t, err, "limit: got 30 mg/L, want at least 40 mg/L with all water changed every 7 d; change more often or feed less")
	_, err = Changes{400, 2000, 5, 0.2, 0}.SmallestShare(30)
	require.ErrorContains(t, err, "time between changes")
}
