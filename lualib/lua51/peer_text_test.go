package lua51_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"weirbook/lualib/lua51"
)

// pick returns one of the choices.
func pick[T any](r *rand.Rand, choices ...T) T { return choices[r.IntN(len(choices))] }

// letters returns up to n letters of an alphabet.
func letters(r *rand.Rand, alphabet string, n int) string {
	b := make([]byte, r.IntN(n+1))
	for i := range b {
		b[i] = alphabet[r.IntN(len(alphabet))]
	}
	return string(b)
}

// number returns a number of mixed kind. Numbers beyond 64 bits, and negative
// ones under unsigned verbs, are compared where the C compiler is known.
func number(r *rand.Rand) float64 {
	n := pick(r, 0, 1, -1, 0.5, 2.5, 3.7, -3.7, 255, 65, 100000, 1e15, 123456789,
		float64(r.IntN(1000)), float64(r.IntN(100000))/64, -float64(r.IntN(1000))/8,
		r.NormFloat64(), r.Float64()*1e10, math.Ldexp(r.Float64(), r.IntN(120)-60))
	if runtime.GOARCH != "amd64" {
		return math.Abs(n)
	}
	return pick(r, n, n, n, n, -n, math.Copysign(0, -1), 1e308, -1e308, 5e-324, 1e20, -1e20,
		0x1p63, 0x1p64, -0x1p63, math.Inf(1), math.Inf(-1), math.Float64frombits(r.Uint64()&^(1<<62)))
}

// arg returns an argument of Format with its Lua form.
func arg(r *rand.Rand) (lua51.Arg, string) {
	switch r.IntN(8) {
	case 0:
		s := pick(r, "", "12", " 0x1F ", "1e2", "-7.9", "ebb", "a\x00b", "a\"b\\\n\r", strings.Repeat("a", 98+r.IntN(4)), strings.Repeat("a\x00", 60))
		return lua51.Arg{Kind: lua51.KindText, Text: s}, lit(s)
	default:
		n := number(r)
		return lua51.Arg{Kind: lua51.KindNumber, Number: n}, num(n)
	}
}

// spec returns a format item, mostly well formed.
func spec(r *rand.Rand) string {
	s := "%" + letters(r, "-+ #0", pick(r, 0, 1, 2, 6))
	if r.IntN(2) == 0 {
		s += fmt.Sprint(r.IntN(pick(r, 10, 100, 100, 110)))
	}
	if r.IntN(2) == 0 {
		s += "." + pick(r, "", fmt.Sprint(r.IntN(pick(r, 10, 30, 100, 110))))
	}
	return s + pick(r, "c", "d", "i", "o", "u", "x", "X", "e", "E", "f", "g", "G", "q", "s", "d", "f", "g", "s", "%", "y", "")
}

func TestFormatAgreesWithTheCProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 1))
	var cases []peerCase
	for range 4000 {
		layout, call := letters(r, "ab%", 2), ""
		var args []lua51.Arg
		for range pick(r, 1, 1, 1, 2, 3) {
			layout += spec(r) + letters(r, "a ", 2)
			a, text := arg(r)
			args, call = append(args, a), call+", "+text
		}
		cases = append(cases, peerCase{"string.format, " + lit(layout) + call, func() string {
			return shownText(lua51.Format(nil, layout, args))
		}})
	}
	comparePeer(t, cases)
}

func TestNumbersAgreeWithTheCProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 2))
	var cases []peerCase
	read := func(f float64, ok bool) string {
		if !ok {
			return "nil"
		}
		return lua51.FormatNumber(f)
	}
	for range 3000 {
		// No point beside 0x: hexadecimal fractions differ on purpose.
		s := letters(r, " 01279.eE+-", 8)
		if r.IntN(3) == 0 {
			s = pick(r, "", " ", "-", "+") + pick(r, "0x", "0X", "") + letters(r, "0189afFz \t", pick(r, 6, 25)) + pick(r, "", " \v\f", "\x00z")
		}
		cases = append(cases, peerCase{"tonumber, " + lit(s), func() string { return read(lua51.ParseNumber(s)) }})
		base := 2 + r.IntN(35)
		cases = append(cases, peerCase{fmt.Sprintf("tonumber, %s, %d", lit(s), base), func() string {
			return read(lua51.ParseNumberBase(s, base))
		}})
		n := number(r)
		cases = append(cases, peerCase{"tostring, " + num(n), func() string { return shown(lua51.FormatNumber(n)) }})
	}
	comparePeer(t, cases)
}

func TestTextFunctionsAgreeWithTheCProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 3))
	var cases []peerCase
	add := func(call func() string, layout string, args ...any) {
		cases = append(cases, peerCase{fmt.Sprintf(layout, args...), call})
	}
	for range 300 {
		s := letters(r, "aZ0\x00\xe9\"\\\n", 8)
		i, j, n := r.IntN(24)-12, r.IntN(24)-12, r.IntN(6)-1
		add(func() string { return shown(lua51.Sub(s, i, j)) }, "string.sub, %s, %d, %d", lit(s), i, j)
		add(func() string {
			b, err := lua51.Byte(s, i, j)
			if err != nil {
				return shownError(err)
			}
			return strings.Trim(fmt.Sprint(b), "[]")
		}, "string.byte, %s, %d, %d", lit(s), i, j)
		add(func() string { return shownText(lua51.Rep(nil, s, n)) }, "string.rep, %s, %d", lit(s), n)
		add(func() string { return shownText(lua51.Reverse(nil, s)) }, "string.reverse, %s", lit(s))
		add(func() string { return shownText(lua51.Upper(nil, s)) }, "string.upper, %s", lit(s))
		add(func() string { return shownText(lua51.Lower(nil, s)) }, "string.lower, %s", lit(s))
		add(func() string { return shownText(lua51.Char(nil, []int{65, i + 5, j + 250})) }, "string.char, 65, %d, %d", i+5, j+250)
		add(func() string { return shownText(lua51.Concat(nil, []string{s, "b", s}, s)) }, "table.concat, {%s, 'b', %s}, %s", lit(s), lit(s), lit(s))
	}
	comparePeer(t, cases)
}
