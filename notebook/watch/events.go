package watch

import (
	"sync"

	"github.com/fsnotify/fsnotify"
)

// manyNames bounds what is remembered between two looks; beyond it every file
// is looked at, as after an overflow.
const manyNames = 256

// pump takes events as fast as they come. fsnotify can block on an event that
// nobody takes while the watcher waits for fsnotify, so the two are apart.
type pump struct {
	wake chan struct{} // holds one sign that there is something to take

	mu    sync.Mutex
	names map[string]fsnotify.Op
	all   bool // names were lost: look at every file
}

func newPump() *pump { return &pump{wake: make(chan struct{}, 1)} }

// run takes events until it is told to stop.
func (p *pump) run(events <-chan fsnotify.Event, errs <-chan error, stop <-chan struct{}) {
	for {
		select {
		case <-stop:
			return
		case e, ok := <-events:
			if !ok {
				events = nil
			} else if e.Op != fsnotify.Chmod {
				p.note(e)
			}
		case _, ok := <-errs:
			if !ok {
				errs = nil
			} else {
				// An overflow, or anything else that may have cost events.
				p.lose()
			}
		}
	}
}

// note remembers one event.
func (p *pump) note(e fsnotify.Event) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.names == nil {
		p.names = map[string]fsnotify.Op{}
	}
	p.names[e.Name] |= e.Op
	if len(p.names) > manyNames {
		p.names, p.all = nil, true
	}
	p.signal()
}

// lose remembers that events were lost.
func (p *pump) lose() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.all = true
	p.signal()
}

func (p *pump) signal() {
	select {
	case p.wake <- struct{}{}:
	default:
	}
}

// take gives what was remembered since the last time.
func (p *pump) take() (names map[string]fsnotify.Op, all bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	names, all = p.names, p.all
	p.names, p.all = nil, false
	return names, all
}
