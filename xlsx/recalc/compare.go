package recalc

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// Compare holds the value of every formula cell against the one that was worked
// out anew: numbers to 1e-9 of their size (or of 1 where they are smaller),
// money exactly to its smallest coin, texts letter for letter. A cell with an
// error fails, and so does a workbook without a formula.
func Compare(t testing.TB, ours, recalculated []byte) {
	t.Helper()
	a, b := open(t, ours), open(t, recalculated)
	require.Equal(t, a.GetSheetList(), b.GetSheetList())
	formulas := 0
	for _, sheet := range a.GetSheetList() {
		formulas += compareSheet(t, sheet, a, b)
	}
	require.NotZero(t, formulas, "the workbook has no formulas")
}

func open(t testing.TB, xlsx []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(xlsx))
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, f.Close()) })
	return f
}

// compareSheet gives the number of formulas compared.
func compareSheet(t testing.TB, sheet string, a, b *excelize.File) int {
	t.Helper()
	raw := excelize.Options{RawCellValue: true}
	ours, err := a.GetRows(sheet, raw)
	require.NoError(t, err)
	theirs, err := b.GetRows(sheet, raw)
	require.NoError(t, err)
	n := 0
	for i, row := range ours {
		for j, want := range row {
			cell, err := excelize.CoordinatesToCellName(j+1, i+1)
			require.NoError(t, err)
			formula, err := a.GetCellFormula(sheet, cell)
			require.NoError(t, err)
			if formula == "" {
				continue
			}
			n++
			got := ""
			if i < len(theirs) && j < len(theirs[i]) {
				got = theirs[i][j]
			}
			decimals, money := moneyDecimals(t, a, sheet, cell)
			if problem := differs(want, got, decimals, money); problem != "" {
				t.Errorf("%s!%s: =%s: got %q, worked out anew %q: %s", sheet, cell, formula, want, got, problem)
			}
		}
	}
	return n
}

// differs says how two values differ, "" where they are the same.
func differs(ours, theirs string, decimals int, money bool) string {
	if strings.HasPrefix(theirs, "#") || strings.HasPrefix(theirs, "Err:") {
		return "an error"
	}
	x, errX := strconv.ParseFloat(ours, 64)
	y, errY := strconv.ParseFloat(theirs, 64)
	switch {
	case errX != nil || errY != nil:
		if ours != theirs {
			return "the texts differ"
		}
	case math.Abs(x-y) > 1e-9*max(math.Abs(x), math.Abs(y), 1):
		return "the numbers differ"
	case money && coins(x, decimals) != coins(y, decimals):
		return "the coins differ"
	}
	return ""
}

// coins writes an amount in whole coins. A sum that is shown to the coin but
// kept in full may lie at half a coin; the nudge is far below the tolerance of
// numbers and far above what binary fractions add.
func coins(v float64, decimals int) string {
	const nudge = 1e-10
	return strconv.FormatFloat(math.Round(v*math.Pow10(decimals)+math.Copysign(nudge, v)), 'f', 0, 64)
}

// moneyFormat matches the number format of an amount of money.
var moneyFormat = regexp.MustCompile(`^#,##0(?:\.(0+))?#* "[A-Z]{3}"$`)

// moneyDecimals gives the decimals of a cell's money; ok is false where it is
// no money.
func moneyDecimals(t testing.TB, f *excelize.File, sheet, cell string) (decimals int, ok bool) {
	t.Helper()
	id, err := f.GetCellStyle(sheet, cell)
	require.NoError(t, err)
	style, err := f.GetStyle(id)
	require.NoError(t, err)
	if style.CustomNumFmt == nil {
		return 0, false
	}
	m := moneyFormat.FindStringSubmatch(*style.CustomNumFmt)
	if m == nil {
		return 0, false
	}
	return len(m[1]), true
}
