package engine

import (
	"fmt"
	"math"
	"slices"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// mover gives a line other values.
type mover struct {
	line *sheet.Line
	// as is what the line becomes: "number", "guess" (also for records) or
	// "formula", a number in the place of a formula.
	as string
	// now is the line's number, its likely or the middle of its records; for a
	// formula what it comes to at the likely numbers. NaN when it comes to none.
	now float64
	// along takes a number of the line to where it goes when now goes to x.
	along func(q, x float64) float64
	whole bool
	// low and high are the limits.
	low, high float64
}

// newMover readies a line to be moved between the limits asked for, or the usual
// ones.
func (b *Book) newMover(i int, q FindQuestion) (*mover, *diag.Diagnostic) {
	slot := b.plan.Slots[i]
	m := &mover{line: slot.Line, as: "number"}
	switch slot.Line.Kind {
	case sheet.Is:
		m.now = slot.Line.Is
	case sheet.Formula:
		m.as, m.now = "formula", outcome.AtLikely(b.plan)[i]
	case sheet.Guess:
		m.as, m.now = "guess", slot.Line.Likely
	case sheet.Records:
		m.as, m.now = "guess", outcome.AtLikely(b.plan)[i]
	}
	if q.Certain && m.as == "guess" {
		m.as = "number"
	}
	m.whole = m.as != "guess" && slot.Unit.Dim().IsCount() && math.Trunc(m.now) == m.now
	if wrong := m.limits(slot, q); wrong != nil {
		return nil, wrong
	}
	if m.as == "guess" {
		m.along = spread(slot, m.now, m.low, m.high)
	}
	return m, nil
}

// set is the line at x.
func (m *mover) set(x float64) sheet.Set {
	if m.as != "guess" {
		return sheet.Set{Is: &x}
	}
	if m.line.Kind == sheet.Records {
		records := slices.Clone(m.line.Records)
		for k, q := range records {
			records[k] = m.along(q, x)
		}
		return sheet.Set{Records: records}
	}
	return sheet.Set{Guess: &sheet.GuessValue{Low: m.along(m.line.Low, x), Likely: x, High: m.along(m.line.High, x)}}
}

// spread is how the other numbers of a guess go along when its likely goes from
// now to x, so that the spread stays in proportion where that means something:
//
//   - a guess of the usual shape between a floor and a ceiling: the odds of every
//     number, its distance from the floor over that to the ceiling, change by one
//     factor, so that nothing leaves the bounds;
//   - above a floor, or else below a ceiling: the distance from it changes by one
//     factor;
//   - without bounds, all on one side of 0 and kept there by the limits: every
//     number changes by one factor;
//   - otherwise, as for a temperature: every number moves as far.
//
// The usual shape is the same after any of these on the scale it is drawn on, so
// a guess that fits goes on fitting.
func spread(slot *formula.Slot, now, low, high float64) func(q, x float64) float64 {
	l := slot.Line
	least, most := l.Low, l.High
	if l.Kind == sheet.Records {
		least, most = slices.Min(l.Records), slices.Max(l.Records)
	}
	switch {
	case l.Floor != nil && l.Ceiling != nil && l.Shape == "" && now > *l.Floor && now < *l.Ceiling:
		return byOdds(now, *l.Floor, *l.Ceiling)
	case l.Floor != nil && now > *l.Floor:
		return byDistance(now, *l.Floor)
	case l.Ceiling != nil && now < *l.Ceiling:
		return byDistance(now, *l.Ceiling)
	case !slot.Unit.IsAbsolute() && (least > 0 && low > 0 || most < 0 && high < 0):
		return byDistance(now, 0)
	}
	return func(q, x float64) float64 { return q + (x - now) }
}

func byDistance(now, from float64) func(q, x float64) float64 {
	return func(q, x float64) float64 { return from + (q-from)*((x-from)/(now-from)) }
}

func byOdds(now, floor, ceiling float64) func(q, x float64) float64 {
	odds := func(q float64) float64 { return (q - floor) / (ceiling - q) }
	return func(q, x float64) float64 {
		if q >= ceiling || x >= ceiling {
			return ceiling
		}
		o := odds(q) * odds(x) / odds(now)
		return floor + (ceiling-floor)*(o/(1+o))
	}
}

// limits settles where to look.
func (m *mover) limits(slot *formula.Slot, q FindQuestion) *diag.Diagnostic {
	id := slot.ID()
	if q.Low == nil || q.High == nil {
		if wrong := m.usual(slot); wrong != nil {
			return wrong
		}
	} else {
		m.low, m.high = *q.Low, *q.High
		if wrong := m.within(slot); wrong != nil {
			return wrong
		}
	}
	if m.whole {
		m.low, m.high = math.Ceil(m.low), math.Floor(m.high)
	}
	if !(m.low < m.high) || math.IsInf(m.high-m.low, 0) {
		return badQuestion(id, "give a lower and a higher number to look between", "there is nothing to try for %q from %s to %s",
			id, units.Show(m.low, slot.Unit), units.Show(m.high, slot.Unit))
	}
	return nil
}

// within refuses limits outside the line's own bounds.
func (m *mover) within(slot *formula.Slot) *diag.Diagnostic {
	floor, ceiling := slot.Line.Floor, slot.Line.Ceiling
	if floor != nil && m.low < *floor || ceiling != nil && m.high > *ceiling {
		return &diag.Diagnostic{Code: diag.OutOfBounds, Severity: diag.Error, About: slot.ID(), Place: slot.Line.At("floor"),
			Message: fmt.Sprintf("the limits %s to %s go beyond the bounds of %q", units.Show(m.low, slot.Unit), units.Show(m.high, slot.Unit), slot.ID()),
			Hint:    "keep them between the line's floor and ceiling"}
	}
	return nil
}

// hair is how far inside floor and ceiling a guess is kept: at a bound itself it
// would have no spread at all.
const hair = 0.01

// usual sets the limits of a question that gives none.
func (m *mover) usual(slot *formula.Slot) *diag.Diagnostic {
	floor, ceiling := slot.Line.Floor, slot.Line.Ceiling
	switch {
	case floor != nil && ceiling != nil:
		m.low, m.high = *floor, *ceiling
		if m.as == "guess" {
			inset := hair * (m.high - m.low)
			m.low, m.high = m.low+inset, m.high-inset
		}
		return nil
	case slot.Unit.IsAbsolute():
		const degree = 5.0 / 9 // Fahrenheit, in kelvin
		far := 50 * degree / slot.Unit.Difference().Scale()
		m.low, m.high = m.now-far, m.now+far
	case m.now == 0 || math.IsNaN(m.now):
		return badQuestion(slot.ID(), "give the limits to look between", "%q has no half and no double to look between", slot.ID())
	default:
		m.low, m.high = min(m.now/2, m.now*2), max(m.now/2, m.now*2)
	}
	// A bound keeps a guess out, so the half way to it stands for the half.
	if floor != nil && m.low <= *floor {
		m.low = *floor + m.halfway(*floor)
	}
	if ceiling != nil && m.high >= *ceiling {
		m.high = *ceiling + m.halfway(*ceiling)
	}
	return nil
}

// halfway is how far beyond a bound a guess may go: half of the way back to now.
func (m *mover) halfway(bound float64) float64 {
	if m.as == "guess" {
		return (m.now - bound) / 2
	}
	return 0
}
