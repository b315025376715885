package quantity

import (
	"fmt"
	"math"
)

// Quantity is a number with a unit and, optionally, where it came from. It is
// immutable; the zero Quantity is the bare number 0. Money of different
// currencies has different dimensions.
type Quantity struct {
	value  float64 // in unit
	unit   *Unit
	origin *Origin
}

// New makes a quantity of a number and the text of a unit.
func New(value float64, unit string) (Quantity, error) {
	u, err := ParseUnit(unit)
	if err != nil {
		return Quantity{}, err
	}
	return Quantity{value: value, unit: u}, nil
}

// Must is New for units that the program itself writes; it panics on a unit
// that does not exist.
func Must(value float64, unit string) Quantity {
	q, err := New(value, unit)
	if err != nil {
		panic("quantity: " + err.Error())
	}
	return q
}

// Bare makes a quantity without a unit.
func Bare(value float64) Quantity { return Quantity{value: value} }

// Value gives the number in the quantity's own unit.
func (q Quantity) Value() float64 { return q.value }

// Unit gives the unit in which the quantity is shown; nil for a bare number.
func (q Quantity) Unit() *Unit { return q.unit }

// Dimension gives what the quantity measures.
func (q Quantity) Dimension() Dimension { return q.unit.Dimension() }

// IsPoint reports whether the quantity is a temperature point.
func (q Quantity) IsPoint() bool { return q.unit.isPoint() }

// SI gives the number in SI base units (kg, m, s, K, A, lm, mol) and units of
// money; for a temperature point the kelvins above absolute zero.
func (q Quantity) SI() float64 {
	num, den := q.unit.factor()
	v := q.value * num / den
	if q.IsPoint() {
		v += q.unit.terms[0].atom.offset
	}
	return v
}

// Number gives the number as a bare one; ok is false unless the quantity is
// dimensionless. 20 % gives 0.2.
func (q Quantity) Number() (v float64, ok bool) {
	if !q.Dimension().IsNone() {
		return 0, false
	}
	return q.SI(), true
}

// MismatchError is two quantities of different dimensions where one is needed.
type MismatchError struct {
	Doing string // "add", "compare"
	A, B  Quantity
	hint  string
}

// Error names both.
func (e *MismatchError) Error() string {
	return fmt.Sprintf("cannot %s %s (%s) and %s (%s)", e.Doing, e.A.Short(), kindName(e.A), e.B.Short(), kindName(e.B))
}

// Advice says what would help.
func (e *MismatchError) Advice() string { return e.hint }

func kindName(q Quantity) string {
	if q.IsPoint() {
		return "a temperature"
	}
	if q.Dimension() == dimTemp {
		return "a temperature difference"
	}
	return q.Dimension().String()
}

// To gives the same quantity shown in another unit.
func (q Quantity) To(unit *Unit) (Quantity, error) {
	if q.unit == unit {
		return q, nil
	}
	if q.Dimension() != unit.Dimension() || q.IsPoint() != unit.isPoint() {
		wanted := Quantity{value: 1, unit: unit}
		e := &MismatchError{Doing: "turn", A: q, B: wanted}
		return Quantity{}, &conversionError{e, q, unit}
	}
	return Quantity{value: q.inUnit(unit), unit: unit, origin: q.origin}, nil
}

type conversionError struct {
	*MismatchError
	from Quantity
	to   *Unit
}

// Error names what was got and what the unit measures.
func (e *conversionError) Error() string {
	to := e.to.Symbol()
	if to == "" {
		to = "a bare number"
	}
	return fmt.Sprintf("cannot show %s (%s) in %s (%s)", e.from.Short(), kindName(e.from), to, kindName(Quantity{unit: e.to}))
}

// inUnit gives the number in a unit of the same dimension.
func (q Quantity) inUnit(unit *Unit) float64 {
	if q.unit == unit {
		return q.value
	}
	if q.IsPoint() {
		return pointIn(q, unit)
	}
	n1, d1 := q.unit.factor()
	n2, d2 := unit.factor()
	if n1 == n2 && d1 == d2 {
		return q.value
	}
	n1, n2 = reduce(n1, n2)
	d2, d1 = reduce(d2, d1)
	over, under := reduce(n1*d2, d1*n2)
	return q.value * over / under
}

// reduce divides two whole factors by their greatest common divisor, so that
// 1 m is 1000 mm and not 1000.0000000000001. Factors that are not whole, or of
// a size that only a rounded product has, become their quotient.
func reduce(a, b float64) (float64, float64) {
	const largest = 1e60
	if a > largest || b > largest || a != math.Trunc(a) || b != math.Trunc(b) || a < 1 || b < 1 {
		return a / b, 1
	}
	x, y := a, b
	for y != 0 {
		x, y = y, math.Mod(x, y)
	}
	return a / x, b / x
}

// pointIn converts a temperature point. Celsius and Fahrenheit convert by the
// familiar formula, which is exact where the result is.
func pointIn(q Quantity, unit *Unit) float64 {
	from, to := q.unit.symbol, unit.symbol
	switch {
	case from == "degC" && to == "degF":
		return q.value*9/5 + 32
	case from == "degF" && to == "degC":
		return (q.value - 32) * 5 / 9
	default:
		return q.value
	}
}

// In gives the number in the unit written in the text.
func (q Quantity) In(unit string) (float64, error) {
	u, err := ParseUnit(unit)
	if err != nil {
		return 0, err
	}
	converted, err := q.To(u)
	return converted.value, err
}

// MustIn is In for a unit and dimension that the program itself has checked.
func (q Quantity) MustIn(unit string) float64 {
	v, err := q.In(unit)
	if err != nil {
		panic("quantity: " + err.Error())
	}
	return v
}

// WithOrigin gives the same quantity with another record of where it came from.
func (q Quantity) WithOrigin(o *Origin) Quantity {
	q.origin = o
	return q
}

// Origin says where the quantity came from; nil when that is not kept.
func (q Quantity) Origin() *Origin { return q.origin }

// Same reports whether two quantities are the same in number, unit and origin,
// bit for bit; it serves the memory of runs, not the person.
func (q Quantity) Same(r Quantity) bool {
	return math.Float64bits(q.value) == math.Float64bits(r.value) && q.unit.Symbol() == r.unit.Symbol() && q.origin.String() == r.origin.String()
}
