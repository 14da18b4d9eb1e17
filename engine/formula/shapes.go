package formula

import (
	"errors"
	"fmt"

	"thawbook/engine/diag"
	"thawbook/engine/draw"
	"thawbook/engine/sheet"
)

// bindShape gives a guess or a line of records its shape, and puts the guesses
// it moves with among what it uses, so that they are drawn before it.
func (b *binder) bindShape(i int) {
	slot := b.plan.Slots[i]
	line := slot.Line
	if line.Kind == sheet.Records {
		slot.Shape = draw.Records(line.Records)
	} else {
		shape, err := draw.New(line.Shape, line.Low, line.Likely, line.High, line.Floor, line.Ceiling)
		if err != nil {
			b.tell(slot, diag.List{unfit(slot, err)})
			return
		}
		slot.Shape = shape
	}
	for _, with := range line.MovesWith {
		at, ok := b.plan.byID[with.ID]
		if !ok || !b.plan.Slots[at].Drawn() || at == i {
			b.tell(slot, diag.List{{Code: diag.MovesUnknown, Severity: diag.Error,
				Message: fmt.Sprintf("%q cannot move with %q", line.ID, with.ID),
				Hint:    "name another line that is a guess or records"}})
			continue
		}
		slot.Uses = append(slot.Uses, at)
	}
}

// Drawn reports whether the slot has a number of its own in every season.
func (s *Slot) Drawn() bool {
	return s.Line.Kind == sheet.Guess || s.Line.Kind == sheet.Records
}

func unfit(slot *Slot, err error) diag.Diagnostic {
	d := diag.Diagnostic{Code: diag.GuessUnfit, Severity: diag.Error, Message: err.Error()}
	var u *draw.Unfit
	if errors.As(err, &u) {
		d.Message, d.Hint = u.Message, u.Hint
		switch u.Reason {
		case draw.Order:
			d.Code = diag.GuessOrder
		case draw.Bounds:
			d.Code = diag.OutOfBounds
		}
	}
	return d
}

// movesTogether tries out the rank correlations on a few seasons: what cannot
// hold among them cannot hold among many.
func (b *binder) movesTogether() {
	const tried = 401
	points := map[int][]float64{}
	for _, i := range b.plan.Order {
		slot := b.plan.Slots[i]
		if !slot.Drawn() {
			continue
		}
		own, err := slot.Points(1, tried, func(use int) []float64 { return points[use] })
		if err != nil {
			b.tell(slot, diag.List{{Code: diag.MovesImpossible, Severity: diag.Error, Message: err.Error(),
				Hint: "bring the correlations of moves_with nearer to 0"}})
			continue
		}
		points[i] = own
	}
}

// Points is the slot's column of n points in (0, 1), before its shape makes
// values of them: its own stream, put in step with those it moves with, whose
// points of gives. The error is a *draw.Impossible.
func (s *Slot) Points(seed uint64, n int, of func(slot int) []float64) ([]float64, error) {
	own := make([]float64, n)
	draw.NewStream(seed, s.ID(), n).Fill(own, 0)
	if len(s.Uses) == 0 {
		return own, nil
	}
	var others [][]float64
	var ranks []float64
	for k, use := range s.Uses {
		if column := of(use); column != nil {
			others, ranks = append(others, column), append(ranks, s.Line.MovesWith[k].Rank)
		}
	}
	return draw.Together(own, others, ranks, nil)
}
