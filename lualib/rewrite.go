package lualib

import "github.com/yuin/gopher-lua/ast"

// Checked calls that stand in the syntax tree in place of operations that the
// language would do wrongly or without bound. No cell can write these names.
const (
	opLess      = "\x00lt"
	opLessEqual = "\x00le"
	opMore      = "\x00gt"
	opMoreEqual = "\x00ge"
	opEqual     = "\x00eq"
	opConcat    = "\x00concat"
	opSet       = "\x00set"
	opGlobal    = "\x00global"
	opOwn       = "\x00own"
	opNumber    = "\x00number"
	opKey       = "\x00key"
	opField     = "\x00field"
	opLength    = "\x00len"
)

// call makes a call of a checked operation. It gives one value and is no tail
// call, whose line would be lost.
func call(op string, at ast.PositionHolder, args ...ast.Expr) *ast.FuncCallExpr {
	return position(&ast.FuncCallExpr{Func: position(&ast.IdentExpr{Value: op}, at), Args: args, AdjustRet: true}, at)
}

// single cuts an operand down to one value: as a call's last argument it would
// bring all it has.
func single(e ast.Expr) ast.Expr {
	switch e := e.(type) {
	case *ast.FuncCallExpr:
		e.AdjustRet = true
	case *ast.Comma3Expr:
		e.AdjustRet = true
	}
	return e
}

func callStmt(op string, at ast.PositionHolder, args ...ast.Expr) ast.Stmt {
	return position(&ast.FuncCallStmt{Expr: call(op, at, args...)}, at)
}

func text(value string, at ast.PositionHolder) ast.Expr {
	return position(&ast.StringExpr{Value: value}, at)
}

// relational replaces a comparison.
func relational(e *ast.RelationalOpExpr) ast.Expr {
	switch e.Operator {
	case "<":
		return call(opLess, e, e.Lhs, e.Rhs)
	case ">":
		return call(opMore, e, e.Lhs, e.Rhs)
	case "<=":
		return call(opLessEqual, e, e.Lhs, e.Rhs)
	case ">=":
		return call(opMoreEqual, e, e.Lhs, e.Rhs)
	}
	if isNil(e.Lhs) || isNil(e.Rhs) {
		return e
	}
	equal := call(opEqual, e, e.Lhs, e.Rhs)
	if e.Operator == "~=" {
		return position(&ast.UnaryNotOpExpr{Expr: equal}, e)
	}
	return equal
}

func isNil(e ast.Expr) bool {
	_, ok := e.(*ast.NilExpr)
	return ok
}

// concatBatch bounds the operands of one checked concatenation: a call takes a
// register for each.
const concatBatch = 40

// concat replaces a chain of .. by one checked call, or a few where it is long.
func concat(e *ast.StringConcatOpExpr, operands []ast.Expr) ast.Expr {
	operands[len(operands)-1] = single(operands[len(operands)-1])
	for len(operands) > concatBatch {
		tail := operands[len(operands)-concatBatch:]
		joined := call(opConcat, e, append([]ast.Expr(nil), tail...)...)
		operands = append(append([]ast.Expr(nil), operands[:len(operands)-concatBatch]...), joined)
	}
	return call(opConcat, e, operands...)
}

// chainOf lists the operands of a chain of .., left to right.
func chainOf(e *ast.StringConcatOpExpr) []ast.Expr {
	operands := []ast.Expr{e.Lhs}
	rest := e.Rhs
	for {
		next, ok := rest.(*ast.StringConcatOpExpr)
		if !ok {
			return append(operands, rest)
		}
		operands = append(operands, next.Lhs)
		rest = next.Rhs
	}
}

// target is one left side of an assignment that needs a checked call.
type target struct {
	object, key ast.Expr
	global      string
}

// assignMany replaces an assignment of several values, some of them into tables
// or globals that need a checked call: everything is worked out first, then set.
func assignMany(s *ast.AssignStmt, targets []*target) ast.Stmt {
	var names []string
	var values []ast.Expr
	name := func(e ast.Expr, i int, part string) ast.Expr {
		n := "\x00" + part + string(rune('a'+i%26)) + string(rune('a'+i/26%26))
		names = append(names, n)
		values = append(values, e)
		return position(&ast.IdentExpr{Value: n}, s)
	}
	block := position(&ast.DoBlockStmt{}, s)
	for i, t := range targets {
		if t != nil && t.object != nil {
			t.object, t.key = name(t.object, i, "o"), name(t.key, i, "k")
		}
	}
	if len(names) > 0 {
		block.Stmts = append(block.Stmts, position(&ast.LocalAssignStmt{Names: names, Exprs: values}, s))
	}
	var results []string
	for i := range s.Lhs {
		results = append(results, "\x00v"+string(rune('a'+i%26))+string(rune('a'+i/26%26)))
	}
	block.Stmts = append(block.Stmts, position(&ast.LocalAssignStmt{Names: results, Exprs: s.Rhs}, s))
	for i := len(s.Lhs) - 1; i >= 0; i-- {
		value := position(&ast.IdentExpr{Value: results[i]}, s)
		switch t := targets[i]; {
		case t == nil:
			block.Stmts = append(block.Stmts, position(&ast.AssignStmt{Lhs: []ast.Expr{s.Lhs[i]}, Rhs: []ast.Expr{value}}, s))
		case t.object != nil:
			block.Stmts = append(block.Stmts, callStmt(opSet, s, t.object, t.key, value))
		default:
			block.Stmts = append(block.Stmts, callStmt(opGlobal, s, text(t.global, s), value))
		}
	}
	return block
}
