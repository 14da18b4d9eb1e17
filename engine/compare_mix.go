package engine

import (
	"slices"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// mixed is s with the lines that pick gives in place of its own; pick answers
// nil to keep a line. A guess that moved with what is no guess any more, or is
// not there, moves without it. s is not changed.
func mixed(s *sheet.Sheet, pick func(*sheet.Line) *sheet.Line) *sheet.Sheet {
	varies := map[string]bool{}
	picked := map[*sheet.Line]*sheet.Line{}
	for _, l := range s.All() {
		picked[l] = l
		if next := pick(l); next != nil {
			picked[l] = next
		}
		varies[l.ID] = picked[l].Varies()
	}
	swap := func(lines []*sheet.Line) []*sheet.Line {
		lines = slices.Clone(lines)
		for i, l := range lines {
			lines[i] = withCompany(picked[l], varies)
		}
		return lines
	}
	return eachLine(s, swap)
}

// withCompany is l without those it moves with that do not vary.
func withCompany(l *sheet.Line, varies map[string]bool) *sheet.Line {
	gone := func(m sheet.Moves) bool { return !varies[m.ID] }
	if !l.Varies() || !slices.ContainsFunc(l.MovesWith, gone) {
		return l
	}
	next := *l
	next.MovesWith = slices.DeleteFunc(slices.Clone(l.MovesWith), gone)
	return &next
}

// eachLine is a copy of s whose lines and rows of cells swap has gone over.
func eachLine(s *sheet.Sheet, swap func([]*sheet.Line) []*sheet.Line) *sheet.Sheet {
	out := &sheet.Sheet{File: s.File, From: s.From, Title: s.Title, About: s.About, Money: s.Money,
		Seasons: s.Seasons, Seed: s.Seed, Chapters: slices.Clone(s.Chapters)}
	for i := range out.Chapters {
		c := &out.Chapters[i]
		c.Lines, c.Tables = swap(c.Lines), slices.Clone(c.Tables)
		for j, t := range c.Tables {
			table := *t
			table.Rows = slices.Clone(t.Rows)
			for k := range table.Rows {
				table.Rows[k].Cells = swap(table.Rows[k].Cells)
			}
			c.Tables[j] = &table
		}
	}
	return out
}

// variant is the book of a changed form of its sheet, for as long as it is held;
// before is the run it may take columns from.
func (b *Book) variant(s *sheet.Sheet, before *run) *Book {
	plan, list := b.plan.Rebind(s)
	return &Book{name: b.name, load: b.load, doc: b.doc, sheet: s, plan: plan, list: list, last: before}
}

// towards leaves the book only the work that the lines hang on.
func (b *Book) towards(ids []string) {
	wanted := make([]bool, len(b.plan.Slots))
	for _, id := range ids {
		if i := b.plan.Find(id); i >= 0 {
			wanted[i] = true
		}
	}
	// Whatever a slot uses stands before it in the order of work.
	plan, order := *b.plan, slices.Clone(b.plan.Order)
	for _, i := range slices.Backward(order) {
		if wanted[i] {
			for _, use := range plan.Slots[i].Uses {
				wanted[use] = true
			}
		}
	}
	plan.Order = slices.DeleteFunc(order, func(i int) bool { return !wanted[i] })
	b.plan = &plan
}

// breaks lists the lines that are broken in plan and not in like: those that
// are wrong themselves when there are any, or else all.
func breaks(plan, like *formula.Plan) []string {
	var roots, all []string
	for _, slot := range plan.Slots {
		if i := like.Find(slot.ID()); !slot.Broken || i >= 0 && like.Slots[i].Broken {
			continue
		}
		all = append(all, slot.ID())
		if slot.Line.Kind != sheet.Formula || slot.Expr == nil {
			roots = append(roots, slot.ID())
		}
	}
	if len(roots) > 0 {
		return roots
	}
	return all
}
