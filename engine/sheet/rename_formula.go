package sheet

import (
	"slices"
	"strings"
)

// renameIn is a formula in which the line or table from is called to. columns
// are names that mean a column of the formula's own table and not a line. clash
// says that to already means something else in a formula that names from.
func renameIn(formula, from, to string, columns []string) (text string, clash bool) {
	if slices.Contains(columns, from) {
		return formula, false
	}
	var out strings.Builder
	at, found, taken := 0, false, slices.Contains(columns, to)
	for name := range bareNames(formula) {
		switch formula[name.from:name.to] {
		case from:
			out.WriteString(formula[at:name.from] + to)
			at, found = name.to, true
		case to:
			taken = true
		}
	}
	if !found {
		return formula, false
	}
	return out.String() + formula[at:], taken
}

// stretch is a part of a text, in bytes.
type stretch struct{ from, to int }

// bareNames goes through the names of a formula that stand for lines, tables,
// functions or lets: not those behind a dot, in quotes or in a comment.
func bareNames(formula string) func(func(stretch) bool) {
	return func(yield func(stretch) bool) {
		member := false
		for at := 0; at < len(formula); {
			c := formula[at]
			end := at + 1
			switch {
			case c == '"' || c == '\'' || c == '`':
				end = quoteEnd(formula, at)
				member = false
			case strings.HasPrefix(formula[at:], "/*"):
				end = after(formula, at+2, "*/")
			case strings.HasPrefix(formula[at:], "//"):
				end = after(formula, at, "\n")
			case nameByte(c):
				for end < len(formula) && nameByte(formula[end]) {
					end++
				}
				if digit := c >= '0' && c <= '9'; !member && !digit && !yield(stretch{at, end}) {
					return
				}
				member = false
			case c != ' ' && c != '\t' && c != '\n' && c != '\r':
				member = c == '.'
			}
			at = end
		}
	}
}

// nameByte takes the bytes of letters beyond ASCII too, so that a name is never
// cut in the middle of one.
func nameByte(c byte) bool {
	return c == '_' || c == '$' || c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80
}

// quoteEnd is the byte behind the quote that closes the one at a byte, or the
// end of a text that never does.
func quoteEnd(text string, at int) int {
	for end := at + 1; end < len(text); end++ {
		switch {
		case text[end] == '\\' && text[at] != '`':
			end++
		case text[end] == text[at]:
			return end + 1
		}
	}
	return len(text)
}

func after(text string, at int, what string) int {
	if found := strings.Index(text[at:], what); found >= 0 {
		return at + found + len(what)
	}
	return len(text)
}
