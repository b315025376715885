package lualib

import (
	"fmt"
	"math"
	"strings"

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
		if t, ok := s.thawed[v.Digest]; ok {
			return t
		}
		t := s.state.CreateTable(0, len(v.Pairs))
		for _, p := range v.Pairs {
			t.RawSet(s.thaw(p.Key, owner), s.thaw(p.Value, owner))
		}
		if v.Of != "" {
			t.Metatable = s.resultTable(v.Of)
		}
		s.thawed[v.Digest] = t
		s.frozen[t] = &frozen{owner: owner, of: v.Of, data: v}
		return t
	}
	return lua.LNil
}

// taken is a table that has been taken, and whether it holds functions.
type taken struct {
	data      *notebook.Data
	functions bool
}

// snapshot turns values of the Lua state into values that outlive it.
type snapshot struct {
	session   *session
	done      map[*lua.LTable]taken
	busy      map[*lua.LTable]bool
	functions bool
	path      []notebook.Value // keys that lead to what is taken now
	bytes     int              // of the texts taken
}

// The bounds of what a cell hands on. A table that is met in several places
// counts each time, as it does for whoever writes the value out.
const (
	maxEntries = 1_000_000
	maxDepth   = 200
)

// fault is a mistake in the value that is taken now; it says where that is.
func (n *snapshot) fault(message, hint string) error {
	var where strings.Builder
	for i, key := range n.path {
		if i > 0 {
			where.WriteByte('.')
		}
		if i > 4 {
			where.WriteString("…")
			break
		}
		text, isText := key.(string)
		if !isText {
			text = fmt.Sprint(key)
		}
		where.WriteString(clipped(text))
	}
	return &diag.Fault{Subject: where.String(), Message: message, Hint: hint}
}

// take gives the value that the path leads to.
func (n *snapshot) take(v lua.LValue) (notebook.Value, error) {
	switch v := v.(type) {
	case *lua.LNilType:
		return nil, nil
	case lua.LBool:
		return bool(v), nil
	case lua.LNumber:
		return float64(v), nil
	case lua.LString:
		return string(v), n.text(string(v))
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
		return n.table(v)
	}
	return nil, n.fault(fmt.Sprintf("got a %s, which cannot be handed to other cells", v.Type()), "")
}

// text bounds the texts of all values together.
func (n *snapshot) text(s string) error {
	if n.bytes += len(s); n.bytes > maxText {
		return n.fault(fmt.Sprintf("got texts of more than %d MB, want less", maxText>>20), "hand on what other cells need only")
	}
	return n.session.meter.step(len(s) / 16)
}

func (n *snapshot) table(t *lua.LTable) (notebook.Value, error) {
	if done, ok := n.done[t]; ok {
		n.functions = n.functions || done.functions
		return done.data, nil
	}
	if f := n.session.frozen[t]; f != nil && f.data != nil {
		return f.data, nil
	}
	if n.busy[t] {
		return nil, n.fault("got a table that contains itself, want one that ends", "keep the name instead of the table")
	}
	if len(n.path) > maxDepth {
		return nil, n.tooDeep()
	}
	n.busy[t] = true
	defer delete(n.busy, t)
	of, before := "", n.functions
	n.functions = false
	if f := n.session.frozen[t]; f != nil {
		of = f.of
	}
	if of == "" && t.Metatable != lua.LNil {
		n.functions = true
	}
	pairs, err := n.pairs(t)
	if err != nil {
		return nil, err
	}
	data := notebook.NewData(of, pairs)
	n.done[t] = taken{data, n.functions}
	n.functions = n.functions || before
	return data, nil
}

func (n *snapshot) tooDeep() error {
	return n.fault(fmt.Sprintf("got tables nested more than %d deep, want less", maxDepth), "use a list instead of tables in tables")
}

func (n *snapshot) pairs(t *lua.LTable) ([]notebook.Pair, error) {
	var pairs []notebook.Pair
	size := 0
	for key, value := t.Next(lua.LNil); key != lua.LNil; key, value = t.Next(key) {
		if err := n.session.meter.step(4); err != nil {
			return nil, err
		}
		k, err := n.keyOf(key)
		if err != nil {
			return nil, err
		}
		n.path = append(n.path, k)
		v, err := n.take(value)
		if err != nil {
			return nil, err
		}
		n.path = n.path[:len(n.path)-1]
		if v == nil {
			continue
		}
		size++
		if inner, ok := v.(*notebook.Data); ok {
			if size += inner.Size; len(n.path)+inner.Depth > maxDepth {
				return nil, n.tooDeep()
			}
		}
		if size > maxEntries {
			return nil, n.fault(fmt.Sprintf("got more than %d entries, want less", maxEntries), "hand on what other cells need only")
		}
		pairs = append(pairs, notebook.Pair{Key: k, Value: v})
	}
	return pairs, nil
}

func (n *snapshot) keyOf(key lua.LValue) (notebook.Value, error) {
	switch k := key.(type) {
	case lua.LString:
		return string(k), n.text(string(k))
	case lua.LNumber:
		return float64(k), nil
	case lua.LBool:
		return bool(k), nil
	}
	return nil, n.fault(fmt.Sprintf("got a %s as a key, want a text or a number", key.Type()), "use a name as the key")
}

// outcome gathers what a cell gave; a failed one gives no values.
func (s *session) outcome(f *frame, failed bool) *notebook.Outcome {
	out := &notebook.Outcome{Records: f.records, Printed: f.printed.String(), Faults: f.cautions, Kinds: map[plan.Kind]notebook.Digest{}}
	if f.env == nil || failed {
		return out
	}
	n := &snapshot{session: s, done: map[*lua.LTable]taken{}, busy: map[*lua.LTable]bool{}}
	names := f.job.Analysis.Assigns
	if f.job.Cell.Kind == notebook.Expression {
		names = []notebook.Ident{{}}
	}
	for _, name := range names {
		before := n.functions
		n.functions = false
		n.path = append(n.path[:0], name.Name)
		v, err := n.take(f.env.RawGetString(name.Name))
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
		if n.functions && f.job.Cell.Kind == notebook.Expression {
			out.Failed = true
			out.Faults = append(out.Faults, notebook.Fault{Fault: diag.Fault{Message: "got a function, want a value to show", Hint: "call it, as in name()"}, Place: plan.Place{Line: 0}})
			return out
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
	queue := []lua.LValue{f.env} // no recursion: what a cell builds may be nested without bound
	add := func(v lua.LValue) {
		switch v.(type) {
		case *lua.LTable, *lua.LFunction:
			if !seen[v] {
				seen[v] = true
				queue = append(queue, v)
			}
		}
	}
	seen[s.stdlib] = true
	for len(queue) > 0 {
		v := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		switch v := v.(type) {
		case *lua.LTable:
			if s.frozen[v] == nil && v != f.env {
				s.frozen[v] = &frozen{owner: f.job.Cell.Label()}
			}
			add(v.Metatable)
			for key, value := v.Next(lua.LNil); key != lua.LNil; key, value = v.Next(key) {
				add(key)
				add(value)
			}
		case *lua.LFunction:
			for _, u := range v.Upvalues {
				add(u.Value())
			}
		}
	}
}
