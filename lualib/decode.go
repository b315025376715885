package lualib

import (
	"fmt"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// callArgs are the decoded arguments of one call of a library function.
type callArgs struct {
	session *session
	fn      *Function
	values  map[string]any
	place   plan.Place // of the call in the code, or of the row it was given
	row     *rowOf
	note    string
	linked  *lua.LTable // the record that a link was given as
}

// bound makes the native function of a library function: it decodes the
// arguments, calls the Go side and hands back the result.
func (s *session) bound(f *Function) lua.LGFunction {
	if raw := rawFunctions[f.FullName()]; raw != nil {
		return func(L *lua.LState) int { return raw(s, L) }
	}
	return func(L *lua.LState) int {
		c, fault := s.decode(L, f)
		if fault != nil {
			return s.raiseAt(L, fault.fault, fault.place)
		}
		if err := s.untraced(f); err != nil {
			return s.raiseAt(L, diag.AsFault(err), c.place)
		}
		result, err := f.run(c)
		if err != nil {
			return s.raiseAt(L, c.subject(err), c.placeOf(err))
		}
		L.Push(s.push(f, result))
		return 1
	}
}

// subject puts the function's name before an error of the Go side, whose text
// may begin with the argument.
func (c *callArgs) subject(err error) *diag.Fault {
	f := diag.AsFault(withUnitHint(err))
	fault := *f
	if fault.Subject == "" {
		fault.Subject = c.fn.FullName()
	} else if !strings.HasPrefix(fault.Subject, c.fn.FullName()) {
		fault.Subject = c.fn.FullName() + ": " + fault.Subject
	}
	return &fault
}

// placeOf puts an error about one argument at the table cell it came from.
func (c *callArgs) placeOf(err error) plan.Place {
	var about *argError
	if a, ok := err.(*argError); ok {
		about = a
	}
	if about != nil && c.row != nil {
		return plan.Place{Line: -1, Table: c.row.heading, Row: c.row.row, Column: about.name}
	}
	return c.place
}

// argError is an error about one argument.
type argError struct {
	name string
	*diag.Fault
}

// wrong makes an error about an argument.
func wrong(name, message, hint string) error {
	return &argError{name, &diag.Fault{Subject: name, Message: message, Hint: hint}}
}

// decode reads the arguments of a call.
func (s *session) decode(L *lua.LState, f *Function) (*callArgs, *raised) {
	c := &callArgs{session: s, fn: f, values: make(map[string]any, 8), place: s.placeOf(L, 1)}
	s.current.atCell = s.cellPlace(L)
	fail := func(name, message, hint string) (*callArgs, *raised) {
		err := wrong(name, message, hint).(*argError)
		if name == "" {
			err.Subject = ""
		}
		return nil, &raised{fault: c.subject(err.Fault), place: c.placeOf(err)}
	}
	given, ok := L.Get(1).(*lua.LTable)
	if ok {
		if fz := s.frozen[given]; fz != nil && fz.of != "" {
			ok = false
		}
	}
	if !ok {
		if L.GetTop() > 0 && L.Get(1) != lua.LNil {
			a := f.placed(1)
			if a == nil {
				return fail("", fmt.Sprintf("got %s, want named arguments in braces", s.describe(L.Get(1))), fmt.Sprintf("write %s{%s = …}", f.FullName(), f.firstArg()))
			}
			if err := c.set(a, L.Get(1)); err != nil {
				return nil, &raised{fault: c.subject(err), place: c.placeOf(err)}
			}
		}
		return c.finish(L)
	}
	c.row = s.current.rows[given]
	if c.row != nil {
		c.place = plan.Place{Line: -1, Table: c.row.heading, Row: c.row.row}
	}
	for key, value := given.Next(lua.LNil); key != lua.LNil; key, value = given.Next(key) {
		if err := c.entry(key, value); err != nil {
			return nil, &raised{fault: c.subject(err), place: c.placeOf(err)}
		}
	}
	return c.finish(L)
}

// entry reads one entry of the table of arguments.
func (c *callArgs) entry(key, value lua.LValue) error {
	if n, ok := key.(lua.LNumber); ok {
		a := c.fn.placed(int(n))
		if rest := c.fn.rest(); a == nil && rest != nil {
			list, _ := c.values[rest.Name].([]lua.LValue)
			c.values[rest.Name] = append(list, value)
			return nil
		}
		if a == nil {
			return wrong("", fmt.Sprintf("got %s without a name, want named arguments", c.session.describe(value)), fmt.Sprintf("write %s{%s = …}", c.fn.FullName(), c.fn.firstArg()))
		}
		return c.set(a, value)
	}
	name, ok := key.(lua.LString)
	if !ok {
		return wrong("", fmt.Sprintf("got %s as the name of an argument, want a name", c.session.describe(key)), "")
	}
	a := c.fn.named(string(name))
	if a != nil {
		return c.set(a, value)
	}
	if name == "note" {
		text, err := c.session.text(value)
		c.note = joinNotes(text, c.note)
		return err
	}
	if c.row != nil {
		if near := nearMiss(string(name), c.fn.argNames()); near != "" {
			return wrong(string(name), fmt.Sprintf("got a column %q, which is no argument", string(name)), fmt.Sprintf("did you mean %q?", near))
		}
		text, _ := stringOf(value)
		c.note = joinNotes(c.note, string(name)+": "+text)
		return nil
	}
	hint := didYouMean(string(name), append(c.fn.argNames(), "note"))
	if hint == "" {
		hint = "it takes " + strings.Join(c.fn.argNames(), ", ")
	}
	return wrong(string(name), "got an argument that the function does not have", hint)
}

func joinNotes(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// nearMiss is a stricter nearest name, for the columns of a table that may well
// be remarks.
func nearMiss(name string, candidates []string) string {
	near := diag.Nearest(name, candidates)
	if near == "" || !diag.Close(name, near) {
		return ""
	}
	return near
}

// named finds an argument by its name or one of the columns that stand for it.
func (f *Function) named(name string) *Arg {
	for i := range f.Args {
		if f.Args[i].Name == name || (f.Args[i].Column != "" && f.Args[i].Column == name) {
			return &f.Args[i]
		}
	}
	return nil
}

func (f *Function) placed(n int) *Arg {
	for i := range f.Args {
		if f.Args[i].Place == n {
			return &f.Args[i]
		}
	}
	return nil
}

// rest gives the argument that takes all values without a name.
func (f *Function) rest() *Arg {
	for i := range f.Args {
		if f.Args[i].Rest {
			return &f.Args[i]
		}
	}
	return nil
}

// part decodes one table of a list by arguments of its own.
func (c *callArgs) part(name string, args []Arg, v lua.LValue) (*callArgs, error) {
	t, ok := v.(*lua.LTable)
	if !ok {
		return nil, wrong(name, fmt.Sprintf("got %s in the list, want a table of named values", c.session.describe(v)), fmt.Sprintf("write {%s = …}", args[0].Name))
	}
	p := &callArgs{session: c.session, fn: &Function{Module: c.fn.Module, Name: c.fn.Name, Args: args}, values: map[string]any{}, place: c.place}
	for key, value := t.Next(lua.LNil); key != lua.LNil; key, value = t.Next(key) {
		if name, ok := key.(lua.LString); ok && p.fn.named(string(name)) == nil && c.session.frozen[t] != nil {
			continue // a record has more fields than are asked for
		}
		if err := p.entry(key, value); err != nil {
			return nil, err
		}
	}
	_, fault := p.finish(nil)
	if fault != nil {
		return nil, fault.fault
	}
	return p, nil
}

func (f *Function) firstArg() string {
	if len(f.Args) == 0 {
		return "…"
	}
	return f.Args[0].Name
}

// set reads one argument.
func (c *callArgs) set(a *Arg, value lua.LValue) error {
	if value == lua.LNil {
		return nil
	}
	if _, twice := c.values[a.Name]; twice {
		return wrong(a.Name, "got the argument twice, want it once", "")
	}
	v, err := c.value(a, value)
	if err != nil {
		f := diag.AsFault(withUnitHint(err))
		return wrong(a.Name, f.Error(), f.Hint)
	}
	c.values[a.Name] = v
	return nil
}

// finish checks that nothing is missing.
func (c *callArgs) finish(*lua.LState) (*callArgs, *raised) {
	for i := range c.fn.Args {
		a := &c.fn.Args[i]
		if _, ok := c.values[a.Name]; a.Need && !ok {
			hint := fmt.Sprintf("add %s = %q", a.Name, a.exampleOf(""))
			if a.Kind == ArgText || a.Kind == ArgLink {
				hint = fmt.Sprintf("add %s = \"…\"", a.Name)
			}
			if a.Kind == ArgNumber || a.Kind == ArgCount || a.Kind == ArgBool || a.Kind == ArgAny {
				hint = fmt.Sprintf("add %s = …", a.Name)
			}
			err := wrong(a.Name, "the argument is missing, want "+a.wantOf(), hint)
			place := c.place
			return nil, &raised{fault: c.subject(err), place: place}
		}
	}
	return c, nil
}
