package formula

import (
	"fmt"
	"strings"

	"thawbook/engine/diag"
)

// order sorts the slots so that each stands after those it reads, keeping the
// sheet's own order where it can. Circles are told once each, with every line on
// them in order; whatever waits for a broken line is told what it waits for.
func (b *binder) order() {
	const (
		fresh = iota
		open
		done
	)
	p := b.plan
	state := make([]int, len(p.Slots))
	// An explicit stack, because a chain of lines may be thousands long.
	type step struct{ slot, next int }
	for start := range p.Slots {
		if state[start] != fresh {
			continue
		}
		stack := []step{{start, 0}}
		state[start] = open
		for len(stack) > 0 {
			top := &stack[len(stack)-1]
			uses := p.Slots[top.slot].Uses
			if top.next == len(uses) {
				state[top.slot] = done
				b.place(top.slot)
				stack = stack[:len(stack)-1]
				continue
			}
			use := uses[top.next]
			top.next++
			switch state[use] {
			case fresh:
				state[use] = open
				stack = append(stack, step{use, 0})
			case open:
				var circle []int
				for i := range stack {
					if len(circle) > 0 || stack[i].slot == use {
						circle = append(circle, stack[i].slot)
					}
				}
				b.tellCircle(circle)
			}
		}
	}
}

// place puts a slot in the order of work, unless it or what it reads is broken.
func (b *binder) place(i int) {
	slot := b.plan.Slots[i]
	if slot.Broken {
		return
	}
	for _, use := range slot.Uses {
		if waited := b.plan.Slots[use]; waited.Broken {
			b.tell(slot, diag.List{{Code: diag.WaitsFor, Severity: diag.Error,
				Message: fmt.Sprintf("%q waits for %q", slot.ID(), waited.ID()),
				Hint:    fmt.Sprintf("it reckons again once %q is right", waited.ID())}})
			return
		}
	}
	b.plan.Order = append(b.plan.Order, i)
}

func (b *binder) tellCircle(circle []int) {
	first := b.plan.Slots[circle[0]]
	var ids []string
	for _, i := range circle {
		ids = append(ids, fmt.Sprintf("%q", b.plan.Slots[i].ID()))
		if b.plan.Slots[i] != first {
			b.plan.Slots[i].Broken = true
		}
	}
	ids = append(ids, fmt.Sprintf("%q", first.ID()))
	message := "formulas go in a circle: " + strings.Join(ids, " needs ")
	if len(circle) == 1 {
		message = fmt.Sprintf("the formula of %q needs itself", first.ID())
	}
	code, hint := diag.Circle, "give one of them a number or a guess instead"
	if first.Drawn() {
		code, hint = diag.MovesCircle, "let one of them move on its own"
		message = "guesses move with each other in a circle: " + strings.Join(ids, ", ")
	}
	b.tell(first, diag.List{{Code: code, Severity: diag.Error, Message: message, Hint: hint}})
}
