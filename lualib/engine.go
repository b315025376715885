// Package lualib is the language of the cells: a bounded Lua 5.1 with
// quantities, and the library that the cells call. It implements
// notebook.Engine. The science stands in the packages below it, in plain Go.
package lualib

import (
	"context"
	"fmt"
	"sort"
	"strings"

	lua "github.com/yuin/gopher-lua"
	"github.com/yuin/gopher-lua/ast"

	"weirbook/notebook"
)

// Engine analyses, runs and concludes. It may be shared by runs, one at a time.
type Engine struct {
	lib      *library
	base     map[string]lua.LGFunction
	analyses analyses
}

func init() {
	// One assignment far beyond a list's end would fill what lies between; the
	// bound keeps that to a few megabytes.
	lua.MaxArrayIndex = 1 << 18
}

// New gives an Engine with the whole library.
func New() *Engine {
	e := &Engine{lib: newLibrary(functions())}
	e.base = baseFunctions()
	e.analyses.known = map[string]*notebook.Analysis{}
	return e
}

// Functions lists the library's functions, module by module.
func (e *Engine) Functions() []*Function {
	list := append([]*Function(nil), e.lib.all...)
	sort.SliceStable(list, func(i, j int) bool { return list[i].Module < list[j].Module })
	return list
}

// Find gives a function by its full name.
func (e *Engine) Find(name string) *Function {
	for _, f := range e.lib.all {
		if f.FullName() == name {
			return f
		}
	}
	return nil
}

// Names lists the names that the library takes.
func (e *Engine) Names() []string {
	var names []string
	for n := range e.lib.plain {
		names = append(names, n)
	}
	for n := range e.lib.modules {
		names = append(names, n)
	}
	for n := range e.base {
		names = append(names, n)
	}
	sort.Strings(names)
	return names
}

// isBase reports whether a name is one of the language's own functions.
func (e *Engine) isBase(name string) bool {
	_, ok := e.base[name]
	return ok || name == "_VERSION"
}

// Begin starts a session.
func (e *Engine) Begin(ctx context.Context, limits notebook.Limits) notebook.Session {
	s := &session{engine: e, memory: newWatchdog(limits.Memory)}
	s.meter = newMeter(ctx, limits, s.memory)
	return s
}

// compileChunk compiles a walked syntax tree.
func compileChunk(chunk []ast.Stmt) (program any, problem *notebook.CodeProblem) {
	defer func() {
		if r := recover(); r != nil {
			problem = problemAt(0, 0, "got a cell that is too large for the compiler, want a smaller one", "split it into several cells")
		}
	}()
	proto, err := lua.Compile(chunk, chunkName)
	if err != nil {
		return nil, compileProblem(err)
	}
	return proto, nil
}

func compileProblem(err error) *notebook.CodeProblem {
	line, message := compileMessage(err)
	switch {
	case strings.Contains(message, "no loop to break"):
		return problemAt(max(line-1, 0), 0, "got break outside a loop, want it inside one", "to leave a cell early put the rest into an if")
	case strings.Contains(message, "label"):
		return problemAt(max(line-1, 0), 0, "got a goto or a label without the other", "use a loop or a function")
	}
	return problemAt(max(line-1, 0), 0, message, "split the cell, or use fewer locals")
}

func compileMessage(err error) (int, string) {
	if ce, ok := err.(*lua.CompileError); ok {
		return ce.Line, "got code that cannot be compiled: " + ce.Message
	}
	return 1, fmt.Sprintf("got code that cannot be compiled: %v", err)
}

// chunkName marks the places in messages of the language's machine. The cell is
// added when a function is loaded.
const chunkName = "\x01"
