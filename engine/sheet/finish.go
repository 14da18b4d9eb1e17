package sheet

import (
	"path"
	"strings"
	"unicode"
	"unicode/utf8"

	"thawbook/engine/diag"
)

// finish makes the sheet of the parts and checks the sense of the whole. chain
// ends with the file the sheet is for.
func (b *builder) finish(chain []*Doc) *Sheet {
	last := chain[len(chain)-1]
	s := &Sheet{File: last.name, From: last.From(), Title: titleFrom(last.name), Money: "USD",
		Seasons: DefaultSeasons, Seed: DefaultSeed, byID: map[string]*Line{}}
	for _, d := range chain {
		s.takeHead(d.head)
	}
	room := MaxLines
	for _, part := range b.chapters {
		c := Chapter{Title: part.title, Note: part.note, Lines: part.lines}
		room -= len(part.lines)
		for _, t := range part.tables {
			room -= len(t.rows) * len(t.columns)
			// A small file can ask for millions of cells: rows times columns.
			if room >= 0 {
				c.Tables = append(c.Tables, b.fill(t))
			}
		}
		s.Chapters = append(s.Chapters, c)
	}
	if room < 0 {
		b.tell(diag.TooMany, "", diag.Place{File: s.File, Line: 1, Column: 1}, "split the plan into several sheets", "the sheet has more than %d lines and cells", MaxLines)
	}
	for _, l := range s.All() {
		if _, twice := s.byID[l.ID]; !twice {
			s.byID[l.ID] = l
		}
	}
	b.check(s)
	return s
}

// titleFrom is the title of a sheet that has none: its file's name.
func titleFrom(file string) string {
	base := path.Base(file)
	return strings.TrimSuffix(base, path.Ext(base))
}

func (s *Sheet) takeHead(h head) {
	if h.title != nil {
		s.Title = *h.title
	}
	if h.about != nil {
		s.About = *h.about
	}
	if h.money != nil {
		s.Money = *h.money
	}
	if h.seasons != nil {
		s.Seasons = *h.seasons
	}
	if h.seed != nil {
		s.Seed = *h.seed
	}
}

// fill gives every row of a table a cell for every column.
func (b *builder) fill(t *tablePart) *Table {
	out := &Table{ID: t.id, Label: t.label, Note: t.note, Columns: t.columns, Place: t.place}
	if out.Label == "" {
		out.Label = labelFrom(t.id)
	}
	for _, part := range t.rows {
		row := part.row
		for i := range t.columns {
			row.Cells = append(row.Cells, b.fillCell(t, part, &t.columns[i]))
		}
		for _, cell := range part.cells {
			if t.column(cell.column) == nil {
				b.tell(diag.UnknownColumn, t.id+"."+row.ID, cell.key, nearest(cell.column, columnIDs(t)), "the table %s has no column %s", quote(t.id), quote(cell.column))
			}
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// fillCell is a row's own value for a column, or the column's formula.
func (b *builder) fillCell(t *tablePart, r *rowPart, c *Column) *Line {
	l := &Line{Kind: Formula, Formula: c.Formula, Place: c.Place, Places: map[string]diag.Place{}}
	if at, written := c.Places["formula"]; written {
		l.Places["formula"] = at
	}
	if own := r.cell(c.ID); own != nil {
		l = own.line
	} else if c.Formula == "" {
		l = &Line{Place: r.row.Place, Places: map[string]diag.Place{}}
		b.tell(diag.MissingCell, t.id+"."+r.row.ID+"."+c.ID, r.row.Place, "give it a number or a guess: "+c.ID+": 0", "the row %s has no value for %s", quote(r.row.ID), quote(c.ID))
	}
	l.ID = t.id + "." + r.row.ID + "." + c.ID
	l.Table, l.Row, l.Column = t.id, r.row.ID, c.ID
	l.Label = r.row.Label + ", " + lowerFirst(c.Label)
	l.Unit = c.Unit
	if at, written := c.Places["unit"]; written {
		l.Places["unit"] = at
	}
	return l
}

// lowerFirst makes a label fit the middle of a sentence; "BTU in one" stays.
func lowerFirst(label string) string {
	first, size := utf8.DecodeRuneInString(label)
	second, _ := utf8.DecodeRuneInString(label[size:])
	if unicode.IsUpper(second) {
		return label
	}
	return string(unicode.ToLower(first)) + label[size:]
}

func columnIDs(t *tablePart) []string {
	ids := make([]string, len(t.columns))
	for i, c := range t.columns {
		ids[i] = c.ID
	}
	return ids
}
