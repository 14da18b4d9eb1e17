package formula

import (
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// Kind is what a working comes to.
type Kind uint8

const (
	// Number is a quantity with a unit.
	Number Kind = iota
	// Truth is a yes or no, held as 1 or 0.
	Truth
	// Choice is one of a few names, held as the place of the name, from 0.
	Choice
	// List is a table column: one number a row. It only stands as an argument.
	List
)

// Op is what a [Node] does with its arguments.
type Op uint8

// The operations. Every one takes and gives float64; a truth is 1 or 0.
const (
	Const  Op = iota // Value
	Ref              // the number in slot Slot
	Pick             // Args[0] is a place n from 0; the node comes to Args[1+n]
	Neg              // -a
	Not              // 1 - a
	Add              // a + b
	Sub              // a - b
	Mul              // a * b
	Div              // a / b
	Pow              // a ^ b
	Less             // a < b
	LessEq           // a <= b
	More             // a > b
	MoreEq           // a >= b
	Equal            // a == b
	Differ           // a != b
	And              // a and b
	Or               // a or b
	If               // Args[0] ? Args[1] : Args[2]
	Let              // let variable Slot be Args[0] in Args[1]
	Var              // the let variable Slot
	Call             // Fn over Args
	Sum              // a + b + c + …, left to right
	Mean             // their sum over their count
	Gather           // a list: only an argument of Call
)

// Node is one step of a checked working. Nodes are immutable once bound and
// shared freely. Conversions between units stand as Mul (and for temperatures
// Add) nodes with Conversion set, exactly where two scales differ.
type Node struct {
	Op   Op
	Kind Kind
	Args []*Node
	// Value is the number of a Const.
	Value float64
	// Slot is the slot of a Ref, or the variable of a Let or Var.
	Slot int
	// Name is the author's name for a Ref, Let or Var, and the table column of a Pick.
	Name string
	// Names are the names a Choice may have, in the order of their places.
	Names []string
	Fn    *Function
	// Unit is the unit the value is in; the bare one for Truth and Choice.
	Unit units.Unit
	// Span is where the author wrote it, in runes of the formula.
	Span diag.Span
	// Conversion marks steps put in to change a unit's scale.
	Conversion bool
	// zero marks a literal 0, which is nothing of any unit.
	zero bool
}

// Walk calls visit for n and everything below it, parents first.
func (n *Node) Walk(visit func(*Node)) {
	if n == nil {
		return
	}
	visit(n)
	for _, a := range n.Args {
		a.Walk(visit)
	}
}

// Uses lists the slots n reads, each once, in the order met.
func (n *Node) Uses() []int {
	var out []int
	seen := map[int]bool{}
	n.Walk(func(m *Node) {
		if m.Op == Ref && !seen[m.Slot] {
			seen[m.Slot] = true
			out = append(out, m.Slot)
		}
	})
	return out
}
