package columns

import (
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// place says where a step finds or leaves a number.
type place uint8

const (
	fixed  place = iota // the same in every season, known when lowering
	once                // the same in every season, worked before the columns
	column              // a slot's column
	scrap               // a scrap column of the formula
)

type operand struct {
	place place
	at    int
	x     float64
}

// step is one pass over a column.
type step struct {
	op   formula.Op
	fn   *formula.Function
	dst  int // scrap column
	args []operand
	// guard says the result may stop being a number although the inputs are.
	guard bool
}

// routine is one formula, lowered.
type routine struct {
	steps  []step
	result operand
	once   []*formula.Node // workings with no drawn number in them
	scraps int
	widest int // most arguments of any step
}

// Program is a plan lowered for running. It is immutable.
type Program struct {
	Plan     *formula.Plan
	uniform  []bool // the slot has one number for all seasons
	routines []*routine
}

// Lower prepares a bound plan. Workings that depend on no guess and no record
// are worked once for all seasons instead of once a season.
func Lower(plan *formula.Plan) *Program {
	p := &Program{Plan: plan, uniform: make([]bool, len(plan.Slots)), routines: make([]*routine, len(plan.Slots))}
	for _, i := range plan.Order {
		slot := plan.Slots[i]
		switch slot.Line.Kind {
		case sheet.Is, sheet.Choose:
			p.uniform[i] = true
		case sheet.Formula:
			p.uniform[i] = p.steady(slot.Expr)
			if !p.uniform[i] {
				p.routines[i] = p.lower(slot.Expr)
			}
		}
	}
	return p
}

// steady reports whether n is the same in every season.
func (p *Program) steady(n *formula.Node) bool {
	steady := true
	n.Walk(func(m *formula.Node) {
		if m.Op == formula.Ref && !p.uniform[m.Slot] {
			steady = false
		}
	})
	return steady
}

// lowering builds one routine. Scrap columns are handed out as a stack and
// given back once read; those that hold a let stay.
type lowering struct {
	p    *Program
	r    *routine
	free []int
	vars map[int]operand
	kept map[int]bool
}

func (p *Program) lower(expr *formula.Node) *routine {
	l := &lowering{p: p, r: &routine{}, vars: map[int]operand{}, kept: map[int]bool{}}
	l.r.result = l.node(expr)
	return l.r
}

func (l *lowering) node(n *formula.Node) operand {
	switch {
	case n.Op == formula.Const:
		return operand{place: fixed, x: n.Value}
	case n.Op == formula.Var:
		return l.vars[n.Slot]
	case n.Op == formula.Let && l.p.steady(n.Args[0]):
		// Put in place of its name, so that what hangs on it alone is steady too.
		return l.node(replace(n.Args[1], n.Slot, n.Args[0]))
	case n.Op == formula.Let:
		value := l.node(n.Args[0])
		if value.place == scrap {
			l.kept[value.at] = true
		}
		l.vars[n.Slot] = value
		return l.node(n.Args[1])
	case l.p.steady(n) && !hasVar(n):
		l.r.once = append(l.r.once, n)
		return operand{place: once, at: len(l.r.once) - 1}
	case n.Op == formula.Ref:
		return operand{place: column, at: n.Slot}
	}
	return l.step(n)
}

// replace puts value where n names the let variable slot.
func replace(n *formula.Node, slot int, value *formula.Node) *formula.Node {
	if n.Op == formula.Var && n.Slot == slot {
		return value
	}
	if !hasVar(n) {
		return n
	}
	out := *n
	out.Args = make([]*formula.Node, len(n.Args))
	for i, a := range n.Args {
		out.Args[i] = replace(a, slot, value)
	}
	return &out
}

func hasVar(n *formula.Node) bool {
	found := false
	n.Walk(func(m *formula.Node) { found = found || m.Op == formula.Var })
	return found
}

// step lowers n, which is not the same in every season.
func (l *lowering) step(n *formula.Node) operand {
	if n.Op == formula.Call && n.Fn.Scales && l.p.steadyRest(n) {
		n = inProportion(n)
	}
	s := step{op: n.Op, fn: n.Fn}
	for _, a := range n.Args {
		s.args = append(s.args, l.node(a))
	}
	for _, a := range s.args {
		if a.place == scrap && !l.kept[a.at] {
			l.free = append(l.free, a.at)
		}
	}
	s.guard = n.Op == formula.Div || n.Op == formula.Pow || n.Op == formula.Call
	s.dst = l.take(s)
	l.r.steps = append(l.r.steps, s)
	l.r.widest = max(l.r.widest, len(s.args))
	return operand{place: scrap, at: s.dst}
}

// steadyRest reports whether all arguments of n but the first are the same in
// every season.
func (p *Program) steadyRest(n *formula.Node) bool {
	for _, a := range n.Args[1:] {
		if !p.steady(a) || hasVar(a) {
			return false
		}
	}
	return true
}

// inProportion writes fn(x, rest…) as x × fn(1, rest…), whose second factor is
// worked once for all seasons.
func inProportion(n *formula.Node) *formula.Node {
	one := *n
	one.Args = append([]*formula.Node{{Op: formula.Const, Value: 1}}, n.Args[1:]...)
	return &formula.Node{Op: formula.Mul, Args: []*formula.Node{n.Args[0], &one}}
}

// take hands out a scrap column. A step may write over an input, since it reads
// each season before it writes it; only sums read their later inputs too late.
func (l *lowering) take(s step) int {
	late := map[int]bool{}
	if s.op == formula.Sum || s.op == formula.Mean {
		for _, a := range s.args[1:] {
			late[a.at] = late[a.at] || a.place == scrap
		}
	}
	for k := len(l.free) - 1; k >= 0; k-- {
		if at := l.free[k]; !late[at] {
			l.free = append(l.free[:k], l.free[k+1:]...)
			return at
		}
	}
	l.r.scraps++
	return l.r.scraps - 1
}
