package lua51_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

// A peerCase is one call, written for the C program and made here.
type peerCase struct {
	lua  string        // the arguments of C in peerScript
	call func() string // the line expected from it
}

// peerScript prints the outcome of each call on one line, escaped.
const peerScript = `
local function escape(v)
  if type(v) == "string" then
    return '"' .. string.gsub(v, "[^%w%p ]", function(c) return string.format("\\%03d", string.byte(c)) end) .. '"'
  end
  return (string.gsub(tostring(v), "%-nan", "nan"))
end
local function join(first, ...)
  local out = {}
  for i = first, select("#", ...) do out[#out + 1] = escape((select(i, ...))) end
  return table.concat(out, " ")
end
local function C(f, ...)
  local function show(ok, ...)
    if ok then print(join(1, ...)) else print("error " .. escape((...))) end
  end
  show(pcall(f, ...))
end
local function gmatch(s, p)
  local it, out = string.gmatch(s, p), {}
  for i = 1, 40 do
    local r = {pcall(it)}
    if not r[1] then return "error " .. r[2] end
    if r[2] == nil then break end
    out[i] = join(2, unpack(r))
  end
  return table.concat(out, ";")
end
local function each(...)
  if (...) == "a" then return false end
  return "<" .. join(1, ...) .. ">"
end
local N = tonumber
`

// comparePeer runs all cases in one process of the program lua5.1 and compares
// line by line.
func comparePeer(t *testing.T, cases []peerCase) {
	t.Helper()
	program, err := exec.LookPath("lua5.1")
	if err != nil {
		if os.Getenv("WEIRBOOK_PEERS") == "required" {
			require.NoError(t, err, "lua5.1 is required by WEIRBOOK_PEERS")
		}
		t.Skip("lua5.1 is not installed")
	}
	var script strings.Builder
	script.WriteString(peerScript)
	for _, c := range cases {
		script.WriteString("C(" + c.lua + ")\n")
	}
	file := filepath.Join(t.TempDir(), "cases.lua")
	require.NoError(t, os.WriteFile(file, []byte(script.String()), 0o600))
	cmd := exec.Command(program, file)
	cmd.Env = []string{"LC_ALL=C"}
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	lines := strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
	require.Len(t, lines, len(cases))
	var wrong []string
	failed := 0
	for i, c := range cases {
		want := strings.ReplaceAll(lines[i], "to '?'", "to '"+luaName(c.lua)+"'")
		if strings.HasPrefix(want, "error ") {
			failed++
		}
		if got := c.call(); got != want {
			wrong = append(wrong, fmt.Sprintf("%s\n  got  %s\n  want %s", c.lua, got, want))
		}
	}
	require.Empty(t, wrong[:min(len(wrong), 10)], "%d of %d differ", len(wrong), len(cases))
	t.Logf("%d calls agree, %d of them errors", len(cases), failed)
}

// luaName is the last word of the called function's name.
func luaName(call string) string {
	name, _, _ := strings.Cut(call, ",")
	return name[strings.LastIndexByte(name, '.')+1:]
}

// lit is a Lua literal of a text.
func lit(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i := range len(s) {
		if c := s[i]; c > ' ' && c < 127 && c != '"' && c != '\\' {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "\\%03d", c)
		}
	}
	return b.String() + `"`
}

// num is a Lua expression for a number, exact.
func num(f float64) string { return fmt.Sprintf("N%q", strconv.FormatFloat(f, 'g', -1, 64)) }

// shown is a text as peerScript prints it.
func shown(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i := range len(s) {
		if c := s[i]; c >= ' ' && c < 127 {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "\\%03d", c)
		}
	}
	return b.String() + `"`
}

// shownText is the line for a call that gives one text or fails.
func shownText(s string, err error) string {
	if err != nil {
		return shownError(err)
	}
	return shown(s)
}

func shownError(err error) string { return "error " + shown(err.Error()) }

// shownCaptures is a list of captures as peerScript prints it.
func shownCaptures(captures []lua51.Capture) string {
	var out []string
	for _, c := range captures {
		if c.IsPosition {
			out = append(out, strconv.Itoa(c.Position))
		} else {
			out = append(out, shown(c.Text))
		}
	}
	return strings.Join(out, " ")
}
