package lualib_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// author writes random scripts, the same ones each time.
type author struct{ *rand.Rand }

func (a author) pick(list ...string) string { return list[a.IntN(len(list))] }

// number gives an expression whose value is a number; depth bounds its size.
func (a author) number(depth int) string {
	if depth == 0 || a.IntN(5) == 0 {
		return a.pick("x", "y", "z", "0", "1", "2", "3", "7", "10", "0.5", "-1", "1e3", "0x1F", "010", `"10"`, `"0x10"`, `"2.5"`, "#s", "#t", "t[1]", "d[x]", "two()", "(two())", "math.huge")
	}
	l, r := a.number(depth-1), a.number(depth-1)
	switch a.IntN(12) {
	case 0:
		return fmt.Sprintf("math.%s(%s)", a.pick("floor", "ceil", "abs"), l)
	case 1:
		return fmt.Sprintf("math.%s(%s, %s)", a.pick("max", "min"), l, r)
	case 2:
		return fmt.Sprintf("(%s and %s or %s)", a.truth(depth-1), l, r)
	case 3:
		return fmt.Sprintf("select(%d, %s, %s)", 1+a.IntN(2), l, r)
	case 4:
		return fmt.Sprintf("(- %s)", l)
	case 5:
		return fmt.Sprintf("count(%s, %s)", l, r)
	}
	if a.IntN(6) == 0 { // x % math.huge is x in a cell, as in later versions of the language, and no number in 5.1
		return fmt.Sprintf("(%s %% %s)", l, a.pick("3", "-3", "0.5", "7", "0"))
	}
	return fmt.Sprintf("(%s %s %s)", l, a.pick("+", "-", "*", "/"), r)
}

func (a author) truth(depth int) string {
	if depth <= 0 {
		return a.pick("true", "false", "nil", "x == 1", "s < 'm'", "not y")
	}
	switch a.IntN(5) {
	case 0:
		return fmt.Sprintf("(not %s)", a.truth(depth-1))
	case 1:
		return fmt.Sprintf("(%s %s %s)", a.truth(depth-1), a.pick("and", "or"), a.truth(depth-1))
	case 2:
		return fmt.Sprintf("(%s %s %s)", a.text(depth-1), a.pick("<", "<=", ">", ">=", "==", "~="), a.text(depth-1))
	}
	return fmt.Sprintf("(%s + 0 %s %s + 0)", a.number(depth-1), a.pick("<", "<=", ">", ">=", "==", "~="), a.number(depth-1))
}

func (a author) text(depth int) string {
	if depth <= 0 {
		return a.pick("s", `"abc"`, `"a1-b2"`, `""`, `"x,y,z"`, `("q"):rep(3)`, `[[long]]`)
	}
	t := a.text(depth - 1)
	switch a.IntN(8) {
	case 0:
		return fmt.Sprintf("(%s):sub(%d, %d)", t, a.IntN(9)-4, a.IntN(9)-4)
	case 1:
		return fmt.Sprintf("((%s):gsub(%s, %s))", t, a.pick(`"%a"`, `"[a-m]"`, `"%d+"`, `","`, `"(.)(.)"`), a.pick(`"<%0>"`, `"%1"`, `{a = "A", ["1"] = "one"}`, `function(c) return c .. c end`, `""`))
	case 2:
		return fmt.Sprintf("(%s .. %s .. %s)", t, a.text(depth-1), a.pick("x", "y", "1", "2.5", "two()"))
	case 3:
		return fmt.Sprintf("tostring((%s):match(%s))", t, a.pick(`"%d"`, `"(%a)%d"`, `"^a"`, `".-$"`, `"b?c*"`))
	case 4:
		return fmt.Sprintf("string.format(%s, x, %s)", a.pick(`"%d|%s"`, `"%5.1f %s"`, `"%-4d|%q"`, `"%x %10s"`), t)
	case 5:
		return fmt.Sprintf("(%s):%s()", t, a.pick("upper", "reverse", "lower"))
	case 6:
		return fmt.Sprintf("table.concat({%s, %s, x}, %s)", t, a.text(depth-1), t)
	}
	return fmt.Sprintf("tostring(%s)", a.truth(depth-1))
}

// statement gives a statement over the names that every script has.
func (a author) statement(depth int) string {
	if depth == 0 {
		return a.pick("x = x + 1", "y = x", "x, y = y, x", "t[#t + 1] = x", "x, d[x] = 2, y", "s = s .. 'k'", "table.insert(t, 1, y)", "table.remove(t)", "f, x = bump, bump()", "y = (f())")
	}
	inner := a.block(depth - 1)
	switch a.IntN(9) {
	case 0:
		return fmt.Sprintf("if %s then %s else %s end", a.truth(2), inner, a.block(depth-1))
	case 1:
		return fmt.Sprintf("for i = %d, %d do x = i %s end", a.IntN(3), a.IntN(4), inner)
	case 2:
		return fmt.Sprintf("for k, v in ipairs(t) do y = v if k > 3 then break end %s end", inner)
	case 3:
		return fmt.Sprintf("do local x = %d %s show(x) end", a.IntN(9), inner)
	case 4:
		return fmt.Sprintf("show(pcall(function(...) %s if %s then error(%s, 0) end return ... end, x, y))", inner, a.truth(1), a.text(1))
	case 5:
		return fmt.Sprintf("do local n = 0 repeat local m = n n = n + 1 %s until m > 1 end", inner)
	case 6:
		return fmt.Sprintf("do local k = x f = function() k = k + 1 return k end %s end", inner)
	case 7:
		return fmt.Sprintf("(function(a, ...) local y = a %s show(select('#', ...), a) end)(x, two())", inner)
	}
	return fmt.Sprintf("show(%s, %s)", a.number(2), a.text(2))
}

func (a author) block(depth int) string {
	var parts []string
	for range 1 + a.IntN(3) {
		parts = append(parts, a.statement(a.IntN(depth+1)))
	}
	return strings.Join(parts, "; ")
}

// preamble is the start of every random script. What is no number has no one
// sign, so it is shown by its name.
const preamble = `
local x, y, z, s, t, d = 1, 2, 0.25, "seed", {4, 5, 6}, {}
local function show(...)
  local parts = {}
  for i = 1, select("#", ...) do
    local v = select(i, ...)
    if v ~= v then v = "no number" elseif v == 0 then v = 0 end
    if type(v) == "string" and (v:find("^attempt to") or v:find("^cannot ")) then v = "in its own words" end
    parts[i] = tostring(v)
  end
  print(table.concat(parts, " "))
end
local function two() return 8, 9 end
local function count(...) return select("#", ...) end
local function bump() x = x + 10 return x, y end
local f = two
`

// TestRandomScripts compares seeded random scripts with Debian's lua5.1. What
// goes wrong in one is caught in it, and only that it went wrong is compared.
func TestRandomScripts(t *testing.T) {
	a := author{rand.New(rand.NewPCG(5, 1))}
	var scripts []script
	for i := range 400 {
		var b strings.Builder
		b.WriteString(preamble)
		for range 4 {
			fmt.Fprintf(&b, "if not pcall(function() %s end) then print('went wrong') end\n", a.block(2))
		}
		fmt.Fprintf(&b, "show(pcall(function() return %s end) and %q or 'wrong')\n", a.number(3), "right")
		fmt.Fprintf(&b, "print((pcall(function() show(%s) show(%s) end)))\n", a.number(3), a.text(3))
		b.WriteString("show(x, y, z, s, #t, unpack(t)) show(f())\n")
		scripts = append(scripts, script{fmt.Sprint(i), b.String()})
	}
	compare(t, scripts)
}
