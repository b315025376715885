package xlsx

import (
	"math"
	"strconv"
	"strings"

	"weirbook/notebook/quantity"
)

// fifteen rounds a number to the 15 significant digits that a spreadsheet
// keeps; the library below would cut the others off instead of rounding.
func fifteen(v float64) float64 {
	if r := math.Round(v * 1e4); math.Abs(r) < 1e15 && r/1e4 == v {
		return v // it has four decimals at most
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 14, 64), 64)
	if err != nil {
		return v
	}
	return rounded
}

// decimalsFormat is the number format with a fixed count of decimals.
func decimalsFormat(decimals int) string {
	if decimals <= 0 {
		return "#,##0"
	}
	return "#,##0." + strings.Repeat("0", decimals)
}

// scientificFormat shows what is too large or too small for decimals.
const scientificFormat = "0.000E+00"

// shareFormat shows a share as a percentage.
const shareFormat = "0.0##%"

// generalFormat shows a number as it was typed.
const generalFormat = "General"

// textFormat says that a cell is text, whatever it looks like. The format has a
// number of its own.
const (
	textFormat   = "@"
	textFormatID = 49
)

// dateFormat is that of ISO 8601.
const dateFormat = "yyyy-mm-dd"

// readingDecimals gives the count of decimals that show four significant digits
// and no trailing zeros; -1 where the scientific form serves better.
func readingDecimals(v float64) int {
	a := math.Abs(v)
	switch {
	case a >= 1e15 || a > 0 && a < 1e-6:
		return -1
	case a == math.Trunc(a):
		return 0
	}
	decimals := max(3-int(math.Floor(math.Log10(a))), 0)
	text := strings.TrimRight(quantity.FixedDecimals(v, decimals), "0")
	_, fraction, _ := strings.Cut(text, ".")
	return len(fraction)
}

// digitsWidth estimates how many characters a number takes with grouping.
func digitsWidth(v float64, decimals int) int {
	a, n := math.Abs(v), 1
	for a >= 10 && n < 20 {
		a /= 10
		n++
	}
	n += (n - 1) / 3
	if decimals > 0 {
		n += 1 + decimals
	}
	if v < 0 {
		n++
	}
	return n
}

// in gives the number of a quantity in a unit; ok is false when it cannot be
// shown in it.
func in(q quantity.Quantity, unit string) (v float64, ok bool) {
	v, err := q.In(unit)
	return v, err == nil
}
