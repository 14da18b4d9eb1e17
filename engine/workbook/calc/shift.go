package calc

import "strings"

// Shift is a formula moved by so many rows and columns, as when cells share one:
// what is not fixed in its addresses moves along. It is false when the formula
// does not read or an address would leave the sheet.
func Shift(formula string, rows, columns int) (string, bool) {
	tokens, err := lex(formula)
	if err != nil {
		return "", false
	}
	var out strings.Builder
	at := 0
	for _, t := range tokens {
		if t.kind != cells {
			continue
		}
		moved, ok := t.at.shifted(rows, columns)
		if !ok {
			return "", false
		}
		out.WriteString(formula[at:t.from] + moved.String())
		at = t.to
	}
	return out.String() + formula[at:], true
}

func (r Range) shifted(rows, columns int) (Range, bool) {
	for i, x := range []*int{&r.Row, &r.Column, &r.Row2, &r.Column2} {
		if r.fixed[i] {
			continue
		}
		if i%2 == 0 {
			*x += rows
		} else {
			*x += columns
		}
	}
	ok := r.Row >= 1 && r.Row2 >= 1 && r.Column >= 1 && r.Column2 >= 1 &&
		r.Row <= 1_048_576 && r.Row2 <= 1_048_576 && r.Column <= 16_384 && r.Column2 <= 16_384
	return r, ok
}

// String is the range as formulas write it.
func (r Range) String() string {
	out := ""
	if r.Sheet != "" {
		out = "'" + strings.ReplaceAll(r.Sheet, "'", "''") + "'!"
	}
	out += corner(r.Row, r.Column, r.fixed[0], r.fixed[1])
	if !r.Single() {
		out += ":" + corner(r.Row2, r.Column2, r.fixed[2], r.fixed[3])
	}
	return out
}

func corner(row, column int, fixedRow, fixedColumn bool) string {
	letters := ""
	for ; column > 0; column = (column - 1) / 26 {
		letters = string(rune('A'+(column-1)%26)) + letters
	}
	digits := ""
	for ; row > 0; row /= 10 {
		digits = string(rune('0'+row%10)) + digits
	}
	if fixedRow {
		digits = "$" + digits
	}
	if fixedColumn {
		letters = "$" + letters
	}
	return letters + digits
}
