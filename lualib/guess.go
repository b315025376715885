package lualib

import (
	"strings"

	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// guess notes what code that cannot be parsed most likely assigns and records,
// from its words alone, so that the cells that lean on it wait instead of being
// told of unknown names, and no total leaves its records out.
func (e *Engine) guess(a *notebook.Analysis, code string, tokens []token) {
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
		named := after == '=' && (depth == 0 || t.column == 1) && before != parse.TLocal && before != ','
		if (named || before == parse.TFunction) && e.lib.plain[t.text] == nil && !e.isBase(t.text) && !e.lib.isModule(t.text) && !assigned[t.text] {
			assigned[t.text] = true
			a.Assigns = append(a.Assigns, notebook.Ident{Name: t.text, Line: t.line, Column: t.column})
		}
	}
	e.guessLines(a, code, tokens, assigned, makes)
	for _, k := range plan.Kinds() {
		if makes[k] {
			a.Own.Makes = append(a.Own.Makes, k)
		}
	}
}

// guessLines looks at the lines that could not be split into words.
func (e *Engine) guessLines(a *notebook.Analysis, code string, tokens []token, assigned map[string]bool, makes map[plan.Kind]bool) {
	read := -1
	if len(tokens) > 0 {
		read = tokens[len(tokens)-1].line
	}
	for i, line := range strings.Split(code, "\n") {
		if i < read {
			continue
		}
		if m := assignsAt.FindStringSubmatch(line); m != nil && !assigned[m[1]] && e.lib.plain[m[1]] == nil && !e.isBase(m[1]) {
			assigned[m[1]] = true
			a.Assigns = append(a.Assigns, notebook.Ident{Name: m[1], Line: i})
		}
		for _, f := range e.lib.all {
			if len(f.Makes) > 0 && strings.Contains(line, f.FullName()) {
				for _, k := range f.Makes {
					makes[k] = true
				}
			}
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
	if f := e.lib.plain[name]; f != nil {
		return f
	}
	if e.lib.isModule(name) && kindAt(tokens, i+1) == '.' && kindAt(tokens, i+2) == parse.TIdent {
		return e.lib.find(name, tokens[i+2].text)
	}
	return nil
}
