package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// CommaError is a number written with a comma, which is refused because it
// reads two ways.
type CommaError struct {
	Text         string
	Whole, Point string // the two readings
	unit         string
	onlyOne      bool // the number reads one way only, which is Whole
}

// Error names the number.
func (e *CommaError) Error() string {
	if e.onlyOne {
		return fmt.Sprintf("got the number %q with a comma, want none", e.Text)
	}
	return fmt.Sprintf("a comma in the number %q reads two ways", e.Text)
}

// Advice gives both readings, or the only one.
func (e *CommaError) Advice() string {
	with := func(number string) string { return strings.TrimSpace(number + " " + e.unit) }
	if e.onlyOne {
		return fmt.Sprintf("write %q", with(e.Whole))
	}
	return fmt.Sprintf("write %q or %q", with(e.Whole), with(e.Point))
}

// newCommaError works out the readings of a number with commas. One comma
// reads two ways; after a zero, or beside a point, another comma or grouping
// spaces, the number reads only one way.
func newCommaError(number, unit string) *CommaError {
	e := &CommaError{Text: number, unit: strings.TrimSpace(unit)}
	plain := strings.ReplaceAll(number, " ", "")
	last, point := strings.LastIndex(plain, ","), strings.LastIndex(plain, ".")
	decimal := plain[:last] + "." + plain[last+1:]
	e.Whole = strings.ReplaceAll(plain, ",", "")
	e.Point = strings.TrimSuffix(strings.TrimRight(decimal, "0"), ".")
	switch {
	case point > last || strings.Count(plain, ",") > 1:
		e.onlyOne = true
	case point >= 0 || plain != number || strings.TrimLeft(plain[:last], "+-0") == "":
		e.onlyOne = true
		e.Whole = strings.ReplaceAll(plain[:last], ".", "") + "." + plain[last+1:]
	}
	return e
}

var fractionSigns = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3")

// A number at the head of a text: decimal with optional exponent, digits
// grouped by single spaces, a fraction, or a whole number and a fraction.
var (
	fractionHead = regexp.MustCompile(`^([+-]?) ?(?:(\d{1,9})(?:\s+|-))?(\d{1,6})\s*/\s*(\d{1,6})`)
	groupedHead  = regexp.MustCompile(`^[+-]?\d{1,3}(?: \d{3})+(?:\.\d+)?`)
	decimalHead  = regexp.MustCompile(`^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?`)
	commaHead    = regexp.MustCompile(`^[+-]?\d[\d., ]*,[\d.,]*\d`)
)

// headNumber takes a number off the head of a text. ok is false when there is
// none.
func headNumber(text string) (value float64, rest string, ok bool, err error) {
	if text == "" || !strings.ContainsRune("+-.0123456789", rune(text[0])) {
		return 0, text, false, nil
	}
	if comma := commaHead.FindString(text); comma != "" {
		return 0, text, true, newCommaError(comma, text[len(comma):])
	}
	if m := fractionHead.FindStringSubmatch(text); m != nil {
		return fraction(text, m)
	}
	head := groupedHead.FindString(text)
	if head != "" && len(head) < len(text) && text[len(head)] >= '0' && text[len(head)] <= '9' {
		head = ""
	}
	if head == "" {
		head = decimalHead.FindString(text)
	}
	if head == "" {
		return 0, text, false, nil
	}
	value, err = strconv.ParseFloat(strings.ReplaceAll(head, " ", ""), 64)
	if err != nil || math.IsInf(value, 0) {
		return 0, text, true, fmt.Errorf("the number %q is too large", head)
	}
	return value, text[len(head):], true, nil
}

func fraction(text string, m []string) (float64, string, bool, error) {
	whole, _ := strconv.ParseFloat("0"+m[2], 64)
	over, _ := strconv.ParseFloat(m[3], 64)
	under, _ := strconv.ParseFloat(m[4], 64)
	if under == 0 {
		return 0, text, true, fmt.Errorf("the fraction %q divides by zero", m[0])
	}
	if m[2] != "" && over >= under {
		return 0, text, true, fmt.Errorf("got the fraction %q, want one below 1 after the whole number", m[0])
	}
	value := (whole*under + over) / under
	if m[1] == "-" {
		value = -value
	}
	return value, text[len(m[0]):], true, nil
}
