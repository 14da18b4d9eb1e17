package formula

import (
	"math"

	"github.com/expr-lang/expr/ast"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

func (c *checker) unary(n *ast.UnaryNode) *Node {
	if n.Operator == "not" {
		a := c.yesNo(n.Node)
		if a == nil {
			return nil
		}
		return &Node{Op: Not, Kind: Truth, Args: []*Node{a}, Unit: units.YesNo()}
	}
	a := c.numeric(n.Node)
	if a == nil {
		return nil
	}
	if a.Unit.IsAbsolute() {
		return c.fail(n, diag.UnitMismatch, `take a difference first: a - b`, "a temperature on a scale has no sign to turn")
	}
	if n.Operator == "+" {
		return a
	}
	return &Node{Op: Neg, Args: []*Node{a}, Unit: a.Unit, zero: a.zero}
}

func (c *checker) binary(n *ast.BinaryNode) *Node {
	switch n.Operator {
	case "and", "or", "&&": // a < b < c is read as a < b && b < c
		return c.logic(n)
	case "==", "!=":
		if out, choice := c.choiceTest(n); choice {
			return out
		}
		return c.compare(n)
	case "<", "<=", ">", ">=":
		return c.compare(n)
	}
	a, b := c.numeric(n.Left), c.numeric(n.Right)
	if a == nil || b == nil {
		return nil
	}
	switch n.Operator {
	case "+", "-":
		return c.addition(n, a, b)
	case "*", "/":
		return c.product(n, a, b)
	case "^", "**":
		return c.power(n, a, b)
	}
	return c.fail(n, diag.Refused, "use + - * / ^ and comparisons", "formulas do not have %q", n.Operator)
}

func (c *checker) logic(n *ast.BinaryNode) *Node {
	a, b := c.yesNo(n.Left), c.yesNo(n.Right)
	if a == nil || b == nil {
		return nil
	}
	op := And
	if n.Operator == "or" {
		op = Or
	}
	return &Node{Op: op, Kind: Truth, Args: []*Node{a, b}, Unit: units.YesNo()}
}

func (c *checker) compare(n *ast.BinaryNode) *Node {
	a, b := c.numeric(n.Left), c.numeric(n.Right)
	if a == nil || b == nil {
		return nil
	}
	left, right, ok := alike(a, b)
	if !ok {
		return c.mismatch(n, "compare", "with", a, b)
	}
	ops := map[string]Op{"<": Less, "<=": LessEq, ">": More, ">=": MoreEq, "==": Equal, "!=": Differ}
	return &Node{Op: ops[n.Operator], Kind: Truth, Args: []*Node{left, right}, Unit: units.YesNo()}
}

func (c *checker) mismatch(n *ast.BinaryNode, verb, joint string, a, b *Node) *Node {
	at := n.Location()
	hint := "convert one of them with a line that says how much of one makes the other"
	switch {
	case a.Unit.IsPlain() && a.Op == Const:
		hint = `give the number a unit: of(` + shortest(a.Value) + `, "` + b.Unit.String() + `")`
	case b.Unit.IsPlain() && b.Op == Const:
		hint = `give the number a unit: of(` + shortest(b.Value) + `, "` + a.Unit.String() + `")`
	case a.Unit.IsPlain() || b.Unit.IsPlain():
		hint = "one side lacks a unit; give its line the unit it is counted in"
	}
	return c.failAt(diag.Span{From: at.From, To: at.To}, diag.UnitMismatch, hint, "cannot %s %s %s %s", verb, describe(a), joint, describe(b))
}

// addition knows that two temperatures on a scale differ by a difference, that
// a difference moves a temperature, and that two temperatures do not add.
func (c *checker) addition(n *ast.BinaryNode, a, b *Node) *Node {
	verb, joint, op := "add", "to", Add
	if n.Operator == "-" {
		verb, joint, op = "take", "from", Sub
	}
	x, y, result := a, b, a.Unit
	var ok bool
	switch {
	case a.Unit.IsAbsolute() && b.Unit.IsAbsolute():
		if op == Add {
			return c.failAt(c.p.span(n), diag.UnitMismatch, "add a difference instead, in F° or C°", "two temperatures on a scale cannot be added")
		}
		y, ok = converted(b, a.Unit)
		result = a.Unit.Difference()
	case a.Unit.IsAbsolute():
		y, ok = converted(b, a.Unit.Difference())
	case b.Unit.IsAbsolute() && op == Add:
		x, ok = converted(a, b.Unit.Difference())
		result = b.Unit
	case b.Unit.IsAbsolute():
		ok = false
	default:
		x, y, ok = alike(a, b)
		result = x.Unit
	}
	if !ok {
		if op == Sub {
			a, b = b, a // "take b from a"
		}
		return c.mismatch(n, verb, joint, a, b)
	}
	return &Node{Op: op, Args: []*Node{x, y}, Unit: result}
}

func (c *checker) product(n *ast.BinaryNode, a, b *Node) *Node {
	for _, side := range []*Node{a, b} {
		if side.Unit.IsAbsolute() {
			return c.fail(n, diag.UnitMismatch, `take a difference first, or number(x, "°F")`,
				"a temperature on a scale (%q) cannot be multiplied or divided", side.Unit.String())
		}
	}
	if n.Operator == "*" {
		return &Node{Op: Mul, Args: []*Node{a, b}, Unit: a.Unit.Mul(b.Unit), zero: a.zero || b.zero}
	}
	return &Node{Op: Div, Args: []*Node{a, b}, Unit: a.Unit.Div(b.Unit)}
}

// power needs a bare exponent; a quantity with a unit needs a whole one that
// stands in the formula, because the unit of the answer hangs on it.
func (c *checker) power(n *ast.BinaryNode, a, b *Node) *Node {
	if !b.Unit.IsPlain() {
		return c.fail(n.Right, diag.WrongUnit, "an exponent has no unit", "an exponent is a bare number, not %s", describe(b))
	}
	b, _ = converted(b, units.One())
	if a.Unit.IsPlain() {
		a, _ = converted(a, units.One())
		return &Node{Op: Pow, Args: []*Node{a, b}, Unit: units.One()}
	}
	k, fixed := whole(b)
	if !fixed || a.Unit.IsAbsolute() || math.Abs(k) > 6 {
		return c.fail(n.Right, diag.WrongUnit, "use a whole number from -6 to 6, or sqrt", "%s needs a whole exponent written as a number", describe(a))
	}
	return &Node{Op: Pow, Args: []*Node{a, b}, Unit: a.Unit.Pow(int(k))}
}

func whole(n *Node) (float64, bool) {
	switch {
	case n.Op == Const:
		return n.Value, n.Value == math.Trunc(n.Value)
	case n.Op == Neg && n.Args[0].Op == Const:
		k := n.Args[0].Value
		return -k, k == math.Trunc(k)
	}
	return 0, false
}

// choiceTest is fuel == "propane". It answers false when neither side is text
// or a choice, and the comparison is one of numbers.
func (c *checker) choiceTest(n *ast.BinaryNode) (*Node, bool) {
	side, text := n.Left, n.Right
	if _, swapped := side.(*ast.StringNode); swapped {
		side, text = text, side
	}
	name, isText := text.(*ast.StringNode)
	if !isText {
		return nil, false
	}
	choice := c.check(side)
	if choice == nil {
		return nil, true
	}
	if choice.Kind != Choice {
		return c.fail(text, diag.WrongUnit, "only a choice is compared with a name", "%s is not a choice", describe(choice)), true
	}
	place := c.choiceName(text, name.Value, choice.Names, choice.Name)
	if place == nil {
		return nil, true
	}
	op := Equal
	if n.Operator == "!=" {
		op = Differ
	}
	return &Node{Op: op, Kind: Truth, Args: []*Node{choice, place}, Unit: units.YesNo()}, true
}

// choiceName is the place of a quoted name among those a choice has.
func (c *checker) choiceName(n ast.Node, name string, names []string, of string) *Node {
	for i, have := range names {
		if have == name {
			return &Node{Op: Const, Kind: Choice, Value: float64(i), Names: names, Name: name, Unit: units.One(), Span: c.p.span(n)}
		}
	}
	return c.fail(n, diag.UnknownChoice, diag.Nearest(name, names), "%q has no choice %q", of, name)
}
