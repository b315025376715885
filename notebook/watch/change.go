package watch

import (
	"bytes"
	"errors"
	"io/fs"
)

// File is one watched file and what is known of it.
type File struct {
	// Path is the file as the caller named it.
	Path string
	// Content is what the file holds; it is shared and must not be changed.
	// Nil means that there is none, or in a list of files that it is not known;
	// an empty file has an empty content that is not nil.
	Content []byte
	// Err says why there is no content: fs.ErrNotExist when the file stayed
	// away longer than Patience, otherwise why it could not be read. It is
	// told once and the watch goes on.
	Err error
}

// Missing says that the file has stayed away longer than Patience.
func (f File) Missing() bool { return errors.Is(f.Err, fs.ErrNotExist) }

// known says that the state of the file is given, not only its path.
func (f File) known() bool { return f.Content != nil || f.Err != nil }

// doubtful says that the state may be the middle of a save.
func (f File) doubtful() bool { return len(f.Content) == 0 }

// same says that two states of a file mean the same to a reader.
func (f File) same(g File) bool {
	if f.Err == nil || g.Err == nil {
		return f.Err == nil && g.Err == nil && bytes.Equal(f.Content, g.Content)
	}
	return f.Missing() && g.Missing() || f.Err.Error() == g.Err.Error()
}

// Change is one settled state of all watched files, in the order in which they
// were listed. It tells everything, so that one that was replaced by a newer
// one before it was received is no loss.
type Change struct {
	Files []File
}

// File gives the state of the file that was listed under this path.
func (c Change) File(path string) (File, bool) {
	for _, f := range c.Files {
		if f.Path == path {
			return f, true
		}
	}
	return File{}, false
}
