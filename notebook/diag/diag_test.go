package diag_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/diag"
)

func TestProblemSpeaksTheOneGrammar(t *testing.T) {
	p := diag.Problem{
		Pos:     diag.Pos{File: "room.md", Line: 43, Column: 12},
		Subject: "tank: height",
		Message: "got 600 without a unit, want a length",
		Hint:    `write "600 mm"`,
		Source:  "t = tank{height = 600}",
		Also:    []diag.Related{{Pos: diag.Pos{File: "room.md", Line: 4}, Text: "first here"}},
	}
	require.Equal(t, "room.md:43:12: tank: height: got 600 without a unit, want a length\n"+
		"    t = tank{height = 600}\n"+
		"               ^\n"+
		"  room.md:4: first here\n"+
		"  hint: write \"600 mm\"", p.Text())
}

func TestSortFollowsThePage(t *testing.T) {
	problems := []diag.Problem{
		{Pos: diag.Pos{File: "a.md", Line: 9}}, {Pos: diag.Pos{File: "a.md", Line: 2, Column: 5}}, {Pos: diag.Pos{File: "a.md", Line: 2, Column: 1}},
	}
	diag.Sort(problems)
	require.Equal(t, []int{1, 5, 0}, []int{problems[0].Pos.Column, problems[1].Pos.Column, problems[2].Pos.Column})
}

func TestNearest(t *testing.T) {
	names := []string{"temperature", "salinity", "height", "width", "fill", "gal", "gal_imp"}
	for typed, want := range map[string]string{
		"temprature": "temperature", "salinty": "salinity", "hieght": "height", "Width": "width", "galimp": "gal_imp",
		"price": "", "zzzzzz": "", "fil": "fill",
	} {
		require.Equal(t, want, diag.Nearest(typed, names), typed)
	}
	require.Equal(t, `did you mean "fill"?`, diag.DidYouMean("fll", names))
	require.Empty(t, diag.DidYouMean("voltage", names))
}

type advised struct{}

func (advised) Error() string  { return "a comma" }
func (advised) Advice() string { return "write 1.2" }

func TestAsFaultKeepsTheHint(t *testing.T) {
	require.Equal(t, &diag.Fault{Message: "wrapped: a comma", Hint: "write 1.2"}, diag.AsFault(fmt.Errorf("wrapped: %w", advised{})))
	inner := &diag.Fault{Subject: "tank", Message: "no", Hint: "yes"}
	require.Same(t, inner, diag.AsFault(fmt.Errorf("x: %w", inner)))
	require.Equal(t, "plain", diag.AsFault(errors.New("plain")).Message)
}

func TestLongLinesAreCutAroundTheColumn(t *testing.T) {
	p := diag.Problem{Pos: diag.Pos{File: "a.md", Line: 1, Column: 501}, Message: "m", Source: strings.Repeat("x", 500) + "Y" + strings.Repeat("z", 500)}
	lines := strings.Split(p.Text(), "\n")
	require.Len(t, lines, 3)
	require.Less(t, len(lines[1]), 150)
	require.Equal(t, "Y", string([]rune(lines[1])[len(lines[2])-1]), "the mark stands under the character")
	require.Equal(t, "ab…", diag.Cut("abcdef", 3))
	require.Equal(t, "äöü", diag.Cut("äöü", 3))
}
