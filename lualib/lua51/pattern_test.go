package lua51_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

// Source: Lua 5.1 Reference Manual, 5.4 (string.find) and 5.4.1 (patterns);
// %f and init beyond the end from the C program. The results are the first and
// last position and the captures.
func TestFind(t *testing.T) {
	for _, c := range []struct {
		s, pattern string
		init       int
		want       string
	}{
		{"hello", "l+", 1, "3 4"}, {"hello", "xyz", 1, "nil"}, {"hello", "l", -2, "4 4"}, {"hello", "", 10, "6 5"}, {"hello", "o", -100, "5 5"},
		{"a.b", ".b", 1, "2 3"}, {"a)", ")", 1, "2 2"}, {"key = 7", "(%w+)%s*=%s*(%w+)", 1, `1 7 "key" "7"`}, {"flaaap", "()aa()", 1, "3 4 3 5"},
		{"aXb", "%u", 1, "2 2"}, {"ab12", "%D+", 1, "1 2"}, {"a\x00b", "%z", 1, "2 2"}, {"\xe9", "%a", 1, "nil"},
		{"]", "[]]", 1, "1 1"}, {"x-", "[a-]", 1, "2 2"}, {"b", "[^a-c]", 1, "nil"}, {"5", "[%a-z%d]", 1, "1 1"}, {"^", "[x^]", 1, "1 1"},
		{"aaa", "a-", 1, "1 0"}, {"<a><b>", "<.->", 1, "1 3"}, {"<a><b>", "<.*>", 1, "1 6"}, {"color", "colou?r", 1, "1 5"},
		{"f(a(b)c)", "%b()", 1, "2 8"}, {"'x'", "(['\"])(.-)%1", 1, `1 3 "'" "x"`}, {"THE (quick) fox", "%f[%a]%a+%f[%A]", 5, "6 10"},
		{"abc", "^b", 1, "nil"}, {"abc", "^b", 2, "2 2"}, {"a$", "a$", 1, "nil"}, {"a$b", "$b", 1, "2 3"}, {"ab", "(a(b))", 1, `1 2 "ab" "b"`},
		{"ab", "a\x00x", 1, "nil"}, {"ab", "a.\x00x", 1, "1 2"}, {"ab", "b[", 2, "error \"malformed pattern (missing ']')\""}, {"ab", "x[", 1, "nil"},
	} {
		mt, err := lua51.Find(nil, c.s, c.pattern, c.init, false)
		require.Equal(t, c.want, shownMatch(c.s, true, mt, err), "%q in %q", c.pattern, c.s)
	}
}

// Source: the messages of the C program.
func TestPatternFaults(t *testing.T) {
	for pattern, want := range map[string]string{
		"a%":   "malformed pattern (ends with '%')",
		"a[":   "malformed pattern (missing ']')",
		"a[%]": "malformed pattern (missing ']')",
		"(a":   "unfinished capture",
		"a)":   "invalid pattern capture",
		"%1":   "invalid capture index",
		"(a%1": "invalid capture index",
		"%ba":  "unbalanced pattern",
		"%fa":  "missing '[' after '%f' in pattern",
		// The limits of captures and of nested tries.
		strings.Repeat("()", 33):          "too many captures",
		strings.Repeat("a?", 300) + "b":   "pattern too complex",
		strings.Repeat("a-", 300) + "b":   "pattern too complex",
		strings.Repeat("(a)", 16) + ".*[": "malformed pattern (missing ']')",
	} {
		_, err := lua51.Search(nil, strings.Repeat("a", 400), pattern, 1)
		require.EqualError(t, err, want, "%q", pattern)
	}
}

func TestDepthCountsNestingNotLength(t *testing.T) {
	long := strings.Repeat("a", 50000)
	for _, pattern := range []string{long, ".-$", "a*$", "a+$", "%b()?" + "a*", strings.Repeat("a?", 150) + "a*$"} {
		_, err := lua51.Search(nil, long, pattern, 1)
		require.NoError(t, err, "%.20q", pattern)
	}
}

// Source: Lua 5.1 Reference Manual, 5.4 (string.gmatch: a '^' does not work).
func TestMatcher(t *testing.T) {
	for _, c := range []struct{ s, pattern, want string }{
		{"one two", "%a+", `"one";"two"`}, {"k=v, a=b", "(%w+)=(%w+)", `"k" "v";"a" "b"`}, {"ab", "", `"";"";""`}, {"ab", "()", "1;2;3"},
		{"^a^", "^", `"^";"^"`}, {"aba", "a*", `"a";"";"a";""`},
	} {
		require.Equal(t, shown(c.want), shownMatches(c.s, c.pattern), "%q in %q", c.pattern, c.s)
	}
	mr := lua51.NewMatcher(nil, "ab", "(a")
	for range 2 {
		_, err := mr.Next()
		require.EqualError(t, err, "unfinished capture")
	}
}

// expand replaces as string.gsub with a replacement text.
func expand(m *lua51.Meter, s, pattern, repl string, limit int) (string, int, error) {
	return lua51.Gsub(m, s, pattern, limit, func(mt lua51.Match) (string, bool, error) {
		text, err := lua51.ExpandReplacement(m, repl, s, mt)
		return text, false, err
	})
}

// Source: Lua 5.1 Reference Manual, 5.4 (string.gsub, with its examples); the
// percent sign at the end from the C program.
func TestGsub(t *testing.T) {
	for _, c := range []struct {
		s, pattern, repl string
		limit            int
		want             string
	}{
		{"hello world", "(%w+)", "%1 %1", 11, `"hello hello world world" 2`}, {"hello world", "%w+", "%0 %0", 1, `"hello hello world" 1`},
		{"hello world from Lua", "(%w+)%s*(%w+)", "%2 %1", 20, `"world hello Lua from" 2`}, {"abc", "%w", "%%%1", 9, `"%a%b%c" 3`},
		{"abc", "", "-", 9, `"-a-b-c-" 4`}, {"abc", "b*", "-", 9, `"-a--c-" 4`}, {"abc", "^b*", "-", 9, `"-abc" 1`}, {"abc", "x", "y", 9, `"abc" 0`},
		{"abc", "a", "x", 0, `"abc" 0`}, {"abc", "a", "x", -1, `"abc" 0`}, {"a", "a", "%", 9, `"\000" 1`}, {"ab", "()", "%1", 9, `"1a2b3" 3`},
		{"abc", "(a", "x", 9, `"xbc" 1`}, {"abc", "(a", "%1", 9, `error "unfinished capture"`}, {"abc", "a", "%2", 9, `error "invalid capture index"`},
		{"abc", ".", "", 9, `"" 3`}, {"abc", "a", "%x", 9, `"xbc" 1`},
	} {
		require.Equal(t, c.want, shownGsub(expand(nil, c.s, c.pattern, c.repl, c.limit)), "%q in %q", c.pattern, c.s)
	}
}

func TestGsubKeepsAndForwards(t *testing.T) {
	keepB := func(mt lua51.Match) (string, bool, error) {
		first, err := mt.First("abcb")
		return "<" + first.String() + ">", first.Text == "b", err
	}
	got, n, err := lua51.Gsub(nil, "abcb", "%a", lua51.Unlimited, keepB)
	require.Equal(t, `"<a>b<c>b" 4`, shownGsub(got, n, err))
	_, _, err = lua51.Gsub(nil, "abcb", "(%a", lua51.Unlimited, keepB)
	require.EqualError(t, err, "unfinished capture")
}
