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

// wrap gives a quantity to the cells.
func (s *session) wrap(q quantity.Quantity) lua.LValue {
	return &lua.LUserData{Value: q, Metatable: s.quantity, Env: nil}
}

func (s *session) wrapDate(d quantity.Date) lua.LValue {
	return &lua.LUserData{Value: d, Metatable: s.date}
}

// contentOf gives the quantity or date of a value, or nil.
func contentOf(v lua.LValue) any {
	if u, ok := v.(*lua.LUserData); ok {
		return u.Value
	}
	return nil
}

// asQuantity reads a value as a quantity: a quantity, or a bare number.
func asQuantity(v lua.LValue) (quantity.Quantity, bool) {
	switch v := v.(type) {
	case lua.LNumber:
		return quantity.Bare(float64(v)), true
	case *lua.LUserData:
		q, ok := v.Value.(quantity.Quantity)
		return q, ok
	}
	return quantity.Quantity{}, false
}

// numberOf reads a value as a number: a number, or a quantity without a
// dimension.
func numberOf(v lua.LValue) (float64, bool) {
	switch v := v.(type) {
	case lua.LNumber:
		return float64(v), true
	case lua.LString:
		return lua51.ParseNumber(string(v))
	case *lua.LUserData:
		if q, ok := v.Value.(quantity.Quantity); ok {
			return q.Number()
		}
	}
	return 0, false
}

// showShort prints a value for a message or a text.
func showShort(v lua.LValue) string {
	switch v := v.(type) {
	case lua.LNumber:
		return lua51.FormatNumber(float64(v))
	case lua.LString:
		return fmt.Sprintf("%q", clipped(string(v)))
	case *lua.LUserData:
		switch u := v.Value.(type) {
		case quantity.Quantity:
			if typed, ok := u.TypedText(); ok {
				return typed
			}
			return u.Short()
		case quantity.Date:
			return u.String()
		}
	case lua.LBool:
		return fmt.Sprint(bool(v))
	}
	return v.Type().String()
}

// clipped shortens a text for a message.
func clipped(text string) string {
	const most = 60
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
}

// describe names a value for a message: its kind and, where short, its text.
func (s *session) describe(v lua.LValue) string {
	switch v.Type() {
	case lua.LTNil:
		return "nothing (nil)"
	case lua.LTNumber:
		return "the number " + showShort(v)
	case lua.LTString:
		return "the text " + showShort(v)
	case lua.LTUserData:
		return showShort(v)
	case lua.LTTable:
		return "a table"
	case lua.LTFunction:
		return "a function"
	}
	return showShort(v)
}

// openQuantities makes the metatables of quantities and dates, and those of
// plain types whose arithmetic the machine would do wrongly.
func (s *session) openQuantities() {
	L := s.state
	s.quantity, s.date = L.NewTable(), L.NewTable()
	for event, op := range arithmetic {
		fn := L.NewFunction(s.arithmetic(event, op))
		s.quantity.RawSetString(event, fn)
		s.date.RawSetString(event, fn)
	}
	s.quantity.RawSetString("__unm", L.NewFunction(func(L *lua.LState) int {
		q, _ := asQuantity(L.Get(1))
		negated, err := q.Neg()
		if err != nil {
			return s.raise(L, err)
		}
		L.Push(s.wrap(negated))
		return 1
	}))
	s.quantity.RawSetString("__index", L.NewFunction(s.quantityField))
	s.date.RawSetString("__index", L.NewFunction(s.dateField))
	for _, kind := range []lua.LValue{lua.LNil, lua.LFalse, lua.LNumber(0), L.NewFunction(func(*lua.LState) int { return 0 })} {
		L.SetMetatable(kind, s.plainMeta(kind.Type()))
	}
}

// arithmetic maps the language's events to our operations.
var arithmetic = map[string]struct {
	sign string
	do   func(a, b quantity.Quantity) (quantity.Quantity, error)
}{
	"__add": {"+", quantity.Quantity.Add},
	"__sub": {"-", quantity.Quantity.Sub},
	"__mul": {"*", quantity.Quantity.Mul},
	"__div": {"/", quantity.Quantity.Div},
	"__mod": {"%", remainder},
	"__pow": {"^", power},
}

// remainder is a % b of like quantities, with the sign of b as the language has
// it.
func remainder(a, b quantity.Quantity) (quantity.Quantity, error) {
	ratio, err := a.Div(b)
	if err != nil {
		return ratio, err
	}
	n, ok := ratio.Number()
	if !ok {
		return ratio, &quantity.MismatchError{Doing: "take the remainder of", A: a, B: b}
	}
	whole, err := b.Mul(quantity.Bare(math.Floor(n)))
	if err != nil {
		return ratio, err
	}
	rest, err := a.Sub(whole)
	return rest.WithOrigin(nil), err
}

func power(a, b quantity.Quantity) (quantity.Quantity, error) {
	n, ok := b.Number()
	if !ok {
		return a, &diag.Fault{Message: fmt.Sprintf("cannot raise to the power %s, want a bare number", b.Short())}
	}
	if base, bare := a.Number(); bare && n != math.Trunc(n) {
		return quantity.Bare(math.Pow(base, n)), nil
	}
	if n != math.Trunc(n) {
		if n == 0.5 {
			return a.Sqrt()
		}
		return a, &diag.Fault{Message: fmt.Sprintf("cannot raise %s to the power %s, want a whole one", a.Short(), b.Short()), Hint: `take the bare number first: value:number "m"`}
	}
	return a.Pow(int(max(min(n, 1000), -1000)))
}

// arithmetic makes the metamethod of one operation for quantities and dates.
func (s *session) arithmetic(event string, op struct {
	sign string
	do   func(a, b quantity.Quantity) (quantity.Quantity, error)
}) lua.LGFunction {
	return func(L *lua.LState) int {
		a, b := L.Get(1), L.Get(2)
		x, okx := asQuantity(a)
		y, oky := asQuantity(b)
		if okx && oky {
			result, err := op.do(x, y)
			if err == nil && math.IsInf(result.Value(), 0) && y.Value() == 0 && (op.sign == "/" || op.sign == "%") {
				err = &diag.Fault{Message: fmt.Sprintf("cannot divide %s by %s", x.Short(), y.Short()), Hint: "test for 0 first, as in if n > 0 then … end"}
			}
			if err != nil {
				return s.raise(L, err)
			}
			L.Push(s.wrap(result))
			return 1
		}
		if v, err, ok := dateArithmetic(a, b, op.sign); ok {
			if err != nil {
				return s.raise(L, err)
			}
			if d, isDate := v.(quantity.Date); isDate {
				L.Push(s.wrapDate(d))
			} else {
				L.Push(s.wrap(v.(quantity.Quantity)))
			}
			return 1
		}
		return s.raise(L, s.operandFault(a, b, op.sign))
	}
}

// dateArithmetic is date - date, date + time and date - time; a text that is a
// time counts as one.
func dateArithmetic(a, b lua.LValue, sign string) (result any, err error, ok bool) {
	d, isDate := contentOf(a).(quantity.Date)
	if !isDate {
		if e, other := contentOf(b).(quantity.Date); other && sign == "+" {
			d, a, b = e, b, a
		} else {
			return nil, nil, false
		}
	}
	if e, both := contentOf(b).(quantity.Date); both {
		if sign != "-" {
			return nil, &diag.Fault{Message: fmt.Sprintf("cannot %s two dates", verbs[sign]), Hint: "dates can be subtracted from each other"}, true
		}
		return d.Sub(e), nil, true
	}
	step, isQuantity := asQuantity(b)
	if text, isText := b.(lua.LString); isText {
		if step, err = quantity.Parse(string(text)); err != nil {
			return nil, err, true
		}
		isQuantity = true
	}
	if !isQuantity || (sign != "+" && sign != "-") {
		return nil, nil, false
	}
	direction := 1
	if sign == "-" {
		direction = -1
	}
	moved, err := d.Add(step, direction)
	return moved, err, true
}

var verbs = map[string]string{"+": "add", "-": "subtract", "*": "multiply", "/": "divide", "%": "take the remainder of", "^": "raise to a power"}

// operandFault says which side of an operation is no number.
func (s *session) operandFault(a, b lua.LValue, sign string) error {
	f := &diag.Fault{Message: fmt.Sprintf("cannot %s %s and %s", verbs[sign], s.describe(a), s.describe(b))}
	for _, side := range []lua.LValue{a, b} {
		switch v := side.(type) {
		case lua.LString:
			if q, err := quantity.Parse(string(v)); err == nil && q.Unit() != nil {
				f.Hint = fmt.Sprintf("write Q%q", string(v))
			}
		case *lua.LNilType:
			f.Hint = "is a name or field misspelled, or does it have no value here?"
		}
	}
	return f
}

// plainMeta is the metatable of a plain type: arithmetic that the machine would
// refuse with its own words, or do wrongly for texts, comes here.
func (s *session) plainMeta(kind lua.LValueType) *lua.LTable {
	L := s.state
	t := L.NewTable()
	for event, op := range arithmetic {
		t.RawSetString(event, L.NewFunction(func(L *lua.LState) int {
			a, b := L.Get(1), L.Get(2)
			if fn := s.eventOf(L, a, b, event); fn != lua.LNil {
				L.Push(fn)
				L.Push(a)
				L.Push(b)
				L.Call(2, 1)
				return 1
			}
			x, okx := numberOf(a)
			y, oky := numberOf(b)
			if !okx || !oky {
				return s.raise(L, s.operandFault(a, b, op.sign))
			}
			L.Push(lua.LNumber(plainArithmetic(x, y, op.sign)))
			return 1
		}))
	}
	t.RawSetString("__unm", L.NewFunction(func(L *lua.LState) int {
		n, ok := numberOf(L.Get(1))
		if !ok {
			return s.raise(L, &diag.Fault{Message: "cannot change the sign of " + s.describe(L.Get(1))})
		}
		L.Push(lua.LNumber(-n))
		return 1
	}))
	if kind == lua.LTNil || kind == lua.LTBool || kind == lua.LTNumber || kind == lua.LTFunction {
		t.RawSetString("__index", L.NewFunction(func(L *lua.LState) int {
			return s.raise(L, &diag.Fault{
				Message: fmt.Sprintf("got %s where a table with the field %s is wanted", s.describe(L.Get(1)), showShort(L.Get(2))),
				Hint:    "is the name before the dot spelled right, and does it have a value here?",
			})
		}))
	}
	if kind == lua.LTNil || kind == lua.LTBool || kind == lua.LTNumber {
		t.RawSetString("__call", L.NewFunction(func(L *lua.LState) int {
			return s.raise(L, &diag.Fault{
				Message: fmt.Sprintf("got %s where a function is called", s.describe(L.Get(1))),
				Hint:    "is the function's name spelled right?",
			})
		}))
	}
	return t
}

// eventOf gives the handler of the first operand that has one of its own: a
// quantity, a date or a table.
func (s *session) eventOf(L *lua.LState, a, b lua.LValue, event string) lua.LValue {
	for _, v := range []lua.LValue{a, b} {
		switch v.(type) {
		case *lua.LUserData, *lua.LTable:
			if fn := L.GetMetaField(v, event); fn != lua.LNil {
				return fn
			}
		}
	}
	return lua.LNil
}

func plainArithmetic(x, y float64, sign string) float64 {
	switch sign {
	case "+":
		return x + y
	case "-":
		return x - y
	case "*":
		return x * y
	case "/":
		return x / y
	case "%":
		return x - math.Floor(x/y)*y
	}
	return math.Pow(x, y)
}

// quantityMethods are what can be asked of a quantity.
var quantityMethods = []string{"to", "number", "unit", "text"}

// quantityField gives value:to "gal", value:number "gal", value:unit() and
// value:text().
func (s *session) quantityField(L *lua.LState) int {
	name := L.Get(2)
	method := map[string]lua.LGFunction{"to": s.quantityTo, "number": s.quantityNumber, "unit": s.quantityUnit, "text": s.quantityText}[lua.LVAsString(name)]
	if method == nil {
		return s.raise(L, &diag.Fault{
			Message: fmt.Sprintf("got the field %s of %s, a quantity; want one of %s", showShort(name), showShort(L.Get(1)), strings.Join(quantityMethods, ", ")),
			Hint:    `write value:to "L" or value:number "L"`,
		})
	}
	L.Push(L.NewFunction(method))
	return 1
}

func (s *session) self(L *lua.LState) quantity.Quantity {
	q, ok := contentOf(L.Get(1)).(quantity.Quantity)
	if !ok {
		s.raise(L, &diag.Fault{Message: "got a call with a point, want a colon", Hint: `write value:to "L"`})
	}
	return q
}

func (s *session) quantityTo(L *lua.LState) int {
	q := s.self(L)
	unit, err := s.unitArgument(L, q)
	if err != nil {
		return s.raise(L, err)
	}
	shown, err := q.To(unit)
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(s.wrap(shown))
	return 1
}

func (s *session) unitArgument(L *lua.LState, q quantity.Quantity) (*quantity.Unit, error) {
	text, ok := L.Get(2).(lua.LString)
	if !ok {
		return nil, &diag.Fault{Message: fmt.Sprintf("got %s, want the text of a unit", s.describe(L.Get(2))), Hint: fmt.Sprintf("write value:to %q", q.Unit().Symbol())}
	}
	unit, err := quantity.ParseUnit(string(text))
	return unit, withUnitHint(err)
}

func (s *session) quantityNumber(L *lua.LState) int {
	q := s.self(L)
	if L.Get(2) == lua.LNil {
		n, ok := q.Number()
		if !ok {
			return s.raise(L, &diag.Fault{Message: fmt.Sprintf("got %s without a unit to give its number in, want one", q.Short()), Hint: fmt.Sprintf("write value:number %q", q.Unit().Symbol())})
		}
		L.Push(lua.LNumber(n))
		return 1
	}
	unit, err := s.unitArgument(L, q)
	if err != nil {
		return s.raise(L, err)
	}
	shown, err := q.To(unit)
	if err != nil {
		return s.raise(L, err)
	}
	L.Push(lua.LNumber(shown.Value()))
	return 1
}

func (s *session) quantityUnit(L *lua.LState) int {
	L.Push(lua.LString(s.self(L).Unit().Symbol()))
	return 1
}

func (s *session) quantityText(L *lua.LState) int {
	q := s.self(L)
	if typed, ok := q.TypedText(); ok {
		L.Push(lua.LString(typed))
		return 1
	}
	L.Push(lua.LString(q.String()))
	return 1
}

// dateField gives the parts of a date.
func (s *session) dateField(L *lua.LState) int {
	d, _ := contentOf(L.Get(1)).(quantity.Date)
	t := d.Time()
	switch name := lua.LVAsString(L.Get(2)); name {
	case "year":
		L.Push(lua.LNumber(t.Year()))
	case "month":
		L.Push(lua.LNumber(t.Month()))
	case "day":
		L.Push(lua.LNumber(t.Day()))
	case "weekday":
		L.Push(lua.LString(d.Weekday()))
	default:
		return s.raise(L, &diag.Fault{Message: fmt.Sprintf("got the field %q of a date, want one of year, month, day, weekday", name), Hint: didYouMean(name, []string{"year", "month", "day", "weekday"})})
	}
	return 1
}

// withUnitHint adds the nearest unit to an unknown one.
func withUnitHint(err error) error {
	unknown, ok := err.(*quantity.UnknownUnitError)
	if !ok || unknown.Advice() != "" {
		return err
	}
	return &diag.Fault{Message: unknown.Error(), Hint: nearUnit(unknown.Unit)}
}

// nearUnit suggests a unit where hardly another can be meant: units are short, so
// most are near to each other.
func nearUnit(unit string) string {
	near := diag.Nearest(unit, quantity.UnitNames())
	if strings.EqualFold(near, unit) || (len(unit) > 2 && diag.Close(unit, near)) {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return `write the number, a space and one unit, as in "54 W"`
}
