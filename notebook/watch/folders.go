package watch

import (
	"os"
	"path/filepath"
	"sync"

	"github.com/fsnotify/fsnotify"
)

// manyLinks ends a circle of links (Linux follows 40; from memory).
const manyLinks = 40

// folders asks for events of the folders that hold the files. A file itself
// is never watched: an editor that saves by renaming leaves such a watch on
// the old file.
type folders struct {
	fs    *fsnotify.Watcher // nil: no events
	pump  *pump
	armed map[string]mark
	blind bool // some folder that matters sends no events

	stop    chan struct{}
	running sync.WaitGroup
}

// newFolders starts the flow of events if they are wanted and to be had.
func newFolders(events bool) *folders {
	d := &folders{pump: newPump(), armed: map[string]mark{}, stop: make(chan struct{})}
	if !events {
		return d
	}
	fs, err := fsnotify.NewWatcher()
	if err != nil {
		d.blind = true
		return d
	}
	d.fs = fs
	d.running.Go(func() { d.pump.run(fs.Events, fs.Errors, d.stop) })
	return d
}

// close ends the flow of events; the pump runs until fsnotify is done.
func (d *folders) close() {
	if d.fs != nil {
		d.fs.Close()
	}
	close(d.stop)
	d.running.Wait()
}

// arm watches the folders of the files, again where a folder is no longer the
// one that was watched, and no others.
func (d *folders) arm(files []*file) {
	if d.fs == nil {
		return
	}
	d.blind = false
	wanted := map[string]bool{}
	for _, f := range files {
		var on []string
		on, f.bases = way(f.abs)
		for _, folder := range on {
			wanted[folder] = true
		}
	}
	for folder := range d.armed {
		if !wanted[folder] {
			d.drop(folder)
		}
	}
	for folder := range wanted {
		d.watch(folder)
	}
}

// watch arms one folder unless it is armed already.
func (d *folders) watch(folder string) {
	now := look(folder)
	if was, ok := d.armed[folder]; ok {
		if now.info != nil && os.SameFile(was.info, now.info) {
			return
		}
		d.drop(folder)
	}
	// Looked at before it is armed: a folder exchanged in between is found
	// at the next look.
	if now.info == nil || !now.info.IsDir() || d.fs.Add(folder) != nil {
		d.blind = true
		return
	}
	d.armed[folder] = now
}

// drop ends the watch of a folder. fsnotify must forget a removed folder
// before it is added again, or the end of the old watch takes the new one
// with it; that it no longer knows the folder is no matter.
func (d *folders) drop(folder string) {
	_ = d.fs.Remove(folder)
	delete(d.armed, folder)
}

// lost notes events that end the watch of a folder and says whether one did.
func (d *folders) lost(names map[string]fsnotify.Op, all bool) bool {
	some := false
	for folder := range d.armed {
		if all || names[folder].Has(fsnotify.Remove) || names[folder].Has(fsnotify.Rename) {
			d.drop(folder)
			some = true
		}
	}
	return some
}

// way follows a path through links. It gives the folders whose entries decide
// what the path leads to, each once, and the names of those entries.
func way(path string) (folders, bases []string) {
	for range manyLinks {
		folder, base := filepath.Dir(path), filepath.Base(path)
		if real, err := filepath.EvalSymlinks(folder); err == nil {
			folder = real
		}
		folders, bases = append(folders, folder), append(bases, base)
		target, err := os.Readlink(filepath.Join(folder, base))
		if err != nil {
			break
		}
		if path = target; !filepath.IsAbs(path) {
			path = filepath.Join(folder, path)
		}
	}
	return folders, bases
}
