package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Round rounds a number to a count of decimals, half away from zero, on the
// decimal value of 15 significant digits, as spreadsheets' ROUND does: 35.245
// computed as 185.5*0.19 rounds to 35.25. Decimals may be negative (tens).
func Round(v float64, decimals int) float64 {
	// no float64 has a digit beyond these places
	text := FixedDecimals(v, min(max(decimals, -330), 340))
	rounded, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return v
	}
	return rounded
}

// FixedDecimals writes a number with the given count of decimals, rounded as
// Round does. Negative decimals round to tens, hundreds and so on.
func FixedDecimals(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return formatExact(v)
	}
	digits, exponent, negative := decimalDigits(v)
	// keep is the number of digits that stay: those before and after the point
	keep := exponent + 1 + decimals
	digits, exponent = roundDigits(digits, exponent, keep)
	text := placePoint(digits, exponent, decimals)
	if negative && strings.Trim(text, "0.") != "" {
		text = "-" + text
	}
	return text
}

// decimalDigits gives the 15 significant digits of |v| and the power of ten of
// the first one.
func decimalDigits(v float64) (digits []byte, exponent int, negative bool) {
	if v == 0 {
		return []byte("0"), 0, false
	}
	text := strconv.FormatFloat(math.Abs(v), 'e', 14, 64)
	mantissa, power, _ := strings.Cut(text, "e")
	exponent, _ = strconv.Atoi(power)
	return []byte(strings.Replace(mantissa, ".", "", 1)), exponent, v < 0
}

// roundDigits keeps the first digits, rounding half up in the decimal digits.
func roundDigits(digits []byte, exponent, keep int) ([]byte, int) {
	if keep >= len(digits) {
		return digits, exponent
	}
	if keep < 0 {
		return []byte("0"), 0
	}
	up := digits[keep] >= '5'
	kept := append([]byte{'0'}, digits[:keep]...)
	if up {
		i := len(kept) - 1
		for kept[i] == '9' {
			kept[i] = '0'
			i--
		}
		kept[i]++
	}
	return kept, exponent + 1
}

// placePoint writes digits, the first of which stands for 10^exponent, with a
// fixed count of decimals.
func placePoint(digits []byte, exponent, decimals int) string {
	at := func(power int) byte {
		i := exponent - power
		if i < 0 || i >= len(digits) {
			return '0'
		}
		return digits[i]
	}
	var b strings.Builder
	for power := max(exponent, 0); power >= 0; power-- {
		if b.Len() == 0 && at(power) == '0' && power > 0 {
			continue
		}
		b.WriteByte(at(power))
	}
	if decimals > 0 {
		b.WriteByte('.')
		for power := -1; power >= -decimals; power-- {
			b.WriteByte(at(power))
		}
	}
	return b.String()
}

// RoundTo rounds the quantity in its own unit to a count of decimals.
func (q Quantity) RoundTo(decimals int) Quantity {
	return Quantity{value: Round(q.value, decimals), unit: q.unit}
}
