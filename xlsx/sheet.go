package xlsx

import (
	"slices"

	"github.com/xuri/excelize/v2"
)

// column is one column of a sheet: the header of its list, the bounds of its
// width in characters, and what it holds.
type column struct {
	head     string
	min, max int
	kind     columnKind
	off      bool // left out: nothing would stand in it
}

// columnKind says what a column holds.
type columnKind int

const (
	short        columnKind = iota // words on one line
	long                           // text that is broken into lines
	numeric                        // numbers, right-aligned under their header
	faintNumeric                   // the same in grey: for those who look closer
	faintWords                     // words in grey
)

// sheet is a sheet in memory.
type sheet struct {
	name    string
	all     []column // as laid out
	columns []column // those that are not left out
	at      []int    // where each of all stands, from 1; 0 for left out
	banner  string   // what every sheet says when the run had problems
	wide    []int    // width of the content of each column so far
	look    *looks
	cells   []excelize.Cell // of all rows, one after the other
	rows    []sheetRow
	merges  [][2]string
	links   []jump
	frozen  int // rows at the top that stay in sight
	repeat  int // row that is printed on top of every page, 0 for none
	filter  string
	plain   bool // without grid lines
	hollow  bool // nothing is here to sum because lines are missing
	after   func(*book) error
}

// sheetRow is a row with the cells that belong to it.
type sheetRow struct {
	from, to int
	height   float64 // in points, or one of the ways to find it
	spread   int     // the column whose cell reaches to the last one, 0 for none
}

// Ways to find the height of a row when it is streamed, since that needs the
// widths of the columns.
const (
	fitCells  = 0  // by its tallest cell; left to the reader where one line is enough
	fitAcross = -1 // by a text over all columns
	fitHeads  = -2 // by its headers
)

// jump is a link from a cell to another place of the workbook.
type jump struct{ cell, to string }

func (b *book) newSheet(name string, columns []column) *sheet {
	s := &sheet{name: name, all: columns, look: b.look, banner: b.banner(name), at: placed(columns)}
	for _, c := range columns {
		if !c.off {
			s.columns, s.wide = append(s.columns, c), append(s.wide, c.min)
		}
	}
	return s
}

// placed gives where each column stands, from 1; 0 for those left out.
func placed(columns []column) []int {
	at, n := make([]int, len(columns)), 0
	for i, c := range columns {
		if !c.off {
			n++
			at[i] = n
		}
	}
	return at
}

// col gives the letters of a column by its number in the layout, from 1.
func (s *sheet) col(number int) string { return columnName(s.at[number-1]) }

// has reports whether a column of the layout is not left out.
func (s *sheet) has(number int) bool { return s.at[number-1] > 0 }

// fixed writes the address of a cell in a column of the layout.
func (s *sheet) fixed(number, row int) string { return fixed(s.at[number-1], row) }

// area writes a part of a column of the layout.
func (s *sheet) area(number, from, to int) string { return area(s.at[number-1], from, to) }

// blank gives a row of empty cells with the look of a list.
func (s *sheet) blank() []excelize.Cell {
	cells := make([]excelize.Cell, len(s.columns))
	for i := range cells {
		cells[i] = s.look.words(body, "")
	}
	return cells
}

// put sets the cell in a column of the layout and counts it for the width;
// nothing happens where the column is left out.
func (s *sheet) put(cells []excelize.Cell, number int, c excelize.Cell) {
	if i := s.at[number-1]; i > 0 {
		cells[i-1] = c
		s.measure(i-1, &c)
	}
}

// line adds a row of the list, given with all columns of the layout.
func (s *sheet) line(cells ...excelize.Cell) int {
	n := 0
	for i := range cells {
		if s.at[i] > 0 {
			cells[n] = cells[i]
			n++
		}
	}
	return s.fit(cells[:n]...)
}

// spread adds a row whose cell in a column reaches to the last column; it is as
// high as its words need.
func (s *sheet) spread(from int, cells ...excelize.Cell) int {
	row := s.add(cells...)
	s.stretch(from)
	return row
}

// stretch makes a cell of the row that was added last reach to the last column.
func (s *sheet) stretch(from int) {
	row := len(s.rows)
	r := &s.rows[row-1]
	for r.to-r.from < len(s.columns) {
		s.cells = append(s.cells, excelize.Cell{StyleID: s.cells[r.from+from-1].StyleID})
		r.to++
	}
	r.spread = from
	if from < len(s.columns) {
		s.merges = append(s.merges, [2]string{cellName(from, row), cellName(len(s.columns), row)})
	}
}

// reserve makes room for a list of so many rows.
func (s *sheet) reserve(rows int) {
	s.cells = slices.Grow(s.cells, (rows+extraRows)*len(s.columns))
	s.rows = slices.Grow(s.rows, rows+extraRows)
}

// extraRows is about how many rows a sheet has beside its list.
const extraRows = 40

// next gives the number of the row that is added next.
func (s *sheet) next() int { return len(s.rows) + 1 }

// add adds a row and gives its number.
func (s *sheet) add(cells ...excelize.Cell) int {
	from := len(s.cells)
	s.cells = append(s.cells, cells...)
	s.rows = append(s.rows, sheetRow{from: from, to: len(s.cells)})
	return len(s.rows)
}

// one adds a row that is one line high, whatever stands in it.
func (s *sheet) one(cells ...excelize.Cell) int {
	row := s.add(cells...)
	s.rows[row-1].height = lineHeight + 2
	return row
}

// fit adds a row whose content counts for the widths of the columns.
func (s *sheet) fit(cells ...excelize.Cell) int {
	for i := range cells {
		s.measure(i, &cells[i])
	}
	return s.add(cells...)
}

func (s *sheet) measure(col int, c *excelize.Cell) {
	n := 0
	switch v := c.Value.(type) {
	case string:
		n = width(v)
	case float64:
		tail, decimals := s.look.tailOf(c.StyleID)
		n = digitsWidth(v, decimals) + tail
	case int:
		n = 10
	}
	s.wide[col] = max(s.wide[col], min(n+1, s.columns[col].max))
}

// skip adds empty rows.
func (s *sheet) skip(n int) {
	for range n {
		s.add()
	}
}

// words is a body cell for a column, broken into lines where the column is.
func (s *sheet) words(col int, text string) excelize.Cell {
	if s.all[col].kind == long {
		return s.look.words(wrapped, text)
	}
	return s.look.words(body, text)
}

// top adds the name of the sheet and the sentences that say what it is.
func (s *sheet) top(name, sentences string) {
	s.add(s.look.words(title, name))
	s.rows[0].height = 24
	s.across(prose, sentences)
	if s.banner != "" {
		s.across(alarm, s.banner)
	}
}

// across adds a row with text over all columns.
func (s *sheet) across(k look, text string) {
	row := s.add(s.look.words(k, text))
	s.merges = append(s.merges, [2]string{cellName(1, row), cellName(len(s.columns), row)})
	s.rows[row-1].height = fitAcross
}

// sectionHead adds a heading within the sheet.
func (s *sheet) sectionHead(text string) {
	row := s.add(s.look.words(section, text))
	s.rows[row-1].height = 22
}

// heads adds a row of headers, from a column on.
func (s *sheet) heads(from int, texts []string) {
	cells := make([]excelize.Cell, len(texts))
	for i := from - 1; i < len(texts); i++ {
		cells[i] = s.look.words(s.columns[i].kind.heading(), texts[i])
	}
	row := s.add(cells...)
	s.rows[row-1].height = fitHeads
}

// heading gives the look of the header over a column of a kind.
func (k columnKind) heading() look {
	switch k {
	case numeric:
		return numberHeading
	case faintNumeric:
		return faintNumberHeading
	case faintWords:
		return faintHeading
	}
	return heading
}

// layout gives the rows that follow columns of their own within the sheet's
// grid, and adds their header row. Columns that are left out close up.
func (s *sheet) layout(columns []column) int {
	s.all, s.at = columns, placed(columns)
	var heads []excelize.Cell
	for i, c := range columns {
		if at := s.at[i]; at > 0 {
			heads = append(heads, s.look.words(c.kind.heading(), c.head))
			s.wide[at-1] = max(s.wide[at-1], c.min)
		}
	}
	row := s.add(heads...)
	s.rows[row-1].height = fitHeads
	return row
}

// listHead adds the headers of the sheet's list, which stay in sight and are
// printed on every page.
func (s *sheet) listHead() {
	texts := make([]string, len(s.columns))
	for i, c := range s.columns {
		texts[i] = c.head
	}
	s.heads(1, texts)
	s.frozen, s.repeat = len(s.rows), len(s.rows)
}

// list filters the rows since the header, whose last one is given.
func (s *sheet) list(last int) {
	s.filter = cellName(1, s.repeat) + ":" + cellName(len(s.columns), max(last, s.repeat+1))
}

// sumRow adds a row of sums above the list: words in one column, and cells in
// those that they sum. Sums of nothing because lines are missing are not shown.
func (s *sheet) sumRow(words int, text string, sums map[int]excelize.Cell) int {
	cells := s.blank()
	cells[s.at[words-1]-1] = s.look.words(body, text)
	for number, c := range sums {
		if s.hollow {
			c = s.look.words(missing, notWorkedOut)
		}
		s.put(cells, number, c)
	}
	return s.one(cells...)
}
