package stocking

import "fmt"

// proportions of a body to its total length.
type proportions struct{ depth, standardLength float64 }

var proportionsByForm = map[Form]proportions{
	Fusiform:  {0.26, 0.81},
	ShortDeep: {0.38, 0.80},
	Elongated: {0.19, 0.84},
	Depressed: {0.19, 0.77},
	EelLike:   {0.09, 0.98},
	Globiform: {0.39, 0.83},
}

// StandardLengthCm gives the length from the snout to the base of the tail fin.
//
// Units: cm of total length; cm.
// Valid range: total length above 0 to 300 cm; the six body forms of fish
// other than seahorses.
// Accuracy: about 5 % for usual fins; long-finned forms must be measured.
// Source: medians over published pictures by body form; the spread is a
// judgement.
func StandardLengthCm(form Form, totalLengthCm float64) (float64, error) {
	p, err := proportionsOf(form, totalLengthCm)
	return p.standardLength * totalLengthCm, err
}

// BodyDepthCm gives the height of the body without fins.
//
// Units, valid range and source: as StandardLengthCm.
// Accuracy: about 25 % within a body form (a judgement).
func BodyDepthCm(form Form, totalLengthCm float64) (float64, error) {
	p, err := proportionsOf(form, totalLengthCm)
	return p.depth * totalLengthCm, err
}

func proportionsOf(form Form, totalLengthCm float64) (proportions, error) {
	if err := positive("length", "cm", totalLengthCm, maxLengthCm); err != nil {
		return proportions{}, err
	}
	p, ok := proportionsByForm[form]
	if !ok {
		return proportions{}, fmt.Errorf("body form: got %q, want one with known proportions; give a measured length instead", string(form))
	}
	return p, nil
}
