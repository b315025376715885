package water

import "fmt"

// Changes describes a tank in which something builds up and water changes
// carry it away: nitrate as a rule. All amounts are counted the same way, as
// NO3 or as N (see ConvertNitrogen).
type Changes struct {
	WaterL             float64 // net volume, above 0 to 10,000,000 L
	ProductionMgPerDay float64 // 0 to 1,000,000,000 mg/d
	SourceMgPerL       float64 // in the new water, 0 to 1,000 mg/L
	Share              float64 // of the water changed each time, above 0 to 1
	EveryDays          float64 // between changes, above 0 to 365 d
}

// Level is a concentration around one water change.
type Level struct {
	Number        int     // of the change, from 1; 0 for the steady state
	Day           float64 // on which it is done; 0 for the steady state
	BeforeMgPerL  float64
	AfterMgPerL   float64
	RemovedMg     float64 // drawn with the old water
	NewWaterL     float64 // to prepare
	BroughtWithMg float64 // by the new water
}

// Steady gives the level at which each change removes what came since the last.
//
// Units: mg/L in the basis of the inputs, L, mg.
// Valid range: as the fields say; no plants and no denitrification.
// Accuracy: exact for a well mixed tank; the production is a guess of 20 to
// 30 % (a judgement).
// Source: mass balance: before = source + p d/f, after = before (1 - f) + source f.
func (c Changes) Steady() (Level, error) {
	if err := c.check(); err != nil {
		return Level{}, err
	}
	before := c.SourceMgPerL + c.risePerDay()*c.EveryDays/c.Share
	return c.change(0, 0, before), nil
}

// Course gives the levels around each of n changes, starting just after a
// change or a filling.
//
// Units: mg/L in the basis of the inputs; days from the start.
// Valid range: initial 0 to 10,000 mg/L; 1 to 10,000 changes.
// Accuracy and source: as Steady, step by step.
func (c Changes) Course(initialMgPerL float64, n int) ([]Level, error) {
	err := first(c.check(),
		within("initial", "mg/L", initialMgPerL, 0, 10_000),
		within("number of changes", "", float64(n), 1, maxChanges))
	if err != nil {
		return nil, err
	}
	levels := make([]Level, 0, n)
	now := initialMgPerL
	for k := 1; k <= n; k++ {
		now += c.risePerDay() * c.EveryDays
		level := c.change(k, float64(k)*c.EveryDays, now)
		levels = append(levels, level)
		now = level.AfterMgPerL
	}
	return levels, nil
}

// WithoutChange gives the level after days in which no water is changed.
//
// Units: mg/L in the basis of the inputs, days; mg/L.
// Valid range: initial 0 to 10,000 mg/L, 0 to 3,650 d; Share and EveryDays
// are not read.
// Accuracy and source: as Steady.
func (c Changes) WithoutChange(initialMgPerL, days float64) (float64, error) {
	err := first(c.checkTank(),
		within("initial", "mg/L", initialMgPerL, 0, 10_000),
		within("time", "d", days, 0, 3650))
	if err != nil {
		return 0, err
	}
	return initialMgPerL + c.risePerDay()*days, nil
}

// SmallestShare gives the least share that keeps the steady level before each
// change at or below a limit; Share is not read.
//
// Units: mg/L in the basis of the inputs; a share, 0 to 1.
// Valid range: a limit above the source, at most 10,000 mg/L.
// Accuracy and source: as Steady, solved for the share; to rounding.
func (c Changes) SmallestShare(limitMgPerL float64) (float64, error) {
	err := first(c.checkTank(),
		positive("time between changes", "d", c.EveryDays, 365),
		within("limit", "mg/L", limitMgPerL, 0, 10_000))
	if err != nil {
		return 0, err
	}
	rise := c.risePerDay() * c.EveryDays
	if rise == 0 && limitMgPerL >= c.SourceMgPerL {
		return 0, nil
	}
	if limitMgPerL <= c.SourceMgPerL {
		return 0, fmt.Errorf("limit: got %.6g mg/L, want more than the %.6g mg/L of the new water; no change can hold it", limitMgPerL, c.SourceMgPerL)
	}
	share := rise / (limitMgPerL - c.SourceMgPerL)
	if share > 1 {
		return 0, fmt.Errorf("limit: got %.6g mg/L, want at least %.6g mg/L with all water changed every %.6g d; change more often or feed less", limitMgPerL, c.SourceMgPerL+rise, c.EveryDays)
	}
	return share, nil
}

// change draws a share of the water and fills up with new water.
func (c Changes) change(number int, day, before float64) Level {
	drawnL := c.Share * c.WaterL
	return Level{
		Number: number, Day: day,
		BeforeMgPerL:  before,
		AfterMgPerL:   before + c.Share*(c.SourceMgPerL-before),
		RemovedMg:     drawnL * before,
		NewWaterL:     drawnL,
		BroughtWithMg: drawnL * c.SourceMgPerL,
	}
}

func (c Changes) risePerDay() float64 { return c.ProductionMgPerDay / c.WaterL }

func (c Changes) checkTank() error {
	return first(
		positive("water", "L", c.WaterL, maxL),
		within("production", "mg/d", c.ProductionMgPerDay, 0, 1e9),
		within("new water", "mg/L", c.SourceMgPerL, 0, 1000))
}

func (c Changes) check() error {
	return first(c.checkTank(),
		positive("share changed", "", c.Share, 1),
		positive("time between changes", "d", c.EveryDays, 365))
}
