// Package notebook holds the domain types of Weirbook: the document with its
// cells and tables, the values that cells hand to each other, the result of a
// run, and the small Engine interface behind which the cells' language stands.
package notebook

import "weirbook/notebook/diag"

// CellKind says what a cell is for.
type CellKind int

// The kinds of cells.
const (
	Calculation CellKind = iota // a fenced block of code
	Expression                  // one expression in running text or in a table's cell
)

// Cell is one piece of code of the notebook.
type Cell struct {
	Kind  CellKind
	Title string // the words after the language name; "" for expressions
	Code  string // lines joined by line feeds
	// Lines maps each line of the code to the notebook: its line number and the
	// number of characters that stand before the code on that line.
	Lines []CodeLine
	Index int // position on the page among all cells
}

// CodeLine is where a line of code stands in the notebook.
type CodeLine struct {
	Number int // line of the notebook, from 1
	Indent int // characters before the code
}

// Line gives the first line of the cell in the notebook.
func (c *Cell) Line() int {
	if len(c.Lines) == 0 {
		return 0
	}
	return c.Lines[0].Number
}

// Label names the cell for a person: its title, or its code when it is short.
func (c *Cell) Label() string {
	if c.Title != "" {
		return c.Title
	}
	if c.Kind == Expression {
		return "{= " + c.Code + "}"
	}
	return "untitled cell"
}

// Table is a table of the notebook with the heading above it.
type Table struct {
	Heading string
	Line    int
	Keys    []string // one per column; "" for a column without a header
	Headers []string // as written
	Rows    []TableRow
	digest  Digest // of the content, once asked for
}

// TableRow is one row of a table.
type TableRow struct {
	Line  int
	Cells []TableCell // as many as keys at most
}

// TableCell is the text of one cell of a table.
type TableCell struct {
	Text       string
	Column     int // in characters from 1
	Expression int // index of the expression that fills it, -1 for none
}

// Document is a notebook that has been read.
type Document struct {
	File     string   // the name used in messages
	Title    string   // the first heading
	Source   []string // its lines, without line ends
	Cells    []*Cell
	Tables   []*Table
	Headings []string
	Problems []diag.Problem
}

// Line gives a line of the notebook by its number from 1, "" outside.
func (d *Document) Line(number int) string {
	if number < 1 || number > len(d.Source) {
		return ""
	}
	return d.Source[number-1]
}

// TablesUnder lists the tables under a heading.
func (d *Document) TablesUnder(heading string) []*Table {
	var found []*Table
	for _, t := range d.Tables {
		if t.Heading == heading {
			found = append(found, t)
		}
	}
	return found
}

// Content gives the fingerprint of what the table says, wherever it stands.
func (t *Table) Content() Digest {
	if t.digest != (Digest{}) {
		return t.digest
	}
	h := NewHasher()
	for _, k := range t.Keys {
		h.Text(k)
	}
	for _, row := range t.Rows {
		h.Number(float64(len(row.Cells)))
		for _, c := range row.Cells {
			h.Text(c.Text)
		}
	}
	t.digest = h.Sum()
	return t.digest
}

// Moved gives the same table further down the page: its lines after the given
// count, its expressions after the given number of cells. A table that stands
// before any heading of its part takes the one before.
func (t *Table) Moved(heading string, lines, cells int) *Table {
	t.Content() // worked out once, for all copies
	moved := *t
	if moved.Heading == "" {
		moved.Heading = heading
	}
	moved.Line += lines
	moved.Rows = nil
	if t.Rows != nil {
		moved.Rows = make([]TableRow, len(t.Rows))
	}
	for i, row := range t.Rows {
		moved.Rows[i] = TableRow{Line: row.Line + lines, Cells: row.Cells}
		if cells > 0 && row.hasExpression() {
			moved.Rows[i].Cells = make([]TableCell, len(row.Cells))
			for k, c := range row.Cells {
				if c.Expression >= 0 {
					c.Expression += cells
				}
				moved.Rows[i].Cells[k] = c
			}
		}
	}
	return &moved
}

func (r TableRow) hasExpression() bool {
	for _, c := range r.Cells {
		if c.Expression >= 0 {
			return true
		}
	}
	return false
}
