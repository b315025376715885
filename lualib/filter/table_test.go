package filter

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

// row is one row of a reference table, by column name.
type row map[string]string

// num reads one column of the row as a number.
func (r row) num(t *testing.T, column string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "column %s of %v", column, r)
	return value
}

// table reads a reference table; lines that start with # name its source.
func table(t *testing.T, name string) []row {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", "water", name))
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(lines), 1, "%s has no rows", name)
	return rowsOf(lines)
}

// rowsOf names the fields of lines by the first of them.
func rowsOf(lines [][]string) []row {
	var rows []row
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}

// digits is half a unit in the last printed place of a column, with a little
// room for the rounding of the printed inputs.
func (r row) digits(column string) float64 {
	places := 0
	if dot := strings.IndexByte(r[column], '.'); dot >= 0 {
		places = len(r[column]) - dot - 1
	}
	return 0.51 * math.Pow(10, -float64(places))
}

// requireDigits compares a value with every printed digit of a column.
func requireDigits(t *testing.T, r row, column string, got float64) {
	t.Helper()
	require.InDelta(t, r.num(t, column), got, r.digits(column), "%s of %v", column, r)
}
