package xlsx

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
	"weirbook/notebook/quantity"
)

// valueRows bounds how many rows the sheet of values has; a table of a million
// entries is no reading matter, and a sheet has an end.
const valueRows = 50_000

// The marks of values.
const (
	markFixed = "fixed"
	markLive  = "live"
)

// expressionLength bounds what is shown of an expression.
const expressionLength = 60

// named is a value on its way to its row.
type named struct {
	path  string // as the notebook names it
	words string // as a person would
	value notebook.Value
}

// values makes the sheet of named values.
func (b *book) values() *sheet {
	s := b.newSheet(valuesSheet, []column{
		{head: "What", min: 28, max: 44, kind: long}, {head: "Value", min: 16, max: 34, kind: numeric}, {head: "Unit", min: 9, max: 18},
		{head: "Live or fixed", min: 8, max: 10}, {head: "worked out as", min: 30, max: 56, kind: faintWords}, {head: "name in the notebook", min: 18, max: 34, kind: faintWords},
	})
	s.top("Values", "Every named value of the notebook. Live: a formula that follows an input on the sheet “"+startSheet+"”. "+
		"Fixed: changes only when the notebook runs. The grey columns show how the notebook names a value and what it worked it out from, in its own words.")
	if b.gaps.banner != "" {
		s.across(alarm, "Not all values are here: cells of the notebook did not run.")
	} else {
		s.note("named values", false, len(b.result.Values), "")
	}
	s.listHead()
	s.reserve(min(len(b.result.Values), valueRows))
	first, left := s.next(), valueRows
	for _, v := range b.result.Values {
		b.value(s, named{v.Name, b.plainName(v.Name), v.Value}, &left)
	}
	s.list(max(s.next()-1, first))
	if left < 0 {
		s.add(s.look.words(label, fmt.Sprintf("… and %d more values, which are left out", -left)))
	}
	return s
}

// plainName writes a name of the notebook in words: those of its assumption, or
// its own ones.
func (b *book) plainName(name string) string {
	for i := range b.inputs.assumptions {
		if a := &b.inputs.assumptions[i]; a.Name == name && a.Label != "" {
			return a.Label
		}
	}
	return capital(strings.TrimSpace(strings.ReplaceAll(name, "_", " ")))
}

// value adds a named value; a table is spread out one level deep, and tables
// within it are left out.
func (b *book) value(s *sheet, v named, left *int) {
	if data, ok := v.value.(*notebook.Data); ok {
		for _, p := range data.Pairs {
			if _, inner := p.Value.(*notebook.Data); inner {
				continue
			}
			words, path := keyText(p.Key)
			b.value(s, named{v.path + path, v.words + ": " + words, p.Value}, left)
		}
		return
	}
	if _, ok := v.value.(notebook.Function); ok || v.value == nil {
		return
	}
	if *left--; *left < 0 {
		return
	}
	cell, unit, how := b.valueCells(s, v)
	mark := markFixed
	if cell.Formula != "" {
		mark = markLive
	}
	s.line(s.words(0, v.words), cell, unit, s.look.words(body, mark), s.look.words(faint, cutWords(plainExpression(how), expressionLength)), s.look.words(faint, v.path))
}

// keyText writes a key of a table in words, and as a cell of the notebook would.
func keyText(key notebook.Value) (words, path string) {
	switch k := key.(type) {
	case string:
		return strings.TrimSpace(strings.ReplaceAll(k, "_", " ")), "." + k
	case float64:
		words = strconv.FormatFloat(k, 'g', -1, 64)
	default:
		words = fmt.Sprint(k)
	}
	return words, "[" + words + "]"
}

// valueCells makes the cells of a value and of its unit, and says what it was
// worked out from.
func (b *book) valueCells(s *sheet, v named) (cell, unit excelize.Cell, how string) {
	l := s.look
	unit = l.words(body, "")
	switch q := v.value.(type) {
	case quantity.Quantity:
		cell, unit = b.measured(q)
		symbol := q.Unit().Symbol()
		if isShare(q) {
			symbol = ""
		}
		if formula, ok := b.follow(q, symbol, s.name, ""); ok {
			cell.Formula = formula
		}
		if how = q.Origin().String(); how == v.path {
			how = ""
		}
		return cell, unit, how
	case float64:
		return l.count(q), unit, ""
	case quantity.Date:
		return l.date(body, q), unit, ""
	case bool:
		return excelize.Cell{StyleID: l.id(body, ""), Value: q}, unit, ""
	case string:
		return l.words(body, q), unit, ""
	}
	return l.words(body, ""), unit, ""
}

var (
	typedQuantity = regexp.MustCompile(`Q"([^"]*)"`)
	longNumber    = regexp.MustCompile(`\d+\.\d+`)
)

// plainExpression writes an expression of the notebook without the marks of its
// language, and with numbers that can be read.
func plainExpression(s string) string {
	if s == "" {
		return s
	}
	s = typedQuantity.ReplaceAllStringFunc(s, func(typed string) string {
		typed = typed[2 : len(typed)-1]
		if strings.Contains(typed, "/") {
			return "(" + typed + ")" // else the unit reads as a division
		}
		return typed
	})
	return longNumber.ReplaceAllStringFunc(s, func(number string) string {
		v, err := strconv.ParseFloat(number, 64)
		decimals := readingDecimals(v)
		if err != nil || decimals < 0 || len(number) <= 7 {
			return number
		}
		return quantity.FixedDecimals(v, decimals)
	})
}

// measured makes the cells of a quantity's number and of its unit: money with
// its decimals, a percentage as one.
func (b *book) measured(q quantity.Quantity) (number, unit excelize.Cell) {
	l := b.look
	if isShare(q) {
		v, _ := q.Number()
		return l.number(body, v, percentFormat(100*v)), l.words(body, "")
	}
	unit = l.words(body, unitWords(q.Unit().Symbol()))
	if q.Dimension().IsMoney() && q.Unit().Symbol() == q.Dimension().Currency() {
		return l.number(body, q.Value(), decimalsFormat(moneyDecimals(q.Value(), q.Dimension().Currency()))), unit
	}
	return l.count(q.Value()), unit
}

// moneyDecimals gives the decimals of an amount that was worked out or given:
// those of the currency, or those that it has where they end soon.
func moneyDecimals(v float64, currency string) int {
	digits := quantity.MinorDigits(currency)
	if d := priceDecimals(v, digits); quantity.Round(v, d) == v {
		return d
	}
	return digits
}

// percentFormat shows a percentage with three digits or so.
func percentFormat(percent float64) string {
	decimals := min(max(readingDecimals(percent), 0), 1)
	if percent != 0 && percent < 1 && percent > -1 {
		decimals = 2
	}
	return strings.TrimPrefix(decimalsFormat(decimals), "#,##") + "%"
}

// unitWords writes a unit for people who do not know the notebook's symbols.
func unitWords(symbol string) string {
	switch symbol {
	case "degC":
		return "°C"
	case "degF":
		return "°F"
	}
	return symbol
}
