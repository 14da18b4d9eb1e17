package engine

import (
	"errors"
	"fmt"

	"thawbook/engine/diag"
	"thawbook/engine/draw"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// GuessQuestion is a guess in the making, about a line or cell of the sheet.
type GuessQuestion struct {
	About string `json:"about"`
	// Low, Likely and High are in the line's unit.
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
	// Inside is in how many seasons of 10 it falls between Low and High, above 0
	// and below 10; 0 means the 8 that a sheet means.
	Inside float64 `json:"inside"`
}

// GuessShape is what a guess in the making would do.
type GuessShape struct {
	// Guess is what the sheet would hold: Low and High moved to where 8 seasons
	// of 10 fall between them. Nil when no shape can carry the numbers.
	Guess *GuessView `json:"guess,omitempty"`
	// Curve is the density to draw, its highest 1; empty for a certain number.
	Curve []CurvePoint `json:"curve"`
	// Says tells what the guess means, in seasons and with its unit; "" when
	// there is no Guess.
	Says string `json:"says"`
	// Message and Hint say why there is no Guess; Nearest is one that works.
	Message string     `json:"message,omitempty"`
	Hint    string     `json:"hint,omitempty"`
	Nearest *GuessView `json:"nearest,omitempty"`
}

// CurvePoint is a point of a density: At in the line's unit, Height of the
// highest.
type CurvePoint struct {
	At     float64 `json:"at"`
	Height float64 `json:"height"`
}

const curvePoints = 81

// Shape tells what a guess would do without putting it into the sheet. The error
// is a diag.Diagnostic for a line that is not there or is no number, and for an
// Inside that is no number of seasons of 10. Says is in the system's units, all
// numbers are in the line's.
func (b *Book) Shape(q GuessQuestion, system units.System) (*GuessShape, error) {
	at := b.plan.Find(q.About)
	if at < 0 {
		return nil, diag.Diagnostic{Code: diag.UnknownName, Severity: diag.Error, Message: fmt.Sprintf("no line is called %q", q.About)}
	}
	slot := b.plan.Slots[at]
	if slot.Line.Kind == sheet.Choose {
		return nil, diag.Diagnostic{Code: diag.WrongKind, Severity: diag.Error, About: q.About, Message: fmt.Sprintf("%q is a choice, not a number", q.About)}
	}
	if q.Inside == 0 {
		q.Inside = usualInside
	}
	if !(q.Inside > 0 && q.Inside < 10) {
		return nil, diag.Diagnostic{Code: diag.OutOfBounds, Severity: diag.Error, About: q.About, Message: "the seasons of 10 must be above 0 and below 10"}
	}
	made, guess, err := carry(slot.Line, q)
	if err != nil {
		out := &GuessShape{Curve: []CurvePoint{}, Message: err.Error(), Nearest: nearestGuess(slot.Line, q, err)}
		var u *draw.Unfit
		if errors.As(err, &u) {
			out.Message, out.Hint = u.Message, u.Hint
		}
		return out, nil
	}
	out := &GuessShape{Guess: &guess, Curve: []CurvePoint{}, Says: saysOf(made, slot, system)}
	for _, p := range draw.Curve(made, curvePoints) {
		out.Curve = append(out.Curve, CurvePoint{p.At, p.Height})
	}
	return out, nil
}

const usualInside = 8

// carry makes the shape of a guess in the making, and the guess a sheet would
// hold for it. A shape of the author's own keeps its own meaning of low and high.
func carry(line *sheet.Line, q GuessQuestion) (draw.Shape, GuessView, error) {
	three := [3]float64{q.Low, q.Likely, q.High}
	if line.Shape == "" || line.Shape == "metalog" {
		var err error
		if three, err = draw.Outer(q.Low, q.Likely, q.High, q.Inside/10, line.Floor, line.Ceiling); err != nil {
			return nil, GuessView{}, err
		}
	}
	made, err := draw.New(line.Shape, three[0], three[1], three[2], line.Floor, line.Ceiling)
	return made, GuessView{three[0], three[1], three[2]}, err
}

// nearestGuess follows the advice of a refusal until a guess works; nil when the
// advice ends before.
func nearestGuess(line *sheet.Line, q GuessQuestion, err error) *GuessView {
	for range 4 {
		var u *draw.Unfit
		if !errors.As(err, &u) {
			return nil
		}
		switch {
		case u.Which == "low":
			q.Low = u.Move
		case u.Which == "likely":
			q.Likely = u.Move
		case u.Which == "high":
			q.High = u.Move
		case u.Reason == draw.Order:
			q.Low, q.Likely, q.High = inOrder(q.Low, q.Likely, q.High)
		default:
			return nil
		}
		var guess GuessView
		if _, guess, err = carry(line, q); err == nil {
			return &guess
		}
	}
	return nil
}

func inOrder(a, b, c float64) (low, middle, high float64) {
	low, high = min(a, b, c), max(a, b, c)
	return low, max(min(a, b), min(max(a, b), c)), high
}

// saysOf tells a shape in seasons: the one in 10 at either end, and the one in
// 100.
func saysOf(s draw.Shape, slot *formula.Slot, system units.System) string {
	unit, convert := shownUnit(slot, system)
	at := func(share float64) string { return units.Show(convert(s.Quantile(share)), unit) }
	if s.Quantile(0.1) == s.Quantile(0.9) {
		return fmt.Sprintf("%s in every season.", at(0.5))
	}
	return fmt.Sprintf("8 seasons of 10 fall between %s and %s, as many above %s as below. 1 season in 100 is under %s, 1 in 100 over %s.",
		at(0.1), at(0.9), at(0.5), at(0.01), at(0.99))
}
