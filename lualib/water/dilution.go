package water

import (
	"fmt"
	"math"
)

// maxChanges bounds a course of changes: 27 years of daily ones.
const maxChanges = 10_000

// AfterChanges gives the concentration after equal water changes with nothing
// added in between.
//
// Units: any concentration by volume, the same in and out; share of the water.
// Valid range: 0 to 1,000,000; share above 0 to 1; 0 to 10,000 changes.
// Accuracy: exact for amounts per litre; salinity is per mass, for which this
// is off by up to 0.23 PSU.
// Source: geometric dilution, new + (now - new)(1 - share)^n.
func AfterChanges(now, fresh, share float64, n int) (float64, error) {
	err := first(concentrations(now, fresh), positive("share changed", "", share, 1),
		within("number of changes", "", float64(n), 0, maxChanges))
	if err != nil {
		return 0, err
	}
	return fresh + (now-fresh)*math.Pow(1-share, float64(n)), nil
}

// ShareFor gives the share to change each time so that n changes end at a
// wanted concentration.
//
// Units, valid range, accuracy and source: as AfterChanges, from 1 change.
func ShareFor(now, fresh, want float64, n int) (float64, error) {
	err := first(within("number of changes", "", float64(n), 1, maxChanges))
	if err != nil {
		return 0, err
	}
	left, err := remaining(now, fresh, want)
	if err != nil {
		return 0, err
	}
	return 1 - math.Pow(left, 1/float64(n)), nil
}

// ChangesFor gives how many changes of a share reach a wanted concentration,
// as the exact real number and rounded up.
//
// Units, valid range, accuracy and source: as AfterChanges, share below 1.
func ChangesFor(now, fresh, want, share float64) (exact float64, whole int, err error) {
	if !(share > 0 && share < 1) {
		return 0, 0, fmt.Errorf("share changed: got %.6g, want more than 0 and less than 1", share)
	}
	left, err := remaining(now, fresh, want)
	if err != nil {
		return 0, 0, err
	}
	if left == 0 {
		return 0, 0, fmt.Errorf("want: got %.6g, want short of the new water's %.6g; changes only come near it", want, fresh)
	}
	exact = math.Log(left) / math.Log1p(-share)
	if exact > maxChanges {
		return 0, 0, fmt.Errorf("share changed: got %.6g, want a share with which %d changes are enough", share, maxChanges)
	}
	// Rounding must not turn three whole changes into four.
	return exact, int(math.Ceil(exact - 1e-9)), nil
}

// NewFor gives the concentration that the new water needs so that n changes of
// a share end at a wanted one.
//
// Units, valid range, accuracy and source: as AfterChanges, from 1 change; an
// error when the new water would need less than nothing.
func NewFor(now, want, share float64, n int) (float64, error) {
	err := first(concentrations(now, want), positive("share changed", "", share, 1),
		within("number of changes", "", float64(n), 1, maxChanges))
	if err != nil {
		return 0, err
	}
	q := math.Pow(1-share, float64(n))
	fresh := (want - now*q) / (1 - q)
	if fresh < 0 {
		return 0, fmt.Errorf("want: got %.6g, want at least %.6g, the end with pure new water; change more or more often", want, now*q)
	}
	return fresh, nil
}

// remaining is the part of the distance to the new water that is left over.
func remaining(now, fresh, want float64) (float64, error) {
	if err := concentrations(now, fresh); err != nil {
		return 0, err
	}
	low, high := math.Min(now, fresh), math.Max(now, fresh)
	if now == fresh || !(want >= low && want <= high) {
		return 0, fmt.Errorf("want: got %.6g, want between %.6g of now and %.6g of the new water", want, now, fresh)
	}
	return (want - fresh) / (now - fresh), nil
}

func concentrations(a, b float64) error {
	return first(within("concentration", "", a, 0, 1e6), within("concentration", "", b, 0, 1e6))
}
