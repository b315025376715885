package lua51

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
)

// maxBytes is the most results of Byte (count; 0 to 7,900; exact; the C
// program allows 8,000 slots of its stack, of which a call uses some).
const maxBytes = 7900

var errTooLarge = errors.New("resulting string too large")

// grant asks for the work and the memory of a text of n bytes.
func grant(m *Meter, n int) error {
	c := counter{meter: m}
	if c.room(n) {
		c.tick(n/bytesPerUnit + 1)
	}
	return c.finish()
}

// Rep is string.rep (manual 5.4): n copies of s, none when n is 0 or less.
func Rep(m *Meter, s string, n int) (string, error) {
	if n <= 0 || s == "" {
		return "", nil
	}
	if n > math.MaxInt/len(s) {
		return "", errTooLarge
	}
	if err := grant(m, n*len(s)); err != nil {
		return "", err
	}
	return strings.Repeat(s, n), nil
}

// Concat is the joining of table.concat (manual 5.5): the parts with sep
// between them.
func Concat(m *Meter, parts []string, sep string) (string, error) {
	total := 0
	for i, part := range parts {
		n := len(part)
		if i > 0 {
			n += len(sep)
		}
		if total > math.MaxInt-n {
			return "", errTooLarge
		}
		total += n
	}
	c := counter{meter: m}
	if c.tick(len(parts)) && c.room(total) {
		c.tick(total / bytesPerUnit)
	}
	if err := c.finish(); err != nil {
		return "", err
	}
	return strings.Join(parts, sep), nil
}

// Reverse is string.reverse (manual 5.4): the bytes from last to first.
func Reverse(m *Meter, s string) (string, error) {
	if err := grant(m, 2*len(s)); err != nil {
		return "", err
	}
	b := []byte(s)
	slices.Reverse(b)
	return string(b), nil
}

// Upper is string.upper (manual 5.4) in the C locale: only the letters a to z
// change.
func Upper(m *Meter, s string) (string, error) {
	return shift(m, s, 'a', 'z', 'A')
}

// Lower is string.lower (manual 5.4) in the C locale: only the letters A to Z
// change.
func Lower(m *Meter, s string) (string, error) {
	return shift(m, s, 'A', 'Z', 'a')
}

// shift moves the bytes from lo to hi to those that start at target.
func shift(m *Meter, s string, lo, hi, target byte) (string, error) {
	if err := grant(m, 2*len(s)); err != nil {
		return "", err
	}
	b := []byte(s)
	for i, c := range b {
		if c >= lo && c <= hi {
			b[i] = c - lo + target
		}
	}
	return string(b), nil
}

// Byte is string.byte (manual 5.4): the codes of the bytes from position i to
// j (1-based, negative from the end, both included). Lua's default for i is 1
// and for j is i. More than 7,900 are refused.
func Byte(s string, i, j int) ([]byte, error) {
	part := Sub(s, i, j)
	if len(part) > maxBytes {
		return nil, errors.New("stack overflow (string slice too long)")
	}
	return []byte(part), nil
}

// Char is string.char (manual 5.4): the bytes of the codes, each 0 to 255.
func Char(m *Meter, codes []int) (string, error) {
	if err := grant(m, 2*len(codes)); err != nil {
		return "", err
	}
	b := make([]byte, len(codes))
	for i, code := range codes {
		if code < 0 || code > 255 {
			return "", fmt.Errorf("bad argument #%d to 'char' (invalid value)", i+1)
		}
		b[i] = byte(code)
	}
	return string(b), nil
}

// Sub is string.sub (manual 5.4): the bytes from position i to j (1-based,
// negative from the end, both included). Lua's default for j is -1.
func Sub(s string, i, j int) string {
	start := max(fromEnd(i, len(s)), 1)
	end := min(fromEnd(j, len(s)), len(s))
	if start > end {
		return ""
	}
	return s[start-1 : end]
}
