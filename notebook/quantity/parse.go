package quantity

import (
	"fmt"
	"strings"
)

// maxText bounds the text of one quantity.
const maxText = 200

// ParseError is a text that is no quantity.
type ParseError struct {
	Text string
	Want string
}

// Error gives what was got and wanted.
func (e *ParseError) Error() string {
	return fmt.Sprintf("got the text %q, want %s", e.Text, e.Want)
}

// Parse reads a number with an optional unit: "72 in", "1/2 in", "3 1/4 in",
// "6 ft 2 1/2 in", `5' 6"`, "1 200 L/h", "0.31 EUR/kWh", "25 degC", "€ 40". Any
// comma in a number is a CommaError, an unknown unit an UnknownUnitError.
func Parse(text string) (Quantity, error) {
	if len(text) > maxText {
		return Quantity{}, fmt.Errorf("got a text of %d characters, want a number with a unit", len(text))
	}
	rest := strings.TrimSpace(fractionSigns.Replace(plainSpaces.Replace(text)))
	negative := strings.HasPrefix(rest, "-")
	rest, money, err := leadingCurrency(rest)
	if err != nil {
		return Quantity{}, err
	}
	parts, err := readParts(rest)
	if err != nil {
		return Quantity{}, err
	}
	if len(parts) == 0 {
		return Quantity{}, &ParseError{Text: text, Want: `a number with a unit, as in "72 in"`}
	}
	if money != nil {
		if len(parts) != 1 || parts[0].unit != nil {
			return Quantity{}, &ParseError{Text: text, Want: "one currency"}
		}
		return Quantity{value: parts[0].value, unit: money}, nil
	}
	return joinParts(text, parts, negative)
}

var plainSpaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ", "−", "-", "′", "'", "″", `"`, "’", "'", "”", `"`, "''", `"`)

type part struct {
	value float64
	unit  *Unit
}

// readParts splits "6 ft 2 1/2 in" into its numbers with their units.
func readParts(rest string) ([]part, error) {
	var parts []part
	for rest != "" {
		value, after, ok, err := headNumber(rest)
		if err != nil {
			return nil, err
		}
		if !ok || len(parts) > 3 {
			return nil, nil
		}
		unitText, next := unitHead(strings.TrimLeft(after, " "))
		unit, err := ParseUnit(unitText)
		if err != nil {
			return nil, err
		}
		parts = append(parts, part{value, unit})
		rest = strings.TrimLeft(next, " ")
	}
	return parts, nil
}

// twoWords are units that are written as two words.
var twoWords = map[string]string{
	"sq ft": "ft2", "sq in": "in2", "sq m": "m2", "cu ft": "ft3", "cu in": "in3", "cu m": "m3", "fl oz": "fl_oz", "imp gal": "gal_imp", "UK gal": "gal_imp", "US gal": "gal", "gal imp": "gal_imp",
	"deg C": "degC", "deg F": "degF", "° C": "degC", "° F": "degF", "m of water": "mH2O", "cm of water": "cmH2O", "ft of water": "ftH2O", "in of water": "inH2O", "per cent": "%",
}

// unitHead takes the text of a unit off the head of a text: up to a space that
// a further number follows, or to the end.
func unitHead(text string) (unit, rest string) {
	if strings.HasPrefix(text, "'") {
		return "ft", text[1:]
	}
	if strings.HasPrefix(text, `"`) {
		return "in", text[1:]
	}
	end := strings.IndexByte(text, ' ')
	for end >= 0 && end+1 < len(text) && !strings.ContainsRune("+-.0123456789", rune(text[end+1])) {
		next := strings.IndexByte(text[end+1:], ' ')
		if next < 0 {
			end = -1
			break
		}
		end += 1 + next
	}
	if end >= 0 {
		unit, rest = text[:end], text[end:]
	} else {
		unit = text
	}
	unit = strings.TrimSpace(unit)
	if known, ok := twoWords[unit]; ok {
		unit = known
	}
	return strings.ReplaceAll(strings.ReplaceAll(unit, " / ", "/"), " /", "/"), rest
}

// leadingCurrency takes a sign or code of money off the head of "€ 40".
func leadingCurrency(text string) (string, *Unit, error) {
	for _, sign := range []string{"€", "£", "$", "¥"} {
		if strings.HasPrefix(text, sign) {
			unit, err := ParseUnit(sign)
			return strings.TrimLeft(text[len(sign):], " "), unit, err
		}
	}
	if len(text) > 4 && text[3] == ' ' && currencyAtom(text[:3]) != nil {
		unit, err := ParseUnit(text[:3])
		return strings.TrimLeft(text[4:], " "), unit, err
	}
	return text, nil, nil
}

// joinParts adds up the parts of a compound text, each in a smaller unit of the
// same dimension than the one before, and gives the sum in the last unit. A
// minus sign before the first part holds for all.
func joinParts(text string, parts []part, negative bool) (Quantity, error) {
	sum := Quantity{value: parts[0].value, unit: parts[0].unit}
	if len(parts) == 1 {
		return sum, nil
	}
	last := parts[len(parts)-1].unit
	total := 0.0
	for i, p := range parts {
		if p.unit == nil || p.unit.isPoint() || p.unit.dim != last.Dimension() || (i > 0 && (p.value < 0 || !smaller(p.unit, parts[i-1].unit))) {
			return Quantity{}, &ParseError{Text: text, Want: `one number with a unit, or falling ones as in "6 ft 2 in"`}
		}
		v := Quantity{value: p.value, unit: p.unit}.inUnit(last)
		if negative && i > 0 {
			v = -v
		}
		total += v
	}
	return Quantity{value: total, unit: last}, nil
}

func smaller(a, b *Unit) bool { return a.num/a.den < b.num/b.den }
