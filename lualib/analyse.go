package lualib

import (
	"fmt"
	"sort"
	"strings"
	"sync"

	"github.com/yuin/gopher-lua/ast"
	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// analyses keeps what was found in code, by kind and code: the same code is
// analysed and compiled once.
type analyses struct {
	guard sync.Mutex
	known map[string]*notebook.Analysis
}

// analysesLimit bounds the memory of analyses; a notebook has far fewer cells.
const analysesLimit = 20_000

// Analyse reads a cell's syntax: names assigned and read, what it can do to the
// plan, and what is wrong before anything runs.
func (e *Engine) Analyse(kind notebook.CellKind, code string) *notebook.Analysis {
	key := string(rune('0'+int(kind))) + code
	e.analyses.guard.Lock()
	defer e.analyses.guard.Unlock()
	if a, ok := e.analyses.known[key]; ok {
		return a
	}
	a := e.analyse(kind, code)
	if len(e.analyses.known) >= analysesLimit {
		clear(e.analyses.known)
	}
	e.analyses.known[key] = a
	return a
}

func (e *Engine) analyse(kind notebook.CellKind, code string) *notebook.Analysis {
	a := &notebook.Analysis{Functions: map[string]notebook.Effects{}}
	source := code
	if kind == notebook.Expression {
		source = "return " + code
	}
	tokens, problem := scan(source)
	if problem == nil {
		problem = bounds(tokens)
	}
	a.Digest, a.Code = digest(kind, tokens)
	var chunk []ast.Stmt
	if problem == nil {
		chunk, problem = parseCode(source, tokens)
	}
	if problem == nil && kind == notebook.Expression {
		problem = oneExpression(chunk)
	}
	if problem != nil {
		if kind == notebook.Expression {
			problem.Message = strings.Replace(problem.Message, "the end of the cell", "the end of the value", 1)
			problem.Column = max(problem.Column, len("return ")+1)
			if problem.Hint == "" {
				problem.Hint = "write the rest before the closing brace"
			}
		}
		a.Problems = append(a.Problems, *problem)
		shiftExpression(kind, a)
		a.Digest = codeDigest(kind, code)
		e.guess(a, code, tokens)
		return a
	}
	w := &walker{engine: e, tokens: tokens, analysis: a, kind: kind, holders: map[string]*holder{}, assumed: map[ast.Expr]string{}, taken: map[string]int{}}
	chunk = w.chunk(chunk)
	w.finish()
	shiftExpression(kind, a)
	if len(a.Problems) == 0 {
		a.Program, problem = compileChunk(chunk)
		if problem != nil {
			a.Problems = append(a.Problems, *problem)
		}
	}
	return a
}

// codeDigest is the fingerprint of code that cannot be read as words.
func codeDigest(kind notebook.CellKind, code string) notebook.Digest {
	h := notebook.NewHasher()
	h.Number(float64(kind))
	h.Text(code)
	return h.Sum()
}

// oneExpression refuses anything but a single expression.
func oneExpression(chunk []ast.Stmt) *notebook.CodeProblem {
	if len(chunk) == 1 {
		if r, ok := chunk[0].(*ast.ReturnStmt); ok && len(r.Exprs) == 1 {
			return nil
		}
	}
	return problemAt(0, expressionStart, "got something else than one expression, want one", "a value in the text shows one expression; put statements into a cell")
}

// expressionStart is the column of an expression behind its "return ".
const expressionStart = len("return ") + 1

// shiftExpression takes the "return " that stands before an expression out of
// the columns.
func shiftExpression(kind notebook.CellKind, a *notebook.Analysis) {
	if kind != notebook.Expression {
		return
	}
	shift := func(column *int) {
		if *column > 0 {
			*column = max(*column-len("return "), 1)
		}
	}
	for i := range a.Problems {
		shift(&a.Problems[i].Column)
	}
	for i := range a.Reads {
		shift(&a.Reads[i].Column)
	}
}

// walker walks a cell's syntax tree once: it resolves names, notes effects and
// puts checked calls in the place of unchecked operations.
type walker struct {
	engine      *Engine
	kind        notebook.CellKind
	tokens      []token
	analysis    *notebook.Analysis
	scope       *scope
	fn          *function // the function being walked; the cell itself is the outermost
	root        *function
	owners      []owner // what a function literal met now is stored in
	holders     map[string]*holder
	assumed     map[ast.Expr]string // assume calls that stand where they may
	taken       map[string]int      // occurrences of names already placed, by line and name
	lastLiteral *function           // the function literal walked last
}

func (w *walker) chunk(stmts []ast.Stmt) []ast.Stmt {
	w.root = newFunction(nil, 0)
	w.fn = w.root
	w.scope = &scope{fn: w.fn, vars: map[string]*variable{}}
	return w.block(stmts)
}

// problem notes a mistake at a word of a line.
func (w *walker) problem(line int, word, message, hint string) {
	w.analysis.Problems = append(w.analysis.Problems, *problemAt(line-1, w.columnOf(line, word), message, hint))
}

// columnOf finds the column of a name on a line; a field after a dot is not the
// name. The n-th call for one name on one line gives its n-th occurrence.
func (w *walker) columnOf(line int, word string) int {
	first := sort.Search(len(w.tokens), func(i int) bool { return w.tokens[i].line >= line-1 })
	key := fmt.Sprintf("%d %s", line, word)
	skip, found := w.taken[key], 0
	for i := first; i < len(w.tokens) && w.tokens[i].line == line-1; i++ {
		t := w.tokens[i]
		if t.text != word || (t.kind == parse.TIdent && i > 0 && (w.tokens[i-1].kind == '.' || w.tokens[i-1].kind == ':')) {
			continue
		}
		found = t.column
		if skip == 0 {
			w.taken[key]++
			return found
		}
		skip--
	}
	return found
}

// ident notes the use of a name and says whether it is a local.
func (w *walker) ident(e *ast.IdentExpr) {
	if v := w.scope.find(e.Value); v != nil {
		if len(w.owners) > 0 && w.data() {
			for _, o := range w.owners {
				w.hold(o).local(v)
			}
		} else {
			w.fn.locals[v] = true
		}
		return
	}
	w.global(e)
}

// global notes the use of a global name.
func (w *walker) global(e *ast.IdentExpr) {
	name := e.Value
	switch {
	case strings.HasPrefix(name, "\x00"):
	case name == "_G":
		w.problem(e.Line(), name, "got _G, want the name itself", "write the name: _G hides which names a cell reads")
	case w.engine.lib.isModule(name) && !standardModules[name]:
		w.problem(e.Line(), name, fmt.Sprintf("got the module %s as a value, want one of its functions", name), fmt.Sprintf("write %s.%s where it is used", name, w.engine.lib.firstIn(name)))
	case w.engine.lib.plain[name] != nil:
		w.mention(w.engine.lib.plain[name], e)
	case w.engine.isBase(name), standardModules[name]:
	case removedNames[name] != "":
		w.problem(e.Line(), name, fmt.Sprintf("got %s, which a cell does not have", name), removedNames[name])
	default:
		w.analysis.Reads = append(w.analysis.Reads, notebook.Ident{Name: name, Line: e.Line() - 1, Column: w.columnOf(e.Line(), name)})
		w.use(name)
	}
}

// use notes that the code leans on a global name.
func (w *walker) use(name string) {
	if len(w.owners) > 0 && w.data() {
		for _, o := range w.owners {
			if o.global != "" {
				w.hold(o).uses[name] = true
				continue
			}
			w.fn.uses[name] = true
		}
		return
	}
	w.fn.uses[name] = true
}

// data reports whether what is met now is stored as it is (not called).
func (w *walker) data() bool { return len(w.owners) > 0 }

// mention notes that a library function is used, called or not.
func (w *walker) mention(f *Function, at ast.PositionHolder) {
	if f.Name == "rows" && f.Module == "" {
		w.fn.rowsSeen++
	}
	for _, k := range f.Makes {
		w.fn.makes[k] = true
	}
	for _, k := range f.Reads {
		w.fn.reads[k] = true
	}
	if f.Name == "assume" && f.Module == "" && w.assumed[exprOf(at)] == "" {
		w.problem(at.Line(), "assume", "got assume inside an expression, want a statement of its own at the top level of a cell", `write price = assume{"Price of a unit", "3 EUR"} on a line of its own`)
	}
}

func exprOf(p ast.PositionHolder) ast.Expr {
	e, _ := p.(ast.Expr)
	return e
}

// keeper is what an owner gathers functions in.
type keeper struct {
	holder   *holder
	variable *variable
	uses     map[string]bool
}

func (k keeper) local(v *variable) {
	if k.holder != nil {
		k.holder.locals[v] = true
		return
	}
	k.variable.funcs = append(k.variable.funcs, v.funcs...)
}

func (w *walker) hold(o owner) keeper {
	if o.global == "" {
		return keeper{variable: o.local, uses: w.fn.uses}
	}
	h := w.holders[o.global]
	if h == nil {
		h = &holder{locals: map[*variable]bool{}, uses: map[string]bool{}}
		w.holders[o.global] = h
	}
	return keeper{holder: h, uses: h.uses}
}

// finish draws the cell's effects together and checks what its functions do.
func (w *walker) finish() {
	a := w.analysis
	a.Own = effectsOf(reach([]*function{w.root}, nil), nil)
	exported := map[*function]bool{}
	for name, h := range w.holders {
		reached := reach(h.funcs, h.locals)
		a.Functions[name] = effectsOf(reached, h.uses)
		for f := range reached {
			exported[f] = true
		}
	}
	for f := range exported {
		for _, o := range f.outside {
			if o.variable.fn == w.root {
				w.problem(o.line, o.variable.name, fmt.Sprintf("got a function for other cells that changes %s, a local of its cell; want one that only reads it", o.variable.name), "give it back as a result, or make it a local of the function")
			}
		}
	}
	if w.kind == notebook.Expression {
		w.expressionOnly()
	}
	sort.SliceStable(a.Problems, func(i, j int) bool {
		if a.Problems[i].Line != a.Problems[j].Line {
			return a.Problems[i].Line < a.Problems[j].Line
		}
		return a.Problems[i].Column < a.Problems[j].Column
	})
}

// expressionOnly refuses what a value in running text may not do.
func (w *walker) expressionOnly() {
	a := w.analysis
	if len(a.Own.Makes) > 0 {
		a.Problems = append(a.Problems, *problemAt(0, expressionStart, fmt.Sprintf("got a call that records %s, want a value to show", oneOf(a.Own.Makes[0])), "put the call into a cell and show what it gives"))
	}
	for _, name := range a.Assigns {
		a.Problems = append(a.Problems, *problemAt(name.Line, name.Column, fmt.Sprintf("got an assignment to %s, want a value to show", name.Name), "put the assignment into a cell"))
	}
}

func effectsOf(funcs map[*function]bool, uses map[string]bool) notebook.Effects {
	var e notebook.Effects
	makes, reads, names, tables := map[plan.Kind]bool{}, map[plan.Kind]bool{}, map[string]bool{}, map[string]bool{}
	for f := range funcs {
		for k := range f.makes {
			makes[k] = true
		}
		for k := range f.reads {
			reads[k] = true
		}
		for n := range f.uses {
			names[n] = true
		}
		for heading := range f.tables {
			tables[heading] = true
		}
		e.AllTables = e.AllTables || f.anyTable || f.rowsSeen > f.rowsCalls
	}
	for n := range uses {
		names[n] = true
	}
	for _, k := range plan.Kinds() {
		if makes[k] {
			e.Makes = append(e.Makes, k)
		}
		if reads[k] {
			e.Reads = append(e.Reads, k)
		}
	}
	for n := range names {
		e.Uses = append(e.Uses, n)
	}
	sort.Strings(e.Uses)
	e.Tables = sortedKeys(tables)
	return e
}

// removedNames are names of the language that a cell does not have, with what
// to do instead.
var removedNames = map[string]string{
	"io": "a cell has no files; put data into a table and read it with rows", "os": "a cell has no clock and no system; state the day with today",
	"require": "a cell has only the library; weirbook lib lists it", "dofile": "a cell has no files", "loadfile": "a cell has no files",
	"load": "a cell cannot make code of text", "loadstring": "a cell cannot make code of text", "module": "a cell is its own module",
	"debug": "a cell has no debug library", "package": "a cell has only the library; weirbook lib lists it", "coroutine": "a cell has no coroutines; use a function or a loop",
	"collectgarbage": "memory is looked after by itself", "newproxy": "use a table", "getfenv": "a cell has one environment", "setfenv": "a cell has one environment",
}

// didYouMean suggests among a library's names.
func didYouMean(name string, candidates []string) string { return diag.DidYouMean(name, candidates) }
