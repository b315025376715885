package lualib

import (
	"fmt"
	"sort"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Accessors of decoded arguments. Asking for one that was not given takes the
// default.

func (c *callArgs) has(name string) bool { _, ok := c.values[name]; return ok }

func (c *callArgs) q(name string) quantity.Quantity {
	q, _ := c.values[name].(quantity.Quantity)
	return q
}

// in gives a quantity as a number in a unit.
func (c *callArgs) in(name, unit string) float64 { return c.q(name).MustIn(unit) }

// or gives a quantity, or the default.
func (c *callArgs) or(name string, otherwise quantity.Quantity) quantity.Quantity {
	if c.has(name) {
		return c.q(name)
	}
	return otherwise
}

func (c *callArgs) optional(name string) plan.Optional {
	if !c.has(name) {
		return plan.Optional{}
	}
	return plan.Some(c.q(name))
}

func (c *callArgs) text(name string) string {
	t, _ := c.values[name].(string)
	return t
}

func (c *callArgs) count(name string, otherwise int) int {
	if n, ok := c.values[name].(int); ok {
		return n
	}
	return otherwise
}

func (c *callArgs) number(name string, otherwise float64) float64 {
	if n, ok := c.values[name].(float64); ok {
		return n
	}
	return otherwise
}

func (c *callArgs) truth(name string, otherwise bool) bool {
	if b, ok := c.values[name].(bool); ok {
		return b
	}
	return otherwise
}

// result is what a library function with fields gives.
type result struct {
	fields []notebook.Named
}

func (r *result) set(name string, v any) *result {
	r.fields = append(r.fields, notebook.Named{Name: name, Value: v})
	return r
}

// setIf sets a field that may be absent.
func (r *result) setIf(name string, o plan.Optional) *result {
	if o.Has {
		return r.set(name, o.Q)
	}
	return r
}

// textIf sets a text field unless it is empty.
func (r *result) textIf(name, text string) *result {
	if text != "" {
		return r.set(name, text)
	}
	return r
}

// push hands a result of the Go side to the cells.
func (s *session) push(f *Function, v any) lua.LValue {
	switch v := v.(type) {
	case nil:
		return lua.LNil
	case bool:
		return lua.LBool(v)
	case float64:
		return lua.LNumber(v)
	case int:
		return lua.LNumber(v)
	case string:
		return lua.LString(v)
	case quantity.Quantity:
		return s.wrap(v)
	case quantity.Date:
		return s.wrapDate(v)
	case lua.LValue:
		return v
	case []quantity.Quantity:
		t := s.state.NewTable()
		for i, q := range v {
			t.RawSetInt(i+1, s.wrap(q))
		}
		s.frozen[t] = &frozen{owner: "the library", of: f.FullName()}
		return t
	case []string:
		t := s.state.NewTable()
		for i, text := range v {
			t.RawSetInt(i+1, lua.LString(text))
		}
		s.frozen[t] = &frozen{owner: "the library", of: f.FullName()}
		return t
	case []*result:
		list := s.state.CreateTable(len(v), 0)
		for i, r := range v {
			t := s.state.CreateTable(0, len(r.fields))
			for _, field := range r.fields {
				t.RawSetString(field.Name, s.push(f, field.Value))
			}
			s.frozen[t] = &frozen{owner: "the library", of: f.FullName()}
			list.RawSetInt(i+1, t)
		}
		s.frozen[list] = &frozen{owner: "the library", of: f.FullName()}
		return list
	case *result:
		t := s.state.CreateTable(0, len(v.fields))
		for _, field := range v.fields {
			t.RawSetString(field.Name, s.push(f, field.Value))
		}
		t.Metatable = s.resultTable(f.FullName())
		s.frozen[t] = &frozen{of: f.FullName()}
		return t
	}
	panic(fmt.Sprintf("lualib: %s gives a %T", f.FullName(), v))
}

// resultTable is the metatable of a function's results: reading a field that
// they do not have is an error with the nearest name.
func (s *session) resultTable(of string) *lua.LTable {
	if t, ok := s.results[of]; ok {
		return t
	}
	f := s.engine.Find(of)
	t := s.state.NewTable()
	t.RawSetString("__index", s.state.NewFunction(func(L *lua.LState) int {
		name := L.Get(2)
		text, isText := name.(lua.LString)
		if f == nil || !isText {
			L.Push(lua.LNil)
			return 1
		}
		names := f.fieldNames()
		for _, n := range names {
			if n == string(text) {
				L.Push(lua.LNil) // a field that this result leaves out
				return 1
			}
		}
		hint := didYouMean(string(text), names)
		if hint == "" {
			hint = fmt.Sprintf("weirbook lib %s lists its fields", of)
		}
		return s.raise(L, &diag.Fault{Message: fmt.Sprintf("got the field %q, which the result of %s does not have", string(text), of), Hint: hint})
	}))
	s.results[of] = t
	return t
}

// record sets a record down for the cell that is running.
func (c *callArgs) record(r plan.Record) error {
	f := c.session.current
	if f.read[r.Kind()] {
		return &diag.Fault{
			Message: fmt.Sprintf("got %s recorded after the cell has read the %s records", oneOf(r.Kind()), r.Kind()),
			Hint:    "move the reading into a cell of its own",
		}
	}
	origin := r.Origin()
	origin.Place, origin.Note = c.recordPlace(), c.note
	f.records = append(f.records, r)
	if len(f.records) > maxRecords {
		return &diag.Fault{Message: fmt.Sprintf("got more than %d records from one cell, want less", maxRecords), Hint: "does a loop never end?"}
	}
	return nil
}

// oneOf names one record of a kind.
func oneOf(k plan.Kind) string {
	switch k {
	case plan.KindAssumption, plan.KindItem:
		return "an " + string(k)
	case plan.KindToday:
		return "the day"
	}
	return "a " + string(k)
}

// untraced is a record made or read through a function that the syntax does not
// show: no total could wait for it.
func (s *session) untraced(f *Function) error {
	does, kind := "", plan.Kind("")
	for _, k := range f.Makes {
		if !s.current.job.Makes[k] {
			does, kind = "makes", k
		}
	}
	for _, k := range f.Reads {
		if !s.current.job.Reads[k] {
			does, kind = "reads", k
		}
	}
	if does == "" {
		return nil
	}
	return &diag.Fault{
		Subject: f.FullName(), Message: fmt.Sprintf("got a cell that %s %s records through a function that cannot be followed to its definition", does, kind),
		Hint: fmt.Sprintf("give the function a name of its own, as in function my_%s(…) … end, and call it by that name", f.Name),
	}
}

// maxRecords bounds the records of one cell.
const maxRecords = 200_000

// recordPlace is the row that the record was made of, or the line of the cell
// that runs.
func (c *callArgs) recordPlace() plan.Place {
	if c.row != nil {
		return c.place
	}
	if c.session.current.atCell.Line >= 0 {
		return c.session.current.atCell
	}
	return c.place
}

// cellPlace gives the line of the running cell's own code that led to a call,
// also through functions of other cells.
func (s *session) cellPlace(L *lua.LState) plan.Place {
	for level := 1; level < 64; level++ {
		d, ok := L.GetStack(level)
		if !ok {
			break
		}
		fn, err := L.GetInfo("Slf", d, lua.LNil)
		if err != nil {
			break
		}
		if lf, ok := fn.(*lua.LFunction); ok && !lf.IsG && lf.Env == s.current.env && d.CurrentLine > 0 {
			return plan.Place{Line: lineCount(s.current.job.Analysis.Code, d.CurrentLine-1)}
		}
	}
	return plan.Place{Line: -1}
}

// recordsOf gives the records of a kind that the cell sees: those of all other
// cells and its own so far.
func recordsOf[R plan.Record](c *callArgs, kind plan.Kind) []R {
	f := c.session.current
	f.read[kind] = true
	_ = c.session.meter.step(8 * (len(f.job.Records[kind]) + len(f.records))) // the machine stops before its next step
	var list []R
	for _, r := range f.job.Records[kind] {
		list = append(list, r.(R))
	}
	for _, r := range f.records {
		if r.Kind() == kind {
			list = append(list, r.(R))
		}
	}
	return list
}

// fingerprints gives one fingerprint for each kind of record.
func fingerprints(records []plan.Record) map[plan.Kind]notebook.Digest {
	hashers := map[plan.Kind]*notebook.Hasher{}
	for _, r := range records {
		h := hashers[r.Kind()]
		if h == nil {
			h = notebook.NewHasher()
			hashers[r.Kind()] = h
		}
		writeRecord(h, r)
	}
	digests := map[plan.Kind]notebook.Digest{}
	for kind, h := range hashers {
		digests[kind] = h.Sum()
	}
	return digests
}

// sortedKeys lists a map's keys.
func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
