package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
	"weirbook/xlsx"
	"weirbook/xlsx/recalc"
)

// resultOf runs a notebook afresh.
func resultOf(t *testing.T, name string, content []byte) *notebook.Result {
	t.Helper()
	result, err := run.New(lualib.New(), notebook.DefaultLimits()).Run(context.Background(), markdown.Parse(name, content), nil)
	require.NoError(t, err)
	return result
}

// TestExamplesRun: every example runs without a problem, and no check fails.
func TestExamplesRun(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.md")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		content, err := os.ReadFile(file)
		require.NoError(t, err)
		result := resultOf(t, filepath.Base(file), content)
		for _, p := range result.Problems {
			t.Errorf("%s", p.Text())
		}
		_, _, fails := result.Outcomes()
		require.Zero(t, fails, file)
	}
}

// TestHarbourLaneIsWhole: the example has what its text promises.
func TestHarbourLaneIsWhole(t *testing.T) {
	content, err := os.ReadFile("../../examples/harbour-lane.md")
	require.NoError(t, err)
	p := resultOf(t, "harbour-lane.md", content).Plan
	require.GreaterOrEqual(t, len(p.Items), 60)
	require.Len(t, p.Steps, 20)
	require.Len(t, p.Tanks, 6)
	require.Len(t, p.Circuits, 1)
	sizes := map[string]bool{}
	for _, tank := range p.Tanks {
		sizes[tank.Length.String()] = true
		require.Zero(t, tank.Salinity.Value())
	}
	require.Len(t, sizes, 3)
}

// TestHarbourLaneRecalculates: LibreOffice works out every formula of the
// example's workbook, from a copy without our values, to the same cent.
func TestHarbourLaneRecalculates(t *testing.T) {
	content, err := os.ReadFile("../../examples/harbour-lane.md")
	require.NoError(t, err)
	var book bytes.Buffer
	require.NoError(t, xlsx.Write(&book, resultOf(t, "harbour-lane.md", content)))
	recalc.Compare(t, book.Bytes(), recalc.LibreOffice(t, book.Bytes()))
}

var indented = regexp.MustCompile(`(?m)^    (weirbook (?:new|run|lib|ask).*?)(?:  +#.*)?$`)

// TestReadmeCommandsWork runs the commands that the README shows, and its
// notebook.
func TestReadmeCommandsWork(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	require.Contains(t, string(readme), "    go run ./cmd/weirbook run examples/harbour-lane.md")
	require.Contains(t, string(readme), "    go test ./...")
	t.Chdir(t.TempDir())
	commands := indented.FindAllStringSubmatch(string(readme), -1)
	require.GreaterOrEqual(t, len(commands), 5)
	for _, c := range commands {
		root := newRoot()
		var out bytes.Buffer
		root.SetOut(&out)
		root.SetErr(&out)
		root.SetArgs(words(c[1])[1:])
		require.NoError(t, root.Execute(), "%s: %s", c[1], out.String())
	}
	require.FileExists(t, "dear.xlsx")
	result := resultOf(t, "README.md", readmeNotebook(string(readme)))
	for _, p := range result.Problems {
		t.Error(p.Text())
	}
	require.Len(t, result.Plan.Tanks, 1)
}

// TestReadmeShowsTheTruth: the lines of figures that the README shows are those
// that the example prints.
func TestReadmeShowsTheTruth(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	content, err := os.ReadFile("../../examples/harbour-lane.md")
	require.NoError(t, err)
	var out bytes.Buffer
	printSummary(&out, resultOf(t, "harbour-lane.md", content), "", plainStyle)
	shown := 0
	for _, line := range strings.Split(string(readme), "\n") {
		line = strings.TrimSpace(line)
		for _, start := range []string{"tanks:  ", "budget: ", "power:  ", "checks: "} {
			if strings.HasPrefix(line, start) {
				require.Contains(t, out.String(), line)
				shown++
			}
		}
	}
	require.Equal(t, 4, shown)
}

// words splits a command line at spaces outside quotes.
func words(line string) []string {
	var all []string
	var word strings.Builder
	quote := rune(0)
	for _, r := range line + " " {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '\'' || r == '"'):
			quote = r
		case quote == 0 && r == ' ':
			if word.Len() > 0 {
				all = append(all, word.String())
			}
			word.Reset()
		default:
			word.WriteRune(r)
		}
	}
	return all
}

// readmeNotebook takes the indented notebook out of the README.
func readmeNotebook(readme string) []byte {
	_, after, _ := strings.Cut(readme, "## A notebook in ten lines\n")
	var lines []string
	for _, line := range strings.Split(after, "\n") {
		if line != "" && !strings.HasPrefix(line, "    ") {
			break
		}
		lines = append(lines, strings.TrimPrefix(line, "    "))
	}
	return []byte(strings.Join(lines, "\n"))
}
