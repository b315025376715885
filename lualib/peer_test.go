package lualib_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// script is a short piece of Lua that prints.
type script struct{ name, code string }

// peerDriver runs scripts one after the other, each with globals of its own. A
// cell shows no place in a message that it has caught, so places are cut off.
const peerDriver = `
local function strip(ok, ...)
  if ok then return ok, ... end
  local message = ...
  if type(message) == "string" then message = message:gsub("^[^:]+:%%d+: ", "") end
  return ok, message
end
for i, code in ipairs{
%s} do
  local env = setmetatable({}, {__index = _G})
  env.pcall = function(...)
    return strip(pcall(...))
  end
  env.xpcall = function(f, handler)
    return xpcall(f, function(message)
      if type(message) == "string" then message = message:gsub("^[^:]+:%%d+: ", "") end
      return handler(message)
    end)
  end
  local f = assert(loadstring(code, "=c"))
  setfenv(f, env)
  local ok, message = pcall(f)
  if not ok then print("FAILED " .. tostring(message)) end
  io.write("\1\n")
end
`

// peer runs scripts with Debian's lua5.1 and gives what each printed.
func peer(t *testing.T, scripts []script) []string {
	t.Helper()
	program, err := exec.LookPath("lua5.1")
	if err != nil {
		if os.Getenv("WEIRBOOK_PEERS") == "required" {
			require.NoError(t, err, "lua5.1 is required")
		}
		t.Skip("lua5.1 is not installed")
	}
	var list strings.Builder
	for _, s := range scripts {
		list.WriteString(luaText(s.code) + ",\n")
	}
	file := filepath.Join(t.TempDir(), "driver.lua")
	require.NoError(t, os.WriteFile(file, fmt.Appendf(nil, peerDriver, list.String()), 0o600))
	var out, errs bytes.Buffer
	command := exec.Command(program, file)
	command.Stdout, command.Stderr = &out, &errs
	require.NoError(t, command.Run(), errs.String())
	parts := strings.Split(out.String(), "\x01\n")
	require.Len(t, parts, len(scripts)+1)
	return parts[:len(scripts)]
}

// luaText writes a text as a Lua literal.
func luaText(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i := range len(s) {
		fmt.Fprintf(&b, "\\%03d", s[i])
	}
	b.WriteByte('"')
	return b.String()
}

// compare runs scripts both ways; every printed byte must be the same.
func compare(t *testing.T, scripts []script) {
	t.Helper()
	want := peer(t, scripts)
	for i, s := range scripts {
		t.Run(s.name, func(t *testing.T) {
			result := runText(t, cell("only", s.code))
			require.Empty(t, problems(result), "%s\nlua5.1 prints:\n%s", s.code, want[i])
			require.Equal(t, unnamed(want[i]), unnamed(printed(result)), s.code)
		})
	}
}

// calledFunction is the name in a message about an argument, which lua5.1 does
// not know when the call came from pcall.
var calledFunction = regexp.MustCompile(`bad argument #(\d+) to '[^']*'`)

func unnamed(printed string) string {
	return calledFunction.ReplaceAllString(printed, "bad argument #$1")
}

// scriptsOf reads a file of scripts, each after a line "---- name".
func scriptsOf(t *testing.T, file string) []script {
	t.Helper()
	content, err := os.ReadFile(file)
	require.NoError(t, err)
	var scripts []script
	for _, part := range strings.Split("\n"+string(content), "\n---- ")[1:] {
		name, code, found := strings.Cut(part, "\n")
		require.True(t, found, part)
		scripts = append(scripts, script{name, code})
	}
	return scripts
}

// TestCellsSpeakLua51 compares whole scripts with Debian's lua5.1.
func TestCellsSpeakLua51(t *testing.T) {
	files, err := filepath.Glob("../testdata/lua/*.lua")
	require.NoError(t, err)
	count := 0
	for _, file := range files {
		scripts := scriptsOf(t, file)
		count += len(scripts)
		t.Run(strings.TrimSuffix(filepath.Base(file), ".lua"), func(t *testing.T) { compare(t, scripts) })
	}
	require.Greater(t, count, 150)
}
