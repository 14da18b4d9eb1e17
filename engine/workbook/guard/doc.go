// Package guard opens a workbook (xlsx, ECMA-376) that came from outside and
// gives its cells as plain data. It trusts nothing in the file: how large it is,
// how many parts it has and what they unpack to are bounded before anything is
// made of them, elements are read in turn and never by recursion, entities are
// refused, programs in it are passed over and links out of it not followed.
//
// It reads by streams of its own instead of through the library that writes our
// workbooks: that one keeps whole sheets in memory, as rows as long as the
// furthest cell, and builds trees by recursion.
package guard

import "thawbook/engine/diag"

// Kind is what stands in a cell.
type Kind uint8

// The kinds.
const (
	Blank  Kind = iota // nothing, or only looks
	Number             // Number holds it
	Text               // Text holds it
	Truth              // Number is 1 or 0
	Fault              // Text holds the error, such as #REF!
)

// Shown is how a number is shown, as far as it changes what it means.
type Shown uint8

// The ways.
const (
	Bare    Shown = iota
	Percent       // 0.05 is shown as 5 %
	Date          // the number counts days
	Money         // with a sign of money
)

// Cell is one cell that holds something.
type Cell struct {
	// Row and Column count from 1.
	Row, Column int
	Kind        Kind
	Number      float64
	Text        string
	// Formula is its text without a leading sign, "" when there is none. Number
	// or Text then hold what the program that saved the file made of it, and
	// Kind is Blank when it left nothing.
	Formula string
	Shown   Shown
}

// Sheet is one sheet's cells, row by row and from left to right.
type Sheet struct {
	Name string
	// Hidden says that no tab shows it.
	Hidden bool
	Cells  []Cell
	// Remarks are the comments at its cells.
	Remarks []Remark
	at      map[[2]int]int
}

// Remark is a comment at a cell.
type Remark struct {
	Row, Column  int
	Author, Text string
}

// At is the cell at a row and column, both from 1; a Blank one when it holds
// nothing.
func (s *Sheet) At(row, column int) Cell {
	if i, ok := s.at[[2]int{row, column}]; ok {
		return s.Cells[i]
	}
	return Cell{Row: row, Column: column}
}

// Name is a defined name and the text of what it stands for.
type Name struct{ Name, Text string }

// Book is what a workbook holds.
type Book struct {
	Sheets []*Sheet
	// Names are the defined names that hold in the whole workbook.
	Names []Name
	// From1904 says that its dates count from 1904.
	From1904 bool
}

// Sheet is the sheet of that name, whatever the case of its letters, or nil.
func (b *Book) Sheet(name string) *Sheet {
	for _, s := range b.Sheets {
		if equalFold(s.Name, name) {
			return s
		}
	}
	return nil
}

// Open reads a workbook's bytes. The Book is nil when the list has an error; else
// the list tells, as warnings, what was passed over.
func Open(data []byte) (*Book, diag.List) {
	p, wrong := openParcel(data)
	if wrong != nil {
		return nil, diag.List{*wrong}
	}
	r := &reader{parcel: p, room: MaxCells, letters: maxLetters}
	if wrong := r.book(); wrong != nil {
		return nil, diag.List{*wrong}
	}
	r.told.Sort()
	return &r.out, r.told
}
