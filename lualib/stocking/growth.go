package stocking

import (
	"fmt"
	"math"
)

// Growth is a von Bertalanffy growth curve, L = Linf (1 - exp(-K (t - T0))).
//
// Units: cm, per year, years; the length type is that of LinfCm.
// Valid range: LinfCm above 0 to 300 cm, KPerYr above 0 to 10 per year, T0Yr
// -10 to 10 years; LinfCm and KPerYr from one and the same record.
// Accuracy: a planning guess; K is measured in the wild, at wild temperature
// and food, and growth in an aquarium differs either way.
// Source: von Bertalanffy 1938, textbook form (from memory).
type Growth struct {
	LinfCm float64 // length that is approached
	KPerYr float64 // rate of approach
	T0Yr   float64 // age at which the curve starts from nothing
}

func (g Growth) check() error {
	if err := positive("final length", "cm", g.LinfCm, maxLengthCm); err != nil {
		return err
	}
	if err := positive("growth rate K", "per year", g.KPerYr, 10); err != nil {
		return err
	}
	return within("age at no length", "yr", g.T0Yr, -10, 10)
}

// LengthAtCm gives the length in cm at an age in years, T0Yr to 200 years.
// Accuracy and source: see Growth.
func (g Growth) LengthAtCm(ageYr float64) (float64, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if err := within("age", "yr", ageYr, g.T0Yr, 200); err != nil {
		return 0, err
	}
	return -g.LinfCm * math.Expm1(-g.KPerYr*(ageYr-g.T0Yr)), nil
}

// LengthAfterCm gives the length in cm that a fish of some length (0 cm to
// LinfCm) has after some years (0 to 200).
// Accuracy and source: see Growth, with the step form
// Linf - (Linf - L) exp(-K dt).
func (g Growth) LengthAfterCm(lengthCm, years float64) (float64, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if err := within("length", "cm", lengthCm, 0, g.LinfCm); err != nil {
		return 0, err
	}
	if err := within("time", "yr", years, 0, 200); err != nil {
		return 0, err
	}
	return g.LinfCm - (g.LinfCm-lengthCm)*math.Exp(-g.KPerYr*years), nil
}

// YearsBetween gives the years that growth takes from one length in cm to
// another: 0 <= from <= to < LinfCm.
// Accuracy and source: see Growth, with t = ln((Linf - L1)/(Linf - L2))/K.
func (g Growth) YearsBetween(fromCm, toCm float64) (float64, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if !(toCm < g.LinfCm) {
		return 0, fmt.Errorf("to: got %.6g cm, want less than the final length of %.6g cm", toCm, g.LinfCm)
	}
	if !(fromCm >= 0 && fromCm <= toCm) {
		return 0, fmt.Errorf("from: got %.6g cm, want at least 0 cm and at most the %.6g cm of to", fromCm, toCm)
	}
	return math.Log((g.LinfCm-fromCm)/(g.LinfCm-toCm)) / g.KPerYr, nil
}
