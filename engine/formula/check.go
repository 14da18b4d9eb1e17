package formula

import (
	"fmt"

	"github.com/expr-lang/expr/ast"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// checker turns one syntax tree into a Node tree. Every check method answers
// nil when it has told what is wrong; a parent of nil says nothing more.
type checker struct {
	p         *parsed
	names     *names
	row       *rowScope
	functions map[string]*Function
	vars      []variable
	nextVar   int
	list      diag.List
}

// variable is a let in force.
type variable struct {
	name string
	at   int
	node *Node
}

func (c *checker) fail(n ast.Node, code diag.Code, hint, format string, args ...any) *Node {
	span := c.p.span(n)
	return c.failAt(span, code, hint, format, args...)
}

func (c *checker) failAt(span diag.Span, code diag.Code, hint, format string, args ...any) *Node {
	c.list = append(c.list, diag.Diagnostic{Code: code, Severity: diag.Error,
		Place: diag.Place{Formula: &span}, Message: fmt.Sprintf(format, args...), Hint: hint})
	return nil
}

// check is the one door into the tree: it hands each kind of syntax to its own
// method and marks the result with where it stands.
func (c *checker) check(n ast.Node) *Node {
	out := c.dispatch(n)
	if out == nil {
		return nil
	}
	if out.Span == (diag.Span{}) {
		out.Span = c.p.span(n)
	}
	return out
}

func (c *checker) dispatch(n ast.Node) *Node {
	switch n := n.(type) {
	case *ast.IntegerNode:
		return literal(float64(n.Value))
	case *ast.FloatNode:
		return literal(n.Value)
	case *ast.BoolNode:
		return &Node{Op: Const, Kind: Truth, Value: truth(n.Value), Unit: units.YesNo()}
	case *ast.IdentifierNode:
		return c.identifier(n)
	case *ast.UnaryNode:
		return c.unary(n)
	case *ast.BinaryNode:
		return c.binary(n)
	case *ast.ConditionalNode:
		return c.conditional(n)
	case *ast.VariableDeclaratorNode:
		return c.let(n)
	case *ast.MemberNode:
		return c.member(n)
	case *ast.CallNode:
		return c.call(n)
	case *ast.StringNode:
		return c.fail(n, diag.Refused, "text stands only beside a choice or as a unit", "formulas do not have text like %q", n.Value)
	case *ast.ArrayNode:
		return c.fail(n, diag.NotANumber, "a list stands only as an argument of between", "a list is not a number")
	}
	return c.fail(n, diag.Refused, "write numbers, lines, conditions and functions", "formulas do not have this construct")
}

func literal(x float64) *Node {
	return &Node{Op: Const, Kind: Number, Value: x, Unit: units.One(), zero: x == 0}
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// numeric checks n and wants a number of it.
func (c *checker) numeric(n ast.Node) *Node {
	out := c.check(n)
	if out == nil {
		return nil
	}
	switch out.Kind {
	case Truth:
		return c.fail(n, diag.NotANumber, "choose a number with it: x ? 1 : 0", "a yes or no is not a number")
	case Choice:
		return c.fail(n, diag.NotANumber, "compare it with one of its names, or look up a column with it", "the choice %q is not a number", out.Name)
	case List:
		return c.fail(n, diag.NotANumber, "add it up with sum, or name one row", "the column %q is not one number", out.Name)
	}
	return out
}

// yesNo checks n and wants a yes or no of it.
func (c *checker) yesNo(n ast.Node) *Node {
	out := c.check(n)
	if out != nil && out.Kind != Truth {
		return c.fail(n, diag.WrongUnit, "compare it with something, in brackets after not: not (x > 3)", "a yes or no is wanted here, not %s", describe(out))
	}
	return out
}

// describe says what a node comes to, for messages.
func describe(n *Node) string {
	switch n.Kind {
	case Truth:
		return "a yes or no"
	case Choice:
		return fmt.Sprintf("the choice %q", n.Name)
	case List:
		return fmt.Sprintf("the column %q", n.Name)
	}
	if n.Unit.IsPlain() {
		return "a bare number"
	}
	return fmt.Sprintf("%q", n.Unit.String())
}

func (c *checker) conditional(n *ast.ConditionalNode) *Node {
	cond, yes, no := c.yesNo(n.Cond), c.check(n.Exp1), c.check(n.Exp2)
	if cond == nil || yes == nil || no == nil {
		return nil
	}
	if yes.Kind != no.Kind || yes.Kind == Choice || yes.Kind == List {
		return c.fail(n, diag.UnitMismatch, "both sides of the colon must be alike", "a condition gives %s or %s", describe(yes), describe(no))
	}
	if yes.Kind == Number {
		var ok bool
		if yes, no, ok = alike(yes, no); !ok {
			return c.fail(n, diag.UnitMismatch, "both sides of the colon need the same dimension",
				"a condition gives %s or %s", describe(yes), describe(no))
		}
	}
	return &Node{Op: If, Kind: yes.Kind, Args: []*Node{cond, yes, no}, Unit: yes.Unit}
}

func (c *checker) let(n *ast.VariableDeclaratorNode) *Node {
	if c.names.taken(n.Name) || c.functions[n.Name] != nil {
		return c.fail(n, diag.DuplicateID, "give the let another name", "%q is already a name of the sheet", n.Name)
	}
	value := c.check(n.Value)
	if value == nil {
		return nil
	}
	if value.Kind == List || value.Kind == Choice {
		return c.fail(n.Value, diag.NotANumber, "name it where it is used", "a let holds a number or a yes or no")
	}
	at := c.nextVar
	c.nextVar++
	c.vars = append(c.vars, variable{n.Name, at, value})
	body := c.check(n.Expr)
	c.vars = c.vars[:len(c.vars)-1]
	if body == nil {
		return nil
	}
	return &Node{Op: Let, Kind: body.Kind, Args: []*Node{value, body}, Slot: at, Name: n.Name, Unit: body.Unit, Names: body.Names}
}

// alike brings b to a's unit for adding, comparing and choosing between. A
// literal 0 takes the unit of the other side, because nothing is nothing in any.
func alike(a, b *Node) (*Node, *Node, bool) {
	switch {
	case a.zero && !b.Unit.IsAbsolute():
		return retyped(a, b.Unit), b, true
	case b.zero && !a.Unit.IsAbsolute():
		return a, retyped(b, a.Unit), true
	case !units.Same(a.Unit, b.Unit):
		return a, b, false
	}
	b, ok := converted(b, a.Unit)
	return a, b, ok
}

func retyped(n *Node, u units.Unit) *Node {
	out := *n
	out.Unit = u
	return &out
}

// converted puts in the steps that bring n to unit to: none when the scales are
// the same, one product when they differ, a product and a sum for temperatures.
func converted(n *Node, to units.Unit) (*Node, bool) {
	if n.zero && !to.IsAbsolute() {
		return retyped(n, to), true
	}
	factor, offset, ok := units.Conversion(n.Unit, to)
	if !ok {
		return nil, false
	}
	out := n
	if factor != 1 {
		k := &Node{Op: Const, Value: factor, Unit: units.One(), Span: n.Span, Conversion: true}
		out = &Node{Op: Mul, Args: []*Node{out, k}, Unit: to, Span: n.Span, Conversion: true}
	}
	if offset != 0 {
		k := &Node{Op: Const, Value: offset, Unit: to, Span: n.Span, Conversion: true}
		out = &Node{Op: Add, Args: []*Node{out, k}, Unit: to, Span: n.Span, Conversion: true}
	}
	if out == n {
		out = retyped(n, to)
	}
	return out, true
}
