package stocking

import (
	"fmt"
	"math"
)

// LengthWeight is a length-weight relation W = A L^B, W in g, L in cm.
type LengthWeight struct {
	A, B     float64
	SDLog10A float64 // standard deviation of log10 A; 0 for a measured A
}

// Mass is a body mass with its uncertainty.
type Mass struct {
	G      float64
	Factor float64 // one standard deviation is G/Factor to G*Factor; 1 for none
}

// anyForm is the prior for a body form that has none of its own.
var anyForm = LengthWeight{0.01, 3.04, 0.313}

// priors by body form. The sources give 0.17 to 0.18 for SDLog10A of one body
// form, but records for which nothing but the form was known come to 0.31:
// Prior takes the wider.
var priors = map[Form]LengthWeight{
	EelLike:   {0.00102, 3.06, 0.175},
	Elongated: {0.00389, 3.12, 0.171},
	Fusiform:  {0.01122, 3.04, 0.173},
	ShortDeep: {0.01995, 3.01, 0.175},
	Depressed: anyForm,
	Globiform: anyForm,
	Seahorse:  anyForm,
}

// shapeOnlySD is the median SDLog10A of species whose relation rests on body
// shape alone. Source: computed from the FishBase June 2021 snapshot.
const shapeOnlySD = 0.31

// Prior gives the length-weight relation of a body form, for want of one
// fitted to the species.
//
// Units: total length in cm, wet mass in g; measure long-finned and
// filament-tailed fish in standard length, else they come out 2 to 3 times too
// heavy.
// Valid range: fish; adult sizes. Shrimps and snails are refused.
// Accuracy: a factor of 2 (one standard deviation); show two figures.
// Source: body-shape priors of Froese, Thorson & Reyes 2014, seen in the
// FishBase June 2021 snapshot; depressed, globiform and seahorse take the
// prior for any form.
func Prior(form Form) (LengthWeight, error) {
	prior, ok := priors[form]
	if !ok {
		return LengthWeight{}, fmt.Errorf("body form: got %q, want a fish's; give a measured mass instead", string(form))
	}
	prior.SDLog10A = max(prior.SDLog10A, shapeOnlySD)
	return prior, nil
}

// Mass gives the body mass of a fish by its length.
//
// Units: cm of the length type of the relation; g.
// Valid range: length above 0 to 300 cm, A above 0 to 1, B 2 to 4.
// Accuracy: the Factor of the result.
// Source: W = a L^b, textbook; fits use total length unless they say otherwise.
func (lw LengthWeight) Mass(lengthCm float64) (Mass, error) {
	if err := positive("length", "cm", lengthCm, maxLengthCm); err != nil {
		return Mass{}, err
	}
	if !(lw.A > 0 && lw.A <= 1) {
		return Mass{}, fmt.Errorf("length-weight a: got %.6g, want more than 0 and at most 1", lw.A)
	}
	if !(lw.B >= 2 && lw.B <= 4) {
		return Mass{}, fmt.Errorf("length-weight b: got %.6g, want 2 to 4", lw.B)
	}
	if !(lw.SDLog10A >= 0 && lw.SDLog10A <= 1) {
		return Mass{}, fmt.Errorf("deviation of log10 a: got %.6g, want 0 to 1", lw.SDLog10A)
	}
	return Mass{
		G:      lw.A * math.Pow(lengthCm, lw.B),
		Factor: math.Pow(10, lw.SDLog10A),
	}, nil
}

// BodyMass gives the mass of a fish by its body form and total length: the
// Mass of the Prior, whose ranges, accuracy and source it shares.
func BodyMass(form Form, totalLengthCm float64) (Mass, error) {
	prior, err := Prior(form)
	if err != nil {
		return Mass{}, err
	}
	return prior.Mass(totalLengthCm)
}
