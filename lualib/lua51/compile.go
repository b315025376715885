package lua51

import (
	"errors"
	"unsafe"
)

// Errors of patterns, in the words of the C program.
var (
	errPercentEnd     = errors.New("malformed pattern (ends with '%')")
	errMissingBracket = errors.New("malformed pattern (missing ']')")
	errFrontier       = errors.New("missing '[' after '%f' in pattern")
	errBalance        = errors.New("unbalanced pattern")
	errUnfinished     = errors.New("unfinished capture")
	errNoCapture      = errors.New("invalid pattern capture")
	errCaptureIndex   = errors.New("invalid capture index")
	errManyCaptures   = errors.New("too many captures")
	errTooComplex     = errors.New("pattern too complex")
)

// An opcode is the kind of a pattern item.
type opcode uint8

const (
	opEnd      opcode = iota // the end of the pattern
	opError                  // a fault; it counts only when matching gets there
	opChar                   // one byte
	opAny                    // any byte
	opSet                    // a byte of a set or class
	opOpen                   // (
	opPosition               // ()
	opClose                  // )
	opTail                   // $ at the end
	opBalance                // %bxy
	opFrontier               // %f[set]
	opBackref                // %1
)

// An item is one step of a pattern.
type item struct {
	op    opcode
	quant byte // '*', '+', '?', '-' or 0, of opChar, opAny and opSet
	a, b  byte // the byte; the pair of %b; the digit of %1
	set   *charSet
}

// roomPerByte is the most memory that a byte of a pattern takes once compiled
// (a byte is at most one item, or part of a set).
const roomPerByte = int(unsafe.Sizeof(item{}) + unsafe.Sizeof(charSet{}))

// smallPattern is the length (bytes) up to which a pattern's memory, at most
// 14 kB, is not asked for.
const smallPattern = 256

// A compiler turns a pattern into items. A fault ends the items: C meets it
// only when matching comes to that place.
type compiler struct {
	pattern string
	at      int
	items   []item
	err     error
}

// compile reads a pattern without its anchor. A zero byte ends it (manual
// 5.4.1: a pattern cannot contain embedded zeros).
func compile(pattern string) ([]item, error) {
	pattern = cText(pattern)
	c := compiler{pattern: pattern, items: make([]item, 0, min(len(pattern)+1, 32))}
	for c.at < len(pattern) && c.err == nil {
		c.item()
	}
	last := item{op: opEnd}
	if c.err != nil {
		last.op = opError
	}
	return append(c.items, last), c.err
}

// peek is the byte n places on, 0 beyond the end.
func (c *compiler) peek(n int) byte {
	if c.at+n < len(c.pattern) {
		return c.pattern[c.at+n]
	}
	return 0
}

// emit adds an item that takes size bytes of the pattern.
func (c *compiler) emit(it item, size int) {
	c.items = append(c.items, it)
	c.at += size
}

// item reads one item.
func (c *compiler) item() {
	switch ch := c.peek(0); {
	case ch == '(' && c.peek(1) == ')':
		c.emit(item{op: opPosition}, 2)
	case ch == '(':
		c.emit(item{op: opOpen}, 1)
	case ch == ')':
		c.emit(item{op: opClose}, 1)
	case ch == '$' && c.at+1 == len(c.pattern):
		c.emit(item{op: opTail}, 1)
	case ch == '%' && c.peek(1) == 'b':
		if c.peek(2) == 0 || c.peek(3) == 0 {
			c.err = errBalance
			return
		}
		c.emit(item{op: opBalance, a: c.peek(2), b: c.peek(3)}, 4)
	case ch == '%' && c.peek(1) == 'f':
		c.frontier()
	case ch == '%' && isDigit(c.peek(1)):
		c.emit(item{op: opBackref, a: c.peek(1)}, 2)
	default:
		c.single()
	}
}

// frontier reads %f[set].
func (c *compiler) frontier() {
	c.at += 2
	if c.peek(0) != '[' {
		c.err = errFrontier
		return
	}
	if set := c.set(); c.err == nil {
		c.emit(item{op: opFrontier, set: set}, 0)
	}
}

// single reads an item for one byte, and the sign of repetition after it.
func (c *compiler) single() {
	var it item
	switch ch := c.peek(0); ch {
	case '.':
		it.op = opAny
		c.at++
	case '%':
		if c.at+1 == len(c.pattern) {
			c.err = errPercentEnd
			return
		}
		it = classItem(c.peek(1))
		c.at += 2
	case '[':
		it = item{op: opSet, set: c.set()}
	default:
		it = item{op: opChar, a: ch}
		c.at++
	}
	if c.err != nil {
		return
	}
	switch q := c.peek(0); q {
	case '*', '+', '?', '-':
		it.quant = q
		c.at++
	}
	c.emit(it, 0)
}

// classItem is the item for the byte after a percent sign.
func classItem(ch byte) item {
	if set := classes[ch]; set != nil {
		return item{op: opSet, set: set}
	}
	return item{op: opChar, a: ch}
}

// set reads a set in brackets, from [ to the closing ].
func (c *compiler) set() *charSet {
	first := c.at + 1
	if c.peek(1) == '^' {
		first++
	}
	end := c.setEnd(first)
	if end < 0 {
		c.err = errMissingBracket
		return nil
	}
	set := setOf(c.pattern[first:end])
	if c.pattern[first-1] == '^' {
		set.invert()
	}
	c.at = end + 1
	return set
}

// setEnd finds the closing bracket of a set whose body starts at i, -1 when
// there is none. A bracket that comes first belongs to the set.
func (c *compiler) setEnd(i int) int {
	for first := i; i < len(c.pattern); i++ {
		switch {
		case c.pattern[i] == ']' && i > first:
			return i
		case c.pattern[i] == '%':
			i++
		}
	}
	return -1
}
