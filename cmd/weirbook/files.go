package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// maxNotebook bounds the size of a notebook that is read.
const maxNotebook = 64 << 20

// readNotebook reads a notebook file.
func readNotebook(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		hint := ""
		if errors.Is(err, fs.ErrNotExist) {
			hint = fmt.Sprintf("weirbook new %s writes a starter notebook", path)
		}
		return nil, unreadable(fmt.Errorf("cannot read the notebook %s: %w", path, plainError(err)), hint)
	}
	if info.IsDir() {
		return nil, unreadable(fmt.Errorf("cannot read the notebook %s: it is a folder", path), "give the file in it, as in "+filepath.Join(path, "room.md"))
	}
	if info.Size() > maxNotebook {
		return nil, unreadable(fmt.Errorf("cannot read the notebook %s: got %d MB, want at most %d MB", path, info.Size()>>20, maxNotebook>>20), "")
	}
	content, err := os.ReadFile(path)
	if err != nil {
		return nil, unreadable(fmt.Errorf("cannot read the notebook %s: %w", path, plainError(err)), "")
	}
	return content, nil
}

// plainError drops the path that a message names already.
func plainError(err error) error {
	var pathError *fs.PathError
	if errors.As(err, &pathError) {
		return pathError.Err
	}
	var linkError *os.LinkError
	if errors.As(err, &linkError) {
		return linkError.Err
	}
	return err
}

// writeWhole writes a file whole or not at all: into a temporary file beside it,
// onto the disk, and only then in the place of the old one.
func writeWhole(path string, content []byte) (err error) {
	// a link is followed, so that the file it names is replaced and not the link
	if target, linkErr := filepath.EvalSymlinks(path); linkErr == nil {
		path = target
	}
	if info, statErr := os.Stat(path); statErr == nil && info.IsDir() {
		return fmt.Errorf("cannot write %s: it is a folder", path)
	}
	if old, readErr := os.ReadFile(path); readErr == nil && string(old) == string(content) {
		return nil
	}
	temporary, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*.tmp")
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, plainError(err))
	}
	defer func() {
		if err != nil {
			temporary.Close()
			os.Remove(temporary.Name())
			err = fmt.Errorf("cannot write %s: %w", path, plainError(err))
		}
	}()
	if _, err = temporary.Write(content); err != nil {
		return err
	}
	mode := fs.FileMode(0o644)
	if info, statErr := os.Stat(path); statErr == nil {
		mode = info.Mode().Perm()
		if mode&0o200 == 0 {
			return errors.New("the file is read-only")
		}
	}
	if err = temporary.Chmod(mode); err != nil && !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	if err = temporary.Sync(); err != nil {
		return err
	}
	if err = temporary.Close(); err != nil {
		return err
	}
	if err = os.Rename(temporary.Name(), path); err != nil {
		return err
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// syncFolder makes the new name lasting where the system can.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		_ = d.Sync() // not every system can; the content is safe already
		d.Close()
	}
}

// sameFile reports whether two names lead to one file that is there.
func sameFile(a, b string) bool {
	infoA, errA := os.Stat(a)
	infoB, errB := os.Stat(b)
	return errA == nil && errB == nil && os.SameFile(infoA, infoB)
}

// workbookFor is the workbook that stands beside a notebook.
func workbookFor(notebook string) string {
	return strings.TrimSuffix(notebook, filepath.Ext(notebook)) + ".xlsx"
}
