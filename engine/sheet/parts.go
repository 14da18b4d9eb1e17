package sheet

import (
	"maps"

	"thawbook/engine/diag"
)

// A sheet is put together from parts: what one file says of a chapter, a table
// or a row, before a scenario adds to it and columns fill their cells.

type chapterPart struct {
	title, note string
	place       diag.Place
	lines       []*Line
	tables      []*tablePart
}

type tablePart struct {
	id, label, note string
	place           diag.Place
	columns         []Column
	rows            []*rowPart
}

type rowPart struct {
	row   Row
	cells []*cellPart // as written, in the order of the file
}

type cellPart struct {
	column string
	key    diag.Place // of the column's id in the row
	line   *Line
}

func (c *chapterPart) copy() *chapterPart {
	out := *c
	out.lines = make([]*Line, len(c.lines))
	for i, l := range c.lines {
		out.lines[i] = l.copy()
	}
	out.tables = make([]*tablePart, len(c.tables))
	for i, t := range c.tables {
		out.tables[i] = t.copy()
	}
	return &out
}

func (t *tablePart) copy() *tablePart {
	out := *t
	out.columns = make([]Column, len(t.columns))
	for i, c := range t.columns {
		c.Places = maps.Clone(c.Places)
		out.columns[i] = c
	}
	out.rows = make([]*rowPart, len(t.rows))
	for i, r := range t.rows {
		out.rows[i] = r.copy()
	}
	return &out
}

func (r *rowPart) copy() *rowPart {
	out := &rowPart{row: r.row, cells: make([]*cellPart, len(r.cells))}
	for i, c := range r.cells {
		out.cells[i] = &cellPart{column: c.column, key: c.key, line: c.line.copy()}
	}
	return out
}

// copy shares the slices, which no one changes in place.
func (l *Line) copy() *Line {
	out := *l
	out.Places = maps.Clone(l.Places)
	return &out
}

func (t *tablePart) column(id string) *Column {
	for i := range t.columns {
		if t.columns[i].ID == id {
			return &t.columns[i]
		}
	}
	return nil
}

func (t *tablePart) row(id string) *rowPart {
	for _, r := range t.rows {
		if r.row.ID == id {
			return r
		}
	}
	return nil
}

func (r *rowPart) cell(column string) *cellPart {
	for _, c := range r.cells {
		if c.column == column {
			return c
		}
	}
	return nil
}
