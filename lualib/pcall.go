package lualib

import (
	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook/diag"
)

// maxProtected is how deep protected calls may nest.
const maxProtected = 100

// pcall calls a function in a thread of its own: when a call fails, the machine
// cuts every open variable of its thread off from the functions that share it,
// those of the callers too. In a thread of its own only the failed call's are.
func (s *session) pcall(L *lua.LState) int {
	if L.GetTop() == 0 {
		return s.argument(L, 1, "pcall", "value expected")
	}
	args := make([]lua.LValue, L.GetTop())
	for i := range args {
		args[i] = L.Get(i + 1)
	}
	results, failure := s.protected(L, args[0], args[1:])
	if failure != nil {
		L.Push(lua.LFalse)
		L.Push(failure)
		return 2
	}
	L.Push(lua.LTrue)
	for _, r := range results {
		L.Push(r)
	}
	return len(results) + 1
}

// xpcall is pcall with a handler for the error, called once the failed call is
// over.
func (s *session) xpcall(L *lua.LState) int {
	if L.GetTop() < 2 {
		return s.argument(L, 2, "xpcall", "value expected")
	}
	results, failure := s.protected(L, L.Get(1), nil)
	if failure == nil {
		L.Push(lua.LTrue)
		for _, r := range results {
			L.Push(r)
		}
		return len(results) + 1
	}
	handled, second := s.protected(L, L.Get(2), []lua.LValue{failure})
	L.Push(lua.LFalse)
	if second != nil {
		L.Push(second)
		return 2
	}
	for _, h := range handled {
		L.Push(h)
	}
	return len(handled) + 1
}

// protected calls a function; failure is what it threw, as the cell sees it.
func (s *session) protected(L *lua.LState, fn lua.LValue, args []lua.LValue) (results []lua.LValue, failure lua.LValue) {
	if s.depth >= maxProtected {
		s.raise(L, &diag.Fault{Message: "got protected calls nested too deep, want them to end", Hint: "does a function call itself without end?"})
	}
	thread := s.thread(L)
	s.depth++
	s.callers = append(s.callers, L)
	defer func() { s.depth--; s.callers = s.callers[:s.depth] }()
	thread.SetTop(0)
	thread.Push(s.quietly())
	thread.Push(fn)
	for _, a := range args {
		thread.Push(a)
	}
	err := thread.PCall(len(args)+1, lua.MultRet, nil)
	if err == nil {
		for i := 1; i <= thread.GetTop(); i++ {
			results = append(results, thread.Get(i))
		}
		thread.SetTop(0)
		return results, nil
	}
	if s.meter.stopped != nil {
		s.raise(L, s.meter.stopped) // no cell outlives its bounds
	}
	return nil, s.seen(err)
}

// seen is what a cell sees of an error: without a place, since a cell does not
// know where on the page it stands.
func (s *session) seen(err error) lua.LValue {
	api, ok := err.(*lua.ApiError)
	if !ok || api.Object == nil {
		return lua.LString(plainMessage(err.Error()).Message)
	}
	text, ok := api.Object.(lua.LString)
	if !ok {
		return api.Object
	}
	if f := s.current.fault; f != nil && f.text == string(text) {
		return text
	}
	if m := machinePlace.FindString(string(text)); m != "" {
		text = text[len(m):]
	}
	return lua.LString(plainMessage(string(text)).Message)
}

// thread gives the thread for the present depth of protected calls.
func (s *session) thread(L *lua.LState) *lua.LState {
	for len(s.threads) <= s.depth {
		t, _ := s.state.NewThread()
		t.SetContext(s.meter)
		s.threads = append(s.threads, t)
	}
	return s.threads[s.depth]
}
