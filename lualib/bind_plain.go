package lualib

import (
	"fmt"
	"math"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// rawFunctions are plain functions that take their arguments in a row instead of
// by name.
var rawFunctions map[string]func(*session, *lua.LState) int

func init() {
	rawFunctions = map[string]func(*session, *lua.LState) int{
		"Q": rawQ, "assume": func(s *session, L *lua.LState) int { return s.assume(L, s.engine.lib.plain["assume"]) }, "date": rawDate, "rows": rawRows, "sum": rawSum, "round": rawRound, "min": rawMin, "max": rawMax, "abs": rawAbs, "sqrt": rawSqrt,
	}
}

func plainFunctions() []*Function {
	return []*Function{
		{
			Name: "Q", Brief: "reads a text as a quantity: a number with a unit",
			Args:     []Arg{{Name: "text", Kind: ArgText, Need: true, Place: 1, Doc: `a number and a unit: "72 in", "1/2 in", "6 ft 2 1/2 in", "1 200 L/h", "0.31 EUR/kWh"`}},
			Result:   "the quantity; value:to \"gal\" shows it in another unit, value:number \"gal\" gives the bare number, value:unit() the unit",
			Range:    "any number; gal is the US gallon, gal_imp the imperial one; K is a temperature difference",
			Accuracy: "factors to the last digit of NIST SP 811", Source: "SI; NIST SP 811 (2008); ISO 4217 for money",
			Example: `height = Q"72 in"`,
		},
		{
			Name: "date", Brief: "reads a text as a day of the calendar",
			Args:    []Arg{{Name: "text", Kind: ArgText, Need: true, Place: 1, Doc: "year-month-day"}},
			Result:  `the date; date - date is a time, date + "2 wk" a date; .year .month .day .weekday`,
			Range:   "1900-01-01 to 2199-12-31",
			Source:  "ISO 8601",
			Example: `delivery = date "2027-03-06" + "2 wk"`,
		},
		{
			Name: "today", Brief: "states the day that the notebook counts from, once",
			Args:    []Arg{{Name: "date", Kind: ArgDate, Need: true, Place: 1, Doc: "year-month-day"}},
			Result:  "the date",
			Makes:   []plan.Kind{plan.KindToday},
			Checks:  "stated once",
			Source:  "ISO 8601",
			Example: `now = today "2027-02-01"`,
			run:     runToday,
		},
		{
			Name: "assume", Brief: "states a value that is taken for granted and may be varied",
			Args: []Arg{
				{Name: "label", Kind: ArgText, Need: true, Place: 1, Doc: "what it is, in words"},
				{Name: "value", Kind: ArgQuantity, Need: true, Place: 2, Doc: "the value; a bare number is allowed"},
				{Name: "low", Kind: ArgQuantity, Doc: "the least it may be"},
				{Name: "high", Kind: ArgQuantity, Doc: "the most it may be"},
				{Name: "source", Kind: ArgText, Doc: "where the number comes from"},
			},
			Result:  "the value; --set NAME=VALUE replaces it for a run",
			Makes:   []plan.Kind{plan.KindAssumption},
			Checks:  "a value outside low to high is a caution",
			Source:  "none",
			Example: `electricity = assume{"Electricity price", "0.31 EUR/kWh", low = "0.26 EUR/kWh", high = "0.42 EUR/kWh", source = "the bill"}`,
		},
		{
			Name: "check", Brief: "compares a value with its limits, or notes a condition",
			Args: []Arg{
				{Name: "name", Kind: ArgText, Need: true, Place: 1, Doc: "what is checked"},
				{Name: "value", Kind: ArgAny, Place: 2, Doc: "a condition (true passes), or a quantity or number to compare"},
				{Name: "at_most", Kind: ArgAny, Doc: "the value fails above it"},
				{Name: "at_least", Kind: ArgAny, Doc: "the value fails below it"},
				{Name: "caution_at", Kind: ArgAny, Doc: "a caution from here to the limit"},
				{Name: "message", Kind: ArgText, Doc: "what to do when it does not pass"},
				{Name: "tank", Kind: ArgLink, Of: "tank", Doc: "the tank it is about"},
			},
			Result:  "pass, caution or fail",
			Makes:   []plan.Kind{plan.KindCheck},
			Source:  "none",
			Example: `check{"Joists under the stand", stand.bending, at_most = "100 %", caution_at = "70 %"}`,
			run:     runCheck,
		},
		{
			Name: "rows", Brief: "gives the rows of the table under a heading",
			Args:    []Arg{{Name: "heading", Kind: ArgText, Need: true, Place: 1, Doc: "the text of the heading above the table, Markdown or csv"}},
			Result:  "a list of rows, fresh and writable: keys are the headers in lower case with _ for spaces; cells are quantities, numbers, dates or texts; an empty cell is absent",
			Source:  "GitHub Flavored Markdown tables; RFC 4180",
			Example: `for _, row in ipairs(rows "Tanks") do tank(row) end`,
		},
		{
			Name: "sum", Brief: "adds up a list of quantities, or one field of a list of records",
			Args: []Arg{
				{Name: "list", Kind: ArgAny, Need: true, Place: 1, Doc: "a list, or a table of records"},
				{Name: "field", Kind: ArgText, Place: 2, Doc: "the field to add up"},
			},
			Result: "the sum; 0 for an empty list", Source: "none", Example: `all_water = sum(tanks, "water")`,
		},
		{
			Name: "round", Brief: "rounds half away from zero, in the unit in which the quantity is shown",
			Args: []Arg{
				{Name: "value", Kind: ArgAny, Need: true, Place: 1, Doc: "a quantity or a number"},
				{Name: "decimals", Kind: ArgNumber, Place: 2, Default: "0", Doc: "decimals to keep, or a unit to round to whole ones of"},
			},
			Result: "the rounded value", Accuracy: "decimal, on 15 significant digits, as spreadsheets round", Source: "none", Example: `round(price, 2)`,
		},
		{Name: "min", Brief: "the least of its arguments, numbers or quantities of one kind", Args: []Arg{{Name: "values", Kind: ArgAny, Need: true, Place: 1, Doc: "two or more values, or one list"}}, Result: "the least", Source: "none", Example: `min(north.water, south.water)`},
		{Name: "max", Brief: "the greatest of its arguments, numbers or quantities of one kind", Args: []Arg{{Name: "values", Kind: ArgAny, Need: true, Place: 1, Doc: "two or more values, or one list"}}, Result: "the greatest", Source: "none", Example: `heaviest = max(north.filled, south.filled)`},
		{Name: "abs", Brief: "drops the sign of a number or quantity", Args: []Arg{{Name: "value", Kind: ArgAny, Need: true, Place: 1, Doc: "a number or quantity"}}, Result: "the value without its sign", Source: "none", Example: `abs(planned - measured)`},
		{Name: "sqrt", Brief: "the square root of a number or quantity", Args: []Arg{{Name: "value", Kind: ArgAny, Need: true, Place: 1, Doc: "not negative; the dimension must have a root, as an area has"}}, Result: "the square root", Source: "none", Example: `side = sqrt(base.footprint)`},
	}
}

func rawQ(s *session, L *lua.LState) int {
	switch v := L.Get(1).(type) {
	case lua.LString:
		q, err := quantity.Parse(string(v))
		if err != nil {
			f := diag.AsFault(withUnitHint(err))
			return s.raise(L, &diag.Fault{Subject: "Q", Message: f.Message, Hint: f.Hint})
		}
		L.Push(s.wrap(q))
		return 1
	case *lua.LUserData:
		if _, ok := v.Value.(quantity.Quantity); ok {
			L.Push(v)
			return 1
		}
	case lua.LNumber:
		return s.raise(L, &diag.Fault{Subject: "Q", Message: fmt.Sprintf("got %s without a unit, want a text with one", showShort(v)), Hint: fmt.Sprintf("write Q\"%s cm\", or the bare number without Q", showShort(v))})
	}
	return s.raise(L, &diag.Fault{Subject: "Q", Message: fmt.Sprintf("got %s, want a text with a unit", s.describe(L.Get(1))), Hint: `write Q"72 in"`})
}

func rawDate(s *session, L *lua.LState) int {
	d, err := s.dateArg(L.Get(1))
	if err != nil {
		f := diag.AsFault(err)
		return s.raise(L, &diag.Fault{Subject: "date", Message: f.Message, Hint: f.Hint})
	}
	L.Push(s.wrapDate(d))
	return 1
}

func runToday(c *callArgs) (any, error) {
	d := c.values["date"].(quantity.Date)
	return d, c.record(&plan.Today{Date: d})
}

// measurable reads a value, number or unit text as a quantity.
func (s *session) measurable(L *lua.LState, v lua.LValue, name string) quantity.Quantity {
	if q, ok := asQuantity(v); ok {
		return q
	}
	if t, ok := v.(lua.LString); ok {
		q, err := quantity.Parse(string(t))
		if err == nil {
			return q
		}
		f := diag.AsFault(withUnitHint(err))
		s.raise(L, &diag.Fault{Subject: name, Message: f.Message, Hint: f.Hint})
	}
	hint := ""
	if v == lua.LNil {
		hint = "is a name or field misspelled, or does it have no value here?"
	}
	s.raise(L, &diag.Fault{Subject: name, Message: fmt.Sprintf("got %s, want a number or a quantity", s.describe(v)), Hint: hint})
	return quantity.Quantity{}
}

// giveLike hands back a quantity, as a plain number where only those came in.
func (s *session) giveLike(L *lua.LState, q quantity.Quantity, plain bool) int {
	if plain && q.Unit() == nil {
		L.Push(lua.LNumber(q.Value()))
	} else {
		L.Push(s.wrap(q))
	}
	return 1
}

func isPlain(v lua.LValue) bool { return v.Type() == lua.LTNumber }

func rawSum(s *session, L *lua.LState) int {
	t, ok := L.Get(1).(*lua.LTable)
	if !ok {
		return s.raise(L, &diag.Fault{Subject: "sum", Message: fmt.Sprintf("got %s, want a list", s.describe(L.Get(1))), Hint: `write sum(tanks, "water"), or sum{a, b, c}`})
	}
	var total quantity.Quantity
	first, plain := true, true
	var failure error
	for key, value := t.Next(lua.LNil); key != lua.LNil; key, value = t.Next(key) {
		if err := s.meter.step(32); err != nil {
			return s.raise(L, err)
		}
		if field := L.Get(2); field != lua.LNil {
			value = s.fieldFor(L, value, field)
		}
		q := s.measurable(L, value, "sum")
		plain = plain && isPlain(value)
		if first {
			total, first = q, false
			continue
		}
		if total, failure = total.Add(q); failure != nil {
			f := diag.AsFault(failure)
			return s.raise(L, &diag.Fault{Subject: "sum", Message: f.Message, Hint: f.Hint})
		}
	}
	return s.giveLike(L, total, plain)
}

func (s *session) fieldFor(L *lua.LState, record, field lua.LValue) lua.LValue {
	if _, ok := record.(*lua.LTable); !ok {
		s.raise(L, &diag.Fault{Subject: "sum", Message: fmt.Sprintf("got %s in the list, want a record with the field %s", s.describe(record), showShort(field))})
	}
	return L.GetTable(record, field)
}

func rawRound(s *session, L *lua.LState) int {
	q := s.measurable(L, L.Get(1), "round")
	if t, ok := L.Get(2).(lua.LString); ok {
		unit, err := quantity.ParseUnit(string(t))
		if err == nil {
			q, err = q.To(unit)
		}
		if err != nil {
			f := diag.AsFault(withUnitHint(err))
			return s.raise(L, &diag.Fault{Subject: "round", Message: f.Message, Hint: f.Hint})
		}
		return s.giveLike(L, q.RoundTo(0), false)
	}
	decimals := 0.0
	if L.Get(2) != lua.LNil {
		var ok bool
		if decimals, ok = numberOf(L.Get(2)); !ok || math.Abs(decimals) > 15 || decimals != math.Trunc(decimals) {
			return s.raise(L, &diag.Fault{Subject: "round", Message: fmt.Sprintf("got %s, want a whole number of decimals from -15 to 15, or a unit", s.describe(L.Get(2))), Hint: `write round(value, 2) or round(value, "L")`})
		}
	}
	return s.giveLike(L, q.RoundTo(int(decimals)), isPlain(L.Get(1)))
}

func rawMin(s *session, L *lua.LState) int { return s.extremeOf(L, "min", -1) }

func rawMax(s *session, L *lua.LState) int { return s.extremeOf(L, "max", 1) }

// extremeOf finds the least or greatest of its arguments, or of one list.
func (s *session) extremeOf(L *lua.LState, name string, want int) int {
	var values []lua.LValue
	if t, ok := L.Get(1).(*lua.LTable); ok && L.GetTop() == 1 {
		for key, value := t.Next(lua.LNil); key != lua.LNil; key, value = t.Next(key) {
			values = append(values, value)
		}
	} else {
		for i := 1; i <= L.GetTop(); i++ {
			values = append(values, L.Get(i))
		}
	}
	if len(values) == 0 {
		return s.raise(L, &diag.Fault{Subject: name, Message: "got nothing, want at least one value", Hint: fmt.Sprintf("write %s(a, b)", name)})
	}
	if d, ok := contentOf(values[0]).(quantity.Date); ok {
		return s.extremeDate(L, name, want, d, values)
	}
	best, plain := s.measurable(L, values[0], name), isPlain(values[0])
	for _, v := range values[1:] {
		if err := s.meter.step(32); err != nil {
			return s.raise(L, err)
		}
		q := s.measurable(L, v, name)
		plain = plain && isPlain(v)
		c, err := q.Compare(best)
		if err != nil {
			f := diag.AsFault(err)
			return s.raise(L, &diag.Fault{Subject: name, Message: f.Message, Hint: f.Hint})
		}
		if c == want {
			best = q
		}
	}
	return s.giveLike(L, best, plain)
}

func (s *session) extremeDate(L *lua.LState, name string, want int, best quantity.Date, values []lua.LValue) int {
	for _, v := range values[1:] {
		d, err := s.dateArg(v)
		if err != nil {
			f := diag.AsFault(err)
			return s.raise(L, &diag.Fault{Subject: name, Message: f.Message, Hint: f.Hint})
		}
		if d.Compare(best) == want {
			best = d
		}
	}
	L.Push(s.wrapDate(best))
	return 1
}

func rawAbs(s *session, L *lua.LState) int {
	return s.giveLike(L, s.measurable(L, L.Get(1), "abs").Abs(), isPlain(L.Get(1)))
}

func rawSqrt(s *session, L *lua.LState) int {
	root, err := s.measurable(L, L.Get(1), "sqrt").Sqrt()
	if err != nil {
		f := diag.AsFault(err)
		return s.raise(L, &diag.Fault{Subject: "sqrt", Message: f.Message, Hint: f.Hint})
	}
	return s.giveLike(L, root, isPlain(L.Get(1)))
}

// assume records an assumption; the name comes from the statement it stands
// in, a new value from the command line.
func (s *session) assume(L *lua.LState, f *Function) int {
	name, _ := L.Get(2).(lua.LString)
	c, fault := s.decode(L, f)
	if fault != nil {
		return s.raiseAt(L, fault.fault, fault.place)
	}
	a := &plan.Assumption{Name: string(name), Label: c.text("label"), Value: c.q("value"), Given: c.q("value"), Low: c.optional("low"), High: c.optional("high"), Basis: c.text("source")}
	if err := sameDimensions(c); err != nil {
		return s.raiseAt(L, c.subject(err), c.place)
	}
	if text, ok := s.current.job.Overrides[a.Name]; ok {
		if err := override(a, text); err != nil {
			return s.raiseAt(L, c.subject(err), c.place)
		}
	}
	if err := c.record(a); err != nil {
		return s.raiseAt(L, c.subject(err), c.place)
	}
	s.assumptionRange(a, c)
	L.Push(s.wrap(a.Value.WithOrigin(quantity.Named(a.Name))))
	return 1
}

// sameDimensions refuses a low or high of another dimension than the value's.
func sameDimensions(c *callArgs) error {
	for _, name := range []string{"low", "high"} {
		if c.has(name) {
			if _, err := c.q("value").Compare(c.q(name)); err != nil {
				f := diag.AsFault(err)
				return wrong(name, f.Message, f.Hint)
			}
		}
	}
	return nil
}

// override replaces an assumption's value by one from the command line.
func override(a *plan.Assumption, text string) error {
	q, err := quantity.Parse(text)
	if err != nil {
		return withUnitHint(err)
	}
	if q.Dimension() != a.Given.Dimension() || q.IsPoint() != a.Given.IsPoint() {
		return wrong("--set "+a.Name, fmt.Sprintf("got %s, %s; want %s as in the notebook's %s", q.Short(), kindWord(q), kindWord(a.Given), a.Given.Short()), fmt.Sprintf("write --set %s=%q", a.Name, a.Given.String()))
	}
	a.Value, a.Overridden = q, true
	return nil
}

// assumptionRange is a caution for a value outside its own range.
func (s *session) assumptionRange(a *plan.Assumption, c *callArgs) {
	outside := ""
	if a.Low.Has {
		if n, err := a.Value.Compare(a.Low.Q); err == nil && n < 0 {
			outside = "below its low of " + a.Low.Q.Short()
		}
	}
	if a.High.Has {
		if n, err := a.Value.Compare(a.High.Q); err == nil && n > 0 {
			outside = "above its high of " + a.High.Q.Short()
		}
	}
	if outside != "" {
		s.caution(c.place, &diag.Fault{Subject: "assume: " + a.Label, Message: fmt.Sprintf("got %s, %s", a.Value.Short(), outside), Hint: "widen low and high, or choose a value between them"})
	}
}

func (s *session) caution(place plan.Place, f *diag.Fault) {
	s.current.cautions = append(s.current.cautions, noteFault(place, f))
}
