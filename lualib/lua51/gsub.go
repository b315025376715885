package lua51

import (
	"math"
	"strings"
)

// Unlimited is the max of Gsub for all matches.
const Unlimited = math.MaxInt

// Gsub is string.gsub (manual 5.4): it replaces the first max matches (none
// when max is 0 or less) and returns the text and the number of matches. repl
// gives the new text, or true to keep the original, or an error that ends the
// work and is returned. The time is linear in the text for a pattern that is.
func Gsub(m *Meter, s, pattern string, max int, repl func(Match) (string, bool, error)) (string, int, error) {
	var st state
	st.prepare(m, s, pattern, true)
	out := buffer{c: &st.counter}
	count, copied, at := 0, 0, 0
	for count < max && at <= len(s) && st.err == nil {
		start, end := st.search(at)
		if end == noMatch {
			break
		}
		count++
		text, keep, err := repl(st.result(start, end))
		if err != nil {
			st.fail(err)
			break
		}
		if !keep && out.text(s[copied:start]) && out.text(text) {
			copied = end
		}
		if at = end; end == start {
			at++
		}
		if st.anchored {
			break
		}
	}
	if copied > 0 || out.sb.Len() > 0 {
		out.text(s[copied:])
		s = out.sb.String()
	}
	if err := st.finish(); err != nil {
		return "", 0, err
	}
	return s, count, nil
}

// ExpandReplacement is the text that a replacement with %0 to %9 stands for:
// %0 is the whole match in s, %1 to %9 are captures, and a percent sign before
// any other character gives that character (manual 5.4, string.gsub). A
// percent sign at the end gives a zero byte, as in the C program.
func ExpandReplacement(m *Meter, repl string, s string, mt Match) (string, error) {
	if strings.IndexByte(repl, '%') < 0 {
		c := counter{meter: m}
		c.tick(len(repl))
		return repl, c.finish()
	}
	c := counter{meter: m}
	out := buffer{c: &c}
	for i := 0; i < len(repl) && c.err == nil; i++ {
		run := i
		for i < len(repl) && repl[i] != '%' {
			i++
		}
		c.tick(i - run + 1)
		out.text(repl[run:i])
		if i == len(repl) {
			break
		}
		i++
		if err := expandOne(&out, repl, i, s, mt); err != nil {
			c.fail(err)
		}
	}
	if err := c.finish(); err != nil {
		return "", err
	}
	return out.sb.String(), nil
}

// expandOne writes what the character at i, behind a percent sign, stands for.
func expandOne(out *buffer, repl string, i int, s string, mt Match) error {
	var ch byte
	if i < len(repl) {
		ch = repl[i]
	}
	switch {
	case ch == '0':
		out.text(s[mt.Start:mt.End])
	case isDigit(ch):
		capture, err := mt.capture(s, int(ch-'1'))
		if err != nil {
			return err
		}
		out.text(capture.String())
	default:
		out.char(ch)
	}
	return nil
}
