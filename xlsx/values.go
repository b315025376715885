package xlsx

import (
	"fmt"
	"strconv"

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

// values makes the sheet of named values.
func (b *book) values() *sheet {
	s := b.newSheet(valuesSheet, []column{
		{head: "Name", min: 24, max: 44, kind: long}, {head: "Value", min: 16, max: 30, kind: numeric}, {head: "Unit", min: 10, max: 18},
		{head: "Live or fixed", min: 9, max: 10}, {head: "Worked out as", min: 40, max: 70, kind: long},
	})
	s.top("Values", "Every named value of the notebook. Live: a formula that follows an input on the sheet “"+startSheet+"”. "+
		"Fixed: changes only when the notebook runs. The last column shows what the notebook worked it out from, in its own words.")
	s.skip(1)
	s.listHead()
	s.reserve(min(len(b.result.Values), valueRows))
	first, left := s.next(), valueRows
	for _, v := range b.result.Values {
		b.value(s, v.Name, v.Value, &left, true)
	}
	if len(b.result.Values) == 0 {
		s.add(s.look.words(body, "the notebook has no named values"))
	}
	s.list(max(s.next()-1, first))
	if left < 0 {
		s.add(s.look.words(label, fmt.Sprintf("… and %d more values, which are left out", -left)))
	}
	return s
}

// value adds a named value; a table is spread out one level deep.
func (b *book) value(s *sheet, name string, v notebook.Value, left *int, spread bool) {
	if data, ok := v.(*notebook.Data); ok && spread {
		for _, p := range data.Pairs {
			b.value(s, name+keyText(p.Key), p.Value, left, false)
		}
		return
	}
	if _, ok := v.(notebook.Function); ok || v == nil {
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
	s.fit(s.words(0, name), cell, unit, s.look.words(body, mark), s.words(4, how))
}

// keyText writes a key of a table as a cell of the notebook would.
func keyText(key notebook.Value) string {
	switch k := key.(type) {
	case string:
		return "." + k
	case float64:
		return "[" + strconv.FormatFloat(k, 'g', -1, 64) + "]"
	default:
		return fmt.Sprintf("[%v]", k)
	}
}

// valueCells makes the cells of a value and of its unit, and says what it was
// worked out from.
func (b *book) valueCells(s *sheet, v notebook.Value) (cell, unit excelize.Cell, how string) {
	l := s.look
	unit = l.words(body, "")
	switch v := v.(type) {
	case quantity.Quantity:
		cell, unit = b.measured(v)
		if formula, ok := b.follow(v, v.Unit().Symbol(), s.name, ""); ok {
			cell.Formula = formula
		}
		return cell, unit, v.Origin().String()
	case float64:
		return l.count(v), unit, ""
	case quantity.Date:
		return l.date(body, v), unit, ""
	case bool:
		return excelize.Cell{StyleID: l.id(body, ""), Value: v}, unit, ""
	case string:
		return l.words(body, v), unit, ""
	case *notebook.Data:
		return l.words(body, fmt.Sprintf("a table of %d entries", len(v.Pairs))), unit, ""
	}
	return l.words(body, ""), unit, ""
}

// measured makes the cells of a quantity's number and of its unit.
func (b *book) measured(q quantity.Quantity) (number, unit excelize.Cell) {
	l := b.look
	unit = l.words(body, unitWords(q.Unit().Symbol()))
	if q.Dimension().IsMoney() && q.Unit().Symbol() == q.Dimension().Currency() {
		return l.number(body, q.Value(), moneyFormat(q.Dimension().Currency())), unit
	}
	return l.count(q.Value()), unit
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
