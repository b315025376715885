package quantity_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// expression is the arithmetic of Lua 5.1 (manual, 2.5.6) as far as the text of
// an origin uses it: names, numbers, Q"…", + - * / ^, a minus sign, brackets.
type expression struct {
	op          string // an operator, "minus", or "" for a leaf
	leaf        string
	left, right *expression
}

// expressionReader reads by precedence climbing.
type expressionReader struct {
	t    testing.TB
	rest string
}

func readExpression(t testing.TB, text string) *expression {
	t.Helper()
	require.NotContains(t, text, "--", "a comment begins in the text")
	r := &expressionReader{t, text}
	tree := r.binary(0)
	require.Empty(t, r.rest, "%s is not read to its end", text)
	return tree
}

// bindings are the left and right binding strengths; the minus sign has 5.
var bindings = map[byte][2]int{'+': {1, 2}, '-': {1, 2}, '*': {3, 4}, '/': {3, 4}, '^': {8, 7}}

const minusBinding = 5

func (r *expressionReader) binary(least int) *expression {
	left := r.operand()
	for {
		r.rest = strings.TrimLeft(r.rest, " ")
		if r.rest == "" {
			return left
		}
		strength, ok := bindings[r.rest[0]]
		if !ok || strength[0] < least {
			return left
		}
		op := r.rest[:1]
		r.rest = r.rest[1:]
		left = &expression{op: op, left: left, right: r.binary(strength[1])}
	}
}

func (r *expressionReader) operand() *expression {
	r.rest = strings.TrimLeft(r.rest, " ")
	require.NotEmpty(r.t, r.rest)
	switch {
	case r.rest[0] == '-':
		r.rest = r.rest[1:]
		return &expression{op: "minus", left: r.binary(minusBinding)}
	case r.rest[0] == '(':
		r.rest = r.rest[1:]
		inner := r.binary(0)
		require.True(r.t, strings.HasPrefix(r.rest, ")"), "a bracket is not closed")
		r.rest = r.rest[1:]
		return inner
	case strings.HasPrefix(r.rest, `Q"`):
		return r.leaf(strings.IndexByte(r.rest[2:], '"') + 3)
	}
	end := strings.IndexAny(r.rest, " ()")
	if end < 0 {
		end = len(r.rest)
	}
	return r.leaf(end)
}

func (r *expressionReader) leaf(length int) *expression {
	leaf := &expression{leaf: r.rest[:length]}
	r.rest = r.rest[length:]
	return leaf
}

// shape writes the tree with all its brackets.
func (e *expression) shape() string {
	switch e.op {
	case "":
		return e.leaf
	case "minus":
		return "(-" + e.left.shape() + ")"
	}
	return "(" + e.left.shape() + e.op + e.right.shape() + ")"
}

func (e *expression) evaluate(t testing.TB, names map[string]quantity.Quantity) quantity.Quantity {
	t.Helper()
	switch e.op {
	case "":
		return leafValue(t, e.leaf, names)
	case "minus":
		return must(t)(e.left.evaluate(t, names).Neg())
	case "^":
		n, ok := e.right.evaluate(t, names).Number()
		require.True(t, ok)
		return must(t)(e.left.evaluate(t, names).Pow(int(n)))
	}
	return must(t)(operations[e.op](e.left.evaluate(t, names), e.right.evaluate(t, names)))
}

func leafValue(t testing.TB, leaf string, names map[string]quantity.Quantity) quantity.Quantity {
	t.Helper()
	if q, ok := names[leaf]; ok {
		return q
	}
	if text, ok := strings.CutPrefix(leaf, `Q"`); ok {
		return mustParse(t, strings.TrimSuffix(text, `"`))
	}
	v, err := strconv.ParseFloat(leaf, 64)
	require.NoError(t, err)
	return quantity.Bare(v)
}
