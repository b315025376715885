package lua51

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// longText is the length from which %s without a precision takes the text as
// it is, with its zero bytes and without padding (bytes; 0 to any; exact; the
// C program, measured).
const longText = 100

// verb reads the verb and writes the argument.
func (f *formatter) verb(spec layoutSpec, arg Arg) {
	verb := f.peek()
	f.at++
	switch verb {
	case 'c', 'd', 'i', 'o', 'u', 'x', 'X', 'e', 'E', 'f', 'g', 'G':
		if n, ok := f.number(arg); ok {
			f.numberVerb(spec, verb, n)
		}
	case 'q':
		f.quoted(arg)
	case 's':
		f.str(spec, arg)
	case 0:
		f.fail(errors.New("invalid option '%' to 'format'"))
	default:
		f.fail(fmt.Errorf("invalid option '%%%s' to 'format'", string([]byte{verb})))
	}
}

// number is the argument as a number; a text may read as one.
func (f *formatter) number(arg Arg) (float64, bool) {
	got := arg.TypeName
	switch arg.Kind {
	case KindNumber:
		return arg.Number, true
	case KindText:
		f.tick(len(arg.Text))
		if n, ok := ParseNumber(arg.Text); ok {
			return n, true
		}
		got = "string"
	}
	f.bad("number expected, got " + got)
	return 0, false
}

// numberVerb writes a number by one of C's verbs for numbers.
func (f *formatter) numberVerb(spec layoutSpec, verb byte, n float64) {
	switch verb {
	case 'c':
		f.charVerb(spec, n)
	case 'd', 'i':
		v := ToInteger(n)
		u := uint64(v)
		if v < 0 {
			u = -u
		}
		f.integer(spec, spec.sign(v < 0), strconv.FormatUint(u, 10))
	case 'u':
		f.integer(spec, "", strconv.FormatUint(toUnsigned(n), 10))
	case 'o':
		f.octal(spec, toUnsigned(n))
	case 'x', 'X':
		f.hex(spec, verb, toUnsigned(n))
	default:
		f.float(spec, verb, n)
	}
}

// sign is the text before a number that may be negative.
func (s layoutSpec) sign(negative bool) string {
	switch {
	case negative:
		return "-"
	case s.plus:
		return "+"
	case s.space:
		return " "
	}
	return ""
}

// charVerb writes the byte of a number. C's buffer ends at a zero byte, so
// the number 0 leaves only the padding before it.
func (f *formatter) charVerb(spec layoutSpec, n float64) {
	v := ToInteger(n)
	if v != int64(int32(v)) {
		v = 0 // C's narrowest integer has a zero low byte
	}
	pad := strings.Repeat(" ", max(spec.width-1, 0))
	text := pad + string([]byte{byte(v)})
	if spec.minus {
		text = string([]byte{byte(v)}) + pad
	}
	f.out.text(cText(text))
}

// integer writes digits with a sign or prefix; a precision is the least count
// of digits and switches the zero flag off. The digit 0 with precision 0
// vanishes.
func (f *formatter) integer(spec layoutSpec, prefix, digits string) {
	if spec.precision >= 0 {
		spec.zero = false
		if digits == "0" {
			digits = ""
		}
		digits = strings.Repeat("0", max(spec.precision-len(digits), 0)) + digits
	}
	f.padded(spec, prefix, digits)
}

// octal writes an octal number; the # flag makes the first digit a zero.
func (f *formatter) octal(spec layoutSpec, n uint64) {
	digits := strconv.FormatUint(n, 8)
	if spec.alternate && spec.precision <= len(digits) && (n != 0 || spec.precision == 0) {
		if n == 0 {
			spec.precision = 1
		} else {
			digits = "0" + digits
		}
	}
	f.integer(spec, "", digits)
}

// hex writes a hexadecimal number; the # flag puts 0x before all but zero.
func (f *formatter) hex(spec layoutSpec, verb byte, n uint64) {
	digits, prefix := strconv.FormatUint(n, 16), ""
	if spec.alternate && n != 0 {
		prefix = "0x"
	}
	if verb == 'X' {
		digits, prefix = strings.ToUpper(digits), strings.ToUpper(prefix)
	}
	f.integer(spec, prefix, digits)
}

// float writes a number by e, f or g. NaN has no minus sign; infinities and
// NaN are never padded with zeros.
func (f *formatter) float(spec layoutSpec, verb byte, n float64) {
	upper := verb < 'a'
	if upper {
		verb += 'a' - 'A'
	}
	precision := spec.precision
	if precision < 0 {
		precision = 6
	}
	if math.IsNaN(n) || math.IsInf(n, 0) {
		spec.zero = false
	}
	var room [512]byte // the longest, %.99f of the largest float, has 409 bytes
	digits := string(appendFloat(room[:0], math.Abs(n), verb, precision, spec.alternate))
	if upper {
		digits = strings.ToUpper(digits)
	}
	f.padded(spec, spec.sign(math.Signbit(n) && !math.IsNaN(n)), digits)
}

// padded writes prefix and body in the width, filled with blanks before or
// after or with zeros between.
func (f *formatter) padded(spec layoutSpec, prefix, body string) {
	fill := max(spec.width-len(prefix)-len(body), 0)
	switch {
	case spec.minus:
		f.out.text(prefix + body + strings.Repeat(" ", fill))
	case spec.zero:
		f.out.text(prefix + strings.Repeat("0", fill) + body)
	default:
		f.out.text(strings.Repeat(" ", fill) + prefix + body)
	}
}

// str writes an argument as text: in C's way up to its first zero byte, cut to
// the precision and padded with blanks.
func (f *formatter) str(spec layoutSpec, arg Arg) {
	text := arg.Text
	if arg.Kind == KindNumber {
		text = FormatNumber(arg.Number)
	}
	if spec.precision < 0 && len(text) >= longText {
		f.out.text(text)
		return
	}
	if spec.precision >= 0 {
		text = text[:min(len(text), spec.precision)]
	}
	spec.zero = false
	f.padded(spec, "", cText(text))
}

// quoted writes a text or number as a Lua literal; flags and width have no
// effect.
func (f *formatter) quoted(arg Arg) {
	text := arg.Text
	switch arg.Kind {
	case KindNumber:
		text = FormatNumber(arg.Number)
	case KindOther:
		f.bad("string expected, got " + arg.TypeName)
		return
	}
	if f.tick(len(text)) && f.room(quotedLen(text)) {
		f.out.text(Quote(text))
	}
}
