package engine

import (
	"math"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// Reckon draws the seasons and says what they say about every line that can be
// reckoned. Lines that cannot be are in Diagnostics and have no numbers here.
// The error is columns.ErrStopped when o.Progress asked to stop, or says that
// the number of seasons is out of range.
func (b *Book) Reckon(o Options) (*Reckoning, error) {
	seasons, err := b.seasons(o)
	if err != nil {
		return nil, err
	}
	found, err := b.reckon(seasons, o.Progress)
	if err != nil {
		return nil, err
	}
	return b.tell(found, seasons, o.System, o.Told), nil
}

// findings are the numbers of a reckoning before they are put in words, by slot.
type findings struct {
	summaries  []*outcome.Summary // nil where a slot cannot be reckoned
	met        []*float64
	dots       [][]float64       // of headlines; nil for others
	columns    []*columns.Column // nil when none were kept
	warnings   diag.List
	worked, of int
}

func (b *Book) reckon(s columns.Seasons, progress func(done, total int) bool) (*findings, error) {
	if s.N > columns.MostKept {
		return b.reckonLong(columns.Lower(b.plan), s, progress)
	}
	r, err := b.run(s, progress)
	if err != nil {
		return nil, err
	}
	f := b.newFindings()
	f.worked, f.of, f.columns = r.result.Worked, r.result.Of, r.result.Columns
	for i, c := range r.result.Columns {
		if c == nil {
			continue
		}
		summary := r.summary(c)
		f.summaries[i] = &summary
		f.met[i] = b.met(i, c, s.N)
		if b.plan.Slots[i].Line.Headline != nil {
			f.dots[i] = r.dots(c)
		}
		f.warnings = append(f.warnings, outcome.Warn(b.plan.Slots[i], c.Warnings, s.N)...)
	}
	return f, nil
}

func (b *Book) newFindings() *findings {
	n := len(b.plan.Slots)
	return &findings{summaries: make([]*outcome.Summary, n), met: make([]*float64, n), dots: make([][]float64, n)}
}

// met is the share of seasons in which a line with a goal meets it.
func (b *Book) met(i int, c *columns.Column, n int) *float64 {
	goal := goalOf(b.plan.Slots[i].Line)
	if goal == nil {
		return nil
	}
	count := 0
	for k := range n {
		if meets(goal, c.At(k)) {
			count++
		}
	}
	share := float64(count) / float64(n)
	return &share
}

func goalOf(line *sheet.Line) *sheet.Goal {
	if line.Headline == nil {
		return nil
	}
	return line.Headline.Goal
}

// meets is false for a season that came to no number.
func meets(g *sheet.Goal, x float64) bool {
	return !math.IsNaN(x) && (g.AtLeast == nil || x >= *g.AtLeast) && (g.AtMost == nil || x <= *g.AtMost)
}

// reckonLong reckons more seasons than columns are kept of: each chunk is
// counted and forgotten.
func (b *Book) reckonLong(program *columns.Program, s columns.Seasons, progress func(done, total int) bool) (*findings, error) {
	f := b.newFindings()
	sketches := make([]*outcome.Sketch, len(b.plan.Slots))
	counts := make([]int, len(b.plan.Slots))
	for _, i := range b.plan.Order {
		sketches[i] = outcome.NewSketch(s.N)
	}
	warnings, err := program.Stream(s, func(_, n int, chunk [][]float64) {
		for _, i := range b.plan.Order {
			sketches[i].Add(chunk[i][:n])
			if goal := goalOf(b.plan.Slots[i].Line); goal != nil {
				for _, x := range chunk[i][:n] {
					if meets(goal, x) {
						counts[i]++
					}
				}
			}
		}
	}, progress)
	if err != nil {
		return nil, err
	}
	for _, i := range b.plan.Order {
		summary := sketches[i].Summary()
		f.summaries[i] = &summary
		if goalOf(b.plan.Slots[i].Line) != nil {
			share := float64(counts[i]) / float64(s.N)
			f.met[i] = &share
		}
		f.warnings = append(f.warnings, outcome.Warn(b.plan.Slots[i], warnings[i], s.N)...)
	}
	f.worked, f.of = len(b.plan.Order), len(b.plan.Order)
	return f, nil
}

func (b *Book) seasons(o Options) (columns.Seasons, error) {
	s := columns.Seasons{N: b.sheet.Seasons, Seed: b.sheet.Seed}
	if o.Seasons != 0 {
		s.N = o.Seasons
	}
	if o.Seed != nil {
		s.Seed = *o.Seed
	}
	if s.N < 1 || s.N > sheet.MaxSeasons {
		return s, diag.Diagnostic{Code: diag.TooMany, Severity: diag.Error,
			Message: "the number of seasons is out of range", Hint: "draw from 1 to 1,000,000"}
	}
	return s, nil
}

// shownUnit is the unit an answer is given in, with the steps from the slot's.
func shownUnit(slot *formula.Slot, system units.System) (u units.Unit, convert func(float64) float64) {
	u = slot.Unit.In(system)
	factor, offset, ok := units.Conversion(slot.Unit, u)
	if !ok || slot.Kind != formula.Number {
		return slot.Unit, func(x float64) float64 { return x }
	}
	return u, func(x float64) float64 { return x*factor + offset }
}
