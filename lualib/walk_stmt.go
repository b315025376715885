package lualib

import (
	"fmt"
	"sort"

	"github.com/yuin/gopher-lua/ast"
	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
)

func (w *walker) block(stmts []ast.Stmt) []ast.Stmt {
	var out []ast.Stmt
	for _, s := range stmts {
		out = append(out, w.stmt(s)...)
	}
	return out
}

// inner walks a block with a scope of its own.
func (w *walker) inner(stmts []ast.Stmt, names ...string) []ast.Stmt {
	w.push()
	defer w.pop()
	for _, n := range names {
		w.scope.declare(n)
	}
	return w.block(stmts)
}

func (w *walker) push() {
	w.scope = &scope{parent: w.scope, fn: w.fn, vars: map[string]*variable{}}
}

func (w *walker) pop() { w.scope = w.scope.parent }

func (w *walker) stmt(s ast.Stmt) []ast.Stmt {
	switch s := s.(type) {
	case *ast.AssignStmt:
		return w.assign(s)
	case *ast.LocalAssignStmt:
		w.localAssign(s)
	case *ast.FuncCallStmt:
		s.Expr = w.expr(s.Expr)
	case *ast.DoBlockStmt:
		s.Stmts = w.inner(s.Stmts)
	case *ast.WhileStmt:
		s.Condition = w.expr(s.Condition)
		s.Stmts = w.inner(s.Stmts)
	case *ast.RepeatStmt:
		w.push()
		s.Stmts = w.block(s.Stmts)
		s.Condition = w.expr(s.Condition) // sees the locals of the body
		w.pop()
	case *ast.IfStmt:
		s.Condition = w.expr(s.Condition)
		s.Then = w.inner(s.Then)
		s.Else = w.inner(s.Else)
	case *ast.NumberForStmt:
		w.numberFor(s)
	case *ast.GenericForStmt:
		s.Exprs = w.exprs(s.Exprs)
		s.Stmts = w.inner(s.Stmts, s.Names...)
	case *ast.FuncDefStmt:
		return w.funcDef(s)
	case *ast.ReturnStmt:
		s.Exprs = w.exprs(s.Exprs)
	}
	return []ast.Stmt{s}
}

func (w *walker) numberFor(s *ast.NumberForStmt) {
	bound := func(e ast.Expr) ast.Expr {
		if e == nil {
			return nil
		}
		walked := w.expr(e)
		if _, constant := walked.(*ast.NumberExpr); constant {
			return walked
		}
		return call(opNumber, e, walked)
	}
	s.Init, s.Limit = bound(s.Init), bound(s.Limit)
	if s.Step != nil {
		s.Step = bound(s.Step)
	}
	w.push()
	defer w.pop()
	w.scope.declare(s.Name).counting = true
	s.Stmts = w.block(s.Stmts)
}

func (w *walker) localAssign(s *ast.LocalAssignStmt) {
	w.twoNumbers(len(s.Names), s.Exprs, s.Line())
	vars := make([]*variable, len(s.Names))
	for i, name := range s.Names {
		vars[i] = &variable{name: name, fn: w.fn}
	}
	// gopher-lua reads local f = function as local function f: a lone function
	// literal sees its own name, which only the latter should
	if len(s.Names) == 1 && len(s.Exprs) == 1 {
		if f, literal := s.Exprs[0].(*ast.FunctionExpr); literal {
			if w.namesItself(s.Names[0], f) {
				w.scope.vars[s.Names[0]] = vars[0]
			} else {
				s.Exprs[0] = position(&ast.LogicalOpExpr{Operator: "or", Lhs: position(&ast.FalseExpr{}, f), Rhs: f}, f)
			}
		}
	}
	for i, e := range s.Exprs {
		owners := w.owners
		if i < len(vars) {
			w.owners = []owner{{local: vars[i]}}
		}
		s.Exprs[i] = w.expr(e)
		w.owners = owners
	}
	for i, name := range s.Names {
		w.scope.vars[name] = vars[i]
	}
}

// namesItself tells local function f from local f = function, which look alike
// in the syntax tree.
func (w *walker) namesItself(name string, f *ast.FunctionExpr) bool {
	first := sort.Search(len(w.tokens), func(i int) bool { return w.tokens[i].line >= f.Line()-1 })
	for i := first; i < len(w.tokens) && w.tokens[i].line == f.Line()-1; i++ {
		if w.tokens[i].kind == parse.TFunction && kindAt(w.tokens, i-1) == '=' && kindAt(w.tokens, i-3) == parse.TLocal && w.tokens[i-2].text == name {
			return false
		}
	}
	return true
}

// assign walks an assignment, replacing its left sides where they need a
// checked call.
func (w *walker) assign(s *ast.AssignStmt) []ast.Stmt {
	w.assumeStatement(s)
	w.twoNumbers(len(s.Lhs), s.Rhs, s.Lhs[0].Line())
	for i, e := range s.Rhs {
		owners := w.owners
		w.owners = nil
		if i < len(s.Lhs) {
			w.owners = w.ownersOf(s.Lhs[i])
		}
		s.Rhs[i] = w.expr(e)
		w.owners = owners
	}
	var before []ast.Stmt
	targets := make([]*target, len(s.Lhs))
	checked := len(s.Lhs) > 1 // gopher-lua gets a, b = b, a wrong for locals
	for i, lhs := range s.Lhs {
		var own ast.Stmt
		targets[i], own = w.target(lhs)
		if own != nil {
			before = append(before, own)
		}
		checked = checked || targets[i] != nil
	}
	switch {
	case !checked:
		return append(before, s)
	case len(s.Lhs) == 1 && len(s.Rhs) == 1 && targets[0].object != nil:
		return append(before, callStmt(opSet, s, targets[0].object, targets[0].key, s.Rhs[0]))
	case len(s.Lhs) == 1 && len(s.Rhs) == 1:
		return append(before, callStmt(opGlobal, s, text(targets[0].global, s), s.Rhs[0]))
	}
	return append(before, assignMany(s, targets))
}

// assumeStatement recognises NAME = assume{…} at the top level of a cell and
// hands the call its name.
func (w *walker) assumeStatement(s *ast.AssignStmt) {
	if w.fn != w.root || w.scope.parent != nil || len(s.Lhs) != 1 || len(s.Rhs) != 1 {
		return
	}
	name, ok := s.Lhs[0].(*ast.IdentExpr)
	c, isCall := s.Rhs[0].(*ast.FuncCallExpr)
	if !ok || !isCall || w.scope.find(name.Value) != nil {
		return
	}
	f, ok := c.Func.(*ast.IdentExpr)
	if !ok || len(c.Args) != 1 || f.Value != "assume" || w.scope.find("assume") != nil {
		return
	}
	w.assumed[f] = name.Value
	w.analysis.Assumptions = append(w.analysis.Assumptions, name.Value)
	c.Args = append(c.Args, text(name.Value, s))
}

// ownersOf says what an assigned function is stored in.
func (w *walker) ownersOf(lhs ast.Expr) []owner {
	for {
		switch e := lhs.(type) {
		case *ast.AttrGetExpr:
			lhs = e.Object
			continue
		case *ast.IdentExpr:
			if v := w.scope.find(e.Value); v != nil {
				return []owner{{local: v}}
			}
			return []owner{{global: e.Value}}
		}
		return nil
	}
}

// target walks a left side; the result is nil where the plain assignment is
// right. own is a check to run before the assignment.
func (w *walker) target(lhs ast.Expr) (t *target, own ast.Stmt) {
	switch e := lhs.(type) {
	case *ast.IdentExpr:
		if v := w.scope.find(e.Value); v != nil {
			v.counting = false
			if v.fn != w.fn {
				w.fn.outside = append(w.fn.outside, assignment{v, e.Line()})
				return nil, callStmt(opOwn, e, text(v.name, e))
			}
			return nil, nil
		}
		w.assignGlobal(e)
		if w.fn != w.root {
			return &target{global: e.Value}, nil
		}
		return nil, nil
	case *ast.AttrGetExpr:
		if id, ok := e.Object.(*ast.IdentExpr); ok && w.scope.find(id.Value) == nil {
			if w.engine.lib.isModule(id.Value) {
				w.problem(e.Line(), id.Value, fmt.Sprintf("got an assignment into the library's %s, want a name of your own", id.Value), fmt.Sprintf("write my_%s = {} and fill that", id.Value))
				return nil, nil
			}
			if id.Value == "_G" {
				w.problem(e.Line(), "_G", "got an assignment into _G, want one to the name itself", "write the name alone on the left")
				return nil, nil
			}
		}
		owners := w.owners
		w.owners = nil
		object, key := w.expr(e.Object), w.expr(e.Key)
		w.owners = owners
		return &target{object: object, key: key}, nil
	}
	return nil, nil
}

// assignGlobal notes that the cell assigns a name.
func (w *walker) assignGlobal(e *ast.IdentExpr) {
	name := e.Value
	switch {
	case name == "_G" || w.engine.isBase(name) || w.engine.lib.plain[name] != nil || w.engine.lib.isModule(name):
		w.problem(e.Line(), name, fmt.Sprintf("got an assignment to %s, a name of the library; want a name of your own", name), fmt.Sprintf("write my_%s = …, or local %s = … inside a function", name, name))
		return
	case removedNames[name] != "":
		w.problem(e.Line(), name, fmt.Sprintf("got an assignment to %s, a name that the language keeps; want a name of your own", name), "choose another name")
		return
	}
	for _, a := range w.analysis.Assigns {
		if a.Name == name {
			return
		}
	}
	w.analysis.Assigns = append(w.analysis.Assigns, notebook.Ident{Name: name, Line: e.Line() - 1, Column: w.columnOf(e.Line(), name)})
}

// funcDef turns "function a.b:c() end" into an assignment and walks that.
func (w *walker) funcDef(s *ast.FuncDefStmt) []ast.Stmt {
	lhs := s.Name.Func
	if lhs == nil {
		lhs = position(&ast.AttrGetExpr{Object: s.Name.Receiver, Key: text(s.Name.Method, s.Func)}, s.Func)
		s.Func.ParList.Names = append([]string{"self"}, s.Func.ParList.Names...)
	}
	assign := position(&ast.AssignStmt{Lhs: []ast.Expr{lhs}, Rhs: []ast.Expr{s.Func}}, s.Func)
	return w.assign(assign)
}
