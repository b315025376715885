package markdown_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/notebook/markdown"
)

func parse(text string) *notebook.Document { return markdown.Parse("room.md", []byte(text)) }

// at gives the character of the source on which a piece of code begins.
func at(d *notebook.Document, line notebook.CodeLine) string {
	return string([]rune(d.Line(line.Number))[line.Indent:])
}

// TestCellsInEveryContainer: CommonMark lets fenced code stand in lists and
// quotes; every line of a cell must be found again in the file.
func TestCellsInEveryContainer(t *testing.T) {
	for name, text := range map[string]string{
		"plain":              "# T\n\n```lua The title\na = 1\n  b = 2\n```\n",
		"tilde":              "~~~~ lua The title\na = 1\n  b = 2\n~~~~\n",
		"indented fence":     "  ```lua The title\n  a = 1\n    b = 2\n  ```\n",
		"quote":              "> words\n>\n> ```lua The title\n> a = 1\n>   b = 2\n> ```\n",
		"list":               "- item\n\n  ```lua The title\n  a = 1\n    b = 2\n  ```\n",
		"numbered list":      "12. item\n\n    ```lua The title\n    a = 1\n      b = 2\n    ```\n",
		"quote in a list":    "- > ```lua The title\n  > a = 1\n  >   b = 2\n  > ```\n",
		"accents before":     "Größe — ü\n\n> ```lua The title\n> a = 1\n>   b = 2\n> ```\n",
		"carriage returns":   "# T\r\n\r\n```lua The title\r\na = 1\r\n  b = 2\r\n```\r\n",
		"a byte-order mark":  "\xef\xbb\xbf```lua The title\na = 1\n  b = 2\n```\n",
		"old Mac line ends":  "# T\r\r```lua The title\ra = 1\r  b = 2\r```\r",
		"escapes in a title": "```lua The \\title\na = 1\n  b = 2\n```\n",
	} {
		d := parse(text)
		require.Len(t, d.Cells, 1, name)
		c := d.Cells[0]
		require.Equal(t, notebook.Calculation, c.Kind, name)
		require.Equal(t, "a = 1\n  b = 2", c.Code, name)
		require.Len(t, c.Lines, 2, name)
		require.Equal(t, "a = 1", at(d, c.Lines[0]), name)
		require.Equal(t, "  b = 2", at(d, c.Lines[1]), name)
		require.True(t, strings.HasPrefix(c.Title, "The "), name)
		require.Empty(t, d.Problems, name)
	}
}

func TestACellThatIsNeverClosed(t *testing.T) {
	for _, text := range []string{"words\n\n```Lua The title\na = 1\n  b = 2", "words\n\n~~~lua T\na = 1\n\nmore\n", "words\n\n> ```lua T\n> a = 1\n\nout of the quote\n"} {
		d := parse(text)
		require.Len(t, d.Cells, 1, text)
		require.Len(t, d.Problems, 1, text)
		require.Equal(t, 3, d.Problems[0].Pos.Line)
		require.Contains(t, d.Problems[0].Message, "without its closing fence")
	}
}

func TestWhatIsNoCell(t *testing.T) {
	d := parse("```\na = 1\n```\n\n```luau\na = 1\n```\n\n```python\nx\n```\n\n    lua\n    a = 1\n\n`lua a = 1`\n\n<!--\n```lua\na = 1\n```\n-->\n")
	require.Empty(t, d.Cells)
}

func TestTabsInCode(t *testing.T) {
	d := parse("```lua\nif x then\n\ty = 1\nend\n```\n")
	require.Equal(t, "if x then\n\ty = 1\nend", d.Cells[0].Code)
}

func TestAnEmptyCellHasALine(t *testing.T) {
	d := parse("words\n\n```lua Nothing\n```\n")
	require.Equal(t, 3, d.Cells[0].Line())
	require.Empty(t, d.Cells[0].Code)
}

func TestTitleAndHeadings(t *testing.T) {
	d := parse("words\n\n## The *first* `one` &amp; more\n\nSecond\n======\n")
	require.Equal(t, "The first one & more", d.Title)
	require.Equal(t, []string{"The first one & more", "Second"}, d.Headings)
}
