// Package markdown reads a notebook: CommonMark with GFM tables, calculation
// cells in fenced blocks, tables (Markdown or csv) under headings, and values in
// running text. Every part keeps its exact place in the file.
package markdown

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"weirbook/notebook"
	"weirbook/notebook/diag"
)

// New gives the CommonMark reader that all outputs share: GFM tables and
// strikethrough, and values in running text.
func New() goldmark.Markdown {
	return goldmark.New(
		goldmark.WithExtensions(extension.Table, extension.Strikethrough, extension.TaskList),
		goldmark.WithParserOptions(parser.WithInlineParsers(util.Prioritized(valueParser{}, 10))),
	)
}

var shared = New()

// Parse reads a notebook. It never fails: what is wrong is in the document's
// problems. The file name is used in messages only.
func Parse(file string, content []byte) *notebook.Document {
	content = normalise(content)
	r := &reader{content: content, starts: lineStarts(content)}
	r.doc = &notebook.Document{File: file, Source: sourceLines(content)}
	root := shared.Parser().Parse(text.NewReader(content))
	_ = ast.Walk(root, r.visit)
	return r.doc
}

// normalise drops a byte-order mark and turns CRLF and lone CR into LF, so that
// the same notebook reads the same whatever editor wrote it.
func normalise(content []byte) []byte {
	content = bytes.TrimPrefix(content, []byte("\xef\xbb\xbf"))
	if bytes.IndexByte(content, '\r') < 0 {
		return content
	}
	content = bytes.ReplaceAll(content, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(content, []byte("\r"), []byte("\n"))
}

// reader gathers a document from the syntax tree.
type reader struct {
	doc     *notebook.Document
	content []byte
	starts  []int
	heading string
}

func (r *reader) visit(n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	switch n := n.(type) {
	case *ast.Heading:
		r.heading = r.plainText(n)
		r.doc.Headings = append(r.doc.Headings, r.heading)
		if r.doc.Title == "" {
			r.doc.Title = r.heading
		}
	case *ast.FencedCodeBlock:
		r.fence(n)
	case *east.Table:
		r.table(n)
		return ast.WalkSkipChildren, nil
	case *Value:
		r.expression(n)
	}
	return ast.WalkContinue, nil
}

// fence takes a fenced block that is a cell or a csv table.
func (r *reader) fence(n *ast.FencedCodeBlock) {
	if n.Info == nil {
		return
	}
	info := strings.TrimSpace(string(util.UnescapePunctuations(n.Info.Segment.Value(r.content))))
	language, title := info, ""
	if space := strings.IndexAny(info, " \t"); space >= 0 {
		language, title = info[:space], info[space:]
	}
	switch strings.ToLower(language) {
	case "lua":
		r.doc.Cells = append(r.doc.Cells, r.code(n, strings.TrimSpace(title)))
		r.unclosed(n)
	case "csv":
		r.csv(n)
	}
}

// unclosed tells of a cell whose closing fence is missing: CommonMark lets it run
// to the end, and all that follows would be read as code.
func (r *reader) unclosed(n *ast.FencedCodeBlock) {
	line, column := r.position(n.Info.Segment.Start)
	last := line
	if count := n.Lines().Len(); count > 0 {
		last, _ = r.position(n.Lines().At(count - 1).Start)
	}
	if closing := r.doc.Line(last + 1); strings.Contains(closing, "```") || strings.Contains(closing, "~~~") {
		return
	}
	r.doc.Problems = append(r.doc.Problems, diag.Problem{
		Pos: diag.Pos{File: r.doc.File, Line: line, Column: column}, Source: r.doc.Line(line),
		Message: "got a cell without its closing fence, want one", Hint: "write ``` on a line of its own where the cell ends",
	})
}

func (r *reader) code(n *ast.FencedCodeBlock, title string) *notebook.Cell {
	cell := &notebook.Cell{Kind: notebook.Calculation, Title: title, Index: len(r.doc.Cells)}
	var b strings.Builder
	for i := range n.Lines().Len() {
		segment := n.Lines().At(i)
		line, column := r.position(segment.Start)
		cell.Lines = append(cell.Lines, notebook.CodeLine{Number: line, Indent: column - 1 - segment.Padding})
		if i > 0 {
			b.WriteByte('\n')
		}
		b.Write(bytes.TrimSuffix(segment.Value(r.content), []byte("\n")))
	}
	if len(cell.Lines) == 0 {
		line, _ := r.position(n.Info.Segment.Start)
		cell.Lines = []notebook.CodeLine{{Number: line}}
	}
	cell.Code = b.String()
	return cell
}

// expression takes a value in running text or in a table's cell.
func (r *reader) expression(v *Value) int {
	line, column := r.position(v.Segment.Start)
	if !v.Closed {
		r.doc.Problems = append(r.doc.Problems, diag.Problem{
			Pos: diag.Pos{File: r.doc.File, Line: line, Column: column}, Source: r.doc.Line(line),
			Message: `got "{=" without its closing brace on the line, want "{= expression}"`,
			Hint:    `close it with "}", or write "\{=" for the signs themselves`,
		})
		return -1
	}
	_, start := r.position(v.Segment.Start + v.Offset)
	cell := &notebook.Cell{
		Kind: notebook.Expression, Code: v.Code, Index: len(r.doc.Cells),
		Lines: []notebook.CodeLine{{Number: line, Indent: start - 1}},
	}
	r.doc.Cells = append(r.doc.Cells, cell)
	return cell.Index
}
