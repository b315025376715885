package lualib

import (
	"math"
	"math/rand/v2"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook"
)

// random is a cell's own generator.
type random struct{ source *rand.Rand }

func newRandom(seed [32]byte) *random { return &random{rand.New(rand.NewChaCha8(seed))} }

// seedOf is a cell's title, its code (without remarks and spacing) where it has
// none.
func seedOf(job *notebook.Job) (seed [32]byte) {
	h := notebook.NewHasher()
	if job.Cell.Title != "" {
		h.Text(job.Cell.Title)
	} else {
		h.Digest(job.Analysis.Digest)
	}
	d := h.Sum()
	copy(seed[:], d[:])
	return seed
}

// openMath makes the math module; its functions take numbers and quantities
// without a dimension.
func (s *session) openMath() *lua.LTable {
	L := s.state
	t := L.NewTable()
	one := func(name string, do func(float64) float64) {
		t.RawSetString(name, L.NewFunction(func(L *lua.LState) int {
			L.Push(lua.LNumber(do(s.num(L, 1, name))))
			return 1
		}))
	}
	for name, do := range map[string]func(float64) float64{
		"abs": math.Abs, "acos": math.Acos, "asin": math.Asin, "atan": math.Atan, "ceil": math.Ceil, "cos": math.Cos, "cosh": math.Cosh,
		"exp": math.Exp, "floor": math.Floor, "log": math.Log, "log10": math.Log10, "sin": math.Sin, "sinh": math.Sinh, "sqrt": math.Sqrt, "tan": math.Tan, "tanh": math.Tanh,
		"deg": func(x float64) float64 { return x * 180 / math.Pi }, "rad": func(x float64) float64 { return x * math.Pi / 180 },
	} {
		one(name, do)
	}
	two := func(name string, do func(a, b float64) float64) {
		t.RawSetString(name, L.NewFunction(func(L *lua.LState) int {
			L.Push(lua.LNumber(do(s.num(L, 1, name), s.num(L, 2, name))))
			return 1
		}))
	}
	two("atan2", math.Atan2)
	two("fmod", math.Mod)
	two("mod", math.Mod)
	two("pow", math.Pow)
	t.RawSetString("ldexp", L.NewFunction(func(L *lua.LState) int {
		L.Push(lua.LNumber(math.Ldexp(s.num(L, 1, "ldexp"), s.integer(L, 2, "ldexp"))))
		return 1
	}))
	t.RawSetString("frexp", L.NewFunction(func(L *lua.LState) int {
		fraction, exponent := math.Frexp(s.num(L, 1, "frexp"))
		L.Push(lua.LNumber(fraction))
		L.Push(lua.LNumber(exponent))
		return 2
	}))
	t.RawSetString("modf", L.NewFunction(func(L *lua.LState) int {
		x := s.num(L, 1, "modf")
		whole := math.Trunc(x)
		fraction := x - whole
		if math.IsInf(x, 0) {
			fraction = 0
		}
		L.Push(lua.LNumber(whole))
		L.Push(lua.LNumber(fraction))
		return 2
	}))
	t.RawSetString("max", L.NewFunction(s.extreme("max", func(a, b float64) bool { return a > b })))
	t.RawSetString("min", L.NewFunction(s.extreme("min", func(a, b float64) bool { return a < b })))
	t.RawSetString("random", L.NewFunction(s.mathRandom))
	t.RawSetString("randomseed", L.NewFunction(s.mathRandomSeed))
	t.RawSetString("pi", lua.LNumber(math.Pi))
	t.RawSetString("huge", lua.LNumber(math.Inf(1)))
	s.frozen[t] = &frozen{owner: "the library", of: "math"}
	return t
}

func (s *session) extreme(name string, better func(a, b float64) bool) lua.LGFunction {
	return func(L *lua.LState) int {
		best := s.num(L, 1, name)
		for i := 2; i <= L.GetTop(); i++ {
			if v := s.num(L, i, name); better(v, best) {
				best = v
			}
		}
		L.Push(lua.LNumber(best))
		return 1
	}
}

func (s *session) mathRandom(L *lua.LState) int {
	r := s.current.random.source.Float64()
	low, top := 1.0, 0.0
	switch L.GetTop() {
	case 0:
		L.Push(lua.LNumber(r))
		return 1
	case 1:
		top = math.Floor(s.num(L, 1, "random"))
	case 2:
		low, top = math.Floor(s.num(L, 1, "random")), math.Floor(s.num(L, 2, "random"))
	default:
		return s.raisef(L, "wrong number of arguments")
	}
	if top < low {
		return s.argument(L, L.GetTop(), "random", "interval is empty")
	}
	L.Push(lua.LNumber(math.Floor(r*(top-low+1)) + low))
	return 1
}

// mathRandomSeed makes the numbers that follow repeatable by a seed of the
// cell's own.
func (s *session) mathRandomSeed(L *lua.LState) int {
	h := notebook.NewHasher()
	h.Number(s.num(L, 1, "randomseed"))
	d := h.Sum()
	var seed [32]byte
	copy(seed[:], d[:])
	s.current.random = newRandom(seed)
	return 0
}
