package watch

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// linked makes  here/room.md -> ../via/step.md -> real folder's notes.md.
func linked(t *testing.T, folder string) (path, via, target string) {
	t.Helper()
	for _, name := range []string{"here", "via", "real"} {
		require.NoError(t, os.Mkdir(filepath.Join(folder, name), 0o700))
	}
	path = filepath.Join(folder, "here", "room.md")
	via = filepath.Join(folder, "via", "step.md")
	target = filepath.Join(folder, "real", "notes.md")
	write(t, target, "through two links")
	link(t, target, via)
	link(t, filepath.Join("..", "via", "step.md"), path)
	return path, via, target
}

func TestLinkedNotebook(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, via, target := linked(t, folder)
		w := start(t, opts, path)
		tells(t, w, "through two links")
		write(t, target, "target in place")
		tells(t, w, "target in place")
		replace(t, target, "target renamed over")
		tells(t, w, "target renamed over")

		// The step in the middle leads to another folder that was not watched.
		far := filepath.Join(folder, "far")
		require.NoError(t, os.Mkdir(far, 0o700))
		write(t, filepath.Join(far, "x.md"), "far away")
		link(t, filepath.Join(far, "x.md"), via+".new")
		require.NoError(t, os.Rename(via+".new", via))
		tells(t, w, "far away")
		write(t, filepath.Join(far, "x.md"), "far away, saved")
		tells(t, w, "far away, saved")
		write(t, target, "no longer ours")
		quiet(t, w)

		// An editor that renames over the link makes it a plain file.
		replace(t, path, "a plain file")
		tells(t, w, "a plain file")
		write(t, path, "a plain file, saved")
		tells(t, w, "a plain file, saved")
	})
}

func TestLinkThatLeadsNowhere(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, _, target := linked(t, folder)
		require.NoError(t, os.RemoveAll(filepath.Dir(target)))
		opts.Patience = DefaultPatience
		w := start(t, opts, path)
		tellsMissing(t, w)
		require.NoError(t, os.Mkdir(filepath.Dir(target), 0o700))
		replace(t, target, "came")
		tells(t, w, "came")
	})
}

func TestLinksInACircle(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		link(t, "other.md", path)
		link(t, "room.md", filepath.Join(folder, "other.md"))
		w := start(t, opts, path)
		require.Error(t, next(t, w).Files[0].Err)
		quiet(t, w)
		replace(t, path, "straight")
		tells(t, w, "straight")
	})
}

func TestLinkedFolderLedElsewhere(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	for _, name := range []string{"one", "two"} {
		require.NoError(t, os.Mkdir(filepath.Join(folder, name), 0o700))
		write(t, filepath.Join(folder, name, "room.md"), name)
	}
	current := filepath.Join(folder, "current")
	link(t, "one", current)
	path := filepath.Join(current, "room.md")
	w := start(t, Options{Patience: patient}, path)
	tells(t, w, "one")
	link(t, "two", current+".new")
	require.NoError(t, os.Rename(current+".new", current))
	tells(t, w, "two")
	write(t, filepath.Join(folder, "two", "room.md"), "two, saved")
	tells(t, w, "two, saved")
}
