package lualib_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestWaterFunctionsBearOddArguments: a full call with one argument after the
// other made odd ends in a result or a message, never in a panic of Go or a
// number that is none.
func TestWaterFunctionsBearOddArguments(t *testing.T) {
	var calls strings.Builder
	for _, name := range sorted(waterCalls) {
		args := waterCalls[name]
		for _, odd := range sorted(args) {
			var fields []string
			for _, k := range sorted(args) {
				if v := args[k]; k == odd {
					fields = append(fields, k+" = v")
				} else {
					fields = append(fields, k+" = "+v)
				}
			}
			fmt.Fprintf(&calls, "try(function(v) return %s{%s} end)\n", name, strings.Join(fields, ", "))
		}
		fmt.Fprintf(&calls, "try(function(v) return %s(v) end)\ntry(function(v) return %[1]s{v, v} end)\n", name)
	}
	r := runText(t, cell("tank", northCell)+cell("odd", `
local odd = {0, -1, 1, 0.5, 1e15, 1e308, -1e308, math.huge, 0/0, "", "x", "1e5", {}, {1, 2}, {{}}, true, print, north, Q"1 L", Q"50 %", Q"1e-12 L", Q"1e-300 mg/L", "1e-9 ppt", "42 ppt", "40 degC", "-2 degC", "1e6 L", "100 %", date "2027-01-01", "9999-12-31", string.rep("a", 1000)}
local numbers = 0
local function look(v)
  if type(v) == "number" then numbers = numbers + 1 assert(v == v and v < math.huge and v > -math.huge, "not a number")
  elseif type(v) == "quantity" then assert(not tostring(v):lower():find("nan") and not tostring(v):lower():find("inf"), "not a number: " .. tostring(v))
  elseif type(v) == "table" then for _, inner in pairs(v) do if not rawequal(inner, north) then look(inner) end end end
end
local calls = 0
local function try(call)
  for i = 1, #odd do
    local ok, r = pcall(call, odd[i])
    calls = calls + 1
    if ok then look(r)
    else for _, word in ipairs{"runtime error", "interface conversion", "nil pointer", "broke the language", "panic"} do assert(type(r) ~= "string" or not r:find(word, 1, true), r) end end
  end
end
`+calls.String()+"print(calls)"))
	for _, p := range problems(r) {
		require.NotRegexp(t, machineWords, p)
		require.NotContains(t, p, "runtime error")
		require.NotContains(t, p, "not a number")
	}
	require.NotEmpty(t, printed(r), "%v", problems(r)[:min(5, len(problems(r)))])
}
