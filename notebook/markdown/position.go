package markdown

import (
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"
)

// lineStarts gives the byte offset of the start of every line.
func lineStarts(content []byte) []int {
	starts := []int{0}
	for i, c := range content {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// position turns a byte offset into a line and a column in characters.
func (r *reader) position(offset int) (line, column int) {
	line = sort.SearchInts(r.starts, offset+1)
	return line, utf8.RuneCount(r.content[r.starts[line-1]:offset]) + 1
}

// plainText gives the text of a node without its markup; values in it stay as
// they are written.
func (r *reader) plainText(n ast.Node) string {
	var b strings.Builder
	r.writeText(&b, n)
	return strings.Join(strings.Fields(b.String()), " ")
}

func (r *reader) writeText(b *strings.Builder, n ast.Node) {
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		switch c := child.(type) {
		case *ast.Text:
			value := c.Segment.Value(r.content)
			if _, code := n.(*ast.CodeSpan); !code {
				value = unescape(value)
			}
			b.Write(value)
			if c.SoftLineBreak() || c.HardLineBreak() {
				b.WriteByte(' ')
			}
		case *ast.String:
			b.Write(c.Value)
		case *ast.AutoLink:
			b.Write(c.Label(r.content))
		case *ast.RawHTML:
			for i := range c.Segments.Len() {
				segment := c.Segments.At(i)
				b.Write(segment.Value(r.content))
			}
		case *Value:
			b.Write(c.Segment.Value(r.content))
		default:
			r.writeText(b, child)
		}
	}
}

func unescape(value []byte) []byte {
	return util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations(value)))
}

// sourceLines splits a notebook into its lines.
func sourceLines(content []byte) []string { return strings.Split(string(content), "\n") }
