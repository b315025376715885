package main

import (
	"bytes"
	"context"
	"os"
	"strconv"
	"testing"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
	"weirbook/xlsx"
)

// sizes are the notebooks that are measured.
func sizes(b *testing.B) map[string][]byte {
	example, err := os.ReadFile("../../examples/harbour-lane.md")
	if err != nil {
		b.Fatal(err)
	}
	return map[string][]byte{"example": example, "500": generated(500, 100, 2500), "large": generated(1000, 200, 5000), "2000": generated(2000, 400, 10000)}
}

func eachSize(b *testing.B, names []string, measure func(b *testing.B, content []byte)) {
	contents := sizes(b)
	for _, name := range names {
		b.Run(name, func(b *testing.B) { measure(b, contents[name]) })
	}
}

func BenchmarkParse(b *testing.B) {
	eachSize(b, []string{"example", "large"}, func(b *testing.B, content []byte) {
		b.SetBytes(int64(len(content)))
		for b.Loop() {
			markdown.Parse("a.md", content)
		}
	})
}

func must(b testing.TB, r *notebook.Result, err error) *notebook.Result {
	if err != nil {
		b.Fatal(err)
	}
	if n := r.Errors(); n > 0 {
		b.Fatalf("%d problems, the first: %s", n, r.Problems[0].Text())
	}
	return r
}

// BenchmarkFullRun reads and runs a notebook that was never seen.
func BenchmarkFullRun(b *testing.B) {
	eachSize(b, []string{"example", "500", "large", "2000"}, func(b *testing.B, content []byte) {
		for b.Loop() {
			runner := run.New(lualib.New(), notebook.DefaultLimits())
			result, err := runner.Run(context.Background(), markdown.NewParser().Parse("a.md", content), nil)
			must(b, result, err)
		}
	})
}

// BenchmarkPartialRun reads and runs a notebook again after an edit in a cell
// that nothing reads.
func BenchmarkPartialRun(b *testing.B) {
	eachSize(b, []string{"example", "large"}, func(b *testing.B, content []byte) {
		versions := [][]byte{
			append(bytes.Clone(content), "\n## Last\n\n```lua Last\nunread = 1\n```\n"...),
			append(bytes.Clone(content), "\n## Last\n\n```lua Last\nunread = 2\n```\n"...),
		}
		runner, parser := run.New(lualib.New(), notebook.DefaultLimits()), markdown.NewParser()
		for _, v := range versions {
			result, err := runner.Run(context.Background(), parser.Parse("a.md", v), nil)
			must(b, result, err)
		}
		i := 0
		for b.Loop() {
			// a number never seen, so that the cell really runs
			edited := bytes.Replace(versions[0], []byte("unread = 1"), []byte("unread = "+strconv.Itoa(i+3)), 1)
			result, err := runner.Run(context.Background(), parser.Parse("a.md", edited), nil)
			if must(b, result, err); result.Ran != 1 {
				b.Fatalf("%d cells ran, want 1", result.Ran)
			}
			i++
		}
	})
}

func BenchmarkWorkbook(b *testing.B) {
	eachSize(b, []string{"example", "large"}, func(b *testing.B, content []byte) {
		runner := run.New(lualib.New(), notebook.DefaultLimits())
		result, err := runner.Run(context.Background(), markdown.Parse("a.md", content), nil)
		must(b, result, err)
		for b.Loop() {
			var book bytes.Buffer
			if err := xlsx.Write(&book, result); err != nil {
				b.Fatal(err)
			}
		}
	})
}
