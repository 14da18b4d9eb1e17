package formula

import "math"

// Eval works n for one season. get gives the number in a slot; vars has room
// for the working's lets (Slot.Vars). Only the side of a condition that is taken
// is worked. step, when not nil, is told each node's number after its arguments.
// NaN and infinities pass through as arithmetic has them.
func Eval(n *Node, get func(slot int) float64, vars []float64, step func(n *Node, x float64)) float64 {
	e := evaluator{get, vars, step}
	return e.eval(n)
}

type evaluator struct {
	get  func(int) float64
	vars []float64
	step func(*Node, float64)
}

func (e *evaluator) eval(n *Node) float64 {
	x := e.work(n)
	if e.step != nil {
		e.step(n, x)
	}
	return x
}

func (e *evaluator) work(n *Node) float64 {
	switch n.Op {
	case Const:
		return n.Value
	case Ref:
		return e.get(n.Slot)
	case Var:
		return e.vars[n.Slot]
	case Let:
		e.vars[n.Slot] = e.eval(n.Args[0])
		return e.eval(n.Args[1])
	case If:
		if e.eval(n.Args[0]) != 0 {
			return e.eval(n.Args[1])
		}
		return e.eval(n.Args[2])
	case Pick:
		return e.eval(n.Args[1+int(e.eval(n.Args[0]))])
	case And:
		return truth(e.eval(n.Args[0]) != 0 && e.eval(n.Args[1]) != 0)
	case Or:
		return truth(e.eval(n.Args[0]) != 0 || e.eval(n.Args[1]) != 0)
	case Call, Sum, Mean:
		return e.over(n)
	case Neg:
		return -e.eval(n.Args[0])
	case Not:
		return 1 - e.eval(n.Args[0])
	}
	return Binary(n.Op, e.eval(n.Args[0]), e.eval(n.Args[1]))
}

func (e *evaluator) over(n *Node) float64 {
	args := make([]float64, len(n.Args))
	for i, a := range n.Args {
		args[i] = e.eval(a)
	}
	if n.Op == Call {
		return n.Fn.Apply(args)
	}
	total := 0.0
	for _, a := range args {
		total += a
	}
	if n.Op == Mean {
		total /= float64(len(args))
	}
	return total
}

// Binary is one arithmetic or comparing step. It is the meaning that every way
// of running keeps to. It panics for an op that is not one of two sides.
func Binary(op Op, a, b float64) float64 {
	switch op {
	case Add:
		return a + b
	case Sub:
		return a - b
	case Mul:
		return a * b
	case Div:
		return a / b
	case Pow:
		return math.Pow(a, b)
	case Less:
		return truth(a < b)
	case LessEq:
		return truth(a <= b)
	case More:
		return truth(a > b)
	case MoreEq:
		return truth(a >= b)
	case Equal:
		return truth(a == b)
	case Differ:
		return truth(a != b)
	}
	panic("formula: not an operation of two sides")
}
