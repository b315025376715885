package watch

import (
	"io/fs"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestNewestStateWins(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "one")
		w := start(t, opts, path)
		tells(t, w, "one")
		for _, content := range []string{"two", "three", "four"} {
			write(t, path, content)
			time.Sleep(absent)
		}
		tells(t, w, "four")
		quiet(t, w)
		write(t, path, "five")
		time.Sleep(absent)
		write(t, path, "four")
		time.Sleep(absent)
		quiet(t, w) // back to what was received last
	})
}

func TestKnownContentIsNotTold(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, table := filepath.Join(folder, "room.md"), filepath.Join(folder, "fish.csv")
		write(t, path, "run already")
		opts.Files = []File{{Path: path, Content: []byte("run already")}, {Path: table, Err: fs.ErrNotExist}}
		w := start(t, opts)
		quiet(t, w)
		write(t, path, "new")
		change := next(t, w)
		require.Equal(t, "new", string(change.Files[0].Content))
		require.True(t, change.Files[1].Missing())
	})
}

func TestSaveBeforeTheWatchIsTold(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "saved during the first run")
		opts.Files = []File{{Path: path, Content: []byte("what the first run read")}}
		tells(t, start(t, opts), "saved during the first run")
	})
}

func TestFilesAreToldTogether(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, table := filepath.Join(folder, "room.md"), filepath.Join(folder, "fish.csv")
		write(t, path, "a")
		write(t, table, "1")
		opts.Quiet = time.Second
		w := start(t, opts, path, table)
		tells(t, w, "a", "1")
		write(t, path, "b")
		time.Sleep(opts.Quiet / 4) // the notebook rests before the table does
		write(t, table, "2")
		tells(t, w, "b", "2")
		write(t, table, "3")
		tells(t, w, "b", "3")
		quiet(t, w)
	})
}

func TestFileThatNeverRestsHoldsUpNoOther(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, busy := filepath.Join(folder, "room.md"), filepath.Join(folder, "log.csv")
		write(t, path, "a")
		write(t, busy, "0")
		opts.Quiet = 100 * time.Millisecond
		w := start(t, opts, path, busy)
		tells(t, w, "a", "0")
		stop, stopped := make(chan struct{}), make(chan struct{})
		go func() {
			defer close(stopped)
			for text := "0"; ; text += "0" {
				select {
				case <-stop:
					return
				case <-time.After(5 * time.Millisecond):
					if inPlace(busy, text) != nil {
						return
					}
				}
			}
		}()
		defer func() { close(stop); <-stopped }()
		write(t, path, "b")
		for f := next(t, w).Files[0]; string(f.Content) != "b"; f = next(t, w).Files[0] {
			require.Equal(t, "a", string(f.Content))
		}
	})
}

func TestFollowAnotherList(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path, table := filepath.Join(folder, "room.md"), filepath.Join(folder, "fish.csv")
		write(t, path, "a")
		write(t, table, "1")
		w := start(t, opts, path)
		tells(t, w, "a")
		w.Follow([]File{{Path: path}, {Path: table, Content: []byte("1")}, {Path: table}})
		quiet(t, w)
		write(t, table, "2")
		tells(t, w, "a", "2")
		w.Follow([]File{{Path: path}})
		write(t, table, "3")
		quiet(t, w)
		w.Follow([]File{{Path: path}, {Path: table}})
		tells(t, w, "a", "3")
	})
}

func TestOtherFilesOfTheFolder(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "a")
		asked := make(chan string, 10_000)
		opts.Ignore = func(name string) bool {
			asked <- name
			return name == "room.xlsx"
		}
		w := start(t, opts, path)
		tells(t, w, "a")
		for range 10 {
			write(t, filepath.Join(folder, "room.xlsx"), "output")
			write(t, filepath.Join(folder, "draft.txt"), "stranger")
		}
		quiet(t, w)
		write(t, path, "b")
		tells(t, w, "b")
		for len(asked) > 0 {
			require.NotEqual(t, "room.md", <-asked, "a listed file is never ignored")
		}
	})
}

func TestChangeFindsAFile(t *testing.T) {
	c := Change{Files: []File{{Path: "a"}, {Path: "b", Content: []byte("x")}}}
	f, ok := c.File("b")
	require.True(t, ok)
	require.Equal(t, "x", string(f.Content))
	_, ok = c.File("c")
	require.False(t, ok)
}
