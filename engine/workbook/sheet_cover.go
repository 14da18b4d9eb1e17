package workbook

import (
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

const coverColumns = 5

// layCover lays out what a partner sees first.
func (b *builder) layCover() *grid {
	pb := b.plans[0]
	s := pb.p.Bound.Sheet
	g := &grid{name: "Start here", widths: []float64{34, 15, 15, 40, 30}}
	g.text(title, s.Title, coverColumns)
	if s.About != "" {
		g.text(prose, s.About, coverColumns)
	}
	g.text(prose, "This is a plan for a maple season, made with Thawbook. It works on its own: there is nothing to install and nothing in it reaches outside.", coverColumns)
	if pb.p.Paragraph != "" {
		g.text(chapter, "The season as reckoned", coverColumns)
		g.text(prose, pb.p.Paragraph, coverColumns)
		g.text(small, pb.from()+" It stands as it was sent.", coverColumns)
	}
	for _, w := range pb.p.Warnings {
		g.text(care, w, coverColumns)
	}
	b.coverOutcomes(g, pb)
	g.text(chapter, "How to use it", coverColumns)
	for _, line := range b.howTo() {
		g.text(prose, line, coverColumns)
	}
	b.coverCautions(g, pb)
	b.coverStill(g)
	return g
}

// coverOutcomes shows the headline lines as they are now beside as they were.
func (b *builder) coverOutcomes(g *grid, pb *planBuilder) {
	var heads []int
	for i, slot := range pb.p.Bound.Slots {
		if slot.Line.Headline != nil && !slot.Broken && slot.Kind != formula.Choice {
			heads = append(heads, i)
		}
	}
	if len(heads) == 0 {
		return
	}
	g.add(say(heading, "At the likely numbers"), say(heading, "Now"), say(heading, "As sent"), say(heading, "8 seasons in 10, as sent"), say(heading, "Goal, as sent"))
	for _, i := range heads {
		slot := pb.p.Bound.Slots[i]
		seasons, goal := "", ""
		if r := pb.p.Ranges[i]; r != nil {
			seasons = rangeText(r, slot.Unit)
			goal = r.Goal
			if r.Met != "" {
				goal += ": " + r.Met
			}
		}
		g.add(say(label, labelWithUnit(slot)), pb.now(i, worked),
			cell{value: finite(pb.p.Likely[i]), style: style{look: standing, format: pb.shown(i)}}, say(wrapped, seasons), say(wrapped, goal))
	}
	if p := pb.rangePicture(pb.suffix("Ranges"), place{1, len(g.rows) + 2}); p != nil {
		g.charts = append(g.charts, *p)
		g.space(p.height)
	}
}

func labelWithUnit(slot *formula.Slot) string {
	if text := unitText(slot); text != "" {
		return slot.Line.Label + ", " + text
	}
	return slot.Line.Label
}

// howTo says how the workbook is used.
func (b *builder) howTo() []string {
	out := []string{
		"On the sheets Plan and Tables, coloured cells take your numbers. A guess has three: low, likely and high. What follows from them is worked out at once, at the likely numbers.",
		"A choice, such as what to burn, has a list to pick from: stand on its cell.",
		"Notes are at the corner of a cell, and beside it. Write your own words under \"Your remark\", and whole new lines under \"Lines of your own\".",
		"Cells that are worked out are locked, without a password, so that nothing is overwritten by mistake.",
		"The ranges were reckoned from whole drawn seasons. They stand as they were sent, until the workbook is taken back and reckoned again.",
		"Send the workbook back when you are done: every number you changed is shown there and taken over, or not, one by one.",
		"A list that is not shown holds the plan as it was sent, with its author's own comments, so that it can be taken back.",
	}
	if len(b.plans) > 1 {
		out = append(out, counted(len(b.plans), "plan")+" are in here. The sheets without a number are the first, the others have 2, 3 and so on. Compare puts them side by side.")
	}
	return out
}

func (b *builder) coverCautions(g *grid, pb *planBuilder) {
	if len(pb.p.Cautions) == 0 {
		return
	}
	g.text(chapter, "Take care", coverColumns)
	for _, c := range pb.p.Cautions {
		text := c.Text
		if c.Source != "" {
			text += " (" + c.Source + ")"
		}
		g.text(care, text, coverColumns)
	}
	g.text(small, "Local codes and licensed people know better than this list.", coverColumns)
}

// coverStill says which formulas could not go out alive.
func (b *builder) coverStill(g *grid) {
	first := true
	for _, pb := range b.plans {
		for i, slot := range pb.p.Bound.Slots {
			if slot.Line.Kind != sheet.Formula || slot.Broken || pb.formulas[i] != "" {
				continue
			}
			if first {
				g.text(chapter, "What stands still here", coverColumns)
				first = false
			}
			g.text(prose, slot.Line.Label+": "+pb.why[i]+". Its number is the one sent, and does not follow.", coverColumns)
		}
	}
}
