---- closures in a loop
local f = {} for i = 1, 3 do f[i] = function() i = i + 1 return i end end print(f[1](), f[1](), f[2](), f[3]())
---- closures in a while loop
local f, n = {}, 0 while n < 3 do n = n + 1 local k = n f[n] = function() k = k + 10 return k end end print(f[1](), f[2](), f[1](), f[3]())
---- closures in a generic for
local f = {} for _, v in ipairs{"a", "b"} do f[#f + 1] = function() return v end end print(f[1](), f[2]())
---- shared variables
local function pair() local n = 0 return function() n = n + 1 return n end, function() return n end end local inc, get = pair() inc() inc() print(get()) local inc2, get2 = pair() print(get2())
---- counters of counters
local function outer() local a = 0 return function() a = a + 1 local b = 0 return function() b = b + a return b end end end local o = outer() local x, y = o(), o() print(x(), x(), y())
---- repeat sees the locals of its body
local n = 0 repeat local done = n >= 3 n = n + 1 until done print(n)
---- closures in repeat
local f, n = {}, 0 repeat local k = n f[#f + 1] = function() return k end n = n + 1 until k >= 2 print(f[1](), f[2](), f[3]())
---- break and nested loops
for i = 1, 3 do for j = 1, 3 do if j == 2 then break end print(i, j) end end while true do break end
---- varargs
local function f(...) local a, b = ... return select("#", ...), a, b, (...) end print(f()) print(f(1)) print(f(1, nil, 3)) print((f(1, 2)))
---- varargs in a table
local function f(...) local t = {...} return #t, t[1], t[#t] end print(f(1, 2, 3)) local function g(...) return {n = select("#", ...), ...} end print(g(nil, nil).n)
---- varargs passed on
local function g(...) return ... end local function f(...) return g(...), g(...) end print(f(1, 2)) print((g(1, 2)), g()) print(g(g(1, 2), g(3, 4)))
---- two hundred varargs
local t = {} for i = 1, 200 do t[i] = i end local function f(...) return select("#", ...), (select(200, ...)) end print(f(unpack(t)))
---- many results
local function f(n) if n == 0 then return end return n, f(n - 1) end print(f(20)) print(select("#", f(100)))
---- varargs and a fixed argument
local function f(a, ...) return a, select("#", ...), ... end print(f(1)) print(f(1, 2, 3)) print(f())
---- missing and surplus arguments
local function f(a, b) return a, b end print(f(1)) print(f(1, 2, 3)) print(f())
---- recursion
local function fact(n) return n <= 1 and 1 or n * fact(n - 1) end print(fact(5), fact(20)) local function fib(n) if n < 2 then return n end return fib(n - 1) + fib(n - 2) end print(fib(15))
---- recursion to a depth of 190
local function depth(n) if n == 0 then return 0 end return 1 + depth(n - 1) end print(depth(100), depth(190))
---- mutual recursion
local even, odd function even(n) if n == 0 then return true end return odd(n - 1) end function odd(n) if n == 0 then return false end return even(n - 1) end print(even(10), odd(7), even(10001))
---- tail calls
local function loop(n, acc) if n == 0 then return acc end return loop(n - 1, acc + n) end print(loop(10000, 0))
---- a local function sees itself
local function f(n) if n == 0 then return "done" end return f(n - 1) end print(f(3))
---- a local function does not see a later local of its name
local f = function() return "old" end local f = function() return f() .. " and new" end print(f())
---- wrapping
local tostring = tostring local print2 = print local print = function(...) print2("wrapped", ...) end print(1, 2)
---- shadowing
local x = 1 do local x = 2 print(x) end print(x) local x = x + 10 print(x) local function f(x) x = x + 1 return x end print(f(5), x)
---- a local on its own right side
local x = 5 local x = x * 2 print(x)
---- functions as values
local t = {f = function(x) return x + 1 end} print(t.f(1), (function(x) return x * 2 end)(4), type(t.f)) local function apply(f, ...) return f(...) end print(apply(math.max, 1, 9, 4))
---- map filter fold
local function map(t, f) local r = {} for i, v in ipairs(t) do r[i] = f(v) end return r end local function fold(t, a, f) for _, v in ipairs(t) do a = f(a, v) end return a end print(fold(map({1, 2, 3}, function(x) return x * x end), 0, function(a, b) return a + b end))
---- memory of answers
local seen = {} local function slow(n) if seen[n] then return seen[n], "remembered" end seen[n] = n * n return seen[n] end print(slow(4)) print(slow(4))
---- an iterator of one's own
local function range(n) local i = 0 return function() i = i + 1 if i <= n then return i end end end for i in range(3) do print(i) end
---- a stateless iterator
local function step(n, i) if i < n then return i + 1, (i + 1) ^ 2 end end for i, s in step, 3, 0 do print(i, s) end
---- generic for with a table walk
local function sorted(t) local keys = {} for k in pairs(t) do keys[#keys + 1] = k end table.sort(keys) local i = 0 return function() i = i + 1 if keys[i] then return keys[i], t[keys[i]] end end end for k, v in sorted{b = 2, a = 1, c = 3} do print(k, v) end
---- generic for refuses
print((pcall(function() for x in 5 do end end)), (pcall(function() for x in nil do end end)))
---- return in the middle
local function f(x) if x then return "yes" end return "no" end print(f(1), f()) local function g() do return 1 end end print(g())
---- no value and nil
local function none() end print(none()) print((none())) print(select("#", none()))
---- type of no value
print(pcall(type)) print(type(nil), type(1), type("x"), type({}), type(print), type(true))
---- calling what cannot be called
print((pcall(function() local x = 5 x() end)), (pcall(function() local t = {} t.f() end)), (pcall(function() ("x")() end)))
---- globals
function twice(x) return 2 * x end value = twice(4) print(value, twice(value)) value = nil print(value)
---- globals from inside functions
counter = 0 local function bump() counter = counter + 1 return counter end bump() bump() print(counter)
---- functions of fields
lib = {} function lib.f(x) return x + 1 end lib.sub = {} function lib.sub.g() return "g" end function lib.sub:h() return self == lib.sub end print(lib.f(1), lib.sub.g(), lib.sub:h())
---- many locals
local a, b, c, d, e, f, g, h = 1, 2, 3, 4, 5, 6, 7, 8 do local i, j, k = 9, 10, 11 print(a + b + c + d + e + f + g + h + i + j + k) end
---- upvalues of three levels
local a = 1 local function f() local b = 2 return function() local c = 3 return function() a = a + 1 b = b + 1 c = c + 1 return a, b, c end end end local g = f()() print(g()) print(g()) print(a)
---- upvalues shared after the block ends
local get, set do local x = 1 get = function() return x end set = function(v) x = v end end set(42) print(get())
---- arguments are locals
local function f(a) local g = function() a = a + 1 return a end return g, function() return a end end local g, h = f(1) g() print(h())
---- if elseif else
for i = 1, 4 do if i == 1 then print("one") elseif i == 2 then print("two") elseif i == 3 then print("three") else print("more") end end
---- comments and layout
print(1) -- one
--[[ two
lines ]] print(2) --[==[ ]] ]==] print(3)
print(-- an argument follows
4);
---- and or as a choice
local function pick(x) return x and "yes" or "no" end print(pick(true), pick(nil), pick(0)) local a, b = nil, false print(a or b, a and b, b or a)
---- while with a condition that changes
local n, s = 10, 0 while n > 0 do s = s + n n = n - 3 end print(s, n)
---- semicolons
local a = 1; local b = 2; print(a, b);
---- vararg in the middle is cut
local function f(...) return ... end print(f(1, 2, 3), "end")
---- an operand is one value
local function f() return 1, 2 end local function none() end print("a" .. f(), f() .. "b", "a" .. f() .. f()) local function v(...) return "x" .. ... end print(v(1, 2)) print(f() < f(), f() == f(), #{"a" .. f()}, -f(), #("x" .. f()))
---- an operand is one value in an assignment
local function f() return 5, 6 end local t = {} t.x = f() t[f()] = f() print(t.x, t[5], t[6]) g = f() print(g) local a, b = f() < 6 print(a, b) local c, d = "x" .. f() print(c, d)
---- swaps of locals
local a, b, c = 1, 2, 3 a, b = b, a print(a, b) a, b, c = c, a, b print(a, b, c) local function f() a, b = b, a end f() print(a, b) local x, y = 1, 1 for i = 1, 10 do x, y = y, x + y end print(x, y)
---- assignments with calls at the end
local function f() return 1, 2, 3 end local a, b, c, d a, b, c, d = 0, f() print(a, b, c, d) a, b = f(), 9 print(a, b) a, b, c = f() print(a, b, c) a, b = (f()) print(a, b)
---- a return is no tail call of an operation
local function f(a, b) return a .. b end local function g(a, b) return a < b end print(f(1, 2), g(1, 2)) print(select("#", f(1, 2)))
