package watch

import (
	"fmt"
	"os"
)

// mark is what a look at a file gives without reading it: its identity, size
// and time of change. The zero mark stands for a file that is not there.
type mark struct {
	info os.FileInfo
}

// look takes the mark of the file that a path leads to, through links.
func look(path string) mark {
	info, err := os.Stat(path)
	if err != nil {
		return mark{}
	}
	// One system finds a file's identity only when it is asked for, by the
	// path; asking now keeps it the identity of this moment.
	os.SameFile(info, info)
	return mark{info}
}

// same says that nothing of a file is seen to have changed.
func (m mark) same(n mark) bool {
	if m.info == nil || n.info == nil {
		return m.info == nil && n.info == nil
	}
	return m.info.Size() == n.info.Size() && m.info.ModTime().Equal(n.info.ModTime()) && os.SameFile(m.info, n.info)
}

// reading is one attempt to read a file.
type reading struct {
	content []byte
	err     error
	mark    mark // after reading
	steady  bool // the file did not change around the reading
}

// read looks, reads, and looks again.
func read(path string) reading {
	before := look(path)
	if before.info != nil && !before.info.Mode().IsRegular() {
		// Opening a pipe would wait for its other end.
		return reading{err: fmt.Errorf("%s: got %s, want a file", path, kind(before.info)), mark: before, steady: true}
	}
	content, err := os.ReadFile(path)
	r := reading{content: content, err: err, mark: look(path)}
	if err != nil {
		r.content = nil
	}
	r.steady = before.same(r.mark) && r.whole()
	return r
}

// whole says that as much was read as the file holds. Some file systems give
// the size 0 for every file; there only the content can tell.
func (r reading) whole() bool {
	if r.err != nil || r.mark.info == nil {
		return true
	}
	size := r.mark.info.Size()
	return size == 0 || size == int64(len(r.content))
}

// kind names what stands in a file's place.
func kind(info os.FileInfo) string {
	if info.IsDir() {
		return "a folder"
	}
	return "a device or pipe"
}
