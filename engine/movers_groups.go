package engine

import (
	"slices"

	"thawbook/engine/formula"
)

// group is a guess, or guesses that move together and so cannot be drawn apart
// from each other.
type group struct {
	// slots are those the outcome hangs on by formulas, in sheet order.
	slots []int
	// lines are the ids of all, those too that only others move with.
	lines map[string]bool
}

// groups gathers the guesses and records that slot hangs on, in sheet order of
// their first. plan holds only what slot reads.
func groups(plan *formula.Plan, slot int) []group {
	ties := tiesOf(plan)
	reaches := hangsOn(plan, slot)
	var out []group
	seen := map[int]bool{}
	for _, i := range slices.Sorted(slices.Values(plan.Order)) {
		if !plan.Slots[i].Drawn() || seen[i] {
			continue
		}
		g := group{lines: map[string]bool{}}
		tied := gather(ties, i, seen)
		slices.Sort(tied)
		for _, at := range tied {
			g.lines[plan.Slots[at].ID()] = true
			if reaches[at] {
				g.slots = append(g.slots, at)
			}
		}
		if len(g.slots) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// tiesOf leads from a guess to those that it moves with or that move with it.
func tiesOf(plan *formula.Plan) map[int][]int {
	ties := map[int][]int{}
	for _, i := range plan.Order {
		if !plan.Slots[i].Drawn() {
			continue
		}
		for _, to := range plan.Slots[i].Uses {
			ties[i], ties[to] = append(ties[i], to), append(ties[to], i)
		}
	}
	return ties
}

// gather lists every guess tied to i, however far, that was not seen yet.
func gather(ties map[int][]int, i int, seen map[int]bool) []int {
	var tied []int
	for next := []int{i}; len(next) > 0; {
		at := next[len(next)-1]
		next = next[:len(next)-1]
		if !seen[at] {
			seen[at] = true
			tied = append(tied, at)
			next = append(next, ties[at]...)
		}
	}
	return tied
}

// hangsOn marks the slots that formulas lead to from slot. What a guess moves
// with is not among them.
func hangsOn(plan *formula.Plan, slot int) []bool {
	reached := make([]bool, len(plan.Slots))
	reached[slot] = true
	for _, i := range slices.Backward(plan.Order) {
		if !reached[i] || plan.Slots[i].Drawn() {
			continue
		}
		for _, use := range plan.Slots[i].Uses {
			reached[use] = true
		}
	}
	return reached
}
