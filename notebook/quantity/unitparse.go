package quantity

import (
	"fmt"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/currency"
)

// UnknownUnitError is a unit that is in no table. The layer that speaks to the
// person adds the nearest spelling from UnitNames.
type UnknownUnitError struct {
	Unit   string
	advice string
}

// Error names the unit.
func (e *UnknownUnitError) Error() string { return fmt.Sprintf("unknown unit %q", e.Unit) }

// Advice says what to write for units that keepers type and that could mean
// two things; it is empty otherwise.
func (e *UnknownUnitError) Advice() string { return e.advice }

// superscripts and other signs that are brought to plain ones before reading.
var plainSigns = strings.NewReplacer(
	"²", "2", "³", "3", "·", ".", "⋅", ".", "×", ".", "µ", "u", "μ", "u", "−", "-", "^", "", "\u00a0", " ", "\u202f", " ", "\u2009", " ",
)

// unitParser reads the grammar
//
//	unit   = group { ("." | "*" | "/") group }
//	group  = "(" unit ")" | symbol [exponent] | "1"
//
// where a stroke takes one group: W/m2/K is W/(m2.K).
type unitParser struct {
	text string
	rest string
}

func parseTerms(text string) ([]term, error) {
	plain := strings.TrimSpace(plainSigns.Replace(text))
	if plain == "" {
		return nil, nil
	}
	if a, ok := unitTable[plain]; ok {
		return []term{{a, 1}}, nil
	}
	if len(plain) > 80 {
		return nil, fmt.Errorf("unit text of %d characters, want at most 80", len(plain))
	}
	p := &unitParser{text: text, rest: plain}
	terms, err := p.product(0)
	if err != nil {
		return nil, err
	}
	if p.rest != "" {
		return nil, &UnknownUnitError{Unit: strings.TrimSpace(text), advice: answers[strings.TrimSpace(text)]}
	}
	return terms, nil
}

func (p *unitParser) product(depth int) ([]term, error) {
	if depth > 8 {
		return nil, fmt.Errorf("unit %q: brackets nested too deep", p.text)
	}
	var all []term
	sign := 1
	for {
		group, err := p.group(depth)
		if err != nil {
			return nil, err
		}
		for _, t := range group {
			t.exponent *= sign
			if t.exponent > maxExponent || t.exponent < -maxExponent {
				return nil, fmt.Errorf("unit %q: exponent beyond %d", p.text, maxExponent)
			}
			all = append(all, t)
		}
		p.rest = strings.TrimLeft(p.rest, " ")
		switch {
		case strings.HasPrefix(p.rest, "/"):
			sign = -1
		case strings.HasPrefix(p.rest, "."), strings.HasPrefix(p.rest, "*"):
			sign = 1
		default:
			return all, nil
		}
		p.rest = strings.TrimLeft(p.rest[1:], " ")
	}
}

func (p *unitParser) group(depth int) ([]term, error) {
	if strings.HasPrefix(p.rest, "(") {
		p.rest = p.rest[1:]
		terms, err := p.product(depth + 1)
		if err != nil {
			return nil, err
		}
		if !strings.HasPrefix(p.rest, ")") {
			return nil, fmt.Errorf("unit %q: a bracket is not closed", p.text)
		}
		p.rest = p.rest[1:]
		return terms, nil
	}
	if p.rest == "1" || strings.HasPrefix(p.rest, "1/") {
		p.rest = p.rest[1:]
		return nil, nil
	}
	symbol := p.symbol()
	if symbol == "" {
		return nil, &UnknownUnitError{Unit: p.text}
	}
	terms, err := lookUp(symbol)
	if err != nil {
		return nil, err
	}
	exponent := p.exponent()
	if exponent > maxExponent || exponent < -maxExponent {
		return nil, fmt.Errorf("unit %q: exponent beyond %d", p.text, maxExponent)
	}
	raised := make([]term, len(terms))
	for i, t := range terms {
		raised[i] = term{t.atom, t.exponent * exponent}
	}
	return raised, nil
}

// symbol takes the longest run of characters that a unit may have. H2O is the
// one symbol with a digit inside.
func (p *unitParser) symbol() string {
	end := 0
	for i, r := range p.rest {
		if unicode.IsLetter(r) || strings.ContainsRune("_%°‰€£$¥℃℉", r) || (r == '2' && strings.HasSuffix(p.rest[:i], "H") && strings.HasPrefix(p.rest[i:], "2O")) {
			end = i + len(string(r))
			continue
		}
		break
	}
	symbol := p.rest[:end]
	p.rest = p.rest[end:]
	return symbol
}

func (p *unitParser) exponent() int {
	i, sign := 0, 1
	if strings.HasPrefix(p.rest, "-") && len(p.rest) > 1 && p.rest[1] >= '0' && p.rest[1] <= '9' {
		i, sign = 1, -1
	}
	value, digits := 0, 0
	for i < len(p.rest) && p.rest[i] >= '0' && p.rest[i] <= '9' && digits < 3 {
		value = value*10 + int(p.rest[i]-'0')
		i++
		digits++
	}
	if digits == 0 {
		return 1
	}
	p.rest = p.rest[i:]
	return sign * value
}

// lookUp finds a symbol: an atom, an alias, or a currency code.
func lookUp(symbol string) ([]term, error) {
	if a, ok := unitTable[symbol]; ok {
		return []term{{a, 1}}, nil
	}
	if other, ok := aliases[symbol]; ok {
		return parseTerms(other)
	}
	if a := currencyAtom(symbol); a != nil {
		return []term{{a, 1}}, nil
	}
	return nil, &UnknownUnitError{Unit: symbol, advice: answers[symbol]}
}

// currencyAtoms is worked out when money is first met: it costs more than all the
// rest of the start.
var currencyAtoms = sync.OnceValue(func() map[string]*atom {
	known := map[string]*atom{}
	for query := currency.Query(currency.NonTender); query.Next(); {
		addCurrency(known, query.Unit().String())
	}
	for query := currency.Query(); query.Next(); {
		addCurrency(known, query.Unit().String())
	}
	return known
})

func addCurrency(known map[string]*atom, code string) {
	if len(code) != 3 || known[code] != nil {
		return
	}
	a := &atom{symbol: code, num: 1, den: 1}
	a.dim.money[0] = moneyPart{[3]byte{code[0], code[1], code[2]}, 1}
	known[code] = a
}

func currencyAtom(code string) *atom { return currencyAtoms()[code] }

// bookDigits are currencies whose coins have gone out of use, so that the tables of
// the currency package count less digits than ISO 4217 does. From memory.
var bookDigits = map[string]int{
	"AFN": 2, "ALL": 2, "IQD": 3, "IRR": 2, "KPW": 2, "LAK": 2, "LBP": 2, "MGA": 2, "MMK": 2, "RSD": 2, "SOS": 2, "SYP": 2, "YER": 2,
}

// MinorDigits gives the number of decimals in which a currency is paid (ISO
// 4217: 2 for EUR, 0 for JPY, 3 for KWD).
func MinorDigits(code string) int {
	if digits, ok := bookDigits[code]; ok {
		return digits
	}
	unit, err := currency.ParseISO(code)
	if err != nil {
		return 2
	}
	digits, _ := currency.Standard.Rounding(unit)
	return digits
}
