package engine

import (
	"fmt"
	"math"

	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// tell puts what was found into answers.
func (c *comparing) tell() *Comparison {
	out := &Comparison{Seasons: c.seasons.N, Seed: c.seasons.Seed, Scenarios: c.scenarios(), Lines: []ComparedLine{}, Warnings: c.warnings}
	likely := make([][]float64, len(c.books))
	for k, b := range c.books {
		likely[k] = outcome.AtLikely(b.plan)
	}
	for _, o := range c.outcomes {
		l := c.line(o, likely, out.Scenarios)
		for _, d := range l.Difference {
			if d.Missing > 0 {
				out.Warnings = append(out.Warnings, leftOut(l, d, out))
			}
		}
		out.Lines = append(out.Lines, l)
	}
	if c.seasons.N < fewSeasons {
		out.Warnings = append(out.Warnings, tooFewSeasons(c.seasons.N))
	}
	if out.Warnings == nil {
		out.Warnings = diag.List{}
	}
	out.Paragraph = comparedParagraph(out)
	return out
}

func tooFewSeasons(n int) diag.Diagnostic {
	return diag.Diagnostic{Code: diag.FewSeasons, Severity: diag.Warning,
		Message: "so few seasons say little of the bad years", Hint: "draw 1,000 or more", Of: n}
}

func (c *comparing) scenarios() []Scenario {
	short := shortTitles(c.books)
	var out []Scenario
	for k, b := range c.books {
		s := Scenario{Title: b.sheet.Title, Name: b.name, Short: short[k], Changes: []SheetChange{}}
		for _, change := range c.changes[k].changes {
			s.Changes = append(s.Changes, SheetChange{change.about, change.label, change.was, change.is})
		}
		if l := c.changes[k]; l.structure() {
			s.Changes = append(s.Changes, SheetChange{Label: "lines added or dropped", Was: labelsOf(c.books[0].sheet, l.dropped), Is: labelsOf(b.sheet, l.added)})
		}
		out = append(out, s)
	}
	return out
}

// labelsOf names lines, and rows of a table once for all their cells.
func labelsOf(s *sheet.Sheet, ids []string) string {
	var names []string
	seen := map[string]bool{}
	for _, id := range ids {
		l := s.Find(id)
		name, key := l.Label, id
		if t := s.Table(l.Table); l.Table != "" && t != nil {
			key = l.Table + "." + l.Row
			for _, row := range t.Rows {
				if row.ID == l.Row {
					name = row.Label
				}
			}
		}
		if !seen[key] {
			seen[key] = true
			names = append(names, name)
		}
	}
	return listed(names)
}

// line tells one outcome.
func (c *comparing) line(o *beside, likely [][]float64, names []Scenario) ComparedLine {
	first := o.slots[0]
	unit, convert := shownUnit(first, c.options.System)
	l := ComparedLine{ID: o.id, Label: first.Line.Label, Chapter: o.chapter, Unit: unit.String(),
		Headline: c.headline(o.id), Better: o.better, Values: []ComparedValue{}, Difference: []ComparedDifference{}}
	for k := range c.books {
		slot := o.slots[k]
		at := likely[k][c.books[k].plan.Find(o.id)]
		at, _ = units.Convert(at, slot.Unit, first.Unit)
		l.Values = append(l.Values, comparedValue(outcome.Summarise(o.values[k], c.room), at, unit, convert))
	}
	for k := 1; k < len(c.books); k++ {
		d := c.difference(c.found[k][o], o, unit)
		d.Scenario = k
		if v := outcome.Dominates(o.values[0], o.values[k]); v != 0 {
			d.Dominance = map[int]string{1: "more", -1: "less"}[v]
		}
		d.Sentence = differenceSentence(l, d, names[0].Short, names[k].Short)
		d.Explanation = explanationWords(d, unit.Difference())
		l.Difference = append(l.Difference, d)
	}
	return l
}

func comparedValue(s outcome.Summary, likely float64, unit units.Unit, convert func(float64) float64) ComparedValue {
	v := ComparedValue{AtLikely: number(convert(likely)), Mean: number(convert(s.Mean)), P05: number(convert(s.P05)),
		P10: number(convert(s.P10)), P50: number(convert(s.P50)), P90: number(convert(s.P90)), P95: number(convert(s.P95))}
	v.Shown = Shown{Likely: show(v.AtLikely, unit), Low: show(v.P10, unit), Middle: show(v.P50, unit), High: show(v.P90, unit), Mean: show(v.Mean, unit)}
	return v
}

// difference tells one scenario's difference, in unit's own differences.
func (c *comparing) difference(e *breakdown, o *beside, unit units.Unit) ComparedDifference {
	apart := unit.Difference()
	factor, _, _ := units.Conversion(o.unit().Difference(), apart)
	in := func(x float64) *float64 { return number(x * factor) }
	f := e.difference
	d := ComparedDifference{Mean: in(f.Mean), P05: in(f.P05), P10: in(f.P10), P50: in(f.P50), P90: in(f.P90), P95: in(f.P95),
		More: number(f.More), Less: number(f.Less), Even: number(1 - f.More - f.Less), Missing: f.Missing, Explained: []Explained{}}
	d.Ahead, d.Behind = aheadBehind(o.better, d.More, d.Less)
	for _, have := range e.effects {
		d.Explained = append(d.Explained, Explained{have.about, have.label, in(have.mean), byWords(in(have.mean), apart)})
	}
	d.Together = Explained{Label: "the changes together", Mean: in(e.together), Shown: byWords(in(e.together), apart)}
	d.Shown = ShownDifference{Low: byWords(d.P10, apart), Middle: byWords(d.P50, apart), High: byWords(d.P90, apart),
		Mean: byWords(d.Mean, apart), Ahead: seasonsOfTen(d.Ahead)}
	return d
}

func aheadBehind(better string, more, less *float64) (ahead, behind *float64) {
	switch better {
	case "more":
		return more, less
	case "less":
		return less, more
	}
	return nil, nil
}

// byWords says a difference: "$869 less".
func byWords(x *float64, u units.Unit) string {
	if x == nil {
		return "no number"
	}
	size := units.Show(math.Abs(*x), u)
	switch {
	case *x > 0:
		return size + " more"
	case *x < 0:
		return size + " less"
	}
	return "the same"
}

// leftOut warns of seasons that a difference does not count.
func leftOut(l ComparedLine, d ComparedDifference, of *Comparison) diag.Diagnostic {
	return diag.Diagnostic{Code: diag.NotFinite, Severity: diag.Warning, About: l.ID, Seasons: d.Missing, Of: of.Seasons,
		Message: fmt.Sprintf("comes to no number in %s or %s", of.Scenarios[0].Short, of.Scenarios[d.Scenario].Short),
		Hint:    "these seasons are left out; reckon each alone to see where"}
}
