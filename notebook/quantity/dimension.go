// Package quantity holds numbers with units: it parses what a keeper types,
// keeps and checks dimensions through arithmetic, converts, compares and
// prints. Dates are here too, since their difference is a time. It is a leaf:
// it imports nothing of the project.
//
// A quantity keeps the number in the unit it was given in, so that what was
// typed comes back unchanged; conversion factors are kept as a numerator and a
// denominator, both exact, so that 12 in equals 1 ft to the last bit.
package quantity

import (
	"fmt"
	"strings"
)

// The base dimensions, in the order in which they are printed.
const (
	length = iota
	mass
	time
	temperature
	current
	luminous
	amount
	equivalents // amounts of charge, in which hardness and alkalinity are counted
	bases
)

var baseNames = [bases]string{"length", "mass", "time", "temperature", "current", "luminous intensity", "amount", "equivalents"}

// maxExponent bounds every exponent of a dimension: beyond it no physical
// quantity is meant.
const maxExponent = 12

// moneyPart is one currency with its exponent.
type moneyPart struct {
	code     [3]byte
	exponent int8
}

// Dimension says what kind of thing a quantity measures: exponents of the base
// dimensions and of up to two currencies (a rate such as EUR/USD has two).
// Dimensions are comparable with ==.
type Dimension struct {
	exponent [bases]int8
	money    [2]moneyPart // sorted by code, empty parts last
}

// IsNone reports whether the dimension is that of a bare number.
func (d Dimension) IsNone() bool { return d == Dimension{} }

// IsMoney reports whether the dimension is an amount of one currency.
func (d Dimension) IsMoney() bool {
	return d.exponent == [bases]int8{} && d.money[0].exponent == 1 && d.money[1].exponent == 0
}

// Currency gives the code of the dimension's only currency, or "".
func (d Dimension) Currency() string {
	if d.money[0].exponent == 0 || d.money[1].exponent != 0 {
		return ""
	}
	return string(d.money[0].code[:])
}

// plus multiplies two dimensions, the second raised to a power.
func (d Dimension) plus(e Dimension, power int) (Dimension, error) {
	for i := range d.exponent {
		sum := int(d.exponent[i]) + int(e.exponent[i])*power
		if sum > maxExponent || sum < -maxExponent {
			return d, fmt.Errorf("the exponent of %s grows beyond %d", baseNames[i], maxExponent)
		}
		d.exponent[i] = int8(sum)
	}
	for _, part := range e.money {
		if part.exponent == 0 {
			continue
		}
		var err error
		if d.money, err = addMoney(d.money, part, power); err != nil {
			return d, err
		}
	}
	return d, nil
}

// addMoney adds a currency's exponent to the sorted pair of currencies.
func addMoney(have [2]moneyPart, part moneyPart, power int) ([2]moneyPart, error) {
	sum := int(part.exponent) * power
	var parts []moneyPart
	for _, h := range have {
		switch {
		case h.exponent == 0:
		case h.code == part.code:
			sum += int(h.exponent)
		default:
			parts = append(parts, h)
		}
	}
	if sum > maxExponent || sum < -maxExponent {
		return have, fmt.Errorf("the exponent of %s grows beyond %d", string(part.code[:]), maxExponent)
	}
	if sum != 0 {
		parts = append(parts, moneyPart{part.code, int8(sum)})
	}
	if len(parts) > 2 {
		return have, fmt.Errorf("three currencies in one value")
	}
	if len(parts) == 2 && string(parts[0].code[:]) > string(parts[1].code[:]) {
		parts[0], parts[1] = parts[1], parts[0]
	}
	var result [2]moneyPart
	copy(result[:], parts)
	return result, nil
}

// timesKnown multiplies a dimension by another; it is for the tables of this
// package, whose exponents are known to be small.
func (d Dimension) timesKnown(e Dimension, power int) Dimension {
	result, err := d.plus(e, power)
	if err != nil {
		panic("quantity: table of units: " + err.Error())
	}
	return result
}

// root divides every exponent by n; ok is false when one does not divide.
func (d Dimension) root(n int) (Dimension, bool) {
	for i, e := range d.exponent {
		if int(e)%n != 0 {
			return d, false
		}
		d.exponent[i] = int8(int(e) / n)
	}
	for i, p := range d.money {
		if int(p.exponent)%n != 0 {
			return d, false
		}
		d.money[i].exponent = int8(int(p.exponent) / n)
	}
	return d, true
}

// String names the dimension in the words of the trade where it has one
// ("a length", "a flow"), otherwise by its base dimensions.
func (d Dimension) String() string {
	if name, ok := dimensionNames[d]; ok {
		return name
	}
	if d.IsMoney() {
		return "an amount of " + d.Currency()
	}
	if per, ok := d.moneyPer(); ok {
		return per
	}
	var parts []string
	add := func(name string, e int8) {
		switch {
		case e == 1:
			parts = append(parts, name)
		case e != 0:
			parts = append(parts, fmt.Sprintf("%s^%d", name, e))
		}
	}
	for i, e := range d.exponent {
		add(baseNames[i], e)
	}
	for _, p := range d.money {
		if p.exponent != 0 {
			add(string(p.code[:]), p.exponent)
		}
	}
	return "a value of dimension " + strings.Join(parts, " x ")
}

// moneyPer names a price: "an amount of EUR per energy".
func (d Dimension) moneyPer() (string, bool) {
	code := d.Currency()
	if code == "" || d.money[0].exponent != 1 {
		return "", false
	}
	rest := d
	rest.money = [2]moneyPart{}
	for i := range rest.exponent {
		rest.exponent[i] = -rest.exponent[i]
	}
	name, ok := dimensionNames[rest]
	if !ok {
		return "", false
	}
	return "an amount of " + code + " per " + strings.TrimPrefix(strings.TrimPrefix(name, "an "), "a "), true
}
