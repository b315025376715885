package watch

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
	"github.com/stretchr/testify/require"
)

// The watch follows the path to the new folder, and the end of the old
// folder does not take the new watch with it.
func TestExchangedFolderIsWatchedAnew(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	at, aside := filepath.Join(folder, "at"), filepath.Join(folder, "aside")
	path := filepath.Join(at, "notes", "room.md")
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
	l := inside(t, path, time.Hour)
	defer l.folders.close()
	require.NoError(t, os.Rename(at, aside))
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
	l.folders.arm(l.files)
	require.NoError(t, os.RemoveAll(aside))
	time.Sleep(absent)
	l.folders.pump.take()

	write(t, path, "new")
	require.Eventually(t, func() bool {
		names, _ := l.folders.pump.take()
		for name := range names {
			if filepath.Base(name) == "room.md" {
				return true
			}
		}
		return false
	}, arrives, 10*time.Millisecond, "no event from the new folder")
}

func TestFolderThatNoFileNeedsIsLeft(t *testing.T) {
	folder := t.TempDir()
	l := inside(t, filepath.Join(folder, "room.md"), time.Hour)
	defer l.folders.close()
	require.Len(t, l.folders.fs.WatchList(), 1)
	l.adopt(nil, time.Now())
	require.Empty(t, l.folders.fs.WatchList())
}

func TestIgnoredNamesCauseNoLook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "room.md")
	write(t, path, "a")
	l := inside(t, path, time.Hour)
	defer l.folders.close()
	l.opts.Ignore = func(name string) bool { return name == "room.xlsx" }
	now := time.Now()
	l.files[0].due = time.Time{}
	write(t, path, "longer")
	event := func(name string) {
		l.stir(map[string]fsnotify.Op{filepath.Join("anywhere", name): fsnotify.Write}, false, now)
	}
	event("room.xlsx")
	require.Zero(t, l.files[0].due)
	event("another.txt")
	require.NotZero(t, l.files[0].due, "any other name is worth a look")
	l.files[0].due = time.Time{}
	event("ROOM.md")
	require.NotZero(t, l.files[0].due, "the name in another case")
}
