package quantity

import (
	"math"
	"strconv"
	"strings"
)

// String prints the quantity in full: Parse gives the same quantity back.
func (q Quantity) String() string { return join(formatExact(q.value), q.unit) }

// Short prints the quantity rounded for reading: four significant digits, never
// fewer than the whole part, money to its minor unit. Digits before the point
// are grouped by a space from 10 000 on.
func (q Quantity) Short() string {
	if q.Dimension().IsMoney() && len(q.unit.terms) == 1 {
		return join(group(FixedDecimals(q.value, MinorDigits(q.Dimension().Currency()))), q.unit)
	}
	return join(formatShort(q.value), q.unit)
}

// Digits prints the number with the given count of significant digits.
func (q Quantity) Digits(n int) string {
	return join(strconv.FormatFloat(q.value, 'g', n, 64), q.unit)
}

func join(number string, unit *Unit) string {
	if unit == nil {
		return number
	}
	return number + " " + unit.symbol
}

// formatExact writes the shortest text that reads back as the same number.
func formatExact(v float64) string {
	switch {
	case math.IsInf(v, 1):
		return "inf"
	case math.IsInf(v, -1):
		return "-inf"
	case math.IsNaN(v):
		return "nan"
	case v == 0:
		return "0"
	}
	if a := math.Abs(v); a >= 1e15 || a < 1e-6 {
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// formatShort rounds to four significant digits, keeping the whole part.
func formatShort(v float64) string {
	a := math.Abs(v)
	switch {
	case v == 0 || math.IsInf(v, 0) || math.IsNaN(v):
		return formatExact(v)
	case a >= 1e15 || a < 1e-4:
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	decimals := 3 - int(math.Floor(math.Log10(a)))
	text := FixedDecimals(v, max(decimals, 0))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return group(text)
}

// group sets a space before every three digits of the whole part of numbers
// from 10 000 on.
func group(text string) string {
	sign := ""
	if strings.HasPrefix(text, "-") {
		sign, text = "-", text[1:]
	}
	whole, fraction, _ := strings.Cut(text, ".")
	if len(whole) < 5 || strings.ContainsAny(whole, "einf") {
		return sign + text
	}
	var b strings.Builder
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(digit)
	}
	if fraction != "" {
		b.WriteString("." + fraction)
	}
	return sign + b.String()
}
