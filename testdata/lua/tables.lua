---- constructors
local t = {1, 2, 3, x = 1, ["y z"] = 2, [-10] = "ten", 4; 5} print(#t, t.x, t["y z"], t[-10], t[4], t[5])
---- constructor with a call at its end
local function f() return 1, 2, 3 end print(#{f()}, #{f(), f()}, #{(f())}, #{f(), nil}, ({f(), 10})[2])
---- nested
local t = {a = {b = {c = 5}}} t.a.b.d = 6 print(t.a.b.c, t.a.b.d, t.a.x) print((pcall(function() return t.x.y end)))
---- length without holes
local t = {} for i = 1, 100 do t[#t + 1] = i end print(#t) t[#t] = nil print(#t) for i = 1, 50 do t[#t] = nil end print(#t) print(#{}, #{nil}, #"")
---- insert and remove
local t = {1, 2, 3} table.insert(t, 4) table.insert(t, 1, 0) table.insert(t, 3, 1.5) print(table.concat(t, " ")) print(table.remove(t), table.remove(t, 1), table.remove(t, 2), table.concat(t, " ")) print(table.remove({}), #t)
---- insert at the end by its place
local t = {1, 2} table.insert(t, 3, 3) print(#t, t[3])
---- insert refuses
print(pcall(table.insert, {}, 1, 2, 3)) print(pcall(table.insert, nil, 1)) print(pcall(table.insert, {})) print(pcall(table.insert, {}, "x", 2))
---- concat
print(table.concat({1, 2, 3}), table.concat({1, 2, 3}, ", "), table.concat({1, 2, 3}, "-", 2), table.concat({1, 2, 3}, "-", 2, 3), table.concat({}, "x") == "", table.concat({"a", 1.5}, ";"), table.concat({1}, ", ", 2) == "")
---- concat from zero
print(table.concat({[0] = "z", "a", "b"}, ",", 0, 2))
---- concat of many
local t = {} for i = 1, 100000 do t[i] = i % 10 end local s = table.concat(t) print(#s, s:sub(1, 12), s:sub(-3))
---- concat refuses
print(pcall(table.concat, {1, {}, 3})) print(pcall(table.concat, {1, 2}, "", 1, 3)) print(pcall(table.concat))
---- sort
local t = {5, 2, 8, 1, 9, 3} table.sort(t) print(table.concat(t, " ")) table.sort(t, function(a, b) return a > b end) print(table.concat(t, " "))
---- sort by a field
local t = {{n = "b", v = 2}, {n = "a", v = 3}, {n = "c", v = 1}} table.sort(t, function(x, y) return x.v < y.v end) for _, r in ipairs(t) do print(r.n) end
---- sort of texts and of many
local t = {} for i = 1, 500 do t[i] = (i * 7919) % 1009 end table.sort(t) local ok = true for i = 2, #t do ok = ok and t[i - 1] <= t[i] end print(ok, t[1], t[#t])
---- sort refuses
print((pcall(table.sort, {1, "x"})), (pcall(table.sort, {{}, {}})), pcall(table.sort, {3, 1}, 5))
---- an error in an order function
local t = {3, 1, 2} print(pcall(table.sort, t, function() error("stop", 0) end))
---- maxn
print(table.maxn({1, 2, 3}), table.maxn({}), table.maxn({[10] = 1, [3.5] = 2}), table.maxn({1, nil, 3}))
---- unpack
print(unpack({1, 2, 3})) print(unpack({1, 2, 3}, 2)) print(unpack({1, 2, 3}, 2, 3)) print(unpack({}, 1, 2)) print((unpack({1, 2})))
---- unpack from zero
print(unpack({[0] = "z", "a", "b"}, 0, 2)) print(unpack({1, 2}, -1, 1))
---- ipairs stops at a hole
for i, v in ipairs({1, 2, nil, 4}) do print(i, v) end for i, v in ipairs({}) do print("never") end
---- ipairs and nil and false
for i, v in ipairs({false, 0, ""}) do print(i, v) end
---- pairs visits all
local n, sum = 0, 0 for k, v in pairs({1, 2, x = 3, [100] = 4, [-1] = 5, [1.5] = 6, [true] = 7}) do n, sum = n + 1, sum + v end print(n, sum)
---- pairs while emptying
local t = {} for i = 1, 50 do t["k" .. i] = i end for k in pairs(t) do t[k] = nil end print(next(t))
---- pairs while changing values
local t = {a = 1, b = 2, 3, 4} for k, v in pairs(t) do t[k] = v * 10 end print(t.a, t.b, t[1], t[2])
---- next
print(next({}), next({5})) local t = {10, 20} print(next(t, 1)) print(next(t, 2)) print(type(next), next({a = 1}))
---- next refuses
print((pcall(next)), (pcall(next, nil)))
---- keys of all kinds
local t, f, k = {}, function() end, {} t[f], t[k], t[true], t[1.5], t[-1], t[0] = 1, 2, 3, 4, 5, 6 print(t[f], t[k], t[true], t[1.5], t[-1], t[0], #t, t[{}])
---- whole and broken keys
local t = {} t[1] = "a" t[1.5] = "b" t[2] = "c" print(#t, t[1.5], t[3 / 2], t[4 / 2])
---- nil and nan keys
local t = {} print((pcall(function() t[nil] = 1 end)), t[nil], (pcall(function() t[0/0] = 1 end)), t[0/0]) print((pcall(rawset, t, nil, 1)))
---- deleting
local t = {a = 1, b = 2} t.a = nil print(t.a, t.b, next(t)) t[1] = 1 t[1] = nil print(#t, t[1])
---- rawget rawset rawequal
local t = setmetatable({}, {__index = function() return "meta" end, __newindex = function() end}) print(t.x, rawget(t, "x")) t.x = 1 print(rawget(t, "x")) rawset(t, "x", 2) print(t.x, rawequal(t, t), rawequal({}, {}), rawequal("a", "a"), rawequal(1, 1))
---- tables are shared
local a = {1} local b = a b[2] = 2 print(#a, a == b) local function change(t) t[1] = "changed" end change(a) print(b[1])
---- a copy
local function copy(t) local c = {} for k, v in pairs(t) do c[k] = type(v) == "table" and copy(v) or v end return c end local a = {1, {2}} local b = copy(a) b[2][1] = 9 print(a[2][1], b[2][1])
---- a matrix
local m = {} for i = 1, 3 do m[i] = {} for j = 1, 3 do m[i][j] = i * j end end print(m[2][3], #m, #m[3])
---- a stack and a queue
local s = {} for i = 1, 5 do s[#s + 1] = i end while #s > 0 do last = table.remove(s) print(last) end local q = {1, 2, 3} print(table.remove(q, 1), #q, q[1])
---- counting words
local c = {} for w in ("a b a c b a"):gmatch("%a") do c[w] = (c[w] or 0) + 1 end print(c.a, c.b, c.c)
---- a long list
local t = {} for i = 1, 60000 do t[i] = i end print(#t, t[60000]) local s = 0 for _, v in ipairs(t) do s = s + v end print(s)
---- filling downwards
local t = {} for i = 1000, 1, -1 do t[i] = i end print(#t, t[1], t[500])
---- sparse
local t = {} t[1000000] = 1 t[1] = 2 print(t[1000000], t[1], t[2])
---- select
print(select("#"), select("#", nil, nil), select(2, "a", "b", "c")) print(select(-1, "a", "b")) print(select(4, 1, 2, 3)) print(pcall(select, 0)) print(pcall(select, -5, 1)) print((select(1, "x", "y")))
---- a set
local set = {} for _, k in ipairs{"a", "b", "a"} do set[k] = true end local keys = {} for k in pairs(set) do keys[#keys + 1] = k end table.sort(keys) print(table.concat(keys, ","))
---- self in methods
local A = {n = 0} function A:add(k) self.n = self.n + k return self end function A.get(a) return a.n end print(A:add(2):add(3).n, A.get(A), A:get())
---- a call with one text or table
local function f(x) return type(x) end print(f"x", f{1}, f[[y]], ({n = f}).n"z")
---- fields named as functions
local t = {print = 5, next = 6} print(t.print, t.next) t["end"] = 1 print(t["end"])
---- assignment order
local i, t = 1, {} i, t[i] = i + 1, 20 print(i, t[1], t[2])
---- swapping
local a, b, t = 1, 2, {1, 2, 3} a, b = b, a t[1], t[3] = t[3], t[1] print(a, b, table.concat(t, " "))
---- too few and too many values
local a, b, c = 1, 2 print(a, b, c) local d, e = 1, 2, 3 print(d, e) local function f() return 1, 2 end local g, h, k = f() print(g, h, k) g, h, k = f(), 10 print(g, h, k)
---- order of evaluation in a call
local log = {} local function note(x) log[#log + 1] = x return x end print(note(1) + note(2) * note(3), note(4) .. note(5)) local t = {note(6), k = note(7), note(8)} print(table.concat(log, " "))
---- order of evaluation in an assignment
local log = {} local function note(x) log[#log + 1] = x return x end local t = {} t[note("k")] = note("v") t[note("a")], t[note("b")] = note(1), note(2) print(table.concat(log, " "), t.k, t.a, t.b)
---- order of evaluation in a comparison
local log = {} local function note(x) log[#log + 1] = x return x end print(note(1) < note(2), note(3) > note(4), note(5) >= note(6), note(7) == note(8)) print(table.concat(log, " "))
---- repeated targets
local a = {} a.x, a.x = 1, 2 print(a.x ~= nil) local b b, b = 1, 2 print(b ~= nil)
