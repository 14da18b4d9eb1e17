package workbook

import (
	"fmt"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// The columns of a plan.
const (
	planLabel = 1 + iota
	planValue
	planUnit
	planLow
	planHigh
	planNote
	planRemark
	planID
	planWorking
)

// ours stands in the id column of rows that are no line.
const ours = "thawbook"

// ownRows are left for lines of the partner's own.
const ownRows = 8

func say(l look, text string) cell { return cell{value: text, style: style{look: l}} }

func mark(area Area, plan int, of string, part Part, column string) cell {
	return say(marked, Mark{area, plan, of, part, column}.String())
}

// layPlan lays the plan itself out.
func (pb *planBuilder) layPlan() {
	g := &grid{name: pb.suffix("Plan"), widths: []float64{36, 13, 11, 11, 11, 40, 26, 20, 44}, freezeRows: 3, freezeColumns: 1, repeat: 3, landscape: true}
	pb.plan = g
	g.add(say(title, pb.p.Bound.Sheet.Title))
	g.add(say(flat, "Change what is coloured. The rest follows, but for the ranges: those stand as they were reckoned."))
	g.add(say(heading, "Line"), say(heading, "What it is, or likely"), say(heading, "Unit"), say(heading, "Low"), say(heading, "High"),
		say(heading, "Note"), say(heading, "Your remark"), say(heading, "Called"), say(heading, "How it is worked out"))
	marks := make([]cell, 0, planWorking)
	for _, part := range []Part{Label, Value, UnitOf, Low, High, Note, Remark, ID, Working} {
		marks = append(marks, mark(PlanArea, pb.number, "", part, ""))
	}
	g.hide(g.add(marks...))
	i := 0
	for _, c := range pb.p.Bound.Sheet.Chapters {
		pb.chapterRow(g, c.Title, c.Note)
		for range c.Lines {
			pb.lineRow(g, i)
			i++
		}
		for _, t := range c.Tables {
			g.add(say(flat, t.Label+": on the sheet "+pb.suffix("Tables")))
			g.set(planID, say(faint, ours))
			i += len(t.Rows) * len(t.Columns)
		}
	}
	pb.layOwn(g)
}

func (g *grid) hide(row int) { g.rows[row-1].hidden = true }

func (pb *planBuilder) chapterRow(g *grid, text, note string) {
	g.add(say(chapter, text))
	for column := planValue; column <= planWorking; column++ {
		g.set(column, cell{style: style{look: chapter}})
	}
	if note != "" {
		g.set(planNote, say(chapter, note))
	}
	g.set(planID, say(faintInChapter, ours))
}

func (pb *planBuilder) lineRow(g *grid, i int) {
	slot := pb.p.Bound.Slots[i]
	line := slot.Line
	g.add(say(label, line.Label))
	pb.put(g, i, Value, planValue)
	pb.put(g, i, Low, planLow)
	pb.put(g, i, High, planHigh)
	pb.checks(g, i, planLow, planValue, planHigh)
	if slot.Kind == formula.Choice {
		g.set(planLow, pb.chosenLabel(i))
	} else {
		g.set(planUnit, say(small, units.UnitLabel(slot.Unit)))
	}
	g.set(planNote, say(wrapped, line.Note))
	g.set(planRemark, cell{style: style{look: free, format: "@"}})
	g.set(planID, say(small, line.ID))
	g.set(planWorking, say(small, pb.workingText(i)))
	if text := noteOf(line.Note, line.Source, line.Caution); text != "" {
		g.comments = append(g.comments, comment{g.last(planLabel), text})
	}
	if line.Caution != "" {
		g.set(planLabel, say(care, line.Label))
	}
}

// workingText says how a line comes about, in our words, as text.
func (pb *planBuilder) workingText(i int) string {
	slot := pb.p.Bound.Slots[i]
	switch {
	case slot.Broken:
		return "Not reckoned: the sheet says what is wrong with it."
	case slot.Line.Kind == sheet.Records:
		return fmt.Sprintf("The middle of %d records, on the sheet %s", len(slot.Line.Records), pb.suffix("Records"))
	case slot.Line.Kind == sheet.Formula && pb.formulas[i] == "":
		return slot.Line.Formula + "\nStands still here: " + pb.why[i] + "."
	}
	return slot.Line.Formula
}

// chosenLabel shows what the name chosen stands for, and follows it.
func (pb *planBuilder) chosenLabel(i int) cell {
	slot := pb.p.Bound.Slots[i]
	shown := ""
	for _, n := range slot.Line.Among {
		if n.ID == slot.Line.Choose {
			shown = n.Label
		}
	}
	ids, labels := pb.names.ids[slot.Line.AmongTable], pb.labelsOf(i)
	if slot.Line.AmongTable == "" {
		ids = pb.names.choices[i]
	}
	return cell{value: plainText(shown), formula: "INDEX(" + labels + ",MATCH(" + pb.names.value[i] + "," + ids + ",0))", style: style{look: small}}
}

// layOwn leaves rows for lines of the partner's own.
func (pb *planBuilder) layOwn(g *grid) {
	pb.chapterRow(g, "Lines of your own", "Add what we forgot, and send it back. It is not reckoned here.")
	parts := map[int]Part{planLabel: Label, planValue: Value, planUnit: UnitOf, planLow: Low, planHigh: High, planNote: Note}
	g.add()
	for column := planLabel; column <= planNote; column++ {
		g.set(column, mark(OwnArea, pb.number, "", parts[column], ""))
	}
	g.hide(len(g.rows))
	for range ownRows {
		g.add()
		for column := planLabel; column <= planNote; column++ {
			l := style{look: free, format: "@"}
			if p := parts[column]; p == Value || p == Low || p == High {
				l = style{look: input, format: "General"}
			}
			g.set(column, cell{style: l})
		}
	}
}
