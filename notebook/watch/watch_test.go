package watch

import (
	"context"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
	"github.com/stretchr/testify/require"
)

func TestOptionsThatMakeNoSense(t *testing.T) {
	one := []File{{Path: "room.md"}}
	for _, c := range []struct {
		opts Options
		want string
	}{
		{Options{}, "watch: got no file, want at least one"},
		{Options{Files: []File{{}}}, "watch: got an empty path, want a file"},
		{Options{Files: one, Poll: -time.Second}, "watch: poll: got -1s, want 0 or more"},
		{Options{Files: one, Quiet: -1}, "watch: quiet: got -1ns, want 0 or more"},
		{Options{Files: one, Patience: -1}, "watch: patience: got -1ns, want 0 or more"},
	} {
		_, err := Start(context.Background(), c.opts)
		require.EqualError(t, err, c.want)
	}
}

func TestEndLeavesNothingRunning(t *testing.T) {
	for name, opts := range ways {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "room.md")
			write(t, path, "a")
			opts.Files = []File{{Path: path}}
			before := runtime.NumGoroutine()
			for i := range 10 {
				ctx, cancel := context.WithCancel(context.Background())
				w, err := Start(ctx, opts)
				require.NoError(t, err)
				if i%2 == 0 { // ends with a state received, and with one not received
					tells(t, w, "a")
				}
				write(t, path, "a")
				cancel()
				ended(t, w)
				w.Follow(opts.Files) // returns after the end
			}
			require.Eventually(t, func() bool { return runtime.NumGoroutine() <= before+1 }, arrives, 10*time.Millisecond,
				"goroutines are left") // one more: the asking itself
		})
	}
}

// inside makes a watch of one file whose inside the test can reach.
func inside(t *testing.T, path string, beat time.Duration) *loop {
	t.Helper()
	opts := Options{Files: []File{{Path: path}}, Patience: patient, beat: beat}
	require.NoError(t, opts.complete())
	return newLoop(opts)
}

// run starts it.
func run(t *testing.T, l *loop) *Watcher {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	w := l.watcher(ctx)
	go l.run(ctx)
	t.Cleanup(func() {
		cancel()
		ended(t, w)
	})
	return w
}

func TestOverflowLooksAtEverything(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	path := filepath.Join(folder, "room.md")
	write(t, path, "a")
	l := inside(t, path, time.Hour)
	w := run(t, l)
	tells(t, w, "a")
	for _, watched := range l.folders.fs.WatchList() {
		require.NoError(t, l.folders.fs.Remove(watched)) // from here on events are lost
	}
	write(t, path, "b")
	quiet(t, w)
	l.folders.fs.Errors <- fsnotify.ErrEventOverflow
	tells(t, w, "b")
	write(t, path, "c")
	tells(t, w, "c") // the folder is watched again
}

func TestMoreNamesThanAreRemembered(t *testing.T) {
	p := newPump()
	for i := range manyNames + 1 {
		p.note(fsnotify.Event{Name: strconv.Itoa(i), Op: fsnotify.Create})
	}
	names, all := p.take()
	require.Empty(t, names)
	require.True(t, all)
	names, all = p.take()
	require.Empty(t, names)
	require.False(t, all)
}

func TestPureChangeOfRightsIsNoEvent(t *testing.T) {
	p, events, stop, over := newPump(), make(chan fsnotify.Event), make(chan struct{}), make(chan struct{})
	go func() {
		defer close(over)
		p.run(events, nil, stop)
	}()
	events <- fsnotify.Event{Name: "rights", Op: fsnotify.Chmod}
	events <- fsnotify.Event{Name: "both", Op: fsnotify.Chmod | fsnotify.Write}
	close(events)
	<-p.wake
	close(stop)
	<-over
	names, all := p.take()
	require.Equal(t, map[string]fsnotify.Op{"both": fsnotify.Chmod | fsnotify.Write}, names)
	require.False(t, all)
}

// Where the system gives no events at all, the files are still looked at.
func TestWithoutEventsTheWatchGoesOn(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "room.md")
	write(t, path, "a")
	l := inside(t, path, time.Hour)
	l.folders.close()
	l.folders = newFolders(false)
	l.folders.blind = true
	w := run(t, l)
	tells(t, w, "a")
	replace(t, path, "b")
	tells(t, w, "b")
}

// A folder that sends no events, as on a network, without Poll.
func TestSilentFolderIsLookedAt(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "room.md")
	write(t, path, "a")
	l := inside(t, path, beat)
	w := run(t, l)
	tells(t, w, "a")
	for _, watched := range l.folders.fs.WatchList() {
		require.NoError(t, l.folders.fs.Remove(watched))
	}
	write(t, path, "b")
	tells(t, w, "b")
}

func TestRelativePathOutlivesAChangeOfFolder(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "room.md"), "a")
	t.Chdir(folder)
	w := start(t, ways["events"], "room.md")
	tells(t, w, "a")
	require.NoError(t, os.Chdir(t.TempDir()))
	replace(t, filepath.Join(folder, "room.md"), "b")
	change := next(t, w)
	require.Equal(t, "room.md", change.Files[0].Path)
	require.Equal(t, "b", string(change.Files[0].Content))
}
