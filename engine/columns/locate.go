package columns

import (
	"thawbook/engine/formula"
)

// Warning says that a step of a slot's formula did not come to a number,
// although what it was given were numbers.
type Warning struct {
	// Node is the step, with its span in the formula.
	Node *formula.Node
	// Seasons counts how many seasons it happened in.
	Seasons int
	// Sample holds what the step was given in the first of them.
	Sample []float64
}

// finder runs one season of a formula and remembers the first step that made
// something else than a number out of numbers. Sides of a condition that are not
// taken are not worked, so they cannot warn.
type finder struct {
	get    func(slot int) float64
	vars   []float64
	node   *formula.Node
	sample []float64
	values map[*formula.Node]float64
}

func (f *finder) eval(expr *formula.Node) float64 {
	f.values = map[*formula.Node]float64{}
	return formula.Eval(expr, f.get, f.vars, f.step)
}

func (f *finder) step(n *formula.Node, x float64) {
	f.values[n] = x
	if f.node != nil || x*0 == 0 || len(n.Args) == 0 {
		return
	}
	var given []float64
	for _, a := range n.Args {
		v, worked := f.values[a]
		if !worked {
			continue
		}
		if v*0 != 0 {
			return // it was no number before
		}
		given = append(given, v)
	}
	f.node, f.sample = n, given
}

// locate looks at every suspect season of the chunk again, step by step.
func (w *worker) locate(i, n int) {
	slot := w.p.Plan.Slots[i]
	for k := range n {
		if !w.suspect[k] {
			continue
		}
		w.suspect[k] = false
		find := &finder{get: func(s int) float64 { return w.value(s, k) }, vars: w.lets(slot.Vars)}
		find.eval(slot.Expr)
		if find.node != nil {
			w.warn(i, find, 1)
		}
	}
}

// value is a slot's number in season k of the chunk.
func (w *worker) value(slot, k int) float64 {
	if c := w.chunk[slot]; c != nil {
		return c[k]
	}
	return w.steady(slot)
}

func (w *worker) warn(i int, f *finder, seasons int) {
	for k := range w.warnings[i] {
		if w.warnings[i][k].Node == f.node {
			w.warnings[i][k].Seasons += seasons
			return
		}
	}
	w.warnings[i] = append(w.warnings[i], Warning{Node: f.node, Seasons: seasons, Sample: f.sample})
}
