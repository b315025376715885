package lualib

import (
	"github.com/yuin/gopher-lua/ast"

	"weirbook/notebook/plan"
)

// variable is a local of the cell's code.
type variable struct {
	name     string
	fn       *function // the function that declares it
	counting bool      // the variable of a numeric for: always a number
	funcs    []*function
}

// function is a function literal of the code, or the code of the cell itself.
type function struct {
	parent  *function
	makes   map[plan.Kind]bool
	reads   map[plan.Kind]bool
	uses    map[string]bool    // global names mentioned
	locals  map[*variable]bool // locals mentioned that may hold functions
	inner   []*function        // literals that run with it
	outside []assignment       // assignments to locals of functions around it
	line    int

	tables    map[string]bool // headings that are read
	rowsCalls int             // calls of rows met by name
	rowsSeen  int             // mentions of rows
	anyTable  bool            // some heading is not a literal
}

// assignment is a place where a local is assigned.
type assignment struct {
	variable *variable
	line     int
}

func newFunction(parent *function, line int) *function {
	return &function{parent: parent, line: line, makes: map[plan.Kind]bool{}, reads: map[plan.Kind]bool{}, uses: map[string]bool{}, locals: map[*variable]bool{}, tables: map[string]bool{}}
}

// scope is a block of the code.
type scope struct {
	parent *scope
	fn     *function
	vars   map[string]*variable
}

func (s *scope) find(name string) *variable {
	for ; s != nil; s = s.parent {
		if v, ok := s.vars[name]; ok {
			return v
		}
	}
	return nil
}

func (s *scope) declare(name string) *variable {
	v := &variable{name: name, fn: s.fn}
	s.vars[name] = v
	return v
}

// owner is what a function literal is stored in: a global name or a local.
type owner struct {
	global string
	local  *variable
}

// holder gathers what may be reached from a global name that holds functions.
type holder struct {
	funcs  []*function
	locals map[*variable]bool
	uses   map[string]bool
}

// reach lists every function literal that can run when one of the given runs.
func reach(funcs []*function, locals map[*variable]bool) map[*function]bool {
	seen := map[*function]bool{}
	doneVars := map[*variable]bool{}
	var visitVar func(*variable)
	var visit func(*function)
	visit = func(f *function) {
		if seen[f] {
			return
		}
		seen[f] = true
		for _, inner := range f.inner {
			visit(inner)
		}
		for v := range f.locals {
			visitVar(v)
		}
	}
	visitVar = func(v *variable) {
		if doneVars[v] {
			return
		}
		doneVars[v] = true
		for _, f := range v.funcs {
			visit(f)
		}
	}
	for _, f := range funcs {
		visit(f)
	}
	for v := range locals {
		visitVar(v)
	}
	return seen
}

// position copies the line of one node to another, so that messages name it.
func position[N ast.PositionHolder](to N, from ast.PositionHolder) N {
	to.SetLine(from.Line())
	to.SetLastLine(from.LastLine())
	if from.LastLine() == 0 {
		to.SetLastLine(from.Line())
	}
	return to
}
