package lua51_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"weirbook/lualib/lua51"
)

// pattern returns a pattern, mostly well formed.
func pattern(r *rand.Rand) string {
	if r.IntN(6) == 0 {
		return letters(r, "ab.%[]()*+-?^$1f0\x00", 6)
	}
	p, open := pick(r, "", "", "", "^"), 0
	for range 1 + r.IntN(5) {
		switch r.IntN(8) {
		case 0:
			p, open = p+"(", open+1
		case 1:
			if open > 0 {
				p, open = p+")", open-1
			}
		case 2:
			p += pick(r, "()", "%1", "%2", "%b()", "%bab", "%baa", "%f[a]", "%f[%w]", "%f[^b]", "%f[%z]", "$", "^", "%0", "%b(")
		default:
			p += single(r) + pick(r, "", "", "", "*", "+", "-", "?")
		}
	}
	return p + strings.Repeat(")", max(open-r.IntN(10)/9, 0)) + pick(r, "", "", "", "$")
}

// single returns a pattern item for one character.
func single(r *rand.Rand) string {
	switch r.IntN(5) {
	case 0:
		return "%" + pick(r, "a", "c", "d", "l", "p", "s", "u", "w", "x", "z", "A", "C", "D", "L", "P", "S", "U", "W", "X", "Z", "%", ".", "(", "-", "q")
	case 1:
		return "[" + pick(r, "", "^") + pick(r, "ab", "a-b", "]a", "a-", "-a", "%a-z", "(-b", "%)%(", "^a", "a^", "b-a", "%]", "a-%]", ".", "", "%d%s", "\x80-\xff") + "]"
	default:
		return pick(r, "a", "b", "(a", "a)", ".", ".", "A", "1", "\xe9")[:1]
	}
}

// subject returns a text for a pattern to look at.
func subject(r *rand.Rand) string {
	return letters(r, pick(r, "ab", "aab", "ab()", "abA1 .-]^%", "ab\x00\xe9\n"), 12)
}

func shownMatch(s string, positions bool, mt *lua51.Match, err error) string {
	if err != nil {
		return shownError(err)
	}
	if mt == nil {
		return "nil"
	}
	captures := mt.Captures
	if !positions {
		if captures, err = mt.Values(s); err != nil {
			return shownError(err)
		}
		return shownCaptures(captures)
	}
	return strings.TrimSpace(fmt.Sprintf("%d %d %s", mt.Start+1, mt.End, shownCaptures(captures)))
}

// shownMatches is the line of peerScript's gmatch.
func shownMatches(s, p string) string {
	mr, out := lua51.NewMatcher(nil, s, p), []string{}
	for {
		mt, err := mr.Next()
		if err != nil {
			return shown("error " + err.Error())
		}
		if mt == nil {
			return shown(strings.Join(out, ";"))
		}
		out = append(out, shownMatch(s, false, mt, nil))
	}
}

// each is the replacement function of peerScript.
func each(s string) func(lua51.Match) (string, bool, error) {
	return func(mt lua51.Match) (string, bool, error) {
		captures, err := mt.Values(s)
		if err != nil {
			return "", false, err
		}
		if !captures[0].IsPosition && captures[0].Text == "a" {
			return "", true, nil
		}
		return "<" + shownCaptures(captures) + ">", false, nil
	}
}

func shownGsub(s string, n int, err error) string {
	if err != nil {
		return shownError(err)
	}
	return fmt.Sprintf("%s %d", shown(s), n)
}

func TestPatternsAgreeWithTheCProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 4))
	var cases []peerCase
	add := func(call func() string, layout string, args ...any) {
		cases = append(cases, peerCase{fmt.Sprintf(layout, args...), call})
	}
	for range 3000 {
		s, p, repl := subject(r), pattern(r), letters(r, "x%%0123\x00", 4)
		init, limit, plain := pick(r, 1, 1, r.IntN(30)-15), pick(r, len(s)+1, r.IntN(4)-1), r.IntN(8) == 0
		add(func() string {
			mt, err := lua51.Find(nil, s, p, init, plain)
			return shownMatch(s, true, mt, err)
		}, "string.find, %s, %s, %d, %v", lit(s), lit(p), init, plain)
		add(func() string {
			mt, err := lua51.Search(nil, s, p, init)
			return shownMatch(s, false, mt, err)
		}, "string.match, %s, %s, %d", lit(s), lit(p), init)
		add(func() string { return shownMatches(s, p) }, "gmatch, %s, %s", lit(s), lit(p))
		add(func() string {
			return shownGsub(lua51.Gsub(nil, s, p, limit, func(mt lua51.Match) (string, bool, error) {
				text, err := lua51.ExpandReplacement(nil, repl, s, mt)
				return text, false, err
			}))
		}, "string.gsub, %s, %s, %s, %d", lit(s), lit(p), lit(repl), limit)
		add(func() string { return shownGsub(lua51.Gsub(nil, s, p, lua51.Unlimited, each(s))) }, "string.gsub, %s, %s, each", lit(s), lit(p))
	}
	comparePeer(t, cases)
}
