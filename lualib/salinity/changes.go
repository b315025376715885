package salinity

import (
	"fmt"
	"math"
)

// maxChanges bounds a run of water changes.
const maxChanges = 1000

// AfterChanges gives the salinity after a number of equal water changes, each
// of which draws a share of the volume and puts in the same volume of new
// water.
//
// Units: PSU read as g per kg of solution, share of the volume, degrees
// Celsius (ITS-90); PSU.
// Valid range: 0 to 42 PSU, share above 0 to 1, 0 to 1000 changes, -2 to 40 °C.
// Accuracy: exact for the balance; a share by mass, S_new + (S - S_new)(1 -
// share)^n, gives up to 0.35 PSU less.
// Source: mass balance with EOS-80 densities.
func AfterChanges(startPSU, newPSU, shareEach float64, changes int, temperatureC float64) (float64, error) {
	if err := checkChanges([]string{"start", "new water"}, startPSU, newPSU, shareEach, changes); err != nil {
		return 0, err
	}
	if err := within("temperature", "degC", temperatureC, MinC, MaxC); err != nil {
		return 0, err
	}
	s, in := startPSU, shareEach*density90(newPSU, temperatureC)
	for range changes {
		stay := (1 - shareEach) * density90(s, temperatureC)
		s = (stay*s + in*newPSU) / (stay + in)
	}
	return s, nil
}

// ShareFor gives the share, by mass, that each of a number of equal water
// changes must have to reach a salinity.
//
// Units: PSU read as g per kg; a share of the mass.
// Valid range: 0 to 42 PSU, want between start and new water but not the
// latter, 1 to 1000 changes.
// Accuracy: exact by mass; measured as a share of the volume the end is up to
// 0.35 PSU saltier, see AfterChanges.
// Source: f = 1 - ((S_new - want)/(S_new - start))^(1/n).
func ShareFor(startPSU, newPSU, wantPSU float64, changes int) (float64, error) {
	rest, err := restAfter(startPSU, newPSU, wantPSU)
	if err != nil {
		return 0, err
	}
	if err := within("changes", "of them", float64(changes), 1, maxChanges); err != nil {
		return 0, err
	}
	return 1 - math.Pow(rest, 1/float64(changes)), nil
}

// ChangesFor gives how many water changes of a share, by mass, reach a
// salinity: the number as the formula has it, and the whole number that does.
//
// Units: PSU read as g per kg, share of the mass; a count.
// Valid range: as ShareFor, share above 0 and below 1.
// Accuracy: as ShareFor.
// Source: n = ln((S_new - want)/(S_new - start))/ln(1 - f).
func ChangesFor(startPSU, newPSU, wantPSU, shareEach float64) (exact float64, whole int, err error) {
	rest, err := restAfter(startPSU, newPSU, wantPSU)
	if err != nil {
		return 0, 0, err
	}
	if !(shareEach > 0 && shareEach < 1) {
		return 0, 0, fmt.Errorf("share: got %.6g of the water, want more than 0 and less than 1", shareEach)
	}
	exact = math.Log(rest) / math.Log1p(-shareEach)
	// A whole number that rounding lifted a hair must not cost one more change.
	if exact-math.Round(exact) < 1e-9 {
		exact = max(0, min(exact, math.Round(exact)))
	}
	if err := within("changes needed", "of them", exact, 0, maxChanges); err != nil {
		return 0, 0, err
	}
	return exact, int(math.Ceil(exact)), nil
}

// NewWaterFor gives the salinity that the new water must have for a number of
// equal water changes of a share, by mass, to reach a salinity.
//
// Units: PSU read as g per kg, share of the mass; PSU.
// Valid range: 0 to 42 PSU, also of the result; share above 0 to 1, 1 to 1000
// changes.
// Accuracy: as ShareFor.
// Source: S_new = (want - start q)/(1 - q) with q = (1 - f)^n.
func NewWaterFor(startPSU, wantPSU, shareEach float64, changes int) (float64, error) {
	if err := checkChanges([]string{"start", "want"}, startPSU, wantPSU, shareEach, changes); err != nil {
		return 0, err
	}
	if err := within("changes", "of them", float64(changes), 1, maxChanges); err != nil {
		return 0, err
	}
	q := math.Pow(1-shareEach, float64(changes))
	psu := (wantPSU - startPSU*q) / (1 - q)
	return psu, within("new water", "PSU", psu, MinPSU, MaxPSU)
}

func checkChanges(names []string, a, b, shareEach float64, changes int) error {
	if err := salinities(names, a, b); err != nil {
		return err
	}
	if err := share("share", shareEach); err != nil {
		return err
	}
	return within("changes", "of them", float64(changes), 0, maxChanges)
}

// restAfter is the part of the way to the new water that is left at want.
func restAfter(start, newPSU, want float64) (float64, error) {
	if err := salinities([]string{"start", "new water", "want"}, start, newPSU, want); err != nil {
		return 0, err
	}
	if start == newPSU || want == newPSU || (want-start)*(newPSU-want) < 0 {
		return 0, fmt.Errorf("want: got %.6g PSU, want it from the %.6g PSU of now to short of the new water's %.6g PSU", want, start, newPSU)
	}
	return (newPSU - want) / (newPSU - start), nil
}
