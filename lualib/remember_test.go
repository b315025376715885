package lualib_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
)

// TestBoundsOfARunAreNotRemembered: a cell that came too late because others took
// the run's time runs again once they are mended.
func TestBoundsOfARunAreNotRemembered(t *testing.T) {
	runner := run.New(lualib.New(), notebook.Limits{CellTime: 10 * time.Second, RunTime: 500 * time.Millisecond, Memory: 512 << 20})
	do := func(text string) *notebook.Result {
		result, err := runner.Run(context.Background(), markdown.Parse("room.md", []byte(text)), nil)
		require.NoError(t, err)
		return result
	}
	late := cell("late", "late = 0 for i = 1, 10 do late = late + i end")
	first := do(cell("slow", "slow = 1 while true do end") + late)
	require.Contains(t, first.Problems[0].Message, "a run longer than 500ms")
	require.NotZero(t, first.Errors())
	mended := do(cell("slow", "slow = 1") + late)
	require.Empty(t, mended.Problems)
	require.Equal(t, 55.0, value(t, mended, "late"))
}

// TestFunctionsStayFunctions on their second way out, alone or behind a
// metatable.
func TestFunctionsStayFunctions(t *testing.T) {
	r := good(t, cell("make", "lib = {f = function() return 7 end} again = lib other = {inner = lib}")+
		cell("pass", "thing = setmetatable({}, {__index = function() return 5 end})")+cell("on", "passed = thing")+
		cell("use", "a, b, c = again.f(), other.inner.f(), passed.anything"))
	require.Equal(t, 7.0, value(t, r, "a"))
	require.Equal(t, 7.0, value(t, r, "b"))
	require.Equal(t, 5.0, value(t, r, "c"))
}

// TestAFunctionInATableCell: it is refused at its place.
func TestAFunctionInATableCell(t *testing.T) {
	r := runText(t, cell("f", "function f() return 1 end")+"## T\n\n| a |\n|---|\n| {= f} |\n\n"+cell("use", `x = rows "T"[1].a`))
	require.Contains(t, problems(r)[0], "got a function, want a value to show")
}
