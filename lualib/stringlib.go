package lualib

import (
	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/lua51"
)

// openString makes the string module and lets texts use it as methods.
func (s *session) openString() *lua.LTable {
	L := s.state
	t := L.NewTable()
	for name, fn := range map[string]lua.LGFunction{
		"byte": s.stringByte, "char": s.stringChar, "find": s.stringFind, "format": s.stringFormat, "gmatch": s.stringGmatch, "gsub": s.stringGsub,
		"len": s.stringLen, "lower": s.stringLower, "match": s.stringMatch, "rep": s.stringRep, "reverse": s.stringReverse, "sub": s.stringSub, "upper": s.stringUpper,
	} {
		t.RawSetString(name, L.NewFunction(fn))
	}
	meta := s.plainMeta(lua.LTString)
	meta.RawSetString("__index", t)
	L.SetMetatable(lua.LString(""), meta)
	s.frozen[t] = &frozen{owner: "the library", of: "string"}
	return t
}

// str reads a text argument, or raises.
func (s *session) str(L *lua.LState, n int, name string) string {
	text, ok := stringOf(L.Get(n))
	if !ok {
		got := typeName(L.Get(n))
		if n > L.GetTop() {
			got = "no value"
		}
		s.argument(L, n, name, "string expected, got "+got)
	}
	return text
}

// num reads a number argument, or raises; absent takes the default.
func (s *session) num(L *lua.LState, n int, name string, absent ...float64) float64 {
	if len(absent) > 0 && L.Get(n) == lua.LNil {
		return absent[0]
	}
	f, ok := numberOf(L.Get(n))
	if !ok {
		got := typeName(L.Get(n))
		if n > L.GetTop() {
			got = "no value"
		}
		s.argument(L, n, name, "number expected, got "+got)
	}
	return f
}

func (s *session) integer(L *lua.LState, n int, name string, absent ...float64) int {
	return int(lua51.ToInteger(s.num(L, n, name, absent...)))
}

// give pushes a text result or raises its error.
func (s *session) give(L *lua.LState, text string, err error) int {
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(lua.LString(text))
	return 1
}

func (s *session) stringByte(L *lua.LState) int {
	text := s.str(L, 1, "byte")
	first := s.num(L, 2, "byte", 1)
	bytes, err := lua51.Byte(text, int(lua51.ToInteger(first)), s.integer(L, 3, "byte", first))
	if err != nil {
		return s.raise(L, err)
	}
	for _, b := range bytes {
		L.Push(lua.LNumber(b))
	}
	return len(bytes)
}

func (s *session) stringChar(L *lua.LState) int {
	codes := make([]int, L.GetTop())
	for i := range codes {
		codes[i] = s.integer(L, i+1, "char")
	}
	text, err := lua51.Char(s.meter.text51(), codes)
	return s.give(L, text, err)
}

func (s *session) stringFind(L *lua.LState) int {
	text, pattern := s.str(L, 1, "find"), s.str(L, 2, "find")
	mt, err := lua51.Find(s.meter.text51(), text, pattern, s.integer(L, 3, "find", 1), lua.LVAsBool(L.Get(4)))
	if err != nil {
		return s.raise(L, err)
	}
	if mt == nil {
		L.Push(lua.LNil)
		return 1
	}
	L.Push(lua.LNumber(mt.Start + 1))
	L.Push(lua.LNumber(mt.End))
	if len(mt.Captures) == 0 {
		return 2
	}
	return 2 + s.pushCaptures(L, text, mt)
}

func (s *session) stringMatch(L *lua.LState) int {
	text, pattern := s.str(L, 1, "match"), s.str(L, 2, "match")
	mt, err := lua51.Search(s.meter.text51(), text, pattern, s.integer(L, 3, "match", 1))
	if err != nil {
		return s.raise(L, err)
	}
	if mt == nil {
		L.Push(lua.LNil)
		return 1
	}
	return s.pushCaptures(L, text, mt)
}

// pushCaptures pushes the captures of a match, or all of it without any.
func (s *session) pushCaptures(L *lua.LState, text string, mt *lua51.Match) int {
	values, err := mt.Values(text)
	if err != nil {
		return s.raise(L, err)
	}
	for _, c := range values {
		L.Push(captureValue(c))
	}
	return len(values)
}

func captureValue(c lua51.Capture) lua.LValue {
	if c.IsPosition {
		return lua.LNumber(c.Position)
	}
	return lua.LString(c.Text)
}

func (s *session) stringGmatch(L *lua.LState) int {
	text, pattern := s.str(L, 1, "gmatch"), s.str(L, 2, "gmatch")
	matcher := lua51.NewMatcher(s.meter.text51(), text, pattern)
	L.Push(L.NewFunction(func(L *lua.LState) int {
		mt, err := matcher.Next()
		if err != nil {
			return s.raise(L, err)
		}
		if mt == nil {
			L.Push(lua.LNil)
			return 1
		}
		return s.pushCaptures(L, text, mt)
	}))
	return 1
}

func (s *session) stringGsub(L *lua.LState) int {
	text, pattern := s.str(L, 1, "gsub"), s.str(L, 2, "gsub")
	repl := L.Get(3)
	switch repl.(type) {
	case lua.LString, lua.LNumber, *lua.LTable, *lua.LFunction, *lua.LUserData:
	default:
		return s.argument(L, 3, "gsub", "string/function/table expected")
	}
	limit := lua51.Unlimited
	if L.Get(4) != lua.LNil {
		limit = s.integer(L, 4, "gsub")
	}
	result, n, err := lua51.Gsub(s.meter.text51(), text, pattern, limit, func(mt lua51.Match) (string, bool, error) {
		return s.replacement(L, repl, text, mt)
	})
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(lua.LString(result))
	L.Push(lua.LNumber(n))
	return 2
}

func (s *session) replacement(L *lua.LState, repl lua.LValue, text string, mt lua51.Match) (string, bool, error) {
	var value lua.LValue
	switch r := repl.(type) {
	case *lua.LTable:
		first, err := mt.First(text)
		if err != nil {
			return "", false, err
		}
		value = L.GetTable(r, captureValue(first))
	case *lua.LFunction:
		values, err := mt.Values(text)
		if err != nil {
			return "", false, err
		}
		L.Push(r)
		for _, c := range values {
			L.Push(captureValue(c))
		}
		L.Call(len(values), 1)
		value = L.Get(-1)
		L.Pop(1)
	default:
		layout, _ := stringOf(repl)
		expanded, err := lua51.ExpandReplacement(s.meter.text51(), layout, text, mt)
		return expanded, false, err
	}
	if !lua.LVAsBool(value) {
		return "", true, nil
	}
	replaced, ok := stringOf(value)
	if !ok {
		s.raisef(L, "invalid replacement value (a %s)", typeName(value))
	}
	return replaced, false, nil
}

func (s *session) stringFormat(L *lua.LState) int {
	layout := s.str(L, 1, "format")
	var args []lua51.Arg
	for i := 2; i <= L.GetTop(); i++ {
		args = append(args, s.formatArg(L, L.Get(i)))
	}
	text, err := lua51.Format(s.meter.text51(), layout, args)
	return s.give(L, text, err)
}

func (s *session) formatArg(L *lua.LState, v lua.LValue) lua51.Arg {
	switch v := v.(type) {
	case lua.LNumber:
		return lua51.Arg{Kind: lua51.KindNumber, Number: float64(v)}
	case lua.LString:
		return lua51.Arg{Kind: lua51.KindText, Text: string(v)}
	case *lua.LUserData:
		if n, ok := numberOf(v); ok {
			return lua51.Arg{Kind: lua51.KindNumber, Number: n}
		}
		return lua51.Arg{Kind: lua51.KindOther, Text: showShort(v), TypeName: typeName(v)}
	}
	return lua51.Arg{Kind: lua51.KindOther, Text: s.textOf(L, v), TypeName: typeName(v)}
}

func (s *session) stringLen(L *lua.LState) int {
	L.Push(lua.LNumber(len(s.str(L, 1, "len"))))
	return 1
}

func (s *session) stringLower(L *lua.LState) int {
	text, err := lua51.Lower(s.meter.text51(), s.str(L, 1, "lower"))
	return s.give(L, text, err)
}

func (s *session) stringUpper(L *lua.LState) int {
	text, err := lua51.Upper(s.meter.text51(), s.str(L, 1, "upper"))
	return s.give(L, text, err)
}

func (s *session) stringReverse(L *lua.LState) int {
	text, err := lua51.Reverse(s.meter.text51(), s.str(L, 1, "reverse"))
	return s.give(L, text, err)
}

func (s *session) stringRep(L *lua.LState) int {
	text, err := lua51.Rep(s.meter.text51(), s.str(L, 1, "rep"), s.integer(L, 2, "rep"))
	return s.give(L, text, err)
}

func (s *session) stringSub(L *lua.LState) int {
	text := s.str(L, 1, "sub")
	L.Push(lua.LString(lua51.Sub(text, s.integer(L, 2, "sub"), s.integer(L, 3, "sub", -1))))
	return 1
}
