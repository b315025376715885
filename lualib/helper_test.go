package lualib_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/markdown"
	"weirbook/notebook/quantity"
	"weirbook/notebook/run"
)

// limits are those of most tests: generous, since no test here is a benchmark.
func limits() notebook.Limits {
	return notebook.Limits{CellTime: 20 * time.Second, RunTime: 60 * time.Second, Memory: 1 << 30}
}

// runText runs a notebook with an engine and a memory of its own.
func runText(t *testing.T, text string) *notebook.Result {
	t.Helper()
	return runWith(t, run.New(lualib.New(), limits()), text)
}

func runWith(t *testing.T, runner *run.Runner, text string) *notebook.Result {
	t.Helper()
	result, err := runner.Run(context.Background(), markdown.Parse("room.md", []byte(text)), nil)
	require.NoError(t, err)
	return result
}

// cell writes one cell of a notebook.
func cell(title, code string) string {
	fence := "```"
	for strings.Contains(code, fence) {
		fence += "`"
	}
	return fmt.Sprintf("%slua %s\n%s\n%s\n\n", fence, title, strings.Trim(code, "\n"), fence)
}

// good runs a notebook that must have no problem at all.
func good(t *testing.T, text string) *notebook.Result {
	t.Helper()
	result := runText(t, text)
	require.Empty(t, problems(result), text)
	return result
}

// goodCell runs one cell that must have no problem.
func goodCell(t *testing.T, code string) *notebook.Result {
	t.Helper()
	return good(t, cell("only", code))
}

// badCell runs one cell that must have exactly one problem, and gives it.
func badCell(t *testing.T, code string) diag.Problem {
	t.Helper()
	return badText(t, cell("only", code))
}

func badText(t *testing.T, text string) diag.Problem {
	t.Helper()
	result := runText(t, text)
	require.Len(t, result.Problems, 1, "%s\n%s", text, strings.Join(problems(result), "\n"))
	return result.Problems[0]
}

// problems gives the problems of a result in words.
func problems(r *notebook.Result) []string {
	var list []string
	for _, p := range r.Problems {
		list = append(list, p.Text())
	}
	return list
}

// value gives a named value, which must be there.
func value(t *testing.T, r *notebook.Result, name string) notebook.Value {
	t.Helper()
	v, ok := r.Value(name)
	require.True(t, ok, "the notebook has no value %s; problems: %v", name, problems(r))
	return v
}

// shown gives a value as a person reads it.
func shown(v notebook.Value) string {
	switch v := v.(type) {
	case quantity.Quantity:
		return v.String()
	case quantity.Date:
		return v.String()
	}
	return fmt.Sprint(v)
}

// printed gives what the cells of a notebook printed, in the order of the page.
func printed(r *notebook.Result) string {
	var b strings.Builder
	for _, c := range r.Cells {
		if c.Outcome != nil {
			b.WriteString(c.Outcome.Printed)
		}
	}
	return b.String()
}
