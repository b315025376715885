package lua51_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/lua51"
)

func BenchmarkGsub(b *testing.B) {
	text := strings.Repeat("word ", 20_000)
	m := newTally(1<<60, 1<<60).meter()
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		_, n, err := expand(m, text, "%s", "_", lua51.Unlimited)
		require.NoError(b, err)
		require.Equal(b, 20_000, n)
	}
}

func BenchmarkFind(b *testing.B) {
	m := newTally(1<<60, 1<<60).meter()
	b.ReportAllocs()
	for b.Loop() {
		mt, err := lua51.Find(m, "height = 600 mm", "(%w+)%s*=%s*(%d+)", 1, false)
		if err != nil || mt == nil {
			b.Fatal("no match")
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	m := newTally(1<<60, 1<<60).meter()
	args := []lua51.Arg{textArg("north"), numberArg(600), numberArg(3.14159)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lua51.Format(m, "%-10s %5d %8.2f", args); err != nil {
			b.Fatal(err)
		}
	}
}
