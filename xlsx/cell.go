package xlsx

import (
	"math"
	"strconv"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/quantity"
)

// words is a cell with text.
func (l *looks) words(k look, s string) excelize.Cell {
	if s == "" {
		return excelize.Cell{StyleID: l.id(k, "")}
	}
	s = clean(s)
	format := ""
	if looksLikeFormula(s) {
		format = textFormat
	}
	return excelize.Cell{StyleID: l.id(k, format), Value: s}
}

// number is a cell with a number in a format; an infinity or what is no number
// is a text.
func (l *looks) number(k look, v float64, format string) excelize.Cell {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return l.words(k, quantity.Bare(v).String())
	}
	return excelize.Cell{StyleID: l.id(k, format), Value: fifteen(v)}
}

// formula is a cell with a formula and the value that it has. A value that a
// spreadsheet cannot hold stands alone, as text.
func (l *looks) formula(k look, formula string, v float64, format string) excelize.Cell {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return l.number(k, v, format)
	}
	return excelize.Cell{StyleID: l.id(k, format), Formula: formula, Value: fifteen(v)}
}

// quantityIn is a cell with the number of a quantity in a unit; the text of the
// quantity where it has another dimension.
func (l *looks) quantityIn(q quantity.Quantity, unit, format string) excelize.Cell {
	if v, ok := in(q, unit); ok {
		return l.number(body, v, format)
	}
	return l.words(body, q.Short())
}

// reading is quantityIn with as many decimals as the number has, at most four
// significant digits.
func (l *looks) reading(q quantity.Quantity, unit string) excelize.Cell {
	if v, ok := in(q, unit); ok {
		return l.count(v)
	}
	return l.words(body, q.Short())
}

// count is a number of things, which need not be whole (3.5 m of pipe).
func (l *looks) count(v float64) excelize.Cell {
	decimals := readingDecimals(v)
	if decimals < 0 {
		return l.number(body, v, scientificFormat)
	}
	return l.number(body, v, decimalsFormat(decimals))
}

// date is a cell with a day; days before March 1900, which spreadsheets count
// wrongly, stand as text.
func (l *looks) date(k look, d quantity.Date) excelize.Cell {
	const epoch, firstSafe = 25569, 61
	serial := d.Day() + epoch
	if serial < firstSafe {
		return l.words(k, d.String())
	}
	return excelize.Cell{StyleID: l.id(k, dateFormat), Value: serial}
}

// address is a cell of a sheet.
type address struct {
	sheet    string
	col, row int
}

// from writes the address as seen from a sheet: with the sheet's name unless it
// is the same one.
func (a address) from(sheet string) string {
	local := fixed(a.col, a.row)
	if a.sheet == sheet {
		return local
	}
	return "'" + a.sheet + "'!" + local
}

// columnName gives the letters of a column from 1; sheets here have no more
// than 26.
func columnName(col int) string { return string(rune('A' + col - 1)) }

// fixed writes a cell's address so that it stays when a formula is copied.
func fixed(col, row int) string { return "$" + columnName(col) + "$" + strconv.Itoa(row) }

func cellName(col, row int) string { return columnName(col) + strconv.Itoa(row) }

// area writes a part of one column with fixed rows.
func area(col, from, to int) string {
	name := columnName(col)
	return "$" + name + "$" + strconv.Itoa(from) + ":$" + name + "$" + strconv.Itoa(to)
}
