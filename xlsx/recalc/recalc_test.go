package recalc_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"weirbook/xlsx/recalc"
)

// book writes a workbook with the number 2, its double with the given value,
// and the same as money.
func book(t *testing.T, double float64, formula string) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	format := `#,##0.00 "EUR"`
	money, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
	require.NoError(t, err)
	w, err := f.NewStreamWriter("Sheet1")
	require.NoError(t, err)
	require.NoError(t, w.SetRow("A1", []any{2, excelize.Cell{Formula: formula, Value: double}, excelize.Cell{StyleID: money, Formula: formula, Value: double}, "text"}))
	require.NoError(t, w.Flush())
	var out bytes.Buffer
	require.NoError(t, f.Write(&out))
	return out.Bytes()
}

// listener counts what a comparison complains about.
type listener struct {
	testing.TB
	heard []string
}

// Errorf notes a complaint.
func (l *listener) Errorf(format string, args ...any) {
	l.heard = append(l.heard, fmt.Sprintf(format, args...))
}

func TestStrip(t *testing.T) {
	stripped, err := recalc.Strip(book(t, 4, "A1*2"))
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(stripped))
	require.NoError(t, err)
	defer f.Close()
	for cell, want := range map[string]string{"A1": "2", "B1": "", "C1": "", "D1": "text"} {
		got, err := f.GetCellValue("Sheet1", cell)
		require.NoError(t, err)
		require.Equal(t, want, got, cell)
	}
	formula, err := f.GetCellFormula("Sheet1", "B1")
	require.NoError(t, err)
	require.Equal(t, "A1*2", formula)
	_, err = recalc.Strip([]byte("no workbook"))
	require.ErrorContains(t, err, "recalc")
}

func TestCompareHearsDifferences(t *testing.T) {
	for name, c := range map[string]struct {
		ours, theirs float64
		complaints   int
	}{
		"the same": {4, 4, 0}, "binary dust": {4, 4 + 1e-12, 0}, "a coin": {4, 4.01, 2}, "much": {4, 5, 2},
		"half a coin, within the tolerance of numbers": {4.005, 4.005 - 1e-13, 0}, "money a hair apart": {40000.005 + 2e-6, 40000.005 - 2e-6, 1},
	} {
		t.Run(name, func(t *testing.T) {
			l := &listener{TB: t}
			recalc.Compare(l, book(t, c.ours, "A1*2"), book(t, c.theirs, "A1*2"))
			require.Len(t, l.heard, c.complaints)
		})
	}
}

// LibreOffice works a formula out anew: a wrong value is found, and so is an
// error.
func TestLibreOffice(t *testing.T) {
	anew := recalc.LibreOffice(t, book(t, 5, "A1*2"))
	l := &listener{TB: t}
	recalc.Compare(l, book(t, 5, "A1*2"), anew)
	require.Len(t, l.heard, 2)
	recalc.Compare(t, book(t, 4, "A1*2"), anew)

	l = &listener{TB: t}
	recalc.Compare(l, book(t, 5, "A1/0"), recalc.LibreOffice(t, book(t, 5, "A1/0")))
	require.Len(t, l.heard, 2)
	require.Contains(t, l.heard[0], "an error")
}
