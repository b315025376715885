package markdown_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
)

// TestValuesInText: recognised before emphasis, links and strikethrough, ended
// by the brace that balances for the cells' language.
func TestValuesInText(t *testing.T) {
	for text, want := range map[string][]string{
		"It is {= a} long.":              {"a"},
		"{=a}{= b }":                     {"a", "b"},
		"{= a*b} and {= c*d}":            {"a*b", "c*d"},
		"{= a_b} _x_ {= c_d}":            {"a_b", "c_d"},
		"{= t[1]} [text {= u[2]}](x)":    {"t[1]", "u[2]"},
		"~~{= a} ~ {= b}~~":              {"a", "b"},
		`{= cost.total{phase = "Lids"}}`: {`cost.total{phase = "Lids"}`},
		`{= f{"}", '}', "\"}"}}`:         {`f{"}", '}', "\"}"}`},
		"{= f[[}]]} x":                   {"f[[}]]"},
		"{= f[==[}]==]} x":               {"f[==[}]==]"},
		"{= a --[[ } ]] + b}":            {"a --[[ } ]] + b"},
		"**{= a}** {= `b`}":              {"a", "`b`"},
		"# Heading {= a}":                {"a"},
		"- item {= a}\n  more {= b}":     {"a", "b"},
		"> quote {= a}\n> and {= b}":     {"a", "b"},
		"| h |\n|---|\n| {= a \\| b} |":  {"a | b"},
		"a line\nand {= x}\nmore":        {"x"},
		"`{= a}` is code":                nil,
		"``{= a} ` ``":                   nil,
		"    {= a}":                      nil,
		"```\n{= a}\n```":                nil,
		`<span title="{= a}">x</span>`:   nil,
		"<div>\n{= a}\n</div>":           nil,
		"<!-- {= a} -->":                 nil,
		`\{= a}`:                         nil,
		"[text](<{= a}>)":                nil,
		"[text](x \"{= a}\")":            nil,
		"{a} and { = b}":                 nil,
		"<https://example.org/{=a}>":     nil,
	} {
		d := parse(text + "\n")
		var got []string
		for _, c := range d.Cells {
			require.Equal(t, notebook.Expression, c.Kind)
			got = append(got, c.Code)
			require.Len(t, c.Lines, 1)
		}
		require.Equal(t, want, got, text)
		require.Empty(t, d.Problems, text)
	}
}

func TestPlacesOfValues(t *testing.T) {
	d := parse("Über {=  a + b} und\n> so {= c}\n")
	require.Equal(t, "a + b} und", at(d, d.Cells[0].Lines[0]))
	require.Equal(t, 1, d.Cells[0].Line())
	require.Equal(t, "c}", at(d, d.Cells[1].Lines[0]))
	require.Equal(t, 2, d.Cells[1].Line())
}

func TestAValueThatIsNotClosed(t *testing.T) {
	for _, text := range []string{"It is {= a + b\nand } later", `{= "}`, "{= f{a} ", "{= a -- }"} {
		d := parse("words\n\nso " + text + "\n")
		require.Empty(t, d.Cells, text)
		require.Len(t, d.Problems, 1, text)
		p := d.Problems[0]
		require.Equal(t, 3, p.Pos.Line)
		require.Equal(t, 4+strings.Index(text, "{="), p.Pos.Column)
		require.Contains(t, p.Message, "closing brace")
		require.Contains(t, p.Hint, `\{=`)
	}
}
