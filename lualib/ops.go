package lualib

import (
	"fmt"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/lua51"
	"weirbook/notebook/diag"
	"weirbook/notebook/quantity"
)

// checkedOperations are the calls that rewriting puts in the place of
// operations.
func (s *session) checkedOperations() map[string]lua.LGFunction {
	compare := func(test func(int) bool, sign string) lua.LGFunction {
		return func(L *lua.LState) int {
			a, b := L.Get(1), L.Get(2)
			if x, ok := a.(lua.LNumber); ok {
				if y, ok := b.(lua.LNumber); ok {
					L.Push(lua.LBool(compareNumbers(float64(x), float64(y), sign)))
					return 1
				}
			}
			return s.compare(L, a, b, sign, test)
		}
	}
	return map[string]lua.LGFunction{
		opLess:      compare(func(c int) bool { return c < 0 }, "<"),
		opLessEqual: compare(func(c int) bool { return c <= 0 }, "<="),
		opMore:      compare(func(c int) bool { return c > 0 }, ">"),
		opMoreEqual: compare(func(c int) bool { return c >= 0 }, ">="),
		opEqual:     s.equal,
		opConcat:    s.concat,
		opSet:       s.set,
		opGlobal:    s.setGlobal,
		opOwn:       s.own,
		opNumber:    s.loopNumber,
		opKey:       s.key,
		opField:     s.field,
		opLength:    s.length,
	}
}

func compareNumbers(x, y float64, sign string) bool {
	switch sign {
	case "<":
		return x < y
	case "<=":
		return x <= y
	case ">":
		return x > y
	}
	return x >= y
}

// compare orders two values as the language does, quantities by what they
// measure.
func (s *session) compare(L *lua.LState, a, b lua.LValue, sign string, test func(int) bool) int {
	x, y := contentOf(a), contentOf(b)
	if dx, ok := x.(quantity.Date); ok {
		if dy, ok := y.(quantity.Date); ok {
			L.Push(lua.LBool(test(dx.Compare(dy))))
			return 1
		}
	}
	_, qx := x.(quantity.Quantity)
	_, qy := y.(quantity.Quantity)
	if qx || qy {
		c, err := compareQuantities(a, b)
		if err != nil {
			return s.raise(L, err)
		}
		L.Push(lua.LBool(test(c)))
		return 1
	}
	if tx, ok := a.(lua.LString); ok {
		if ty, ok := b.(lua.LString); ok {
			c := 0
			if tx < ty {
				c = -1
			} else if tx > ty {
				c = 1
			}
			L.Push(lua.LBool(test(c)))
			return 1
		}
	}
	return s.compareByMeta(L, a, b, sign)
}

// compareByMeta compares tables by their metamethods, as the manual says.
func (s *session) compareByMeta(L *lua.LState, a, b lua.LValue, sign string) int {
	left, right := a, b // as written, for the message
	event, swap, negate := "__lt", sign == ">" || sign == ">=", false
	if sign == "<=" || sign == ">=" {
		event = "__le"
	}
	if swap {
		a, b = b, a
	}
	method := L.GetMetaField(a, event)
	if method == lua.LNil && event == "__le" {
		if method = L.GetMetaField(a, "__lt"); method != lua.LNil {
			a, b, negate = b, a, true
		}
	}
	if fn, ok := method.(*lua.LFunction); ok && a.Type() == b.Type() {
		L.Push(fn)
		L.Push(a)
		L.Push(b)
		L.Call(2, 1)
		truth := lua.LVAsBool(L.Get(-1))
		L.Push(lua.LBool(truth != negate))
		return 1
	}
	f := &diag.Fault{Message: fmt.Sprintf("cannot compare %s %s %s", s.describe(left), sign, s.describe(right))}
	if a == lua.LNil || b == lua.LNil {
		f.Hint = "is a name or field misspelled, or does it have no value here?"
	}
	return s.raise(L, f)
}

// compareQuantities compares where at least one side is a quantity. Text and,
// unless the quantity has no dimension, bare numbers are refused.
func compareQuantities(a, b lua.LValue) (int, error) {
	x, okx := asQuantity(a)
	y, oky := asQuantity(b)
	if !okx || !oky {
		return 0, mixedFault(a, b)
	}
	return x.Compare(y)
}

// mixedFault is a quantity against something that is none.
func mixedFault(a, b lua.LValue) error {
	q, other := a, b
	if _, ok := contentOf(a).(quantity.Quantity); !ok {
		q, other = b, a
	}
	f := &diag.Fault{Message: fmt.Sprintf("cannot compare %s and %s", showShort(q), showShort(other))}
	if t, ok := other.(lua.LString); ok {
		f.Hint = fmt.Sprintf("write Q%q", string(t))
		if quantityOf, ok := contentOf(q).(quantity.Quantity); ok {
			if _, err := quantity.Parse(string(t)); err != nil {
				f.Hint = fmt.Sprintf("compare with a quantity, as in Q\"%s\"", quantityOf.String())
				if typed, ok := quantityOf.TypedText(); ok {
					f.Hint = fmt.Sprintf("use tostring(…) to compare the text %q", typed)
				}
			}
		}
	}
	return f
}

// equal is == : quantities by what they measure, everything else as the
// language does.
func (s *session) equal(L *lua.LState) int {
	a, b := L.Get(1), L.Get(2)
	ua, oka := a.(*lua.LUserData)
	ub, okb := b.(*lua.LUserData)
	if !oka && !okb {
		L.Push(lua.LBool(L.Equal(a, b)))
		return 1
	}
	if a == lua.LNil || b == lua.LNil {
		L.Push(lua.LFalse)
		return 1
	}
	if oka && okb {
		if dx, ok := ua.Value.(quantity.Date); ok {
			if dy, ok := ub.Value.(quantity.Date); ok {
				L.Push(lua.LBool(dx == dy))
				return 1
			}
		}
	}
	if _, ok := contentOf(a).(quantity.Date); ok {
		return s.raise(L, dateFault(a, b))
	}
	if _, ok := contentOf(b).(quantity.Date); ok {
		return s.raise(L, dateFault(b, a))
	}
	if !mayMeasure(a) || !mayMeasure(b) {
		L.Push(lua.LFalse)
		return 1
	}
	c, err := compareQuantities(a, b)
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(lua.LBool(c == 0))
	return 1
}

func dateFault(d, other lua.LValue) error {
	return &diag.Fault{Message: fmt.Sprintf("cannot compare the date %s and %s", showShort(d), showShort(other)), Hint: `write date "2027-03-06"`}
}

// mayMeasure values may be meant as quantities: tables, booleans and functions
// never are.
func mayMeasure(v lua.LValue) bool {
	switch v.Type() {
	case lua.LTUserData, lua.LTNumber, lua.LTString:
		return true
	}
	return false
}

// concat is .. over any number of operands, right to left.
func (s *session) concat(L *lua.LState) int {
	n := L.GetTop()
	total := 0
	parts := make([]string, n)
	for i := 1; i <= n; i++ {
		switch v := L.Get(i).(type) {
		case lua.LString:
			parts[i-1] = string(v)
		case lua.LNumber:
			parts[i-1] = lua51.FormatNumber(float64(v))
		case *lua.LUserData:
			parts[i-1] = showShort(v)
		default:
			return s.concatByMeta(L, n)
		}
		total += len(parts[i-1])
	}
	if err := s.meter.room(total); err != nil {
		return s.raise(L, err)
	}
	joined, err := lua51.Concat(nil, parts, "")
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(lua.LString(joined))
	return 1
}

// concatByMeta joins pair by pair from the right, by metamethods where a value
// has them.
func (s *session) concatByMeta(L *lua.LState, n int) int {
	result := L.Get(n)
	for i := n - 1; i >= 1; i-- {
		a := L.Get(i)
		x, okx := joinable(a)
		y, oky := joinable(result)
		if okx && oky {
			if err := s.meter.room(len(x) + len(y)); err != nil {
				return s.raise(L, err)
			}
			result = lua.LString(x + y)
			continue
		}
		method := L.GetMetaField(a, "__concat")
		if method == lua.LNil {
			method = L.GetMetaField(result, "__concat")
		}
		fn, ok := method.(*lua.LFunction)
		if !ok {
			bad := a
			if okx {
				bad = result
			}
			return s.raise(L, &diag.Fault{Message: fmt.Sprintf("cannot join %s to a text", s.describe(bad)), Hint: "use tostring(…), or give the name a value"})
		}
		L.Push(fn)
		L.Push(a)
		L.Push(result)
		L.Call(2, 1)
		result = L.Get(-1)
		L.Pop(1)
	}
	L.Push(result)
	return 1
}

func joinable(v lua.LValue) (string, bool) {
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

// loopNumber turns a bound of a for loop into a number.
func (s *session) loopNumber(L *lua.LState) int {
	if n, ok := L.Get(1).(lua.LNumber); ok {
		L.Push(n)
		return 1
	}
	n, ok := numberOf(L.Get(1))
	if !ok {
		f := &diag.Fault{Message: fmt.Sprintf("got %s as a bound of a for loop, want a number", s.describe(L.Get(1)))}
		if _, isQuantity := contentOf(L.Get(1)).(quantity.Quantity); isQuantity {
			f.Hint = `divide by the step, as in length / Q"10 cm"`
		}
		return s.raise(L, f)
	}
	L.Push(lua.LNumber(n))
	return 1
}

// key turns a quantity without a dimension into the number that it counts as.
func (s *session) key(L *lua.LState) int {
	k, err := plainKey(L.Get(1))
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(k)
	return 1
}

func plainKey(k lua.LValue) (lua.LValue, error) {
	u, ok := k.(*lua.LUserData)
	if !ok {
		return k, nil
	}
	if n, ok := numberOf(u); ok {
		if q, isQuantity := u.Value.(quantity.Quantity); isQuantity {
			if typed, was := q.TypedText(); was {
				return lua.LString(typed), nil
			}
		}
		return lua.LNumber(n), nil
	}
	if d, ok := u.Value.(quantity.Date); ok {
		return lua.LString(d.String()), nil
	}
	if q, ok := u.Value.(quantity.Quantity); ok {
		if typed, was := q.TypedText(); was {
			return lua.LString(typed), nil
		}
	}
	return nil, &diag.Fault{Message: fmt.Sprintf("got %s as a key of a table, want a text or a number", showShort(k)), Hint: `write value:number "…" for the bare number`}
}
