package engine

import (
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

func newFlipping(first, second *Book, q FlipQuestion, o Options) (*flipping, error) {
	books := []*Book{first, second}
	if err := comparable(books); err != nil {
		return nil, err
	}
	s, err := first.seasons(o)
	if err != nil {
		return nil, err
	}
	if s.N > columns.MostKept {
		return nil, tooManySeasons()
	}
	f := &flipping{question: q, options: o, seasons: s, short: shortTitles(books), tried: map[float64]outcome.Difference{}, room: make([]float64, 2*s.N)}
	line, wrong := findBeside(books, q.About)
	if wrong == nil {
		f.outcome, wrong = findBeside(books, q.Outcome)
	}
	if wrong == nil {
		wrong = holdable(books, line)
	}
	if wrong == nil {
		f.line = line.slots[0]
		wrong = f.limits()
	}
	if wrong != nil {
		return nil, *wrong
	}
	hangs := false
	for k, b := range books {
		f.factor[k], f.offset[k] = conversionOf(f.line, line.slots[k])
		f.books[k] = b.holding(q.About, f.now*f.factor[k]+f.offset[k])
		f.books[k].towards([]string{q.Outcome})
		hangs = hangs || slices.Contains(f.books[k].plan.Order, f.books[k].plan.Find(q.About))
	}
	if !hangs {
		return nil, diag.Diagnostic{Code: diag.DoesNotHang, Severity: diag.Error, About: q.Outcome,
			Message: "\"" + q.Outcome + "\" does not hang on \"" + q.About + "\"", Hint: "name a number it is worked from"}
	}
	return f, nil
}

// holding is the book with one line held at a number for all seasons.
func (b *Book) holding(id string, x float64) *Book {
	s := mixed(b.sheet, func(l *sheet.Line) *sheet.Line {
		if l.ID != id {
			return nil
		}
		held := *l
		held.Kind, held.Is = sheet.Is, x
		return &held
	})
	return b.variant(s, b.last)
}

// holdable says why a line cannot be held at one number.
func holdable(books []*Book, line *beside) *diag.Diagnostic {
	for k, slot := range line.slots {
		if slot.Line.Kind != sheet.Formula {
			continue
		}
		hint := "ask about a number or a guess that both scenarios have"
		if from := drawnFrom(books[k].plan, slot); len(from) > 0 {
			hint = "ask about what it is worked from: " + strings.Join(from, ", ")
		}
		wrong := incomparable(hint, "%q is worked out by a formula, so it cannot be held", line.id)
		wrong.About, wrong.Place = line.id, slot.Line.At("formula")
		return &wrong
	}
	return nil
}

// drawnFrom names a few of the lines a slot reads.
func drawnFrom(plan *formula.Plan, slot *formula.Slot) []string {
	var ids []string
	for _, use := range slot.Uses {
		if len(ids) < 4 {
			ids = append(ids, plan.Slots[use].ID())
		}
	}
	return ids
}

// limits takes the limits asked for or finds usual ones, within the line's
// bounds.
func (f *flipping) limits() *diag.Diagnostic {
	l := f.line.Line
	f.now = likelyOf(l)
	low, high, ok := usualLimits(l, f.line.Unit, f.now)
	if f.question.Low != nil {
		low = *f.question.Low
	}
	if f.question.High != nil {
		high = *f.question.High
	}
	ok = ok || f.question.Low != nil && f.question.High != nil
	wrong := func(code diag.Code, hint, message string) *diag.Diagnostic {
		return &diag.Diagnostic{Code: code, Severity: diag.Error, About: l.ID, Message: message, Hint: hint}
	}
	switch {
	case !ok:
		return wrong(diag.BadQuestion, "say from where to where", "there are no usual limits for \""+l.ID+"\"")
	case !(low < high) || math.IsInf(high-low, 0):
		return wrong(diag.BadQuestion, "give the lower limit first", "the limits "+units.Show(low, f.line.Unit)+" and "+units.Show(high, f.line.Unit)+" hold nothing between them")
	case l.Floor != nil && low < *l.Floor || l.Ceiling != nil && high > *l.Ceiling:
		return wrong(diag.OutOfBounds, "keep the limits between the line's floor and ceiling", "the limits reach beyond what \""+l.ID+"\" may be")
	}
	f.low, f.high = low, high
	return nil
}

// likelyOf is what a line that is no formula is likely to be.
func likelyOf(l *sheet.Line) float64 {
	switch l.Kind {
	case sheet.Guess:
		return l.Likely
	case sheet.Records:
		sorted := slices.Sorted(slices.Values(l.Records))
		return outcome.Quantile(sorted, 0.5)
	}
	return l.Is
}

// usualLimits are those FlipQuestion describes; not ok when there are none.
func usualLimits(l *sheet.Line, u units.Unit, now float64) (low, high float64, ok bool) {
	low, high = min(0, 3*now), max(0, 3*now)
	if l.Kind == sheet.Guess {
		low, high = min(low, l.Low), max(high, l.High)
	}
	ok = now != 0 && !u.IsAbsolute()
	if l.Floor != nil && l.Ceiling != nil {
		low, high, ok = *l.Floor, *l.Ceiling, true
	}
	if l.Floor != nil {
		low = max(low, *l.Floor)
	}
	if l.Ceiling != nil {
		high = min(high, *l.Ceiling)
	}
	return low, high, ok
}
