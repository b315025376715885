package lua51

import (
	"errors"
	"fmt"
	"strings"
)

// Kind is the kind of a value given to Format.
type Kind int

const (
	// KindNone is an argument that is not there.
	KindNone Kind = iota
	// KindNumber is a number.
	KindNumber
	// KindText is a text.
	KindText
	// KindOther is any other value; the caller has made a text of it.
	KindOther
)

// Arg is one argument of Format.
type Arg struct {
	Kind     Kind
	Number   float64 // of KindNumber
	Text     string  // of KindText and KindOther
	TypeName string  // of KindOther: Lua's name of the type, such as "table"
}

// A layoutSpec is what stands between the % and the verb of a format item.
type layoutSpec struct {
	minus, plus, space, alternate, zero bool

	width     int // 0 to 99
	precision int // 0 to 99, or -1 when none is given
}

// A formatter writes one text of Format.
type formatter struct {
	counter
	out    buffer
	layout string
	at     int // index into layout
	args   []Arg
	used   int // arguments taken
}

// Format is string.format (manual 5.4): the verbs c, d, i, o, u, x, X, e, E,
// f, g, G, q, s and %% with the flags, width and precision of C, each of at
// most two digits. Number verbs take a text that reads as a number; %s prints
// the Text of other kinds.
func Format(m *Meter, layout string, args []Arg) (string, error) {
	f := &formatter{counter: counter{meter: m}, layout: layout, args: args}
	f.out.c = &f.counter
	for f.at < len(layout) && f.err == nil {
		f.plain()
		if f.at < len(layout) {
			f.item()
		}
	}
	if err := f.finish(); err != nil {
		return "", err
	}
	return f.out.sb.String(), nil
}

// plain copies up to the next percent sign.
func (f *formatter) plain() {
	rest := f.layout[f.at:]
	if i := strings.IndexByte(rest, '%'); i >= 0 {
		rest = rest[:i]
	}
	f.at += len(rest)
	f.tick(len(rest))
	f.out.text(rest)
}

// item writes the item that starts at the percent sign.
func (f *formatter) item() {
	f.at++
	if f.peek() == '%' {
		f.at++
		f.out.char('%')
		return
	}
	if f.used >= len(f.args) || f.args[f.used].Kind == KindNone {
		f.used++
		f.bad("no value")
		return
	}
	f.used++
	spec, err := f.scanSpec()
	if err != nil {
		f.fail(err)
		return
	}
	f.tick(8) // a guess at the cost of an item, beside its characters
	f.verb(spec, f.args[f.used-1])
}

// peek is the next byte of the layout, 0 at its end.
func (f *formatter) peek() byte {
	if f.at < len(f.layout) {
		return f.layout[f.at]
	}
	return 0
}

// bad refuses the argument taken last. The layout itself is the first.
func (f *formatter) bad(why string) {
	f.fail(fmt.Errorf("bad argument #%d to 'format' (%s)", f.used+1, why))
}

// scanSpec reads flags, width and precision.
func (f *formatter) scanSpec() (layoutSpec, error) {
	spec := layoutSpec{precision: -1}
	flags := 0
	for spec.flag(f.peek()) {
		f.at++
		flags++
	}
	if flags > 5 {
		return spec, errors.New("invalid format (repeated flags)")
	}
	spec.width = f.twoDigits()
	if f.peek() == '.' {
		f.at++
		spec.precision = f.twoDigits()
	}
	if isDigit(f.peek()) {
		return spec, errors.New("invalid format (width or precision too long)")
	}
	return spec, nil
}

// flag notes a flag and reports whether c is one.
func (s *layoutSpec) flag(c byte) bool {
	switch c {
	case '-':
		s.minus = true
	case '+':
		s.plus = true
	case ' ':
		s.space = true
	case '#':
		s.alternate = true
	case '0':
		s.zero = true
	default:
		return false
	}
	return true
}

// twoDigits reads a number of at most two digits, 0 when there is none.
func (f *formatter) twoDigits() int {
	n := 0
	for range 2 {
		if c := f.peek(); isDigit(c) {
			n = 10*n + int(c-'0')
			f.at++
		}
	}
	return n
}
