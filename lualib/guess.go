package lualib

import (
	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// guess notes what code that cannot be parsed most likely assigns and records,
// from its words alone, so that the cells that lean on it wait instead of being
// told of unknown names, and no total leaves its records out.
func (e *Engine) guess(a *notebook.Analysis, tokens []token) {
	makes := map[plan.Kind]bool{}
	assigned := map[string]bool{}
	depth := 0
	for i, t := range tokens {
		switch t.kind {
		case '{', '(', '[':
			depth++
		case '}', ')', ']':
			depth--
		}
		if t.kind != parse.TIdent {
			continue
		}
		before, after := kindAt(tokens, i-1), kindAt(tokens, i+1)
		if before == '.' || before == ':' {
			continue
		}
		if f := e.mentioned(tokens, i); f != nil {
			for _, k := range f.Makes {
				makes[k] = true
			}
			continue
		}
		named := after == '=' && depth == 0 && before != parse.TLocal && before != ','
		if (named || before == parse.TFunction) && e.library.plain[t.text] == nil && !e.isBase(t.text) && !e.library.isModule(t.text) && !assigned[t.text] {
			assigned[t.text] = true
			a.Assigns = append(a.Assigns, notebook.Ident{Name: t.text, Line: t.line, Column: t.column})
		}
	}
	for _, k := range plan.Kinds() {
		if makes[k] {
			a.Own.Makes = append(a.Own.Makes, k)
		}
	}
}

func kindAt(tokens []token, i int) int {
	if i < 0 || i >= len(tokens) {
		return -1
	}
	return tokens[i].kind
}

// mentioned gives the library function that begins at a token.
func (e *Engine) mentioned(tokens []token, i int) *Function {
	name := tokens[i].text
	if f := e.library.plain[name]; f != nil {
		return f
	}
	if e.library.isModule(name) && kindAt(tokens, i+1) == '.' && kindAt(tokens, i+2) == parse.TIdent {
		return e.library.find(name, tokens[i+2].text)
	}
	return nil
}
