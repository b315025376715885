package lualib

import (
	"fmt"
	"sort"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/lua51"
	"weirbook/notebook/diag"
)

// openTable makes the table module.
func (s *session) openTable() *lua.LTable {
	L := s.state
	t := L.NewTable()
	for name, fn := range map[string]lua.LGFunction{
		"concat": s.tableConcat, "insert": s.tableInsert, "maxn": s.tableMaxn, "remove": s.tableRemove, "sort": s.tableSort,
	} {
		t.RawSetString(name, L.NewFunction(fn))
	}
	s.frozen[t] = &frozen{owner: "the library", of: "table"}
	return t
}

// owned reads a table argument that is about to change.
func (s *session) owned(L *lua.LState, name string) *lua.LTable {
	t := s.tableArgument(L, name)
	if err := s.writable(t); err != nil {
		s.raise(L, err)
	}
	return t
}

func (s *session) tableConcat(L *lua.LState) int {
	t := s.tableArgument(L, "concat")
	separator := ""
	if L.Get(2) != lua.LNil {
		separator = s.str(L, 2, "concat")
	}
	first, last := s.integer(L, 3, "concat", 1), s.integer(L, 4, "concat", float64(t.Len()))
	var parts []string
	for i := first; i <= last; i++ {
		v := t.RawGet(lua.LNumber(i))
		text, ok := stringOf(v)
		if !ok {
			return s.raise(L, &diag.Fault{Message: fmt.Sprintf("invalid value (%s) at index %d in table for 'concat'", typeName(v), i), Hint: "join texts or numbers only"})
		}
		parts = append(parts, text)
		if len(parts)%1024 == 0 {
			if err := s.meter.step(4096); err != nil {
				return s.raise(L, err)
			}
		}
	}
	text, err := lua51.Concat(s.meter.text51(), parts, separator)
	return s.give(L, text, err)
}

func (s *session) tableInsert(L *lua.LState) int {
	t := s.owned(L, "insert")
	end := t.Len() + 1
	switch L.GetTop() {
	case 2:
		if err := s.roomFor(t, lua.LNumber(end)); err != nil {
			return s.raise(L, err)
		}
		t.RawSetInt(end, L.Get(2))
	case 3:
		at := s.integer(L, 2, "insert")
		if at > end {
			end = at
		}
		if err := s.meter.step(end - at + 1); err != nil {
			return s.raise(L, err)
		}
		if at < 1 {
			return s.argument(L, 2, "insert", "position out of bounds")
		}
		if err := s.roomFor(t, lua.LNumber(end)); err != nil {
			return s.raise(L, err)
		}
		for i := end; i > at; i-- {
			t.RawSetInt(i, t.RawGetInt(i-1))
		}
		t.RawSetInt(at, L.Get(3))
	default:
		return s.raisef(L, "wrong number of arguments to 'insert'")
	}
	return 0
}

func (s *session) tableRemove(L *lua.LState) int {
	t := s.owned(L, "remove")
	end := t.Len()
	at := s.integer(L, 2, "remove", float64(end))
	if at < 1 || at > end {
		return 0
	}
	if err := s.meter.step(end - at + 1); err != nil {
		return s.raise(L, err)
	}
	L.Push(t.Remove(at))
	return 1
}

func (s *session) tableMaxn(L *lua.LState) int {
	t := s.tableArgument(L, "maxn")
	top := lua.LNumber(0)
	if err := s.meter.step(4 * t.Len()); err != nil {
		return s.raise(L, err)
	}
	t.ForEach(func(key, _ lua.LValue) {
		if n, ok := key.(lua.LNumber); ok && n > top {
			top = n
		}
	})
	L.Push(top)
	return 1
}

// tableSort sorts in place. The order function may throw; a bad one gives some
// order, never an endless loop.
func (s *session) tableSort(L *lua.LState) int {
	t := s.owned(L, "sort")
	less, _ := L.Get(2).(*lua.LFunction)
	if L.Get(2) != lua.LNil && less == nil {
		return s.argument(L, 2, "sort", "function expected, got "+typeName(L.Get(2)))
	}
	if less == nil {
		less = s.stdlib.RawGetString(opLess).(*lua.LFunction)
	}
	values := make([]lua.LValue, t.Len())
	for i := range values {
		values[i] = t.RawGetInt(i + 1)
	}
	sort.SliceStable(values, func(i, j int) bool {
		if err := s.meter.step(16); err != nil {
			s.raise(L, err)
		}
		L.Push(less)
		L.Push(values[i])
		L.Push(values[j])
		L.Call(2, 1)
		truth := lua.LVAsBool(L.Get(-1))
		L.Pop(1)
		return truth
	})
	for i, v := range values {
		t.RawSetInt(i+1, v)
	}
	return 0
}
