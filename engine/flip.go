package engine

import (
	"math"

	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// flipCells is into how many steps the limits are cut.
const flipCells = 20

// FindFlip looks for the values of a shared number at which the middle of the
// difference between two scenarios changes sign, and for how far around it is in
// the balance. Two changes of sign within one of 20 equal steps may be missed.
// The error is a diag.Diagnostic when the question cannot be asked as it stands,
// or columns.ErrStopped.
func FindFlip(first, second *Book, q FlipQuestion, o Options) (*Flip, error) {
	f, err := newFlipping(first, second, q, o)
	if err != nil {
		return nil, err
	}
	search := outcome.RootSearch{Low: f.low, High: f.high, Cells: flipCells, Tol: (f.high - f.low) * 1e-6}
	middle := cuts(f, search, func(d outcome.Difference) float64 { return d.P50 })
	edges := append(cuts(f, search, func(d outcome.Difference) float64 { return d.P10 }),
		cuts(f, search, func(d outcome.Difference) float64 { return d.P90 })...)
	sides := f.stretches(middle, sideOf)
	balance := f.stretches(edges, func(d outcome.Difference) int {
		if d.P10 < 0 && d.P90 > 0 {
			return flipBalance
		}
		return flipClear
	})
	out := f.tell(sides, balance)
	if tell, all := o.Progress, usualTries*f.seasons.N; f.err == nil && tell != nil && !tell(all, all) {
		f.err = columns.ErrStopped
	}
	if f.err != nil {
		return nil, f.err
	}
	return out, nil
}

// flipping is a search for flips under way.
type flipping struct {
	question FlipQuestion
	options  Options
	seasons  columns.Seasons
	books    [2]*Book // with the line held at a number
	line     *formula.Slot
	factor   [2]float64 // from the line's unit in the first to that in each
	offset   [2]float64
	outcome  *beside
	short    []string
	now      float64
	low      float64
	high     float64
	tried    map[float64]outcome.Difference
	room     []float64
	err      error
}

// at is the difference with the line held at x, in the first's unit. Once a run
// failed or was stopped, every difference has no number.
func (f *flipping) at(x float64) outcome.Difference {
	if d, ok := f.tried[x]; ok {
		return d
	}
	for k := range f.books {
		if f.err == nil {
			f.err = f.hold(k, x)
		}
	}
	if f.err != nil {
		return outcome.Difference{Summary: outcome.Summarise(nil, nil), More: math.NaN(), Less: math.NaN()}
	}
	d := outcome.Differ(f.outcome.values[0], f.outcome.values[1], f.room)
	f.tried[x] = d
	return d
}

// hold works the outcome in one book with the line held at x.
func (f *flipping) hold(k int, x float64) error {
	b := f.books[k]
	f.books[k] = b.holding(f.question.About, x*f.factor[k]+f.offset[k])
	r, err := f.books[k].run(f.seasons, nil)
	if err != nil {
		return err
	}
	if k == 1 && !f.progress(len(f.tried)) {
		return columns.ErrStopped
	}
	f.outcome.values[k] = r.valuesIn(f.question.Outcome, f.outcome.unit())
	return nil
}

// usualTries is more values than are tried as a rule; how many it will be is not
// known beforehand.
const usualTries = 100

func (f *flipping) progress(tries int) bool {
	tell := f.options.Progress
	return tell == nil || tell(tries*f.seasons.N, max(usualTries, tries+1)*f.seasons.N)
}

// cuts are the values at which part of the difference meets or steps over 0.
func cuts(f *flipping, s outcome.RootSearch, part func(outcome.Difference) float64) []float64 {
	roots, _ := outcome.FindRoots(func(x float64) float64 { return part(f.at(x)) }, s)
	var out []float64
	for _, r := range roots {
		if r.Stays() {
			out = append(out, r.From.X, r.To.X)
			continue
		}
		out = append(out, (r.From.X+r.To.X)/2)
	}
	return out
}

// Sides of a stretch: who comes to more, or how clear it is.
const (
	flipFirst = iota
	flipSecond
	flipEven
	flipNoNumber
	flipBalance
	flipClear
)

func sideOf(d outcome.Difference) int {
	switch {
	case d.P50 > 0:
		return flipSecond
	case d.P50 < 0:
		return flipFirst
	case d.N == 0:
		return flipNoNumber
	}
	return flipEven
}

// flipReach is a stretch of values that lie on one side.
type flipReach struct {
	from, to float64
	side     int
}

// conversionOf is how the line's unit in the first becomes that in another.
func conversionOf(from, to *formula.Slot) (factor, offset float64) {
	factor, offset, _ = units.Conversion(from.Unit, to.Unit)
	return factor, offset
}
