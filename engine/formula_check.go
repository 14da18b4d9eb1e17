package engine

import (
	"math"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// FormulaReading is what a formula in the making comes to.
type FormulaReading struct {
	// ComesTo is the unit it comes to, "yes/no" for a condition, "" when that
	// cannot be told. A bare number's is "1".
	ComesTo string `json:"comes_to"`
	// Likely is what it comes to at the likely numbers, with its unit; "" when
	// that cannot be told.
	Likely string `json:"likely"`
	// Diagnostics are about the text given; their spans are places in it.
	Diagnostics diag.List `json:"diagnostics"`
}

// CheckFormula reads a formula as if it stood at a line or cell, which may be one
// that is not there yet, without putting it there.
func (b *Book) CheckFormula(about, text string, system units.System) FormulaReading {
	reading, list := b.plan.Read(about, text)
	if list == nil {
		list = diag.List{}
	}
	for i := range list {
		list[i].About = about
	}
	list.Sort()
	out := FormulaReading{ComesTo: reading.Comes, Diagnostics: list}
	if reading.Expr == nil {
		return out
	}
	slot := &formula.Slot{Kind: reading.Expr.Kind, Unit: reading.Expr.Unit}
	if slot.Kind == formula.Truth {
		slot.Unit = units.YesNo()
	}
	likely := outcome.AtLikely(b.plan)
	x := formula.Eval(reading.Expr, func(at int) float64 { return likely[at] }, make([]float64, reading.Vars), nil)
	if unit, convert := shownUnit(slot, system); !math.IsNaN(x) && !math.IsInf(x, 0) {
		out.Likely = units.Show(convert(x), unit)
	}
	return out
}
