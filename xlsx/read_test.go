package xlsx_test

import (
	"bytes"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"weirbook/notebook"
)

// reader reads a written workbook back.
type reader struct {
	*excelize.File
	t testing.TB
}

// read writes a result and opens what was written.
func read(t testing.TB, r *notebook.Result) *reader {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(write(t, r)))
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, f.Close()) })
	return &reader{f, t}
}

// row finds the row whose cell in a column has a text; from counts the hits.
func (r *reader) row(sheet, column, text string, hit int) string {
	r.t.Helper()
	rows, err := r.GetRows(sheet)
	require.NoError(r.t, err)
	for i := range rows {
		if r.text(sheet, column+strconv.Itoa(i+1)) == text {
			if hit--; hit == 0 {
				return strconv.Itoa(i + 1)
			}
		}
	}
	require.Failf(r.t, "no such row", "%s!%s: %q", sheet, column, text)
	return ""
}

// column finds the letters of the column whose header in a row begins with a
// text.
func (r *reader) column(sheet, row, head string) string {
	r.t.Helper()
	for letter := 'A'; letter <= 'Z'; letter++ {
		if strings.HasPrefix(r.text(sheet, string(letter)+row), head) {
			return string(letter)
		}
	}
	require.Failf(r.t, "no such column", "%s: %q", sheet, head)
	return ""
}

// all is every text of a sheet, cell by cell.
func (r *reader) all(sheet string) string {
	r.t.Helper()
	rows, err := r.GetRows(sheet)
	require.NoError(r.t, err)
	var b strings.Builder
	for _, row := range rows {
		b.WriteString(strings.Join(row, "\t") + "\n")
	}
	return b.String()
}

func (r *reader) text(sheet, cell string) string {
	r.t.Helper()
	v, err := r.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
	require.NoError(r.t, err)
	return v
}

// shown is a cell's value as a reader sees it.
func (r *reader) shown(sheet, cell string) string {
	r.t.Helper()
	v, err := r.GetCellValue(sheet, cell)
	require.NoError(r.t, err)
	return v
}

func (r *reader) number(sheet, cell string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.text(sheet, cell), 64)
	require.NoError(r.t, err, "%s!%s", sheet, cell)
	return v
}

func (r *reader) formula(sheet, cell string) string {
	r.t.Helper()
	v, err := r.GetCellFormula(sheet, cell)
	require.NoError(r.t, err)
	return v
}

func (r *reader) style(sheet, cell string) *excelize.Style {
	r.t.Helper()
	id, err := r.GetCellStyle(sheet, cell)
	require.NoError(r.t, err)
	style, err := r.GetStyle(id)
	require.NoError(r.t, err)
	return style
}
