package quantity_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// The column half_up of the table, computed there with Python's decimal.
func TestRoundMoneyTable(t *testing.T) {
	file, err := os.Open("../../testdata/engineering/money_rounding.csv")
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"value", "half_up"}, rows[0][:2])
	require.Greater(t, len(rows), 6)
	for _, row := range rows[1:] {
		v, err := strconv.ParseFloat(row[0], 64)
		require.NoError(t, err)
		require.Equal(t, row[1], quantity.FixedDecimals(v, 2), row[0])
		want, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
		require.Equal(t, want, quantity.Round(v, 2), row[0])
	}
}

// times multiplies as a run does, in binary; a product of constants would be
// worked out exactly by the compiler.
func times(a, b float64) float64 { return a * b }

// Decimal arithmetic by hand, half away from zero.
func TestRound(t *testing.T) {
	for _, row := range []struct {
		v        float64
		decimals int
		want     float64
	}{
		{times(185.5, 0.19), 2, 35.25}, {35.245, 2, 35.25}, {-35.245, 2, -35.25}, {1.005, 2, 1.01}, {1.0049999999, 2, 1}, {0.285, 2, 0.29}, {times(1.1, 1.15), 3, 1.265}, {2.5, 0, 3}, {-2.5, 0, -3}, {0.5, 0, 1}, {-0.5, 0, -1}, {0.4, 0, 0}, {0.49999999999999, 0, 0},
		{9.995, 2, 10}, {99.5, 0, 100}, {0.05, 1, 0.1}, {0.005, 2, 0.01}, {0.004, 2, 0}, {0.0005, 2, 0}, {123.456, 1, 123.5}, {123.456, 5, 123.456}, {0, 2, 0},
		{1250, -2, 1300}, {1249, -2, 1200}, {-1250, -2, -1300}, {5, -1, 10}, {4, -1, 0}, {50, -2, 100}, {49, -3, 0}, {1e300, 2, 1e300}, {1e-300, 2, 0}, {7, -400, 0}, {7, math.MinInt, 0}, {7.25, math.MaxInt, 7.25}, {0.30000000000000004, 17, 0.3},
	} {
		require.Equal(t, row.want, quantity.Round(row.v, row.decimals), "%v to %d", row.v, row.decimals)
	}
	require.True(t, math.IsInf(quantity.Round(math.Inf(-1), 2), -1))
	require.True(t, math.IsNaN(quantity.Round(math.NaN(), 2)))
}

func TestFixedDecimals(t *testing.T) {
	for _, row := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{1234.5, 2, "1234.50"}, {0, 2, "0.00"}, {-0.001, 2, "0.00"}, {-0.005, 2, "-0.01"}, {0.999, 2, "1.00"}, {1e15, 0, "1000000000000000"}, {0.1, 0, "0"}, {1250, -2, "1300"},
		{math.Inf(1), 2, "inf"}, {math.Inf(-1), 2, "-inf"}, {math.NaN(), 2, "nan"},
	} {
		require.Equal(t, row.want, quantity.FixedDecimals(row.v, row.decimals), row.want)
	}
}

func TestRoundTo(t *testing.T) {
	require.Equal(t, "35.25 EUR", quantity.Must(times(185.5, 0.19), "EUR").RoundTo(2).String())
	require.Equal(t, "1300 mm", quantity.Must(1250, "mm").RoundTo(-2).String())
}
