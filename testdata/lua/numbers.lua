---- printing
print(1, -1, 0, 1.5, 1e15, 1e16, 1e100, 123456789012345678, 0.1, 1/3, 2^53, -0.0, 1e-5, 100000000000000)
---- tostring of a third
print(tostring(1/3), 1/3 .. "", tostring(10/2))
---- octal looking literals
print(010, 0010 + 1, 08, 1e5, 1E5, 1e+5, 1e-2, .5, 5., 0x10, 0xff)
---- exponent literals
print(1e5, 1e05, 2.5e3, 1e0)
---- remainder signs
print(5 % 3, -5 % 3, 5 % -3, -5 % -3, 5.5 % 2, -5.5 % 2, 0 % 3, 1e15 % 7)
---- infinity is beyond all numbers
print(math.huge > 1e308, -math.huge < -1e308, math.huge - 1 == math.huge)
---- division by zero
print(1/0, -1/0, 1/0 == math.huge, 1/0 > math.huge, math.huge == math.huge + 1)
---- not a number
local n = 0/0 print(n == n, n ~= n, n < n, n > 1, not (n >= 1))
---- powers
print(2^10, 2^0.5, (-2)^2, -2^2, 2^-1, 2^3^2, 0^0)
---- precedence
print(1 + 2 * 3 - 4 / 2, (1 + 2) * 3, not 1 == 2, -3 ^ 2, 2 .. 3, 1 .. 2 == "12", 7 - 3 - 2, 2 * 3 % 4)
---- text arithmetic
print("10" + 1, "010" + 0, "0x10" + 0, " 5 " * "2", 10 .. 20, -"3", "1e2" * 1, "3" ^ 2, "7" % "4")
---- text arithmetic that fails
print(pcall(function() return #("10" + 1 .. "") end))
print((pcall(function() return "abc" + 1 end)), (pcall(function() return {} + 1 end)), (pcall(function() return nil .. "x" end)))
---- tonumber
print(tonumber("1e5"), tonumber(" 12 "), tonumber("12a"), tonumber(""), tonumber(" "), tonumber("0x1F"), tonumber("1."), tonumber(".5"), tonumber("."), tonumber("1e"), tonumber("-7"), tonumber("- 7"))
---- tonumber of others
print(tonumber(nil), tonumber(true), tonumber({}), tonumber(5), tonumber("10", 10), tonumber(10, 10))
---- tonumber with a base
print(tonumber("ff", 16), tonumber("zz", 36), tonumber("101", 2), tonumber("8", 8), tonumber("7", 8), tonumber("-ff", 16), tonumber(" 11 ", 2), tonumber("1.5", 16))
---- tonumber refuses
print(pcall(tonumber)) print(pcall(tonumber, "1", 1)) print(pcall(tonumber, "1", 37))
---- math functions
print(math.floor(3.7), math.floor(-3.7), math.ceil(3.2), math.ceil(-3.2), math.abs(-4), math.sqrt(16), math.max(1, 5, 3), math.min(4, 2, 8))
---- math more
print(math.fmod(7, 3), math.fmod(-7, 3), math.fmod(7, -3), math.modf(3.7), math.modf(-3.7)) print(math.pow(2, 8), math.log10(1000), math.exp(0), math.log(1))
---- math angles
print(math.deg(math.pi), math.rad(180) == math.pi, math.sin(0), math.cos(0), math.atan2(1, 1) == math.pi / 4, math.tan(0))
---- math frexp
print(math.frexp(8)) print(math.ldexp(0.5, 4)) print(math.frexp(0)) print(math.modf(math.huge))
---- math on texts
print(math.floor("3.7"), math.max("10", 9), math.abs("-2"))
---- math refuses
print(pcall(math.floor)) print(pcall(math.floor, "x")) print(pcall(math.floor, {})) print(pcall(math.max)) print(pcall(math.random, 0)) print(pcall(math.random, 5, 4)) print(pcall(math.random, 1, 2, 3))
---- random is in range
for i = 1, 100 do local r = math.random() assert(r >= 0 and r < 1) local d = math.random(6) assert(d >= 1 and d <= 6 and d == math.floor(d)) local e = math.random(-3, 3) assert(e >= -3 and e <= 3) end print("ok")
---- random repeats after a seed
math.randomseed(42) local a, b = math.random(), math.random(1000) math.randomseed(42) print(a == math.random(), b == math.random(1000)) math.randomseed(43) print(a == math.random())
---- comparisons
print(1 < 2, 2 <= 2, 3 > 4, 4 >= 4, 1 == 1.0, 1 ~= 2, "1" == 1, "a" < "b", "Z" < "a", "" < "a", "a" < "aa", "10" < "9", "a" == "a")
---- comparisons that fail
print((pcall(function() return 1 < "2" end)), (pcall(function() return {} < {} end)), (pcall(function() return nil < 1 end)), (pcall(function() return true < false end)), (pcall(function() return 1 <= nil end)))
---- equality of kinds
print(nil == false, 0 == false, "" == false, {} == {}, print == print, nil == nil)
---- logic gives operands
print(nil or 1, false or nil, 1 and 2, nil and 1, false and 1, 0 and "zero", "" or 1, not nil, not 0, 1 and nil or 3)
---- numeric for
for i = 1, 3 do print(i) end for i = 3, 1, -1 do print(i) end for i = 1, 0 do print("never") end for i = 1, 2, 0.5 do print(i) end
---- numeric for over fractions
local n = 0 for x = 0, 1, 0.1 do n = n + 1 end print(n) for i = 1.5, 3 do print(i) end
---- numeric for over texts
for i = "1", "3" do print(i, type(i)) end
---- numeric for refuses
print((pcall(function() for i = 1, nil do end end)), (pcall(function() for i = "a", 2 do end end)), (pcall(function() for i = 1, 2, {} do end end)))
---- numeric for bounds are read once
local n = 3 for i = 1, n do n = 10 print(i) if i > 5 then break end end
---- the loop variable is a copy
for i = 1, 3 do local j = i i = i * 10 print(j, i) end
---- large whole numbers
print(2^53 + 1, 9007199254740993, 1e15 + 0.5, 123456.789e3, 99999999999999, 999999999999999)
---- negative zero
print(-0, 0 * -1, math.floor(-0.5), -0 == 0)
---- long sums
local s = 0 for i = 1, 1000 do s = s + 0.1 end print(s, s == 100)
---- unary operators in a row
print(- -2, not not nil, - - -1, #"abc" + 1, -#"abc", not (1 == 2))
---- numbers as keys
local t = {} t[1] = "a" t[1.0] = "b" t["1"] = "c" t[2^53] = "d" print(t[1], t["1"], #t, t[2^53])
