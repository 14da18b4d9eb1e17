package outcome

import (
	"fmt"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/units"
)

// Warn turns what a run noticed in one slot into diagnostics: the line, the
// place in its formula, what happened there, and in how many of the seasons.
func Warn(slot *formula.Slot, found []columns.Warning, seasons int) diag.List {
	var list diag.List
	for _, w := range found {
		place := slot.Line.At("formula")
		span := w.Node.Span
		place.Formula = &span
		code, message, hint := explain(w)
		list = append(list, diag.Diagnostic{Code: code, Severity: diag.Warning, About: slot.ID(), Place: place,
			Message: message, Hint: hint, Seasons: w.Seasons, Of: seasons})
	}
	return list
}

// explain says what stopped being a number, from the step and what it was given.
func explain(w columns.Warning) (code diag.Code, message, hint string) {
	n := w.Node
	switch {
	case n.Op == formula.Div && len(w.Sample) == 2 && w.Sample[1] == 0:
		return diag.NotFinite, "divides by nothing", "guard it with a condition: x > 0 ? y / x : 0"
	case n.Op == formula.Pow:
		return diag.NotFinite, "raises " + bare(w.Sample, 0) + " to a power that gives no number", "keep the base above 0"
	case n.Op != formula.Call:
		return diag.NotFinite, "comes to no number", "look at the numbers it is given"
	}
	if i := outside(n.Fn, w.Sample); i >= 0 {
		return diag.OutOfRange, rangeMessage(n.Fn, i, w.Sample[i]), "its source covers no more; look at the guess behind it"
	}
	switch n.Fn.Name {
	case "ln":
		return diag.NotFinite, "takes the logarithm of " + bare(w.Sample, 0), "keep it above 0, perhaps with max"
	case "sqrt":
		return diag.NotFinite, "takes the square root of " + bare(w.Sample, 0), "keep it at 0 or above, perhaps with max"
	case "between":
		return diag.OutOfRange, "reads beyond its points at " + bare(w.Sample, 0), "add points further out, or hold x with clamp"
	case "years_to_repay":
		return diag.NotFinite, "never repays: it saves too little", "compare the saving with the price's yearly share instead"
	}
	return diag.NotFinite, fmt.Sprintf("%q comes to no number", n.Fn.Name), "look at the numbers it is given"
}

// outside is the first argument beyond what its function covers, or -1.
func outside(fn *formula.Function, given []float64) int {
	for i, arg := range fn.Args {
		if i < len(given) && (arg.Min != 0 || arg.Max != 0) && (given[i] < arg.Min || given[i] > arg.Max) {
			return i
		}
	}
	return -1
}

func rangeMessage(fn *formula.Function, i int, x float64) string {
	arg := fn.Args[i]
	u, err := units.Parse(arg.Unit, "")
	if err != nil {
		u = units.One()
	}
	return fmt.Sprintf("%s of %q is %s, known only from %s to %s", arg.Name, fn.Name,
		units.Show(x, u), units.Show(arg.Min, u), units.Show(arg.Max, u))
}

func bare(given []float64, i int) string {
	if i >= len(given) {
		return "it"
	}
	return units.Show(given[i], units.One())
}
