package lua51_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

func numberArg(n float64) lua51.Arg { return lua51.Arg{Kind: lua51.KindNumber, Number: n} }
func textArg(s string) lua51.Arg    { return lua51.Arg{Kind: lua51.KindText, Text: s} }

var tableArg = lua51.Arg{Kind: lua51.KindOther, Text: "12 L", TypeName: "table"}

// Source: Lua 5.1 Reference Manual, 5.4 (string.format); ISO C 7.19.6.1
// (flags, width, precision).
func TestFormat(t *testing.T) {
	for _, c := range []struct {
		layout string
		arg    lua51.Arg
		want   string
	}{
		{"%d", numberArg(3.7), "3"}, {"%d", numberArg(-3.7), "-3"}, {"%i", textArg(" 0x10 "), "16"}, {"%5d|", numberArg(42), "   42|"},
		{"%-5d|", numberArg(42), "42   |"}, {"%05d", numberArg(-42), "-0042"}, {"%+d", numberArg(1), "+1"}, {"% d", numberArg(1), " 1"},
		{"%05.3d", numberArg(7), "  007"}, {"%.0d", numberArg(0), ""}, {"%d", numberArg(math.Inf(1)), "-9223372036854775808"},
		{"%u", numberArg(-1), "18446744073709551615"}, {"%u", numberArg(0x1p64), "0"}, {"%x", numberArg(0x1p63), "8000000000000000"},
		{"%#x", numberArg(255), "0xff"}, {"%#X", numberArg(255), "0XFF"}, {"%#x", numberArg(0), "0"}, {"%o", numberArg(8), "10"},
		{"%#o", numberArg(8), "010"}, {"%#.0o", numberArg(0), "0"}, {"%#.2o", numberArg(8), "010"}, {"%#.3o", numberArg(8), "010"},
		{"%c", numberArg(65), "A"}, {"%3c", numberArg(65), "  A"}, {"%5c", numberArg(0), "    "}, {"%-5c", numberArg(0), ""},
		{"%g", numberArg(1.0 / 3), "0.333333"}, {"%g", numberArg(1e20), "1e+20"}, {"%g", numberArg(100000), "100000"}, {"%g", numberArg(1e6), "1e+06"},
		{"%#g", numberArg(1), "1.00000"}, {"%.0g", numberArg(25), "2e+01"}, {"%G", numberArg(1e-10), "1E-10"}, {"%.3e", numberArg(12345), "1.234e+04"},
		{"%#.0e", numberArg(1), "1.e+00"}, {"%#.0f", numberArg(2.5), "2."}, {"%.0f", numberArg(3.5), "4"}, {"%f", numberArg(-0.5), "-0.500000"},
		{"%08.2f", numberArg(-3.14159), "-0003.14"}, {"%5.1f", numberArg(math.Inf(1)), "  inf"}, {"%05f", numberArg(math.Inf(-1)), " -inf"},
		{"%E", numberArg(math.Inf(1)), "INF"}, {"%+f", numberArg(math.Copysign(math.NaN(), -1)), "+nan"},
		{"%s", numberArg(0.1), "0.1"}, {"%5s|", textArg("ab"), "   ab|"}, {"%-5s|", textArg("ab"), "ab   |"}, {"%.1s", textArg("ab"), "a"},
		{"%.s", textArg("ab"), ""}, {"%s", textArg("a\x00b"), "a"}, {"%s", textArg(strings.Repeat("\x00", 100)), strings.Repeat("\x00", 100)},
		{"%s", tableArg, "12 L"}, {"%q", textArg("a\"\\\n\r\x00"), "\"a\\\"\\\\\\\n\\r\\000\""}, {"%q", numberArg(1), `"1"`},
		{"100%% of %s", textArg("it"), "100% of it"},
	} {
		got, err := lua51.Format(nil, c.layout, []lua51.Arg{c.arg})
		require.NoError(t, err, c.layout)
		require.Equal(t, c.want, got, c.layout)
	}
}

// Source: the messages of the C program.
func TestFormatRefusals(t *testing.T) {
	for _, c := range []struct {
		layout string
		arg    lua51.Arg
		want   string
	}{
		{"%y", numberArg(1), "invalid option '%y' to 'format'"}, {"%", numberArg(1), "invalid option '%' to 'format'"},
		{"%5%", numberArg(1), "invalid option '%%' to 'format'"}, {"%100d", numberArg(1), "invalid format (width or precision too long)"},
		{"%.100f", numberArg(1), "invalid format (width or precision too long)"}, {"%------d", numberArg(1), "invalid format (repeated flags)"},
		{"%d%d", numberArg(1), "bad argument #3 to 'format' (no value)"}, {"%d", lua51.Arg{}, "bad argument #2 to 'format' (no value)"},
		{"%d", textArg("1 L"), "bad argument #2 to 'format' (number expected, got string)"},
		{"%d", tableArg, "bad argument #2 to 'format' (number expected, got table)"},
		{"%q", tableArg, "bad argument #2 to 'format' (string expected, got table)"},
	} {
		_, err := lua51.Format(nil, c.layout, []lua51.Arg{c.arg})
		require.EqualError(t, err, c.want, c.layout)
	}
}

// Source: ISO C 7.19.6.1: the exact decimal value, here 309 digits before the
// point and 99 after it.
func TestFormatOfTheLargest(t *testing.T) {
	got, err := lua51.Format(nil, "%99.99f", []lua51.Arg{numberArg(1e308)})
	require.NoError(t, err)
	require.Len(t, got, 309+1+99)
	require.True(t, strings.HasPrefix(got, "1000000000000000010979063629440455417404923096773118463368106829031575854049114915371633289784946888"))
	require.True(t, strings.HasSuffix(got, "."+strings.Repeat("0", 99)))
}
