package markdown_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
)

func texts(row notebook.TableRow) []string {
	var all []string
	for _, c := range row.Cells {
		all = append(all, c.Text)
	}
	return all
}

// TestMarkdownTables reads tables as GitHub Flavored Markdown has them, in any
// container.
func TestMarkdownTables(t *testing.T) {
	for name, text := range map[string]string{
		"plain":      "## The *Tanks*\n\n| Name | Glass  Size |\n|---|:-:|\n| a **b** | 5 \\| 6 |\n| `c` |\n",
		"no pipes":   "## The *Tanks*\n\nName | Glass  Size\n---|:-:\na **b** | 5 \\| 6\n`c` |\n",
		"in a quote": "## The *Tanks*\n\n> | Name | Glass  Size |\n> |---|:-:|\n> | a **b** | 5 \\| 6 |\n> | `c` |\n",
		"in a list":  "## The *Tanks*\n\n- item\n\n  | Name | Glass  Size |\n  |---|:-:|\n  | a **b** | 5 \\| 6 |\n  | `c` |\n",
		"returns":    "## The *Tanks*\r\n\r\n| Name | Glass  Size |\r\n|---|:-:|\r\n| a **b** | 5 \\| 6 |\r\n| `c` |\r\n",
	} {
		d := parse(text)
		require.Len(t, d.Tables, 1, name)
		table := d.Tables[0]
		require.Equal(t, "The Tanks", table.Heading, name)
		require.Equal(t, []string{"name", "glass_size"}, table.Keys, name)
		require.Len(t, table.Rows, 2, name)
		require.Equal(t, []string{"a b", "5 | 6"}, texts(table.Rows[0]), name)
		require.Equal(t, []string{"c", ""}, texts(table.Rows[1]), name)
		for _, row := range table.Rows {
			first := row.Cells[0]
			require.Contains(t, "a`", string([]rune(d.Line(row.Line))[first.Column-1]), name)
		}
		require.Equal(t, table, d.TablesUnder("The Tanks")[0], name)
	}
}

func TestValuesInTableCells(t *testing.T) {
	d := parse("## T\n\n| a | b |\n|---|---|\n| {= x} | so {= y} |\n")
	row := d.Tables[0].Rows[0]
	require.Equal(t, 0, row.Cells[0].Expression, "a cell that is just a value gives it")
	require.Equal(t, -1, row.Cells[1].Expression, "text with a value in it stays text")
	require.Len(t, d.Cells, 2)
}

// TestCSV: RFC 4180, with the place of every field.
func TestCSV(t *testing.T) {
	d := parse("## Parts\n\n> ```csv\n> Item, Big Price ,note\n> \"Pipe, 1 m\",4 EUR,\"say \"\"so\"\"\"\n> Elbow,,x\n> ```\n")
	table := d.Tables[0]
	require.Equal(t, []string{"item", "big_price", "note"}, table.Keys)
	require.Equal(t, []string{"Pipe, 1 m", "4 EUR", `say "so"`}, texts(table.Rows[0]))
	require.Equal(t, []string{"Elbow", "", "x"}, texts(table.Rows[1]))
	require.Equal(t, 5, table.Rows[0].Line)
	require.Equal(t, "4", string([]rune(d.Line(5))[table.Rows[0].Cells[1].Column-1]))
	require.Empty(t, d.Problems)
}

func TestFaultyTables(t *testing.T) {
	for text, want := range map[string]string{
		"```csv\na,b\n1,2,3\n```\n":             "got 3 fields, want 2 as in the header",
		"```csv\na,b\n\"open,2\n```\n":          "want RFC 4180",
		"```csv\na,b\nx \"y\" z,2\n```\n":       "want RFC 4180",
		"```csv\na,A\n1,2\n```\n":               `got two columns named "A", want one`,
		"| a | b | A |\n|---|---|---|\n| 1 |\n": `got two columns named "A", want one`,
	} {
		d := parse("## Parts\n\n" + text)
		require.Len(t, d.Problems, 1, text)
		require.Contains(t, d.Problems[0].Message, want, text)
		require.NotEmpty(t, d.Problems[0].Hint, text)
		require.NotEmpty(t, d.Problems[0].Source, text)
		require.Contains(t, d.Problems[0].Subject, `"Parts"`, text)
	}
}
