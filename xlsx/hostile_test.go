package xlsx_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// hostileTexts are texts that try to become something else, with what must
// stand in the cell.
var hostileTexts = map[string]string{
	"=1+1": "=1+1", "+x": "+x", "-x": "-x", "@x": "@x", "\t=x": "\t=x", "=HYPERLINK(\"file:///etc/passwd\")": "=HYPERLINK(\"file:///etc/passwd\")",
	"<script>alert(1)</script>": "<script>alert(1)</script>", "]]></t></is></c>&amp;": "]]></t></is></c>&amp;", "../../etc/passwd": "../../etc/passwd",
	"bell\a and nul\x00": "bell\ufffd and nul\ufffd", "bad \xff\xfe bytes": "bad \ufffd\ufffd bytes", "\ufffe\uffff": "\ufffd\ufffd",
	"two\r\nlines\rthree": "two\nlines\nthree", "_x000D_": "_x000D_", " blanks ": " blanks ", "0123": "0123", "1e5": "1e5", "TRUE": "TRUE", "🐟": "🐟",
}

// hostile puts a text wherever a plan has one.
func hostile(s string) *notebook.Result {
	r := sample()
	r.Document.Title = s
	source := plan.Source{Note: s}
	r.Plan.Items = append(r.Plan.Items, &plan.Item{Source: source, Name: s, Price: q("1.10 EUR"), Count: 1, Phase: s, Tank: s, Supplier: s})
	r.Plan.Loads = append(r.Plan.Loads, &plan.Load{Source: source, Name: s, Power: q("5 W"), Count: 1, Hours: q("24 h/d"), Circuit: s, Tank: s, Group: s})
	r.Plan.Running = append(r.Plan.Running, &plan.Running{Source: source, Name: s, Amount: q("3 EUR"), Every: q("1 wk"), Tank: s})
	r.Plan.Steps = append(r.Plan.Steps, &plan.Step{Source: source, Name: s, After: []string{s, s}, Phase: s, Tank: s, Order: 3})
	r.Plan.Tanks[0].Name, r.Plan.Tanks[0].Room, r.Plan.Tanks[0].Rack, r.Plan.Tanks[0].Defaults = s, s, s, []string{s}
	r.Plan.Fish[0].Species, r.Plan.Fish[0].Common, r.Plan.Fish[0].Tank = s, s, s
	r.Plan.Checks[0].Name, r.Plan.Checks[0].Sentence, r.Plan.Checks[0].Tank, r.Plan.Checks[0].Note = s, s, s, s
	r.Plan.Assumptions[1].Label, r.Plan.Assumptions[1].Basis, r.Plan.Tariffs[0].Note = s, s, s
	salt, date := saltPlan(), day("2027-03-01")
	salt.Name, salt.Tank, salt.Method, salt.Note = s, s, s, s
	r.Plan.WaterPlans = []*plan.WaterPlan{salt}
	r.Plan.Readings = []*plan.Reading{{Source: source, Tank: s, Date: date, PH: 7}}
	r.Plan.Checks = append(r.Plan.Checks, &plan.Check{Name: "Water of " + s + " on 2027-03-01", Outcome: plan.Pass, Sentence: s, ByLibrary: true})
	r.Plan.WaterSources = []*plan.WaterSource{{Source: source, Name: s}}
	r.Plan.Nitrates = []*plan.Nitrate{{Source: source, Tank: s, Before: q("10 mg/L"), After: q("7 mg/L"), Change: q("30 %"), Every: q("7 d")}}
	r.Plan.Filters = []*plan.Filter{{Source: source, Tank: s, FeedLow: q("1 g/d"), FeedHigh: q("3 g/d")}}
	r.Plan.Circuits = []*plan.Circuit{{Source: source, Name: s, Voltage: q("230 V"), Breaker: q("16 A"), Protection: s}}
	r.Values = append(r.Values, notebook.Named{Name: s, Value: s}, notebook.Named{Name: "t", Value: notebook.NewData("", []notebook.Pair{{Key: s, Value: s}})})
	return r
}

func TestHostileTextsStayText(t *testing.T) {
	for text, want := range hostileTexts {
		t.Run(text, func(t *testing.T) {
			r := hostile(text)
			requireWellFormed(t, write(t, r))
			f := read(t, r)
			for _, at := range []struct{ sheet, column string }{
				{"Start here", "A"}, {"Budget", "A"}, {"Budget", "B"}, {"Budget", "D"}, {"Budget", "J"}, {"Running cost", "B"}, {"Build", "B"},
				{"Tanks", "A"}, {"Tanks", "B"}, {"Water", "A"}, {"Start here", "H"}, {"Checks", "B"}, {"Values", "F"}, {"Values", "B"},
			} {
				row := f.row(at.sheet, at.column, want, 1)
				require.Empty(t, f.formula(at.sheet, at.column+row), "%s!%s", at.sheet, at.column+row)
				kind, err := f.GetCellType(at.sheet, at.column+row)
				require.NoError(t, err)
				require.Equal(t, excelize.CellTypeInlineString, kind)
			}
		})
	}
}

// A text that a spreadsheet would read as a formula if it were typed is marked
// as text, so that it stays one when a person edits the cell.
func TestFormulaLikeTextIsMarked(t *testing.T) {
	f := read(t, hostile("=1+1"))
	require.Equal(t, 49, f.style("Budget", "B"+f.row("Budget", "B", "=1+1", 1)).NumFmt)
	require.NotEqual(t, 49, f.style("Budget", "B10").NumFmt)
}

func TestLongTextIsCut(t *testing.T) {
	for _, letter := range []string{"a", "é", "🐟"} {
		f := read(t, hostile(strings.Repeat(letter, 40_000)))
		text := f.text("Budget", "B15")
		require.True(t, utf8.ValidString(text))
		require.True(t, strings.HasSuffix(text, letter+"…"))
		units := 0
		for _, r := range text {
			units++
			if r > 0xffff {
				units++
			}
		}
		require.LessOrEqual(t, units, 32_767)
		require.GreaterOrEqual(t, units, 32_766)
	}
}

// requireWellFormed reads every part as XML.
func requireWellFormed(t testing.TB, file []byte) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	for _, part := range z.File {
		r, err := part.Open()
		require.NoError(t, err)
		d := xml.NewDecoder(r)
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, part.Name)
		}
		require.NoError(t, r.Close())
	}
}
