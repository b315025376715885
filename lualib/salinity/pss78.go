package salinity

import "math"

// standardMSPerCm is the conductivity of sea water of practical salinity 35 at
// 15 °C (IPTS-68) and one atmosphere.
// Source: Culkin & Smith 1980, 42.914 mS/cm.
const standardMSPerCm = 42.914

// ratioAt is r_t, the conductivity of water of salinity 35 at t68 °C against
// that at 15 °C. Source: UNESCO 44, eq. 3.
func ratioAt(t68 float64) float64 {
	return poly(t68, 0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9)
}

// warmth is the factor of the temperature term of PSS-78, 0 at 15 °C.
// Source: UNESCO 44, eq. 2; one instrument manual misprints k as 0.00162.
func warmth(t68 float64) float64 {
	const k = 0.0162
	return (t68 - 15) / (1 + k*(t68-15))
}

// The first coefficients of eqs 1 and 2 come back in the extension to low
// salinity, where they have to vanish with the salt.
const (
	a0 = 0.0080
	b0 = 0.0005
)

// pss78 is the practical salinity of a conductivity ratio R_t, the sample
// against salinity 35 at the same temperature t68. Fitted from 2 to 42.
// Source: UNESCO 44, eqs 1 and 2 (Lewis 1980).
func pss78(rt, t68 float64) float64 {
	x := math.Sqrt(rt)
	return poly(x, a0, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081) +
		warmth(t68)*poly(x, b0, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144)
}
