package salinity

import "math"

// lowPSU is the salinity below which PSS-78 needs the extension.
const lowPSU = 2.0

// leastRatio lies just below the conductivity ratio that pure water is given:
// from here on salinity rises with the ratio at every temperature in range.
const leastRatio = 1.2e-5

// greatestRatio lies above the conductivity ratio of 42 PSU.
const greatestRatio = 1.3

// practical is the practical salinity of a conductivity ratio R_t at t68 °C,
// with the low-salinity extension below 2 scaled so that the two meet there.
//
// Accuracy: the scale is defined so; against the bare extension the scaling
// changes the salinity by up to 0.02 % between -2 and 35 °C. Codes without
// the +Y term differ by up to 1.1 % in conductivity at 0.05 PSU.
// Source: Hill, Dauphinee & Woods 1986 in the form of the TEOS-10 toolbox; the
// paper itself was not seen.
func practical(rt, t68 float64) float64 {
	s := pss78(rt, t68)
	if s >= lowPSU {
		return s
	}
	return max(0, hill(rt, t68)*meeting(t68))
}

// hill is PSS-78 less the terms that keep it from vanishing with the salt.
func hill(rt, t68 float64) float64 {
	x, y := 400*rt, math.Sqrt(100*rt)
	return pss78(rt, t68) - a0/poly(x, 1, 1.5, 1) - b0*warmth(t68)/poly(y, 1, 1, 1, 1)
}

// meeting is the factor that makes the extension give 2 where PSS-78 does.
func meeting(t68 float64) float64 {
	rt := solve(func(rt float64) float64 { return pss78(rt, t68) }, lowPSU, leastRatio, greatestRatio)
	return lowPSU / hill(rt, t68)
}

// ratioOf undoes practical.
func ratioOf(psu, t68 float64) float64 {
	if psu >= lowPSU {
		return solve(func(rt float64) float64 { return pss78(rt, t68) }, psu, leastRatio, greatestRatio)
	}
	scale := meeting(t68)
	return solve(func(rt float64) float64 { return hill(rt, t68) * scale }, psu, leastRatio, greatestRatio)
}
