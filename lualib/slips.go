package lualib

import (
	"fmt"
	"regexp"

	"github.com/yuin/gopher-lua/ast"
	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
	"weirbook/notebook/quantity"
)

// slips looks for what people type who do not program, in code that cannot be
// parsed: it places the mistake where they made it. nil when it finds none.
func slips(tokens []token) *notebook.CodeProblem {
	for i := 1; i < len(tokens); i++ {
		before, t := tokens[i-1], tokens[i]
		if before.line != t.line {
			continue
		}
		switch {
		case before.kind == parse.TNumber && t.kind == parse.TIdent:
			if _, err := quantity.ParseUnit(t.text); err == nil {
				return problemAt(t.line, before.column, fmt.Sprintf("got %s %s, a number with a unit; want it as a quantity", before.text, t.text), fmt.Sprintf("write Q\"%s %s\"", before.text, t.text))
			}
		case t.kind == '=' && (before.kind == '+' || before.kind == '-' || before.kind == '*' || before.kind == '/') && i > 1:
			name := tokens[i-2].text
			return problemAt(t.line, before.column, fmt.Sprintf("got %s=, which the language does not have", before.text), fmt.Sprintf("write %s = %s %s …", name, name, before.text))
		}
	}
	return nil
}

// typographic quotes stand where a text processor has put them.
var typographic = regexp.MustCompile("[“”„‘’«»]")

// assignsAt finds names that lines assign which could not be read as words.
var assignsAt = regexp.MustCompile(`^\s*(?:function\s+)?([A-Za-z_][A-Za-z0-9_]*)\s*(?:=[^=]|=$)`)

// twoNumbers tells of one name that is given two numbers: a decimal comma.
func (w *walker) twoNumbers(names int, values []ast.Expr, line int) {
	if names != 1 || len(values) != 2 {
		return
	}
	whole, ok := values[0].(*ast.NumberExpr)
	part, ok2 := values[1].(*ast.NumberExpr)
	if !ok || !ok2 {
		return
	}
	w.problem(line, whole.Value, fmt.Sprintf("got %s,%s: two numbers for one name", whole.Value, part.Value), fmt.Sprintf("write %s.%s, or %s%s", whole.Value, part.Value, whole.Value, part.Value))
}
