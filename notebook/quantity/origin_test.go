package quantity_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

func named(t testing.TB, name, text string) quantity.Quantity {
	t.Helper()
	return mustParse(t, text).WithOrigin(quantity.Named(name))
}

func must(t testing.TB) func(quantity.Quantity, error) quantity.Quantity {
	return func(q quantity.Quantity, err error) quantity.Quantity {
		t.Helper()
		require.NoError(t, err)
		return q
	}
}

// Lua 5.1 binds +- weaker than */, those weaker than the minus sign before a
// value, that weaker than ^, which alone binds to the right (manual, 2.5.6).
func TestOriginText(t *testing.T) {
	ok := must(t)
	a, b, c, n := named(t, "a", "6 m"), named(t, "b", "2 m"), named(t, "c", "3 m"), named(t, "n", "2")
	minus := ok(a.Neg())
	for want, q := range map[string]quantity.Quantity{
		"a": a, "a + b": ok(a.Add(b)), "a - b - c": ok(ok(a.Sub(b)).Sub(c)), "a - (b - c)": ok(a.Sub(ok(b.Sub(c)))), "a + (b + c)": ok(a.Add(ok(b.Add(c)))),
		"(a + b) * c": ok(ok(a.Add(b)).Mul(c)), "a * b + c * c": ok(ok(a.Mul(b)).Add(ok(c.Mul(c)))), "a / (b * c)": ok(a.Div(ok(b.Mul(c)))), "a / b * c": ok(ok(a.Div(b)).Mul(c)),
		"a ^ 2": ok(a.Pow(2)), "(a ^ 2) ^ 3": ok(ok(a.Pow(2)).Pow(3)), "(a * b) ^ 2": ok(ok(a.Mul(b)).Pow(2)), "a ^ -2": ok(a.Pow(-2)), "(-a) ^ 2": ok(minus.Pow(2)), "-a ^ 2": ok(ok(a.Pow(2)).Neg()),
		"-a": minus, "-(-a)": ok(minus.Neg()), "-a * b": ok(minus.Mul(b)), "-(a * b)": ok(ok(a.Mul(b)).Neg()), "b - -a": ok(b.Sub(minus)), "-(a + b)": ok(ok(a.Add(b)).Neg()),
		`a + Q"2 in"`: ok(a.Add(mustParse(t, "2 in"))), "a * 0.5": ok(a.Mul(quantity.Bare(0.5))), "-2 * a": ok(quantity.Bare(-2).Mul(a)), "n + 1": ok(n.Add(quantity.Bare(1))), `Q"5 EUR/m" * a`: ok(mustParse(t, "5 EUR/m").Mul(a)),
	} {
		require.Equal(t, want, q.Origin().String())
	}
}

func TestOriginIsKeptOnlyBehindNames(t *testing.T) {
	ok := must(t)
	plain := ok(mustParse(t, "2 m").Add(mustParse(t, "3 m")))
	require.Nil(t, plain.Origin())
	require.Empty(t, plain.Origin().String())
	typed := mustParse(t, "2 m").WithOrigin(quantity.Typed("2 m"))
	text, was := typed.TypedText()
	require.True(t, was)
	require.Equal(t, "2 m", text)
	require.Nil(t, ok(typed.Add(plain)).Origin())
	require.Equal(t, `a + Q"2 m"`, ok(named(t, "a", "1 m").Add(typed)).Origin().String())
	_, was = named(t, "a", "1 m").TypedText()
	require.False(t, was)
	require.Nil(t, named(t, "a", "1.234 m").RoundTo(1).Origin())
	converted := ok(named(t, "a", "1 m").To(quantity.Must(1, "cm").Unit()))
	require.Equal(t, "a", converted.Origin().String())
}

func TestALongOriginIsDropped(t *testing.T) {
	sum, a := named(t, "a", "1 m"), named(t, "a", "1 m")
	for range 29 {
		sum = must(t)(sum.Add(a))
	}
	require.NotNil(t, sum.Origin())
	sum = must(t)(sum.Add(a))
	require.Nil(t, sum.Origin())
	require.Equal(t, "31 m", sum.String())
}

func TestSame(t *testing.T) {
	a := named(t, "a", "12 in")
	require.True(t, a.Same(named(t, "a", "12 in")))
	require.False(t, a.Same(named(t, "b", "12 in")))
	require.False(t, a.Same(mustParse(t, "12 in")))
	require.False(t, a.Same(named(t, "a", "1 ft")))
}

// randomExpression works an expression out of named and constant operands.
func randomExpression(r *rand.Rand, names map[string]quantity.Quantity, depth int) (quantity.Quantity, bool) {
	if depth == 0 || r.IntN(6) == 0 {
		if r.IntN(4) == 0 {
			return quantity.Must(float64(r.IntN(9)-4)+0.5, []string{"", "m", "W/(m2.K)", "%"}[r.IntN(4)]), true
		}
		return names[string("abcn"[r.IntN(4)])], true
	}
	left, ok := randomExpression(r, names, depth-1)
	if !ok {
		return left, false
	}
	switch r.IntN(8) {
	case 0:
		q, err := left.Neg()
		return q, err == nil
	case 1:
		q, err := left.Pow(r.IntN(5) - 2)
		return q, err == nil
	}
	right, ok := randomExpression(r, names, depth-1)
	if !ok {
		return right, false
	}
	q, err := operations[string("+-*/"[r.IntN(4)])](left, right)
	return q, err == nil
}

func TestOriginTextComputesTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	names := map[string]quantity.Quantity{"a": named(t, "a", "6.1 m"), "b": named(t, "b", "20 in"), "c": named(t, "c", "0.7 EUR/m"), "n": named(t, "n", "1.7")}
	tried, bracketed := 0, 0
	for range 20000 {
		q, ok := randomExpression(r, names, 1+r.IntN(4))
		if !ok || q.Origin() == nil || !finite(q.Value()) {
			continue
		}
		tried++
		text := q.Origin().String()
		tree := readExpression(t, text)
		got := tree.evaluate(t, names)
		requireSame(t, q, got)
		require.Equal(t, text, got.Origin().String())
		bracketed += strings.Count(text, "(")
		requireNeededBrackets(t, text, tree)
	}
	require.Greater(t, tried, 3000)
	require.Greater(t, bracketed, 3000)
}

// requireNeededBrackets takes away each pair of brackets: what is left must
// read as another expression, or as none.
func requireNeededBrackets(t *testing.T, text string, tree *expression) {
	t.Helper()
	quoted, open := false, []int(nil)
	for i, sign := range []byte(text) {
		switch {
		case sign == '"':
			quoted = !quoted
		case quoted:
		case sign == '(':
			open = append(open, i)
		case sign == ')':
			from := open[len(open)-1]
			open = open[:len(open)-1]
			without := text[:from] + text[from+1:i] + text[i+1:]
			if strings.Contains(without, "--") {
				continue // a comment of Lua
			}
			require.NotEqual(t, tree.shape(), readExpression(t, without).shape(), "%s needs no brackets at %d", text, from)
		}
	}
}
