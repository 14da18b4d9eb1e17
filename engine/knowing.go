package engine

import (
	"cmp"
	"math"
	"slices"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// AskWorth says what it would be worth, for one season, to know a guess
// before choosing between scenarios of one sheet by the money that the line or
// cell called on comes to: for every guess by itself and for all of them at
// once. The scenarios live through the same seasons, those of the first unless o
// gives others; outcome.Choosing has the equations. A guess of one name in two
// scenarios is one guess, also where they give it other numbers: it is high or
// low in both alike.
//
// More seasons than 100,000 are cut to that. The error is a diag.Diagnostic when
// there are fewer than two scenarios, when on is not money in all of them or
// nobody says which is better of it, or when no season comes to a number in all;
// or columns.ErrStopped.
func AskWorth(books []*Book, on string, o KnowingOptions) (*Worth, error) {
	w := &weighing{books: books, options: o, runs: make([]*run, len(books))}
	if err := w.settle(on); err != nil {
		return nil, err
	}
	if err := w.live(); err != nil {
		return nil, err
	}
	if w.choosing.N == 0 {
		return nil, diag.Diagnostic{Code: diag.NotFinite, Severity: diag.Error, About: on,
			Message: "no season comes to a number in all the scenarios", Hint: "reckon each alone to see where it stops"}
	}
	return w.tell(), nil
}

// weighing is a question for what is worth knowing under way.
type weighing struct {
	books    []*Book
	options  KnowingOptions
	on       *beside
	sign     float64 // 1 where more is better, -1 where less is
	seasons  columns.Seasons
	runs     []*run
	payoffs  [][]float64 // by scenario, more being better, in the first's unit
	choosing *outcome.Choosing
}

// settle finds what the choice is made by, and what is better of it.
func (w *weighing) settle(on string) error {
	if err := comparable(w.books); err != nil {
		return err
	}
	var d *diag.Diagnostic
	if w.on, d = findBeside(w.books, on); d != nil {
		return *d
	}
	slot := w.on.slots[0]
	money, err := units.Parse("$", w.books[0].sheet.Money)
	if err != nil || !units.Same(money, slot.Unit) {
		return diag.Diagnostic{Code: diag.WrongUnit, Severity: diag.Error, About: on, Place: slot.Line.At("unit"),
			Message: "worth is counted in money, and \"" + on + "\" is in \"" + slot.Line.Unit + "\"",
			Hint:    "name a line that comes to money for the season"}
	}
	if w.options.Better != "" {
		w.on.better = w.options.Better
	}
	switch w.on.better {
	case "more":
		w.sign = 1
	case "less":
		w.sign = -1
	default:
		return diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, About: on, Place: slot.Line.Place,
			Message: "nobody says whether more or less of \"" + on + "\" is better", Hint: "say which, or give the line a headline that does"}
	}
	w.seasons, err = w.books[0].seasons(w.options.Options)
	w.seasons.N = min(w.seasons.N, columns.MostKept)
	return err
}

// live takes the same seasons through every scenario.
func (w *weighing) live() error {
	for k, b := range w.books {
		if b.last == nil || b.last.result.Seasons != w.seasons {
			b.last = w.books[0].last // most of its columns are the first's
		}
		var err error
		if w.runs[k], err = b.run(w.seasons, w.progress(k)); err != nil {
			return err
		}
		payoff := slices.Clone(w.runs[k].valuesIn(w.on.id, w.on.unit()))
		for i := range payoff {
			payoff[i] *= w.sign
		}
		w.payoffs = append(w.payoffs, payoff)
	}
	w.choosing = outcome.Choose(w.payoffs)
	return nil
}

func (w *weighing) progress(k int) func(done, total int) bool {
	tell := w.options.Progress
	if tell == nil {
		return nil
	}
	return func(done, total int) bool { return tell(k*total+done, len(w.books)*total) }
}

func (w *weighing) tell() *Worth {
	c := w.choosing
	slot := w.on.slots[0]
	out := &Worth{Seasons: w.seasons.N, Seed: w.seasons.Seed, Outcome: Named{w.on.id, slot.Line.Label}, Unit: slot.Unit.String(),
		Better: w.on.better, Best: c.Best, All: w.worthy(c.KnowAll()), Guesses: []WorthKnowing{}, Missing: c.Missing}
	for k, short := range shortTitles(w.books) {
		o := WorthScenario{Title: w.books[k].sheet.Title, Name: w.books[k].name, Short: short, Mean: number(w.sign * c.Means[k]), Ahead: number(c.Ahead[k])}
		o.Shown.Mean, o.Shown.Ahead = show(o.Mean, slot.Unit), seasonsOfTen(o.Ahead)
		out.Scenarios = append(out.Scenarios, o)
	}
	for _, g := range w.guesses() {
		out.Guesses = append(out.Guesses, w.know(g, out.Scenarios))
	}
	slices.SortStableFunc(out.Guesses, func(a, b WorthKnowing) int { return cmp.Compare(b.Worth.Value, a.Worth.Value) })
	out.Paragraph = worthParagraph(out)
	return out
}

func (w *weighing) worthy(k outcome.Knowing) Worthy {
	unit := w.on.unit()
	out := Worthy{Value: k.Worth, Error: k.Error, AboutNothing: k.AboutNothing(), Changes: k.Changes}
	out.Shown.Value, out.Shown.Changes = "about nothing", seasonsOfTen(&k.Changes)
	if !out.AboutNothing {
		out.Shown.Value = units.Show(k.Worth, unit)
	}
	if k.Error > 0 {
		out.Shown.Error = units.Show(2*k.Error, unit)
	}
	return out
}

// unknown is a guess that tells something of the outcome in a scenario.
type unknown struct {
	id   string
	book int // the first scenario that draws it
	// alike says that all scenarios that draw it give it the same numbers.
	alike bool
}

// guesses lists the guesses that the outcome hangs on in any scenario, and those
// that move with one: to know these tells something too.
func (w *weighing) guesses() []unknown {
	var out []unknown
	at := map[string]int{}
	for k, b := range w.books {
		ties := tiesOf(b.plan)
		reached := hangsOn(b.plan, b.plan.Find(w.on.id))
		seen := map[int]bool{}
		var tied []int
		for i, slot := range b.plan.Slots {
			if reached[i] && slot.Drawn() {
				tied = append(tied, gather(ties, i, seen)...)
			}
		}
		slices.Sort(tied)
		for _, i := range tied {
			id := b.plan.Slots[i].ID()
			if have, known := at[id]; known {
				first := w.books[out[have].book]
				out[have].alike = out[have].alike && sameWorth(first.plan.Slots[first.plan.Find(id)].Line, b.plan.Slots[i].Line)
				continue
			}
			at[id] = len(out)
			out = append(out, unknown{id, k, true})
		}
	}
	return out
}

// know is one guess's worth.
func (w *weighing) know(g unknown, scenarios []WorthScenario) WorthKnowing {
	column := w.runs[g.book].at(g.id)
	plan := w.books[g.book].plan
	slot := plan.Slots[plan.Find(g.id)]
	k := w.choosing.Know(column.Values)
	unit, convert := shownUnit(slot, w.options.System)
	out := WorthKnowing{ID: g.id, Label: slot.Line.Label, Unit: unit.String(), Note: slot.Line.Note, Source: slot.Line.Source,
		Worth: w.worthy(k), Turns: []Turn{}}
	if k.AboutNothing() || !g.alike {
		return out
	}
	for i, s := range k.Stretches {
		if !math.IsInf(s.To, 1) {
			out.Turns = append(out.Turns, Turn{convert(s.To), units.Show(convert(s.To), unit), s.Option, k.Stretches[i+1].Option})
		}
	}
	out.Sentence = turnSentence(out.Turns, scenarios)
	return out
}
