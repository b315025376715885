package lualib

import (
	"fmt"
	"math"
	"strings"

	lua "github.com/yuin/gopher-lua"

	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// runCheck compares a value with its limits, or takes a condition as it is.
func runCheck(c *callArgs) (any, error) {
	k := &plan.Check{Name: c.text("name"), Tank: c.text("tank")}
	value, given := c.values["value"].(lua.LValue)
	if !given {
		return nil, wrong("value", "got no condition and no value, want one of them", "is the name misspelled, or does it have no value here?")
	}
	message := c.text("message")
	if b, ok := value.(lua.LBool); ok {
		return c.checkCondition(k, bool(b), message)
	}
	return c.checkValue(k, value, message)
}

func (c *callArgs) checkCondition(k *plan.Check, ok bool, message string) (any, error) {
	for _, limit := range []string{"at_most", "at_least", "caution_at"} {
		if c.has(limit) {
			return nil, wrong(limit, "got a limit beside a condition, want a value to compare", `write check{"name", value, `+limit+` = "…"}`)
		}
	}
	k.Outcome, k.Sentence = plan.Pass, "as wanted"
	if !ok {
		k.Outcome, k.Sentence = plan.Fail, "not as wanted"
	}
	if message != "" && !ok {
		k.Sentence = message
	}
	return string(k.Outcome), c.record(k)
}

func (c *callArgs) checkValue(k *plan.Check, value lua.LValue, message string) (any, error) {
	v, err := c.checkQuantity("value", value)
	if err != nil {
		return nil, err
	}
	k.Value = plan.Some(v)
	for name, limit := range map[string]*plan.Optional{"at_most": &k.AtMost, "at_least": &k.AtLeast, "caution_at": &k.CautionAt} {
		if given, ok := c.values[name].(lua.LValue); ok {
			q, err := c.checkQuantity(name, given)
			if err != nil {
				return nil, err
			}
			if _, err := v.Compare(q); err != nil {
				f := diag.AsFault(err)
				return nil, wrong(name, f.Message, f.Hint)
			}
			*limit = plan.Some(q)
		}
	}
	if !k.AtMost.Has && !k.AtLeast.Has {
		return nil, wrong("at_most", "got a value without a limit, want at_most or at_least", `write check{"name", value, at_most = "…"}`)
	}
	if err := cautionInside(k); err != nil {
		return nil, err
	}
	showInUnitOfLimit(k)
	judge(k)
	if message != "" && k.Outcome != plan.Pass {
		k.Sentence += ": " + message
	}
	return string(k.Outcome), c.record(k)
}

// cautionInside refuses a caution that the limit is reached before.
func cautionInside(k *plan.Check) error {
	if !k.CautionAt.Has {
		return nil
	}
	if n, err := k.CautionAt.Q.Compare(k.AtMost.Q); k.AtMost.Has && !k.AtLeast.Has && err == nil && n > 0 {
		return wrong("caution_at", fmt.Sprintf("got %s, beyond at_most of %s", k.CautionAt.Q.Short(), k.AtMost.Q.Short()), "the caution begins before the limit")
	}
	if n, err := k.CautionAt.Q.Compare(k.AtLeast.Q); k.AtLeast.Has && !k.AtMost.Has && err == nil && n < 0 {
		return wrong("caution_at", fmt.Sprintf("got %s, beyond at_least of %s", k.CautionAt.Q.Short(), k.AtLeast.Q.Short()), "the caution begins before the limit")
	}
	return nil
}

// showInUnitOfLimit shows the value as its limit is shown, so that a reader can
// compare.
func showInUnitOfLimit(k *plan.Check) {
	limit := k.AtMost
	if !limit.Has {
		limit = k.AtLeast
	}
	if shown, err := k.Value.Q.To(limit.Q.Unit()); err == nil && limit.Q.Unit() != nil {
		k.Value.Q = shown
	}
}

// judge sets the outcome and the sentence of a check from its numbers.
func judge(k *plan.Check) {
	k.Outcome, k.Sentence = plan.Pass, ""
	over := func(a, b plan.Optional) int {
		n, err := a.Q.Compare(b.Q)
		if err != nil {
			return 0
		}
		return n
	}
	var parts []string
	if k.AtMost.Has {
		parts = append(parts, "at most "+k.AtMost.Q.Short())
		if over(k.Value, k.AtMost) > 0 {
			k.Outcome = plan.Fail
		} else if k.CautionAt.Has && over(k.Value, k.CautionAt) >= 0 && !(k.AtLeast.Has && over(k.CautionAt, k.AtLeast) <= 0) {
			k.Outcome = plan.Caution
		}
	}
	if k.AtLeast.Has {
		parts = append(parts, "at least "+k.AtLeast.Q.Short())
		if over(k.Value, k.AtLeast) < 0 {
			k.Outcome = plan.Fail
		} else if k.CautionAt.Has && k.Outcome == plan.Pass && over(k.Value, k.CautionAt) <= 0 && !k.AtMost.Has {
			k.Outcome = plan.Caution
		}
	}
	shown := k.Value.Q.Short()
	if k.Outcome == plan.Fail && (k.AtMost.Has && shown == k.AtMost.Q.Short() || k.AtLeast.Has && shown == k.AtLeast.Q.Short()) {
		shown = k.Value.Q.String() // rounded they would look alike
	}
	k.Sentence = fmt.Sprintf("%s, want %s", shown, strings.Join(parts, " and "))
	if k.Outcome == plan.Caution {
		k.Sentence += ", caution from " + k.CautionAt.Q.Short()
	}
}

// checkQuantity reads a value or limit of a check.
func (c *callArgs) checkQuantity(name string, v lua.LValue) (quantity.Quantity, error) {
	if q, ok := asQuantity(v); ok {
		if math.IsNaN(q.Value()) {
			return q, wrong(name, "got no number (nan), want one", "")
		}
		return q, nil
	}
	if t, ok := v.(lua.LString); ok {
		q, err := quantity.Parse(string(t))
		if err != nil {
			f := diag.AsFault(withUnitHint(err))
			return q, wrong(name, f.Message, f.Hint)
		}
		return q, nil
	}
	return quantity.Quantity{}, wrong(name, fmt.Sprintf("got %s, want a condition, a number or a quantity", c.session.describe(v)), "")
}
