package markdown

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"weirbook/notebook"
	"weirbook/notebook/diag"
)

// key turns a column header into the key of a row: trimmed, lower case, spaces
// as underscores.
func key(header string) string {
	return strings.Join(strings.Fields(strings.ToLower(header)), "_")
}

// table takes a Markdown table.
func (r *reader) table(n *east.Table) {
	t := &notebook.Table{Heading: r.heading}
	for row := n.FirstChild(); row != nil; row = row.NextSibling() {
		var cells []notebook.TableCell
		line := 0
		for c := row.FirstChild(); c != nil; c = c.NextSibling() {
			cell, at := r.tableCell(c)
			if line == 0 {
				line = at
			}
			cells = append(cells, cell)
		}
		if _, header := row.(*east.TableHeader); header {
			t.Line = line
			r.headers(t, cells, line)
			continue
		}
		if line == 0 {
			line, _ = r.position(max(row.Pos(), 0))
		}
		t.Rows = append(t.Rows, notebook.TableRow{Line: line, Cells: cells})
	}
	r.doc.Tables = append(r.doc.Tables, t)
}

// headers sets the keys of a table, and tells of two columns with one key.
func (r *reader) headers(t *notebook.Table, cells []notebook.TableCell, line int) {
	seen := map[string]bool{}
	for _, c := range cells {
		k := key(c.Text)
		if k != "" && seen[k] {
			r.doc.Problems = append(r.doc.Problems, diag.Problem{
				Pos: diag.Pos{File: r.doc.File, Line: line, Column: c.Column}, Source: r.doc.Line(line),
				Subject: fmt.Sprintf("table under %q", t.Heading), Message: fmt.Sprintf("got two columns named %q, want one", c.Text),
				Hint: "give one of them another name",
			})
		}
		seen[k] = true
		t.Keys = append(t.Keys, k)
		t.Headers = append(t.Headers, c.Text)
	}
}

// tableCell gives the text of a cell and its place.
func (r *reader) tableCell(n ast.Node) (cell notebook.TableCell, line int) {
	cell.Expression = -1
	if n.Lines().Len() == 0 {
		return cell, 0
	}
	line, cell.Column = r.position(n.Lines().At(0).Start)
	cell.Text = r.plainText(n)
	alone := n.FirstChild() != nil && n.FirstChild() == n.LastChild()
	_ = ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if v, ok := c.(*Value); ok && entering {
			index := r.expression(v)
			if alone && c == n.FirstChild() {
				cell.Expression = index
			}
		}
		return ast.WalkContinue, nil
	})
	return cell, line
}

// csv takes a fenced csv block (RFC 4180).
func (r *reader) csv(n *ast.FencedCodeBlock) {
	t := &notebook.Table{Heading: r.heading}
	cell := r.code(n, "")
	var body bytes.Buffer
	body.WriteString(cell.Code)
	reader := csv.NewReader(&body)
	reader.FieldsPerRecord = -1
	lines := strings.Split(cell.Code, "\n")
	for {
		record, err := reader.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			r.csvProblem(t, cell, err)
			return
		}
		row := csvRow(reader, record, cell, lines)
		if t.Keys == nil {
			t.Line = row.Line
			r.headers(t, row.Cells, row.Line)
			continue
		}
		if len(record) > len(t.Keys) {
			r.doc.Problems = append(r.doc.Problems, diag.Problem{
				Pos: diag.Pos{File: r.doc.File, Line: row.Line, Column: row.Cells[len(t.Keys)].Column}, Source: r.doc.Line(row.Line),
				Subject: fmt.Sprintf("csv under %q", t.Heading), Message: fmt.Sprintf("got %d fields, want %d as in the header", len(record), len(t.Keys)),
				Hint: "put a text that holds a comma between double quotes",
			})
			row.Cells = row.Cells[:len(t.Keys)]
		}
		t.Rows = append(t.Rows, row)
	}
	r.doc.Tables = append(r.doc.Tables, t)
}

func csvRow(reader *csv.Reader, record []string, cell *notebook.Cell, lines []string) notebook.TableRow {
	var row notebook.TableRow
	for i, field := range record {
		line, column := reader.FieldPos(i)
		code := cell.Lines[min(line-1, len(cell.Lines)-1)]
		if i == 0 {
			row.Line = code.Number
		}
		before := lines[line-1][:min(column-1, len(lines[line-1]))]
		row.Cells = append(row.Cells, notebook.TableCell{
			Text: strings.TrimSpace(field), Column: code.Indent + utf8.RuneCountInString(before) + 1, Expression: -1,
		})
	}
	return row
}

func (r *reader) csvProblem(t *notebook.Table, cell *notebook.Cell, err error) {
	p := diag.Problem{Pos: diag.Pos{File: r.doc.File, Line: cell.Line()}, Subject: fmt.Sprintf("csv under %q", t.Heading), Message: err.Error()}
	var parse *csv.ParseError
	if errors.As(err, &parse) {
		code := cell.Lines[min(parse.Line-1, len(cell.Lines)-1)]
		p.Pos.Line, p.Pos.Column = code.Number, code.Indent+parse.Column
		p.Message = "got " + parse.Err.Error() + ", want RFC 4180"
		p.Hint = `put a field with commas or quotes between double quotes, a quote inside as ""`
	}
	p.Source = r.doc.Line(p.Pos.Line)
	r.doc.Problems = append(r.doc.Problems, p)
}
