package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// nearest is a did-you-mean hint: the candidate fewest letters away when one is
// near enough to be meant, otherwise the candidates when they are few.
func nearest(word string, candidates []string) string {
	// A word of the length of a file would cost its square.
	if utf8.RuneCountInString(word) > maxID {
		return "check the spelling"
	}
	names := slices.Clone(candidates)
	slices.Sort(names)
	best, least := "", 1+len(word)/3
	for _, c := range names {
		if n := distance(word, c); n <= least && (best == "" || n < least) {
			best, least = c, n
		}
	}
	switch {
	case best != "":
		return "did you mean " + quote(best) + "?"
	case len(names) > 0 && len(names) <= 20:
		return "there are " + strings.Join(names, ", ")
	}
	return "check the spelling"
}

// distance counts the letters to put in, take out, change or swap with their
// neighbour to make a into b (Damerau 1964, Levenshtein 1966).
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

// quote puts a person's text in quotes, cut where it would flood a message.
func quote(text string) string {
	const most = 60
	if utf8.RuneCountInString(text) > most {
		text = string([]rune(text)[:most]) + "…"
	}
	return `"` + strings.Join(strings.Fields(text), " ") + `"`
}
