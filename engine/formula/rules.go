package formula

import (
	"strconv"

	"github.com/expr-lang/expr/ast"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// shortest prints x as formulas read it back.
func shortest(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// extremeRule is min and max: one column, or numbers of one dimension.
func extremeRule(c *checker, site *callSite) *Node {
	if list := c.onlyColumn(site); list != nil {
		return &Node{Op: Call, Fn: site.fn, Args: list.Args, Name: site.fn.Name, Unit: list.Unit}
	}
	if len(site.node.Arguments) < 2 {
		if len(c.list) > 0 {
			return nil
		}
		return c.fail(site.node, diag.WrongArguments, "compare two numbers, or give a column", "%q takes a column or at least 2 numbers", site.fn.Name)
	}
	var args []*Node
	for _, n := range site.node.Arguments {
		a := c.numeric(n)
		if a == nil {
			return nil
		}
		args = append(args, a)
	}
	like := args[0]
	for _, a := range args {
		if !a.zero {
			like = a
			break
		}
	}
	for i, a := range args {
		_, b, ok := alike(like, a)
		if !ok {
			return c.fail(site.node.Arguments[i], diag.UnitMismatch, "all need the same dimension", "cannot compare %s with %s", describe(like), describe(a))
		}
		args[i] = b
	}
	return &Node{Op: Call, Fn: site.fn, Args: args, Name: site.fn.Name, Unit: like.Unit}
}

// onlyColumn is the column when it is the call's one argument, else nil.
func (c *checker) onlyColumn(site *callSite) *Node {
	if len(site.node.Arguments) != 1 {
		return nil
	}
	a := c.check(site.node.Arguments[0])
	if a == nil || a.Kind != List {
		return nil
	}
	return a
}

func totalRule(op Op) func(*checker, *callSite) *Node {
	return func(c *checker, site *callSite) *Node {
		n := site.node.Arguments[0]
		a := c.check(n)
		if a == nil {
			return nil
		}
		if a.Kind != List {
			return c.fail(n, diag.WrongUnit, "name a table's column: jars.income", "%q adds up a column, not %s", site.fn.Name, describe(a))
		}
		if a.Unit.IsAbsolute() && op == Sum {
			return c.fail(n, diag.UnitMismatch, "take their mean instead", "temperatures on a scale cannot be added")
		}
		return &Node{Op: op, Args: a.Args, Name: a.Name, Unit: a.Unit}
	}
}

func rootRule(c *checker, site *callSite) *Node {
	a := c.numeric(site.node.Arguments[0])
	if a == nil {
		return nil
	}
	if a.Unit.IsPlain() {
		a, _ = converted(a, units.One())
	}
	u, ok := a.Unit.Root(2)
	if !ok || a.Unit.IsAbsolute() {
		return c.fail(site.node, diag.WrongUnit, "only squares such as ft² have a root", "%s has no square root", describe(a))
	}
	return &Node{Op: Call, Fn: site.fn, Args: []*Node{a}, Name: site.fn.Name, Unit: u}
}

// unitText reads the quoted unit that of and number take.
func (c *checker) unitText(n ast.Node, fn string) (units.Unit, bool) {
	text, ok := n.(*ast.StringNode)
	if !ok {
		c.fail(n, diag.WrongUnit, `write the unit in quotes: of(1.5, "h")`, "%q takes a unit in quotes", fn)
		return units.One(), false
	}
	u, err := units.Parse(text.Value, c.names.money())
	if err != nil {
		c.fail(n, diag.UnknownUnit, "write it as in gal/tap or BTU/lb", "the unit %q does not read", text.Value)
		return units.One(), false
	}
	return u, true
}

func ofRule(c *checker, site *callSite) *Node {
	x := c.numeric(site.node.Arguments[0])
	u, ok := c.unitText(site.node.Arguments[1], "of")
	if x == nil || !ok {
		return nil
	}
	if !x.Unit.IsPlain() {
		return c.fail(site.node.Arguments[0], diag.WrongUnit, "take its unit off first with number", "%s already has a unit", describe(x))
	}
	x, _ = converted(x, units.One())
	out := retyped(x, u)
	out.zero = false
	return out
}

func numberRule(c *checker, site *callSite) *Node {
	x := c.numeric(site.node.Arguments[0])
	u, ok := c.unitText(site.node.Arguments[1], "number")
	if x == nil || !ok {
		return nil
	}
	out, ok := converted(x, u)
	if !ok {
		return c.fail(site.node.Arguments[0], diag.WrongUnit, "name a unit of the same dimension", "%s cannot be counted in %q", describe(x), u.String())
	}
	out = retyped(out, units.One())
	out.zero = false
	return out
}

// jarsRule answers in the count that the size is a volume of: gal/jug gives
// jugs, and a bare volume gives jars.
func jarsRule(c *checker, site *callSite) *Node {
	volume := c.argument(site, 0, site.fn.Args[0], nil)
	size := c.numeric(site.node.Arguments[1])
	waste := c.argument(site, 2, site.fn.Args[2], nil)
	if volume == nil || size == nil || waste == nil {
		return nil
	}
	gallon, count, one := c.unit("gal"), c.unit("jar"), volume.Unit
	if !units.Same(size.Unit, gallon) {
		// The dimension left when the volume is taken out names the count.
		ratio := gallon.Div(size.Unit)
		named, err := units.Parse(ratio.Dim().String(), c.names.money())
		if err != nil || !units.Same(named, ratio) || ratio.IsPlain() {
			return c.fail(site.node.Arguments[1], diag.WrongUnit, "give what one holds, such as 1 pt or 0.5 gal/jug",
				"size of %q is a volume, not %s", site.fn.Name, describe(size))
		}
		count, one = named, volume.Unit.Div(named)
	}
	size, _ = converted(size, one)
	return &Node{Op: Call, Fn: site.fn, Args: []*Node{volume, size, waste}, Name: site.fn.Name, Unit: count}
}

func betweenRule(c *checker, site *callSite) *Node {
	x := c.numeric(site.node.Arguments[0])
	xs, ys := c.listArgument(site, 1), c.listArgument(site, 2)
	if x == nil || xs == nil || ys == nil {
		return nil
	}
	if len(xs.Args) != len(ys.Args) || len(xs.Args) < 2 {
		return c.fail(site.node, diag.WrongArguments, "each point needs one of both", "between has %d xs and %d ys", len(xs.Args), len(ys.Args))
	}
	moved, ok := converted(x, xs.Unit)
	if !ok {
		return c.fail(site.node.Arguments[0], diag.WrongUnit, "x and xs need the same dimension", "x is %s and xs are %q", describe(x), xs.Unit.String())
	}
	args := append(append([]*Node{moved}, xs.Args...), ys.Args...)
	return &Node{Op: Call, Fn: site.fn, Args: args, Name: site.fn.Name, Unit: ys.Unit}
}

// listArgument is a column, or numbers in square brackets.
func (c *checker) listArgument(site *callSite, i int) *Node {
	n := site.node.Arguments[i]
	array, ok := n.(*ast.ArrayNode)
	if !ok {
		a := c.check(n)
		if a != nil && a.Kind != List {
			return c.fail(n, diag.WrongUnit, "give a table's column, or numbers in square brackets", "%s of %q is a column, not %s", site.fn.Args[i].Name, site.fn.Name, describe(a))
		}
		return a
	}
	list := &Node{Op: Gather, Kind: List, Name: site.fn.Args[i].Name}
	for _, item := range array.Nodes {
		a := c.numeric(item)
		if a == nil {
			return nil
		}
		list.Args = append(list.Args, a)
	}
	return c.evened(n, list)
}
