package watch

import "time"

// prepare makes the state to be told, if the caller does not have it. Files
// that change together are told together: a state waits for files in motion,
// but no longer than Patience.
func (l *loop) prepare(now time.Time) {
	fresh, moving := false, false
	for _, f := range l.files {
		if !f.settled {
			return
		}
		fresh = fresh || f.fresh()
		moving = moving || !f.due.IsZero()
	}
	if !fresh {
		l.pending, l.held = nil, time.Time{}
		return
	}
	if moving && l.wait(now) {
		return
	}
	l.held = time.Time{}
	l.pending = &Change{}
	for _, f := range l.files {
		l.pending.Files = append(l.pending.Files, f.current)
	}
}

// wait says whether the state may still wait for files in motion.
func (l *loop) wait(now time.Time) bool {
	if l.held.IsZero() {
		l.held = now
	}
	return now.Before(l.held.Add(l.opts.Patience))
}

// offer gives the channel and the state to send; the channel is nil, which
// never sends, when there is nothing to tell.
func (l *loop) offer() (chan<- Change, Change) {
	if l.pending == nil {
		return nil, Change{}
	}
	return l.changes, *l.pending
}

// received notes that the caller has the state that was offered.
func (l *loop) received() {
	for i, f := range l.files {
		f.taken, f.told = l.pending.Files[i], true
	}
	l.pending = nil
}
