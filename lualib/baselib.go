package lualib

import (
	"fmt"
	"math"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/lua51"
	"weirbook/notebook/diag"
	"weirbook/notebook/quantity"
)

// baseFunctions lists the language's own functions that a cell has. They are
// bound to a session in openLibrary.
func baseFunctions() map[string]lua.LGFunction {
	names := []string{"assert", "error", "getmetatable", "ipairs", "next", "pairs", "pcall", "print", "rawequal", "rawget", "rawset", "select", "setmetatable", "tonumber", "tostring", "type", "unpack", "xpcall"}
	base := map[string]lua.LGFunction{}
	for _, n := range names {
		base[n] = nil
	}
	return base
}

// openLibrary makes the table that every cell's globals fall back to.
func (s *session) openLibrary() *lua.LTable {
	L := s.state
	lib := L.NewTable()
	for name, fn := range s.checkedOperations() {
		lib.RawSetString(name, L.NewFunction(fn))
	}
	for name, fn := range s.base() {
		lib.RawSetString(name, L.NewFunction(fn))
	}
	lib.RawSetString("_VERSION", lua.LString("Lua 5.1"))
	lib.RawSetString("string", s.openString())
	lib.RawSetString("table", s.openTable())
	lib.RawSetString("math", s.openMath())
	for module, functions := range s.engine.lib.modules {
		if standardModules[module] {
			continue
		}
		t := L.NewTable()
		for name, f := range functions {
			t.RawSetString(name, L.NewFunction(s.bound(f)))
		}
		s.frozen[t] = &frozen{owner: "the library", of: module}
		lib.RawSetString(module, t)
	}
	for name, f := range s.engine.lib.plain {
		lib.RawSetString(name, L.NewFunction(s.bound(f)))
	}
	lib.RawSetString("__index", lib)
	s.frozen[lib] = &frozen{owner: "the library", of: "the library"}
	return lib
}

func (s *session) base() map[string]lua.LGFunction {
	return map[string]lua.LGFunction{
		"assert": s.assert, "error": s.error_, "getmetatable": s.getmetatable, "ipairs": s.ipairs, "next": s.next, "pairs": s.pairs_,
		"pcall": s.pcall, "print": s.print, "rawequal": s.rawequal, "rawget": s.rawget, "rawset": s.rawset, "select": s.select_,
		"setmetatable": s.setmetatable, "tonumber": s.tonumber, "tostring": s.tostring, "type": s.typeOf, "unpack": s.unpack, "xpcall": s.xpcall,
	}
}

func (s *session) assert(L *lua.LState) int {
	if L.GetTop() == 0 {
		return s.argument(L, 1, "assert", "value expected")
	}
	if lua.LVAsBool(L.Get(1)) {
		return L.GetTop()
	}
	if L.Get(2) == lua.LNil {
		return s.raisef(L, "assertion failed!")
	}
	L.Remove(1)
	L.SetTop(1)
	return s.error_(L)
}

// argument raises the language's message for a wrong argument.
func (s *session) argument(L *lua.LState, n int, name, what string) int {
	return s.raisef(L, "bad argument #%d to '%s' (%s)", n, name, what)
}

// error_ throws its argument. The place is kept beside the message, not in it: a
// cell does not know where on the page it stands.
func (s *session) error_(L *lua.LState) int {
	level := L.OptInt(2, 1)
	v := L.Get(1)
	place := s.placeOf(L, 1)
	if level > 1 {
		place = s.placeOf(L, level)
	}
	switch v := v.(type) {
	case lua.LString:
		return s.raiseAt(L, &diag.Fault{Message: string(v)}, place)
	case lua.LNumber:
		return s.raiseAt(L, &diag.Fault{Message: lua51.FormatNumber(float64(v))}, place)
	}
	s.current.fault = &raised{fault: &diag.Fault{}, place: place, text: "\x00"}
	L.Error(v, 0)
	return 0
}

func (s *session) getmetatable(L *lua.LState) int {
	if t, ok := L.Get(1).(*lua.LTable); ok && t.Metatable != lua.LNil && s.frozen[t] == nil {
		if protected := t.Metatable.(*lua.LTable).RawGetString("__metatable"); protected != lua.LNil {
			L.Push(protected)
			return 1
		}
		L.Push(t.Metatable)
		return 1
	}
	L.Push(lua.LNil)
	return 1
}

func (s *session) setmetatable(L *lua.LState) int {
	t, ok := L.Get(1).(*lua.LTable)
	if !ok {
		return s.argument(L, 1, "setmetatable", "table expected, got "+typeName(L.Get(1)))
	}
	meta := L.Get(2)
	if L.GetTop() < 2 || (meta != lua.LNil && meta.Type() != lua.LTTable) {
		return s.argument(L, 2, "setmetatable", "nil or table expected")
	}
	if err := s.writable(t); err != nil {
		return s.raise(L, err)
	}
	if old, ok := t.Metatable.(*lua.LTable); ok && old.RawGetString("__metatable") != lua.LNil {
		return s.raisef(L, "cannot change a protected metatable")
	}
	t.Metatable = meta
	L.SetTop(1)
	return 1
}

func typeName(v lua.LValue) string {
	switch contentOf(v).(type) {
	case quantity.Quantity:
		return "quantity"
	case quantity.Date:
		return "date"
	}
	if v == lua.LNil {
		return "nil"
	}
	return v.Type().String()
}

func (s *session) typeOf(L *lua.LState) int {
	if L.GetTop() == 0 {
		return s.argument(L, 1, "type", "value expected")
	}
	L.Push(lua.LString(typeName(L.Get(1))))
	return 1
}

func (s *session) tableArgument(L *lua.LState, name string) *lua.LTable {
	t, ok := L.Get(1).(*lua.LTable)
	if !ok {
		got := typeName(L.Get(1))
		if L.GetTop() == 0 {
			got = "no value"
		}
		hint := ""
		if L.Get(1) == lua.LNil {
			hint = "is a name or field misspelled, or does it have no value here?"
		}
		s.raise(L, &diag.Fault{Message: fmt.Sprintf("bad argument #1 to '%s' (table expected, got %s)", name, got), Hint: hint})
	}
	return t
}

func (s *session) next(L *lua.LState) int {
	t := s.tableArgument(L, "next")
	key, value := t.Next(L.Get(2))
	if key == lua.LNil {
		L.Push(lua.LNil)
		return 1
	}
	L.Push(key)
	L.Push(value)
	return 2
}

func (s *session) pairs_(L *lua.LState) int {
	t := s.tableArgument(L, "pairs")
	L.Push(s.stdlib.RawGetString("next"))
	L.Push(t)
	L.Push(lua.LNil)
	return 3
}

func (s *session) ipairs(L *lua.LState) int {
	t := s.tableArgument(L, "ipairs")
	L.Push(L.NewFunction(func(L *lua.LState) int {
		t, ok := L.Get(1).(*lua.LTable)
		i, okNumber := L.Get(2).(lua.LNumber)
		if !ok || !okNumber {
			return s.argument(L, 1, "ipairs", "table expected")
		}
		v := t.RawGetInt(int(i) + 1)
		if v == lua.LNil {
			L.Push(lua.LNil)
			return 1
		}
		L.Push(i + 1)
		L.Push(v)
		return 2
	}))
	L.Push(t)
	L.Push(lua.LNumber(0))
	return 3
}

func (s *session) rawequal(L *lua.LState) int {
	L.Push(lua.LBool(L.RawEqual(L.Get(1), L.Get(2))))
	return 1
}

func (s *session) rawget(L *lua.LState) int {
	t := s.tableArgument(L, "rawget")
	key, err := plainKey(L.Get(2))
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(t.RawGet(key))
	return 1
}

func (s *session) rawset(L *lua.LState) int {
	t := s.tableArgument(L, "rawset")
	if err := s.writable(t); err != nil {
		return s.raise(L, err)
	}
	key, err := plainKey(L.Get(2))
	if err != nil {
		return s.raise(L, err)
	}
	if n, ok := key.(lua.LNumber); key == lua.LNil || (ok && math.IsNaN(float64(n))) {
		return s.raisef(L, "table index is nil")
	}
	if err := s.roomFor(t, key); err != nil {
		return s.raise(L, err)
	}
	t.RawSet(key, L.Get(3))
	L.SetTop(1)
	return 1
}

func (s *session) select_(L *lua.LState) int {
	if t, ok := L.Get(1).(lua.LString); ok && t == "#" {
		L.Push(lua.LNumber(L.GetTop() - 1))
		return 1
	}
	f, ok := numberOf(L.Get(1))
	if !ok {
		return s.argument(L, 1, "select", "number expected, got "+typeName(L.Get(1)))
	}
	n, top := int(lua51.ToInteger(f)), L.GetTop()
	if n < 0 {
		n = top + n
	}
	if n < 1 {
		return s.argument(L, 1, "select", "index out of range")
	}
	return max(top-n, 0)
}

// print shows its arguments under the cell.
func (s *session) print(L *lua.LState) int {
	out := &s.current.printed
	var line strings.Builder
	for i := 1; i <= L.GetTop(); i++ {
		if i > 1 {
			line.WriteByte('\t')
		}
		text := s.textOf(L, L.Get(i))
		if err := s.meter.room(line.Len() + len(text)); err != nil {
			return s.raise(L, err)
		}
		line.WriteString(text)
	}
	line.WriteByte('\n')
	switch {
	case out.Len() >= maxPrinted:
	case out.Len()+line.Len() > maxPrinted:
		out.WriteString(strings.ToValidUTF8(line.String()[:maxPrinted-out.Len()], "") + "\n… more was printed than is shown\n")
		out.WriteString(strings.Repeat(" ", max(0, maxPrinted-out.Len())))
	default:
		out.WriteString(line.String())
	}
	return 0
}

// textOf is tostring: no address of memory reaches a text, tables and functions
// are numbered in the order in which the cell asks.
func (s *session) textOf(L *lua.LState, v lua.LValue) string {
	if t, ok := v.(*lua.LTable); ok {
		if fn, ok := L.GetMetaField(t, "__tostring").(*lua.LFunction); ok {
			L.Push(fn)
			L.Push(t)
			L.Call(1, 1)
			text := L.Get(-1)
			L.Pop(1)
			switch text := text.(type) {
			case lua.LString:
				return string(text)
			case lua.LNumber:
				return lua51.FormatNumber(float64(text))
			}
			s.raisef(L, "'tostring' must return a string to 'print'")
		}
	}
	switch v := v.(type) {
	case lua.LString:
		return string(v)
	case lua.LNumber:
		return lua51.FormatNumber(float64(v))
	case lua.LBool:
		return fmt.Sprint(bool(v))
	case *lua.LNilType:
		return "nil"
	case *lua.LUserData:
		return showShort(v)
	}
	id, ok := s.current.ids[v]
	if !ok {
		id = len(s.current.ids) + 1
		s.current.ids[v] = id
	}
	return fmt.Sprintf("%s: 0x%08x", v.Type(), id)
}

func (s *session) tostring(L *lua.LState) int {
	if L.GetTop() == 0 {
		return s.argument(L, 1, "tostring", "value expected")
	}
	L.Push(lua.LString(s.textOf(L, L.Get(1))))
	return 1
}

func (s *session) tonumber(L *lua.LState) int {
	base := 10.0
	if L.GetTop() >= 2 {
		var ok bool
		if base, ok = numberOf(L.Get(2)); !ok {
			return s.argument(L, 2, "tonumber", "number expected, got "+typeName(L.Get(2)))
		}
	}
	if base == 10 {
		if L.GetTop() == 0 {
			return s.argument(L, 1, "tonumber", "value expected")
		}
		if n, ok := numberOf(L.Get(1)); ok {
			L.Push(lua.LNumber(n))
			return 1
		}
		L.Push(lua.LNil)
		return 1
	}
	text, ok := stringOf(L.Get(1))
	if !ok {
		return s.argument(L, 1, "tonumber", "string expected, got "+typeName(L.Get(1)))
	}
	if base < 2 || base > 36 {
		return s.argument(L, 2, "tonumber", "base out of range")
	}
	if n, ok := lua51.ParseNumberBase(text, int(base)); ok {
		L.Push(lua.LNumber(n))
		return 1
	}
	L.Push(lua.LNil)
	return 1
}

// stringOf reads a value as a text: a text, or a number, or what was typed.
func stringOf(v lua.LValue) (string, bool) {
	switch v := v.(type) {
	case lua.LString:
		return string(v), true
	case lua.LNumber:
		return lua51.FormatNumber(float64(v)), true
	case *lua.LUserData:
		return showShort(v), true
	}
	return "", false
}

// maxUnpack bounds how many values unpack gives; each takes a register.
const maxUnpack = 7000

func (s *session) unpack(L *lua.LState) int {
	t := s.tableArgument(L, "unpack")
	first, last := 1.0, float64(t.Len())
	if L.Get(2) != lua.LNil {
		first, _ = numberOf(L.Get(2))
	}
	if L.Get(3) != lua.LNil {
		last, _ = numberOf(L.Get(3))
	}
	first, last = math.Trunc(first), math.Trunc(last)
	if !(last-first < maxUnpack) || math.Abs(first) > 1<<53 || math.Abs(last) > 1<<53 {
		if last < first {
			return 0
		}
		return s.raisef(L, "too many results to unpack")
	}
	if err := s.meter.step(max(int(last-first), 0)); err != nil {
		return s.raise(L, err)
	}
	n := 0
	for i := first; i <= last; i++ {
		L.Push(t.RawGet(lua.LNumber(i)))
		n++
	}
	return n
}
