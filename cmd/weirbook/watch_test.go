package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// arrives is how long a test waits for what must come; a busy machine is slow.
const arrives = 20 * time.Second

// journal gathers what a command prints and can be waited on.
type journal struct {
	guard sync.Mutex
	text  bytes.Buffer
}

func (j *journal) Write(p []byte) (int, error) {
	j.guard.Lock()
	defer j.guard.Unlock()
	return j.text.Write(p)
}

func (j *journal) after(mark int) string {
	j.guard.Lock()
	defer j.guard.Unlock()
	return j.text.String()[mark:]
}

// watching is a watch of one notebook under way.
type watching struct {
	t        *testing.T
	folder   string
	notebook string
	out, err journal
	read     int // how much of out has been matched
	readErr  int
	cancel   context.CancelFunc
	ended    chan error
}

// startWatch writes a notebook and watches it with the real command.
func startWatch(t *testing.T, content string, flags ...string) *watching {
	t.Helper()
	w := &watching{t: t, folder: t.TempDir(), ended: make(chan error, 1)}
	w.notebook = filepath.Join(w.folder, "room.md")
	w.write(content)
	ctx, cancel := context.WithCancel(t.Context())
	w.cancel = cancel
	root := newRoot()
	root.SetOut(&w.out)
	root.SetErr(&w.err)
	root.SetArgs(append([]string{"watch", w.notebook}, flags...))
	go func() { w.ended <- root.ExecuteContext(ctx) }()
	t.Cleanup(func() {
		cancel()
		<-w.ended
	})
	return w
}

// write saves the notebook in place.
func (w *watching) write(content string) {
	w.t.Helper()
	require.NoError(w.t, os.WriteFile(w.notebook, []byte(content), 0o666))
}

// see waits until the output goes on with a match, and takes it.
func (w *watching) see(pattern string) []string {
	w.t.Helper()
	return w.await(&w.out, &w.read, pattern)
}

// hear does the same with the error stream.
func (w *watching) hear(pattern string) []string {
	w.t.Helper()
	return w.await(&w.err, &w.readErr, pattern)
}

func (w *watching) await(j *journal, mark *int, pattern string) []string {
	w.t.Helper()
	wanted := regexp.MustCompile("(?m)" + pattern)
	deadline := time.Now().Add(arrives)
	for {
		text := j.after(*mark)
		if m := wanted.FindStringSubmatchIndex(text); m != nil {
			var groups []string
			for i := 0; i < len(m); i += 2 {
				groups = append(groups, text[m[i]:m[i+1]])
			}
			*mark += m[1]
			return groups
		}
		if time.Now().After(deadline) {
			require.Failf(w.t, "did not arrive", "%s\nin\n%s\noutput:\n%s\nerrors:\n%s", pattern, text, w.out.after(0), w.err.after(0))
		}
		time.Sleep(5 * time.Millisecond)
	}
}

// started waits for the first run.
func (w *watching) started() *watching {
	w.t.Helper()
	w.see(`^\d+ of \d+ cells? ran, \d+ ms$`)
	return w
}

// book is the content of the workbook.
func (w *watching) book() string {
	w.t.Helper()
	content, err := os.ReadFile(filepath.Join(w.folder, "room.xlsx"))
	require.NoError(w.t, err)
	return string(content)
}

// names lists the files of the folder.
func (w *watching) names() []string {
	w.t.Helper()
	entries, err := os.ReadDir(w.folder)
	require.NoError(w.t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// shelves is a notebook of three cells and a value in the text.
func shelves(width, price string) string {
	return fmt.Sprintf("# Shelves\n\n```lua Width\nwidth = Q%q\n```\n\n```lua Area\narea = width * Q\"50 cm\"\ncheck{\"Fits\", width, at_most = \"120 cm\", caution_at = \"110 cm\"}\n```\n\n"+
		"```lua Price\nprice = Q%q\n```\n\nThey cost {= price * 2}.\n", width, price)
}

// TestWatchFirstRun: the first run prints the whole summary and writes the
// workbook.
func TestWatchFirstRun(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR"))
	w.see(`^Shelves$`)
	w.see(`^  done     Width +width = 80 cm$`)
	w.see(`^checks: 1 pass, 0 caution, 0 fail$`)
	w.see(`^workbook: .*room\.xlsx$`)
	w.see(`^4 of 4 cells ran, \d+ ms$`)
	require.True(t, strings.HasPrefix(w.book(), "PK"))
	require.Equal(t, []string{"room.md", "room.xlsx"}, w.names())
	require.Empty(t, w.err.after(0))
}

// TestWatchEdit: an edit runs what it touches, prints old and new of values and
// checks, and writes the workbook again.
func TestWatchEdit(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	before := w.book()
	w.write(shelves("115 cm", "30 EUR"))
	w.see(`^2 of 4 cells ran, \d+ ms$`)
	w.see(`^  width: 80 cm → 115 cm$`)
	w.see(`^  area: 4000 cm2 → 5750 cm2$`)
	w.see(`^  check Fits: pass \(80 cm, want at most 120 cm\) → caution \(115 cm, want at most 120 cm, caution from 110 cm\)\n`)
	require.NotContains(t, w.out.after(0), "price:")
	require.Eventually(t, func() bool { return w.book() != before }, arrives, 5*time.Millisecond)
	w.write(shelves("115 cm", "31 EUR"))
	w.see(`^2 of 4 cells ran`)
	w.see(`^  price: 30\.00 EUR → 31\.00 EUR\n  price \* 2: 60\.00 EUR → 62\.00 EUR\n`)
	require.Equal(t, []string{"room.md", "room.xlsx"}, w.names())
}

// TestWatchBackAgain: undoing an edit runs nothing, since what the cells gave is
// remembered, and gives the first workbook again.
func TestWatchBackAgain(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	before := w.book()
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^2 of 4 cells ran`)
	w.write(shelves("80 cm", "30 EUR"))
	w.see(`^0 of 4 cells ran`)
	w.see(`^  width: 90 cm → 80 cm$`)
	require.Equal(t, before, w.book())
}

// TestWatchNothingToRun: edits that touch no cell's words run no cell.
func TestWatchNothingToRun(t *testing.T) {
	plain := shelves("80 cm", "30 EUR")
	for name, edited := range map[string]string{
		"prose":   strings.Replace(plain, "They cost", "Both of them cost", 1),
		"lines":   strings.Replace(plain, "# Shelves\n", "# Shelves\n\nSome more\nwords.\n", 1),
		"remark":  strings.Replace(plain, "area =", "-- the whole of it\narea =", 1),
		"spacing": strings.Replace(plain, "area = width * ", "area   =   width*", 1),
		"order":   strings.Replace(plain, "```lua Price\nprice = Q\"30 EUR\"\n```\n\n", "", 1) + "\n```lua Price\nprice = Q\"30 EUR\"\n```\n",
	} {
		t.Run(name, func(t *testing.T) {
			require.NotEqual(t, plain, edited)
			w := startWatch(t, plain).started()
			w.write(edited)
			w.see(`^0 of 4 cells ran, \d+ ms\n  nothing changed\n`)
		})
	}
}

// TestWatchProblemsMove: a problem keeps the right line when text above it is
// added, although no cell runs.
func TestWatchProblemsMove(t *testing.T) {
	content := "```lua A\na = Q\"1 L\" + Q\"1 W\"\n```\n"
	w := startWatch(t, content).started()
	w.hear(`^\S*room\.md:2: cannot add 1 L`)
	w.write("Words above.\n\n" + content)
	w.see(`^0 of 1 cell ran`)
	w.hear(`^\S*room\.md:4: cannot add 1 L`)
}

// TestWatchRenameOver: editors save into another file and rename it over the
// notebook.
func TestWatchRenameOver(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	for _, width := range []string{"81 cm", "82 cm", "83 cm"} {
		beside := filepath.Join(w.folder, "room.md.new")
		require.NoError(t, os.WriteFile(beside, []byte(shelves(width, "30 EUR")), 0o666))
		require.NoError(t, os.Rename(beside, w.notebook))
		w.see(`→ ` + width + `$`)
	}
	require.Equal(t, []string{"room.md", "room.xlsx"}, w.names())
}

// TestWatchDeleted: a notebook that is gone is told once, and the watch goes on
// when it is back.
func TestWatchDeleted(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	before := w.book()
	require.NoError(t, os.Remove(w.notebook))
	w.hear(`^weirbook: \S*room\.md is gone; waiting for it to come back$`)
	require.Equal(t, before, w.book())
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^  width: 80 cm → 90 cm$`)
	require.Equal(t, 1, strings.Count(w.err.after(0), "is gone"))
}

// TestWatchDeletedSame: a notebook that comes back as it was changes nothing.
func TestWatchDeletedSame(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	require.NoError(t, os.Remove(w.notebook))
	w.hear(`is gone`)
	w.write(shelves("80 cm", "30 EUR"))
	w.see(`^0 of 4 cells ran, \d+ ms\n  nothing changed\n`)
}

// TestWatchBurst: of a burst of saves the last is shown, the others may be left
// out, and the workbook is that of the last.
func TestWatchBurst(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	for width := 81; width <= 100; width++ {
		w.write(shelves(fmt.Sprintf("%d cm", width), "30 EUR"))
	}
	w.see(`→ 100 cm$`)
	require.Less(t, strings.Count(w.out.after(0), "cells ran"), 20)
	require.Equal(t, freshBook(t, shelves("100 cm", "30 EUR")), w.book())
}

// freshBook is the workbook that a fresh run of a notebook writes.
func freshBook(t *testing.T, content string) string {
	t.Helper()
	notebook := filepath.Join(t.TempDir(), "room.md")
	require.NoError(t, os.WriteFile(notebook, []byte(content), 0o666))
	root := newRoot()
	root.SetOut(&bytes.Buffer{})
	root.SetErr(&bytes.Buffer{})
	root.SetArgs([]string{"run", notebook})
	require.NoError(t, root.Execute())
	book, err := os.ReadFile(workbookFor(notebook))
	require.NoError(t, err)
	return string(book)
}

// TestWatchAbandons: a save during a run that lasts long gives that run up; the
// first summary is then that of the newer content.
func TestWatchAbandons(t *testing.T) {
	w := startWatch(t, "```lua A\nwhile true do end\n```\n", "--time-limit", "1h")
	time.Sleep(100 * time.Millisecond) // let the run begin; any moment is a right one
	saved := time.Now()
	w.write("```lua A\na = 1\n```\n")
	w.see(`^  done     A +a = 1$`)
	require.Less(t, time.Since(saved), arrives)
	require.NotContains(t, w.err.after(0), "longer than")
	require.NotContains(t, w.out.after(0), "failed")
}

// TestWatchAbandonsLater: the same after a first run, with the changes shown
// against the last run that was not given up.
func TestWatchAbandonsLater(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR"), "--time-limit", "1h").started()
	before := w.book()
	w.write(strings.Replace(shelves("85 cm", "30 EUR"), "area =", "while true do end area =", 1))
	time.Sleep(100 * time.Millisecond) // let the run begin; any moment is a right one
	require.Equal(t, before, w.book())
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^  width: 80 cm → 90 cm$`)
	require.NotContains(t, w.out.after(0), "85 cm")
}

// TestWatchLimits: a cell that never ends is stopped and told, and the watch goes
// on.
func TestWatchLimits(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR"), "--time-limit", "100ms").started()
	w.write(strings.Replace(shelves("80 cm", "30 EUR"), "area =", "while true do end area =", 1))
	w.hear(`^\S*room\.md:8: got a cell that runs longer than 100ms, want it to end$`)
	w.see(`^  problems: 0 → 1$`)
	w.write(shelves("85 cm", "30 EUR"))
	w.see(`^  problems: 1 → 0$`)
}

// TestWatchSyntaxError: a broken cell is told while the others go on; repaired,
// its values are back.
func TestWatchSyntaxError(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	w.write(strings.Replace(shelves("80 cm", "31 EUR"), "area = width *", "area = width * *", 1))
	w.hear(`^\S*room\.md:8:16: got "\*" here`)
	w.see(`^  price: 30\.00 EUR → 31\.00 EUR$`)
	w.see(`^  problems: 0 → 1$`)
	w.see(`^  2 values or checks not worked out while a problem stands$`)
	w.write(shelves("80 cm", "31 EUR"))
	w.see(`^  problems: 1 → 0$`)
}

// TestWatchCancel: the end of the context ends the command cleanly.
func TestWatchCancel(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR")).started()
	w.cancel()
	select {
	case err := <-w.ended:
		require.NoError(t, err)
		w.ended <- nil // for the end of the test
	case <-time.After(arrives):
		require.Fail(t, "the watch does not end")
	}
	w.see(`^watch ended$`)
	require.Equal(t, []string{"room.md", "room.xlsx"}, w.names())
}

// TestWatchCancelBusy: also while a cell runs.
func TestWatchCancelBusy(t *testing.T) {
	w := startWatch(t, "```lua A\nwhile true do end\n```\n", "--time-limit", "1h")
	time.Sleep(100 * time.Millisecond) // let the run begin; any moment is a right one
	w.cancel()
	select {
	case err := <-w.ended:
		require.NoError(t, err)
		w.ended <- nil // for the end of the test
	case <-time.After(arrives):
		require.Fail(t, "the watch does not end")
	}
	require.Equal(t, []string{"room.md"}, w.names())
}

// TestWatchUnwritable: a workbook that cannot be written is told, and the watch
// goes on; nothing half-written is left.
func TestWatchUnwritable(t *testing.T) {
	target := filepath.Join(t.TempDir(), "book.xlsx")
	require.NoError(t, os.MkdirAll(filepath.Join(target, "keep"), 0o777))
	w := startWatch(t, shelves("80 cm", "30 EUR"), "-o", target).started()
	w.hear(`^weirbook: cannot write \S*book\.xlsx: it is a folder; `)
	require.NotContains(t, w.out.after(0), "workbook:")
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^  width: 80 cm → 90 cm$`)
	w.hear(`^weirbook: cannot write \S*book\.xlsx: `)
	entries, err := os.ReadDir(filepath.Dir(target))
	require.NoError(t, err)
	require.Len(t, entries, 1)
	require.NoError(t, os.RemoveAll(target))
	w.write(shelves("95 cm", "30 EUR"))
	w.see(`^  width: 90 cm → 95 cm$`)
	require.FileExists(t, target)
}

// TestWatchNoWorkbook: --no-workbook writes none, however often it runs.
func TestWatchNoWorkbook(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR"), "--no-workbook").started()
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^  width: 80 cm → 90 cm$`)
	require.Equal(t, []string{"room.md"}, w.names())
}

// TestWatchPoll: --poll finds edits by the clock.
func TestWatchPoll(t *testing.T) {
	w := startWatch(t, shelves("80 cm", "30 EUR"), "--poll").started()
	w.write(shelves("90 cm", "30 EUR"))
	w.see(`^  width: 80 cm → 90 cm$`)
	require.NoError(t, os.Remove(w.notebook))
	w.hear(`is gone`)
	w.write(shelves("95 cm", "30 EUR"))
	w.see(`^  width: 90 cm → 95 cm$`)
}

// TestWatchSet: an override holds for every run of a watch; an edit that takes
// its assumption away is told, and the watch goes on.
func TestWatchSet(t *testing.T) {
	content := "```lua Prices\nprice = assume{\"Price\", \"3 EUR\"}\ntwice = price * %d\n```\n"
	w := startWatch(t, fmt.Sprintf(content, 2), "--set", "price=5 EUR")
	w.see(`twice = 10\.00 EUR$`)
	w.started()
	w.write(fmt.Sprintf(content, 3))
	w.see(`^  twice: 10\.00 EUR → 15\.00 EUR$`)
	w.write(strings.Replace(fmt.Sprintf(content, 3), "price", "prize", -1))
	w.hear(`^weirbook: --set price: no assumption of the notebook has this name$`)
	w.write(fmt.Sprintf(content, 4))
	w.see(`^  twice: 15\.00 EUR → 20\.00 EUR$`)
}

// TestWatchRecords: a total follows its records through the plan.
func TestWatchRecords(t *testing.T) {
	content := "## Budget\n\n| item | price |\n|---|---|\n| Pump | %s |\n\n```lua Items\nfor _, row in ipairs(rows \"Budget\") do cost.item(row) end\n```\n\n```lua Apart\na = 1\n```\n\nIn all {= cost.total()}.\n"
	w := startWatch(t, fmt.Sprintf(content, "40 EUR")).started()
	w.write(fmt.Sprintf(content, "45 EUR"))
	w.see(`^2 of 3 cells ran`)
	w.see(`^  cost\.total\(\): 40\.00 EUR → 45\.00 EUR$`)
}

// TestWatchSetBroken: an assumption that cannot be read for a while does not end
// its override.
func TestWatchSetBroken(t *testing.T) {
	content := "```lua Prices\nprice = assume{\"Price\", \"3 EUR\"}\ntwice = price * 2\n```\n"
	w := startWatch(t, content, "--set", "price=5 EUR").started()
	w.write(strings.Replace(content, "}", "", 1))
	w.hear(`^\S*room\.md:3:1: got "twice" here`)
	w.write(strings.Replace(content, "* 2", "* 3", 1))
	w.see(`^  twice: 10\.00 EUR → 15\.00 EUR$`)
	require.NotContains(t, w.err.after(0), "--set")
}

// TestWatchMissingAtStart: a notebook that is not there at the start ends the
// command at once.
func TestWatchMissingAtStart(t *testing.T) {
	root := newRoot()
	root.SetOut(&bytes.Buffer{})
	root.SetErr(&bytes.Buffer{})
	root.SetArgs([]string{"watch", filepath.Join(t.TempDir(), "room.md")})
	var coded *codedError
	require.ErrorAs(t, root.ExecuteContext(t.Context()), &coded)
	require.Equal(t, exitUsage, coded.code)
}
