package lualib_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

func TestUnitTextBesideAComparison(t *testing.T) {
	for code, want := range map[string]string{
		`x = Q"5 L" < "6 L"`:              `got the text "6 L" beside <, want a quantity`,
		`x = "6 L" >= Q"5 L"`:             `got the text "6 L" beside >=, want a quantity`,
		`local v = Q"5 L" x = v == "5 L"`: `got the text "5 L" beside ==, want a quantity`,
		`local v = 1 x = v ~= "25 degC"`:  `got the text "25 degC" beside ~=, want a quantity`,
	} {
		p := badCell(t, code)
		require.Equal(t, want, p.Message, code)
		require.Contains(t, p.Hint, "write Q\"")
	}
	r := goodCell(t, `x = "abc" < "b" y = "5" == "5"`)
	require.Equal(t, true, value(t, r, "x"))
}

func TestComparisons(t *testing.T) {
	r := goodCell(t, `
print(Q"1 m" < Q"101 cm", Q"1 m" == Q"100 cm", Q"1 m" ~= Q"39 in", Q"20 degC" < Q"70 degF", Q"1 gal" > Q"3 L", Q"1 gal_imp" > Q"1 gal")
print(Q"1 L" > 0, Q"0 L" == 0, 0 <= Q"-1 m", Q"1 L" == nil, nil ~= Q"1 L", Q"1 L" ~= nil, Q"1 L" == {}, Q"1 L" == true)
print(Q"2 m" / Q"1 m" == 2, Q"50 %" < 1, Q"2 m" / Q"1 m" > 1.5, 0.5 == Q"50 %")
print(date "2027-03-06" < date "2027-03-07", date "2027-03-06" == date "2027-03-06", date "2027-03-06" ~= nil)`)
	require.Equal(t, "true\ttrue\ttrue\ttrue\ttrue\ttrue\ntrue\ttrue\tfalse\tfalse\ttrue\ttrue\tfalse\tfalse\ntrue\ttrue\ttrue\ttrue\ntrue\ttrue\ttrue\n", printed(r))
}

func TestComparisonsThatAreRefused(t *testing.T) {
	for code, want := range map[string]string{
		`local a, b = Q"5 L", 6 x = a < b`:                 "cannot compare",
		`local a, b = Q"5 L", 6 x = a == b`:                "cannot compare",
		`local a, b = Q"5 L", "six" x = a < b`:             `cannot compare 5 L and "six"`,
		`local a, b = Q"5 L", "6 L" x = a == b`:            `cannot compare 5 L and "6 L"`,
		`x = Q"5 L" < Q"5 kg"`:                             "cannot compare",
		`x = Q"5 EUR" < Q"5 USD"`:                          "cannot compare",
		`x = Q"5 degC" < Q"5 K"`:                           "cannot compare",
		`local d = "2027-03-06" x = date "2027-03-06" < d`: "cannot compare",
		`x = date "2027-03-06" == 5`:                       "cannot compare the date 2027-03-06 and 5",
		`local n x = n < 1`:                                "cannot compare nothing (nil) < the number 1",
	} {
		p := badCell(t, code)
		require.Contains(t, p.Message, want, code)
		if want != "cannot compare" {
			require.NotEmpty(t, p.Hint, code)
		}
	}
}

func TestNumbersWithoutADimension(t *testing.T) {
	r := goodCell(t, `
local n = Q"30 cm" / Q"10 cm"
local s = 0 for i = 1, n do s = s + i end
local t = {10, 20, 30}
print(s, t[n], math.floor(n / 2), string.format("%d %.1f", n, n), ("x"):rep(n), tonumber(n), math.max(n, 2), n .. "", ({[n] = "key"})[3], 2 ^ n, #t == n)`)
	require.Equal(t, "6\t30\t1\t3 3.0\txxx\t3\t3\t3\tkey\t8\ttrue\n", printed(r))
	require.Contains(t, badCell(t, `for i = 1, Q"3 m" do end`).Hint, "divide by the step")
	require.Contains(t, badCell(t, `print(math.floor(Q"3 m"))`).Message, "number expected, got quantity")
	require.Contains(t, badCell(t, `local t = {} t[Q"3 m"] = 1`).Message, "got 3 m as a key of a table")
}

func TestPlainFunctionsOnQuantities(t *testing.T) {
	r := goodCell(t, `
print(min(Q"1 m", Q"50 cm"), max(Q"1 m", Q"50 cm"), min(3, 1, 2), max{Q"1 L", Q"1 gal"}, abs(Q"-3 L"), abs(-2), sqrt(Q"4 m2"), sqrt(9))
print(round(Q"1.256 m", 2), round(2.5), round(-2.5), round(Q"1.256 m", "cm"), round(1234, -2), sum{Q"1 L", Q"500 mL"}, sum{1, 2, 3}, sum{}, sum({{v = Q"1 L"}, {v = Q"2 L"}}, "v"))
print(max(date "2027-01-01", date "2027-02-01"), type(Q"1 L"), type(date "2027-01-01"), type(sum{1}), type(min(1, 2)))`)
	require.Equal(t, "50 cm\t1 m\t1\t1 gal\t3 L\t2\t2 m\t3\n1.26 m\t3\t-3\t126 cm\t1200\t1.5 L\t6\t0\t3 L\n2027-02-01\tquantity\tdate\tnumber\tnumber\n", printed(r))
	require.Contains(t, badCell(t, `print(min(Q"1 m", Q"1 L"))`).Message, "cannot compare")
	require.Equal(t, "got nothing, want at least one value", badCell(t, `print(max{})`).Message)
	require.Contains(t, badCell(t, `print(sqrt(Q"2 m"))`).Error(), "sqrt")
	require.Contains(t, badCell(t, `print(sum{Q"1 m", Q"1 L"})`).Message, "cannot add")
}

func TestQuantityMethods(t *testing.T) {
	r := goodCell(t, `local q = Q"2 gal" print(q:to "L", q:number "qt", q:unit(), q:text(), (q:to "qt"):unit(), Q"68 degF":to "degC", (Q"6 L" / Q"3 L"):number())`)
	require.Equal(t, "7.571 L\t8\tgal\t2 gal\tqt\t20 degC\t2\n", printed(r))
	for code, want := range map[string]string{
		`print(Q"1 L":to "kg")`:                "cannot",
		`print(Q"1 L":to "litros")`:            "unit",
		`print(Q"1 L":number())`:               "got 1 L without a unit to give its number in, want one",
		`print(Q"1 L".gallons)`:                `got the field "gallons" of 1 L, a quantity; want one of to, number, unit, text`,
		`local q = Q"1 L" q.x = 5`:             "cannot change 1 L, a quantity",
		`print(Q"1 L".to "gal")`:               "got a call with a point, want a colon",
		`print(Q "1,200 L")`:                   "comma",
		`print(Q(5))`:                          "got 5 without a unit, want a text with one",
		`print(date "2027-02-30")`:             `"2027-02-30"`,
		`print(date "2027-03-06".hour)`:        `got the field "hour" of a date, want one of year, month, day, weekday`,
		`print(date "2027-03-06" + Q"1 L")`:    "1 L",
		`print(date "2027-03-06" * 2)`:         "cannot multiply",
		`print(Q"1 L" + Q"1 W")`:               "cannot add 1 L (a volume) and 1 W (a power)",
		`print(Q"1 L" + 1)`:                    "cannot add",
		`print(Q"20 degC" + Q"20 degC")`:       "cannot add",
		`print(Q"1 EUR" + Q"1 USD")`:           "cannot add",
		`print(Q"1 L" + "1 L")`:                `cannot add 1 L and the text "1 L"`,
		`print(Q"1 L" + nil)`:                  "cannot add 1 L and nothing (nil)",
		`print(Q"2 m" ^ 0.3)`:                  "cannot raise 2 m to the power 0.3",
		`print(date "2027-03-06" + "a while")`: "a while",
	} {
		require.Contains(t, badCell(t, code).Message, want, code)
	}
}

func TestDates(t *testing.T) {
	r := goodCell(t, `local d = date "2027-03-06" print(d + "2 wk", d - date "2027-03-01", d.year, d.month, d.day, d.weekday, d - "1 d", "1 d" + d, d + Q"36 h" / 1.5, tostring(d) == "2027-03-06")`)
	require.Equal(t, "2027-03-20\t5 d\t2027\t3\t6\tSaturday\t2027-03-05\t2027-03-07\t2027-03-07\ttrue\n", printed(r))
}

// TestOriginsCrossCells: what another cell made of a name is arithmetic over
// that name.
func TestOriginsCrossCells(t *testing.T) {
	r := good(t, cell("one", `price = assume{"Price", "3 EUR"}`)+cell("two", `cost_of_ten = price * 10`)+cell("three", `with_tax = cost_of_ten * 1.2 + Q"1 EUR"`))
	require.Equal(t, "price * 10", value(t, r, "cost_of_ten").(quantity.Quantity).Origin().String())
	require.Equal(t, `cost_of_ten * 1.2 + Q"1 EUR"`, value(t, r, "with_tax").(quantity.Quantity).Origin().String())
}
