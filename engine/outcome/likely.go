package outcome

import (
	"math"
	"slices"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// AtLikely works the sheet once with every guess at its likely number and every
// line of records at their median. The answer has one number a slot, NaN where
// the slot cannot be reckoned or comes to no number.
func AtLikely(plan *formula.Plan) []float64 {
	out := make([]float64, len(plan.Slots))
	for i := range out {
		out[i] = math.NaN()
	}
	get := func(slot int) float64 { return out[slot] }
	for _, i := range plan.Order {
		slot := plan.Slots[i]
		switch slot.Line.Kind {
		case sheet.Is:
			out[i] = slot.Line.Is
		case sheet.Guess:
			out[i] = slot.Line.Likely
		case sheet.Records:
			sorted := slices.Clone(slot.Line.Records)
			slices.Sort(sorted)
			out[i] = Quantile(sorted, 0.5)
		case sheet.Choose:
			out[i] = float64(slot.Place())
		case sheet.Formula:
			out[i] = formula.Eval(slot.Expr, get, make([]float64, slot.Vars), nil)
		}
	}
	return out
}
