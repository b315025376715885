package watch

import (
	"context"
	"path/filepath"
	"time"

	"github.com/fsnotify/fsnotify"
)

const (
	// beat is how often folders and files are looked at although events come.
	// It finds what sends none: a folder above that was renamed, a network
	// folder. A look costs some microseconds a file.
	beat = time.Second
	// retry is how often they are looked at where no events can come: a folder
	// that is away or cannot be watched, a file that cannot be read.
	retry = 100 * time.Millisecond
)

// loop is the one goroutine that owns the state of the files.
type loop struct {
	opts    Options
	files   []*file
	folders *folders
	looked  time.Time // the last look at everything
	held    time.Time // since when a state waits for files in motion

	pending *Change // settled and not yet received
	changes chan Change
	follow  chan []File
	done    chan struct{}
}

func newLoop(opts Options) *loop {
	l := &loop{opts: opts, changes: make(chan Change), follow: make(chan []File), done: make(chan struct{})}
	l.folders = newFolders(opts.Poll == 0)
	l.adopt(opts.Files, time.Now())
	return l
}

// watcher gives what the caller holds of the loop.
func (l *loop) watcher(ctx context.Context) *Watcher {
	return &Watcher{changes: l.changes, follow: l.follow, over: ctx.Done(), done: l.done}
}

// run looks, reads and tells until the context ends.
func (l *loop) run(ctx context.Context) {
	defer close(l.done)
	defer l.folders.close()
	defer close(l.changes) // first: nobody need wait for the system
	timer := time.NewTimer(0)
	defer timer.Stop()
	for {
		now := time.Now()
		l.settle(now)
		l.prepare(now)
		timer.Reset(time.Until(l.next()))
		out, change := l.offer()
		select {
		case <-ctx.Done():
			return
		case out <- change:
			l.received()
		case files := <-l.follow:
			l.adopt(files, time.Now())
		case <-l.folders.pump.wake:
			names, all := l.folders.pump.take()
			l.stir(names, all, time.Now())
		case <-timer.C:
			l.tick(time.Now())
		}
	}
}

// adopt takes a new list of files; those that stay keep their state.
func (l *loop) adopt(list []File, now time.Time) {
	before := map[string]*file{}
	for _, f := range l.files {
		before[f.path] = f
	}
	l.files = nil
	listed := map[string]bool{}
	for _, given := range list {
		if listed[given.Path] {
			continue
		}
		listed[given.Path] = true
		f := before[given.Path]
		if f == nil {
			f = newFile(given, now, l.opts.Quiet)
		}
		l.files = append(l.files, f)
	}
	l.pending, l.looked = nil, now
	l.folders.arm(l.files)
	for _, f := range l.files {
		f.check(now, l.opts.Quiet)
	}
}

// stir acts on events: a named file is taken as changed, the others are
// looked at unless every name was to be ignored.
func (l *loop) stir(names map[string]fsnotify.Op, all bool, now time.Time) {
	lost := l.folders.lost(names, all)
	touched := map[*file]bool{}
	other := false
	for name := range names {
		base, ours := filepath.Base(name), false
		for _, f := range l.files {
			if f.goesBy(base) {
				touched[f], ours = true, true
			}
		}
		other = other || !ours && (l.opts.Ignore == nil || !l.opts.Ignore(base))
	}
	if !lost && !all && !other && len(touched) == 0 {
		return
	}
	l.folders.arm(l.files)
	for _, f := range l.files {
		if all || touched[f] {
			f.touch(now, l.opts.Quiet)
		} else {
			f.check(now, l.opts.Quiet)
		}
	}
}

// tick looks at everything when it is time.
func (l *loop) tick(now time.Time) {
	if now.Before(l.looked.Add(l.interval())) {
		return
	}
	l.looked = now
	l.folders.arm(l.files)
	for _, f := range l.files {
		f.check(now, l.opts.Quiet)
		if f.due.IsZero() && f.uncertain() {
			f.inspect(now, l.opts.Quiet)
		}
	}
}

// interval is the time between two looks at everything.
func (l *loop) interval() time.Duration {
	if l.opts.Poll > 0 {
		return l.opts.Poll
	}
	slow := !l.folders.blind
	for _, f := range l.files {
		slow = slow && !f.unreadable()
	}
	if slow {
		return l.opts.beat
	}
	return retry
}

// next is the time of the next thing to do.
func (l *loop) next() time.Time {
	next := l.looked.Add(l.interval())
	for _, f := range l.files {
		if !f.due.IsZero() {
			next = earlier(next, f.due)
		}
	}
	return next
}

// settle reads the files whose time has come.
func (l *loop) settle(now time.Time) {
	for _, f := range l.files {
		if !f.due.IsZero() && !now.Before(f.due) {
			f.settle(now, l.opts.Quiet, l.opts.Patience)
		}
	}
}
