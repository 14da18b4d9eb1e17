package engine

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

const (
	// findCells is into how many parts the limits are cut: two answers closer
	// together than that can be missed.
	findCells = 32
	// findTol is how near to come to an answer, as a share of the limits.
	findTol = 1e-7
)

// Find looks for every value of a line, between limits, at which an outcome
// reaches a target. Each value is tried over the same drawn seasons, so that two
// of them differ by the value alone. There may be no answer, one or several; with
// none, Found says which value came nearest.
//
// The error is a diag.Diagnostic for a question that cannot be asked of the
// sheet, or columns.ErrStopped.
func (b *Book) Find(q FindQuestion) (*Found, error) {
	f, err := b.newFinding(q)
	if err != nil {
		return nil, err
	}
	roots, trials := outcome.FindRoots(f.toward, outcome.RootSearch{
		Low: f.move.low, High: f.move.high, Cells: findCells, Tol: findTol * (f.move.high - f.move.low), Whole: f.move.whole})
	if f.err != nil {
		return nil, f.err
	}
	found, err := f.tell(roots, trials)
	if err != nil {
		return nil, err
	}
	return found, f.err
}

// finding is a search under way.
type finding struct {
	q       FindQuestion
	base    *Book // in which the line is already what it will be moved as
	line    *formula.Slot
	outcome *formula.Slot
	at      int // of the outcome
	move    *mover
	wish    wish
	seasons columns.Seasons
	first   *columns.Result
	room    []float64
	tried   int
	err     error
}

func (b *Book) newFinding(q FindQuestion) (*finding, error) {
	line, wrong := b.numberLine(q.Line)
	if wrong != nil {
		return nil, *wrong
	}
	out, wrong := b.numberLine(q.Outcome)
	if wrong != nil {
		return nil, *wrong
	}
	if wrong := b.hangs(out, line); wrong != nil {
		return nil, *wrong
	}
	f := &finding{q: q, base: b, line: line, outcome: out, at: b.plan.Find(q.Outcome)}
	if f.wish, wrong = wishOf(q, out); wrong != nil {
		return nil, *wrong
	}
	if f.move, wrong = b.newMover(b.plan.Find(q.Line), q); wrong != nil {
		return nil, *wrong
	}
	return f, f.start()
}

// start draws the seasons and works what the outcome hangs on once.
func (f *finding) start() (err error) {
	if f.seasons, err = f.base.keptSeasons(f.q.Options); err != nil {
		return err
	}
	f.room = make([]float64, f.seasons.N)
	var before *columns.Result
	if f.base.last != nil {
		before = f.base.last.result
	}
	f.first, err = columns.Lower(f.base.plan).Only(f.at).Run(f.seasons, before, nil)
	if err != nil || f.move.as == "guess" || f.line.Line.Kind == sheet.Is {
		return err
	}
	// A line that changes its kind is bound anew. Done once here, it is not done
	// at every value.
	base, list := f.base.Try(sheet.Edit{About: f.q.Line, Set: sheet.Set{Is: &f.move.low}})
	if list.Errors() > 0 && base == f.base {
		return list[0]
	}
	f.base = base
	return nil
}

// keptSeasons are the seasons of a question that keeps whole columns.
func (b *Book) keptSeasons(o Options) (columns.Seasons, error) {
	s, err := b.seasons(o)
	if err == nil && s.N > columns.MostKept {
		err = diag.Diagnostic{Code: diag.TooMany, Severity: diag.Error, Message: "more seasons than this question can keep",
			Hint: fmt.Sprintf("draw %s or fewer", units.Number(columns.MostKept, units.One()))}
	}
	return s, err
}

// hangs tells when nothing that out reads, near or far, is the line.
func (b *Book) hangs(out, line *formula.Slot) *diag.Diagnostic {
	if out == line {
		return badQuestion(out.ID(), "name what the value is looked for, and another line it should move", "%q cannot be found from itself", out.ID())
	}
	reads := map[int]bool{b.plan.Find(out.ID()): true}
	var near []string
	for _, i := range slices.Backward(b.plan.Order) {
		if !reads[i] {
			continue
		}
		slot := b.plan.Slots[i]
		if slot == line {
			return nil
		}
		for _, use := range slot.Uses {
			reads[use] = true
		}
		if slot.Line.Varies() || slot.Line.Kind == sheet.Is {
			near = append(near, slot.ID())
		}
	}
	slices.Reverse(near)
	hint := fmt.Sprintf("nothing moves %q", out.ID())
	if len(near) > 0 {
		hint = fmt.Sprintf("%q hangs on %s", out.ID(), strings.Join(near[:min(8, len(near))], ", "))
		if len(near) > 8 {
			hint += fmt.Sprintf(" and %d more", len(near)-8)
		}
	}
	return &diag.Diagnostic{Code: diag.DoesNotHang, Severity: diag.Error, About: out.ID(), Place: out.Line.Place, Hint: hint,
		Message: fmt.Sprintf("%q does not hang on %q", out.ID(), line.ID())}
}

// toward is how far past the target the outcome is with the line at x, NaN when
// it comes to no number there.
func (f *finding) toward(x float64) float64 {
	c := f.column(x)
	if c == nil {
		return math.NaN()
	}
	reached := f.wish.reached(c, f.room)
	return f.wish.toward(reached) + 0*reached // an infinity is no number
}

// column is the outcome with the line at x, nil when the line cannot be x or the
// search is over.
func (f *finding) column(x float64) *columns.Column {
	if f.err != nil {
		return nil
	}
	book, list := f.base.Try(sheet.Edit{About: f.q.Line, Set: f.move.set(x)})
	if len(list) > 0 || book.plan.Slots[f.at].Broken {
		return nil
	}
	var c *columns.Column
	c, f.err = columns.Lower(book.plan).One(f.at, f.seasons, f.first)
	f.tried++
	if tell := f.q.Progress; f.err == nil && tell != nil && !tell(min(f.tried, findCells)*f.seasons.N, findCells*f.seasons.N) {
		f.err = columns.ErrStopped
	}
	return c
}
