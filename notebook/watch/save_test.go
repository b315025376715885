package watch

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestSavesOfEveryKindAreTold(t *testing.T) {
	saves := []struct {
		name string
		save func(t *testing.T, path, content string)
	}{
		{"in place", write},
		{"renamed over", replace},
		{"deleted and made again", func(t *testing.T, path, content string) {
			require.NoError(t, os.Remove(path))
			time.Sleep(40 * time.Millisecond)
			write(t, path, content)
		}},
		{"moved aside first", func(t *testing.T, path, content string) {
			require.NoError(t, os.Rename(path, path+"~"))
			write(t, path, content)
		}},
		{"emptied, written later", func(t *testing.T, path, content string) {
			write(t, path, "")
			time.Sleep(60 * time.Millisecond)
			write(t, path, content)
		}},
		{"same size", func(t *testing.T, path, content string) {
			write(t, path, strings.ToUpper(content))
		}},
	}
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "north rack")
		w := start(t, opts, path)
		tells(t, w, "north rack")
		for _, s := range saves {
			// Twice: what survives the first save may miss the second.
			for round := range 2 {
				s.save(t, path, fmt.Sprintf("%s %d", s.name, round))
				want, err := os.ReadFile(path)
				require.NoError(t, err)
				tells(t, w, string(want))
			}
		}
		quiet(t, w)
	})
}

// halves saves in place in two writes with a pause and gives the real length
// of the pause, which a busy machine may stretch.
func halves(t *testing.T, path, content string) time.Duration {
	t.Helper()
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_TRUNC, 0)
	require.NoError(t, err)
	begun := time.Now()
	_, err = f.WriteString(content[:len(content)/2])
	require.NoError(t, err)
	time.Sleep(5 * time.Millisecond)
	_, err = f.WriteString(content[len(content)/2:])
	require.NoError(t, err)
	require.NoError(t, f.Close())
	return time.Since(begun)
}

func TestSavesInTwoHalvesAreNeverTorn(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "start")
		w := start(t, opts, path)
		tells(t, w, "start")
		for i := range 25 {
			want := strings.Repeat(fmt.Sprintf("tank %d holds water\n", i), 200)
			pause := halves(t, path, want)
			got := string(next(t, w).Files[0].Content)
			require.NotEmpty(t, got, "save %d", i)
			if got != want && pause >= DefaultQuiet {
				t.Logf("save %d: the machine paused the writer for %v, which is a settled half", i, pause)
				got = string(next(t, w).Files[0].Content)
			}
			require.Equal(t, want, got, "save %d", i)
		}
		quiet(t, w)
	})
}

func TestBurstOfSavesTellsTheLast(t *testing.T) {
	for _, how := range []struct {
		name string
		save func(path, content string) error
	}{{"in place", inPlace}, {"renamed over", renamedOver}} {
		t.Run(how.name, func(t *testing.T) {
			bothWays(t, func(t *testing.T, folder string, opts Options) {
				path := filepath.Join(folder, "room.md")
				write(t, path, "start")
				w := start(t, opts, path)
				tells(t, w, "start")
				pauses, failed := make(chan int, 1), make(chan error, 1)
				go func() {
					n, err := burst(path, how.save)
					pauses <- n
					failed <- err
				}()
				told, last := 0, ""
				for last != "save 49" {
					last = string(next(t, w).Files[0].Content)
					told++
				}
				// Only where the machine held up the writer may the middle
				// of the burst look settled.
				require.LessOrEqual(t, told, 1+<-pauses)
				require.NoError(t, <-failed)
				quiet(t, w)
			})
		})
	}
}

// burst saves 50 times within 100 ms and counts the pauses that the machine
// made long enough to look like the end of it.
func burst(path string, save func(path, content string) error) (pauses int, err error) {
	before := time.Now()
	for i := range 50 {
		if err := save(path, fmt.Sprintf("save %d", i)); err != nil {
			return pauses, err
		}
		time.Sleep(2*time.Millisecond - time.Since(before))
		now := time.Now()
		if now.Sub(before) >= DefaultQuiet*3/4 {
			pauses++
		}
		before = now
	}
	return pauses, nil
}

func TestUnchangedContentIsNotTold(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "same")
		w := start(t, opts, path)
		tells(t, w, "same")
		write(t, path, "same")
		quiet(t, w)
		replace(t, path, "same")
		quiet(t, w)
		require.NoError(t, os.Chtimes(path, time.Time{}, time.Now().Add(time.Hour)))
		require.NoError(t, os.Chmod(path, 0o400))
		require.NoError(t, os.Chmod(path, 0o600))
		quiet(t, w)
		write(t, path, "other")
		tells(t, w, "other")
	})
}

func TestChangeThatLeavesSizeAndTime(t *testing.T) {
	bothWays(t, func(t *testing.T, folder string, opts Options) {
		path := filepath.Join(folder, "room.md")
		write(t, path, "80 gal")
		w := start(t, opts, path)
		tells(t, w, "80 gal")
		// As a file system with a coarse clock shows a second save.
		info, err := os.Stat(path)
		require.NoError(t, err)
		write(t, path, "90 gal")
		require.NoError(t, os.Chtimes(path, time.Time{}, info.ModTime()))
		tells(t, w, "90 gal")
	})
}
