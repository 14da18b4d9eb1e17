package engine

import (
	"cmp"
	"math"
	"slices"

	"thawbook/engine/columns"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// otherSeasons turns a seed into that of a second set of seasons, drawn apart
// from the first. Any number does; seeds people count up must not meet it.
const otherSeasons = 0x5bd1e995a3c7f0d2

// Movers says which guesses move the line or cell called of, and how much. The
// outcome is reckoned in two sets of seasons drawn apart and, for each guess, in
// the first set with that guess alone taken from the second; outcome.Measure
// has the equations. Guesses that move together are taken as one.
//
// More seasons than 100,000 are cut to that. The error is a diag.Diagnostic for
// a line that is not there, cannot be reckoned or is no number, or
// columns.ErrStopped.
func (b *Book) Movers(of string, o Options) (*Movers, error) {
	if _, d := b.numberLine(of); d != nil {
		return nil, *d
	}
	seasons, err := b.seasons(o)
	if err != nil {
		return nil, err
	}
	seasons.N = min(seasons.N, columns.MostKept)
	m := &moving{book: b, slot: b.plan.Find(of), seasons: seasons, options: o,
		program: columns.Lower(b.plan).Only(b.plan.Find(of))}
	if err := m.draw(); err != nil {
		return nil, err
	}
	if err := m.measure(); err != nil {
		return nil, err
	}
	return m.tell(), nil
}

// moving is a question for movers under way.
type moving struct {
	book    *Book
	slot    int
	seasons columns.Seasons
	options Options
	program *columns.Program // what the outcome hangs on, and no more
	groups  []group
	done    int // sets of seasons lived through

	first         *run
	second        *columns.Result
	a, b, swapped []float64 // the outcome, a season each
	moved         []float64 // a, and what each guess drawn anew adds to it
	effects       []outcome.Effects
}

// draw lives through the two sets of seasons.
func (m *moving) draw() (err error) {
	m.groups = groups(m.program.Plan, m.slot)
	if m.first, err = m.book.run(m.seasons, m.progress()); err != nil {
		return err
	}
	other := m.seasons
	other.Seed ^= otherSeasons
	if m.second, err = m.program.Run(other, nil, m.progress()); err != nil {
		return err
	}
	m.a, m.b, m.swapped = make([]float64, m.seasons.N), make([]float64, m.seasons.N), make([]float64, m.seasons.N)
	m.first.result.Columns[m.slot].Fill(m.a, 0)
	m.second.Columns[m.slot].Fill(m.b, 0)
	m.moved = slices.Clone(m.a)
	return nil
}

// measure draws each group anew in turn. Its seasons are forgotten once they
// are measured.
func (m *moving) measure() error {
	for _, g := range m.groups {
		s := m.seasons
		s.Apart = &columns.Apart{Seed: s.Seed ^ otherSeasons, Lines: g.lines}
		column, err := m.program.One(m.slot, s, m.first.result, m.second)
		if err != nil {
			return err
		}
		column.Fill(m.swapped, 0)
		for k, x := range m.swapped {
			m.moved[k] += x - m.a[k]
		}
		m.effects = append(m.effects, outcome.Measure(m.a, m.b, m.swapped))
		if tell := m.progress(); tell != nil && !tell(1, 1) {
			return columns.ErrStopped
		}
	}
	return nil
}

// progress shares out what is told among the sets of seasons.
func (m *moving) progress() func(done, total int) bool {
	tell, before, of := m.options.Progress, m.done, len(m.groups)+2
	m.done++
	if tell == nil {
		return nil
	}
	return func(done, total int) bool { return tell(before*total+done, of*total) }
}

// tell puts what was measured into an answer.
func (m *moving) tell() *Movers {
	b, plan := m.book, m.book.plan
	likely := outcome.AtLikely(plan)
	out := &Movers{Title: b.sheet.Title, Seasons: m.seasons.N, Seed: m.seasons.Seed, Movers: []Mover{},
		Outcome: b.answerAlone(m.first, m.slot, likely[m.slot], m.options.System), Apart: m.apart(),
		// Effects add up in the numerator, so all of them at once have an error too.
		Alone: tellShare(outcome.Measure(m.a, m.b, m.moved).First)}
	for i, g := range m.groups {
		if !math.IsNaN(m.effects[i].Total.Value) {
			out.Movers = append(out.Movers, m.mover(g, m.effects[i], likely))
		}
	}
	slices.SortStableFunc(out.Movers, func(x, y Mover) int {
		return cmp.Compare(*y.Total.Value, *x.Total.Value)
	})
	out.Paragraph = moversParagraph(out)
	return out
}

func (m *moving) mover(g group, e outcome.Effects, likely []float64) Mover {
	out := Mover{First: tellShare(e.First), Total: tellShare(e.Total), Together: tellShare(e.Together),
		Missing: e.Missing, Interacts: !e.Together.AboutZero() && e.Together.Value >= leastShare}
	for _, i := range g.slots {
		out.Guesses = append(out.Guesses, m.swing(i, likely))
	}
	out.Label = joinLabels(out.Guesses)
	return out
}

// swing works the outcome at the likely numbers with one guess at its lows and
// highs.
func (m *moving) swing(i int, likely []float64) MovingGuess {
	plan := m.program.Plan
	slot := plan.Slots[i]
	own, convertOwn := shownUnit(slot, m.options.System)
	unit, convert := shownUnit(plan.Slots[m.slot], m.options.System)
	low, high := slot.Shape.Quantile(0.1), slot.Shape.Quantile(0.9)
	atLow := outcome.LikelyBut(plan, likely, map[int]float64{i: low}, m.slot)
	atHigh := outcome.LikelyBut(plan, likely, map[int]float64{i: high}, m.slot)
	g := MovingGuess{ID: slot.ID(), Label: slot.Line.Label, Unit: own.String(), Low: convertOwn(low), High: convertOwn(high),
		AtLow: number(convert(atLow)), AtHigh: number(convert(atHigh))}
	switch slack := 1e-9 * max(math.Abs(atLow), math.Abs(atHigh)); {
	case atHigh-atLow > slack:
		g.Direction = "up"
	case atLow-atHigh > slack:
		g.Direction = "down"
	}
	g.Shown = ShownMoving{units.Show(g.Low, own), units.Show(g.High, own), show(g.AtLow, unit), show(g.AtHigh, unit)}
	return g
}

// apart lists the guesses that the outcome does not hang on.
func (m *moving) apart() []Named {
	out := []Named{}
	reached := hangsOn(m.program.Plan, m.slot)
	for i, slot := range m.book.plan.Slots {
		if slot.Drawn() && !slot.Broken && !reached[i] {
			out = append(out, Named{slot.ID(), slot.Line.Label})
		}
	}
	return out
}

// answerAlone is what a run's seasons say of one slot.
func (b *Book) answerAlone(r *run, slot int, likely float64, system units.System) Answer {
	f := b.newFindings()
	summary := r.summary(r.result.Columns[slot])
	f.summaries[slot] = &summary
	f.met[slot] = b.met(slot, r.result.Columns[slot], r.result.Seasons.N)
	chapter := ""
	b.eachSlot(func(i int, title string) {
		if i == slot {
			chapter = title
		}
	})
	return b.answer(slot, chapter, f, likely, system)
}
