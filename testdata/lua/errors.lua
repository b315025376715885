---- pcall
print(pcall(function() return 1, 2 end)) print(pcall(function() error("bad") end)) print(pcall(error, "direct")) print(pcall(function() error() end))
---- pcall passes arguments
print(pcall(function(a, b) return a + b end, 2, 3)) print(pcall(string.rep, "x", 3)) print(pcall(pcall, error, "x"))
---- error with a table
local ok, e = pcall(function() error({code = 42, text = "lost"}) end) print(ok, type(e), e.code, e.text)
---- error with other kinds
print(pcall(error, nil)) print(pcall(error, 5)) print(pcall(error, true)) local ok, e = pcall(error, print) print(ok, e == print)
---- error with levels
local function f() error("level one", 1) end local function g() error("level two", 2) end local function h() error("level zero", 0) end print(pcall(f)) print(pcall(function() g() end)) print(pcall(h))
---- error with a number in the message
print(pcall(function() error("code " .. 5 .. ": x: 7") end))
---- error caught far out
local function deep(n) if n == 0 then error("bottom") end deep(n - 1) end print(pcall(deep, 50))
---- errors in errors
print(pcall(function() local ok, e = pcall(error, "inner") error("outer: " .. e, 0) end))
---- nested pcall
print(pcall(function() local a = {pcall(function() local b = {pcall(error, "c")} error("b", 0) end)} return a[1], a[2], "fine" end))
---- thirty nested pcalls
local function nest(n) if n == 0 then error("deep", 0) end local ok, e = pcall(nest, n - 1) error(e .. n, 0) end print(pcall(nest, 30))
---- an error does not cut variables off
local n = 0 local function bump() n = n + 1 return n end print(pcall(function() bump() error("x", 0) end)) print(n, bump(), n) n = 10 print(bump())
---- an error does not cut the caller's variables off
local function run() local count = 0 local function inc() count = count + 1 end inc() pcall(function() inc() error("x") end) inc() count = count + 10 inc() return count end print(run())
---- closures made in a failed function
local kept print(pcall(function() local secret = "kept" kept = function() return secret end local other = 5 error("x", 0) end)) local a, b, c = 1, 2, 3 print(kept())
---- closures made in a failed function keep their own variable
local get, set pcall(function() local v = 1 get = function() return v end set = function(x) v = x end error("x") end) local function noise(a, b, c, d) return a, b, c, d end noise(7, 8, 9, 10) pcall(noise, 1, 2, 3) set(5) print(get()) pcall(function() local q, r, s = 11, 12, 13 error("y") end) print(get())
---- a loop of failures
local fs = {} for i = 1, 5 do pcall(function() local k = i * 10 fs[i] = function() k = k + 1 return k end error("x") end) end print(fs[1](), fs[2](), fs[5](), fs[1]())
---- xpcall
print(xpcall(function() return 1, 2 end, print)) print(xpcall(function() error("bad", 0) end, function(m) return "handled: " .. m end)) print(xpcall(function() error({7}) end, function(e) return e[1] end))
---- xpcall and a closure of the failed function
local kept print(xpcall(function() local v = "right" kept = function() return v end error("x", 0) end, function(m) return m .. "!" end)) print(kept())
---- xpcall handler sees a closure
local peek print(xpcall(function() local v = 7 peek = function() return v end error("x", 0) end, function(m) return m .. peek() end))
---- a handler that fails
print((xpcall(function() error("x") end, function() error("y") end)))
---- assert
print(assert(1, 2, 3)) print(pcall(assert, false)) print(pcall(assert, nil, "message")) print(pcall(assert)) print(pcall(assert, false, nil)) print(select("#", assert(1, nil)))
---- a failed call leaves tables as they are
local t = {1, 2} pcall(function() t[3] = 3 error("x") t[4] = 4 end) print(#t)
---- errors from the language
print((pcall(function() local x = nil return x.y end)), (pcall(function() return #5 end)), (pcall(function() return -{} end)), (pcall(function() return {} .. "x" end)), (pcall(function() return 1 + nil end)))
---- errors in metamethods
local t = setmetatable({}, {__index = function(_, k) error("no field " .. k, 0) end}) print(pcall(function() return t.name end))
---- errors in iterators
print(pcall(function() for x in function() error("stop", 0) end do end end))
---- errors in gsub and sort
print(pcall(string.gsub, "abc", "%w", function(c) error("at " .. c, 0) end)) print(pcall(table.sort, {2, 1}, function() error({}) end) == false)
---- an error rethrown
local ok, e = pcall(function() local ok, e = pcall(error, {n = 1}) e.n = e.n + 1 error(e) end) print(ok, e.n)
---- try and finally
local function try(f, finally) local r = {pcall(f)} finally() if not r[1] then return "failed: " .. tostring(r[2]) end return unpack(r, 2) end local log = {} print(try(function() log[#log + 1] = "body" return 5 end, function() log[#log + 1] = "finally" end)) print(try(function() error("z", 0) end, function() log[#log + 1] = "finally" end)) print(table.concat(log, " "))
---- pcall in a loop with a counter
local good, bad = 0, 0 for i = 1, 200 do local ok = pcall(function() if i % 3 == 0 then error("three") end good = good + 1 end) if not ok then bad = bad + 1 end end print(good, bad)
---- pcall of what cannot be called
print((pcall(nil)), (pcall(5)), (pcall({})))
---- results through pcall
local function f(...) return ... end print(select("#", pcall(f, nil, nil))) print(pcall(f)) print((pcall(f, 1)))
---- pcall of a callable table
print(pcall(setmetatable({}, {__call = function(self, x) return "called", x end}), 5))
