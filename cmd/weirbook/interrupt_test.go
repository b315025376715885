package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestInterrupted: a run and a question that are given up end soon, with the
// code for bad usage, and leave the old workbook as it was.
func TestInterrupted(t *testing.T) {
	notebook := filepath.Join(t.TempDir(), "room.md")
	require.NoError(t, os.WriteFile(notebook, []byte("```lua A\nwhile true do end\n```\n"), 0o666))
	require.NoError(t, os.WriteFile(workbookFor(notebook), []byte("an old one"), 0o666))
	for _, arguments := range [][]string{
		{"run", notebook, "--time-limit", "1h"},
		{"ask", "1", "--in", notebook, "--time-limit", "1h"},
	} {
		t.Run(arguments[0], func(t *testing.T) {
			ctx, cancel := context.WithCancel(t.Context())
			defer time.AfterFunc(100*time.Millisecond, cancel).Stop()
			var out, problems bytes.Buffer
			root := newRoot()
			root.SetOut(&out)
			root.SetErr(&problems)
			root.SetArgs(arguments)
			start := time.Now()
			var coded *codedError
			require.ErrorAs(t, root.ExecuteContext(ctx), &coded)
			require.Less(t, time.Since(start), arrives)
			require.Equal(t, exitUsage, coded.code)
			require.Equal(t, "interrupted", coded.message)
			require.Empty(t, out.String())
			require.Empty(t, problems.String())
			book, err := os.ReadFile(workbookFor(notebook))
			require.NoError(t, err)
			require.Equal(t, "an old one", string(book))
		})
	}
}
