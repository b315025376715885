package lua51_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

// Source: Lua 5.1 Reference Manual, 2.1 (numerical constants) and 2.2.1
// (coercion); the last four refusals are this package's own.
func TestParseNumber(t *testing.T) {
	for text, want := range map[string]float64{
		"3": 3, "3.0": 3, "3.1416": 3.1416, "314.16e-2": 3.1416, "0.31416E1": 3.1416, "0xff": 255, "0x56": 86,
		" \t\n\v\f\r-7 ": -7, "+5.": 5, ".5": 0.5, "010": 10, "1e5": 100000, "-0x10": -16, "0X1F": 31,
		"1e400": math.Inf(1), "-1e400": math.Inf(-1), "1e-400": 0, "10\x00z": 10, "0x10000000000000000": 0x1p64,
	} {
		got, ok := lua51.ParseNumber(text)
		require.True(t, ok, "%q", text)
		require.Equal(t, want, got, "%q", text)
	}
	for _, text := range []string{
		"", " ", "-", "+-1", "--1", "- 1", "e5", "1e", "1e+", ".", "1.2.3", "1 2", "12x", "0x", "0xg", "1,5", "\x001", "\u00a01",
		"inf", "nan", "1_000", "0x1p4", "0x.8",
	} {
		_, ok := lua51.ParseNumber(text)
		require.False(t, ok, "%q", text)
	}
	negativeZero, _ := lua51.ParseNumber("-0")
	require.True(t, math.Signbit(negativeZero))
}

// Source: Lua 5.1 Reference Manual, 5.1 (tonumber); ISO C 7.20.1.4 (strtoul).
func TestParseNumberBase(t *testing.T) {
	for _, c := range []struct {
		text string
		base int
		want float64
		ok   bool
	}{
		{"ff", 16, 255, true}, {"0xFF", 16, 255, true}, {" 101 ", 2, 5, true}, {"Zz", 36, 1295, true}, {"777", 8, 511, true},
		{"1e1", 10, 10, true}, {"-1", 16, 0x1p64, true}, {"-ffffffffffffffff", 16, 1, true}, {"fffffffffffffffff", 16, 0x1p64, true},
		{"-fffffffffffffffff", 16, 0x1p64, true}, {"+z", 36, 35, true}, {"7\x009", 8, 7, true},
		{"9", 8, 0, false}, {"", 2, 0, false}, {"0x", 16, 0, false}, {"1.5", 16, 0, false}, {"1", 1, 0, false}, {"1", 37, 0, false}, {"+-1", 2, 0, false},
	} {
		got, ok := lua51.ParseNumberBase(c.text, c.base)
		require.Equal(t, c.ok, ok, "%q in base %d", c.text, c.base)
		require.Equal(t, c.want, got, "%q in base %d", c.text, c.base)
	}
}

// Source: Lua 5.1 Reference Manual, 2.2.1 (conversion "in some reasonable
// format"; integers look like integers) and the program's "%.14g".
func TestFormatNumber(t *testing.T) {
	for want, n := range map[string]float64{
		"0": 0, "-0": math.Copysign(0, -1), "10": 10, "-3": -3, "0.1": 0.1, "0.33333333333333": 1.0 / 3, "1e+14": 1e14, "99999999999999": 99999999999999,
		"1e-05": 1e-5, "0.0001": 1e-4, "1.2345678901235e+20": 123456789012345678901, "1e+308": 1e308, "4.9406564584125e-324": 5e-324,
		"inf": math.Inf(1), "-inf": math.Inf(-1), "1": 0.999999999999999,
	} {
		require.Equal(t, want, lua51.FormatNumber(n))
	}
	require.Equal(t, "nan", lua51.FormatNumber(math.NaN()))
	require.Equal(t, "nan", lua51.FormatNumber(math.Copysign(math.NaN(), -1)))
}

// Source: ISO C 6.3.1.4 (the fraction is discarded); beyond the range, what
// the C program gives on a 64-bit PC.
func TestToInteger(t *testing.T) {
	for n, want := range map[float64]int64{
		3.7: 3, -3.7: -3, 0: 0, 0x1p62: 1 << 62, -0x1p63: math.MinInt64,
		0x1p63: math.MinInt64, math.Inf(1): math.MinInt64, math.Inf(-1): math.MinInt64,
	} {
		require.Equal(t, want, lua51.ToInteger(n), "%v", n)
	}
	require.Equal(t, int64(math.MinInt64), lua51.ToInteger(math.NaN()))
}
