package lua51

import (
	"math"
	"strconv"
	"strings"
)

// ParseNumber reads a text as a number by the coercion rule of Lua 5.1
// (manual 2.2.1 and 2.1; C strtod in the C locale): white space around, a
// sign, then a decimal number with an optional exponent, or 0x and hexadecimal
// digits. A value too large becomes an infinity, as in C. "inf", "nan",
// hexadecimal fractions and underscores are refused; 010 is ten. A zero byte
// ends the text, as in C.
func ParseNumber(s string) (float64, bool) {
	s = trimSpace(cText(s))
	body := strings.TrimLeft(s, "+-")
	if len(s)-len(body) > 1 {
		return 0, false
	}
	if digits, ok := cutHexPrefix(body); ok {
		return parseHex(digits, strings.HasPrefix(s, "-"))
	}
	if !isDecimal(body) {
		return 0, false
	}
	// The only error left is a value out of range, and then the result is the
	// infinity that C gives.
	f, _ := strconv.ParseFloat(s, 64)
	return f, true
}

// ParseNumberBase reads a text as tonumber(s, base) does (manual 5.1; C
// strtoul with 64 bits). Base 10 reads any number. In other bases the text is
// an unsigned integer: a minus sign wraps round 2^64 and a value too large
// becomes 2^64-1, as in C. ok is false for a text that is no number, and for a
// base outside 2 to 36.
func ParseNumberBase(s string, base int) (f float64, ok bool) {
	if base == 10 {
		return ParseNumber(s)
	}
	if base < 2 || base > 36 {
		return 0, false
	}
	s = trimSpace(cText(s))
	negative := strings.HasPrefix(s, "-")
	if negative || strings.HasPrefix(s, "+") {
		s = s[1:]
	}
	if digits, ok := cutHexPrefix(s); ok && base == 16 {
		s = digits
	}
	n, overflow, ok := parseUnsigned(s, uint64(base))
	switch {
	case overflow:
		n = math.MaxUint64
	case negative:
		n = -n
	}
	return float64(n), ok
}

// ToInteger narrows a number to a 64-bit integer as the C program does for an
// argument that counts or indexes: the fraction is cut off; NaN and what does
// not fit give the smallest integer.
func ToInteger(f float64) int64 {
	if f >= -0x1p63 && f < 0x1p63 {
		return int64(f)
	}
	return math.MinInt64
}

// toUnsigned narrows a number to an unsigned integer as compiled C does on a
// 64-bit machine: a negative number wraps, and 2^64 and above give 0.
func toUnsigned(f float64) uint64 {
	if f >= 0x1p63 {
		return uint64(ToInteger(f-0x1p63)) ^ 1<<63
	}
	return uint64(ToInteger(f))
}

// cText cuts a text at its first zero byte, where C sees its end.
func cText(s string) string {
	if i := strings.IndexByte(s, 0); i >= 0 {
		return s[:i]
	}
	return s
}

// trimSpace cuts the white space of the C locale from both ends.
func trimSpace(s string) string { return strings.Trim(s, " \t\n\v\f\r") }

// cutHexPrefix cuts 0x off when a hexadecimal digit follows.
func cutHexPrefix(s string) (string, bool) {
	if len(s) > 2 && s[0] == '0' && (s[1] == 'x' || s[1] == 'X') && digitValue(s[2]) < 16 {
		return s[2:], true
	}
	return s, false
}

// parseHex reads hexadecimal digits, rounded once to the nearest float.
func parseHex(digits string, negative bool) (float64, bool) {
	for i := range len(digits) {
		if digitValue(digits[i]) >= 16 {
			return 0, false
		}
	}
	f, _ := strconv.ParseFloat("0x"+digits+"p0", 64)
	if negative {
		f = -f
	}
	return f, true
}

// isDecimal tells whether s is digits with at most one point and at least one
// digit, and perhaps an exponent.
func isDecimal(s string) bool {
	whole, s := cutDigits(s)
	fraction := 0
	if strings.HasPrefix(s, ".") {
		fraction, s = cutDigits(s[1:])
	}
	if whole+fraction == 0 {
		return false
	}
	if s == "" {
		return true
	}
	if s[0] != 'e' && s[0] != 'E' {
		return false
	}
	s = s[1:]
	if s != "" && (s[0] == '+' || s[0] == '-') {
		s = s[1:]
	}
	exponent, s := cutDigits(s)
	return exponent > 0 && s == ""
}

// cutDigits counts the leading decimal digits and returns what follows them.
func cutDigits(s string) (int, string) {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n, s[n:]
}

// parseUnsigned reads digits of a base. overflow tells that n did not fit 64
// bits; ok is false for a text that is not all digits.
func parseUnsigned(s string, base uint64) (n uint64, overflow, ok bool) {
	for i := range len(s) {
		d := digitValue(s[i])
		if d >= base {
			return 0, false, false
		}
		overflow = overflow || n > (math.MaxUint64-d)/base
		n = n*base + d
	}
	return n, overflow, s != ""
}

// digitValue is the value of a digit or letter, 255 for anything else.
func digitValue(c byte) uint64 {
	switch {
	case isDigit(c):
		return uint64(c - '0')
	case c >= 'a' && c <= 'z':
		return uint64(c-'a') + 10
	case c >= 'A' && c <= 'Z':
		return uint64(c-'A') + 10
	}
	return 255
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
