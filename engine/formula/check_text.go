package formula

import (
	"slices"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// Reading is what a formula in the making comes to.
type Reading struct {
	// Comes is the unit it comes to as it stands, "yes/no" for a condition; "" when
	// it does not come to a number at all.
	Comes string
	// Expr is the working in the line's unit, Vars the room its lets need; nil
	// when something is wrong.
	Expr *Node
	Vars int
}

// Read reads a formula as if it stood at the line or cell about, without putting
// it there. The list tells what is wrong with it, by its spans, and whether it
// would go in a circle. Of a line that is not there yet no unit is expected.
func (p *Plan) Read(about, text string) (Reading, diag.List) {
	parsed, list := parse(text)
	if len(list) > 0 {
		return Reading{}, list
	}
	at := p.Find(about)
	c := &checker{p: parsed, functions: functionTable(),
		names: &names{slots: p.Slots, byID: p.byID, tables: p.table, currency: p.Sheet.Money}}
	if at >= 0 {
		c.row = p.rowOf(p.Slots[at].Line)
	}
	expr := c.check(parsed.root)
	if expr == nil {
		return Reading{}, c.list
	}
	r := Reading{Comes: comesTo(expr), Vars: c.nextVar}
	if at >= 0 && len(c.list) == 0 {
		slot := p.Slots[at]
		expr = c.settle(parsed, slot, expr)
		if expr != nil && p.reads(expr.Uses(), at) {
			expr = c.failAt(expr.Span, diag.Circle, "leave out what itself waits for this line", "the formula of %q needs itself", slot.ID())
		}
	}
	if len(c.list) == 0 {
		r.Expr = expr
	}
	return r, c.list
}

func comesTo(n *Node) string {
	switch n.Kind {
	case Number:
		return n.Unit.String()
	case Truth:
		return units.YesNo().String()
	}
	return ""
}

// rowOf is the scope of a cell's formula, nil for a line's.
func (p *Plan) rowOf(line *sheet.Line) *rowScope {
	t := p.table[line.Table]
	if t == nil {
		return nil
	}
	return &rowScope{t, t.row(line.Row)}
}

// reads says whether any of the slots is at, or reads it by however many steps.
func (p *Plan) reads(slots []int, at int) bool {
	seen := make([]bool, len(p.Slots))
	todo := slices.Clone(slots)
	for len(todo) > 0 {
		slot := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if slot == at {
			return true
		}
		if !seen[slot] {
			seen[slot] = true
			todo = append(todo, p.Slots[slot].Uses...)
		}
	}
	return false
}
