package lua51

import "strings"

// A Meter bounds the work of one native call. A nil Meter, or a nil function
// in it, means no bound. The numbers a Meter sees depend on the arguments
// only, so a refusal is repeatable.
type Meter struct {
	// Step is called with the units of work done since the last call: one for
	// each character looked at and each pattern item tried, and one for each 16
	// bytes copied. A non-nil error stops the work and is returned as it is.
	// Up to about 1,024 units are gathered before a call; the rest follows when
	// the native call ends.
	Step func(n int) error
	// Room is asked before bytes are allocated. A non-nil error stops the work
	// and is returned as it is. Pieces of fixed small size are not asked for.
	Room func(bytes int) error
}

const (
	stepBatch    = 1024 // units of work between two calls of Step
	bytesPerUnit = 16   // bytes copied for one unit of work
)

// A counter gathers the work of one native call and keeps the first error.
type counter struct {
	meter   *Meter
	pending int
	err     error
}

// tick adds n units and reports whether the work may go on.
func (c *counter) tick(n int) bool {
	c.pending += n
	return c.pending < stepBatch || c.flush()
}

// flush hands the gathered units to the Meter, after a failure too: failed
// work is work.
func (c *counter) flush() bool {
	n := c.pending
	c.pending = 0
	if n > 0 && c.meter != nil && c.meter.Step != nil {
		if err := c.meter.Step(n); err != nil {
			c.fail(err)
		}
	}
	return c.err == nil
}

// finish hands over what is left and returns the first error of the call.
func (c *counter) finish() error {
	c.flush()
	return c.err
}

// fail keeps the first error.
func (c *counter) fail(err error) {
	if c.err == nil {
		c.err = err
	}
}

// room asks for memory and reports whether it was granted.
func (c *counter) room(bytes int) bool {
	if c.err == nil && bytes > 0 && c.meter != nil && c.meter.Room != nil {
		c.err = c.meter.Room(bytes)
	}
	return c.err == nil
}

// A buffer is a text under construction that asks before it grows.
type buffer struct {
	sb strings.Builder
	c  *counter
}

// reserve makes room for n more bytes; the size at least doubles, so that
// growing costs linear time.
func (b *buffer) reserve(n int) bool {
	if b.sb.Cap()-b.sb.Len() >= n {
		return true
	}
	if !b.c.room(2*b.sb.Cap() + n) {
		return false
	}
	b.sb.Grow(n)
	return true
}

// text appends s and reports whether the work may go on.
func (b *buffer) text(s string) bool {
	if !b.reserve(len(s)) {
		return false
	}
	b.sb.WriteString(s)
	return b.c.tick(len(s) / bytesPerUnit)
}

// char appends one byte and reports whether the work may go on.
func (b *buffer) char(c byte) bool {
	if !b.reserve(1) {
		return false
	}
	b.sb.WriteByte(c)
	return true
}
