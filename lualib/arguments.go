package lualib

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"unicode/utf8"

	lua "github.com/yuin/gopher-lua"

	"weirbook/lualib/lua51"
	"weirbook/notebook/diag"
	"weirbook/notebook/quantity"
)

// value turns a Lua value into what the argument takes.
func (c *callArgs) value(a *Arg, v lua.LValue) (any, error) {
	switch a.Kind {
	case ArgQuantity, ArgMoney:
		return c.session.quantityArg(a, v)
	case ArgNumber:
		return c.session.numberArg(a, v)
	case ArgCount:
		n, err := c.session.numberArg(a, v)
		if err == nil && (n != math.Trunc(n) || n < 0 || n > 1e9) {
			err = &diag.Fault{Message: fmt.Sprintf("got %s, want a whole number from 0", showShort(v))}
		}
		return int(n), err
	case ArgText:
		return c.session.text(v)
	case ArgBool:
		if b, ok := v.(lua.LBool); ok {
			return bool(b), nil
		}
		if t, ok := v.(lua.LString); ok {
			switch strings.ToLower(string(t)) {
			case "yes", "true":
				return true, nil
			case "no", "false":
				return false, nil
			}
		}
		return nil, c.session.mismatch(a, v, "write true or false")
	case ArgDate:
		return c.session.dateArg(v)
	case ArgLink:
		if t, ok := v.(*lua.LTable); ok {
			c.linked = t
		}
		return c.session.link(a, v)
	case ArgList:
		return c.session.listArg(a, v)
	case ArgNames:
		return c.session.names(v)
	case ArgPoints:
		return c.session.points(a, v)
	}
	return v, nil
}

func (s *session) mismatch(a *Arg, v lua.LValue, hint string) error {
	return &diag.Fault{Message: fmt.Sprintf("got %s, want %s", s.describe(v), a.wantOf()), Hint: hint}
}

// quantityArg reads a quantity and checks its dimension and bounds.
func (s *session) quantityArg(a *Arg, v lua.LValue) (quantity.Quantity, error) {
	q, err := s.readQuantity(a, v)
	if err != nil {
		return q, err
	}
	if err := s.checkDimension(a, v, q); err != nil {
		return q, err
	}
	return q, checkBounds(a, q)
}

func (s *session) readQuantity(a *Arg, v lua.LValue) (quantity.Quantity, error) {
	switch x := v.(type) {
	case lua.LNumber:
		if a.Unit == "%" && x > 1 {
			return quantity.Quantity{}, &diag.Fault{Message: fmt.Sprintf("got %s without a unit, want a share", showShort(v)), Hint: fmt.Sprintf("write \"%s %%\", or %s as a part of 1", showShort(v), lua51.FormatNumber(float64(x)/100))}
		}
		if a.Unit == "%" || (a.Kind == ArgQuantity && a.Unit == "") {
			return quantity.Bare(float64(x)), nil
		}
		if a.Unit == "ppt" && x > 0.99 && x < 1.1 {
			return quantity.Quantity{}, &diag.Fault{Message: fmt.Sprintf("got %s without a unit, want a salinity; it looks like a specific gravity", showShort(v)), Hint: fmt.Sprintf("write salinity.from_sg{sg = %s, reference = \"25 degC\"}, with the temperature that your instrument names", showShort(v))}
		}
		return quantity.Quantity{}, &diag.Fault{Message: fmt.Sprintf("got %s without a unit, want %s", showShort(v), a.wantOf()), Hint: fmt.Sprintf("write %q", a.exampleOf(showShort(v)))}
	case lua.LString:
		q, err := quantity.Parse(string(x))
		if err != nil && a.UnitOnly {
			if one, err2 := quantity.New(1, strings.TrimSpace(string(x))); err2 == nil && one.Unit() != nil {
				return one, nil
			}
		}
		if _, plain := err.(*quantity.ParseError); plain {
			return q, &diag.Fault{Message: fmt.Sprintf("got the text %q, want %s", string(x), a.wantOf()), Hint: fmt.Sprintf("write a number with its unit, as in %q", a.exampleOf(""))}
		}
		if v := q.Value(); err == nil && a.Unit == "ppt" && v > 0.99 && v < 1.1 && gravityText.MatchString(strings.TrimSpace(string(x))) {
			return q, &diag.Fault{Message: fmt.Sprintf("got %q, which looks like a specific gravity; want a salinity", string(x)), Hint: fmt.Sprintf("write salinity.from_sg{sg = %s, reference = \"25 degC\"}, with the temperature that your instrument names", quantity.Bare(v).String())}
		}
		if err == nil && q.Unit() == nil && a.Unit != "%" && a.Unit != "" {
			return q, &diag.Fault{Message: fmt.Sprintf("got %q without a unit, want %s", string(x), a.wantOf()), Hint: fmt.Sprintf("write %q", a.exampleOf(string(x)))}
		}
		return q, err
	case *lua.LUserData:
		if q, ok := x.Value.(quantity.Quantity); ok {
			return q, nil
		}
	}
	return quantity.Quantity{}, s.mismatch(a, v, fmt.Sprintf("write %q", a.exampleOf("")))
}

// gravityText is a number with the three decimals of a specific gravity.
var gravityText = regexp.MustCompile(`^[01]\.\d{3,}(?: ?ppt)?$`)

// checkDimension compares the dimension with what the argument takes.
func (s *session) checkDimension(a *Arg, v lua.LValue, q quantity.Quantity) error {
	if a.Kind == ArgMoney {
		return checkMoney(a, q)
	}
	if a.Unit == "" {
		return nil
	}
	want := quantity.Must(1, a.Unit)
	if q.Dimension() == want.Dimension() && q.IsPoint() == want.IsPoint() {
		return nil
	}
	if a.Also != "" && q.Unit() != nil && q.Dimension() == quantity.Must(1, a.Also).Dimension() {
		return nil
	}
	f := &diag.Fault{Message: fmt.Sprintf("got %s, %s; want %s", q.Short(), kindWord(q), a.wantOf()), Hint: fmt.Sprintf("write it as in %q", a.exampleOf(""))}
	if _, err := q.In("mg/L"); err == nil && (a.Unit == "dGH" || a.Unit == "dKH") {
		f.Hint = fmt.Sprintf("plain mg/L does not say of what: write \"%s mg/L_CaCO3\" for a laboratory's figure, or dGH, dKH, meq/L", quantity.Bare(q.MustIn("mg/L")).Short())
	}
	if want.IsPoint() && q.Dimension() == want.Dimension() {
		f.Hint = fmt.Sprintf("a difference is no temperature: write %q", a.exampleOf(fmt.Sprint(q.Value())))
	}
	return f
}

func kindWord(q quantity.Quantity) string {
	if q.IsPoint() {
		return "a temperature"
	}
	if q.Dimension() == quantity.Must(1, "K").Dimension() {
		return "a temperature difference"
	}
	return q.Dimension().String()
}

// checkMoney takes an amount of one currency, or one per the argument's unit.
func checkMoney(a *Arg, q quantity.Quantity) error {
	want := q.Dimension()
	if a.Unit != "" {
		per, err := q.Mul(quantity.Must(1, a.Unit))
		if err != nil {
			return err
		}
		want = per.Dimension()
	}
	if want.IsMoney() {
		return nil
	}
	return &diag.Fault{Message: fmt.Sprintf("got %s, %s; want %s", q.Short(), kindWord(q), a.wantOf()), Hint: fmt.Sprintf("write it as in %q", a.exampleOf(""))}
}

// maxMoney is an amount up to which cents are exact in sums.
const maxMoney = 1e12

// checkBounds compares with the argument's range.
func checkBounds(a *Arg, q quantity.Quantity) error {
	if math.IsNaN(q.Value()) || math.IsInf(q.Value(), 0) {
		return &diag.Fault{Message: fmt.Sprintf("got %s, want %s", q.Short(), a.wantOf())}
	}
	if a.Kind == ArgMoney {
		if q.Value() < 0 {
			return &diag.Fault{Message: fmt.Sprintf("got %s, want no negative amount", q.Short())}
		}
		if q.Value() > maxMoney {
			return &diag.Fault{Message: fmt.Sprintf("got %s, want at most %g", q.Short(), maxMoney)}
		}
		return nil
	}
	if a.Low == 0 && a.Top == 0 && !a.Above {
		return nil
	}
	n, err := q.In(a.Unit)
	if err != nil {
		if a.Also != "" {
			return nil // its own function checks the second dimension
		}
		return err
	}
	bounds := ""
	if a.Top > a.Low {
		bounds = fmt.Sprintf("the range is %s to %s", quantity.Must(a.Low, a.Unit).Short(), quantity.Must(a.Top, a.Unit).Short())
	}
	if n < a.Low || (a.Above && n <= a.Low) {
		word := "at least"
		if a.Above {
			word = "more than"
		}
		return &diag.Fault{Message: fmt.Sprintf("got %s, want %s %s", q.Short(), word, quantity.Must(a.Low, a.Unit).Short()), Hint: bounds}
	}
	if a.Top > a.Low && n > a.Top {
		f := &diag.Fault{Message: fmt.Sprintf("got %s, want at most %s", q.Short(), quantity.Must(a.Top, a.Unit).Short()), Hint: bounds}
		if a.Unit == "ppt" && q.Unit().Symbol() == "%" {
			f.Hint = fmt.Sprintf("1 %% of salt is 10 ppt; for parts of a thousand write \"%s ppt\"", quantity.Bare(q.Value()).Short())
		}
		return f
	}
	return nil
}

func (s *session) numberArg(a *Arg, v lua.LValue) (float64, error) {
	n, ok := numberOf(v)
	if !ok || math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, s.mismatch(a, v, "write a bare number")
	}
	if (a.Low != 0 || a.Top != 0) && (n < a.Low || (a.Top > a.Low && n > a.Top)) {
		return 0, &diag.Fault{Message: fmt.Sprintf("got %s, want %g to %g", showShort(v), a.Low, a.Top)}
	}
	return n, nil
}

// maxArgument bounds a text that is handed to the library: people read it.
const maxArgument = 100_000

// text reads a text: a value of a table cell gives what was typed.
func (s *session) text(v lua.LValue) (string, error) {
	switch x := v.(type) {
	case lua.LString:
		if len(x) > maxArgument {
			return "", &diag.Fault{Message: fmt.Sprintf("got a text of %d characters, want at most %d", utf8.RuneCountInString(string(x)), maxArgument)}
		}
		if s.current.taken += len(x); s.current.taken > maxText {
			return "", &diag.Fault{Message: fmt.Sprintf("got more than %d MB of text from one cell, want less", maxText>>20), Hint: "does a loop never end?"}
		}
		return string(x), nil
	case lua.LNumber, *lua.LUserData:
		text, _ := stringOf(v)
		return text, nil
	case lua.LBool:
		return fmt.Sprint(bool(x)), nil
	}
	return "", &diag.Fault{Message: fmt.Sprintf("got %s, want a text", s.describe(v)), Hint: "write it between quotes"}
}

func (s *session) dateArg(v lua.LValue) (quantity.Date, error) {
	if d, ok := contentOf(v).(quantity.Date); ok {
		return d, nil
	}
	if t, ok := v.(lua.LString); ok {
		return quantity.ParseDate(string(t))
	}
	return quantity.Date{}, &diag.Fault{Message: fmt.Sprintf("got %s, want a date", s.describe(v)), Hint: `write year-month-day, as in "2027-03-06"`}
}

// link reads the name of a record, or the record itself.
func (s *session) link(a *Arg, v lua.LValue) (string, error) {
	t, ok := v.(*lua.LTable)
	if !ok {
		return s.text(v)
	}
	if s.isResult(t, a.Of) {
		if name, ok := t.RawGetString("name").(lua.LString); ok {
			return string(name), nil
		}
	}
	return "", s.mismatch(a, v, fmt.Sprintf("write %s = \"its name\", or the result of %s{…}", a.Name, a.Of))
}

func (s *session) isResult(t *lua.LTable, of string) bool {
	f := s.frozen[t]
	return f != nil && (f.of == of || strings.HasSuffix(f.of, "."+of))
}

// listArg reads a list of quantities: a Lua list, or a text with semicolons.
func (s *session) listArg(a *Arg, v lua.LValue) ([]quantity.Quantity, error) {
	var list []quantity.Quantity
	for _, item := range s.items(v) {
		q, err := s.quantityArg(a, item)
		if err != nil {
			return nil, err
		}
		list = append(list, q)
	}
	return list, nil
}

// items splits a list or a text with semicolons.
func (s *session) items(v lua.LValue) []lua.LValue {
	switch x := v.(type) {
	case *lua.LTable:
		var list []lua.LValue
		for i := 1; i <= x.Len(); i++ {
			list = append(list, x.RawGetInt(i))
		}
		return list
	case lua.LString:
		var list []lua.LValue
		for _, part := range strings.Split(string(x), ";") {
			if part = strings.TrimSpace(part); part != "" {
				list = append(list, lua.LString(part))
			}
		}
		return list
	}
	return []lua.LValue{v}
}

func (s *session) names(v lua.LValue) ([]string, error) {
	if t, ok := v.(*lua.LTable); ok && s.frozen[t] != nil && s.frozen[t].of != "" {
		name, err := s.link(&Arg{Name: "after", Kind: ArgLink, Of: s.frozen[t].of}, v)
		return []string{name}, err
	}
	var names []string
	for _, item := range s.items(v) {
		if t, ok := item.(*lua.LTable); ok && s.frozen[t] != nil {
			if name, ok := t.RawGetString("name").(lua.LString); ok {
				names = append(names, string(name))
				continue
			}
		}
		text, err := s.text(item)
		if err != nil {
			return nil, err
		}
		names = append(names, text)
	}
	return names, nil
}

// points reads a list of {x, y}.
func (s *session) points(a *Arg, v lua.LValue) ([][2]float64, error) {
	t, ok := v.(*lua.LTable)
	if !ok {
		return nil, s.mismatch(a, v, `write points = {{"0 cm", "0 cm"}, {"120 cm", "0 cm"}, …}`)
	}
	length := &Arg{Name: a.Name, Kind: ArgQuantity, Unit: "m"}
	var points [][2]float64
	for i := 1; i <= t.Len(); i++ {
		pair, ok := t.RawGetInt(i).(*lua.LTable)
		if !ok || pair.Len() != 2 {
			return nil, &diag.Fault{Message: fmt.Sprintf("got %s as point %d, want two lengths", s.describe(t.RawGetInt(i)), i), Hint: `write {"120 cm", "0 cm"}`}
		}
		var p [2]float64
		for k := range p {
			q, err := s.quantityArg(length, pair.RawGetInt(k+1))
			if err != nil {
				return nil, err
			}
			p[k] = q.SI()
		}
		points = append(points, p)
	}
	return points, nil
}
