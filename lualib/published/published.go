// Package published reads the tables of published check values in testdata. It
// is for tests only.
package published

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Row is one row of a table, by column name.
type Row map[string]string

// Table reads a table of testdata from a package two folders below the root;
// lines that start with # name its source.
func Table(t testing.TB, folder, name string) []Row {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", folder, name))
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(lines), 1, "%s has no rows", name)
	return Rows(lines)
}

// Rows names the fields of lines by the first of them.
func Rows(lines [][]string) []Row {
	var rows []Row
	for _, line := range lines[1:] {
		r := Row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}

// Num reads one column of the row as a number.
func (r Row) Num(t testing.TB, column string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "column %s of %v", column, r)
	return value
}

// Digits is half a unit in the last printed place of a column, with a little
// room for the rounding of the printed inputs.
func (r Row) Digits(column string) float64 {
	places := 0
	if dot := strings.IndexByte(r[column], '.'); dot >= 0 {
		places = len(r[column]) - dot - 1
	}
	return 0.51 * math.Pow(10, -float64(places))
}

// RequireDigits compares a value with every printed digit of a column.
func RequireDigits(t testing.TB, r Row, column string, got float64) {
	t.Helper()
	require.InDelta(t, r.Num(t, column), got, r.Digits(column), "%s of %v", column, r)
}
