package engine

import (
	"math"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/trade"
	"thawbook/engine/units"
)

// fewSeasons is where the tails start to rest on a handful of seasons: below it
// fewer than ten stand beyond either end of a range.
const fewSeasons = 100

// tell puts findings into answers: all of them, or those that told does not have.
func (b *Book) tell(f *findings, s columns.Seasons, system units.System, told *Reckoning) *Reckoning {
	r := &Reckoning{Title: b.sheet.Title, Seasons: s.N, Seed: s.Seed, Warnings: f.warnings, Worked: f.worked, Of: f.of,
		Lines: []Answer{}, basis: basis{b.plan, f.columns, system}}
	likely := outcome.AtLikely(b.plan)
	same := r.basis.sameAs(told)
	r.Changed = same != nil
	var headlines []Answer
	b.eachSlot(func(i int, chapter string) {
		known := same != nil && same(i)
		if known && b.plan.Slots[i].Line.Headline == nil {
			return
		}
		a := b.answer(i, chapter, f, likely[i], system)
		if a.Headline {
			headlines = append(headlines, a)
		}
		if !known {
			r.Lines = append(r.Lines, a)
		}
	})
	if s.N < fewSeasons {
		r.Warnings = append(r.Warnings, diag.Diagnostic{Code: diag.FewSeasons, Severity: diag.Warning,
			Message: "so few seasons say little of the bad years", Hint: "draw 1,000 or more", Of: s.N})
	}
	if r.Warnings == nil {
		r.Warnings = diag.List{}
	}
	r.Warnings.Sort()
	r.Cautions = b.cautions()
	r.Paragraph = paragraph(headlines, len(r.Warnings))
	return r
}

// eachSlot visits the slots in the order of the sheet with their chapter.
func (b *Book) eachSlot(visit func(i int, chapter string)) {
	i := 0
	for _, chapter := range b.sheet.Chapters {
		n := len(chapter.Lines)
		for _, t := range chapter.Tables {
			n += len(t.Rows) * len(t.Columns)
		}
		for range n {
			visit(i, chapter.Title)
			i++
		}
	}
}

func (b *Book) answer(i int, chapter string, f *findings, likely float64, system units.System) Answer {
	slot := b.plan.Slots[i]
	line := slot.Line
	unit, convert := shownUnit(slot, system)
	a := Answer{ID: line.ID, Label: line.Label, Chapter: chapter, Unit: unit.String(), Kind: string(line.Kind),
		Table: line.Table, Row: line.Row, Column: line.Column, GoalMet: f.met[i]}
	if line.Headline != nil {
		a.Headline, a.Better = true, line.Headline.Better
	}
	if slot.Kind == formula.Choice {
		a.Unit, a.Choice = "", line.Choose
		a.Shown.Likely, a.Shown.Middle = choiceLabel(line), choiceLabel(line)
		return a
	}
	a.AtLikely = number(convert(likely))
	if s := f.summaries[i]; s != nil && s.N > 0 {
		a.Mean, a.P05, a.P10 = number(convert(s.Mean)), number(convert(s.P05)), number(convert(s.P10))
		a.P50, a.P90, a.P95 = number(convert(s.P50)), number(convert(s.P90)), number(convert(s.P95))
	}
	if f.dots != nil {
		for _, x := range f.dots[i] {
			a.Dots = append(a.Dots, convert(x))
			if goal := goalOf(line); goal != nil {
				a.GoalDots = append(a.GoalDots, meets(goal, x))
			}
		}
	}
	a.Shown = Shown{Likely: show(a.AtLikely, unit), Low: show(a.P10, unit), Middle: show(a.P50, unit), High: show(a.P90, unit), Mean: show(a.Mean, unit)}
	if goal := goalOf(line); goal != nil {
		a.Goal = goalWords(goal, unit, convert)
		a.Shown.Goal = seasonsOfTen(a.GoalMet)
	}
	return a
}

func choiceLabel(line *sheet.Line) string {
	for _, name := range line.Among {
		if name.ID == line.Choose && name.Label != "" {
			return name.Label
		}
	}
	return line.Choose
}

func number(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

func show(x *float64, u units.Unit) string {
	if x == nil {
		return "no number"
	}
	return units.Show(*x, u)
}

func goalWords(g *sheet.Goal, u units.Unit, convert func(float64) float64) string {
	switch {
	case g.AtLeast != nil && g.AtMost != nil:
		return "between " + units.Show(convert(*g.AtLeast), u) + " and " + units.Show(convert(*g.AtMost), u)
	case g.AtLeast != nil:
		return "at least " + units.Show(convert(*g.AtLeast), u)
	case g.AtMost != nil:
		return "at most " + units.Show(convert(*g.AtMost), u)
	}
	return ""
}

// cautions lists the cautions of the lines and of the rows in use: a row of a
// table that a choice picks from speaks only while it is the one chosen.
func (b *Book) cautions() []Caution {
	out := []Caution{}
	chosen := map[string]map[string]bool{}
	for _, line := range b.sheet.All() {
		if line.Kind == sheet.Choose && line.AmongTable != "" {
			if chosen[line.AmongTable] == nil {
				chosen[line.AmongTable] = map[string]bool{}
			}
			chosen[line.AmongTable][line.Choose] = true
		}
	}
	add := func(about, text, source string) {
		if known, ok := trade.CautionFor(text); ok {
			source = known.Source
		}
		if text != "" {
			out = append(out, Caution{about, cautionText(text), source})
		}
	}
	for _, chapter := range b.sheet.Chapters {
		for _, line := range chapter.Lines {
			add(line.ID, line.Caution, line.Source)
		}
		for _, t := range chapter.Tables {
			for _, row := range t.Rows {
				if picked := chosen[t.ID]; picked == nil || picked[row.ID] {
					add(t.ID+"."+row.ID, row.Caution, row.Source)
				}
			}
		}
	}
	return out
}

// cautionText is the text behind a caution's key, or free text as written.
func cautionText(text string) string {
	if known, ok := trade.CautionFor(text); ok {
		return known.Text
	}
	return text
}
