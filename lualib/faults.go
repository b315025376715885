package lualib

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// raise throws a fault from a native function: the cell's own code sees its
// text, and the run sees the fault with its place.
func (s *session) raise(L *lua.LState, err error) int {
	fault := diag.AsFault(err)
	return s.raiseAt(L, fault, s.placeOf(L, 1))
}

func (s *session) raiseAt(L *lua.LState, fault *diag.Fault, place plan.Place) int {
	text := fault.Error()
	s.current.fault = &raised{fault: fault, place: place, text: text}
	L.Error(lua.LString(text), 0)
	return 0
}

// raisef throws a plain message.
func (s *session) raisef(L *lua.LState, format string, args ...any) int {
	return s.raise(L, &diag.Fault{Message: fmt.Sprintf(format, args...)})
}

// placeOf gives the place in the notebook's code from which a native function
// was called: the nearest Lua function on the stack.
func (s *session) placeOf(L *lua.LState, level int) plan.Place {
	if p := s.placeIn(L, level); p.Line >= 0 {
		return p
	}
	for i := len(s.callers) - 1; i >= 0; i-- {
		if p := s.placeIn(s.callers[i], 1); p.Line >= 0 {
			return p
		}
	}
	return plan.Place{Line: -1}
}

func (s *session) placeIn(L *lua.LState, level int) plan.Place {
	for ; level < 64; level++ {
		d, ok := L.GetStack(level)
		if !ok {
			break
		}
		if _, err := L.GetInfo("Sl", d, lua.LNil); err != nil {
			break
		}
		if d.CurrentLine > 0 && strings.HasPrefix(d.Source, chunkName) {
			return s.codePlace(d, d.CurrentLine)
		}
	}
	return plan.Place{Line: -1}
}

// codePlace turns a line of code into a place that survives moved text. The
// cell is told by the environment of the function that runs.
func (s *session) codePlace(d *lua.Debug, line int) plan.Place {
	fn, err := s.state.GetInfo("f", d, lua.LNil)
	f := s.current
	if lf, ok := fn.(*lua.LFunction); err == nil && ok && lf.Env != f.env {
		for _, lent := range s.lent {
			if lent.env == lf.Env {
				return plan.Place{Cell: lent.name, Line: lineCount(lent.job.Analysis.Code, line-1)}
			}
		}
	}
	return plan.Place{Line: lineCount(f.job.Analysis.Code, line-1)}
}

// lineCount gives the position of a code line among the lines with code: the
// last that does not come after it.
func lineCount(lines []int, line int) int {
	count := -1
	for i, l := range lines {
		if l > line {
			break
		}
		count = i
	}
	return count
}

var machinePlace = regexp.MustCompile("^\x01:(\\d+): ")

// faultOf turns what a call threw into a fault with its place.
func (s *session) faultOf(err error, f *frame) *raised {
	api, ok := err.(*lua.ApiError)
	if !ok {
		return &raised{fault: &diag.Fault{Message: err.Error()}, place: plan.Place{Line: -1}}
	}
	switch object := api.Object.(type) {
	case lua.LString:
		return s.textFault(string(object), f)
	case *lua.LTable:
		return &raised{fault: tableFault(object), place: s.lastPlace(f)}
	case nil:
		return s.textFault(err.Error(), f)
	}
	return &raised{fault: &diag.Fault{Message: "got an error without a text", Hint: `write error("what is wrong")`}, place: s.lastPlace(f)}
}

func (s *session) lastPlace(f *frame) plan.Place {
	if f.fault != nil {
		return f.fault.place
	}
	return plan.Place{Line: -1}
}

// tableFault shows an error that is a table by its message field.
func tableFault(t *lua.LTable) *diag.Fault {
	for _, key := range []string{"message", "msg", "error"} {
		if text, ok := t.RawGetString(key).(lua.LString); ok {
			return &diag.Fault{Message: string(text)}
		}
	}
	return &diag.Fault{Message: "got an error that is a table without a message", Hint: `write error("what is wrong"), or give the table a field message`}
}

func (s *session) textFault(text string, f *frame) *raised {
	if f.fault != nil && f.fault.text == text {
		return f.fault
	}
	place := plan.Place{Line: -1}
	if m := machinePlace.FindStringSubmatch(text); m != nil {
		line, _ := strconv.Atoi(m[1])
		place = plan.Place{Line: lineCount(f.job.Analysis.Code, line-1)}
		text = text[len(m[0]):]
	}
	return &raised{fault: plainMessage(text), place: place, text: text}
}

// machineMessages turns the machine's messages into our grammar.
var machineMessages = []struct {
	pattern *regexp.Regexp
	message string
	hint    string
}{
	{regexp.MustCompile(`^attempt to index a non-table object\((\w+)\) with key '(.*)'`), "got $1 where a table with the field $2 is wanted", "is the name before .$2 spelled right, and does its cell give it a value?"},
	{regexp.MustCompile(`^attempt to call a non-function object`), "got something that is no function where one is called", "is the function's name spelled right? a loop over a list needs for _, x in ipairs(list) do"},
	{regexp.MustCompile(`^cannot perform (\w+) operation between (\w+) and (\w+)`), "cannot $1 $2 and $3", ""},
	{regexp.MustCompile(`^(?:stack|registry) overflow`), "got calls nested too deep, want them to end", "does a function call itself without end? use a loop"},
	{regexp.MustCompile(`^too many recursions in [gs]ettable`), "got tables that look each other up without end", "is a table its own __index?"},
	{regexp.MustCompile(`^for statement (\w+) must be a number`), "got no number for the $1 of a for loop", ""},
	{regexp.MustCompile(`^bad argument #(\d+) to (\S+) \((.*)\)`), "argument $1 of $2: $3", ""},
	{regexp.MustCompile(`^__unm undefined`), "cannot change the sign of a value that is no number", ""},
	{regexp.MustCompile(`^__len undefined`), "got a value without a length where # wants a list or a text", ""},
	{regexp.MustCompile(`^table index is nil`), "got nil as a key of a table", "give the key a value first"},
	{regexp.MustCompile(`^table index is NaN`), "got no number (nan) as a key of a table", ""},
}

func plainMessage(text string) *diag.Fault {
	for _, m := range machineMessages {
		if loc := m.pattern.FindStringSubmatchIndex(text); loc != nil {
			return &diag.Fault{
				Message: string(m.pattern.ExpandString(nil, m.message, text, loc)),
				Hint:    string(m.pattern.ExpandString(nil, m.hint, text, loc)),
			}
		}
	}
	return &diag.Fault{Message: text}
}
