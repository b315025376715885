package lualib_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/run"
)

func TestLocalsStayInside(t *testing.T) {
	p := badText(t, cell("one", "local hidden = 1\nx = hidden")+cell("two", "y = hidden"))
	require.Equal(t, "unknown name hidden", p.Message)
	p = badText(t, cell("one", "x = 1")+cell("two", "y = x + (unset or 0)"))
	require.Equal(t, "unknown name unset", p.Message)
}

// TestNothingLeaksBetweenRuns keeps one engine and one memory.
func TestNothingLeaksBetweenRuns(t *testing.T) {
	runner := run.New(lualib.New(), limits())
	first := runWith(t, runner, cell("one", "secret = 42 box = {1} print(secret)"))
	require.Empty(t, problems(first))
	second := runWith(t, runner, cell("two", "y = secret"))
	require.Len(t, second.Problems, 1)
	require.Equal(t, "unknown name secret", second.Problems[0].Message)
	third := runWith(t, runner, cell("three", "y = tostring(rawget({}, 'secret'))"))
	require.Equal(t, "nil", value(t, third, "y"))
}

func TestOrderOnThePageDoesNotMatter(t *testing.T) {
	cells := []string{cell("a", "a = 2"), cell("b", "b = a * 3"), cell("c", "function c(x) return x + b end"), cell("d", "d = c(a)")}
	want := good(t, strings.Join(cells, ""))
	for _, order := range [][]int{{3, 2, 1, 0}, {1, 3, 0, 2}, {2, 0, 3, 1}} {
		text := ""
		for _, i := range order {
			text += cells[i]
		}
		got := good(t, text)
		for _, name := range []string{"a", "b", "d"} {
			require.Equal(t, value(t, want, name), value(t, got, name), name)
		}
	}
}

func TestFunctionsOfOtherCells(t *testing.T) {
	r := good(t, cell("owner", "local base, list = 10, {1, 2}\nfunction add(x) return x + base + #list end")+cell("user", "z = add(5)"))
	require.Equal(t, 17.0, value(t, r, "z"), "reading its cell's locals works")

	p := badText(t, cell("owner", "local n = 0\nfunction count() n = n + 1 return n end"))
	require.Equal(t, "got a function for other cells that changes n, a local of its cell; want one that only reads it", p.Message)

	p = badText(t, cell("owner", "total = 0 function add(x) total = total + x end")+cell("user", "add(1) z = 1"))
	require.Equal(t, `the cell "user" calls a function of another cell that changes total there`, p.Message)

	memory := cell("owner", "local seen = {}\nfunction square(x)\n  if not seen[x] then seen[x] = x * x end\n  return seen[x]\nend\nown = square(3)")
	p = badText(t, memory+cell("user", "z = square(4)"))
	require.Equal(t, `the cell "user" changes a table that belongs to the cell "owner"`, p.Message)
	require.Equal(t, 9.0, value(t, good(t, memory), "own"), "the cell itself may remember")
}

func TestBorrowedRecordBelongsToTheCaller(t *testing.T) {
	text := cell("owner", "function buy(n) return cost.item{name = n, price = '2 EUR'} end") + cell("user", "\nbuy 'net'\nbuy 'pump'") + cell("sum", "all = cost.total()")
	r := good(t, text)
	require.Len(t, r.Plan.Items, 2)
	require.Equal(t, 1, r.Plan.Items[0].Origin().Cell)
	require.Equal(t, 6, r.Plan.Items[0].Origin().Line)
	require.Equal(t, 7, r.Plan.Items[1].Origin().Line)
	require.Equal(t, "4 EUR", shown(value(t, r, "all")))
}

const frozenOwner = "list = {3, 1, 2} nested = {inner = {deep = 1}, words = {'a', 'b'}}"

// TestFrozenTablesAreTables reads another cell's tables in every way.
func TestFrozenTablesAreTables(t *testing.T) {
	r := good(t, cell("owner", frozenOwner)+cell("user", `
local n = 0 for _, v in ipairs(list) do n = n + v end
local k = 0 for _ in pairs(nested) do k = k + 1 end
local a, b, c = unpack(list)
print(n, k, #list, a, b, c, table.concat(nested.words, "+"), next(list), select("#", unpack(list)), table.maxn(list), rawget(list, 2), nested.inner.deep, max(list), sum(list), type(list))
local copy = {} for i, v in ipairs(list) do copy[i] = v end table.sort(copy) print(copy[1], copy[3])
`))
	require.Equal(t, "6\t2\t3\t3\t1\t2\ta+b\t1\t3\t3\t1\t1\t3\t6\ttable\n1\t3\n", printed(r))
}

func TestFrozenTablesCannotChange(t *testing.T) {
	for _, way := range []string{
		"list[1] = 9", "list[4] = 9", "list.x = 1", "nested.inner.deep = 2", "nested.inner = nil", "local l = list l[1] = 0", "table.insert(list, 1)", "table.insert(list, 1, 5)",
		"table.remove(list)", "table.sort(list)", "rawset(list, 1, 2)", "setmetatable(list, {})", "for _, v in pairs(nested) do v.z = 1 end", "local f = function(t) t[1] = 2 end f(list)",
		"local t = {list} t[1][1] = 2", "local a a, list[1] = 1, 2", "function nested.f() end", "pcall(table.remove, list) list[1] = 2", "(function(...) local t = ... t[1] = 1 end)(list)",
	} {
		t.Run(way, func(t *testing.T) {
			p := badText(t, cell("owner", frozenOwner)+cell("user", way))
			require.Equal(t, `the cell "user" changes a table that belongs to the cell "owner"`, p.Message)
			require.NotEmpty(t, p.Hint)
			require.Equal(t, 6, p.Pos.Line)
		})
	}
}

func TestResultsAreReadOnly(t *testing.T) {
	for _, way := range []string{"b.water = 1", "b.x = 1", "rawset(b, 'water', 1)", "setmetatable(b, nil)", "table.insert(b, 1)"} {
		p := badCell(t, "local b = volume.box{length = '1 m', width = '1 m', height = '1 m'}\n"+way)
		require.Equal(t, "cannot change the result of volume.box, which is read-only", p.Message, way)
	}
	p := badCell(t, "local b = volume.box{length = '1 m', width = '1 m', height = '1 m'}\nprint(b.watr)")
	require.Equal(t, `got the field "watr", which the result of volume.box does not have`, p.Message)
	require.Equal(t, `did you mean "water"?`, p.Hint)
	p = badCell(t, "local r = rack{name = 'R', tiers = '10 cm; 90 cm'}\nr.tiers[1] = 5")
	require.Equal(t, "cannot change the result of rack, which is read-only", p.Message)
	for _, way := range []string{"string.shout = 1", "local s = string s.shout = 1", "rawset(math, 'pi', 3)", "table.insert(table, 1)", "setmetatable(string, {})"} {
		require.Contains(t, badCell(t, way).Message, "library", way)
	}
}

func TestRowsAreFreshAndWritable(t *testing.T) {
	text := "# Parts\n\n| name | price |\n|---|---|\n| net | 2 EUR |\n\n"
	r := good(t, text+cell("one", `local r = rows "Parts" r[1].price = Q"5 EUR" r[1].extra = 1 r[2] = {} a = rows "Parts"[1].price b = r[1].price`))
	require.Equal(t, "2 EUR", shown(value(t, r, "a")))
	require.Equal(t, "5 EUR", shown(value(t, r, "b")))
}

func TestRandomNumbersFollowTheTitle(t *testing.T) {
	draw := func(title, code string) notebook.Value {
		return value(t, good(t, cell("other", "q = 1")+cell(title, code)), "x")
	}
	one := draw("dice", "x = math.random()")
	require.Equal(t, one, draw("dice", "x = math.random()"), "repeatable")
	require.Equal(t, one, draw("dice", "-- changed code\nlocal unused = 5\nx = math.random()"), "the title alone counts")
	require.NotEqual(t, one, draw("cards", "x = math.random()"))
}

func TestIdenticalCellsGiveIdenticalOutcomes(t *testing.T) {
	text := cell("a", "local t = {} for i = 1, 20 do t['k' .. i] = i * Q'1.5 L' end print(t, print, {}) x = t y = math.random(1000)")
	one, two := good(t, text), good(t, text)
	require.Equal(t, printed(one), printed(two))
	require.Equal(t, one.Values, two.Values)
	require.Regexp(t, `^table: 0x0+1\t`, printed(one), "no address of memory")
}
