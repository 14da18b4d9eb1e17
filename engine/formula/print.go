package formula

import (
	"math"
	"strconv"
	"strings"
)

// symbol is the sign of the operations that stand between two sides.
func symbol(op Op) string {
	return [...]string{Add: "+", Sub: "-", Mul: "*", Div: "/", Pow: "^", Less: "<", LessEq: "<=", More: ">", MoreEq: ">=",
		Equal: "==", Differ: "!=", And: "and", Or: "or"}[op]
}

// Print writes a working as formula text with every conversion in the open and
// brackets around every step; name says how each slot is called. The text reads
// back to the same numbers, unit checks aside.
func Print(n *Node, name func(slot int) string) string {
	var b strings.Builder
	print(&b, n, name)
	return b.String()
}

func print(b *strings.Builder, n *Node, name func(int) string) {
	switch n.Op {
	case Const:
		printConst(b, n)
	case Ref:
		b.WriteString(name(n.Slot))
	case Var:
		b.WriteString("v" + strconv.Itoa(n.Slot))
	case Let:
		b.WriteString("(let v" + strconv.Itoa(n.Slot) + " = ")
		print(b, n.Args[0], name)
		b.WriteString("; ")
		print(b, n.Args[1], name)
		b.WriteString(")")
	case Neg:
		prefix(b, "-", n.Args[0], name)
	case Not:
		prefix(b, "not ", n.Args[0], name)
	case If:
		printIf(b, n, name)
	case Pick:
		printPick(b, n, name)
	case Call, Gather:
		b.WriteString(n.callName() + "(")
		joined(b, n.Args, ", ", name)
		b.WriteString(")")
	case Sum, Mean:
		printTotal(b, n, name)
	default:
		b.WriteString("(")
		joined(b, n.Args, " "+symbol(n.Op)+" ", name)
		b.WriteString(")")
	}
}

func (n *Node) callName() string {
	if n.Fn == nil {
		return "list"
	}
	return n.Fn.Name
}

func printConst(b *strings.Builder, n *Node) {
	switch {
	case n.Kind == Truth:
		b.WriteString(strconv.FormatBool(n.Value != 0))
	case math.Signbit(n.Value):
		b.WriteString("(" + decimal(n.Value) + ")")
	default:
		b.WriteString(decimal(n.Value))
	}
}

// decimal always has a point or an exponent, so that it reads back as a number
// with a fraction and never as a whole that might overflow.
func decimal(x float64) string {
	text := shortest(x)
	if !strings.ContainsAny(text, ".eIN") {
		text += ".0"
	}
	return text
}

func prefix(b *strings.Builder, sign string, n *Node, name func(int) string) {
	b.WriteString("(" + sign)
	print(b, n, name)
	b.WriteString(")")
}

func printIf(b *strings.Builder, n *Node, name func(int) string) {
	b.WriteString("(")
	print(b, n.Args[0], name)
	b.WriteString(" ? ")
	print(b, n.Args[1], name)
	b.WriteString(" : ")
	print(b, n.Args[2], name)
	b.WriteString(")")
}

// printPick writes a look-up as conditions on the choice's place.
func printPick(b *strings.Builder, n *Node, name func(int) string) {
	last := len(n.Args) - 1
	for i, row := range n.Args[1:last] {
		b.WriteString("(")
		print(b, n.Args[0], name)
		b.WriteString(" == " + decimal(float64(i)) + " ? ")
		print(b, row, name)
		b.WriteString(" : ")
	}
	print(b, n.Args[last], name)
	b.WriteString(strings.Repeat(")", last-1))
}

func printTotal(b *strings.Builder, n *Node, name func(int) string) {
	if n.Op == Mean {
		b.WriteString("(")
	}
	b.WriteString("(")
	joined(b, n.Args, " + ", name)
	b.WriteString(")")
	if n.Op == Mean {
		b.WriteString(" / " + decimal(float64(len(n.Args))) + ")")
	}
}

func joined(b *strings.Builder, nodes []*Node, sep string, name func(int) string) {
	for i, a := range nodes {
		if i > 0 {
			b.WriteString(sep)
		}
		print(b, a, name)
	}
}
