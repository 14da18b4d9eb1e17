package workbook

import (
	"strconv"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// spareRecords are empty cells below a line's records, for springs to come.
const spareRecords = 5

// layRecords lays out the past values of lines that have them, one column each,
// and the names of choices that are not among a table's rows.
func (pb *planBuilder) layRecords() {
	g := &grid{name: pb.suffix("Records"), freezeRows: 2, repeat: 2}
	pb.records = g
	g.add(say(title, "Records and names"))
	g.add()
	g.add()
	g.hide(3)
	column := 1
	for i, slot := range pb.p.Bound.Slots {
		switch {
		case slot.Broken:
		case slot.Line.Kind == sheet.Records:
			pb.recordsColumn(g, i, column)
			column += 2
		case slot.Kind == formula.Choice && slot.Line.AmongTable == "":
			pb.namesColumns(g, i, column)
			column += 3
		}
	}
}

// put puts a cell in any row, rows added as they are needed.
func (g *grid) put(p place, c cell) {
	for len(g.rows) < p.row {
		g.add()
	}
	r := &g.rows[p.row-1]
	for len(r.cells) < p.column {
		r.cells = append(r.cells, cell{})
	}
	r.cells[p.column-1] = c
}

func (g *grid) width(column int, wide float64) {
	for len(g.widths) < column {
		g.widths = append(g.widths, 4)
	}
	g.widths[column-1] = wide
}

func (pb *planBuilder) recordsColumn(g *grid, i, column int) {
	slot := pb.p.Bound.Slots[i]
	line := slot.Line
	g.width(column, 24)
	g.put(place{column, 2}, say(heading, line.Label+", "+line.Unit))
	g.put(place{column, 3}, mark(RecordsArea, pb.number, line.ID, Value, ""))
	in := style{look: input, format: format(slot.Unit, true, line.Records...)}
	var all []string
	for k := range len(line.Records) + spareRecords {
		c := cell{style: in}
		at := place{column, 4 + k}
		if k < len(line.Records) {
			c.value = line.Records[k]
			all = append(all, strconv.FormatFloat(line.Records[k], 'g', -1, 64))
		}
		g.put(at, c)
		g.checks = append(g.checks, check{place: at, low: line.Floor, high: line.Ceiling, mayBeBlank: true})
	}
	from, to := place{column, 4}, place{column, 3 + len(line.Records) + spareRecords}
	pb.b.name(pb.names.past[i], g, from, to)
	pb.b.index.Entries = append(pb.b.index.Entries, Entry{Plan: pb.number, ID: line.ID, Part: Past, Kind: line.Kind, Unit: line.Unit,
		Name: pb.names.past[i], Sheet: g.name, Cell: from.String() + ":" + to.String(), Sent: strings.Join(all, " ")})
}

func (pb *planBuilder) namesColumns(g *grid, i, column int) {
	line := pb.p.Bound.Slots[i].Line
	g.width(column, 30)
	g.width(column+1, 16)
	g.put(place{column, 2}, say(heading, line.Label))
	g.put(place{column + 1, 2}, say(heading, "Called"))
	g.put(place{column, 3}, mark(NamesArea, pb.number, line.ID, Label, ""))
	g.put(place{column + 1, 3}, mark(NamesArea, pb.number, line.ID, ID, ""))
	for k, n := range line.Among {
		g.put(place{column, 4 + k}, say(label, n.Label))
		g.put(place{column + 1, 4 + k}, say(small, n.ID))
	}
	pb.b.name(pb.names.choices[i], g, place{column + 1, 4}, place{column + 1, 3 + max(1, len(line.Among))})
}

// laySteps lays out the parts of workings that stand in cells of their own.
func (pb *planBuilder) laySteps() {
	g := &grid{name: pb.suffix("Steps"), widths: []float64{34, 16, 60}, freezeRows: 2, repeat: 2}
	pb.stepsGrid = g
	g.add(say(title, "Steps"))
	g.add(say(heading, "Called"), say(heading, "Comes to"), say(heading, "What it is"))
	for _, s := range pb.steps {
		v := pb.values[s.Name]
		c := cell{value: any(v.number), formula: s.Formula, style: style{look: worked, format: "General"}}
		if v.bad {
			c.value = failed{}
		}
		g.add(say(small, s.Name), c, say(wrapped, s.About))
		at := g.last(2)
		pb.b.name(s.Name, g, at, at)
	}
}
