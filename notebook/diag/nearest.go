package diag

import (
	"fmt"
	"sort"
	"strings"
)

// Nearest gives the candidate whose spelling is nearest to the name, or ""
// when none is near enough to be meant. It serves names, units, arguments,
// species, headings and flags alike.
func Nearest(name string, candidates []string) string {
	best, bestDistance := "", allowance(name)+1
	sorted := append([]string(nil), candidates...)
	sort.Strings(sorted)
	folded := strings.ToLower(name)
	for _, candidate := range sorted {
		if candidate == name {
			continue
		}
		d := distance(folded, strings.ToLower(candidate), bestDistance)
		if d < bestDistance {
			best, bestDistance = candidate, d
		}
	}
	return best
}

// DidYouMean gives a hint with the nearest candidate, or "" without one.
func DidYouMean(name string, candidates []string) string {
	if near := Nearest(name, candidates); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return ""
}

// allowance is the number of slips of the pen forgiven in a name.
func allowance(name string) int {
	switch n := len([]rune(name)); {
	case n <= 1:
		return 0 // any other letter would be near
	case n <= 2:
		return 1
	case n <= 5:
		return 2
	default:
		return n/3 + 1
	}
}

// distance counts insertions, deletions, substitutions and swaps of
// neighbours between two words (optimal string alignment), giving up at limit.
func distance(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d >= limit || -d >= limit {
		return limit
	}
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		lowest := i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			lowest = min(lowest, row[j])
		}
		if lowest >= limit {
			return limit
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}

// Close reports whether two names differ by a slip of one letter (two in a long
// name): a near miss that cannot be meant as another word.
func Close(a, b string) bool {
	limit := 1
	if len([]rune(a)) >= 8 {
		limit = 2
	}
	return distance(strings.ToLower(a), strings.ToLower(b), limit+1) <= limit
}
