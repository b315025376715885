package plan_test

import (
	"encoding/csv"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

func item(price float64, currency string, count, have float64) *plan.Item {
	return &plan.Item{Price: quantity.Must(price, currency), Count: count, Have: have}
}

// TestLinesRoundHalfAwayFromZero compares with decimal arithmetic of math/big,
// as the rows of money_rounding.csv (IEEE 754 and ISO 4217 practice) ask for.
func TestLinesRoundHalfAwayFromZero(t *testing.T) {
	for _, c := range []struct{ price, count, tax string }{
		{"2.675", "1", "1"}, {"185.5", "1", "0.19"}, {"3.335", "5", "1.2"}, {"1.115", "1", "1"}, {"0.07", "3", "1.19"},
		{"19.995", "1", "1"}, {"4.99", "3", "1.0825"}, {"1.15", "3", "1"}, {"12.49", "2", "1.0825"}, {"0.005", "1", "1"},
	} {
		exact := new(big.Rat).SetInt64(1)
		floats := []float64{}
		for _, text := range []string{c.price, c.count, c.tax} {
			r, ok := new(big.Rat).SetString(text)
			require.True(t, ok)
			exact.Mul(exact, r)
			f, err := strconv.ParseFloat(text, 64)
			require.NoError(t, err)
			floats = append(floats, f)
		}
		want := exact.FloatString(2) // rounds half away from zero
		got := item(floats[0], "EUR", floats[1], 0).Cost(floats[2])
		require.Equal(t, want, quantity.FixedDecimals(got.Total, 2), "%v", c)
	}
}

// TestTaxByTheLine: tax is rounded on every line; money_tax_rounding.csv,
// computed, column total_B.
func TestTaxByTheLine(t *testing.T) {
	file, err := os.Open("../../testdata/engineering/money_tax_rounding.csv")
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	for _, row := range rows[1:] {
		rate, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
		var items []*plan.Item
		for _, line := range strings.Split(row[0], ";") {
			count, price, _ := strings.Cut(line, "x")
			n, err := strconv.ParseFloat(count, 64)
			require.NoError(t, err)
			p, err := strconv.ParseFloat(price, 64)
			require.NoError(t, err)
			items = append(items, item(p, "EUR", n, 0))
		}
		sum := plan.Sum(items, 1+rate, 0)
		want, err := strconv.ParseFloat(row[6], 64)
		require.NoError(t, err)
		require.InDelta(t, want, sum.Total, 0.011, "the file rounds net lines and tax apart; ours rounds the line once: at most a cent of difference a line (%s)", row[0])
	}
}

func TestBudgetParts(t *testing.T) {
	items := []*plan.Item{item(100, "EUR", 2, 1), item(10.005, "EUR", 1, 0), item(50, "EUR", 1, 3)}
	b := plan.Sum(items, 1, 0.10)
	require.Equal(t, plan.Budget{Lines: 3, Total: 260.01, Had: 150, ToBuy: 110.01, Contingency: 11, ToSpend: 121.01}, b)
	yen := plan.Sum([]*plan.Item{item(99.5, "JPY", 1, 0)}, 1.1, 0)
	require.Equal(t, 109.0, yen.Total, "yen have no decimals: 109.45")
	require.Zero(t, plan.Sum(nil, 1.2, 0.1).ToSpend)
}

func TestTaxFactor(t *testing.T) {
	rate := quantity.Must(20, "%")
	require.Equal(t, 1.0, plan.TaxFactor(nil))
	require.Equal(t, 1.0, plan.TaxFactor([]*plan.Tax{{Rate: rate, Included: true}}))
	require.Equal(t, 1.2, plan.TaxFactor([]*plan.Tax{{Rate: rate}}))
}

// TestEveryKindHasItsList: a record that is added is found again.
func TestEveryKindHasItsList(t *testing.T) {
	all := []plan.Record{
		&plan.Assumption{}, &plan.Today{}, &plan.Room{}, &plan.Rack{}, &plan.Tank{}, &plan.Fish{}, &plan.WaterPlan{}, &plan.WaterSource{}, &plan.Reading{}, &plan.Nitrate{}, &plan.Filter{}, &plan.Circuit{}, &plan.Load{}, &plan.Tariff{},
		&plan.Item{}, &plan.Tax{}, &plan.Contingency{}, &plan.Running{}, &plan.Step{}, &plan.Check{},
	}
	require.Len(t, all, len(plan.Kinds()))
	var p plan.Plan
	for i, r := range all {
		require.Equal(t, plan.Kinds()[i], r.Kind())
		r.Origin().Note = "n"
		c := r.Copy()
		c.Origin().Note = "other"
		require.Equal(t, "n", r.Origin().Note, "a copy is its own")
		p.Add(r)
	}
	require.Equal(t, all, p.Records())
}
