package lua51

import (
	"bytes"
	"math"
	"strconv"
)

// FormatNumber prints a number as Lua 5.1 does (manual 2.2.1; C "%.14g"): 14
// significant digits, "inf", "-inf", and "nan" for a NaN of either sign.
func FormatNumber(f float64) string {
	if f == math.Trunc(f) && math.Abs(f) < 1e14 && (f != 0 || !math.Signbit(f)) {
		return strconv.FormatInt(int64(f), 10)
	}
	var room [32]byte
	out := room[:0]
	if math.Signbit(f) && !math.IsNaN(f) {
		out = append(out, '-')
	}
	return string(appendFloat(out, math.Abs(f), 'g', 14, false))
}

// appendFloat appends a number without its sign by the C rules for the verbs
// e, f and g. f is at least 0, an infinity or NaN. precision counts the digits
// after the point (for g the significant ones); alternate is the # flag.
func appendFloat(out []byte, f float64, verb byte, precision int, alternate bool) []byte {
	switch {
	case math.IsNaN(f):
		return append(out, "nan"...)
	case math.IsInf(f, 0):
		return append(out, "inf"...)
	case verb == 'g':
		return appendGeneral(out, f, precision, alternate)
	}
	start := len(out)
	out = strconv.AppendFloat(out, f, verb, precision, 64)
	if alternate && precision == 0 {
		out = insertPoint(out, start)
	}
	return out
}

// appendGeneral chooses between the forms of e and f by the exponent, as C
// does for g, and drops trailing zeros unless alternate.
func appendGeneral(out []byte, f float64, precision int, alternate bool) []byte {
	precision = max(precision, 1)
	start := len(out)
	out = strconv.AppendFloat(out, f, 'e', precision-1, 64)
	mark := start + bytes.IndexByte(out[start:], 'e')
	exponent, _ := strconv.Atoi(string(out[mark+1:])) // always digits: AppendFloat wrote them
	if exponent >= -4 && exponent < precision {
		out = strconv.AppendFloat(out[:start], f, 'f', precision-1-exponent, 64)
		mark = len(out)
	}
	if alternate {
		if bytes.IndexByte(out[start:], '.') < 0 {
			out = insertPoint(out, start)
		}
		return out
	}
	if bytes.IndexByte(out[start:mark], '.') < 0 {
		return out
	}
	head := bytes.TrimRight(out[start:mark], "0")
	head = bytes.TrimSuffix(head, []byte("."))
	return append(out[:start+len(head)], out[mark:]...)
}

// insertPoint puts a point before the exponent, or at the end.
func insertPoint(out []byte, start int) []byte {
	mark := bytes.IndexByte(out[start:], 'e')
	if mark < 0 {
		return append(out, '.')
	}
	mark += start
	out = append(out, 0)
	copy(out[mark+1:], out[mark:])
	out[mark] = '.'
	return out
}
