package sheet

import "thawbook/engine/diag"

// Kind is how a line gets its value. The zero value is a line that says nothing,
// which only a sheet with errors holds.
type Kind string

// The kinds; each is also the key a line gives its value under.
const (
	Is      Kind = "is"
	Guess   Kind = "guess"
	Records Kind = "records"
	Choose  Kind = "choose"
	Formula Kind = "formula"
)

// Sheet is one plan, resolved: what the file and the files it is taken from
// come to. It is not changed after [Resolve].
type Sheet struct {
	// File is the name of the file; From what it is taken from, or "".
	File, From string
	// Title is never empty: the file's name stands in for a missing one.
	Title, About string
	// Money is the ISO code of the sheet's currency.
	Money   string
	Seasons int
	Seed    uint64
	// Chapters in the order of the file.
	Chapters []Chapter
	byID     map[string]*Line
}

// Chapter is a titled stretch of lines and tables.
type Chapter struct {
	Title, Note string
	Lines       []*Line
	Tables      []*Table
}

// Line is one named quantity, or one cell of a table.
type Line struct {
	// ID is what formulas call the line; "table.row.column" for a cell.
	ID, Label string
	// Unit is the unit's text, "" only for a choice.
	Unit string
	// Note, Source and Caution are free text, "" when there is none.
	Note, Source, Caution string
	// Table, Row and Column are ids, set for a cell only.
	Table, Row, Column string

	Kind Kind
	// Is is the number of an Is line.
	Is float64
	// Low, Likely and High are a Guess; Shape is "" for the usual shape.
	Low, Likely, High float64
	Shape             string
	// Records are past values, at least two.
	Records []float64
	// Choose is the id of the name chosen among Among, which are the rows of
	// AmongTable when that is set.
	Choose     string
	Among      []Name
	AmongTable string
	// Formula is the working's text. A column's formula stands in each of its
	// cells that has none of its own.
	Formula string

	// Floor and Ceiling bound the line, in its unit; nil when there is none.
	Floor, Ceiling *float64
	// MovesWith are the guesses or records this one moves with.
	MovesWith []Moves
	// Headline is set for a line shown first.
	Headline *Headline
	// LayIn is set for a line of the shopping list.
	LayIn *LayIn
	// Changed says that this sheet's own change or add wrote the line.
	Changed bool

	// Place is where the line itself stands, Places where the value of each of
	// its keys does. A key that is not written has none.
	Place  diag.Place
	Places map[string]diag.Place
}

// At is the place of a key's value ("unit", "formula", "guess", …), or the line's
// own when the key is not written.
func (l *Line) At(key string) diag.Place {
	if p, ok := l.Places[key]; ok {
		return p
	}
	return l.Place
}

// Varies says whether the line differs from season to season of itself.
func (l *Line) Varies() bool { return l.Kind == Guess || l.Kind == Records }

// Name is one of the things a choice may be.
type Name struct{ ID, Label string }

// Moves is a wish that two lines' ranks go together: Rank is their Spearman
// correlation, -0.99 to 0.99.
type Moves struct {
	ID   string
	Rank float64
}

// Headline marks a line shown first.
type Headline struct {
	// Better is "more", "less" or "" when neither is.
	Better string
	// Goal is nil when there is none.
	Goal *Goal
}

// Goal is what a headline should reach, in the line's unit. At least one of the
// two is set.
type Goal struct{ AtLeast, AtMost *float64 }

// LayIn puts a line on the shopping list.
type LayIn struct {
	// Unit to list it in; "" is the line's own.
	Unit string
	// Round is the whole thing to round up to, in that unit: a pack of 12.
	// It is above 0; 1 when the sheet does not say.
	Round float64
	// OnHand is what is there already, in that unit; nil when not said.
	OnHand *float64
	// Price is the id of the line or cell that says what one costs, or a
	// number; "" when not said.
	Price string
}

// Table is rows of like things.
type Table struct {
	ID, Label, Note string
	Columns         []Column
	Rows            []Row
	Place           diag.Place
}

// Column is one quantity that every row of a table has.
type Column struct {
	ID, Label, Unit string
	// Formula is "" when each row gives its own value.
	Formula string
	Note    string
	Place   diag.Place
	Places  map[string]diag.Place
}

// Row is one of a table's things.
type Row struct {
	ID, Label, Note, Source, Caution string
	// Cells stand in the order of the columns. Only a sheet with errors has
	// cells of no kind.
	Cells []*Line
	Place diag.Place
}

// All is every line and cell in the order of the file: for each chapter its
// lines, then its tables row by row. The slice is the caller's, the lines are not.
func (s *Sheet) All() []*Line {
	var all []*Line
	for _, c := range s.Chapters {
		all = append(all, c.Lines...)
		for _, t := range c.Tables {
			for _, r := range t.Rows {
				all = append(all, r.Cells...)
			}
		}
	}
	return all
}

// Find is the line or cell of that id, or nil.
func (s *Sheet) Find(id string) *Line {
	if s.byID != nil {
		return s.byID[id]
	}
	for _, l := range s.All() {
		if l.ID == id {
			return l
		}
	}
	return nil
}

// Table is the table of that id, or nil.
func (s *Sheet) Table(id string) *Table {
	for _, c := range s.Chapters {
		for _, t := range c.Tables {
			if t.ID == id {
				return t
			}
		}
	}
	return nil
}
