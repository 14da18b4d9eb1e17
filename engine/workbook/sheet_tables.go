package workbook

import (
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// layTables lays every table out, one below the other.
func (pb *planBuilder) layTables() {
	g := &grid{name: pb.suffix("Tables"), widths: []float64{34, 16}, freezeColumns: 1, landscape: true}
	pb.tables = g
	i := 0
	for _, c := range pb.p.Bound.Sheet.Chapters {
		i += len(c.Lines)
		for _, t := range c.Tables {
			pb.layTable(g, t, i)
			i += len(t.Rows) * len(t.Columns)
		}
	}
	for len(g.widths) < 60 {
		g.widths = append(g.widths, 12)
	}
}

// spread is where a table's column stands: one column for numbers, three when a
// row has a guess.
type spread struct {
	low, value, high int // 0 for none
}

// layTable lays one table out; first is the slot of its first cell.
func (pb *planBuilder) layTable(g *grid, t *sheet.Table, first int) {
	spreads, next := spreadOf(t)
	remark, note := next, next+1
	g.add(say(chapter, t.Label), say(faintInChapter, ours))
	for column := 3; column <= note; column++ {
		g.set(column, cell{style: style{look: chapter}})
	}
	if t.Note != "" {
		g.set(3, say(chapter, t.Note))
	}
	pb.tableHead(g, t, first, spreads, note, remark)
	top := len(g.rows) + 1
	for k, r := range t.Rows {
		pb.tableRow(g, t, r, first+k*len(t.Columns), spreads, note, remark)
	}
	bottom := max(top, len(g.rows))
	pb.b.name(pb.names.ids[t.ID], g, place{2, top}, place{2, bottom})
	for k, c := range t.Columns {
		pb.b.name(pb.names.columns[t.ID+"."+c.ID], g, place{spreads[k].value, top}, place{spreads[k].value, bottom})
	}
	g.add()
}

func spreadOf(t *sheet.Table) (spreads []spread, next int) {
	next = 3
	for k := range t.Columns {
		guessed := false
		for _, r := range t.Rows {
			guessed = guessed || r.Cells[k].Kind == sheet.Guess
		}
		s := spread{value: next}
		if guessed {
			s = spread{value: next, low: next + 1, high: next + 2}
			next += 2
		}
		spreads = append(spreads, s)
		next++
	}
	return spreads, next
}

// tableHead is the heading and the hidden row of marks.
func (pb *planBuilder) tableHead(g *grid, t *sheet.Table, first int, spreads []spread, note, remark int) {
	g.add(say(heading, ""), say(heading, "Called"))
	for k, c := range t.Columns {
		text := c.Label
		if unit, err := units.Parse(c.Unit, pb.p.Bound.Sheet.Money); err == nil && units.UnitLabel(unit) != "" {
			text += ", " + units.UnitLabel(unit)
		}
		s := spreads[k]
		g.set(s.value, say(heading, text))
		if s.low > 0 {
			g.set(s.low, say(heading, "low"))
			g.set(s.high, say(heading, "high"))
		}
		if c.Formula != "" || c.Note != "" {
			g.comments = append(g.comments, comment{g.last(s.value), columnNote(c)})
		}
	}
	g.set(note, say(heading, "Note"))
	g.set(remark, say(heading, "Your remark"))
	g.add(mark(TableArea, pb.number, t.ID, Label, ""), mark(TableArea, pb.number, t.ID, ID, ""))
	for k, c := range t.Columns {
		s := spreads[k]
		g.set(s.value, mark(TableArea, pb.number, t.ID, Value, c.ID))
		if s.low > 0 {
			g.set(s.low, mark(TableArea, pb.number, t.ID, Low, c.ID))
			g.set(s.high, mark(TableArea, pb.number, t.ID, High, c.ID))
		}
	}
	g.set(note, mark(TableArea, pb.number, t.ID, Note, ""))
	g.set(remark, mark(TableArea, pb.number, t.ID, Remark, ""))
	g.hide(len(g.rows))
}

func columnNote(c sheet.Column) string {
	if c.Formula == "" {
		return c.Note
	}
	return linesOfText(c.Note, "Worked out: "+c.Formula)
}

func (pb *planBuilder) tableRow(g *grid, t *sheet.Table, r sheet.Row, first int, spreads []spread, note, remark int) {
	g.add(say(label, r.Label), say(small, r.ID))
	if r.Caution != "" {
		g.set(1, say(care, r.Label))
	}
	if text := noteOf(r.Note, r.Source, r.Caution); text != "" {
		g.comments = append(g.comments, comment{g.last(1), text})
	}
	for k, line := range r.Cells {
		s := spreads[k]
		pb.put(g, first+k, Value, s.value)
		if s.low > 0 {
			pb.put(g, first+k, Low, s.low)
			pb.put(g, first+k, High, s.high)
		}
		pb.checks(g, first+k, s.low, s.value, s.high)
		if text := linesOfText(noteOf(line.Note, line.Source, line.Caution), pb.cellWorking(first+k, t.Columns[k].Formula)); text != "" {
			g.comments = append(g.comments, comment{g.last(s.value), text})
		}
	}
	g.set(note, say(flat, r.Note))
	g.set(remark, cell{style: style{look: free, format: "@"}})
}

// cellWorking says how a cell comes about, unless its column's heading does.
func (pb *planBuilder) cellWorking(i int, columnFormula string) string {
	line := pb.p.Bound.Slots[i].Line
	switch {
	case pb.why[i] != "" || line.Kind == sheet.Records || pb.p.Bound.Slots[i].Broken:
		return pb.workingText(i)
	case line.Kind == sheet.Formula && line.Formula != columnFormula:
		return "Worked out: " + line.Formula
	}
	return ""
}

// labelsOf is the range of labels beside the ids that a choice is among.
func (pb *planBuilder) labelsOf(i int) string {
	line := pb.p.Bound.Slots[i].Line
	name := pb.names.ids[line.AmongTable]
	if line.AmongTable == "" {
		name = pb.names.choices[i]
	}
	for _, n := range pb.b.names {
		if n.name == name {
			return address(n.sheet, place{n.from.column - 1, n.from.row}, place{n.to.column - 1, n.to.row})
		}
	}
	return name
}
