package xlsx

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// The sums are those of the plan.
func TestSumLinesIsThePlansSum(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	for range 50 {
		b := &book{currency: "EUR", digits: 2, plan: &plan.Plan{}, inputs: inputs{tax: float64(random.IntN(25)) / 100, contingency: float64(random.IntN(20)) / 100}}
		for range random.IntN(300) {
			b.plan.Items = append(b.plan.Items, &plan.Item{Price: quantity.Must(float64(random.IntN(1e6))/1000, "EUR"), Count: float64(random.IntN(40)) / 4, Have: float64(random.IntN(5))})
		}
		require.Equal(t, plan.Sum(b.plan.Items, b.taxFactor(), b.inputs.contingency), b.sumLines(b.budgetLines()))
	}
}

// A spreadsheet keeps 15 significant digits; 1.15 x 3 is 3.4499999999999997 in
// binary and must not be cut to 3.44999999999999.
func TestFifteen(t *testing.T) {
	factor := 1.15
	for got, want := range map[float64]float64{factor * 3: 3.45, 185.5 * 0.19: 35.245, 0.1 + 0.2: 0.3, 1e300: 1e300, 0: 0, -2.5: -2.5, 123456789012345678: 123456789012346000} {
		require.Equal(t, want, fifteen(got))
	}
}

func TestReadingDecimals(t *testing.T) {
	for v, want := range map[float64]int{0: 0, 12: 0, 1.5: 1, 1234.56: 0, 0.31: 2, 0.00012345: 7, 1e15: -1, 1e-7: -1, 16.6666: 2} {
		require.Equal(t, want, readingDecimals(v), "%v", v)
	}
}

func TestPlainName(t *testing.T) {
	for _, name := range []string{"Tanks", "Lids & more", "no phase", "Pumps, hoses"} {
		require.True(t, plainName(name), name)
	}
	for _, name := range []string{"", " Tanks", "Phase 2", "a*", "what?", "a~b", "<5", "=x", "true", "False", "2027-03-06", "Éclairage", "-x", "&"} {
		require.False(t, plainName(name), name)
	}
}

func TestLooksLikeFormula(t *testing.T) {
	for _, text := range []string{"=1+1", "+x", "-x", "@x", "\t=x", " =x", "\n@x", "'=x"} {
		require.True(t, looksLikeFormula(text), text)
	}
	for _, text := range []string{"", "x=1", "1-2", "Tank"} {
		require.False(t, looksLikeFormula(text), text)
	}
}

func TestLinesIn(t *testing.T) {
	for _, c := range []struct {
		text string
		room int
		want int
	}{{"", 10, 1}, {"one two", 10, 1}, {"one two three", 10, 2}, {"a\nb\nc", 10, 3}, {"abcdefghijklmnopqrstuvwxyz", 10, 3}, {"水水水水水水", 10, 2}} {
		require.Equal(t, c.want, linesIn(c.text, c.room), c.text)
	}
}

func TestMoneyFormats(t *testing.T) {
	require.Equal(t, `#,##0.00 "EUR"`, moneyFormat("EUR"))
	require.Equal(t, `#,##0 "JPY"`, moneyFormat("JPY"))
	require.Equal(t, `#,##0.000 "KWD"`, moneyFormat("KWD"))
	require.Equal(t, "#,##0.00", moneyFormat(""))
}

func TestPriceFormats(t *testing.T) {
	for _, c := range []struct {
		price          float64
		currency, want string
	}{{155.5, "JPY", `#,##0.0 "JPY"`}, {155, "JPY", `#,##0 "JPY"`}, {9.995, "EUR", `#,##0.000 "EUR"`}, {9.5, "EUR", `#,##0.00 "EUR"`}, {1.0 / 3, "", "#,##0.0000"}} {
		require.Equal(t, c.want, priceFormat(c.price, c.currency))
	}
	for currency, want := range map[string]int{"JPY": 1, "EUR": 2} {
		require.Equal(t, want, moneyDecimals(12.5, currency))
	}
	require.Equal(t, 2, moneyDecimals(1.0/3, "EUR"), "an amount that was worked out has the coins of its currency")
}

func TestTwoDigits(t *testing.T) {
	for _, c := range []struct {
		v, rounded float64
		decimals   int
	}{{90.22, 90, 0}, {153.4, 150, 0}, {2.45, 2.5, 1}, {0.0543, 0.054, 3}, {9.96, 10, 0}, {0.996, 1, 1}, {0, 0, 0}, {12345, 12000, 0}} {
		rounded, decimals := twoDigits(c.v)
		require.InDelta(t, c.rounded, rounded, 1e-12, "%v", c.v)
		require.Equal(t, c.decimals, decimals, "%v", c.v)
	}
}

func TestPercentFormat(t *testing.T) {
	for percent, want := range map[float64]string{12: "0%", 84.5652: "0.0%", 0.25: "0.00%", 7.5: "0.0%", 0: "0%"} {
		require.Equal(t, want, percentFormat(percent), "%v", percent)
	}
}

func TestPlainExpression(t *testing.T) {
	require.Equal(t, "12334 N / (length * (9 L/min))", plainExpression(`Q"12334.140589334758 N" / (length * Q"9 L/min")`))
	require.Equal(t, "water * 0.25", plainExpression("water * 0.25"))
	require.Equal(t, "abcd…", cutWords("abcdefgh", 5))
	require.Equal(t, "Mains can kill.", sentence("mains can kill"))
	require.Equal(t, ".", sentence(""))
}
