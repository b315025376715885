---- sub
local s = "hello" print(s:sub(2), s:sub(-3), s:sub(2, 3), s:sub(0), s:sub(-100, 2), s:sub(4, 2) == "", s:sub(2, -2), s:sub(10) == "", s:sub(-1, -1))
---- byte and char
print(("abc"):byte(), ("abc"):byte(2), ("abc"):byte(1, -1)) print(string.char(72, 105), string.char() == "", ("abc"):byte(10)) print(pcall(string.char, 256))
---- rep reverse upper lower len
print(("ab"):rep(3), ("x"):rep(0) == "", ("x"):rep(-1) == "", ("abc"):reverse(), ("aBc"):upper(), ("AbC"):lower(), ("abc"):len(), #"a\0b")
---- find plain
print(("a.b"):find(".", 1, true), ("a.b"):find("."), ("abc"):find("c"), ("abc"):find("x"), ("abc"):find(""), ("abc"):find("", 10))
---- find beyond the end
print(string.find("abc", "b", 10, true), string.find("abc", "", 4), string.find("abc", "", 5), string.find("abc", "a", -1), string.find("abc", "b", -2))
---- find captures
print(("key = value"):find("(%w+)%s*=%s*(%w+)")) print(("abc"):find("()b()"))
---- match
print(("2027-03-06"):match("(%d+)-(%d+)-(%d+)"), ("abc"):match("x"), ("abc"):match("b"), ("  trim  "):match("^%s*(.-)%s*$") .. "|")
---- match without a match gives nil
local function count(...) return select("#", ...) end print(count(("abc"):match("x")), (("abc"):match("(x)(y)")), count(("abc"):find("x")))
---- gmatch
for w in ("one two  three"):gmatch("%a+") do print(w) end for k, v in ("a=1, b=2"):gmatch("(%w+)=(%w+)") do print(k, v) end
---- gmatch of nothing
for x in ("abc"):gmatch("") do print("[" .. x .. "]") end
---- gsub with a text
print(("hello world"):gsub("o", "0"), ("abc"):gsub("%w", "%0%0"), ("abc"):gsub("", "-"), ("a b"):gsub("(%w) (%w)", "%2 %1"), ("abc"):gsub("b", "%%"))
---- gsub with a limit
print(("aaaa"):gsub("a", "b", 2), ("aaaa"):gsub("a", "b", 0), ("aaa"):gsub("^a", "x"))
---- gsub with a function
print(("1 2 3"):gsub("%d", function(d) return d * 2 end), ("abc"):gsub("%w", function(c) if c == "b" then return "[b]" end end), ("abc"):gsub("%w", function() return false end))
---- gsub with a table
print(("$name is $age"):gsub("%$(%w+)", {name = "Ada", age = 7}), ("$no"):gsub("%$(%w+)", {}))
---- gsub refuses
print(pcall(string.gsub, "a", "a", true)) print(pcall(string.gsub, "a", "a", function() return {} end)) print((pcall(string.gsub, "a", "(", "")))
---- gsub of many
local s = ("a,"):rep(20000) local r, n = s:gsub(",", ";") print(#r, n)
---- frontier
print(("THE (quick) fox"):find("%f[%a]%a+%f[%A]"), ("the cat"):gsub("%f[%w]%w+", string.upper))
---- classes
print(("a1 B2_c"):gsub("%u", "U"), ("a1 b2"):gsub("%d", "#"), ("a.b,c"):gsub("%p", "P"), ("a\tb\n"):gsub("%c", "C"), ("x y"):gsub("%s", "_"), ("0xFfg"):gsub("%x", "h"))
---- sets and repetitions
print(("aaa"):match("a-"), ("aaab"):match("a-b"), ("aaab"):match("a*"), ("b"):match("a?b"), ("[x]"):match("%[(.-)%]"), ("a-z"):match("[a%-z]+"), ("^x"):match("[%^x]+"), ("abc]"):match("[]]"))
---- balance and back references
print(("f(a(b)c)d"):match("%b()"), ("'quoted' \"x\""):match("(['\"])(.-)%1"))
---- format integers
print(string.format("%d %5d %-5d| %05d %+d % d", 42, 42, 42, 42, 42, 42), string.format("%d", 3.7), string.format("%d", "10"), string.format("%i", -3))
---- format unsigned
print(string.format("%u", 42), string.format("%5u|", 7), string.format("%x %X %#x %o", 255, 255, 255, 8))
---- format floats
print(string.format("%f", 1/3), string.format("%.2f", 2.345), string.format("%10.3f|", math.pi), string.format("%-10.1f|", 2.25), string.format("%e", 12345.678), string.format("%g", 1e20), string.format("%g", 0.1), string.format("%.3g", 1234.5), string.format("%.0f", 0.5), string.format("%5.1f", -0.05))
---- format texts
print(string.format("%s|%10s|%-10s|%.2s", "abc", "abc", "abc", "abc"), string.format("%q", 'a "b"\n\\c'), string.format("%c%c", 72, 105), string.format("%%"))
---- format of other kinds
print(string.format("%s %s", "x", 12), string.format("%s", 1/3), string.format("%5s|", 7))
---- format with a missing argument
print(pcall(string.format, "%d")) print(pcall(string.format, "%s")) print(pcall(string.format, "%d", "x")) print(pcall(string.format, "%y", 1)) print(pcall(string.format, "%d", {}))
---- format with more arguments than fields
print(string.format("%d", 1, 2, 3), string.format("plain"))
---- joining
print("a" .. "b" .. 1 .. 2.5 .. "c", 1 .. "", (1 .. 2) + 1, "x" .. -1)
---- joining makes a chain
local s = "" for i = 1, 50 do s = s .. i .. "," end print(s)
---- long chain of operands
print("a" .. 1 .. "b" .. 2 .. "c" .. 3 .. "d" .. 4 .. "e" .. 5 .. "f" .. 6 .. "g" .. 7 .. "h" .. 8 .. "i" .. 9 .. "j" .. 10 .. "k" .. 11 .. "l" .. 12 .. "m" .. 13 .. "n" .. 14 .. "o" .. 15 .. "p" .. 16 .. "q" .. 17 .. "r" .. 18 .. "s" .. 19 .. "t" .. 20 .. "u" .. 21 .. "v" .. 22 .. "w" .. 23)
---- escapes
print("tab\tnew\\line \"q\" 'q' \65\066\0677", #"\0\1\2", "a\
b")
---- escapes of letters
print("\a\b\f\v" == string.char(7, 8, 12, 11), "\'" == "'")
---- long texts
print([[
first newline is dropped
  kept]], [==[with ]] inside]==], #[[
]])
---- methods on texts
local s = "abc" print(s:upper(), ("x"):rep(3), #s:rep(2), ("%d"):format(5), s.len == string.len)
---- numbers take text functions
print(string.len(123), string.rep(1, 3), string.sub(12345, 2, 3), string.upper(1.5), string.find(12345, 34))
---- text functions refuse
print(pcall(string.rep)) print(pcall(string.rep, "x")) print(pcall(string.len, nil)) print(pcall(string.upper, {})) print(pcall(string.sub, "x")) print(pcall(string.find, "x"))
---- pattern mistakes
print(pcall(string.find, "a", "[a")) print(pcall(string.find, "a", "%")) print(pcall(string.match, "a", "(a")) print(pcall(string.match, "a", "a)")) print(pcall(string.gsub, "a", "a", "%2")) print(pcall(string.find, "a", "%1"))
---- tostring
print(tostring(nil), tostring(true), tostring(12), tostring("x"), tostring(-1.5), type(tostring(1))) print(pcall(tostring))
---- comparing texts
local t = {"b", "B", "a", "_", "10", "9", "aa", ""} table.sort(t) print(table.concat(t, ",")) print("a\0b" < "a\0c", "é" > "z")
---- a text as a list of words
local words = {} for w in ("the quick brown fox"):gmatch("%S+") do words[#words + 1] = w:sub(1, 1):upper() .. w:sub(2) end print(table.concat(words, " "))
---- splitting
local function split(s, sep) local out = {} for part in (s .. sep):gmatch("(.-)" .. sep:gsub("%p", "%%%0")) do out[#out + 1] = part end return out end
print(table.concat(split("a,b,,c", ","), "|"), #split("", ","), table.concat(split("1.2.3", "."), "|"))
---- utf-8 bytes
print(#"é", ("é"):byte(1, -1)) print(("naïve"):upper())
