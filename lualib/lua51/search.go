package lua51

import "strings"

// specials are the characters that make a pattern more than plain text. A
// closing bracket alone does not, as in the C program.
const specials = "^$*+?.([%-"

// Find is string.find (manual 5.4): the first match at or after the position
// init (1-based, negative from the end; before the text is its beginning,
// beyond it is its end). When plain is true, or the pattern has no special
// character, it looks for the text of the pattern. The match is nil when there
// is none.
func Find(m *Meter, s, pattern string, init int, plain bool) (*Match, error) {
	if plain || !strings.ContainsAny(cText(pattern), specials) {
		return findPlain(m, s, pattern, startIndex(init, len(s)))
	}
	return Search(m, s, pattern, init)
}

// Search is string.match (manual 5.4): as Find, but the pattern is always a
// pattern. Match.Values gives what string.match returns.
func Search(m *Meter, s, pattern string, init int) (*Match, error) {
	var st state
	st.prepare(m, s, pattern, true)
	if st.err != nil {
		return nil, st.finish()
	}
	return st.next(startIndex(init, len(s)))
}

// next is the first match at from or later, nil when there is none. It ends
// the native call.
func (st *state) next(from int) (*Match, error) {
	start, end := st.search(from)
	if err := st.finish(); err != nil || end == noMatch {
		return nil, err
	}
	mt := st.result(start, end)
	if err := mt.closed(); err != nil {
		return nil, err
	}
	return &mt, nil
}

// startIndex turns a position into a 0-based offset from 0 to n.
func startIndex(init, n int) int {
	return min(max(fromEnd(init, n)-1, 0), n)
}

// fromEnd turns a position counted from the end into one from the beginning; 0
// stands for what lies before the text.
func fromEnd(pos, n int) int {
	if pos < 0 {
		pos += n + 1
	}
	return max(pos, 0)
}

// findPlain looks for p in s from an offset, a window at a time, so that the
// work counted is the work done.
func findPlain(m *Meter, s, p string, from int) (*Match, error) {
	c := counter{meter: m}
	c.tick(len(p))
	size := 1<<16 + 2*len(p)
	for c.err == nil && len(s)-from >= len(p) {
		window := s[from:min(from+size, len(s))]
		if i := strings.Index(window, p); i >= 0 {
			c.tick(i)
			return &Match{Start: from + i, End: from + i + len(p)}, c.finish()
		}
		c.tick(len(window))
		from += len(window) - len(p) + 1
	}
	return nil, c.finish()
}

// A Matcher gives the matches of a pattern one after the other, as
// string.gmatch does (manual 5.4). A leading ^ stands for itself.
type Matcher struct {
	st state
	at int
}

// NewMatcher prepares a Matcher; faults of the pattern show in Next, and then
// in every later Next.
func NewMatcher(m *Meter, s, pattern string) *Matcher {
	mr := new(Matcher)
	mr.st.prepare(m, s, pattern, false)
	return mr
}

// Next is the next match, nil after the last. Match.Values gives what gmatch
// returns.
func (mr *Matcher) Next() (*Match, error) {
	if mr.st.err != nil {
		return nil, mr.st.finish()
	}
	mt, err := mr.st.next(mr.at)
	switch {
	case err != nil:
		mr.st.fail(err)
	case mt == nil:
		mr.at = len(mr.st.src) + 1
	case mt.End == mt.Start:
		mr.at = mt.End + 1
	default:
		mr.at = mt.End
	}
	return mt, err
}
