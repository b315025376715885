package quantity

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"
)

// term is an atom raised to a power, one factor of a unit.
type term struct {
	atom     *atom
	exponent int
}

// Unit is a unit as it is shown: an atom, or a product of powers of atoms. The
// zero *Unit (nil) is the unit of a bare number.
type Unit struct {
	symbol   string
	terms    []term
	dim      Dimension
	num, den float64
}

// Symbol gives the unit as it is written, "" for a bare number.
func (u *Unit) Symbol() string {
	if u == nil {
		return ""
	}
	return u.symbol
}

// Dimension gives what the unit measures.
func (u *Unit) Dimension() Dimension {
	if u == nil {
		return Dimension{}
	}
	return u.dim
}

// isPoint reports whether the unit is a temperature scale with its zero.
func (u *Unit) isPoint() bool {
	return u != nil && len(u.terms) == 1 && u.terms[0].exponent == 1 && u.terms[0].atom.point
}

func (u *Unit) factor() (num, den float64) {
	if u == nil {
		return 1, 1
	}
	return u.num, u.den
}

var (
	unitTable  = map[string]*atom{} // every symbol, prefixed ones included
	kelvin     *atom
	fahrenheit *atom // a difference
)

func init() {
	for i := range atoms {
		a := &atoms[i]
		if a.num == math.Trunc(a.num) {
			a.num, a.den = reduce(a.num, a.den)
		}
		unitTable[a.symbol] = a
		for _, prefix := range a.prefixes {
			f := prefixFactors[prefix]
			symbol := string(prefix) + a.symbol
			if _, taken := unitTable[symbol]; taken {
				panic("quantity: two units are written " + symbol)
			}
			unitTable[symbol] = &atom{symbol: symbol, dim: a.dim, num: a.num * f[0], den: a.den * f[1]}
		}
	}
	kelvin, fahrenheit = unitTable["K"], unitTable["degF_diff"]
}

// UnitNames lists every unit symbol and alias, for suggestions.
func UnitNames() []string {
	names := make([]string, 0, len(unitTable)+len(aliases))
	for name := range unitTable {
		names = append(names, name)
	}
	for name := range aliases {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

// newUnit makes a unit of terms, merging equal atoms and dropping those that
// cancel. It returns nil when nothing is left.
func newUnit(terms []term) (*Unit, error) {
	u := &Unit{num: 1, den: 1, terms: merge(terms)}
	for _, t := range u.terms {
		if t.exponent > maxExponent || t.exponent < -maxExponent {
			return nil, fmt.Errorf("the exponent of %s grows beyond %d", t.atom.symbol, maxExponent)
		}
		var err error
		if u.dim, err = u.dim.plus(t.atom.dim, t.exponent); err != nil {
			return nil, err
		}
		for range max(t.exponent, 0) {
			u.num, u.den = u.num*t.atom.num, u.den*t.atom.den
		}
		for range max(-t.exponent, 0) {
			u.num, u.den = u.num*t.atom.den, u.den*t.atom.num
		}
	}
	if len(u.terms) == 0 {
		return nil, nil
	}
	if !(u.num > 0 && u.den > 0) || math.IsInf(u.num, 0) || math.IsInf(u.den, 0) {
		return nil, fmt.Errorf("the unit is too large or too small to compute with")
	}
	u.symbol = writeTerms(u.terms)
	return u, nil
}

// merge brings equal atoms together and puts positive powers first, the order
// in which a unit is written: what is printed and read again has the same
// factor to the last bit.
func merge(terms []term) []term {
	merged := make([]term, 0, len(terms))
next:
	for _, t := range terms {
		for i := range merged {
			if merged[i].atom == t.atom {
				merged[i].exponent += t.exponent
				continue next
			}
		}
		merged = append(merged, t)
	}
	merged = slices.DeleteFunc(merged, func(t term) bool { return t.exponent == 0 })
	slices.SortStableFunc(merged, func(a, b term) int {
		return cmp.Compare(sign(b.exponent), sign(a.exponent))
	})
	return merged
}

func sign(exponent int) int {
	if exponent < 0 {
		return -1
	}
	return 1
}

// writeTerms writes a product of powers: positive ones first, then those under
// the stroke, in brackets when there are several.
func writeTerms(terms []term) string {
	var over, under []string
	for _, t := range terms {
		e := t.exponent
		text := t.atom.symbol
		if e < 0 {
			e = -e
		}
		if e > 1 {
			text += strconv.Itoa(e)
		}
		if t.exponent > 0 {
			over = append(over, text)
		} else {
			under = append(under, text)
		}
	}
	text := strings.Join(over, ".")
	if text == "" {
		text = "1"
	}
	switch len(under) {
	case 0:
		return text
	case 1:
		return text + "/" + under[0]
	default:
		return text + "/(" + strings.Join(under, ".") + ")"
	}
}

// unitCache keeps parsed units by the text they were written in. It is bounded
// so that a notebook cannot fill the memory with invented unit texts.
var (
	unitCache      sync.Map
	unitCacheSize  int
	unitCacheGuard sync.Mutex
)

const unitCacheLimit = 4096

// ParseUnit reads a unit such as "in", "kWh", "W/(m2.K)" or "EUR/kWh". An empty
// text is the unit of a bare number (nil).
func ParseUnit(text string) (*Unit, error) {
	if cached, ok := unitCache.Load(text); ok {
		return cached.(*Unit), nil
	}
	terms, err := parseTerms(text)
	if err != nil {
		return nil, err
	}
	u, err := newUnit(terms)
	if err != nil {
		return nil, err
	}
	if u != nil {
		for _, t := range u.terms {
			if t.atom.point && (len(u.terms) > 1 || t.exponent != 1) {
				return ParseUnit(differences(u.terms))
			}
		}
		if cancelsPlainly(u) {
			u = nil
		}
	}
	unitCacheGuard.Lock()
	defer unitCacheGuard.Unlock()
	if unitCacheSize < unitCacheLimit {
		unitCacheSize++
		unitCache.Store(text, u)
	}
	return u, nil
}

// cancelsPlainly is true where nothing at all is left of a unit (W.h/Wh); false
// for ratios that are read as such (g/kg, mL/L) and where a factor is left over
// (kWh/(W.h) is 1000).
func cancelsPlainly(u *Unit) bool {
	return u.dim.IsNone() && len(u.terms) > 2 && u.num == u.den
}

// differences writes a compound unit with its temperature points read as
// differences: "W/(m2.degC)" is W/(m2.K).
func differences(terms []term) string {
	changed := make([]term, len(terms))
	for i, t := range terms {
		changed[i] = t
		if t.atom.point {
			changed[i].atom = kelvin
			if t.atom.symbol == "degF" {
				changed[i].atom = fahrenheit
			}
		}
	}
	return writeTerms(changed)
}
