package formula

import (
	"fmt"
	"strings"

	"github.com/expr-lang/expr/ast"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// callSite is one call being checked.
type callSite struct {
	fn   *Function
	node *ast.CallNode
}

func (c *checker) call(n *ast.CallNode) *Node {
	callee, ok := n.Callee.(*ast.IdentifierNode)
	if !ok {
		return c.fail(n, diag.Refused, "functions are called by their name alone", "a part of a table cannot be called")
	}
	fn := c.functions[callee.Value]
	if fn == nil {
		return c.fail(callee, diag.UnknownFunction, diag.Nearest(callee.Value, functionNames(c.functions)), "no function is called %q", callee.Value)
	}
	if got, want := len(n.Arguments), len(fn.Args); got < want && !(fn.repeat && got >= 1) || got > want && !fn.repeat {
		return c.fail(n, diag.WrongArguments, "write "+usage(fn), "%q takes %s, not %d", fn.Name, plural(want, "argument"), got)
	}
	site := &callSite{fn, n}
	if fn.rule != nil {
		return fn.rule(c, site)
	}
	return c.plainCall(site)
}

// usage is the function with its argument names: density(brix, temp).
func usage(fn *Function) string {
	var args []string
	for _, a := range fn.Args {
		args = append(args, a.Name)
	}
	return fn.Name + "(" + strings.Join(args, ", ") + ")"
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// plainCall checks a call by its table entry alone.
func (c *checker) plainCall(site *callSite) *Node {
	args, ok := c.arguments(site)
	if !ok {
		return nil
	}
	out := &Node{Op: Call, Fn: site.fn, Args: args, Name: site.fn.Name}
	if site.fn.ResultAs > 0 {
		out.Unit = args[site.fn.ResultAs-1].Unit
	} else {
		out.Unit = c.unit(site.fn.Result)
	}
	return out
}

// arguments checks every argument, so that one call tells all that is wrong.
func (c *checker) arguments(site *callSite) ([]*Node, bool) {
	args, ok := make([]*Node, len(site.fn.Args)), true
	for i, spec := range site.fn.Args {
		args[i] = c.argument(site, i, spec, args)
		ok = ok && args[i] != nil
	}
	return args, ok
}

func (c *checker) argument(site *callSite, i int, spec Arg, before []*Node) *Node {
	n := site.node.Arguments[i]
	if spec.Names != nil {
		return c.choiceArgument(n, spec)
	}
	a := c.numeric(n)
	if a == nil {
		return nil
	}
	switch {
	case spec.Any && a.Unit.IsAbsolute() && site.fn.Name != "abs":
		return a
	case spec.Any:
		return a
	case spec.SameAs > 0:
		like := before[spec.SameAs-1]
		if like == nil {
			return nil
		}
		if _, b, ok := alike(like, a); ok {
			return b
		}
		return c.wrongArgument(n, site.fn, spec, like.Unit, a)
	case spec.Like != "":
		want := c.unit(spec.Like)
		if a.zero {
			return retyped(a, want)
		}
		if !units.Same(a.Unit, want) {
			return c.wrongArgument(n, site.fn, spec, want, a)
		}
		return a
	}
	want := c.unit(spec.Unit)
	if out, ok := converted(a, want); ok {
		return out
	}
	return c.wrongArgument(n, site.fn, spec, want, a)
}

func (c *checker) wrongArgument(n ast.Node, fn *Function, spec Arg, want units.Unit, got *Node) *Node {
	hint := spec.Summary
	if got.Op == Const && got.Unit.IsPlain() {
		hint = fmt.Sprintf("give the number a unit: of(%s, %q)", shortest(got.Value), want.String())
	} else if want.IsAbsolute() {
		hint = "a temperature on a scale is wanted, in °F or °C, not a difference"
	}
	wanted := fmt.Sprintf("%q", want.String())
	if want.IsPlain() {
		wanted = "a bare number or a share"
	}
	return c.fail(n, diag.WrongUnit, hint, "%s of %q is %s, not %s", spec.Name, fn.Name, wanted, describe(got))
}

// choiceArgument takes one of the argument's names in quotes, or a choice line
// none of whose names is another.
func (c *checker) choiceArgument(n ast.Node, spec Arg) *Node {
	if text, ok := n.(*ast.StringNode); ok {
		return c.choiceName(n, text.Value, spec.Names, spec.Name)
	}
	choice := c.check(n)
	if choice == nil {
		return nil
	}
	if choice.Kind != Choice {
		return c.fail(n, diag.WrongUnit, fmt.Sprintf("write one of %q", spec.Names), "%s is a choice, not %s", spec.Name, describe(choice))
	}
	out := &Node{Op: Pick, Args: []*Node{choice}, Name: choice.Name, Unit: units.One(), Span: c.p.span(n)}
	for _, name := range choice.Names {
		place := c.choiceName(n, name, spec.Names, spec.Name)
		if place == nil {
			return nil
		}
		place.Kind = Number
		out.Args = append(out.Args, place)
	}
	return out
}

// unit reads a unit text of our own table.
func (c *checker) unit(text string) units.Unit {
	u, err := units.Parse(text, c.names.money())
	if err != nil {
		panic("formula: function table has the unit " + text + ": " + err.Error())
	}
	return u
}
