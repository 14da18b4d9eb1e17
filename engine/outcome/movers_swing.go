package outcome

import "thawbook/engine/formula"

// LikelyBut is the number a slot comes to when the slots in but stand at the
// numbers given there and every other guess at its likely one. likely is what
// AtLikely gave for the same sheet; it is only read, and only what hangs on the
// slots in but is worked again. NaN where the slot comes to no number.
func LikelyBut(plan *formula.Plan, likely []float64, but map[int]float64, slot int) float64 {
	changed := map[int]float64{}
	get := func(i int) float64 {
		if x, ok := changed[i]; ok {
			return x
		}
		return likely[i]
	}
	for _, i := range plan.Order {
		if x, ok := but[i]; ok {
			changed[i] = x
		} else if s := plan.Slots[i]; s.Expr != nil && readsAny(s, changed) {
			changed[i] = formula.Eval(s.Expr, get, make([]float64, s.Vars), nil)
		}
	}
	return get(slot)
}

func readsAny(slot *formula.Slot, changed map[int]float64) bool {
	for _, use := range slot.Uses {
		if _, ok := changed[use]; ok {
			return true
		}
	}
	return false
}
