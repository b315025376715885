package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

var operations = map[string]operation{
	"+": quantity.Quantity.Add, "-": quantity.Quantity.Sub, "*": quantity.Quantity.Mul, "/": quantity.Quantity.Div,
}

// sumRow is an operation on two texts and the text of its result.
type sumRow struct{ left, op, right, want string }

func requireResults(t *testing.T, rows []sumRow) {
	t.Helper()
	for _, row := range rows {
		got, err := operations[row.op](mustParse(t, row.left), mustParse(t, row.right))
		require.NoError(t, err, "%s %s %s", row.left, row.op, row.right)
		require.Equal(t, row.want, got.String(), "%s %s %s", row.left, row.op, row.right)
	}
}

// faultRow is an operation on two texts, its error and the advice.
type faultRow struct{ left, op, right, message, advice string }

func requireFaults(t *testing.T, rows []faultRow) {
	t.Helper()
	for _, row := range rows {
		_, err := operations[row.op](mustParse(t, row.left), mustParse(t, row.right))
		require.EqualError(t, err, row.message)
		require.Equal(t, row.advice, adviceOf(err), row.message)
	}
}

func TestSumsKeepTheFirstUnit(t *testing.T) {
	requireResults(t, []sumRow{
		{"72 in", "+", "2 ft", "96 in"}, {"2 ft", "+", "72 in", "8 ft"}, {"1 m", "+", "1 mm", "1.001 m"}, {"72 in", "-", "2 ft", "48 in"},
		{"1 gal", "+", "4 qt", "2 gal"}, {"1 kWh", "-", "500 Wh", "0.5 kWh"}, {"40 EUR", "+", "2.5 EUR", "42.5 EUR"}, {"1 yr", "+", "1 mo", "1.0833333333333333 yr"},
		{"1 d", "+", "12 h", "1.5 d"}, {"5", "+", "3", "8"}, {"20 %", "+", "5 %", "25 %"}, {"20 %", "+", "1", "120 %"}, {"0", "+", "20 %", "20 %"}, {"35 g/kg", "-", "5 ppt", "30 g/kg"},
		{"1 bar", "+", "100 kPa", "2 bar"}, {"10 K", "+", "9 degF_diff", "15 K"},
	})
}

func TestSumsOfUnlikeThingsAreRefused(t *testing.T) {
	requireFaults(t, []faultRow{
		{"5 L", "+", "3 W", "cannot add 5 L (a volume) and 3 W (a power)", ""},
		{"5 L", "-", "3 W", "cannot subtract 5 L (a volume) and 3 W (a power)", ""},
		{"5 L", "+", "3", "cannot add 5 L (a volume) and 3 (a bare number)", `give the number a unit, as in Q"3 L"`},
		{"600", "+", "3 mm", "cannot add 600 (a bare number) and 3 mm (a length)", `give the number a unit, as in Q"600 mm"`},
		{"5 EUR", "+", "3 USD", "cannot add 5.00 EUR (an amount of EUR) and 3.00 USD (an amount of USD)", `multiply by a rate, as in Q"1.1 EUR/USD"`},
		{"3 K", "+", "2 m", "cannot add 3 K (a temperature difference) and 2 m (a length)", ""},
	})
}

func TestTemperaturePointsAndDifferences(t *testing.T) {
	requireResults(t, []sumRow{
		{"25 degC", "+", "3 K", "28 degC"}, {"3 K", "+", "25 degC", "28 degC"}, {"25 degC", "-", "3 K", "22 degC"}, {"25 degC", "-", "22 degC", "3 K"},
		{"77 degF", "+", "5 K", "86 degF"}, {"25 degC", "+", "9 degF_diff", "30 degC"}, {"86 degF", "-", "77 degF", "9 degF_diff"}, {"25 degC", "-", "68 degF", "5 K"}, {"77 degF", "-", "20 degC", "9 degF_diff"},
		{"3 K", "*", "2", "6 K"}, {"2 W/K", "*", "5 K", "10 W"}, {"5 K", "+", "3 K", "8 K"},
	})
	const only = `a temperature can only be added to or subtracted from; for a difference write Q"5 K"`
	requireFaults(t, []faultRow{
		{"25 degC", "+", "3 degC", "cannot add 25 degC (a temperature) and 3 degC (a temperature)", `add a difference, as in Q"3 K"`},
		{"25 degC", "+", "3", "cannot add 25 degC (a temperature) and 3 (a bare number)", `a temperature changes by a difference, as in Q"3 K"`},
		{"25 degC", "-", "3 m", "cannot subtract 25 degC (a temperature) and 3 m (a length)", `a temperature changes by a difference, as in Q"3 K"`},
		{"3 K", "-", "25 degC", "cannot subtract 3 K (a temperature difference) and 25 degC (a temperature)", "subtract a difference from a temperature, not the other way"},
		{"25 degC", "*", "2", "cannot multiply 25 degC (a temperature) and 2 (a bare number)", only}, {"10 W", "/", "25 degC", "cannot divide 10 W (a power) and 25 degC (a temperature)", only},
	})
	_, err := mustParse(t, "25 degC").Neg()
	require.EqualError(t, err, "cannot change the sign of the temperature 25 degC")
	_, err = mustParse(t, "25 degC").Pow(2)
	require.EqualError(t, err, "cannot raise the temperature 25 degC to a power")
	_, err = mustParse(t, "25 degC").In("K")
	require.EqualError(t, err, "cannot show 25 degC (a temperature) in K (a temperature difference)")
}

func TestConversionsAreChecked(t *testing.T) {
	_, err := mustParse(t, "5 L").In("kg")
	require.EqualError(t, err, "cannot show 5 L (a volume) in kg (a mass)")
	_, err = mustParse(t, "5 L").In("litter")
	require.EqualError(t, err, `unknown unit "litter"`)
	_, err = mustParse(t, "5 L").To(nil)
	require.EqualError(t, err, "cannot show 5 L (a volume) in a bare number (a bare number)")
	require.Panics(t, func() { mustParse(t, "5 L").MustIn("kg") })
	require.Panics(t, func() { quantity.Must(1, "nonsense") })
}

func TestPowersAndRoots(t *testing.T) {
	for _, row := range []struct {
		text string
		n    int
		want string
	}{{"3 in", 2, "9 in2"}, {"2 m", 3, "8 m3"}, {"2 m", -1, "0.5 1/m"}, {"2 m/s", 2, "4 m2/s2"}, {"2 m", 0, "1"}, {"3", 2, "9"}, {"20 %", 2, "0.04000000000000001"}} {
		got, err := mustParse(t, row.text).Pow(row.n)
		require.NoError(t, err)
		require.Equal(t, row.want, got.String())
	}
	for text, want := range map[string]string{"9 in2": "3 in", "16 m2/s2": "4 m/s", "25": "5", "25 %": "0.5", "4 L/m": "0.06324555320336758 m"} {
		got, err := mustParse(t, text).Sqrt()
		require.NoError(t, err)
		require.Equal(t, want, got.String())
	}
	for text, want := range map[string]string{
		"-4 m2": "cannot take the square root of the negative -4 m2", "4 m": "cannot take the square root of 4 m (a length)", "4 EUR": "cannot take the square root of 4.00 EUR (an amount of EUR)", "25 degC": "cannot take the square root of 25 degC (a temperature)",
	} {
		_, err := mustParse(t, text).Sqrt()
		require.EqualError(t, err, want)
	}
}

func TestExponentsBeyondTheBoundAreRefused(t *testing.T) {
	for _, row := range []struct {
		text string
		n    int
		want string
	}{
		{"2 m", 13, "cannot raise 2 m to the power 13"}, {"2 m2", 7, "the exponent of m grows beyond 12"}, {"2 L", 5, "the exponent of length grows beyond 12"},
		{"2 EUR2", 7, "the exponent of EUR grows beyond 12"}, {"2 EUR12", 12, "the exponent of EUR grows beyond 12"}, {"2 %12", 12, "the exponent of % grows beyond 12"},
	} {
		_, err := mustParse(t, row.text).Pow(row.n)
		require.EqualError(t, err, row.want)
	}
	requireFaults(t, []faultRow{
		{"2 m7", "*", "2 m7", "the exponent of m grows beyond 12", ""}, {"2 L3", "*", "2 m7", "the exponent of length grows beyond 12", ""}, {"1 1/m7", "/", "2 m7", "the exponent of m grows beyond 12", ""},
		{"2 EUR12", "*", "1 EUR", "the exponent of EUR grows beyond 12", ""}, {"2 EUR/USD", "*", "3 GBP", "three currencies in one value", ""},
	})
}

func TestSignAndSize(t *testing.T) {
	minus, err := mustParse(t, "5 m").Neg()
	require.NoError(t, err)
	require.Equal(t, "-5 m", minus.String())
	require.Equal(t, "5 m", minus.Abs().String())
	require.Equal(t, "5 m", mustParse(t, "5 m").Abs().String())
}

func TestCompare(t *testing.T) {
	for _, row := range []struct {
		left, right string
		want        int
	}{
		{"12 in", "1 ft", 0}, {"1 gal", "231 in3", 0}, {"1 m", "999 mm", 1}, {"999 mm", "1 m", -1}, {"25 degC", "77 degF", 0}, {"-40 degC", "-40 degF", 0}, {"25 degC", "26 degC", -1}, {"20 degC", "69 degF", -1},
		{"35 g/kg", "35 ppt", 0}, {"20 %", "0.2", 0}, {"5 m", "0", 1}, {"0", "5 W", -1}, {"-5 EUR", "0", -1}, {"0 m", "0", 0}, {"3 K", "3 K", 0},
		{"1 m", "1.0000000000005 m", 0}, {"1 m", "1.000000000005 m", -1}, {"1e300 m", "1e300 m", 0}, {"1e-300 m", "2e-300 m", -1},
	} {
		got, err := mustParse(t, row.left).Compare(mustParse(t, row.right))
		require.NoError(t, err)
		require.Equal(t, row.want, got, "%s and %s", row.left, row.right)
		back, err := mustParse(t, row.right).Compare(mustParse(t, row.left))
		require.NoError(t, err)
		require.Equal(t, -row.want, back, "%s and %s", row.right, row.left)
	}
	a, err := mustParse(t, "0.1 EUR").Add(mustParse(t, "0.2 EUR"))
	require.NoError(t, err)
	same, err := a.Compare(mustParse(t, "0.3 EUR"))
	require.NoError(t, err)
	require.Zero(t, same)
}

func TestCompareRefuses(t *testing.T) {
	for _, row := range []faultRow{
		{"5 L", "", "5 kg", "cannot compare 5 L (a volume) and 5 kg (a mass)", ""}, {"5 L", "", "5", "cannot compare 5 L (a volume) and 5 (a bare number)", `give the number a unit, as in Q"5 L"`},
		{"25 degC", "", "0", "cannot compare 25 degC (a temperature) and 0 (a bare number)", `give the number a unit, as in Q"0 degC"`}, {"25 degC", "", "5 K", "cannot compare 25 degC (a temperature) and 5 K (a temperature difference)", ""},
		{"5 EUR", "", "5 USD", "cannot compare 5.00 EUR (an amount of EUR) and 5.00 USD (an amount of USD)", `multiply by a rate, as in Q"1.1 EUR/USD"`},
	} {
		_, err := mustParse(t, row.left).Compare(mustParse(t, row.right))
		require.EqualError(t, err, row.message)
		require.Equal(t, row.advice, adviceOf(err))
	}
}

func TestCompareAtTheEdgeOfNumbers(t *testing.T) {
	huge := quantity.Must(math.Inf(1), "m")
	same, err := huge.Compare(huge)
	require.NoError(t, err)
	require.Zero(t, same)
	more, err := huge.Compare(quantity.Must(1, "m"))
	require.NoError(t, err)
	require.Equal(t, 1, more)
	_, err = quantity.Must(math.NaN(), "m").Compare(quantity.Must(1, "m"))
	require.EqualError(t, err, "cannot compare nan m and 1 m: nan is no number")
}
