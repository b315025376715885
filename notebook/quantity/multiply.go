package quantity

import (
	"math"
	"strings"
)

// multiplyUnits multiplies (power 1) or divides (power -1) two numbers with
// units and finds the unit in which a person would read the result: atoms of
// one dimension are brought together (m by cm gives cm2), and a product of
// unlike atoms that has a plain name (W by h, EUR/kWh by kWh) is shown in it.
func multiplyUnits(a float64, ua *Unit, b float64, ub *Unit, power int) (float64, *Unit, error) {
	value := a * b
	if power < 0 {
		value = a / b
	}
	if ub == nil {
		return value, ua, nil
	}
	if ua == nil && power > 0 {
		return value, ub, nil
	}
	var terms []term
	if ua != nil {
		terms = append(terms, ua.terms...)
	}
	over, under := 1.0, 1.0
	for _, t := range ub.terms {
		exponent := t.exponent * power
		if like := likeAtom(terms, t.atom); like != nil && like != t.atom {
			for range max(exponent, 0) {
				over, under = over*t.atom.num*like.den, under*t.atom.den*like.num
			}
			for range max(-exponent, 0) {
				over, under = over*t.atom.den*like.num, under*t.atom.num*like.den
			}
			t.atom = like
		}
		terms = append(terms, term{t.atom, exponent})
	}
	over, under = reduce(over, under)
	value = value * over / under
	unit, err := newUnit(terms)
	if err != nil {
		return 0, nil, err
	}
	return readable(value, unit)
}

// likeAtom finds an atom of the same dimension among the terms.
func likeAtom(terms []term, a *atom) *atom {
	for _, t := range terms {
		if t.atom.dim == a.dim {
			return t.atom
		}
	}
	return nil
}

// readable brings a value to the unit a person would read it in.
func readable(value float64, unit *Unit) (float64, *Unit, error) {
	if unit == nil {
		return value, nil, nil
	}
	if unit.dim.IsNone() {
		if len(unit.terms) == 1 && unit.terms[0].exponent == 1 {
			return value, unit, nil
		}
		return Quantity{value: value, unit: unit}.SI(), nil, nil
	}
	if plain(unit) {
		return value, unit, nil
	}
	target, err := plainUnit(unit)
	if err != nil || target == nil {
		return value, unit, err
	}
	return Quantity{value: value, unit: unit}.inUnit(target), target, nil
}

// plain units are read as they are: one atom, or different kinds over each
// other that do not reduce (EUR/kWh, W/(m2.K)).
func plain(u *Unit) bool {
	if len(u.terms) == 1 {
		return true
	}
	if shown, ok := shownUnits[u.dim]; ok && (!isRate(u) || !strings.Contains(shown, "/")) {
		return false
	}
	for _, t := range u.terms {
		if t.atom.dim.IsNone() {
			return false
		}
		if t.atom.dim == u.dim {
			return false
		}
	}
	return !powerOfAnAtom(u)
}

// isRate is a single unit over a single one, as L/h or kg/m3.
func isRate(u *Unit) bool {
	return len(u.terms) == 2 && u.terms[0].exponent > 0 && u.terms[1].exponent < 0 && !u.terms[0].atom.dim.IsNone()
}

// powerOfAnAtom reports whether the whole is a power of one of its atoms'
// dimensions, as L/cm2 is a length.
func powerOfAnAtom(u *Unit) bool {
	_, _, ok := asPower(u)
	return ok
}

func asPower(u *Unit) (*atom, int, bool) {
	for _, t := range u.terms {
		for n := 1; n <= 4; n++ {
			if none.timesKnown(t.atom.dim, n) == u.dim {
				return t.atom, n, true
			}
			if none.timesKnown(t.atom.dim, -n) == u.dim {
				return t.atom, -n, true
			}
		}
	}
	return nil, 0, false
}

// shownUnits are the units in which results of a dimension are shown when the
// operands suggest none.
var shownUnits = map[Dimension]string{
	dimLength: "m", dimArea: "m2", dimVolume: "L", dimMass: "kg", dimTime: "h", dimForce: "N", dimPressure: "kPa", dimEnergy: "kWh", dimPower: "W",
	dimVoltage: "V", dimOhm: "ohm", dimCurrent: "A", dimFlow: "L/h", dimSpeed: "m/s", dimDensity: "kg/m3", dimLux: "lx", dimLuminous: "lm", dimAmount: "mol", dimEq: "meq", dimEqPV: "meq/L",
	dimSiemens: "S", dimCharge: "Ah", dimTemp: "K",
}

// plainUnit finds the unit to show a compound one in; nil keeps it.
func plainUnit(u *Unit) (*Unit, error) {
	if a, n, ok := asPower(u); ok && !a.dim.IsNone() {
		return newUnit([]term{{a, n}})
	}
	if symbol, ok := shownUnits[u.dim]; ok {
		return ParseUnit(symbol)
	}
	return reduced(u)
}

// reduced drops the ratios of a compound unit (% and the like) and folds what is
// left of it into one atom a dimension.
func reduced(u *Unit) (*Unit, error) {
	var terms []term
	for _, t := range u.terms {
		if !t.atom.dim.IsNone() {
			terms = append(terms, t)
		}
	}
	unit, err := newUnit(terms)
	if err != nil || unit == nil || len(terms) == len(u.terms) {
		return nil, err
	}
	return unit, nil
}

// shownIn makes a quantity of a number in SI base units, in the unit in which
// its dimension is shown.
func shownIn(si float64, dim Dimension) (Quantity, error) {
	if symbol, ok := shownUnits[dim]; ok {
		u, err := ParseUnit(symbol)
		if err != nil {
			return Quantity{}, err
		}
		num, den := u.factor()
		return Quantity{value: si * den / num, unit: u}, nil
	}
	if math.IsNaN(si) {
		return Bare(si), nil
	}
	return Quantity{}, &ParseError{Text: dim.String(), Want: "a dimension with a unit of its own"}
}
