package lualib

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"runtime/metrics"
	"sync/atomic"
	"time"

	"weirbook/lualib/lua51"
	"weirbook/notebook"
)

// meter bounds a cell: it is the context that the language's machine asks before
// every instruction, and the counter that native work reports to. It looks at
// the clock only every few thousand steps.
type meter struct {
	parent    context.Context
	limits    notebook.Limits
	runEnds   time.Time
	cellEnds  time.Time
	untilLook int
	stopped   error
	closed    chan struct{}
	memory    *watchdog
}

// lookEvery is how many steps pass between two looks at the clock, a few
// hundredths of a millisecond.
const lookEvery = 2048

var errAbandoned = errors.New("the run was given up for a newer one")

// limitError is a bound that a cell ran into.
type limitError struct {
	message, hint string
	passing       bool // it may be otherwise in the next run
}

func (e *limitError) Error() string  { return e.message }
func (e *limitError) Advice() string { return e.hint }

func newMeter(parent context.Context, limits notebook.Limits, memory *watchdog) *meter {
	return &meter{parent: parent, limits: limits, runEnds: time.Now().Add(limits.RunTime), closed: closedChannel(), memory: memory, untilLook: lookEvery}
}

func closedChannel() chan struct{} {
	c := make(chan struct{})
	close(c)
	return c
}

// passing reports whether the cell was stopped by what other cells took: time of
// the run or memory of the process.
func (m *meter) passing() bool {
	limit, ok := m.stopped.(*limitError)
	return ok && limit.passing
}

// begin starts the bounds of one cell.
func (m *meter) begin() {
	m.cellEnds = time.Now().Add(m.limits.CellTime)
	m.stopped = nil
	m.untilLook = 1
}

// Done is asked before every instruction. It gives nil, on which nothing can be
// received, until the cell must stop.
func (m *meter) Done() <-chan struct{} {
	m.untilLook--
	if m.untilLook > 0 {
		return nil
	}
	m.look()
	if m.stopped != nil {
		return m.closed
	}
	return nil
}

func (m *meter) look() {
	m.untilLook = lookEvery
	if m.stopped != nil {
		m.untilLook = 0
		return
	}
	if err := m.parent.Err(); err != nil {
		m.stopped = errAbandoned
	} else if m.memory.exceeded() {
		m.stopped = &limitError{message: fmt.Sprintf("got more than %d MB of memory in use, want less", m.limits.Memory>>20), hint: "keep fewer or shorter lists and texts, or raise --memory-limit", passing: true}
	} else if now := time.Now(); now.After(m.cellEnds) {
		m.stopped = &limitError{message: fmt.Sprintf("got a cell that runs longer than %s, want it to end", m.limits.CellTime), hint: "does a loop never end? else raise --time-limit"}
	} else if now.After(m.runEnds) {
		m.stopped = &limitError{message: fmt.Sprintf("got a run longer than %s, want it to end", m.limits.RunTime), hint: "does a loop never end? else raise --time-limit", passing: true}
	}
	if m.stopped != nil {
		m.untilLook = 0
	}
}

// step counts native work; the result tells whether to stop.
func (m *meter) step(n int) error {
	m.untilLook -= n / 4
	if m.untilLook <= 0 {
		m.look()
	}
	return m.stopped
}

// maxText bounds one text that a native function makes.
const maxText = 64 << 20

// room is asked before bytes are allocated.
func (m *meter) room(bytes int) error {
	if bytes < 0 || bytes > maxText {
		return &limitError{message: fmt.Sprintf("got a text of %d MB, want at most %d MB", bytes>>20, maxText>>20), hint: "keep texts short; a notebook shows them to people"}
	}
	return m.step(bytes / 16)
}

// text51 gives the meter in the form that the text functions take.
func (m *meter) text51() *lua51.Meter {
	return &lua51.Meter{Step: m.step, Room: m.room}
}

// Err gives the reason once the cell must stop.
func (m *meter) Err() error { return m.stopped }

// Deadline gives none: the meter keeps its own.
func (m *meter) Deadline() (time.Time, bool) { return time.Time{}, false }

// Value gives nil.
func (m *meter) Value(any) any { return nil }

// watchdog looks at the memory of the whole process every few milliseconds.
type watchdog struct {
	limit uint64
	over  atomic.Bool
	stop  chan struct{}
}

const watchEvery = 2 * time.Millisecond

func newWatchdog(limit uint64) *watchdog {
	w := &watchdog{limit: limit, stop: make(chan struct{})}
	go w.watch()
	return w
}

func (w *watchdog) watch() {
	tick := time.NewTicker(watchEvery)
	defer tick.Stop()
	for {
		select {
		case <-w.stop:
			return
		case <-tick.C:
			w.look()
		}
	}
}

func (w *watchdog) look() {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(sample)
	w.over.Store(sample[0].Value.Uint64() > w.limit)
}

// collect frees what is no longer used and looks again.
func (w *watchdog) collect() {
	runtime.GC()
	w.look()
}

func (w *watchdog) exceeded() bool { return w.over.Load() }

func (w *watchdog) end() { close(w.stop) }
