package engine

import (
	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/units"
)

// basis is what a reckoning's answers were told from, by slot.
type basis struct {
	plan    *formula.Plan
	columns []*columns.Column
	system  units.System
}

// sameAs tells which slots have the answer they had in a reckoning that was told
// before; nil when the two cannot be laid side by side. A shared column means
// the same inputs all the way down, and so the same number at the likely ones.
func (b basis) sameAs(told *Reckoning) func(slot int) bool {
	if told == nil || b.columns == nil || told.basis.columns == nil ||
		len(told.basis.columns) != len(b.columns) || told.basis.system != b.system {
		return nil
	}
	was := told.basis
	return func(i int) bool {
		return was.columns[i] == b.columns[i] && was.plan.Slots[i].Line == b.plan.Slots[i].Line
	}
}
