package lualib_test

import (
	"runtime/debug"
	"testing"
)

// attacks are aimed at the native parts: work that no instruction of the
// language shows, recursion in Go, and what happens after a cell has ended.
var attacks = map[string]struct{ promise, cells string }{
	"one large text printed many times over": {"stopped", cell("bad", `local s = string.rep("x", 6e7) print(s, s, s, s, s, s, s, s, s, s)`)},
	"one large text as many values":          {"stopped", cell("bad", `local s = string.rep("x", 6e7) t = {} for i = 1, 2000 do t[i] = s end`)},
	"large keys above small tables":          {"stopped", cell("bad", `local s = string.rep("x", 6e7) t = {} t[s] = {} for i = 1, 2000 do t[s][i] = {i} end u = {} u[s] = 1 u[s .. "y"] = 2`)},
	"a chain of closures lent out":           {"runs", cell("lender", `local f = function() return 1 end for i = 1, 2e5 do local g = f f = function() return g end end function lent() return f end`) + cell("user", `x = type(lent())`)},
	"a deep table lent out":                  {"runs", cell("lender", `local deep = {} local t = deep for i = 1, 5e4 do t.t = {} t = t.t end function lent() return deep end`) + cell("user", `x = type(lent())`)},
	"sums of a long list without end":        {"stopped", cell("bad", `local t = {} for i = 1, 2e5 do t[i] = i end while true do local s = sum(t) end`)},
	"the least of a long list without end":   {"stopped", cell("bad", `local t = {} for i = 1, 2e5 do t[i] = i end while true do local s = min(t) end`)},
	"lengths without end":                    {"stopped", cell("bad", `local t = {} t[262143] = 1 t[262143] = nil while true do local n = #t end`)},
	"greatest keys without end":              {"stopped", cell("bad", `local t = {} for i = 1, 2e5 do t[i] = i end while true do local n = table.maxn(t) end`)},
	"removals from an emptied list":          {"runs", cell("bad", `local t = {} for i = 1, 5000 do t[i] = i end while #t > 0 do t[#t] = nil end`)},
	"removals from a long list":              {"runs", cell("bad", `local t = {} for i = 1, 200000 do t[i] = i end while #t > 0 do table.remove(t) end`)},
	"totals of many records without end":     {"stopped", cell("loads", `for i = 1, 50000 do power.load{name = "l" .. i, power = "1 W"} end`) + cell("bad", `while true do local e = power.total{} end`)},
	"budgets of many items without end":      {"stopped", cell("items", `for i = 1, 50000 do cost.item{name = "i", price = "1 EUR"} end`) + cell("bad", `while true do local e = cost.total() end`)},
	"many links to nothing":                  {"refused", cell("bad", `for i = 1, 20000 do power.load{name = "l" .. i, power = "1 W", circuit = "no such " .. i} end for i = 1, 5000 do power.circuit{name = "c" .. i, voltage = "230 V", breaker = "16 A"} end`)},
	"many steps after all of a name":         {"runs", cell("bad", `for i = 1, 3000 do build.step{name = "fill", tank = "t"} if i == 1 then tank{name = "t", length = "1 m", width = "1 m", height = "1 m"} end break end for i = 1, 5000 do build.step{name = "s" .. i, after = i > 1 and "s" .. (i - 1) or nil} end`)},
	"records with long names":                {"stopped", cell("bad", `local s = string.rep("n", 90000) for i = 1, 1e5 do check{s, true} end`)},
	"sorts inside sorts":                     {"stopped", cell("bad", `local function f() local t = {3, 1, 2} table.sort(t, function(a, b) f() return a < b end) end f()`)},
	"replacements inside replacements":       {"stopped", cell("bad", `local function f() return (("ab"):gsub("%w", function(c) return f() end)) end f()`)},
	"the deepest stack there is":             {"stopped", cell("bad", `local function deep(n, d) if n > 0 then return 1 + deep(n - 1, d) end local ok, e = pcall(deep, 150, d + 1) error(e, 0) end deep(150, 0)`)},
	"names inside names of a text":           {"stopped", cell("bad", `local t = setmetatable({}, {__tostring = function(t) return tostring({}) .. tostring(t) end}) print(t)`)},
	"metatables of metatables":               {"stopped", cell("bad", `local function f(n) return setmetatable({}, {__index = function() return f(n + 1).x end}) end print(f(0).x)`)},
	"an error of an error of an error":       {"runs", cell("bad", `local function f(m) xpcall(function() error(m) end, function(e) f(e .. e) end) end f("x")`)},
	"joining by metamethods":                 {"stopped", cell("bad", `local t = {} setmetatable(t, {__concat = function(a, b) return t .. t end}) print(t .. "x")`)},
	"equality by metamethods":                {"stopped", cell("bad", `local mt = {} mt.__eq = function(a, b) return a == b end print(setmetatable({}, mt) == setmetatable({}, mt))`)},
	"order by metamethods":                   {"stopped", cell("bad", `local mt = {} mt.__lt = function(a, b) return a < b end print(setmetatable({}, mt) < setmetatable({}, mt))`)},
	"arithmetic by metamethods":              {"stopped", cell("bad", `local mt = {} mt.__add = function(a, b) return 1 + b end local t = setmetatable({}, mt) print(t + t)`)},
	"keys that come and go":                  {"stopped", cell("bad", `local t, i = {}, 0 while true do i = i + 1 t["k" .. i] = 1 t["k" .. i] = nil end`)},
	"cells that double what they read":       {"refused", doubling()},
	"a table read by many names":             {"stopped", "# T\n\n|a|b|\n|---|---|\n|1|2|\n\n" + cell("bad", `while true do local r = rows "T" end`)},
	"values that grow in a circle of sizes":  {"stopped", cell("bad", `local s = "x" while true do s = (s .. s):sub(1, 3e7) end`)},
}

// doubling is a chain of cells, each of which holds the table of the one before
// it twice.
func doubling() string {
	text := cell("c0", "t0 = {1, 2, 3}")
	for i := 1; i < 50; i++ {
		name := func(n int) string { return "t" + string(rune('a'+n/26)) + string(rune('a'+n%26)) }
		before := name(i - 1)
		if i == 1 {
			before = "t0"
		}
		text += cell("more", name(i)+" = {"+before+", "+before+"}")
	}
	return text
}

func TestAttacksOnNativeParts(t *testing.T) {
	previous := debug.SetMemoryLimit(int64(hostileLimits.Memory / 4 * 3))
	defer debug.SetMemoryLimit(previous)
	both := newRunners()
	for _, name := range sorted(attacks) {
		a := attacks[name]
		t.Run(name, func(t *testing.T) {
			attack(t, both, []byte("<!-- "+name+"; what must happen: "+a.promise+" -->\n# Attack\n\n"+a.cells+cell("honest", "fine = 1 + 1")))
		})
	}
}
