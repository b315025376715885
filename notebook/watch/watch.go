// Package watch tells when the files of a notebook have settled into a new
// content. It imports nothing of the project.
//
//	w, err := watch.Start(ctx, watch.Options{Files: []watch.File{{Path: "room.md"}}})
//	…
//	for change := range w.Changes() {
//		// abandon the run under way, start one with change.Files[0].Content
//	}
//
// Events only say that a look is worth while; what a file holds is found by
// looking. A lost, late or doubled event therefore costs time, never truth.
package watch

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"time"
)

// Defaults for the zero fields of Options.
const (
	// DefaultQuiet is longer than the pauses inside one save of an editor:
	// with it 0 of 25 in-place saves were read torn, without it 21 of 25.
	DefaultQuiet = 25 * time.Millisecond
	// DefaultPatience is longer than a file stays empty or missing while a
	// program truncates and writes it, or deletes and makes it again.
	DefaultPatience = 250 * time.Millisecond
)

// Options say what to watch and how.
type Options struct {
	// Files are the files whose content matters, the notebook first. A
	// content (or an error) given here is taken as known to the caller: it is
	// not told, only what differs from it. Without one the first change tells
	// the content at the start.
	Files []File
	// Ignore says which other names in the watched folders are not worth a
	// look: our own outputs, temporary files. It gets the name without its
	// folder. A listed file is never ignored. It may be nil.
	Ignore func(name string) bool
	// Poll above 0 looks at the files this often and asks for no events.
	// Network, FUSE and some container folders send none; without Poll a
	// change there is still found, within about a second.
	Poll time.Duration
	// Quiet is how long a file must stand still before it is read; 0 means
	// DefaultQuiet. A file that never stands still is never told.
	Quiet time.Duration
	// Patience is how long an empty, missing or unreadable file is taken for
	// a save in progress; 0 means DefaultPatience.
	Patience time.Duration

	beat time.Duration // how often to look although events come; for tests
}

// Watcher tells of changes until its context ends.
type Watcher struct {
	changes chan Change
	follow  chan []File
	over    <-chan struct{} // the context has ended
	done    chan struct{}
}

// Start begins to watch. It fails only for options that make no sense: files
// and folders that are missing now may come later, and where the system gives
// no events the files are looked at several times a second instead.
func Start(ctx context.Context, opts Options) (*Watcher, error) {
	if err := opts.complete(); err != nil {
		return nil, err
	}
	l := newLoop(opts)
	go l.run(ctx)
	return l.watcher(ctx), nil
}

// Changes gives the newest settled state, at most one: a state that was not
// received before a newer one settled is replaced by it, and dropped when the
// files return to what was received last. So a receive during a run means
// that the run is out of date. The channel is closed as soon as the context
// ends.
func (w *Watcher) Changes() <-chan Change { return w.changes }

// Done is closed when the context has ended and nothing of the watcher runs
// any more. That may come later than the end of Changes: a busy system was
// seen to take more than 5 s to take its events back.
func (w *Watcher) Done() <-chan struct{} { return w.done }

// Follow replaces the list of watched files, for instance after a run that
// read other tables. For a file that is new in the list a given content is
// taken as known, as in Options; a file that stays keeps its state.
func (w *Watcher) Follow(files []File) {
	own := append([]File(nil), files...)
	select {
	case w.follow <- own:
	case <-w.over:
	}
}

// complete checks the options and fills in the defaults.
func (o *Options) complete() error {
	if len(o.Files) == 0 {
		return errors.New("watch: got no file, want at least one")
	}
	for _, f := range o.Files {
		if f.Path == "" {
			return errors.New("watch: got an empty path, want a file")
		}
	}
	for _, d := range []struct {
		name  string
		value *time.Duration
		usual time.Duration
	}{
		{"poll", &o.Poll, 0}, {"quiet", &o.Quiet, DefaultQuiet},
		{"patience", &o.Patience, DefaultPatience}, {"beat", &o.beat, beat},
	} {
		if *d.value < 0 {
			return fmt.Errorf("watch: %s: got %v, want 0 or more", d.name, *d.value)
		}
		if *d.value == 0 {
			*d.value = d.usual
		}
	}
	return nil
}

// absolute keeps a path meaningful if the working folder changes later.
func absolute(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path
}
