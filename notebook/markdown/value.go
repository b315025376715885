package markdown

import (
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// KindValue is the node kind of a value in running text.
var KindValue = ast.NewNodeKind("WeirbookValue")

// Value is an inline node: {= expression}.
type Value struct {
	ast.BaseInline
	Segment text.Segment // all of it, braces included
	Offset  int          // bytes from its start to the expression
	Code    string       // the expression
	Closed  bool
}

// Kind gives KindValue.
func (v *Value) Kind() ast.NodeKind { return KindValue }

// Dump prints the node for debugging.
func (v *Value) Dump(source []byte, level int) {
	ast.DumpHelper(v, source, level, map[string]string{"Code": v.Code}, nil)
}

// valueParser recognises {= expression} on one line. It stands before the
// parsers of emphasis and links, so that a*b and a[1] stay code.
type valueParser struct{}

// Trigger gives the brace that opens a value.
func (valueParser) Trigger() []byte { return []byte{'{'} }

// Parse takes a value off the head of the text.
func (valueParser) Parse(parent ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	if len(line) < 2 || line[1] != '=' {
		return nil
	}
	v := &Value{Offset: 2}
	end := closingBrace(string(line[2:]))
	if end < 0 {
		// what stands there is still shown as text, but the mistake is told
		v.Segment = segment.WithStop(segment.Start + 2)
		block.Advance(2)
		return v
	}
	code := string(line[2 : 2+end])
	v.Offset += len(code) - len(strings.TrimLeft(code, " \t"))
	v.Code = strings.TrimSpace(code)
	if inTable(parent) {
		v.Code = strings.ReplaceAll(v.Code, `\|`, `|`)
	}
	v.Closed = true
	v.Segment = segment.WithStop(segment.Start + 2 + end + 1)
	block.Advance(2 + end + 1)
	return v
}

// inTable reports whether the node stands in a table, where a pipe is escaped.
func inTable(n ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if n.Kind().String() == "TableCell" {
			return true
		}
	}
	return false
}

// closingBrace finds the brace that ends an expression: the first that balances
// outside strings and comments, read as the cells' language reads them. It
// returns -1 when the line ends before.
func closingBrace(s string) int {
	depth := 0
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c == '\n':
			return -1
		case c == '{':
			depth++
		case c == '}':
			if depth == 0 {
				return i
			}
			depth--
		case c == '"' || c == '\'':
			i = endOfString(s, i)
		case c == '-' && strings.HasPrefix(s[i:], "--"):
			if level := longBracket(s[i+2:]); level >= 0 {
				i = endOfLong(s, i+2, level)
				break
			}
			return -1
		case c == '[':
			if level := longBracket(s[i:]); level >= 0 {
				i = endOfLong(s, i, level)
			}
		}
	}
	return -1
}

func endOfString(s string, start int) int {
	for i := start + 1; i < len(s); i++ {
		switch s[i] {
		case '\\':
			i++
		case s[start]:
			return i
		}
	}
	return len(s)
}

// longBracket gives the level of a long bracket ([[ is 0, [=[ is 1), -1 for none.
func longBracket(s string) int {
	if !strings.HasPrefix(s, "[") {
		return -1
	}
	level := 0
	for level+1 < len(s) && s[level+1] == '=' {
		level++
	}
	if level+1 < len(s) && s[level+1] == '[' {
		return level
	}
	return -1
}

func endOfLong(s string, start, level int) int {
	closing := "]" + strings.Repeat("=", level) + "]"
	i := strings.Index(s[start:], closing)
	if i < 0 {
		return len(s)
	}
	return start + i + len(closing) - 1
}
