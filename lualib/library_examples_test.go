package lualib_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
)

// exampleTables and exampleNames are what the examples of the library lean on.
const exampleTables = `# Tanks

| name | length | width | height |
|---|---|---|---|
| Row | 90 cm | 45 cm | 45 cm |

# Budget

| item | price | count |
|---|---|---|
| Net | 2.50 EUR | 2 |

# Readings

| tank | date | temperature | pH | ammonia | nitrite | nitrate | oxygen |
|---|---|---|---|---|---|---|---|
| North | 2027-03-06 | 24.5 degC | 7.4 | 0.1 mg/L | 0.05 mg/L | 20 mg/L | 7.5 mg/L |
| North | 2027-03-13 | 24.5 degC | 7.4 | | | 25 mg/L | |

`

var exampleNames = map[string]string{
	"north":       `north = tank{name = "North", length = "120 cm", width = "50 cm", height = "50 cm"}`,
	"south":       `south = tank{name = "South", length = "90 cm", width = "50 cm", height = "50 cm"}`,
	"tanks":       `tanks = {tank{name = "T", length = "90 cm", width = "50 cm", height = "50 cm"}}`,
	"base":        `base = volume.box{length = "1 m", width = "1 m", height = "1 m"}`,
	"stand":       `stand = {bending = Q"40 %"}`,
	"planned":     `planned = Q"3 h"`,
	"measured":    `measured = Q"4 h"`,
	"price":       `price = Q"3.456 EUR"`,
	"electricity": `electricity = assume{"Electricity price", "0.31 EUR/kWh"}`,
}

var statement = regexp.MustCompile(`^(for .* end|[\w, ]+ = .*)$`)

// TestExamplesRun runs the documented example of every function.
func TestExamplesRun(t *testing.T) {
	for _, f := range lualib.New().Functions() {
		t.Run(f.FullName(), func(t *testing.T) {
			require.NotEmpty(t, f.Example)
			code := f.Example
			if !statement.MatchString(code) {
				code = "shown_here = " + code
			}
			text := exampleTables
			for _, name := range sorted(exampleNames) {
				word := regexp.MustCompile(`\b` + name + `\b`)
				if word.MatchString(regexp.MustCompile(`"[^"]*"`).ReplaceAllString(code, "")) && !regexp.MustCompile(`^`+name+` = `).MatchString(code) {
					text += cell("gives "+name, exampleNames[name])
				}
			}
			for _, kind := range sorted(supplies) {
				if kind != "tank" && (len(f.Makes) == 0 || f.Makes[0] != kind || kind == "step" || kind == "item") {
					text += cell("supply of "+string(kind), supplies[kind])
				}
			}
			if f.FullName() == "water.reading" {
				text += cell("its tank", exampleNames["north"])
			}
			if f.FullName() == "power.load" {
				text += cell("hours", `hall = power.total{per = "d"}.connected`)
			}
			good(t, text+cell("example", code))
		})
	}
}

// TestReferenceNamesAllArguments: the printed reference has every argument and
// field of the table.
func TestReferenceNamesAllArguments(t *testing.T) {
	for _, f := range lualib.New().Functions() {
		text := f.Reference()
		for _, a := range f.Args {
			require.Contains(t, text, "\n    "+a.Name+" ", f.FullName())
			require.NotEmpty(t, a.Doc, f.FullName()+" "+a.Name)
		}
		for _, field := range f.Fields {
			require.Contains(t, text, "\n    "+field.Name+" ", f.FullName())
			require.NotEmpty(t, field.Doc, f.FullName()+" "+field.Name)
		}
		require.NotEmpty(t, f.Brief, f.FullName())
		require.NotEmpty(t, f.Source, f.FullName())
	}
}
