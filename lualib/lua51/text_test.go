package lua51_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

// Source: Lua 5.1 Reference Manual, 5.4 (string.sub).
func TestSub(t *testing.T) {
	for _, c := range []struct {
		i, j int
		want string
	}{
		{2, 3, "el"}, {-3, -1, "llo"}, {0, 2, "he"}, {-99, 99, "hello"}, {4, 2, ""}, {6, 6, ""}, {1, -6, ""}, {-2, 4, "l"},
		{math.MinInt, math.MaxInt, "hello"}, {math.MaxInt, math.MinInt, ""},
	} {
		require.Equal(t, c.want, lua51.Sub("hello", c.i, c.j), "%d to %d", c.i, c.j)
	}
}

// Source: Lua 5.1 Reference Manual, 5.4 (string.byte, char, lower, rep,
// reverse, upper) and 5.5 (table.concat).
func TestPlainTextFunctions(t *testing.T) {
	ok := func(want string) func(string, error) {
		return func(got string, err error) {
			t.Helper()
			require.NoError(t, err)
			require.Equal(t, want, got)
		}
	}
	ok("ababab")(lua51.Rep(nil, "ab", 3))
	ok("")(lua51.Rep(nil, "ab", -1))
	ok("")(lua51.Rep(nil, "", math.MaxInt))
	ok("cba")(lua51.Reverse(nil, "abc"))
	ok("AB{\xe9")(lua51.Upper(nil, "aB{\xe9"))
	ok("ab[\xc9")(lua51.Lower(nil, "aB[\xc9"))
	ok("A\x00\xff")(lua51.Char(nil, []int{65, 0, 255}))
	ok("a, b, c")(lua51.Concat(nil, []string{"a", "b", "c"}, ", "))
	ok("")(lua51.Concat(nil, nil, ", "))
	codes, err := lua51.Byte("a\xff", 1, -1)
	require.NoError(t, err)
	require.Equal(t, []byte{97, 255}, codes)
}

func TestPlainTextRefusals(t *testing.T) {
	_, err := lua51.Char(nil, []int{65, 256})
	require.EqualError(t, err, "bad argument #2 to 'char' (invalid value)")
	_, err = lua51.Char(nil, []int{-1})
	require.EqualError(t, err, "bad argument #1 to 'char' (invalid value)")
	_, err = lua51.Rep(nil, "ab", math.MaxInt)
	require.EqualError(t, err, "resulting string too large")
	_, err = lua51.Byte(strings.Repeat("a", 8000), 1, -1)
	require.EqualError(t, err, "stack overflow (string slice too long)")
}

// Source: Lua 5.1 Reference Manual, 5.4 (string.format, its example of %q).
func TestQuote(t *testing.T) {
	require.Equal(t, "\"a string with \\\"quotes\\\" and \\\\\n\"", strings.ReplaceAll(lua51.Quote("a string with \"quotes\" and \\\n"), "\\\n", "\n"))
	require.Equal(t, `"\r\000é"`, lua51.Quote("\r\x00é"))
}
