package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"thawbook/engine/diag"
)

// builder puts a sheet together, file by file from the furthest base on.
type builder struct {
	chapters []*chapterPart
	ids      map[string]owner // lines and tables, which share one name space
	lax      bool             // the base is missing: unknown names are not told
	list     diag.List
}

// owner is what an id names: a line or a table, and the chapter it stands in.
type owner struct {
	chapter *chapterPart
	line    *Line
	table   *tablePart
}

func (b *builder) tell(code diag.Code, about string, at diag.Place, hint, format string, args ...any) {
	if len(b.list) < maxTold {
		b.list = append(b.list, diag.Diagnostic{Code: code, Severity: diag.Error, About: about,
			Place: at, Message: fmt.Sprintf(format, args...), Hint: hint})
	}
}

// apply is what one file does to what stands so far: change, then drop, then
// add, so that a line may be dropped and another added in its name.
func (b *builder) apply(d *Doc) {
	b.forgetChanged()
	for _, c := range d.changes {
		b.change(c)
	}
	for _, drop := range d.drops {
		b.drop(drop)
	}
	if d.head.elevation != nil {
		b.addElevation(d.head.elevation.copy())
	}
	for _, part := range d.chapters {
		b.add(part.copy(), d.head.from != nil)
	}
}

// forgetChanged makes what an earlier scenario changed count as inherited.
func (b *builder) forgetChanged() {
	for _, c := range b.chapters {
		for _, l := range c.lines {
			l.Changed = false
		}
		for _, t := range c.tables {
			for _, r := range t.rows {
				for _, cell := range r.cells {
					cell.line.Changed = false
				}
			}
		}
	}
}

func (b *builder) addElevation(l *Line) {
	place := &chapterPart{title: "The place", place: l.Place, lines: []*Line{l}}
	b.chapters = append(b.chapters, place)
	b.claim(l.ID, l.Place, owner{chapter: place, line: l})
}

// claim gives an id its owner; false when it has one already.
func (b *builder) claim(id string, at diag.Place, o owner) bool {
	if id == "" {
		return true // told already
	}
	if has, taken := b.ids[id]; taken {
		b.tell(diag.DuplicateID, id, at, "give one of the two another id", "the id %s is taken by %s", quote(id), has.where())
		return false
	}
	b.ids[id] = o
	return true
}

func (o owner) where() string {
	what, place := "a line", diag.Place{}
	if o.table != nil {
		what, place = "a table", o.table.place
	} else if o.line != nil {
		place = o.line.Place
	}
	return what + " at " + place.String()
}

// add puts a chapter's lines and tables in: at the end of the chapter of that
// title when a scenario adds to one, else as a chapter of its own.
func (b *builder) add(part *chapterPart, scenario bool) {
	at := slices.IndexFunc(b.chapters, func(c *chapterPart) bool { return c.title == part.title })
	into := &chapterPart{title: part.title, note: part.note, place: part.place}
	if at >= 0 && (scenario || b.chapters[at].lines != nil && b.chapters[at].lines[0].ID == "elevation" && at == 0) {
		into = b.chapters[at]
	} else {
		b.chapters = append(b.chapters, into)
	}
	for _, l := range part.lines {
		l.Changed = scenario
		if b.claim(l.ID, l.Place, owner{chapter: into, line: l}) {
			into.lines = append(into.lines, l)
		}
	}
	for _, t := range part.tables {
		b.addTable(into, t, scenario)
	}
}

// addTable puts a table in, or its rows and columns into the table of that id
// which a scenario inherits.
func (b *builder) addTable(into *chapterPart, t *tablePart, scenario bool) {
	for _, r := range t.rows {
		for _, c := range r.cells {
			c.line.Changed = scenario
		}
	}
	has := b.ids[t.id].table
	if has == nil || !scenario {
		rows := t.rows
		t.rows = nil
		if b.claim(t.id, t.place, owner{chapter: into, table: t}) {
			into.tables = append(into.tables, t)
			b.addRows(t, rows)
		}
		return
	}
	for _, c := range t.columns {
		if has.column(c.ID) != nil {
			b.tell(diag.DuplicateID, t.id+"."+c.ID, c.Place, "change it under change: "+t.id+"."+c.ID, "the table %s has a column %s already", quote(t.id), quote(c.ID))
			continue
		}
		has.columns = append(has.columns, c)
	}
	b.addRows(has, t.rows)
}

func (b *builder) addRows(t *tablePart, rows []*rowPart) {
	taken := map[string]bool{}
	for _, r := range t.rows {
		taken[r.row.ID] = true
	}
	for _, r := range rows {
		if r.row.ID != "" && taken[r.row.ID] {
			b.tell(diag.DuplicateID, t.id+"."+r.row.ID, r.row.Place, "give one of the two another id", "the table %s has a row %s already", quote(t.id), quote(r.row.ID))
			continue
		}
		taken[r.row.ID] = true
		t.rows = append(t.rows, r)
	}
}

// drop takes a line, a table or a row out.
func (b *builder) drop(d drop) {
	table, row, isRow := strings.Cut(d.id, ".")
	o, known := b.ids[table]
	switch {
	case known && !isRow && o.line != nil:
		o.chapter.lines = slices.DeleteFunc(o.chapter.lines, func(l *Line) bool { return l == o.line })
		delete(b.ids, d.id)
	case known && !isRow:
		o.chapter.tables = slices.DeleteFunc(o.chapter.tables, func(t *tablePart) bool { return t == o.table })
		delete(b.ids, d.id)
	case known && o.table != nil && o.table.row(row) != nil:
		o.table.rows = slices.DeleteFunc(o.table.rows, func(r *rowPart) bool { return r.row.ID == row })
	case !b.lax:
		b.tell(diag.DropUnknown, d.id, d.place, nearest(d.id, b.droppable(isRow)), "there is nothing called %s to drop", quote(d.id))
	}
}

// droppable lists what a drop may name: rows, or lines and tables.
func (b *builder) droppable(rows bool) []string {
	if !rows {
		return slices.Collect(maps.Keys(b.ids))
	}
	var out []string
	for id, o := range b.ids {
		if o.table != nil {
			for _, r := range o.table.rows {
				out = append(out, id+"."+r.row.ID)
			}
		}
	}
	return out
}
