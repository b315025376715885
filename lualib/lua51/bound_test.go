package lua51_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

var (
	errSteps = errors.New("too many steps")
	errRoom  = errors.New("too much memory")
)

// A tally counts what a Meter is told and refuses beyond its limits.
type tally struct{ steps, room, maxSteps, maxRoom int }

func (c *tally) meter() *lua51.Meter {
	return &lua51.Meter{
		Step: func(n int) error {
			if c.steps += n; c.steps > c.maxSteps {
				return errSteps
			}
			return nil
		},
		Room: func(n int) error {
			if c.room+n > c.maxRoom {
				return errRoom
			}
			c.room += n
			return nil
		},
	}
}

func newTally(maxSteps, maxRoom int) *tally { return &tally{maxSteps: maxSteps, maxRoom: maxRoom} }

// Each pattern would run for years; the Meter stops it soon after its limit.
func TestHostilePatternsStop(t *testing.T) {
	const limit = 300_000
	for name, c := range map[string]struct{ s, pattern string }{
		"shortest in a row": {strings.Repeat("a", 30), strings.Repeat("a-", 30) + "b"},
		"longest in a row":  {strings.Repeat("a", 30), strings.Repeat("a*", 30) + "b"},
		"perhaps in a row":  {strings.Repeat("a", 60), strings.Repeat("a?", 60) + "b"},
		"captures":          {strings.Repeat("a", 10000), "(.-)(.-)(.-)(.-)(.-)(.-)x"},
		"balanced":          {strings.Repeat("(", 10000), "%b()"},
		"back references":   {strings.Repeat("a", 10000), "(.*)%1x"},
	} {
		count := newTally(limit, 1<<20)
		_, err := lua51.Find(count.meter(), c.s, c.pattern, 1, false)
		require.ErrorIs(t, err, errSteps, name)
		require.Less(t, count.steps, limit+2*len(c.s)+2048, name)
		count = newTally(limit, 1<<20)
		_, err = lua51.NewMatcher(count.meter(), c.s, c.pattern).Next()
		require.ErrorIs(t, err, errSteps, name)
		count = newTally(limit, 1<<20)
		_, _, err = expand(count.meter(), c.s, c.pattern, "", lua51.Unlimited)
		require.ErrorIs(t, err, errSteps, name)
	}
}

func TestGsubIsLinear(t *testing.T) {
	work := func(hits int) tally {
		count := newTally(1<<40, 1<<40)
		_, n, err := expand(count.meter(), strings.Repeat("ab", hits), "(a)", "<%1>", lua51.Unlimited)
		require.NoError(t, err)
		require.Equal(t, hits, n)
		return *count
	}
	one, two := work(50_000), work(100_000)
	require.Less(t, two.steps, 20*200_000, "work of 100,000 hits")
	require.InEpsilon(t, 2, float64(two.steps)/float64(one.steps), 0.05, "work for twice the text")
	require.InEpsilon(t, 2, float64(two.room)/float64(one.room), 0.5, "memory for twice the text")
}

// Room refuses before anything is allocated: a gigabyte would show.
func TestRoomIsAskedFirst(t *testing.T) {
	const limit = 1 << 20
	big := strings.Repeat("a", 1<<19)
	parts := make([]string, 1000)
	for i := range parts {
		parts[i] = big
	}
	keepAll := func(lua51.Match) (string, bool, error) { return big, false, nil }
	for name, call := range map[string]func(*lua51.Meter) (string, error){
		"rep":     func(m *lua51.Meter) (string, error) { return lua51.Rep(m, "ab", 1e9) },
		"concat":  func(m *lua51.Meter) (string, error) { return lua51.Concat(m, parts, big) },
		"format":  func(m *lua51.Meter) (string, error) { return lua51.Format(m, "%s%s%s", repeatArg(big, 3)) },
		"quote":   func(m *lua51.Meter) (string, error) { return lua51.Format(m, "%q%q", repeatArg(big, 2)) },
		"reverse": func(m *lua51.Meter) (string, error) { return lua51.Reverse(m, big+"aa") },
		"upper":   func(m *lua51.Meter) (string, error) { return lua51.Upper(m, big+"aa") },
		"char":    func(m *lua51.Meter) (string, error) { return lua51.Char(m, make([]int, limit)) },
		"gsub": func(m *lua51.Meter) (string, error) {
			s, _, err := lua51.Gsub(m, big, "a", lua51.Unlimited, keepAll)
			return s, err
		},
		"expand": func(m *lua51.Meter) (string, error) {
			return lua51.ExpandReplacement(m, "%0%0%0", big, lua51.Match{End: len(big)})
		},
		"pattern": func(m *lua51.Meter) (string, error) {
			_, err := lua51.Search(m, "a", big, 1)
			return "", err
		},
	} {
		_, err := call(newTally(1<<40, limit).meter())
		require.ErrorIs(t, err, errRoom, name)
	}
}

func repeatArg(s string, n int) (args []lua51.Arg) {
	for range n {
		args = append(args, textArg(s))
	}
	return args
}

// Every native call hands all of its work to the Meter, small calls too.
func TestSmallCallsCount(t *testing.T) {
	count := newTally(1<<40, 1<<40)
	m := count.meter()
	_, err := lua51.Find(m, "a,b", ",", 1, true)
	require.NoError(t, err)
	plain := count.steps
	require.Positive(t, plain)
	_, err = lua51.Search(m, "abc", "%1", 1)
	require.EqualError(t, err, "invalid capture index")
	require.Greater(t, count.steps, plain, "failed work counts")
}

// A plain search in a long text costs the way to the hit, not the whole text.
func TestPlainFindPaysTheWayToTheHit(t *testing.T) {
	text := strings.Repeat("line\n", 100_000)
	count := newTally(1<<40, 1<<40)
	mt, err := lua51.Find(count.meter(), text, "\n", 6, true)
	require.NoError(t, err)
	require.Equal(t, 9, mt.Start)
	require.Less(t, count.steps, 20)
	long := strings.Repeat("x", 300_000) + "needle"
	mt, err = lua51.Find(nil, long, "needle", 1, true)
	require.NoError(t, err)
	require.Equal(t, 300_000, mt.Start)
}
