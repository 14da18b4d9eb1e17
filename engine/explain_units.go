package engine

import (
	"strconv"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// unit is the unit n is shown in. A % among other units is worked out: 22.4 gal
// × 10 % is shown in gal and not in gal·%.
func (w *worked) unit(n *formula.Node) units.Unit {
	unit := n.Unit.In(w.system)
	if unit.IsPlain() || !strings.Contains(unit.String(), "%") {
		return unit
	}
	for _, power := range []int{1, 2, 3, 4, -1, -2} {
		if out := unit.Div(w.percent.Pow(power)); !strings.Contains(out.String(), "%") {
			return out
		}
	}
	return unit
}

// convert records the change of unit from inner to outer, and is false when the
// two are shown in one unit, or in % and its bare number.
func (w *worked) convert(inner, outer *formula.Node) bool {
	from, to := w.unit(inner), w.unit(outer)
	factor, offset, ok := units.Conversion(from, to)
	percent := from.String() == "%" && to.String() == "1" || from.String() == "1" && to.String() == "%"
	switch {
	case !ok:
		return true // of and number go on to give or take a unit
	case factor == 1 && offset == 0 || percent:
		return false
	}
	c := StepConversion{From: from.String(), To: to.String(), Factor: factor, Offset: offset}
	c.Shown = conversionWords(from, to, factor, offset)
	for _, have := range w.step.Conversions {
		if have.Shown == c.Shown {
			return true
		}
	}
	w.step.Conversions = append(w.step.Conversions, c)
	return true
}

func conversionWords(from, to units.Unit, factor, offset float64) string {
	text := unitWords(from) + " to " + unitWords(to) + ":"
	if factor != 1 {
		text += " × " + sevenDigits(factor)
	}
	switch {
	case offset > 0:
		text += " + " + sevenDigits(offset)
	case offset < 0:
		text += " − " + sevenDigits(-offset)
	}
	return text
}

func sevenDigits(x float64) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 7, 64), 64) // FormatFloat wrote it
	return sheet.FormatNumber(rounded)
}

func unitWords(u units.Unit) string {
	if text := u.String(); text != "1" {
		return text
	}
	return "a bare number"
}
