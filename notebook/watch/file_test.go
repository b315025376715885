package watch

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestFileThatMovedIsNotYetSettled(t *testing.T) {
	path := filepath.Join(t.TempDir(), "room.md")
	write(t, path, "first half")
	now := time.Now()
	f := newFile(File{Path: path}, now, DefaultQuiet)
	write(t, path, "first half, second half") // with no sign of it
	later := now.Add(DefaultQuiet)
	f.settle(later, DefaultQuiet, DefaultPatience)
	require.False(t, f.settled)
	require.Equal(t, later.Add(DefaultQuiet), f.due)
	f.settle(f.due, DefaultQuiet, DefaultPatience)
	require.True(t, f.settled)
	require.Equal(t, "first half, second half", string(f.current.Content))
	require.Zero(t, f.due)
}

func TestDoubtfulFileWaitsForTheEndOfPatience(t *testing.T) {
	path := filepath.Join(t.TempDir(), "room.md")
	now := time.Now()
	f := newFile(File{Path: path}, now, DefaultQuiet)
	for f.due.Before(now.Add(DefaultPatience)) {
		f.settle(f.due, DefaultQuiet, DefaultPatience)
		require.False(t, f.settled)
		require.NotZero(t, f.due)
	}
	require.Equal(t, now.Add(DefaultPatience), f.due)
	f.settle(f.due, DefaultQuiet, DefaultPatience)
	require.True(t, f.current.Missing())
}

func TestReadingWithoutBeingWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), "room.md")
	write(t, path, "1234")
	r := read(path)
	require.True(t, r.steady)
	r.content = r.content[:2]
	require.False(t, r.whole(), "less than the file holds")
}

func TestWhatCannotBeRead(t *testing.T) {
	require.EqualError(t, read(os.DevNull).err, os.DevNull+": got a device or pipe, want a file")
	folder := t.TempDir()
	require.EqualError(t, read(folder).err, folder+": got a folder, want a file")
	require.ErrorIs(t, read(filepath.Join(folder, "none")).err, os.ErrNotExist)
}
