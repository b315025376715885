package stocking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestRefusals(t *testing.T) {
	carp := Growth{LinfCm: 70, KPerYr: 0.2}
	fit := LengthWeight{A: 0.01, B: 3}
	tests := []struct {
		name string
		call func() error
		want string
	}{
		{"no length", func() error { _, err := fit.Mass(0); return err }, "length: got 0 cm, want more than 0 and at most 300 cm"},
		{"millimetres", func() error { _, err := BodyMass(Fusiform, 350); return err }, "length: got 350 cm, want more than 0 and at most 300 cm"},
		{"not a number", func() error { _, err := BodyMass(Fusiform, math.NaN()); return err },
			"length: got NaN cm, want more than 0 and at most 300 cm"},
		{"snail", func() error { _, err := BodyMass(Snail, 5); return err },
			`body form: got "snail", want a fish's; give a measured mass instead`},
		{"a", func() error { _, err := LengthWeight{B: 3}.Mass(5); return err }, "length-weight a: got 0, want more than 0 and at most 1"},
		{"b", func() error { _, err := LengthWeight{A: 0.01, B: 30}.Mass(5); return err }, "length-weight b: got 30, want 2 to 4"},
		{"deviation", func() error { _, err := LengthWeight{0.01, 3, -1}.Mass(5); return err }, "deviation of log10 a: got -1, want 0 to 1"},
		{"seahorse", func() error { _, err := StandardLengthCm(Seahorse, 5); return err },
			`body form: got "seahorse", want one with known proportions; give a measured length instead`},
		{"depth", func() error { _, err := BodyDepthCm(Fusiform, -5); return err }, "length: got -5 cm, want more than 0 and at most 300 cm"},

		{"final length", func() error { _, err := Growth{KPerYr: 1}.LengthAtCm(1); return err },
			"final length: got 0 cm, want more than 0 and at most 300 cm"},
		{"rate", func() error { _, err := Growth{LinfCm: 50}.LengthAfterCm(1, 1); return err },
			"growth rate K: got 0 per year, want more than 0 and at most 10 per year"},
		{"start", func() error { _, err := Growth{50, 1, 99}.YearsBetween(1, 2); return err }, "age at no length: got 99 yr, want -10 to 10 yr"},
		{"before the start", func() error { _, err := carp.LengthAtCm(-1); return err }, "age: got -1 yr, want 0 to 200 yr"},
		{"too long already", func() error { _, err := carp.LengthAfterCm(80, 1); return err }, "length: got 80 cm, want 0 to 70 cm"},
		{"back in time", func() error { _, err := carp.LengthAfterCm(8, -1); return err }, "time: got -1 yr, want 0 to 200 yr"},
		{"never so long", func() error { _, err := carp.YearsBetween(8, 70); return err },
			"to: got 70 cm, want less than the final length of 70 cm"},
		{"shrinking", func() error { _, err := carp.YearsBetween(30, 20); return err },
			"from: got 30 cm, want at least 0 cm and at most the 20 cm of to"},

		{"no mass", func() error { _, err := PlanOxygen(0, 25); return err }, "body mass: got 0 g, want 0.01 to 500000 g"},
		{"hot", func() error { _, err := RestingMgO2PerH(5, 77); return err }, "temperature: got 77 degC, want 0 to 36 degC"},
		{"ice", func() error { _, err := StandardMgO2PerH(5, -1); return err }, "temperature: got -1 degC, want 0 to 36 degC"},
		{"negative feed", func() error { _, err := OxygenOfFeed(-1); return err }, "feed: got -1 g/d, want 0 to 100000 g/d"},

		{"feed for nothing", func() error { _, err := DailyFeed(Pond, 0, 20); return err },
			"body mass: got 0 g, want more than 0 and at most 500000 g"},
		{"tropical fish in the cold", func() error { _, err := DailyFeed(Community, 5, 10); return err },
			"temperature: got 10 degC, want 14 to 34 degC"},
		{"hot pond", func() error { _, err := DailyFeed(Pond, 5, 35); return err }, "temperature: got 35 degC, want 0 to 32 degC"},
		{"habit", func() error { _, err := DailyFeed("grazer", 5, 25); return err },
			`feeding habit: got "grazer", want community, predator or pond`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) { require.EqualError(t, test.call(), test.want) })
	}
}

// A prior without a deviation would claim to be exact.
func TestEveryPriorHasItsUncertainty(t *testing.T) {
	for form := range priors {
		prior, err := Prior(form)
		require.NoError(t, err)
		require.GreaterOrEqual(t, prior.SDLog10A, shapeOnlySD, form)
	}
}
