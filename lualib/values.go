package lualib

import (
	"fmt"
	"math"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// import_ gives a cell the value of a name of another cell.
func (s *session) import_(name string, v notebook.Value, owner string) lua.LValue {
	if q, ok := v.(quantity.Quantity); ok {
		return s.wrap(q.WithOrigin(quantity.Named(name)))
	}
	return s.thaw(v, owner)
}

// thaw turns a value into one of the Lua state. Tables are real tables, marked
// read-only; one value is thawed once a session.
func (s *session) thaw(v notebook.Value, owner string) lua.LValue {
	switch v := v.(type) {
	case bool:
		return lua.LBool(v)
	case float64:
		return lua.LNumber(v)
	case string:
		return lua.LString(v)
	case quantity.Quantity:
		return s.wrap(v)
	case quantity.Date:
		return s.wrapDate(v)
	case *notebook.Data:
		if t, ok := s.thawed[v]; ok {
			return t
		}
		t := s.state.CreateTable(0, len(v.Pairs))
		for _, p := range v.Pairs {
			t.RawSet(s.thaw(p.Key, owner), s.thaw(p.Value, owner))
		}
		if v.Of != "" {
			t.Metatable = s.resultTable(v.Of)
		}
		s.thawed[v] = t
		s.frozen[t] = &frozen{owner: owner, of: v.Of, data: v}
		return t
	}
	return lua.LNil
}

// snapshot turns values of the Lua state into values that outlive it.
type snapshot struct {
	session   *session
	done      map[*lua.LTable]notebook.Value
	busy      map[*lua.LTable]bool
	functions bool
	count     int
}

// maxEntries bounds the entries that a cell hands on.
const maxEntries = 1_000_000

// take gives the value of a name; path says where it is, for messages.
func (n *snapshot) take(v lua.LValue, path string) (notebook.Value, error) {
	switch v := v.(type) {
	case *lua.LNilType:
		return nil, nil
	case lua.LBool:
		return bool(v), nil
	case lua.LNumber:
		return float64(v), nil
	case lua.LString:
		return string(v), nil
	case *lua.LFunction:
		n.functions = true
		return notebook.Function{}, nil
	case *lua.LUserData:
		switch u := v.Value.(type) {
		case quantity.Quantity:
			return u, nil
		case quantity.Date:
			return u, nil
		}
	case *lua.LTable:
		return n.table(v, path)
	}
	return nil, &diag.Fault{Subject: path, Message: fmt.Sprintf("got a %s, which cannot be handed to other cells", v.Type())}
}

func (n *snapshot) table(t *lua.LTable, path string) (notebook.Value, error) {
	if done, ok := n.done[t]; ok {
		return done, nil
	}
	if f := n.session.frozen[t]; f != nil && f.data != nil {
		return f.data, nil
	}
	if n.busy[t] {
		return nil, &diag.Fault{Subject: path, Message: "got a table that contains itself, want one that ends", Hint: "keep the name instead of the table"}
	}
	n.busy[t] = true
	defer delete(n.busy, t)
	of := ""
	if f := n.session.frozen[t]; f != nil {
		of = f.of
	} else if t.Metatable != lua.LNil {
		n.functions = true
	}
	pairs, err := n.pairs(t, path)
	if err != nil {
		return nil, err
	}
	data := notebook.NewData(of, pairs)
	n.done[t] = data
	return data, nil
}

func (n *snapshot) pairs(t *lua.LTable, path string) ([]notebook.Pair, error) {
	var pairs []notebook.Pair
	for key, value := t.Next(lua.LNil); key != lua.LNil; key, value = t.Next(key) {
		if n.count++; n.count > maxEntries {
			return nil, &diag.Fault{Subject: path, Message: fmt.Sprintf("got more than %d entries, want less", maxEntries)}
		}
		if n.count%1000 == 0 {
			if err := n.session.meter.step(4000); err != nil {
				return nil, err
			}
		}
		k, err := keyOf(key, path)
		if err != nil {
			return nil, err
		}
		v, err := n.take(value, fmt.Sprintf("%s.%v", path, k))
		if err != nil {
			return nil, err
		}
		if v == nil {
			continue
		}
		pairs = append(pairs, notebook.Pair{Key: k, Value: v})
	}
	return pairs, nil
}

func keyOf(key lua.LValue, path string) (notebook.Value, error) {
	switch k := key.(type) {
	case lua.LString:
		return string(k), nil
	case lua.LNumber:
		return float64(k), nil
	case lua.LBool:
		return bool(k), nil
	}
	return nil, &diag.Fault{Subject: path, Message: fmt.Sprintf("got a %s as a key, want a text or a number", key.Type()), Hint: "use a name as the key"}
}

// outcome gathers what a cell gave.
func (s *session) outcome(f *frame) *notebook.Outcome {
	out := &notebook.Outcome{Records: f.records, Printed: f.printed.String(), Faults: f.cautions, Kinds: map[plan.Kind]notebook.Digest{}}
	if f.env == nil {
		return out
	}
	n := &snapshot{session: s, done: map[*lua.LTable]notebook.Value{}, busy: map[*lua.LTable]bool{}}
	names := f.job.Analysis.Assigns
	if f.job.Cell.Kind == notebook.Expression {
		names = []notebook.Ident{{}}
	}
	for _, name := range names {
		before := n.functions
		n.functions = false
		v, err := n.take(f.env.RawGetString(name.Name), name.Name)
		if err != nil {
			out.Failed = true
			out.Faults = append(out.Faults, notebook.Fault{Fault: *diag.AsFault(err), Place: plan.Place{Line: lineCount(f.job.Analysis.Code, name.Line)}})
			return out
		}
		if q, ok := v.(quantity.Quantity); ok && math.IsNaN(q.Value()) {
			out.Faults = append(out.Faults, notebook.Fault{Fault: diag.Fault{Subject: name.Name, Message: "the value is no number (nan)"}, Place: plan.Place{Line: lineCount(f.job.Analysis.Code, name.Line)}, Caution: true})
		}
		if n.functions {
			v = notebook.Function{}
			out.Functions = true
		}
		n.functions = before
		if v != nil || f.job.Cell.Kind == notebook.Expression {
			out.Values = append(out.Values, notebook.Named{Name: name.Name, Value: v})
		}
	}
	out.Kinds = fingerprints(f.records)
	return out
}

// freezeFrame marks all tables that a cell's functions can reach as read-only
// for other cells.
func (s *session) freezeFrame(f *frame) {
	seen := map[lua.LValue]bool{}
	var visit func(v lua.LValue)
	visit = func(v lua.LValue) {
		switch v := v.(type) {
		case *lua.LTable:
			if seen[v] || v == s.stdlib {
				return
			}
			seen[v] = true
			if s.frozen[v] == nil && v != f.env {
				s.frozen[v] = &frozen{owner: f.job.Cell.Label()}
			}
			visit(v.Metatable)
			for key, value := v.Next(lua.LNil); key != lua.LNil; key, value = v.Next(key) {
				visit(key)
				visit(value)
			}
		case *lua.LFunction:
			if seen[v] {
				return
			}
			seen[v] = true
			for _, u := range v.Upvalues {
				visit(u.Value())
			}
		}
	}
	visit(f.env)
}
