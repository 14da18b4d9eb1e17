package workbook

import (
	"math"
	"strings"
	"unicode/utf8"
)

// look is what a cell is for, which decides how it looks and whether it is
// locked.
type look uint8

const (
	plain look = iota
	title
	heading
	chapter
	label
	wrapped // running text in a column
	prose   // running text of its own
	flat    // text that runs on over what is beside it
	input   // a number to be changed
	choice  // a name to be chosen
	free    // words of the partner's own
	worked  // follows the inputs
	standing
	held // a formula's number that does not follow
	small
	marked // the hidden row
	faint  // what only we read, in a chapter's row and elsewhere
	faintInChapter
	care // a caution or a warning
)

// style is one way for a cell to look. Styles are compared with ==.
type style struct {
	look   look
	format string // number format; "" is the general one
}

// failed stands for an error where a working comes to no number.
type failed struct{}

// cell is one cell of a grid. value is nil, a string, a float64 or failed.
type cell struct {
	value   any
	formula string
	style   style
}

// grid is one sheet before it is written.
type grid struct {
	name   string
	rows   []row
	widths []float64
	// freeze is how many rows and columns stay when the rest is moved.
	freezeRows, freezeColumns int
	// repeat is the heading row repeated on every printed page, 0 for none.
	repeat    int
	landscape bool
	hidden    bool
	open      bool // not protected
	comments  []comment
	checks    []check
	charts    []picture
}

type row struct {
	cells  []cell
	hidden bool
	height float64 // 0: as it comes
	merge  int     // the first so many cells are one
}

// comment is a note at a cell.
type comment struct {
	place place
	text  string
}

// place is a cell of a grid, both from 1.
type place struct{ column, row int }

// check is what a cell takes.
type check struct {
	place place
	// list is the name of the range of names a choice takes; "" for a number.
	list       string
	low, high  *float64
	prompt     string
	ofGuess    bool // low, likely and high must rise
	lowAt      int  // columns of the guess's cells
	valueAt    int
	highAt     int
	mayBeBlank bool
}

// add puts a row at the end and gives its number.
func (g *grid) add(cells ...cell) int {
	g.rows = append(g.rows, row{cells: cells})
	return len(g.rows)
}

// text is a row of one text over the first so many columns.
func (g *grid) text(l look, text string, columns int) int {
	n := g.add(cell{value: text, style: style{look: l}})
	g.rows[n-1].merge = columns
	for range columns - 1 {
		g.rows[n-1].cells = append(g.rows[n-1].cells, cell{style: style{look: l}})
	}
	return n
}

// space adds empty rows to stand a picture on, of a height that is known.
func (g *grid) space(high uint) {
	for range high/18 + 3 {
		g.add()
		g.rows[len(g.rows)-1].height = 15
	}
}

// high is how high a row must be for its texts; 0 when they need one line. It is
// given in the file, because not every program works it out.
func (g *grid) high(r row) float64 {
	switch {
	case r.height > 0 || r.hidden:
		return r.height
	case len(r.cells) > 0 && r.cells[0].style.look == title:
		return 26
	}
	lines := 1
	for i, c := range r.cells {
		text, ok := c.value.(string)
		if !ok || !c.style.look.wraps() {
			continue
		}
		wide := g.wide(i)
		for k := 1; k < r.merge && i == 0; k++ {
			wide += g.wide(k)
		}
		if c.style.look == small {
			wide *= 1.2
		}
		lines = max(lines, linesOf(text, wide*1.12))
	}
	if lines == 1 {
		return 0
	}
	return 14.5*float64(lines) + 1
}

// wide is a column's width in letters; i counts from 0.
func (g *grid) wide(i int) float64 {
	if i < len(g.widths) {
		return g.widths[i]
	}
	return 9
}

// wraps says whether text of that look is broken into lines.
func (l look) wraps() bool {
	switch l {
	case title, chapter, flat, marked, faint, faintInChapter, input, worked, standing, held, choice:
		return false
	}
	return true
}

// linesOf guesses how many lines a text takes in a column so many letters wide.
func linesOf(text string, wide float64) int {
	lines := 0
	for _, part := range strings.Split(text, "\n") {
		lines += max(1, int(math.Ceil(float64(utf8.RuneCountInString(part))/wide)))
	}
	return min(lines, 24)
}

// set puts a cell in a column of the row added last.
func (g *grid) set(column int, c cell) {
	r := &g.rows[len(g.rows)-1]
	for len(r.cells) < column {
		r.cells = append(r.cells, cell{})
	}
	r.cells[column-1] = c
}

// last is the place of a column in the row added last.
func (g *grid) last(column int) place { return place{column, len(g.rows)} }

// most is how many characters a cell holds by the standard.
const most = 32767

// plainText makes a text safe for a cell: no signs that XML cannot hold, no
// longer than a cell, counted as the standard counts, in UTF-16.
func plainText(text string) string {
	room := most
	return strings.Map(func(r rune) rune {
		units := 1
		if r > 0xFFFF {
			units = 2
		}
		switch {
		case r < 0x20 && r != '\n' && r != '\t', r == 0x7F, r == utf8.RuneError, r == 0xFFFE, r == 0xFFFF, r >= 0xE000 && r <= 0xF8FF:
			return -1
		case room < units:
			room = 0
			return -1
		}
		room -= units
		return r
	}, text)
}
