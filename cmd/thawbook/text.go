package main

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// width is how many columns text output may take.
const width = 80

// clean makes text from a sheet safe to print: a control character, which
// could move the cursor or recolour the screen, becomes a space.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
}

// wrap breaks text at spaces into lines of at most limit columns, each
// beginning with indent. A word longer than a line is cut.
func wrap(text string, limit int, indent string) string {
	room := limit - columns(indent)
	var lines []string
	line := ""
	for _, word := range strings.Fields(clean(text)) {
		if line != "" && columns(line)+1+columns(word) > room {
			lines, line = append(lines, line), ""
		}
		for columns(word) > room {
			head := string([]rune(word)[:room])
			lines, word = append(lines, head), strings.TrimPrefix(word, head)
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	if line != "" {
		lines = append(lines, line)
	}
	return indent + strings.Join(lines, "\n"+indent)
}

// columns is how many columns s takes on screen, one for each rune.
func columns(s string) int { return utf8.RuneCountInString(s) }

// left pads s on its right side to n columns; right pads on its left side.
// Longer text stays whole.
func left(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-columns(s)))
}

func right(s string, n int) string {
	return strings.Repeat(" ", max(0, n-columns(s))) + s
}

func trimRight(s string) string { return strings.TrimRight(s, " ") }

func trimLeft(s string) string { return strings.TrimLeft(s, " ") }
