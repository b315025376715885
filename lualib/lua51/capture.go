package lua51

import "strconv"

// A Capture is what a capture of a pattern caught: a text, or for () a
// position (1-based).
type Capture struct {
	Text       string
	Position   int
	IsPosition bool

	unfinished bool // opened and never closed; C complains when it is used
}

// String is the capture as text; a position is its decimal number.
func (c Capture) String() string {
	if c.IsPosition {
		return strconv.Itoa(c.Position)
	}
	return c.Text
}

// A Match is one match of a pattern in a text.
type Match struct {
	Start, End int       // byte offsets, 0-based, half-open
	Captures   []Capture // in the order of their opening brackets
}

// Values is what string.match, gmatch and a replacement function receive: the
// captures, or the whole match in s when the pattern has none. It fails with
// "unfinished capture" when a capture was never closed.
func (mt Match) Values(s string) ([]Capture, error) {
	if len(mt.Captures) == 0 {
		return []Capture{{Text: s[mt.Start:mt.End]}}, nil
	}
	return mt.Captures, mt.closed()
}

// First is what a replacement table is asked for: the first capture, or the
// whole match in s. It fails with "unfinished capture" when that capture was
// never closed.
func (mt Match) First(s string) (Capture, error) { return mt.capture(s, 0) }

// capture is the capture of a 0-based index; index 0 is the whole match when
// the pattern has none.
func (mt Match) capture(s string, index int) (Capture, error) {
	switch {
	case index < len(mt.Captures):
		if mt.Captures[index].unfinished {
			return Capture{}, errUnfinished
		}
		return mt.Captures[index], nil
	case index == 0:
		return Capture{Text: s[mt.Start:mt.End]}, nil
	}
	return Capture{}, errCaptureIndex
}

// closed fails when a capture was never closed.
func (mt Match) closed() error {
	for _, c := range mt.Captures {
		if c.unfinished {
			return errUnfinished
		}
	}
	return nil
}

// result is the match just found.
func (st *state) result(start, end int) Match {
	mt := Match{Start: start, End: end}
	if st.level == 0 {
		return mt
	}
	mt.Captures = make([]Capture, st.level)
	for i, sp := range st.spans[:st.level] {
		switch c := &mt.Captures[i]; sp.length {
		case captureOpen:
			c.unfinished = true
		case capturePosition:
			c.Position, c.IsPosition = sp.start+1, true
		default:
			c.Text = st.src[sp.start : sp.start+sp.length]
		}
	}
	return mt
}

// open starts a capture and tries the rest; without a match it undoes it.
func (st *state) open(s, p, mark int) int {
	if st.level >= maxCaptures {
		st.fail(errManyCaptures)
		return noMatch
	}
	st.spans[st.level] = span{s, mark}
	st.level++
	end := st.match(s, p+1)
	if end == noMatch {
		st.level--
	}
	return end
}

// close ends the innermost open capture and tries the rest; without a match it
// opens it again.
func (st *state) close(s, p int) int {
	i := st.level - 1
	for i >= 0 && st.spans[i].length != captureOpen {
		i--
	}
	if i < 0 {
		st.fail(errNoCapture)
		return noMatch
	}
	st.spans[i].length = s - st.spans[i].start
	end := st.match(s, p+1)
	if end == noMatch {
		st.spans[i].length = captureOpen
	}
	return end
}

// backref passes over the text of an earlier capture. A position capture has
// no text and never matches.
func (st *state) backref(s int, digit byte) int {
	i := int(digit) - '1'
	if i < 0 || i >= st.level || st.spans[i].length == captureOpen {
		st.fail(errCaptureIndex)
		return noMatch
	}
	sp := st.spans[i]
	if sp.length == capturePosition || len(st.src)-s < sp.length {
		return noMatch
	}
	st.tick(sp.length)
	if st.src[s:s+sp.length] != st.src[sp.start:sp.start+sp.length] {
		return noMatch
	}
	return s + sp.length
}

// balance passes over a balanced stretch from opener to closer.
func (st *state) balance(s int, opener, closer byte) int {
	if s >= len(st.src) || st.src[s] != opener {
		return noMatch
	}
	open := 1
	for s++; s < len(st.src) && st.tick(1); s++ {
		switch st.src[s] {
		case closer:
			if open--; open == 0 {
				return s + 1
			}
		case opener:
			open++
		}
	}
	return noMatch
}

// frontier stays at s when the byte before is outside the set and the byte at
// s inside. Both ends of the text count as a zero byte.
func (st *state) frontier(s int, set *charSet) int {
	var before, here byte
	if s > 0 {
		before = st.src[s-1]
	}
	if s < len(st.src) {
		here = st.src[s]
	}
	if !set.has(before) && set.has(here) {
		return s
	}
	return noMatch
}
