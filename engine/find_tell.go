package engine

import (
	"cmp"
	"math"
	"slices"

	"thawbook/engine/outcome"
)

// tell puts what was found into answers.
func (f *finding) tell(roots []outcome.Root, trials []outcome.Trial) (*Found, error) {
	lineUnit, toLine := shownUnit(f.line, f.q.System)
	outUnit, toOut := shownUnit(f.outcome, f.q.System)
	s := f.base.sheet
	found := &Found{Title: s.Title, Seasons: f.seasons.N, Seed: f.seasons.Seed,
		Line:    FoundLine{f.line.ID(), f.line.Line.Label, lineUnit.String()},
		Outcome: FoundLine{f.outcome.ID(), f.outcome.Line.Label, outUnit.String()},
		In:      f.wish.in, Asked: f.wish.asked, Target: toOut(f.wish.target),
		Wish: f.wishWords(outUnit, toOut), Whole: f.move.whole, Moved: f.move.as, Answers: []FoundAnswer{}}
	if f.wish.in == "share" {
		found.In = f.q.In
	}
	for _, t := range trials {
		p := FoundPoint{Value: toLine(t.X), Reached: f.reachedFrom(t, toOut)}
		if p.Reached == nil {
			found.NoNumber++
		}
		found.Curve = append(found.Curve, p)
	}
	found.Now = f.now()
	found.Lowest, found.Highest = f.value(trials[0].X), f.value(trials[len(trials)-1].X)
	for _, span := range f.spans(roots, trials) {
		a := FoundAnswer{Kind: span.kind(), From: f.value(span.From.X), EndsLow: span.low, EndsHigh: span.high}
		if a.To = a.From; span.To.X != span.From.X {
			a.To = f.value(span.To.X)
		}
		a.Sentence = answerWords(a)
		found.Answers = append(found.Answers, a)
	}
	if near := nearest(trials); len(found.Answers) == 0 && near != nil {
		at := f.value(near.X)
		found.Nearest = &at
	}
	found.Paragraph = f.wish.paragraph(found)
	return found, f.err
}

// reachedFrom is what the outcome came to at a trial.
func (f *finding) reachedFrom(t outcome.Trial, toOut func(float64) float64) *float64 {
	if f.wish.asked == "at_most" {
		return number(toOut(f.wish.target - t.F))
	}
	return number(toOut(f.wish.target + t.F))
}

// nearest is the trial that comes nearest the target, nil when none comes to a
// number.
func nearest(trials []outcome.Trial) *outcome.Trial {
	var best *outcome.Trial
	for i, t := range trials {
		if !math.IsNaN(t.F) && (best == nil || math.Abs(t.F) < math.Abs(best.F)) {
			best = &trials[i]
		}
	}
	return best
}

// span is an answer: a root, or a stretch in which the target is met. low and
// high say that it goes on to the limits.
type span struct {
	outcome.Root
	low, high bool
}

func (s span) kind() string {
	switch {
	case s.Steps():
		return "over"
	case s.From.X != s.To.X:
		return "along"
	}
	return "at"
}

// spans are the answers: where the target is reached exactly, or all along which
// it is met.
func (f *finding) spans(roots []outcome.Root, trials []outcome.Trial) []span {
	var out []span
	first, last := trials[0].X, trials[len(trials)-1].X
	if f.wish.asked == "is" {
		for _, r := range roots {
			out = append(out, span{r, r.Stays() && r.From.X == first, r.Stays() && r.To.X == last})
		}
		return out
	}
	points := slices.Clone(trials)
	for _, r := range roots {
		if r.From.X == r.To.X {
			points = append(points, outcome.Trial{X: r.From.X})
			continue
		}
		points = append(points, r.From, r.To)
	}
	// A root stands between its trials, and at one value the root is the better
	// witness, so it must come first.
	slices.SortStableFunc(points, func(a, b outcome.Trial) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(math.Abs(a.F), math.Abs(b.F)))
	})
	points = slices.CompactFunc(points, func(a, b outcome.Trial) bool { return a.X == b.X })
	for i := 0; i < len(points); i++ {
		if !(points[i].F >= 0) {
			continue
		}
		from := i
		for i+1 < len(points) && points[i+1].F >= 0 {
			i++
		}
		a, b := points[from], points[i]
		a.F, b.F = 0, 0 // all of it is good, which is not to step over anything
		out = append(out, span{outcome.Root{From: a, To: b}, a.X == first, b.X == last})
	}
	return out
}

// now is the line as it stands. A guess is drawn as it is, not as one moved by
// nothing.
func (f *finding) now() FoundAt {
	at := FoundAt{}
	unit, to := shownUnit(f.line, f.q.System)
	at.Value = number(to(f.move.now))
	at.Shown.Value = show(at.Value, unit)
	f.guess(&at, f.move.now)
	f.outcomeAt(&at, f.first.Columns[f.at])
	return at
}

// value is the line at x.
func (f *finding) value(x float64) FoundAt {
	at := FoundAt{}
	unit, to := shownUnit(f.line, f.q.System)
	at.Value = number(to(x))
	at.Shown.Value = show(at.Value, unit)
	f.guess(&at, x)
	f.outcomeAt(&at, f.column(x))
	return at
}

// guess fills in the low and high that go along with a likely of x.
func (f *finding) guess(at *FoundAt, x float64) {
	set := f.move.set(x).Guess
	if set == nil || math.IsNaN(x) {
		return
	}
	unit, to := shownUnit(f.line, f.q.System)
	at.Low, at.High = number(to(set.Low)), number(to(set.High))
	at.Shown.Guess = spanWords(show(at.Low, unit), show(at.High, unit))
}
