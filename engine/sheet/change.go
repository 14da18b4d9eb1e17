package sheet

import (
	"maps"
	"slices"
	"strings"

	"thawbook/engine/diag"
)

// change writes a scenario's change over the line, cell, column, row or table it
// names.
func (b *builder) change(c *change) {
	parts := strings.Split(c.id, ".")
	o := b.ids[parts[0]]
	switch {
	case len(parts) == 1 && o.line != nil:
		b.overlay(o.line, c)
		return
	case len(parts) == 1 && o.table != nil:
		b.changeTable(o.table, c)
		return
	case len(parts) == 2 && o.table != nil:
		if b.changeColumn(o.table, parts[1], c) || b.changeRow(o.table, parts[1], c) {
			return
		}
	case len(parts) == 3 && o.table != nil:
		if b.changeCell(o.table, parts[1], parts[2], c) {
			return
		}
	}
	if !b.lax {
		b.tell(diag.ChangeUnknown, c.id, c.place, nearest(c.id, b.changeable(len(parts))), "there is no line %s to change", quote(c.id))
	}
}

// changeable lists what a change of so many parts may name.
func (b *builder) changeable(parts int) []string {
	var out []string
	for id, o := range b.ids {
		if parts == 1 || o.table == nil {
			out = append(out, id)
			continue
		}
		for _, c := range o.table.columns {
			if parts == 2 {
				out = append(out, id+"."+c.ID)
				continue
			}
			for _, r := range o.table.rows {
				out = append(out, id+"."+r.row.ID+"."+c.ID)
			}
		}
	}
	return out
}

// overlay writes the keys a change gives over a line. The unit, the note and
// all else stay as they are when the change does not give them.
func (b *builder) overlay(l *Line, c *change) {
	given := c.line
	if given.Kind == Choose && given.Places["choose"] == given.Place && l.Kind != Choose {
		b.tell(diag.WrongKind, c.id, given.Place, "write a number, {guess: {low: …}} or {formula: …}", "%s is not a choice, so it cannot be %s", quote(c.id), quote(given.Choose))
		return
	}
	if given.Kind == Is && l.Kind == Choose && given.Unit == "" {
		b.tell(diag.WrongKind, c.id, given.At("is"), "write one of its names", "%s is a choice, so it cannot be a number", quote(c.id))
		return
	}
	if given.Kind != "" {
		l.takeKind(given)
	}
	for key, at := range given.Places {
		l.take(key, given)
		l.Places[key] = at
	}
	l.Changed = true
}

// takeKind replaces what the line comes to. A shape, bounds and company stay, for
// when the line is a guess again.
func (l *Line) takeKind(from *Line) {
	for key := range l.Places {
		if slices.Contains(kindKeys, key) || strings.HasPrefix(key, "guess.") {
			delete(l.Places, key)
		}
	}
	if from.Kind != Choose {
		l.Among, l.AmongTable = nil, ""
		delete(l.Places, "among")
	} else if l.Kind != Choose {
		l.Unit = ""
		delete(l.Places, "unit")
	}
	l.Kind, l.Is, l.Records, l.Choose, l.Formula = from.Kind, from.Is, from.Records, from.Choose, from.Formula
	l.Low, l.Likely, l.High = from.Low, from.Likely, from.High
}

// take copies the value of one key that does not say what the line comes to.
func (l *Line) take(key string, from *Line) {
	switch key {
	case "label":
		l.Label = from.Label
	case "unit":
		l.Unit = from.Unit
	case "note":
		l.Note = from.Note
	case "source":
		l.Source = from.Source
	case "caution":
		l.Caution = from.Caution
	case "floor":
		l.Floor = from.Floor
	case "ceiling":
		l.Ceiling = from.Ceiling
	case "shape":
		l.Shape = from.Shape
	case "among":
		l.Among, l.AmongTable = from.Among, from.AmongTable
	case "moves_with":
		l.MovesWith = from.MovesWith
	case "headline":
		l.Headline = from.Headline
	case "lay_in":
		l.LayIn = from.LayIn
	}
}

// changeCell changes one cell, which may have been its column's formula so far.
func (b *builder) changeCell(t *tablePart, row, column string, c *change) bool {
	r := t.row(row)
	if r == nil || t.column(column) == nil {
		return false
	}
	for _, key := range slices.Sorted(maps.Keys(c.line.Places)) {
		if !slices.Contains(cellKeys, key) && !strings.HasPrefix(key, "guess.") && key != "choose" {
			b.tell(diag.UnknownKey, c.id, c.line.Places[key], "change the column, or the row: "+t.id+"."+column, "a cell has no key %q of its own", key)
			return true
		}
	}
	cell := r.cell(column)
	if cell == nil {
		col := t.column(column)
		l := &Line{Kind: Formula, Formula: col.Formula, Place: c.place, Places: map[string]diag.Place{}}
		if at, written := col.Places["formula"]; written {
			l.Places["formula"] = at
		}
		cell = &cellPart{column, c.place, l}
		r.cells = append(r.cells, cell)
	}
	b.overlay(cell.line, c)
	return true
}

// changeColumn changes a whole column. A new formula is for every row, so values
// rows had of their own give way to it.
func (b *builder) changeColumn(t *tablePart, id string, c *change) bool {
	col := t.column(id)
	if col == nil {
		return false
	}
	if c.line.Kind != "" && c.line.Kind != Formula {
		b.tell(diag.WrongKind, c.id, c.line.At(string(c.line.Kind)), "change one cell: "+t.id+".row."+id, "a whole column can only get a formula")
		return true
	}
	if c.line.Kind == Formula {
		for _, r := range t.rows {
			r.cells = slices.DeleteFunc(r.cells, func(cell *cellPart) bool { return cell.column == id })
		}
	}
	b.changeTexts(c, "a column", map[string]*string{"label": &col.Label, "note": &col.Note, "unit": &col.Unit, "formula": &col.Formula})
	maps.Copy(col.Places, c.line.Places)
	return true
}

func (b *builder) changeRow(t *tablePart, id string, c *change) bool {
	r := t.row(id)
	if r == nil {
		return false
	}
	if c.line.Kind != "" {
		b.tell(diag.WrongKind, c.id, c.line.At(string(c.line.Kind)), "name its column too: "+c.id+".price", "a whole row cannot be given one value")
		return true
	}
	b.changeTexts(c, "a row", map[string]*string{"label": &r.row.Label, "note": &r.row.Note, "source": &r.row.Source, "caution": &r.row.Caution})
	return true
}

func (b *builder) changeTable(t *tablePart, c *change) {
	if c.line.Kind != "" {
		b.tell(diag.WrongKind, c.id, c.line.At(string(c.line.Kind)), "name a row and a column too", "a whole table cannot be given one value")
		return
	}
	b.changeTexts(c, "a table", map[string]*string{"label": &t.label, "note": &t.note})
}

// changeTexts puts the texts a change gives where they belong and tells the keys
// that have no place there.
func (b *builder) changeTexts(c *change, what string, into map[string]*string) {
	given := map[string]string{"label": c.line.Label, "note": c.line.Note, "unit": c.line.Unit,
		"formula": c.line.Formula, "source": c.line.Source, "caution": c.line.Caution}
	for key, at := range c.line.Places {
		if to := into[key]; to != nil {
			*to = given[key]
			continue
		}
		b.tell(diag.UnknownKey, c.id, at, nearest(key, slices.Collect(maps.Keys(into))), "%s has no key %q", what, key)
	}
}

func nameIDs(names []Name) []string {
	ids := make([]string, len(names))
	for i, n := range names {
		ids[i] = n.ID
	}
	return ids
}
