package lualib_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// oddArguments calls every function of a table with odd arguments.
const oddArguments = `
local odd = {0, -1, 1, 0.5, 1e15, -1e15, 1e308, -1e308, math.huge, -math.huge, 0/0, 2^31, 2^53, 2^63, -2^63, "", "x", "%%", "[", "1e5", {}, {1, 2}, true, false, print, Q"1 L", Q"50 %%", date "2027-01-01", string.rep("a", 1000)}
local functions = {%s}
local calls = 0
for _, f in ipairs(functions) do
  for i = 1, #odd do
    pcall(f, odd[i])
    for j = 1, #odd do
      local r = {pcall(f, odd[i], odd[j])}
      if not r[1] then assert(type(r[2]) ~= "string" or not (r[2]:find("runtime error", 1, true) or r[2]:find("interface conversion", 1, true) or r[2]:find("nil pointer", 1, true) or r[2]:find("broke the language", 1, true)), r[2]) end
      calls = calls + 1
      if j %% 3 == 0 then pcall(f, odd[1 + (i + j) %% #odd], odd[i], odd[j]) pcall(f, {1, 2, 3}, odd[i], odd[j]) pcall(f, "abc", odd[i], odd[j]) pcall(f, "abc", "b", odd[i], odd[j]) end
    end
  end
end
print(calls)
`

// TestNativeFunctionsBearOddArguments: no argument reaches a panic of Go.
func TestNativeFunctionsBearOddArguments(t *testing.T) {
	for name, functions := range map[string]string{
		"base":       "assert, error, getmetatable, ipairs, next, pairs, pcall, rawequal, rawget, rawset, select, setmetatable, tonumber, tostring, type, unpack, xpcall",
		"string":     "string.byte, string.char, string.find, string.format, string.gmatch, string.gsub, string.len, string.lower, string.match, string.reverse, string.sub, string.upper, function(s, n) return string.rep(s, type(n) == 'number' and n < 1e6 and n or 2) end",
		"table":      "table.concat, table.insert, table.maxn, table.remove, table.sort",
		"math":       "math.abs, math.ceil, math.floor, math.fmod, math.frexp, math.ldexp, math.max, math.min, math.modf, math.pow, math.random, math.randomseed, math.sqrt, math.log, math.exp, math.atan2",
		"plain":      "Q, date, sum, round, min, max, abs, sqrt",
		"operations": "function(a, b) return a + b end, function(a, b) return a % b end, function(a, b) return a ^ b end, function(a, b) return a / b end, function(a, b) return a * b end, function(a, b) return a .. b end, function(a, b) return a < b end, function(a, b) return a == b end, function(a, b) return #a end, function(a, b) return -a end, function(a, b) return a[b] end, function(a, b) a[b] = 1 end, function(a, b) return a() end, function(a, b) for i = a, b, 1e300 do break end end",
		"methods":    "function(a, b) return a:to(b) end, function(a, b) return a:number(b) end, function(a, b) return Q'1 L':to(b) end, function(a, b) return Q'1 L':number(b) end, function(a, b) return date '2027-01-01' + b end, function(a, b) return date '2027-01-01' - b end",
		"library":    "function(a, b) return tank{name = a, length = b, width = b, height = b} end, function(a, b) return volume.box{length = a, width = b, height = a} end, function(a, b) return salinity.salt{water = a, to = b, temperature = '20 degC'} end, function(a, b) return check{'x', a, at_most = b} end, function(a, b) return volume.prism{points = a, height = b} end, function(a, b) return stocking.fish{tank = 'T', species = a, count = b} end, function(a, b) return salinity.density{salinity = a, temperature = b} end, function(a, b) return rack{a, tiers = b} end, volume.cylinder, tank, check, today, cost.item, build.step, power.load",
	} {
		t.Run(name, func(t *testing.T) {
			r := runText(t, cell("odd", fmt.Sprintf(oddArguments, functions)))
			for _, p := range problems(r) {
				require.NotRegexp(t, machineWords, p)
				if name != "library" { // whose records link to nothing and have one name
					require.Empty(t, p)
				}
			}
			require.NotEmpty(t, printed(r))
		})
	}
}
