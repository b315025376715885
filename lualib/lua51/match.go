package lua51

import "strings"

const (
	maxCaptures = 32  // captures in a pattern, as in the C program
	maxDepth    = 200 // nested tries; the C program has no limit but its stack
	noMatch     = -1
)

// Lengths of a capture that has no text.
const (
	captureOpen     = -1
	capturePosition = -2
)

// A span is a capture while matching: start and length, or one of the marks.
type span struct{ start, length int }

// A state tries one pattern on one text.
type state struct {
	counter
	src      string
	items    []item
	fault    error // of the pattern, met at its opError
	anchored bool
	depth    int
	level    int
	spans    [maxCaptures]span
}

// prepare compiles the pattern. When anchors is false a leading ^ stands for
// itself, as gmatch has it.
func (st *state) prepare(m *Meter, s, pattern string, anchors bool) {
	st.meter, st.src = m, s
	if anchors && strings.HasPrefix(pattern, "^") {
		st.anchored, pattern = true, pattern[1:]
	}
	if !st.tick(len(pattern)) || len(pattern) > smallPattern && !st.room(roomPerByte*(len(pattern)+1)) {
		return
	}
	st.items, st.fault = compile(pattern)
}

// search finds the first match that starts at from or later. The end is
// noMatch when there is none or the work was stopped.
func (st *state) search(from int) (start, end int) {
	for s := from; s <= len(st.src) && st.err == nil; s++ {
		if !st.anchored {
			s = st.skip(s)
		}
		if s < 0 {
			break
		}
		st.level = 0
		if e := st.match(s, 0); e != noMatch {
			return s, e
		}
		if st.anchored {
			break
		}
	}
	return 0, noMatch
}

// skip goes to the next place where a pattern that begins with a byte or set
// can match, -1 when there is none.
func (st *state) skip(s int) int {
	lead := &st.items[0]
	if lead.quant != 0 && lead.quant != '+' {
		return s
	}
	n := 0
	switch rest := st.src[s:]; lead.op {
	case opChar:
		n = strings.IndexByte(rest, lead.a)
	case opSet:
		n = indexSet(rest, lead.set)
	}
	if n < 0 {
		st.tick(len(st.src) - s)
		return -1
	}
	st.tick(n)
	return s + n
}

// indexSet finds the first byte of a set, -1 when there is none.
func indexSet(s string, set *charSet) int {
	for i := range len(s) {
		if set.has(s[i]) {
			return i
		}
	}
	return -1
}

// match tries the items from p on at s and returns the end of the match. It
// nests only for captures and repetitions, not for the characters they take.
func (st *state) match(s, p int) int {
	if st.depth >= maxDepth {
		st.fail(errTooComplex)
		return noMatch
	}
	st.depth++
	end := st.run(s, p)
	st.depth--
	if st.err != nil {
		return noMatch
	}
	return end
}

// run is the loop of match.
func (st *state) run(s, p int) int {
	for st.tick(1) {
		it := &st.items[p]
		switch it.op {
		case opEnd:
			return s
		case opError:
			st.fail(st.fault)
			return noMatch
		case opOpen:
			return st.open(s, p, captureOpen)
		case opPosition:
			return st.open(s, p, capturePosition)
		case opClose:
			return st.close(s, p)
		case opTail:
			if s == len(st.src) {
				return s
			}
			return noMatch
		case opBalance:
			s = st.balance(s, it.a, it.b)
		case opFrontier:
			s = st.frontier(s, it.set)
		case opBackref:
			s = st.backref(s, it.a)
		default:
			switch it.quant {
			case 0:
				s = st.step(s, it)
			case '?':
				if next := st.step(s, it); next != noMatch {
					if end := st.match(next, p+1); end != noMatch || st.err != nil {
						return end
					}
				}
			case '-':
				return st.fewest(s, p, it)
			default:
				return st.most(s, p, it)
			}
		}
		if s == noMatch {
			return noMatch
		}
		p++
	}
	return noMatch
}

// fits tells whether the byte at s fits an item for one byte.
func (st *state) fits(s int, it *item) bool {
	if s >= len(st.src) {
		return false
	}
	switch it.op {
	case opChar:
		return st.src[s] == it.a
	case opSet:
		return it.set.has(st.src[s])
	}
	return true
}

// step passes over one byte that fits.
func (st *state) step(s int, it *item) int {
	if st.fits(s, it) {
		return s + 1
	}
	return noMatch
}

// most takes as many bytes as fit, then fewer until the rest matches.
func (st *state) most(s, p int, it *item) int {
	least, end := s, s
	if it.quant == '+' {
		least++
	}
	for st.fits(end, it) {
		if end++; !st.tick(1) {
			return noMatch
		}
	}
	for ; end >= least && st.err == nil; end-- {
		if e := st.match(end, p+1); e != noMatch {
			return e
		}
	}
	return noMatch
}

// fewest takes no byte, then more until the rest matches.
func (st *state) fewest(s, p int, it *item) int {
	for st.err == nil {
		if e := st.match(s, p+1); e != noMatch {
			return e
		}
		if !st.fits(s, it) {
			break
		}
		s++
	}
	return noMatch
}
