package diag

import (
	"fmt"
	"slices"
	"strings"
)

// Nearest is a did-you-mean hint: the candidate fewest letters away when one is
// near enough to be meant, otherwise the candidates when they are few, or "".
func Nearest(word string, candidates []string) string {
	// A word as long as a file would cost its square.
	if len(word) > 100 {
		return ""
	}
	names := slices.Clone(candidates)
	slices.Sort(names)
	best, least := "", 1+len(word)/3
	for _, c := range names {
		if d := distance(word, c); d <= least && (best == "" || d < least) {
			best, least = c, d
		}
	}
	switch {
	case best != "":
		return fmt.Sprintf("did you mean %q?", best)
	case len(names) > 0 && len(names) <= 12:
		return "there are " + strings.Join(names, ", ")
	}
	return ""
}

// distance counts the letters to put in, take out or change to make a into b
// (Levenshtein 1966), neighbours swapped counting as one.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}
