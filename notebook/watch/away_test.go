package watch

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestMissingFileIsToldOnceAndComesBack(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		opts.Patience = DefaultPatience
		replace(t, path, "here")
		w := start(t, opts, path)
		tells(t, w, "here")
		gone := time.Now()
		require.NoError(t, os.Remove(path))
		tellsMissing(t, w)
		require.GreaterOrEqual(t, time.Since(gone), DefaultPatience)
		quiet(t, w)
		replace(t, path, "here")
		tells(t, w, "here")
	})
}

func TestFileThatIsMissingAtTheStart(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "later", "room.md")
		opts.Patience = DefaultPatience
		w := start(t, opts, path)
		tellsMissing(t, w)
		quiet(t, w)
		require.NoError(t, os.Mkdir(filepath.Dir(path), 0o700))
		quiet(t, w)
		replace(t, path, "came")
		tells(t, w, "came")
	})
}

func TestEmptyFileWaitsForPatience(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "full")
		opts.Patience = 3 * absent
		w := start(t, opts, path)
		tells(t, w, "full")
		write(t, path, "")
		quiet(t, w)
		f := next(t, w).Files[0]
		require.NoError(t, f.Err)
		require.NotNil(t, f.Content)
		require.Empty(t, f.Content)
		write(t, path, "")
		quiet(t, w)
		replace(t, path, "full")
		tells(t, w, "full")
	})
}

// A folder in the file's place cannot be read by anyone, so it stands for
// every unreadable moment, even where the tests run with all rights.
func TestUnreadableMoments(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "readable")
		opts.Patience = 2 * absent
		w := start(t, opts, path)
		tells(t, w, "readable")
		require.NoError(t, os.Rename(path, path+".aside"))
		require.NoError(t, os.Mkdir(path, 0o700))
		quiet(t, w)
		f := next(t, w).Files[0]
		require.EqualError(t, f.Err, path+": got a folder, want a file")
		require.False(t, f.Missing())
		require.Nil(t, f.Content)
		quiet(t, w)
		require.NoError(t, os.Remove(path))
		require.NoError(t, os.Rename(path+".aside", path))
		tells(t, w, "readable")
		require.NoError(t, os.Rename(path, path+".aside"))
		require.NoError(t, os.Mkdir(path, 0o700))
		time.Sleep(60 * time.Millisecond)
		require.NoError(t, os.Remove(path))
		require.NoError(t, os.Rename(path+".aside", path))
		quiet(t, w)
	})
}

// Rights given back send only a change of rights, which is no event to act on.
func TestRightsGivenBack(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "secret")
		require.NoError(t, os.Chmod(path, 0))
		if _, err := os.ReadFile(path); err == nil {
			t.Skip("this user reads files without the right to")
		}
		w := start(t, opts, path)
		require.ErrorIs(t, next(t, w).Files[0].Err, os.ErrPermission)
		quiet(t, w)
		require.NoError(t, os.Chmod(path, 0o600))
		tells(t, w, "secret")
	})
}

func TestFolderRemovedAndMadeAgain(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		inner := filepath.Join(folder, "a", "notes")
		opts.Patience = DefaultPatience
		path := filepath.Join(inner, "room.md")
		require.NoError(t, os.MkdirAll(inner, 0o700))
		write(t, path, "first")
		w := start(t, opts, path)
		tells(t, w, "first")
		for range 2 {
			require.NoError(t, os.RemoveAll(filepath.Join(folder, "a")))
			tellsMissing(t, w)
			quiet(t, w)
			require.NoError(t, os.MkdirAll(inner, 0o700))
			replace(t, path, "again")
			tells(t, w, "again")
			replace(t, path, "and on")
			tells(t, w, "and on")
		}
	})
}

func TestFolderExchangedAtOnce(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		inner, other := filepath.Join(folder, "notes"), filepath.Join(folder, "other")
		path := filepath.Join(inner, "room.md")
		require.NoError(t, os.Mkdir(inner, 0o700))
		require.NoError(t, os.Mkdir(other, 0o700))
		write(t, path, "old folder")
		write(t, filepath.Join(other, "room.md"), "new folder")
		w := start(t, opts, path)
		tells(t, w, "old folder")
		require.NoError(t, os.Rename(inner, inner+".old"))
		require.NoError(t, os.Rename(other, inner))
		tells(t, w, "new folder")
		write(t, filepath.Join(inner+".old", "room.md"), "not ours now")
		quiet(t, w)
		write(t, path, "on in the new")
		tells(t, w, "on in the new")
	})
}

// Nothing tells that a folder further up was exchanged; the regular look
// finds it, and events of the new folder come afterwards.
func TestFolderAboveExchanged(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	old, other := filepath.Join(folder, "old", "notes"), filepath.Join(folder, "other", "notes")
	require.NoError(t, os.MkdirAll(old, 0o700))
	require.NoError(t, os.MkdirAll(other, 0o700))
	path := filepath.Join(old, "room.md")
	write(t, path, "old")
	write(t, filepath.Join(other, "room.md"), "other")
	w := start(t, Options{Patience: patient}, path)
	tells(t, w, "old")
	require.NoError(t, os.Rename(filepath.Join(folder, "old"), filepath.Join(folder, "aside")))
	require.NoError(t, os.Rename(filepath.Join(folder, "other"), filepath.Join(folder, "old")))
	tells(t, w, "other")
	write(t, path, "on")
	tells(t, w, "on")
}
