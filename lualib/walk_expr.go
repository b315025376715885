package lualib

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/yuin/gopher-lua/ast"

	"weirbook/lualib/lua51"
	"weirbook/notebook/quantity"
)

func (w *walker) exprs(list []ast.Expr) []ast.Expr {
	for i, e := range list {
		list[i] = w.expr(e)
	}
	return list
}

// used walks an expression whose value is used, not stored.
func (w *walker) used(e ast.Expr) ast.Expr {
	owners := w.owners
	w.owners = nil
	defer func() { w.owners = owners }()
	return w.expr(e)
}

func (w *walker) expr(e ast.Expr) ast.Expr {
	switch e := e.(type) {
	case *ast.NumberExpr:
		w.number(e)
	case *ast.IdentExpr:
		w.ident(e)
	case *ast.AttrGetExpr:
		return w.attr(e)
	case *ast.TableExpr:
		w.table(e)
	case *ast.FuncCallExpr:
		w.funcCall(e)
	case *ast.LogicalOpExpr:
		e.Lhs, e.Rhs = w.expr(e.Lhs), w.expr(e.Rhs)
	case *ast.RelationalOpExpr:
		w.unitText(e)
		e.Lhs, e.Rhs = w.used(e.Lhs), w.used(e.Rhs)
		return relational(e)
	case *ast.StringConcatOpExpr:
		operands := chainOf(e)
		for i := range operands {
			operands[i] = w.used(operands[i])
		}
		return concat(e, operands)
	case *ast.ArithmeticOpExpr:
		e.Lhs, e.Rhs = w.used(e.Lhs), w.used(e.Rhs)
	case *ast.UnaryMinusOpExpr:
		e.Expr = w.used(e.Expr)
	case *ast.UnaryNotOpExpr:
		e.Expr = w.used(e.Expr)
	case *ast.UnaryLenOpExpr:
		return call(opLength, e, w.used(e.Expr))
	case *ast.FunctionExpr:
		w.funcLiteral(e)
	}
	return e
}

// number writes a number so that the compiler reads it as the language does:
// 010 is ten, not eight.
func (w *walker) number(e *ast.NumberExpr) {
	if v, ok := lua51.ParseNumber(e.Value); ok {
		e.Value = strconv.FormatFloat(v, 'g', -1, 64)
		return
	}
	w.problem(e.Line(), e.Value, fmt.Sprintf("got %q, want a number", e.Value), "write digits with a point for the decimals")
}

// attr walks a.b and a[b]: functions of the library's modules are noted, other
// keys checked.
func (w *walker) attr(e *ast.AttrGetExpr) ast.Expr {
	key, literal := e.Key.(*ast.StringExpr)
	if id, ok := e.Object.(*ast.IdentExpr); ok && w.scope.find(id.Value) == nil {
		if id.Value == "_G" && literal {
			name := position(&ast.IdentExpr{Value: key.Value}, id)
			w.ident(name)
			return name
		}
		if w.engine.lib.isModule(id.Value) {
			w.moduleField(e, id, key)
			return e
		}
	}
	e.Object = w.used(e.Object)
	if literal {
		return e
	}
	e.Key = w.used(e.Key)
	switch k := e.Key.(type) {
	case *ast.NumberExpr, *ast.StringExpr, *ast.TrueExpr, *ast.FalseExpr:
		return e
	case *ast.IdentExpr:
		if v := w.scope.find(k.Value); v != nil && v.counting {
			return e
		}
	}
	e.Key = call(opKey, e, e.Key)
	return e
}

func (w *walker) moduleField(e *ast.AttrGetExpr, id *ast.IdentExpr, key *ast.StringExpr) {
	if standardModules[id.Value] {
		if key == nil {
			e.Key = w.used(e.Key)
		}
		return
	}
	if key == nil {
		w.problem(e.Line(), id.Value, fmt.Sprintf("got a field of %s that is worked out, want its name", id.Value), fmt.Sprintf("write %s.%s", id.Value, w.engine.lib.firstIn(id.Value)))
		e.Key = w.used(e.Key)
		return
	}
	f := w.engine.lib.find(id.Value, key.Value)
	if f == nil {
		hint := didYouMean(key.Value, w.engine.lib.namesIn(id.Value))
		if hint == "" {
			hint = "weirbook lib lists the functions"
		}
		w.problem(e.Line(), id.Value, fmt.Sprintf("unknown function %s.%s", id.Value, key.Value), hint)
		return
	}
	w.mention(f, e)
}

func (w *walker) table(e *ast.TableExpr) {
	for _, f := range e.Fields {
		if f.Key != nil {
			if _, literal := f.Key.(*ast.StringExpr); !literal {
				f.Key = call(opField, f.Key, w.used(f.Key))
			}
		}
		f.Value = w.expr(f.Value)
	}
}

func (w *walker) funcCall(e *ast.FuncCallExpr) {
	owners := w.owners
	w.owners = nil
	if e.Func != nil {
		w.tableRead(e)
		e.Func = w.expr(e.Func)
	} else {
		e.Receiver = w.expr(e.Receiver)
	}
	for i, arg := range e.Args {
		e.Args[i] = w.argument(arg, owners)
	}
	w.owners = owners
}

// argument walks an argument: a function literal in it may run now, and may be
// stored in what the call's result is assigned to.
func (w *walker) argument(arg ast.Expr, owners []owner) ast.Expr {
	if f, ok := arg.(*ast.FunctionExpr); ok {
		w.owners = owners
		w.funcLiteral(f)
		w.owners = nil
		last := w.lastLiteral
		w.fn.inner = append(w.fn.inner, last)
		return f
	}
	return w.expr(arg)
}

// tableRead notes which heading a call of rows reads.
func (w *walker) tableRead(e *ast.FuncCallExpr) {
	id, ok := e.Func.(*ast.IdentExpr)
	if !ok || id.Value != "rows" || w.scope.find("rows") != nil {
		return
	}
	w.fn.rowsCalls++
	if len(e.Args) == 1 {
		if s, ok := e.Args[0].(*ast.StringExpr); ok {
			w.fn.tables[strings.TrimSpace(s.Value)] = true
			return
		}
	}
	w.fn.anyTable = true
}

// funcLiteral walks a function.
func (w *walker) funcLiteral(e *ast.FunctionExpr) {
	f := newFunction(w.fn, e.Line())
	if len(w.owners) == 0 {
		w.fn.inner = append(w.fn.inner, f)
	}
	for _, o := range w.owners {
		if o.global != "" {
			k := w.hold(o)
			k.holder.funcs = append(k.holder.funcs, f)
		} else {
			o.local.funcs = append(o.local.funcs, f)
		}
	}
	outerFn, outerScope, outerOwners := w.fn, w.scope, w.owners
	w.fn, w.owners = f, nil
	w.scope = &scope{parent: outerScope, fn: f, vars: map[string]*variable{}}
	for _, name := range e.ParList.Names {
		w.scope.declare(name)
	}
	if e.ParList.HasVargs {
		w.scope.declare("arg")
	}
	e.Stmts = w.block(e.Stmts)
	w.fn, w.scope, w.owners = outerFn, outerScope, outerOwners
	w.lastLiteral = f
}

// unitText refuses unit text beside a comparison: text would compare by its
// letters.
func (w *walker) unitText(e *ast.RelationalOpExpr) {
	for _, side := range []ast.Expr{e.Lhs, e.Rhs} {
		s, ok := side.(*ast.StringExpr)
		if !ok {
			continue
		}
		q, err := quantity.Parse(s.Value)
		if err != nil || q.Unit() == nil {
			continue
		}
		w.problem(s.Line(), s.Value, fmt.Sprintf("got the text %q beside %s, want a quantity", s.Value, e.Operator), fmt.Sprintf("write Q%q", s.Value))
	}
}
