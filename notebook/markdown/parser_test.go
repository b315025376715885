package markdown_test

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/markdown"
)

// pieces are lines out of which notebooks are made that try the borders between
// sections: fences in and out of lists, HTML that spans blank lines, headings
// that are none.
var pieces = []string{
	"# One", "## Two", "### Tanks", "#No heading", "####### seven", "   ## indented", "    ## code", "Setext", "======", "---",
	"", "", "", "```lua Title", "```", "~~~", "~~~~ lua", "````", "  ```lua", "  ```", "- item", "  - inner", "1. one", "> quote", "> ```lua Q", "> a = 1", "> ```",
	"- ```lua L", "x = 1", "# comment in code", "Words {= a} and *more*.", "{= b", "| a | b |", "|---|---|", "| 1 | {= c} |", "```csv", "a,b", "1,2", "\"x",
	"<div>", "</div>", "<!-- note", "-->", "<script>", "</script>", "[ref]: https://example.org", "see [ref]", "\ttabbed", "<pre>", "`` ` ``",
}

// TestSectionsReadAlone: a Parser that keeps sections gives the same document as
// one reading, whatever stands where, edit after edit.
func TestSectionsReadAlone(t *testing.T) {
	for seed := range 400 {
		r := rand.New(rand.NewPCG(uint64(seed), 3))
		var lines []string
		for range 5 + r.IntN(40) {
			lines = append(lines, pieces[r.IntN(len(pieces))])
		}
		parser := markdown.NewParser()
		for range 6 {
			text := strings.Join(lines, "\n")
			requireSame(t, parse(text), parser.Parse("room.md", []byte(text)), text)
			i := r.IntN(len(lines))
			lines[i] = pieces[r.IntN(len(pieces))]
			if r.IntN(2) == 0 {
				lines = append(lines[:i], append([]string{pieces[r.IntN(len(pieces))]}, lines[i:]...)...)
			}
		}
	}
}

// requireSame compares two documents; fingerprints are worked out first.
func requireSame(t *testing.T, want, got *notebook.Document, text string) {
	t.Helper()
	for _, d := range []*notebook.Document{want, got} {
		for _, table := range d.Tables {
			table.Content()
		}
	}
	require.Equal(t, want, got, text)
}

func TestTheExampleInSections(t *testing.T) {
	content, err := os.ReadFile("../../examples/harbour-lane.md")
	require.NoError(t, err)
	parser := markdown.NewParser()
	for range 2 {
		requireSame(t, markdown.Parse("a.md", content), parser.Parse("a.md", content), "")
	}
}

func FuzzParse(f *testing.F) {
	f.Add("# T\n\n```lua\na = 1\n```\n\n| a |\n|---|\n| {= b} |\n")
	f.Add("> - ```csv\n  > a,\"b\n")
	f.Fuzz(func(t *testing.T, text string) {
		d := markdown.Parse("a.md", []byte(text))
		for _, c := range d.Cells {
			for _, l := range c.Lines {
				if l.Number < 1 || l.Number > len(d.Source) {
					t.Fatalf("line %d of %d", l.Number, len(d.Source))
				}
			}
		}
	})
}
