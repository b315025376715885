package lualib_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestClearRefusals lists where a cell ends in a message instead of doing as
// Lua 5.1 does.
func TestClearRefusals(t *testing.T) {
	long := "x = {" + strings.Repeat("1,", 25_002) + "}"
	for name, c := range map[string]struct{ code, message string }{
		"recursion without end":         {`local function f(n) return 1 + f(n + 1) end print(f(0))`, "got calls nested too deep, want them to end"},
		"recursion through a metatable": {`local t = setmetatable({}, {__index = function(t, k) return t[k .. "x"] end}) print(t.a)`, "got calls nested too deep, want them to end"},
		"protected calls without end":   {`local function f() local ok, e = pcall(f) error(e, 0) end f()`, "got protected calls nested too deep, want them to end"},
		"a very long list in braces":    {long, "got a list of more than 25000 entries, want less"},
		"a list beyond its end":         {`local t = {} for i = 1, 300000 do t[#t + 1] = i end`, "got a list of more than 262143 items, want less"},
		"the same by insert":            {`local t = {} for i = 1, 262143 do t[i] = i end table.insert(t, 1)`, "got a list of more than 262143 items, want less"},
		"coroutines":                    {`local c = coroutine.create(print)`, "got coroutine, which a cell does not have"},
		"files":                         {`print(io.read())`, "got io, which a cell does not have"},
		"the clock":                     {`print(os.time())`, "got os, which a cell does not have"},
		"code of text":                  {`print(loadstring("return 1")())`, "got loadstring, which a cell does not have"},
		"a name with an accent":         {`local é = 1`, `got "é", which no name or number can hold`},
		"a metatable for a number":      {`setmetatable(5, {})`, "bad argument #1 to 'setmetatable' (table expected, got number)"},
		"a metatable for a text":        {`setmetatable("x", {})`, "bad argument #1 to 'setmetatable' (table expected, got string)"},
		"a metatable for a function":    {`setmetatable(print, {})`, "bad argument #1 to 'setmetatable' (table expected, got function)"},
		"too many results":              {`print(unpack({}, 1, 1e8))`, "too many results to unpack"},
		"a text without bound":          {`print(#string.rep("x", 1e9))`, "got a text of 953 MB, want at most 64 MB"},
		"tables that look each other up": {
			`local a, b = {}, {} setmetatable(a, {__index = b}) setmetatable(b, {__index = a}) print(a.x)`, "got tables that look each other up without end",
		},
	} {
		t.Run(name, func(t *testing.T) {
			require.Equal(t, c.message, badCell(t, c.code).Message)
		})
	}
}

// TestMachineRows holds rows that the comparison with lua5.1 cannot show.
func TestMachineRows(t *testing.T) {
	require.Equal(t, "30000\t30000\n", printed(goodCell(t, `local t = {} for i = 1, 30000 do t[i] = i end print(#t, t[30000])`)))
	require.Equal(t, "189\n", printed(goodCell(t, `local function d(n) if n == 0 then return 0 end return 1 + d(n - 1) end print(d(189))`)))
	require.Equal(t, "2\n", printed(good(t, "\xef\xbb\xbf"+cell("only", "print(1 + 1)"))), "a byte-order mark at the front of the file")
	nul := badCell(t, "x = \x001")
	require.Contains(t, nul.Message, "which no name or number can hold")
	bare := badCell(t, `tank{name = "A", length = "9", width = "9 cm", height = "9 cm"}`)
	require.Contains(t, bare.Error(), `got "9" without a unit, want a length`, "a text is no number on its way into the library")
}

// TestPlaces checks that messages name the line of the cell's own code.
func TestPlaces(t *testing.T) {
	for name, code := range map[string]string{
		"error":           "local function f()\n  error('here')\nend\nf()",
		"a return":        "local function f()\n  return 1 < Q'1 m'\nend\nprint(f())",
		"a joined return": "local function f(x)\n  return 'a' .. x\nend\nprint(f({}))",
		"a field of nil":  "local t = {}\nprint(t.a.b)",
		"a native call":   "local t = {}\nlocal x = string.rep(nil, 2)\n",
		"a caught one":    "local ok, e = pcall(error, 'x')\nerror(e)",
		"inside a pcall":  "pcall(function()\n end) error('x')\n",
		"a library call":  "local a = 1\ntank{name = 'x'}\n",
	} {
		t.Run(name, func(t *testing.T) {
			require.Equal(t, 3, badCell(t, code).Pos.Line)
		})
	}
	require.Equal(t, 4, badCell(t, "local function g() error('x', 2) end\nlocal function h()\n  g()\nend\nh()").Pos.Line, "the caller's line")
}
