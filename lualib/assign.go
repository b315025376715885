package lualib

import (
	"fmt"
	"math"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
	"weirbook/notebook/diag"
)

// set is t[k] = v. A table of another cell, or a result, is read-only.
func (s *session) set(L *lua.LState) int {
	object, key, value := L.Get(1), L.Get(2), L.Get(3)
	t, ok := object.(*lua.LTable)
	if !ok {
		return s.setOnOther(L, object, key, value)
	}
	if err := s.writable(t); err != nil {
		return s.raise(L, err)
	}
	key, err := plainKey(key)
	if err != nil {
		return s.raise(L, err)
	}
	switch k := key.(type) {
	case *lua.LNilType:
		return s.raise(L, &diag.Fault{Message: "got nil as a key of a table", Hint: "give the key a value first"})
	case lua.LNumber:
		if math.IsNaN(float64(k)) {
			return s.raise(L, &diag.Fault{Message: "got no number (nan) as a key of a table"})
		}
	}
	if err := s.roomFor(t, key); err != nil {
		return s.raise(L, err)
	}
	if t.Metatable == lua.LNil {
		t.RawSet(key, value)
		return 0
	}
	L.SetTable(t, key, value)
	return 0
}

// roomFor is asked before a value is put into a table: a place far beyond a
// list's end takes memory for all that lies between, and a list has an end.
func (s *session) roomFor(t *lua.LTable, key lua.LValue) error {
	n, ok := key.(lua.LNumber)
	if !ok || n < nearPlace || n > lua.LNumber(lua.MaxArrayIndex) || t.RawGetInt(int(n)) != lua.LNil {
		return nil
	}
	before := t.RawGetInt(int(n) - 1)
	if n == lua.LNumber(lua.MaxArrayIndex) && before != lua.LNil {
		return &diag.Fault{Message: fmt.Sprintf("got a list of more than %d items, want less", lua.MaxArrayIndex-1), Hint: "keep sums instead of the items, or split the list"}
	}
	if before == lua.LNil && n < lua.LNumber(lua.MaxArrayIndex) {
		return s.meter.room(16 * int(n))
	}
	return nil
}

// nearPlace is a place of a list up to which a gap costs next to nothing.
const nearPlace = 128

// field is the key of an entry written in braces.
func (s *session) field(L *lua.LState) int {
	k, err := plainKey(L.Get(1))
	if n, ok := k.(lua.LNumber); ok && err == nil && n >= nearPlace && n < lua.LNumber(lua.MaxArrayIndex) {
		err = s.meter.room(16 * int(n))
	}
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(k)
	return 1
}

// length is #: the length of a text or list. Lua 5.1 asks no metamethod for it.
func (s *session) length(L *lua.LState) int {
	switch v := L.Get(1).(type) {
	case lua.LString:
		L.Push(lua.LNumber(len(v)))
	case *lua.LTable:
		L.Push(lua.LNumber(v.Len()))
	default:
		return s.raise(L, &diag.Fault{Message: fmt.Sprintf("got %s where # wants a list or a text", s.describe(v))})
	}
	return 1
}

func (s *session) setOnOther(L *lua.LState, object, key, value lua.LValue) int {
	if u, ok := object.(*lua.LUserData); ok {
		return s.raise(L, &diag.Fault{Message: fmt.Sprintf("cannot change %s, a %s", showShort(u), typeName(u)), Hint: "work out a new one"})
	}
	if L.GetMetaField(object, "__newindex") != lua.LNil {
		L.SetTable(object, key, value)
		return 0
	}
	return s.raise(L, &diag.Fault{
		Message: fmt.Sprintf("got %s where a table is wanted to set its %s", s.describe(object), showShort(key)),
		Hint:    "make the table first, as in things = {}",
	})
}

// writable refuses tables that are not this cell's to change.
func (s *session) writable(t *lua.LTable) error {
	f := s.frozen[t]
	if f == nil {
		return nil
	}
	if s.engine.lib.isModule(f.of) {
		return &diag.Fault{Message: fmt.Sprintf("cannot change %s, which belongs to the library", f.of), Hint: "put your own functions into a table of your own"}
	}
	if f.of != "" {
		return &diag.Fault{Message: fmt.Sprintf("cannot change the result of %s, which is read-only", f.of), Hint: "keep your own values in a table of your own"}
	}
	return &diag.Fault{
		Message: fmt.Sprintf("the cell %q changes a table that belongs to the cell %q", s.current.job.Cell.Label(), s.ownerOf(f)),
		Hint:    "build a new table: local copy = {} for key, value in pairs(theirs) do copy[key] = value end",
	}
}

// ownerOf names the cell that a read-only table came from: of those that the
// running cell reads, the first whose value holds it.
func (s *session) ownerOf(f *frozen) string {
	if f.data == nil {
		return f.owner
	}
	jobs := []*notebook.Job{s.current.job}
	jobs = append(jobs, s.current.job.Lenders...)
	for _, job := range jobs {
		for _, in := range job.Inputs {
			if data, ok := in.Value.(*notebook.Data); ok && holds(data, f.data.Digest) {
				return job.Owners[in.Name]
			}
		}
	}
	return "another cell"
}

// holds reports whether a table value is, or holds, one of the given content.
func holds(data *notebook.Data, wanted notebook.Digest) bool {
	seen := map[*notebook.Data]bool{}
	queue := []*notebook.Data{data}
	for len(queue) > 0 {
		d := queue[0]
		queue = queue[1:]
		if d.Digest == wanted {
			return true
		}
		if seen[d] {
			continue
		}
		seen[d] = true
		for _, p := range d.Pairs {
			if inner, ok := p.Value.(*notebook.Data); ok {
				queue = append(queue, inner)
			}
		}
	}
	return false
}

// setGlobal is an assignment to a global inside a function: it is the business
// of the cell that holds the function, while that runs.
func (s *session) setGlobal(L *lua.LState) int {
	name := L.CheckString(1)
	if err := s.ownOnly(L, name); err != nil {
		return s.raise(L, err)
	}
	s.current.env.RawSetString(name, L.Get(2))
	return 0
}

// own allows an assignment to a local of an enclosing function only while the
// cell itself runs.
func (s *session) own(L *lua.LState) int {
	if err := s.ownOnly(L, L.CheckString(1)); err != nil {
		return s.raise(L, err)
	}
	return 0
}

func (s *session) ownOnly(L *lua.LState, name string) error {
	d, ok := L.GetStack(1)
	if !ok {
		return nil
	}
	fn, err := L.GetInfo("f", d, lua.LNil)
	lf, ok := fn.(*lua.LFunction)
	if err != nil || !ok || lf.Env == s.current.env {
		return nil
	}
	return &diag.Fault{
		Message: fmt.Sprintf("the cell %q calls a function of another cell that changes %s there", s.current.job.Cell.Label(), name),
		Hint:    "let the function give its result back instead",
	}
}
