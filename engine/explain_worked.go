package engine

import (
	"strconv"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/units"
)

// worked writes one formula with its numbers in place of its names.
type worked struct {
	*tracer
	slot    *formula.Slot
	percent units.Unit
	values  map[*formula.Node]float64 // only of what was worked
	step    *Step
}

// How tightly a text binds, loosest first. A text stands in brackets where a
// tighter one is wanted.
const (
	either = iota
	both
	compares
	adds
	multiplies
	negates
	raises
	single
)

// sign is what stands between two sides and how tightly it binds; "" for
// operations that are not of two sides.
func sign(op formula.Op) (text string, binding int) {
	switch op {
	case formula.Or:
		return "or", either
	case formula.And:
		return "and", both
	case formula.Less, formula.LessEq, formula.More, formula.MoreEq, formula.Equal, formula.Differ:
		return [...]string{"<", "≤", ">", "≥", "=", "≠"}[op-formula.Less], compares
	case formula.Add, formula.Sub:
		return [...]string{"+", "−"}[op-formula.Add], adds
	case formula.Mul, formula.Div:
		return [...]string{"×", "÷"}[op-formula.Mul], multiplies
	case formula.Pow:
		return "^", raises
	}
	return "", single
}

// whole is the whole formula. The change to the line's own unit at its end is
// listed but not written: the line's value shows it.
func (w *worked) whole() string {
	n := w.slot.Expr
	if inner := unconverted(n); inner != n {
		w.convert(inner, n)
		n = inner
	}
	text, _ := w.text(n)
	return text
}

// unconverted is n without the steps put in to change its unit.
func unconverted(n *formula.Node) *formula.Node {
	for n.Conversion && (n.Op == formula.Mul || n.Op == formula.Add) {
		n = n.Args[0]
	}
	return n
}

// text writes n and tells how tightly the text binds.
func (w *worked) text(n *formula.Node) (text string, binding int) {
	if inner := unconverted(n); inner != n {
		text, binding = w.text(inner)
		if w.convert(inner, n) {
			return "(" + text + " = " + w.shown(n) + ")", single
		}
		return text, binding
	}
	switch n.Op {
	case formula.Const:
		return w.constant(n), single
	case formula.Neg:
		return "−" + w.tight(n.Args[0], negates), negates
	case formula.Not:
		return "not " + w.tight(n.Args[0], negates), negates
	case formula.Let:
		return w.let(n), either
	case formula.If:
		return w.text(w.side(n))
	case formula.Pick:
		return w.picked(n)
	case formula.Call:
		return n.Fn.Name + "(" + w.arguments(n) + ")", single
	case formula.Sum:
		return w.joined(n.Args, " + ", adds), adds
	case formula.Mean:
		return "(" + w.joined(n.Args, " + ", adds) + ") ÷ " + strconv.Itoa(len(n.Args)), multiplies
	case formula.And, formula.Or:
		return w.logic(n)
	}
	if mark, binding := sign(n.Op); mark != "" {
		return w.twoSides(n, mark, binding), binding
	}
	return w.shown(n), single
}

func (w *worked) twoSides(n *formula.Node, mark string, binding int) string {
	return w.tight(n.Args[0], binding) + " " + mark + " " + w.tight(n.Args[1], binding+1)
}

// logic writes only as much of it as had to be looked at.
func (w *worked) logic(n *formula.Node) (string, int) {
	if _, looked := w.values[unconverted(n.Args[1])]; !looked {
		return w.text(n.Args[0])
	}
	mark, binding := sign(n.Op)
	return w.twoSides(n, mark, binding), binding
}

// tight is n in brackets when it binds less tightly than wanted. A negative
// number needs them too, behind another sign.
func (w *worked) tight(n *formula.Node, wanted int) string {
	text, binding := w.text(n)
	if binding < wanted || strings.HasPrefix(text, "-") {
		return "(" + text + ")"
	}
	return text
}

func (w *worked) joined(nodes []*formula.Node, sep string, wanted int) string {
	var parts []string
	for _, n := range nodes {
		parts = append(parts, w.tight(n, wanted))
	}
	return strings.Join(parts, sep)
}

// shown is n's value with its unit.
func (w *worked) shown(n *formula.Node) string {
	x := w.values[n]
	if n.Kind == formula.Choice {
		if place := int(x); place >= 0 && place < len(n.Names) {
			return strconv.Quote(n.Names[place])
		}
	}
	unit := w.unit(n)
	y, _ := units.Convert(x, n.Unit, unit)
	return show(number(y), unit)
}

func (w *worked) constant(n *formula.Node) string {
	switch {
	case n.Names != nil:
		return strconv.Quote(n.Name)
	case n.Kind == formula.Truth:
		return map[bool]string{true: "yes", false: "no"}[n.Value != 0]
	}
	w.values[n] = n.Value
	return w.shown(n)
}

// picked is the row's number that a choice looked up.
func (w *worked) picked(n *formula.Node) (string, int) {
	return w.text(n.Args[1+int(w.values[n.Args[0]])])
}

func (w *worked) arguments(n *formula.Node) string {
	if n.Fn.Source != "" && !w.told["function "+n.Fn.Name] {
		w.told["function "+n.Fn.Name] = true
		w.step.Functions = append(w.step.Functions, StepFunction{n.Fn.Name, n.Fn.Summary, n.Fn.Source})
	}
	var parts []string
	for _, a := range n.Args {
		text, _ := w.text(a)
		parts = append(parts, text)
	}
	if n.Name == "between" { // x, then as many xs as ys
		half := len(parts)/2 + 1
		return parts[0] + ", [" + strings.Join(parts[1:half], ", ") + "], [" + strings.Join(parts[half:], ", ") + "]"
	}
	return strings.Join(parts, ", ")
}

func (w *worked) let(n *formula.Node) string {
	value, _ := w.text(n.Args[0])
	if result := w.shown(n.Args[0]); result != value {
		value += " = " + result
	}
	body, _ := w.text(n.Args[1])
	return "with " + n.Name + " = " + value + ": " + body
}

// side records a condition and is the side that was taken.
func (w *worked) side(n *formula.Node) *formula.Node {
	holds := w.values[n.Args[0]] != 0
	took := n.Args[2]
	if holds {
		took = n.Args[1]
	}
	condition, _ := w.text(n.Args[0])
	w.step.Sides = append(w.step.Sides, StepSide{Condition: w.written(n.Args[0]), Worked: condition, Holds: holds, Took: w.written(took)})
	return took
}

// written is n as its author wrote it.
func (w *worked) written(n *formula.Node) string {
	source := []rune(w.slot.Line.Formula)
	span := unconverted(n).Span
	if span.From < 0 || span.To > len(source) || span.From >= span.To {
		text, _ := w.text(n)
		return text
	}
	return strings.Join(strings.Fields(string(source[span.From:span.To])), " ")
}
