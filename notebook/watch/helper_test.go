package watch

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

const (
	arrives = 5 * time.Second        // a change that must come
	absent  = 400 * time.Millisecond // a change that must not
	release = time.Minute            // the system taking its events back
	// patient is more than the default where no test is about it: a writer
	// held up by a busy machine must not look like a file that stays away.
	patient = 2 * time.Second
)

// TestMain lets the tests wait side by side; they do little else.
func TestMain(m *testing.M) {
	flag.Parse()
	if err := flag.Set("test.parallel", "8"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// ways are the two ways to find a change. With events the regular look is put
// off for an hour, so that only an event can tell.
var ways = map[string]Options{
	"events": {beat: time.Hour, Patience: patient},
	"poll":   {Poll: 10 * time.Millisecond, Patience: patient},
}

// bothWays runs a test in a folder of its own, with events and with polling.
func bothWays(t *testing.T, test func(t *testing.T, folder string, opts Options)) {
	t.Helper()
	t.Parallel()
	for name, opts := range ways {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			test(t, t.TempDir(), opts)
		})
	}
}

// start watches the paths and ends with the test, all of it.
func start(t *testing.T, opts Options, paths ...string) *Watcher {
	t.Helper()
	for _, path := range paths {
		opts.Files = append(opts.Files, File{Path: path})
	}
	ctx, cancel := context.WithCancel(context.Background())
	w, err := Start(ctx, opts)
	require.NoError(t, err)
	t.Cleanup(func() {
		cancel()
		ended(t, w)
	})
	return w
}

// ended waits for the end of a watcher: its changes end at once, the rest when
// the system lets go.
func ended(t *testing.T, w *Watcher) {
	t.Helper()
	deadline := time.After(arrives)
	for open := true; open; {
		select {
		case _, open = <-w.Changes():
		case <-deadline:
			require.FailNow(t, "the changes did not end")
		}
	}
	select {
	case <-w.Done():
	case <-time.After(release):
		require.FailNow(t, "the watcher did not end")
	}
}

// next gives the next change, which must come.
func next(t *testing.T, w *Watcher) Change {
	t.Helper()
	select {
	case change, open := <-w.Changes():
		require.True(t, open, "the watcher ended")
		return change
	case <-time.After(arrives):
		require.FailNow(t, "no change came")
		return Change{}
	}
}

// tells requires that the next change tells these contents of all files.
func tells(t *testing.T, w *Watcher, contents ...string) {
	t.Helper()
	got := []string{}
	for _, f := range next(t, w).Files {
		require.NoError(t, f.Err)
		got = append(got, string(f.Content))
	}
	require.Equal(t, contents, got)
}

// tellsMissing requires that the next change tells that the file is missing.
func tellsMissing(t *testing.T, w *Watcher) {
	t.Helper()
	f := next(t, w).Files[0]
	require.True(t, f.Missing(), "got %q and error %v", f.Content, f.Err)
	require.Nil(t, f.Content)
}

// quiet requires that nothing is told.
func quiet(t *testing.T, w *Watcher) {
	t.Helper()
	select {
	case change := <-w.Changes():
		require.FailNow(t, "an unwanted change", "%q, error %v", change.Files[0].Content, change.Files[0].Err)
	case <-time.After(absent):
	}
}

// inPlace saves a file as one truncation and one write.
func inPlace(path, content string) error { return os.WriteFile(path, []byte(content), 0o600) }

// renamedOver saves a file beside the old one and renames it over it.
func renamedOver(path, content string) error {
	beside := filepath.Join(filepath.Dir(path), ".saving")
	if err := inPlace(beside, content); err != nil {
		return err
	}
	return os.Rename(beside, path)
}

// write saves in place.
func write(t *testing.T, path, content string) {
	t.Helper()
	require.NoError(t, inPlace(path, content))
}

// replace saves by renaming over.
func replace(t *testing.T, path, content string) {
	t.Helper()
	require.NoError(t, renamedOver(path, content))
}

// link makes a symbolic link, or says why the test cannot run.
func link(t *testing.T, target, path string) {
	t.Helper()
	if err := os.Symlink(target, path); err != nil {
		t.Skipf("links cannot be made here: %v", err)
	}
}
