package lualib

import (
	"fmt"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
)

// session is the state of one run: a fresh Lua state in which the run's cells
// are executed one after the other, each with its own globals.
type session struct {
	engine   *Engine
	meter    *meter
	memory   *watchdog
	state    *lua.LState
	lent     map[notebook.Digest]*frame // cells whose functions others use, by key
	frozen   map[*lua.LTable]*frozen
	thawed   map[notebook.Digest]*lua.LTable // by content, so that equal values are one table whatever the history
	results  map[string]*lua.LTable          // metatables of results by function
	quantity *lua.LTable                     // metatable of quantities
	date     *lua.LTable
	stdlib   *lua.LTable // what every cell's globals fall back to
	threads  []*lua.LState
	depth    int           // nested protected calls
	callers  []*lua.LState // the threads that made them
	current  *frame
}

// frozen says whose a read-only table is.
type frozen struct {
	owner string         // the cell, in words; "" for a library result
	of    string         // the function whose result it is
	data  *notebook.Data // its content, when it came from another cell
}

// frame is one cell being executed.
type frame struct {
	job      *notebook.Job
	env      *lua.LTable
	name     string // a name the cell assigns, to tell its places from others'
	records  []plan.Record
	read     map[plan.Kind]bool
	printed  strings.Builder
	cautions []notebook.Fault
	rows     map[*lua.LTable]*rowOf
	fault    *raised
	atCell   plan.Place // line of the cell's own code that led to the present call
	ids      map[lua.LValue]int
	random   *random
	taken    int // bytes of the texts that the library took
	ended    bool
}

// rowOf says which row of which table a Lua table was made of.
type rowOf struct {
	heading string
	row     int
}

// raised is a fault that was thrown, with its place.
type raised struct {
	fault *diag.Fault
	place plan.Place
	text  string // what the cell itself sees of it
}

// maxPrinted bounds what a cell may print.
const maxPrinted = 64 << 10

// Close ends the session.
func (s *session) Close() {
	s.memory.end()
	s.drop()
}

// drop forgets the Lua state, after a fault that may have left it unsound.
func (s *session) drop() {
	if s.state != nil {
		s.state.Close()
	}
	s.state, s.threads = nil, nil
}

// Run executes one cell.
func (s *session) Run(job *notebook.Job) *notebook.Outcome {
	if s.state == nil && s.memory.exceeded() {
		s.lent, s.frozen, s.thawed, s.results = nil, nil, nil, nil
		s.memory.collect() // what the cell before kept must not stop this one
	}
	s.meter.begin()
	if s.meter.look(); s.meter.stopped == errAbandoned {
		return &notebook.Outcome{Failed: true, Abandoned: true}
	}
	f, fault := s.execute(job)
	out := s.outcome(f, fault != nil)
	if fault != nil {
		out.Failed = true
		told := *fault.fault
		told.Message = shortened(told.Message)
		out.Faults = append(out.Faults, notebook.Fault{Fault: told, Place: fault.place})
	}
	if out.Failed {
		out.Abandoned = s.meter.stopped == errAbandoned
		out.Passing = s.meter.passing()
		out.Values, out.Records, out.Kinds = nil, nil, nil
	}
	return out
}

// shortened bounds a message that a cell made.
func shortened(message string) string {
	const most = 1000
	if len(message) <= most {
		return message
	}
	return strings.ToValidUTF8(message[:most], "") + " …"
}

// execute runs a cell's code, its lenders first.
func (s *session) execute(job *notebook.Job) (f *frame, fault *raised) {
	f = &frame{job: job, read: map[plan.Kind]bool{}, rows: map[*lua.LTable]*rowOf{}, ids: map[lua.LValue]int{}}
	if len(job.Analysis.Assigns) > 0 {
		f.name = job.Analysis.Assigns[0].Name
	}
	defer func() {
		if r := recover(); r != nil {
			s.drop()
			fault = s.panicFault(f, r)
		}
	}()
	s.ensureState()
	for _, lender := range job.Lenders {
		if _, done := s.lent[lender.Key]; done {
			continue
		}
		lf, lf2 := s.execute(lender)
		if lf2 != nil {
			return f, lf2
		}
		s.freezeFrame(lf)
		s.lent[lender.Key] = lf
		s.meter.begin()
	}
	outer := s.current
	s.current = f
	defer func() { s.current = outer; f.ended = true }()
	s.bind(f)
	fn := s.state.NewFunctionFromProto(job.Analysis.Program.(*lua.FunctionProto))
	fn.Env = f.env
	return f, s.protect(f, fn)
}

func (s *session) panicFault(f *frame, r any) *raised {
	if err := s.meter.stopped; err != nil {
		return &raised{fault: diag.AsFault(err), place: plan.Place{Line: -1}}
	}
	message := fmt.Sprint(r)
	if strings.Contains(message, "registry overflow") || strings.Contains(message, "stack overflow") {
		return &raised{fault: deepFault(), place: plan.Place{Line: -1}}
	}
	return &raised{fault: &diag.Fault{Message: "the cell broke the language's machine: " + firstLine(message), Hint: "split the cell into simpler steps"}, place: plan.Place{Line: -1}}
}

func deepFault() *diag.Fault {
	return &diag.Fault{Message: "got calls nested too deep, want them to end", Hint: "does a function call itself without end? use a loop"}
}

func firstLine(s string) string {
	line, _, _ := strings.Cut(s, "\n")
	return line
}

// ensureState makes the Lua state of the session if there is none.
func (s *session) ensureState() {
	if s.state != nil {
		return
	}
	s.state = lua.NewState(lua.Options{SkipOpenLibs: true, CallStackSize: maxCalls, RegistrySize: 2048, RegistryMaxSize: 1 << 18, RegistryGrowStep: 2048})
	s.state.SetContext(s.meter)
	s.lent = map[notebook.Digest]*frame{}
	s.frozen = map[*lua.LTable]*frozen{}
	s.thawed = map[notebook.Digest]*lua.LTable{}
	s.results = map[string]*lua.LTable{}
	s.openQuantities()
	s.stdlib = s.openLibrary()
}

// maxCalls is how deep calls may nest.
const maxCalls = 230

// bind gives a cell its globals: the library, the values of other cells and
// their functions.
func (s *session) bind(f *frame) {
	L := s.state
	f.env = L.NewTable()
	f.env.Metatable = s.stdlib
	for _, in := range f.job.Inputs {
		f.env.RawSetString(in.Name, s.import_(in.Name, in.Value, f.job.Owners[in.Name]))
	}
	for _, b := range f.job.Functions {
		if lent := s.lent[b.Lender.Key]; lent != nil {
			f.env.RawSetString(b.Name, lent.env.RawGetString(b.Name))
		}
	}
	f.random = newRandom(seedOf(f.job))
}

// protect calls a function so that no fault leaves it.
func (s *session) protect(f *frame, fn *lua.LFunction) *raised {
	L := s.state
	L.SetTop(0)
	L.Push(s.quietly())
	L.Push(fn)
	err := L.PCall(1, lua.MultRet, nil)
	if err == nil {
		if f.job.Cell.Kind == notebook.Expression {
			f.env.RawSetString("", L.Get(1))
		}
		L.SetTop(0)
		return nil
	}
	fault := s.faultOf(err, f)
	if s.meter.stopped != nil {
		fault = &raised{fault: diag.AsFault(s.meter.stopped), place: fault.place}
		s.drop()
	}
	return fault
}

// quietly gives a function that calls its argument with the machine's tracebacks
// switched off: they are quadratic in depth and print addresses.
func (s *session) quietly() *lua.LFunction {
	return s.state.NewFunction(func(L *lua.LState) int {
		L.Panic = quietPanic
		L.Call(L.GetTop()-1, lua.MultRet)
		return L.GetTop()
	})
}

func quietPanic(L *lua.LState) {
	panic(&lua.ApiError{Type: lua.ApiErrorRun, Object: L.Get(-1), StackTrace: "-"})
}
