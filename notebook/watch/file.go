package watch

import (
	"path/filepath"
	"strings"
	"time"
)

// coarse is the coarsest step of a file's time of change that is met (2 s, in
// the FAT file system; from memory). Within it a save may leave size and time
// as they were.
const coarse = 2 * time.Second

// file is a watched file on its way from one settled state to the next.
type file struct {
	path  string   // as the caller named it
	abs   string   // independent of the working folder
	bases []string // its name in each folder on the way through links

	mark    mark
	touched time.Time // the last sign of a change
	due     time.Time // when to read it; zero while at rest
	read    time.Time // when it was read last

	current, taken File // the settled state; the one the caller has
	settled, told  bool // whether current and taken are known yet
}

// newFile takes up a file, with what the caller knows of it.
func newFile(given File, now time.Time, quiet time.Duration) *file {
	f := &file{path: given.Path, abs: absolute(given.Path)}
	f.bases = []string{filepath.Base(f.abs)}
	if given.known() {
		f.current, f.taken, f.settled, f.told = given, given, true, true
	}
	f.touch(now, quiet)
	return f
}

// touch notes a sign of a change: the file will be read after a quiet time.
func (f *file) touch(now time.Time, quiet time.Duration) {
	f.mark = look(f.abs)
	f.touched, f.due = now, now.Add(quiet)
}

// check looks at a file that may have changed.
func (f *file) check(now time.Time, quiet time.Duration) {
	if !look(f.abs).same(f.mark) {
		f.touch(now, quiet)
	}
}

// settle reads a file that is due and takes what it holds for settled, unless
// it moved since the last sign of a change or may be in the middle of a save.
func (f *file) settle(now time.Time, quiet, patience time.Duration) {
	got := read(f.abs)
	if !got.steady || !got.mark.same(f.mark) {
		f.touch(now, quiet)
		return
	}
	f.read = now
	state := File{Path: f.path, Content: got.content, Err: got.err}
	if f.settled && state.same(f.current) {
		f.due = time.Time{}
		return
	}
	if end := f.touched.Add(patience); state.doubtful() && now.Before(end) {
		f.due = earlier(end, now.Add(quiet))
		return
	}
	f.current, f.settled, f.due = state, true, time.Time{}
}

// inspect reads a file at rest whose mark may hide a change.
func (f *file) inspect(now time.Time, quiet time.Duration) {
	got := read(f.abs)
	f.read = now
	if !f.current.same(File{Content: got.content, Err: got.err}) {
		f.touch(now, quiet)
	}
}

// uncertain says that an unchanged mark does not yet mean an unchanged file.
func (f *file) uncertain() bool {
	return f.unreadable() || f.read.Before(f.touched.Add(coarse))
}

// unreadable says that the file is there but cannot be read. Nothing tells
// when that ends: a change of rights alone is no event worth acting on.
func (f *file) unreadable() bool { return f.current.Err != nil && !f.current.Missing() }

// fresh says that the caller does not have the settled state.
func (f *file) fresh() bool { return !f.told || !f.current.same(f.taken) }

// goesBy says that an event's name may mean this file. Case is left aside
// because some file systems do so.
func (f *file) goesBy(base string) bool {
	for _, own := range f.bases {
		if strings.EqualFold(own, base) {
			return true
		}
	}
	return false
}

// earlier gives the first of two times.
func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}
