package columns

import "slices"

// Only is the program that works one slot and whatever that reads, and nothing
// else: the columns of the other slots are nil in its results.
func (p *Program) Only(slot int) *Program {
	reads := make([]bool, len(p.Plan.Slots))
	reads[slot] = true
	plan := *p.Plan
	plan.Order = nil
	for _, i := range slices.Backward(p.Plan.Order) {
		if !reads[i] {
			continue
		}
		plan.Order = append(plan.Order, i)
		for _, use := range plan.Slots[i].Uses {
			reads[use] = true
		}
	}
	slices.Reverse(plan.Order)
	out := *p
	out.Plan = &plan
	return &out
}

// One works the column of one slot, which must be one that can be reckoned.
// Columns of the runs in from whose stamps hold are shared, whichever of the
// runs has them; what else has to be worked in between is not kept. The column
// has no Warnings.
func (p *Program) One(slot int, s Seasons, from ...*Result) (*Column, error) {
	r := &Result{Plan: p.Plan, Seasons: s, Columns: make([]*Column, len(p.Plan.Slots))}
	stamps := p.stamps(s)
	wanted := make([]bool, len(p.Plan.Slots))
	wanted[slot] = true
	var todo []int
	for _, i := range slices.Backward(p.Plan.Order) {
		if !wanted[i] {
			continue
		}
		if r.Columns[i] = known(stamps[i], from); r.Columns[i] != nil {
			continue
		}
		r.Columns[i] = &Column{stamp: stamps[i]}
		todo = append(todo, i)
		for _, use := range p.Plan.Slots[i].Uses {
			wanted[use] = true
		}
	}
	slices.Reverse(todo)
	w := p.worker(s)
	w.quiet = true
	err := w.work(r, todo, func(i int) bool { return i == slot }, nil)
	return r.Columns[slot], err
}

func known(s stamp, from []*Result) *Column {
	for _, r := range from {
		if c := r.byStamp[s]; c != nil {
			return c
		}
	}
	return nil
}
