package stocking

import (
	"fmt"
	"math"
)

// Habit chooses the column of the ration table.
type Habit string

// The habits of the ration table.
const (
	Community Habit = "community" // fed by size class
	Predator  Habit = "predator"  // large ones are fed two or three times a week
	Pond      Habit = "pond"      // koi, goldfish and sterlet, fed by temperature
)

// HabitOf gives the habit of a species, and refuses shrimps and snails, for
// which the ration table says nothing.
func HabitOf(s Species) (Habit, error) {
	switch {
	case s.Form == Shrimp || s.Form == Snail:
		return "", fmt.Errorf("species: got %s, want a fish; the ration table has no invertebrates", s.CommonName)
	case s.Group == "goldfish/koi" || s.Group == "pond":
		return Pond, nil
	case s.Gape == GapePiscivore || s.Gape == GapeEngulfer:
		return Predator, nil
	}
	return Community, nil
}

// Ration is a range of dry feed for one fish.
type Ration struct {
	LowPercent, HighPercent float64 // of the body mass per day
	LowGPerDay, HighGPerDay float64
}

// DailyFeed gives the dry feed of one fish, as a mean over the week. Keep the
// temperature inside the species' own range: outside it a fish eats less.
//
// Units: g of body mass, degrees Celsius; % of body mass and g per day.
// Valid range: body mass above 0 to 500 kg; 14 to 34 °C, for pond fish 0 to 32 °C.
// Accuracy: common practice, no source; the range is what keepers do, not what
// a fish needs. Frozen and live food is about 20 % dry.
// Source: common practice by size class at 25 °C (sizes between the classes of
// the trade take the middle of their neighbours), scaled with temperature by a
// Q10 of 2; for pond fish by temperature alone.
func DailyFeed(habit Habit, massG, temperatureC float64) (Ration, error) {
	if err := positive("body mass", "g", massG, maxMassG); err != nil {
		return Ration{}, err
	}
	var percent Range
	switch habit {
	case Pond:
		if err := within("temperature", "degC", temperatureC, 0, 32); err != nil {
			return Ration{}, err
		}
		percent = last(pondPercent, temperatureC)
	case Community, Predator:
		if err := within("temperature", "degC", temperatureC, 14, 34); err != nil {
			return Ration{}, err
		}
		percent = warmPercent(habit, massG, temperatureC)
	default:
		return Ration{}, fmt.Errorf("feeding habit: got %q, want %s, %s or %s", string(habit), Community, Predator, Pond)
	}
	return Ration{
		LowPercent: percent.Min, HighPercent: percent.Max,
		LowGPerDay: percent.Min / 100 * massG, HighGPerDay: percent.Max / 100 * massG,
	}, nil
}

// warmPercent is the ration of warm-water fish by size, scaled by temperature.
func warmPercent(habit Habit, massG, temperatureC float64) Range {
	percent := last(sizePercent, massG)
	if habit == Predator && massG >= largeG {
		percent = largePredatorPercent
	}
	scale := math.Exp2((temperatureC - 25) / 10)
	return Range{scale * percent.Min, scale * percent.Max}
}

// step is a row of a ration table: % of body mass per day from a start upwards.
type step struct {
	from    float64
	percent Range
}

// largeG is the body mass from which the trade speaks of large fish.
const largeG = 500.0

// sizePercent starts at body masses in g, at 25 °C. Fry are what weighs less
// than 0.1 g, about 2 cm: lighter than any adult of the species table.
var sizePercent = []step{
	{0, Range{5, 10}},
	{0.1, Range{2, 3}},
	{10, Range{1, 2}},
	{100, Range{0.75, 1.5}}, // between the classes
	{largeG, Range{0.5, 1}},
}

var largePredatorPercent = Range{0.3, 0.7}

// pondPercent starts at temperatures in °C: none in the cold, summer from 18.
var pondPercent = []step{
	{0, Range{0, 0}},
	{8, Range{0, 0.2}}, // practice stops somewhere between 8 and 10
	{10, Range{0.2, 0.5}},
	{15, Range{0.5, 1}},
	{18, Range{1, 2}},
}

// last gives the row with the highest start that is not above the value.
func last(steps []step, value float64) Range {
	percent := steps[0].percent
	for _, s := range steps {
		if value >= s.from {
			percent = s.percent
		}
	}
	return percent
}
