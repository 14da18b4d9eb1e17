package workbook

import (
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// layCompare puts several plans side by side.
func (b *builder) layCompare() *grid {
	n := len(b.plans)
	g := &grid{name: "Compare", widths: []float64{36, 10}, freezeRows: 2, freezeColumns: 1, repeat: 2, landscape: true}
	for range 4 * n {
		g.widths = append(g.widths, 16)
	}
	g.add(say(title, "The plans side by side"))
	g.add(say(heading, "At the likely numbers, as they are now"), say(heading, "Unit"))
	for k, pb := range b.plans {
		g.set(3+k, say(heading, pb.p.Bound.Sheet.Title))
	}
	top := len(g.rows) + 1
	lines := b.sharedOutcomes()
	for _, at := range lines {
		b.compareNow(g, at)
	}
	b.comparePictures(g, lines, top, n)
	b.compareRanges(g, lines)
	b.compareDifferences(g)
	b.compareInputs(g)
	return g
}

// sharedOutcomes are the headline lines of any plan that every plan has in one
// unit: for each the slot in every plan.
func (b *builder) sharedOutcomes() [][]int {
	var out [][]int
	seen := map[string]bool{}
	for _, pb := range b.plans {
		for _, slot := range pb.p.Bound.Slots {
			if slot.Line.Headline == nil || slot.Kind == formula.Choice || seen[slot.ID()] {
				continue
			}
			seen[slot.ID()] = true
			if at, ok := b.everywhere(slot); ok {
				out = append(out, at)
			}
		}
	}
	return out
}

func (b *builder) everywhere(slot *formula.Slot) ([]int, bool) {
	var at []int
	for _, pb := range b.plans {
		i := pb.p.Bound.Find(slot.ID())
		if i < 0 || pb.p.Bound.Slots[i].Broken || !units.Same(pb.p.Bound.Slots[i].Unit, slot.Unit) ||
			pb.p.Bound.Slots[i].Unit.Scale() != slot.Unit.Scale() {
			return nil, false
		}
		at = append(at, i)
	}
	return at, true
}

func (b *builder) compareNow(g *grid, at []int) {
	slot := b.plans[0].p.Bound.Slots[at[0]]
	g.add(say(label, slot.Line.Label), say(small, units.UnitLabel(slot.Unit)))
	for k, pb := range b.plans {
		g.set(3+k, pb.now(at[k], worked))
	}
}

// mostPictures keeps a comparison to what fits a page.
const mostPictures = 4

// comparePictures draws the first outcomes, one picture each, because each has a
// scale of its own.
func (b *builder) comparePictures(g *grid, lines [][]int, top, n int) {
	for k, at := range lines[:min(len(lines), mostPictures)] {
		slot := b.plans[0].p.Bound.Slots[at[0]]
		row := top + k
		g.charts = append(g.charts, picture{at: place{1 + k%2*3, len(g.rows) + 2 + k/2*13}, title: labelWithUnit(slot), upright: true, fromNothing: b.aboveNothing(at), width: 420, height: 230,
			categories: address(g.name, place{3, 2}, place{2 + n, 2}),
			series:     []series{{name: address(g.name, place{1, row}, place{1, row}), values: address(g.name, place{3, row}, place{2 + n, row}), color: "8A5A1F"}}})
	}
	if len(lines) > 0 {
		g.space(uint(min(len(lines), mostPictures)+1) / 2 * 260)
	}
}

// aboveNothing says whether a line is at 0 or above in every plan.
func (b *builder) aboveNothing(at []int) bool {
	for k, pb := range b.plans {
		if !(pb.p.Likely[at[k]] >= 0) {
			return false
		}
	}
	return true
}

func (b *builder) compareRanges(g *grid, lines [][]int) {
	g.add(say(chapter, "As the seasons had it, as sent"), say(chapter, ""))
	for k, pb := range b.plans {
		g.set(3+3*k, say(chapter, pb.p.Bound.Sheet.Title))
		g.set(4+3*k, say(chapter, ""))
		g.set(5+3*k, say(chapter, ""))
	}
	g.add(say(heading, "Line"), say(heading, "Unit"))
	for k := range b.plans {
		for j, text := range []string{"Low", "Middle", "High"} {
			g.set(3+3*k+j, say(heading, text))
		}
	}
	for _, at := range lines {
		slot := b.plans[0].p.Bound.Slots[at[0]]
		g.add(say(label, slot.Line.Label), say(small, units.UnitLabel(slot.Unit)))
		for k, pb := range b.plans {
			r := pb.p.Ranges[at[k]]
			if r == nil {
				continue
			}
			for j, x := range []float64{r.Low, r.Middle, r.High} {
				g.set(3+3*k+j, cell{value: finite(x), style: style{look: standing, format: pb.shown(at[k])}})
			}
		}
	}
	g.add(say(flat, b.plans[0].from()+" 8 seasons in 10 fall between low and high."))
	g.add()
}

// compareDifferences shows each plan less the first, over the same seasons.
func (b *builder) compareDifferences(g *grid) {
	if b.in.Compare == nil {
		return
	}
	g.add(say(chapter, "Less the first, over the same seasons, as sent"), say(chapter, ""))
	for k, pb := range b.plans[1:] {
		g.set(3+4*k, say(chapter, pb.p.Bound.Sheet.Title))
		for j := range 3 {
			g.set(4+4*k+j, say(chapter, ""))
		}
	}
	g.add(say(heading, "Line"), say(heading, "Unit"))
	for k := range b.plans[1:] {
		for j, text := range []string{"Low", "Middle", "High", "Ahead of the first"} {
			g.set(3+4*k+j, say(heading, text))
		}
	}
	for _, line := range b.in.Compare.Lines {
		b.compareDifference(g, line)
	}
	g.add()
}

func (b *builder) compareDifference(g *grid, line Compared) {
	u, err := units.Parse(line.Unit, b.index.Money)
	if err != nil {
		u = units.One()
	}
	g.add(say(label, line.Label), say(small, units.UnitLabel(u.Difference())))
	for k, d := range line.Differences {
		if d == nil || k+1 >= len(b.plans) {
			continue
		}
		shown := style{look: standing, format: format(u.Difference(), false, d.Low, d.Middle, d.High)}
		for j, x := range []float64{d.Low, d.Middle, d.High} {
			g.set(3+4*k+j, cell{value: finite(x), style: shown})
		}
		g.set(6+4*k, say(small, d.Ahead))
	}
}

// compareInputs lists what stands differently in the plans, as it is now.
func (b *builder) compareInputs(g *grid) {
	g.add(say(heading, "What stands differently, as it is now"), say(heading, "Unit"))
	for k, pb := range b.plans {
		g.set(3+k, say(heading, pb.p.Bound.Sheet.Title))
	}
	for _, slot := range b.plans[0].p.Bound.Slots {
		at, ok := b.everywhere(slot)
		if !ok || !b.differ(at) {
			continue
		}
		g.add(say(label, slot.Line.Label), say(small, unitText(slot)))
		for k, pb := range b.plans {
			c := pb.now(at[k], worked)
			if kind := pb.p.Bound.Slots[at[k]].Line.Kind; kind == sheet.Is || kind == sheet.Guess {
				c.style.format = format(slot.Unit, true, pb.p.Likely[at[k]])
			}
			if pb.p.Bound.Slots[at[k]].Kind == formula.Choice {
				c.value, c.style.format = pb.p.Bound.Slots[at[k]].Line.Choose, "@"
			}
			g.set(3+k, c)
		}
	}
}

// differ says whether a line is given differently in any two plans.
func (b *builder) differ(at []int) bool {
	first := b.plans[0].p.Bound.Slots[at[0]].Line
	for k, pb := range b.plans {
		line := pb.p.Bound.Slots[at[k]].Line
		if line.Kind != first.Kind || line.Formula != first.Formula && line.Kind == sheet.Formula || line.Choose != first.Choose ||
			line.Is != first.Is || line.Low != first.Low || line.Likely != first.Likely || line.High != first.High {
			return true
		}
	}
	return false
}

// unitText is a slot's unit for the head of a row; "" for a choice.
func unitText(slot *formula.Slot) string {
	if slot.Kind == formula.Choice {
		return ""
	}
	return units.UnitLabel(slot.Unit)
}
