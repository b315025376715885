package lualib_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
)

// hostileLimits are small, so that the whole folder is done in a minute or two.
var hostileLimits = notebook.Limits{CellTime: 2 * time.Second, RunTime: 8 * time.Second, Memory: 256 << 20}

// patientLimits are for notebooks that must not run into a bound of time, on a slow
// machine with the race detector too.
var patientLimits = notebook.Limits{CellTime: time.Minute, RunTime: 2 * time.Minute, Memory: 256 << 20}

// runners run hostile notebooks: those that must be stopped under short limits,
// all others under patient ones.
type runners struct{ strict, patient *run.Runner }

func newRunners() runners {
	return runners{run.New(lualib.New(), hostileLimits), run.New(lualib.New(), patientLimits)}
}

const (
	hostileNet   = 90 * time.Second // far beyond the limit: a net, no benchmark
	hostileSlack = 256 << 20        // garbage between two looks, and one text of the largest size
)

var hostilePromise = regexp.MustCompile(`^<!-- .+; what must happen: (refused|stopped|runs) -->\n`)

// machineWords are words of the machine below, which no person should meet.
var machineWords = regexp.MustCompile(`runtime error|goroutine|0xc0|nil pointer|\.go:\d|interface conversion|slice bounds|reflect:|LValue|gopher`)

// limitWords name a bound of time or memory.
var limitWords = regexp.MustCompile(`runs longer than|a run longer than|MB of memory`)

// TestHostileNotebooks runs every hostile notebook in this very process: it must
// live on, keep to its bounds, and keep the honest cell's value.
func TestHostileNotebooks(t *testing.T) {
	files, err := filepath.Glob("../testdata/hostile/*.md")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	previous := debug.SetMemoryLimit(int64(hostileLimits.Memory / 4 * 3)) // as the command sets it
	defer debug.SetMemoryLimit(previous)
	both := newRunners()
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".md"), func(t *testing.T) {
			hostile(t, both, file)
		})
	}
	honest := runWith(t, both.strict, cell("honest", `tub = volume.box{length = "120 cm", width = "50 cm", height = "50 cm"} fine = 1 + 1`))
	require.Empty(t, problems(honest))
	require.Equal(t, 2.0, value(t, honest, "fine"))
}

func hostile(t *testing.T, both runners, file string) {
	content, err := os.ReadFile(file)
	require.NoError(t, err)
	attack(t, both, content)
}

// attack runs a hostile notebook and checks what holds for all of them.
func attack(t *testing.T, both runners, content []byte) {
	promise := hostilePromise.FindSubmatch(content)
	require.NotNil(t, promise, "the first line must say what must happen")
	runner := both.patient
	if string(promise[1]) == "stopped" {
		runner = both.strict
	}
	runtime.GC()
	routines := runtime.NumGoroutine()
	heap := watchHeap()
	start := time.Now()
	result, err := runner.Run(context.Background(), markdown.Parse("hostile.md", content), nil)
	took := time.Since(start)
	peak := heap.stop()
	require.NoError(t, err)
	require.Less(t, took, hostileNet)
	require.Less(t, peak, hostileLimits.Memory+hostileSlack)
	for wait := 0; runtime.NumGoroutine() > routines && wait < 1000; wait++ {
		time.Sleep(time.Millisecond)
	}
	require.LessOrEqual(t, runtime.NumGoroutine(), routines, "a goroutine was left behind")
	require.Equal(t, 2.0, value(t, result, "fine"))
	if testing.Verbose() {
		t.Logf("%s: %v, %d MB; %s", promise[1], took.Round(time.Millisecond), peak>>20, clip(strings.Join(problems(result), " | ")))
	}
	outcome(t, string(promise[1]), result)
}

// outcome checks the word of the first line.
func outcome(t *testing.T, promise string, result *notebook.Result) {
	text := strings.Join(problems(result), "\n")
	require.NotRegexp(t, machineWords, clip(text))
	require.NotRegexp(t, machineWords, clip(printed(result)))
	require.Less(t, len(text), 64<<10, "the messages grow with the attack")
	switch promise {
	case "runs":
		require.Zero(t, result.Errors(), clip(text))
	case "refused":
		require.Positive(t, result.Errors())
		require.NotRegexp(t, limitWords, text, "it ran into a bound instead of being refused")
	case "stopped":
		require.Positive(t, result.Errors())
		for _, p := range result.Problems {
			require.NotEmpty(t, p.Message)
			require.Positive(t, p.Pos.Line, p.Text())
		}
	}
}

func clip(s string) string {
	if len(s) > 600 {
		return fmt.Sprintf("%s… %d bytes", s[:600], len(s))
	}
	return s
}

// heapWatch notes the most memory that objects took.
type heapWatch struct {
	done chan struct{}
	peak chan uint64
}

func watchHeap() *heapWatch {
	w := &heapWatch{make(chan struct{}), make(chan uint64)}
	go func() {
		sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		peak := uint64(0)
		for {
			metrics.Read(sample)
			peak = max(peak, sample[0].Value.Uint64())
			select {
			case <-w.done:
				w.peak <- peak
				return
			case <-time.After(2 * time.Millisecond):
			}
		}
	}()
	return w
}

func (w *heapWatch) stop() uint64 {
	close(w.done)
	return <-w.peak
}
