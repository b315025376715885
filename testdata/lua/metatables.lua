---- index table and function
local base = {x = 1} local t = setmetatable({}, {__index = base}) print(t.x, t.y) base.y = 2 print(t.y, rawget(t, "x")) local f = setmetatable({}, {__index = function(t, k) return k .. "!" end}) print(f.a, f[1])
---- a chain of classes
local A = {} A.__index = A function A.new(n) return setmetatable({n = n}, A) end function A:name() return "A" .. self.n end local B = setmetatable({}, {__index = A}) B.__index = B function B.new(n) local o = A.new(n) return setmetatable(o, B) end function B:name() return "B" .. A.name(self) end print(A.new(1):name(), B.new(2):name())
---- newindex
local log = {} local t = setmetatable({}, {__newindex = function(t, k, v) log[#log + 1] = k rawset(t, k, v) end}) t.a = 1 t.a = 2 t.b = 3 print(table.concat(log, ","), t.a, t.b) local store = {} local p = setmetatable({}, {__newindex = store}) p.x = 5 print(rawget(p, "x"), store.x)
---- a read-only table
local function readonly(t) return setmetatable({}, {__index = t, __newindex = function() error("read only", 0) end}) end local r = readonly{1, 2, a = 3} print(r[1], r.a, pcall(function() r.a = 4 end))
---- arithmetic
local V = {} V.__index = V local function vec(x, y) return setmetatable({x = x, y = y}, V) end V.__add = function(a, b) return vec(a.x + b.x, a.y + b.y) end V.__sub = function(a, b) return vec(a.x - b.x, a.y - b.y) end V.__mul = function(a, b) if type(a) == "number" then return vec(a * b.x, a * b.y) elseif type(b) == "number" then return vec(a.x * b, a.y * b) end return a.x * b.x + a.y * b.y end V.__unm = function(a) return vec(-a.x, -a.y) end V.__tostring = function(a) return "(" .. a.x .. "," .. a.y .. ")" end
local a, b = vec(1, 2), vec(3, 4) print(tostring(a + b), tostring(a - b), a * b, tostring(2 * a), tostring(a * 2), tostring(-a)) print(a, b)
---- more arithmetic
local t = setmetatable({}, {__div = function() return "div" end, __mod = function() return "mod" end, __pow = function() return "pow" end}) print(t / 1, 1 / t, t % 2, t ^ 3)
---- equality
local mt = {__eq = function(a, b) return a.v == b.v end} local a, b, c = setmetatable({v = 1}, mt), setmetatable({v = 1}, mt), setmetatable({v = 2}, mt) print(a == b, a == c, a ~= b, a == 1, rawequal(a, b)) local d = setmetatable({v = 1}, {__eq = function() return true end}) print(a == d)
---- order
local mt = {__lt = function(a, b) return a.v < b.v end, __le = function(a, b) return a.v <= b.v end} local a, b = setmetatable({v = 1}, mt), setmetatable({v = 2}, mt) print(a < b, a > b, a <= b, a >= b, a <= a) local t = {b, a} table.sort(t) print(t[1].v)
---- order by less alone
local mt = {__lt = function(a, b) return a.v < b.v end} local a, b = setmetatable({v = 1}, mt), setmetatable({v = 2}, mt) print(a <= b, b <= a, a >= b)
---- order of differing kinds
local mt = {__lt = function() return true end} local a = setmetatable({}, mt) print((pcall(function() return a < 1 end)), (pcall(function() return "x" < a end)))
---- concat
local mt = {__concat = function(a, b) return (type(a) == "table" and a.n or a) .. "+" .. (type(b) == "table" and b.n or b) end} local t = setmetatable({n = "t"}, mt) print(t .. "x", "x" .. t, t .. t, 1 .. t, "a" .. "b" .. t .. "c" .. "d")
---- call
local t = setmetatable({}, {__call = function(self, a, b) return a, b, self ~= nil end}) print(t(1, 2)) print((t())) local n = setmetatable({}, {__call = function(_, ...) return select("#", ...) end}) print(n(1, nil, nil))
---- length asks no metamethod
local t = setmetatable({1, 2, 3}, {__len = function() return 99 end}) print(#t)
---- tostring
print(tostring(setmetatable({}, {__tostring = function() return "shown" end}))) print(setmetatable({}, {__tostring = function() return "printed" end})) print((pcall(tostring, setmetatable({}, {__tostring = function() return 5 end}))))
---- a protected metatable
local t = setmetatable({}, {__metatable = "locked"}) print(getmetatable(t), pcall(setmetatable, t, {}))
---- getmetatable and setmetatable
local mt = {} local t = setmetatable({}, mt) print(getmetatable(t) == mt, getmetatable({}), getmetatable(5), setmetatable(t, nil) == t, getmetatable(t)) print(pcall(setmetatable, 5, {})) print((pcall(setmetatable, {}))) print((pcall(setmetatable, {}, 5)))
---- default values
local t = setmetatable({}, {__index = function(t, k) local v = k * 2 rawset(t, k, v) return v end}) print(t[1], t[2], rawget(t, 1))
---- index with a number key
local t = setmetatable({}, {__index = {10, 20, 30}}) print(t[1], t[3], t[4], #t) for i, v in ipairs(t) do print("never", i, v) end
---- pairs asks no metamethod
local t = setmetatable({a = 1}, {__pairs = function() return function() end end, __index = {b = 2}}) for k, v in pairs(t) do print(k, v) end
---- inheritance of metamethods does not happen
local t = setmetatable({}, {__index = {__add = function() return "no" end}}) print((pcall(function() return t + 1 end)))
---- metamethods in the metatable of a metatable
local meta = setmetatable({}, {__index = {__add = function() return 1 end}}) print((pcall(function() return setmetatable({}, meta) + 1 end)))
---- unary minus and not
local t = setmetatable({}, {__unm = function() return "neg" end}) print(-t, not t)
---- a tracked table
local reads = 0 local t = setmetatable({}, {__index = function(_, k) reads = reads + 1 return nil end}) local x = t.a or t.b or "none" print(x, reads)
---- varargs through call
local f = setmetatable({}, {__call = function(_, ...) return ... end}) print(f(1, 2, 3))
---- accumulating with a metamethod
local sum = 0 local acc = setmetatable({}, {__newindex = function(_, k, v) sum = sum + v end}) for i = 1, 5 do acc[i] = i end print(sum, rawget(acc, 1), #acc)
---- sort with metamethods in values
local mt = {__lt = function(a, b) return a[1] > b[1] end} local t = {} for i = 1, 6 do t[i] = setmetatable({i}, mt) end table.sort(t) print(t[1][1], t[6][1])
