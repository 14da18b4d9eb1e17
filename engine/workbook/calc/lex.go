package calc

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

type kind uint8

const (
	end kind = iota
	numeral
	text
	word   // a name, a function, TRUE or FALSE
	cells  // a cell or a range of cells
	symbol // an operator, a bracket or a comma
	fault  // #REF! and its kin
)

type token struct {
	kind kind
	// text is what stands there: a text without its quotes, a symbol, a word.
	text   string
	number float64
	at     Range
	// from and to are bytes of the formula.
	from, to int
}

// Range is a cell, or the cells from one corner to the other. Rows and columns
// count from 1.
type Range struct {
	Sheet                      string // "" is the formula's own
	Row, Column, Row2, Column2 int
	// fixed tells which of the four do not move with their formula.
	fixed [4]bool
}

// Single says whether the range is one cell.
func (r Range) Single() bool { return r.Row == r.Row2 && r.Column == r.Column2 }

// lex cuts a formula into tokens, the last of kind end.
func lex(formula string) ([]token, error) {
	if len(formula) > MaxRunes*utf8.UTFMax || utf8.RuneCountInString(formula) > MaxRunes {
		return nil, fmt.Errorf("it is longer than %d characters", MaxRunes)
	}
	var out []token
	for i := 0; ; {
		for i < len(formula) && strings.IndexByte(" \t\r\n", formula[i]) >= 0 {
			i++
		}
		if i == len(formula) {
			return append(out, token{kind: end, from: i, to: i}), nil
		}
		t, err := next(formula[i:])
		if err != nil {
			return nil, err
		}
		t.from, t.to = i, i+t.to
		if out = append(out, t); len(out) > maxTokens {
			return nil, fmt.Errorf("it has more than %d parts", maxTokens)
		}
		i = t.to
	}
}

// next is the token that rest begins with; its to is how long it is.
func next(rest string) (token, error) {
	switch c := rest[0]; {
	case c == '"':
		return quoted(rest)
	case c == '#':
		n := strings.IndexAny(rest, "!?")
		switch {
		case strings.HasPrefix(rest, "#N/A"):
			n = 3
		case n < 0:
			return token{}, fmt.Errorf("%q is not understood", first(rest))
		}
		return token{kind: fault, text: rest[:n+1], to: n + 1}, nil
	case c >= '0' && c <= '9' || c == '.':
		return number(rest)
	}
	if t, ok := reference(rest); ok {
		return t, nil
	}
	if n := wordLength(rest); n > 0 {
		return token{kind: word, text: rest[:n], to: n}, nil
	}
	for _, s := range []string{"<=", ">=", "<>", "<", ">", "=", "+", "-", "*", "/", "^", "&", "%", "(", ")", ",", ";"} {
		if strings.HasPrefix(rest, s) {
			return token{kind: symbol, text: s, to: len(s)}, nil
		}
	}
	return token{}, fmt.Errorf("%q is not understood", first(rest))
}

func first(rest string) string {
	_, n := utf8.DecodeRuneInString(rest)
	return rest[:n]
}

func quoted(rest string) (token, error) {
	var out strings.Builder
	for i := 1; i < len(rest); i++ {
		if rest[i] != '"' {
			out.WriteByte(rest[i])
			continue
		}
		if i+1 < len(rest) && rest[i+1] == '"' {
			out.WriteByte('"')
			i++
			continue
		}
		return token{kind: text, text: out.String(), to: i + 1}, nil
	}
	return token{}, fmt.Errorf("a text has no end")
}

func number(rest string) (token, error) {
	n := 0
	for n < len(rest) && (rest[n] >= '0' && rest[n] <= '9' || rest[n] == '.') {
		n++
	}
	if n < len(rest) && rest[n]|0x20 == 'e' {
		k := n + 1
		if k < len(rest) && (rest[k] == '+' || rest[k] == '-') {
			k++
		}
		if k < len(rest) && rest[k] >= '0' && rest[k] <= '9' {
			for k < len(rest) && rest[k] >= '0' && rest[k] <= '9' {
				k++
			}
			n = k
		}
	}
	// Rows alone, such as 3:5, are not read.
	x, err := strconv.ParseFloat(rest[:n], 64)
	if err != nil || n < len(rest) && rest[n] == ':' {
		return token{}, fmt.Errorf("%q is not understood", rest[:n])
	}
	return token{kind: numeral, text: rest[:n], number: x, to: n}, nil
}

func isLetter(c rune) bool {
	return c == '_' || c == '\\' || unicode.IsLetter(c)
}

// wordLength is how many bytes of rest make a name.
func wordLength(rest string) int {
	for i, c := range rest {
		if isLetter(c) || i > 0 && (c == '.' || c == '?' || unicode.IsDigit(c)) {
			continue
		}
		return i
	}
	return len(rest)
}

// reference reads a cell or a range, with the sheet it is on if it says so.
func reference(rest string) (token, bool) {
	t := token{kind: cells}
	n := 0
	if sheet, k, ok := sheetPrefix(rest); ok {
		t.at.Sheet, n = sheet, k
	}
	row, column, fixed, k, ok := cellAt(rest[n:])
	if !ok {
		return token{}, false
	}
	n += k
	t.at.Row, t.at.Column, t.at.Row2, t.at.Column2 = row, column, row, column
	t.at.fixed = [4]bool{fixed[0], fixed[1], fixed[0], fixed[1]}
	if n < len(rest) && rest[n] == ':' {
		row, column, fixed, k, ok := cellAt(rest[n+1:])
		if !ok {
			return token{}, false
		}
		n += 1 + k
		t.at.Row2, t.at.Column2 = row, column
		t.at.fixed[2], t.at.fixed[3] = fixed[0], fixed[1]
	}
	// tap1x and log10( are words.
	if n < len(rest) && (wordLength(rest[n:]) > 0 || rest[n] == '(' || rest[n] == '.' || rest[n] >= '0' && rest[n] <= '9') {
		return token{}, false
	}
	t.to = n
	return t, true
}

// sheetPrefix reads Plan! or 'Plan 2'!, and how many bytes it takes.
func sheetPrefix(rest string) (sheet string, n int, ok bool) {
	if rest[0] != '\'' {
		n = wordLength(rest)
		if n == 0 || n >= len(rest) || rest[n] != '!' {
			return "", 0, false
		}
		return rest[:n], n + 1, true
	}
	var out strings.Builder
	for i := 1; i < len(rest); i++ {
		switch {
		case rest[i] != '\'':
			out.WriteByte(rest[i])
		case i+1 < len(rest) && rest[i+1] == '\'':
			out.WriteByte('\'')
			i++
		case i+1 < len(rest) && rest[i+1] == '!':
			return out.String(), i + 2, true
		default:
			return "", 0, false
		}
	}
	return "", 0, false
}

// cellAt reads an address such as B7 or $B$7.
func cellAt(rest string) (row, column int, fixed [2]bool, n int, ok bool) {
	if n < len(rest) && rest[n] == '$' {
		fixed[1], n = true, n+1
	}
	letters := n
	for n < len(rest) && n-letters < 4 && rest[n]|0x20 >= 'a' && rest[n]|0x20 <= 'z' {
		column = column*26 + int(rest[n]|0x20-'a') + 1
		n++
	}
	if n == letters || column > 16_384 {
		return 0, 0, fixed, 0, false
	}
	if n < len(rest) && rest[n] == '$' {
		fixed[0], n = true, n+1
	}
	digits := n
	for n < len(rest) && n-digits < 8 && rest[n] >= '0' && rest[n] <= '9' {
		row = row*10 + int(rest[n]-'0')
		n++
	}
	ok = n > digits && row >= 1 && row <= 1_048_576
	return row, column, fixed, n, ok
}

// Address reads a cell's address, such as "B7"; false for any other text.
func Address(text string) (row, column int, ok bool) {
	row, column, _, n, ok := cellAt(text)
	return row, column, ok && n == len(text)
}

// ReadRange reads the text that a defined name stands for, such as
// 'Plan 2'!$B$7 or Tables!$C$4:$C$9; false when it is anything else.
func ReadRange(text string) (Range, bool) {
	t, ok := reference(text + " ")
	if !ok || t.to != len(text) {
		return Range{}, false
	}
	r := t.at
	if r.Row > r.Row2 || r.Column > r.Column2 {
		return Range{}, false
	}
	return r, true
}
