package workbook

import (
	"thawbook/engine/formula"
)

// expansion spells one call of a defined function, given its arguments.
type expansion func(s *speller, args []piece) piece

// expansions is how each defined function is spelt out. Every function in
// formula.Functions has one, is one of those that never come to a call (of,
// number, sum, mean), or is among the held.
func expansions() map[string]expansion {
	table := map[string]expansion{}
	for _, family := range []map[string]expansion{syrupExpansions(), boilExpansions(), moneyExpansions(), generalExpansions()} {
		for name, e := range family {
			table[name] = e
		}
	}
	return table
}

func (s *speller) call(n *formula.Node) piece {
	if n.Fn == nil {
		return s.give("it has a part that no workbook can follow")
	}
	switch n.Fn.Name {
	case "min":
		return s.over("MIN", n.Args)
	case "max":
		return s.over("MAX", n.Args)
	}
	expand := s.table[n.Fn.Name]
	if expand == nil {
		return s.give(n.Fn.Name + " is worked here only")
	}
	args, fixed := make([]piece, len(n.Args)), true
	values := make([]float64, len(n.Args))
	for i, a := range n.Args {
		// A name of a choice stands for its place among the argument's names.
		if a.Op == formula.Const && a.Kind == formula.Choice {
			args[i] = number(a.Value)
		} else {
			args[i] = s.node(a)
		}
		fixed, values[i] = fixed && args[i].fixed, args[i].value
	}
	if fixed {
		if x := n.Fn.Apply(values); x*0 == 0 {
			return number(x)
		}
		return missing()
	}
	return expand(s, args)
}

// condition is one test that an argument is within what a function covers.
type condition struct {
	p         piece
	low, high float64
	above     bool // low itself is outside
	noHigh    bool
}

// guarded is out where all conditions hold and no number elsewhere. Conditions
// on fixed numbers are settled here.
func guarded(out piece, conditions ...condition) piece {
	var tests []piece
	for _, c := range conditions {
		if c.p.fixed {
			if c.p.value < c.low || c.above && c.p.value == c.low || !c.noHigh && c.p.value > c.high {
				return missing()
			}
			continue
		}
		sign := ">="
		if c.above {
			sign = ">"
		}
		tests = append(tests, piece{text: c.p.text + sign + number(c.low).text, deep: c.p.deep})
		if !c.noHigh {
			tests = append(tests, piece{text: c.p.text + "<=" + number(c.high).text, deep: c.p.deep})
		}
	}
	switch len(tests) {
	case 0:
		return out
	case 1:
		return call("IF", tests[0], out, missing())
	}
	return call("IF", call("AND", tests...), out, missing())
}

func within(p piece, low, high float64) condition { return condition{p: p, low: low, high: high} }
func above(p piece, low, high float64) condition {
	return condition{p: p, low: low, high: high, above: true}
}
func atLeast(p piece, low float64) condition { return condition{p: p, low: low, noHigh: true} }

// formulaText joins pieces and texts into a piece that holds as told. Pieces are
// bracketed unless they are whole.
func formulaText(hold int, parts ...any) piece {
	out := piece{hold: hold}
	for _, part := range parts {
		switch part := part.(type) {
		case string:
			out.text += part
		case float64:
			out.text += number(part).text
		case piece:
			p := part.tight(whole)
			out.text, out.deep = out.text+p.text, max(out.deep, p.deep)
		}
	}
	return out
}

// polynomial is c0+x*(c1+x*(c2+…)) with coefficients that are numbers or pieces.
func polynomial(x piece, coefficients ...any) piece {
	last := len(coefficients) - 1
	if x.fixed {
		if sum, ok := summed(x.value, coefficients); ok {
			return number(sum)
		}
	}
	out := formulaText(whole, coefficients[last])
	for i := last - 1; i >= 0; i-- {
		out = formulaText(adding, coefficients[i], "+", x, "*", out)
		out.deep++
	}
	return out
}

// summed is a polynomial in numbers alone; false when a coefficient is a piece.
func summed(x float64, coefficients []any) (float64, bool) {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		c, ok := coefficients[i].(float64)
		if p, isPiece := coefficients[i].(piece); isPiece {
			c, ok = p.value, p.fixed
		}
		if !ok {
			return 0, false
		}
		sum = sum*x + c
	}
	return sum, true
}
