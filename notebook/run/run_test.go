package run_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
)

func TestOrderIsThatOfTheNames(t *testing.T) {
	e := &toy{}
	r := do(t, runner(e), page("a = b + c", "b = c + 1", "c = 2"))
	require.Equal(t, []string{"C", "B", "A"}, e.runs)
	require.Equal(t, "a=5 b=3 c=2", values(r), "values stand in the order of the page")
	require.Empty(t, r.Problems)
}

func TestOnlyWhatChangedRunsAgain(t *testing.T) {
	e := &toy{}
	r := runner(e)
	do(t, r, page("a = 1", "b = a + 1", "c = b + 1", "d = 7"))
	for _, c := range []struct {
		codes []string
		ran   []string
		why   string
	}{
		{[]string{"a = 1", "b = a + 1", "c = b + 1", "d = 7"}, nil, "nothing changed"},
		{[]string{"a = 0 + 1", "b = a + 1", "c = b + 1", "d = 7"}, []string{"A"}, "the value came out the same: early cut-off"},
		{[]string{"a = 2", "b = a + 1", "c = b + 1", "d = 7"}, []string{"A", "B", "C"}, "the value changed"},
		{[]string{"a = 1", "b = a + 1", "c = b + 1", "d = 7"}, nil, "an edit taken back is remembered"},
	} {
		e.runs = nil
		result := do(t, r, page(c.codes...))
		require.Equal(t, c.ran, e.runs, c.why)
		require.Equal(t, len(c.ran), result.Ran)
	}
}

func TestRecordsAreReadAfterAllThatMakeThem(t *testing.T) {
	e := &toy{}
	r := runner(e)
	result := do(t, r, page("total t", "item 3", "item 4\nitem 5"))
	require.Equal(t, []string{"B", "C", "A"}, e.runs)
	require.Equal(t, "t=12", values(result))
	require.Equal(t, []int{11, 21, 22}, []int{result.Plan.Items[0].Line, result.Plan.Items[1].Line, result.Plan.Items[2].Line})
	e.runs = nil
	require.Equal(t, "t=13", values(do(t, r, page("total t", "item 4", "item 4\nitem 5"))))
	require.Equal(t, []string{"B", "A"}, e.runs, "a total depends on its records as on a name")
}

func TestMistakesBeforeAnythingRunsAreToldTogether(t *testing.T) {
	e := &toy{}
	r := do(t, runner(e), page("aa = 1", "b = bb + 1", "aa = 2", "x = y", "y = x", "d = 4"))
	require.Equal(t, "toy.md:11:5: unknown name bb\n"+
		"toy.md:21:1: got a second assignment to aa, want one cell for each name\n"+
		`toy.md:31: got a circle of cells, each of which waits for the other: "D", "E"`, problems(r))
	require.Equal(t, []string{"F"}, e.runs, "what no mistake touches still runs")
	require.Equal(t, "the first is here, in the cell \"A\"", r.Problems[1].Also[0].Text)
	require.Equal(t, 1, r.Problems[1].Also[0].Pos.Line)
	require.Len(t, r.Problems[2].Also, 2)
	require.Equal(t, `did you mean "b"?`, r.Problems[0].Hint)
}

func TestTwoCellsThatMakeAndReadOneKindAreACircle(t *testing.T) {
	r := do(t, runner(&toy{}), page("item 1\ntotal s", "item 2\ntotal t"))
	require.Contains(t, problems(r), `got a circle of cells, each of which waits for the other: "A", "B"`)
	require.Contains(t, r.Problems[0].Hint, "a cell of its own")
	one := do(t, runner(&toy{}), page("item 1\ntotal s", "item 2"))
	require.Empty(t, one.Problems, "one that makes and reads is none")
}

func TestAFailureStopsOnlyWhatLeansOnIt(t *testing.T) {
	r := do(t, runner(&toy{}), page("a = 1\nfail", "b = a + 1", "c = b + 1", "d = 4", "item 2\nfail", "total t"))
	status := map[string]notebook.Status{}
	for _, c := range r.Cells {
		status[c.Cell.Title] = c.Status
	}
	require.Equal(t, map[string]notebook.Status{
		"A": notebook.Failed, "B": notebook.Waiting, "C": notebook.Waiting, "D": notebook.Done, "E": notebook.Failed, "F": notebook.Waiting,
	}, status)
	require.Equal(t, "toy.md:2: failed\ntoy.md:42: failed", problems(r))
	require.Equal(t, []string{`a of the cell "A" (line 1)`}, r.Cells[1].WaitsFor)
	require.Equal(t, []string{`item records of the cell "E" (line 41)`}, r.Cells[5].WaitsFor, "no total leaves out the records of a cell that failed")
	require.Empty(t, r.Plan.Items)
}

func TestMovedTextMovesThePlaces(t *testing.T) {
	e := &toy{}
	r := runner(e)
	do(t, r, page("item 3", "fail"))
	e.runs = nil
	moved := page("item 3", "fail")
	for _, c := range moved.Cells {
		for i := range c.Lines {
			c.Lines[i].Number += 5
		}
	}
	result := do(t, r, moved)
	require.Empty(t, e.runs)
	require.Equal(t, 6, result.Plan.Items[0].Line)
	require.Equal(t, "toy.md:16: failed", problems(result))
}

func TestAnOverrideNeedsAnAssumption(t *testing.T) {
	_, err := runner(&toy{}).Run(context.Background(), page("a = 1"), map[string]string{"a": "2"})
	require.EqualError(t, err, "--set a: no assumption of the notebook has this name")
}

func TestAnAbandonedRunIsAnError(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := runner(&toy{}).Run(ctx, page("a = 1"), nil)
	require.ErrorIs(t, err, context.Canceled)
}

func TestOutcomesAreForgottenInTime(t *testing.T) {
	e := &toy{}
	r := runner(e)
	do(t, r, page("a = 1"))
	for range 20 {
		do(t, r, page("a = 2"))
	}
	e.runs = nil
	do(t, r, page("a = 1"))
	require.Equal(t, []string{"A"}, e.runs)
}
