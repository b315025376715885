package quantity

import (
	"fmt"
	"math"
)

// Add adds two quantities of one dimension; the result is in the first one's
// unit. A temperature point plus a difference is a point.
func (q Quantity) Add(r Quantity) (Quantity, error) {
	switch {
	case q.IsPoint() && r.IsPoint():
		return Quantity{}, &MismatchError{Doing: "add", A: q, B: r, hint: `add a difference, as in Q"3 K"`}
	case q.IsPoint() || r.IsPoint():
		if r.IsPoint() {
			q, r = r, q
		}
		return q.shift(r, 1, "add")
	}
	return q.sum(r, 1, "add", '+')
}

// Sub subtracts; two temperature points give a difference in K (or degF_diff).
func (q Quantity) Sub(r Quantity) (Quantity, error) {
	switch {
	case q.IsPoint() && r.IsPoint():
		unit := differenceUnit(q.unit)
		return Quantity{value: q.value - r.inUnit(q.unit), unit: unit, origin: combine('-', q, r)}, nil
	case q.IsPoint():
		return q.shift(r, -1, "subtract")
	case r.IsPoint():
		return Quantity{}, &MismatchError{Doing: "subtract", A: q, B: r, hint: "subtract a difference from a temperature, not the other way"}
	}
	return q.sum(r, -1, "subtract", '-')
}

func differenceUnit(point *Unit) *Unit {
	symbol := "K"
	if point.symbol == "degF" {
		symbol = "degF_diff"
	}
	u, err := ParseUnit(symbol)
	if err != nil {
		panic("quantity: " + err.Error())
	}
	return u
}

func (q Quantity) shift(difference Quantity, sign float64, doing string) (Quantity, error) {
	if difference.Dimension() != dimTemp {
		return Quantity{}, &MismatchError{Doing: doing, A: q, B: difference, hint: `a temperature changes by a difference, as in Q"3 K"`}
	}
	op := byte('+')
	if sign < 0 {
		op = '-'
	}
	return Quantity{value: q.value + sign*difference.inUnit(differenceUnit(q.unit)), unit: q.unit, origin: combine(op, q, difference)}, nil
}

func (q Quantity) sum(r Quantity, sign float64, doing string, op byte) (Quantity, error) {
	if q.Dimension() != r.Dimension() {
		return Quantity{}, &MismatchError{Doing: doing, A: q, B: r, hint: mismatchHint(q, r)}
	}
	unit := q.unit
	if q.value == 0 && q.unit == nil {
		unit = r.unit
	}
	return Quantity{value: q.inUnit(unit) + sign*r.inUnit(unit), unit: unit, origin: combine(op, q, r)}, nil
}

// mismatchHint helps where one side is a bare number.
func mismatchHint(q, r Quantity) string {
	switch {
	case q.unit == nil && r.unit != nil:
		return fmt.Sprintf("give the number a unit, as in Q\"%s %s\"", formatShort(q.value), r.unit.symbol)
	case r.unit == nil && q.unit != nil:
		return fmt.Sprintf("give the number a unit, as in Q\"%s %s\"", formatShort(r.value), q.unit.symbol)
	case q.Dimension().Currency() != "" && r.Dimension().Currency() != "":
		return fmt.Sprintf("multiply by a rate, as in Q\"1.1 %s/%s\"", q.Dimension().Currency(), r.Dimension().Currency())
	}
	return ""
}

// Neg changes the sign; a temperature point has none.
func (q Quantity) Neg() (Quantity, error) {
	if q.IsPoint() {
		return Quantity{}, fmt.Errorf("cannot change the sign of the temperature %s", q.Short())
	}
	return Quantity{value: -q.value, unit: q.unit, origin: combine('n', q, Quantity{})}, nil
}

// Mul multiplies.
func (q Quantity) Mul(r Quantity) (Quantity, error) { return q.product(r, 1) }

// Div divides. Like quantities give a bare number.
func (q Quantity) Div(r Quantity) (Quantity, error) { return q.product(r, -1) }

func (q Quantity) product(r Quantity, power int) (Quantity, error) {
	op, doing := byte('*'), "multiply"
	if power < 0 {
		op, doing = '/', "divide"
	}
	if q.IsPoint() || r.IsPoint() {
		return Quantity{}, &MismatchError{Doing: doing, A: q, B: r, hint: `a temperature can only be added to or subtracted from; for a difference write Q"5 K"`}
	}
	value, unit, err := multiplyUnits(q.value, q.unit, r.value, r.unit, power)
	if err != nil {
		return Quantity{}, err
	}
	return Quantity{value: value, unit: unit, origin: combine(op, q, r)}, nil
}

// Pow raises to a whole power.
func (q Quantity) Pow(n int) (Quantity, error) {
	if q.unit == nil {
		return Quantity{value: math.Pow(q.value, float64(n)), origin: combine('^', q, Bare(float64(n)))}, nil
	}
	if q.IsPoint() {
		return Quantity{}, fmt.Errorf("cannot raise the temperature %s to a power", q.Short())
	}
	if n > maxExponent || n < -maxExponent {
		return Quantity{}, fmt.Errorf("cannot raise %s to the power %d", q.Short(), n)
	}
	terms := make([]term, len(q.unit.terms))
	for i, t := range q.unit.terms {
		terms[i] = term{t.atom, t.exponent * n}
	}
	unit, err := newUnit(terms)
	if err != nil {
		return Quantity{}, err
	}
	value := math.Pow(q.value, float64(n))
	if q.Dimension().IsNone() {
		v, _ := q.Number()
		return Quantity{value: math.Pow(v, float64(n)), origin: combine('^', q, Bare(float64(n)))}, nil
	}
	return Quantity{value: value, unit: unit, origin: combine('^', q, Bare(float64(n)))}, nil
}

// Sqrt takes the square root; the exponents of the dimension must be even.
func (q Quantity) Sqrt() (Quantity, error) {
	if q.value < 0 {
		return Quantity{}, fmt.Errorf("cannot take the square root of the negative %s", q.Short())
	}
	dim, ok := q.Dimension().root(2)
	if !ok || q.IsPoint() {
		return Quantity{}, fmt.Errorf("cannot take the square root of %s (%s)", q.Short(), kindName(q))
	}
	if dim.IsNone() {
		v, _ := q.Number()
		return Bare(math.Sqrt(v)), nil
	}
	terms := make([]term, len(q.unit.terms))
	for i, t := range q.unit.terms {
		if t.exponent%2 != 0 {
			return shownIn(math.Sqrt(q.SI()), dim)
		}
		terms[i] = term{t.atom, t.exponent / 2}
	}
	unit, err := newUnit(terms)
	return Quantity{value: math.Sqrt(q.value), unit: unit}, err
}

// Abs drops the sign.
func (q Quantity) Abs() Quantity {
	if q.value >= 0 {
		return q
	}
	return Quantity{value: -q.value, unit: q.unit}
}

// equalDigits is how close two numbers must be to count as equal: about twelve
// digits, so that 12 in is 1 ft and 0.1 EUR + 0.2 EUR is 0.3 EUR.
const equalDigits = 1e-12

// Compare gives -1, 0 or 1. Quantities that agree to twelve digits are equal.
// A bare 0 compares with everything but a temperature point.
func (q Quantity) Compare(r Quantity) (int, error) {
	zero := func(x Quantity) bool { return x.unit == nil && x.value == 0 }
	if (q.Dimension() != r.Dimension() || q.IsPoint() != r.IsPoint()) && ((!zero(q) && !zero(r)) || q.IsPoint() || r.IsPoint()) {
		return 0, &MismatchError{Doing: "compare", A: q, B: r, hint: mismatchHint(q, r)}
	}
	a, b := q.SI(), r.SI()
	if q.unit == r.unit {
		a, b = q.value, r.value
	}
	if math.IsNaN(a) || math.IsNaN(b) {
		return 0, fmt.Errorf("cannot compare %s and %s: nan is no number", q.Short(), r.Short())
	}
	switch diff := a - b; {
	case a == b, !math.IsInf(diff, 0) && math.Abs(diff) <= equalDigits*max(math.Abs(a), math.Abs(b)):
		return 0, nil
	case diff < 0:
		return -1, nil
	default:
		return 1, nil
	}
}
