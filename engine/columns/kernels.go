package columns

import (
	"math"

	"thawbook/engine/formula"
)

// vec is one input of a step: a stretch of a column, or, when s is nil, the same
// number x in every season.
type vec struct {
	s []float64
	x float64
}

func (v vec) at(i int) float64 {
	if v.s == nil {
		return v.x
	}
	return v.s[i]
}

// binary works dst = a op b for a step of two sides.
func binary(op formula.Op, dst []float64, a, b vec) {
	if a.s == nil && b.s == nil {
		// A let may hold a single number although its working names drawn lines.
		a.s = dst
		for i := range dst {
			dst[i] = a.x
		}
	}
	switch op {
	case formula.Add:
		add(dst, a, b)
	case formula.Sub:
		sub(dst, a, b)
	case formula.Mul:
		mul(dst, a, b)
	case formula.Div:
		div(dst, a, b)
	case formula.Pow:
		for i := range dst {
			dst[i] = math.Pow(a.at(i), b.at(i))
		}
	case formula.And:
		for i := range dst {
			dst[i] = truth(a.at(i) != 0 && b.at(i) != 0)
		}
	case formula.Or:
		for i := range dst {
			dst[i] = truth(a.at(i) != 0 || b.at(i) != 0)
		}
	default:
		compare(op, dst, a, b)
	}
}

// The four kernels below are written out for columns and single numbers,
// because a test inside the loop would cost more than the arithmetic.

func add(dst []float64, a, b vec) {
	if a.s == nil {
		a, b = b, a
	}
	x := a.s[:len(dst)]
	if b.s == nil {
		for i := range dst {
			dst[i] = x[i] + b.x
		}
		return
	}
	y := b.s[:len(dst)]
	for i := range dst {
		dst[i] = x[i] + y[i]
	}
}

func sub(dst []float64, a, b vec) {
	switch {
	case a.s == nil:
		y := b.s[:len(dst)]
		for i := range dst {
			dst[i] = a.x - y[i]
		}
	case b.s == nil:
		x := a.s[:len(dst)]
		for i := range dst {
			dst[i] = x[i] - b.x
		}
	default:
		x, y := a.s[:len(dst)], b.s[:len(dst)]
		for i := range dst {
			dst[i] = x[i] - y[i]
		}
	}
}

func mul(dst []float64, a, b vec) {
	if a.s == nil {
		a, b = b, a
	}
	x := a.s[:len(dst)]
	if b.s == nil {
		for i := range dst {
			dst[i] = x[i] * b.x
		}
		return
	}
	y := b.s[:len(dst)]
	for i := range dst {
		dst[i] = x[i] * y[i]
	}
}

func div(dst []float64, a, b vec) {
	switch {
	case a.s == nil:
		y := b.s[:len(dst)]
		for i := range dst {
			dst[i] = a.x / y[i]
		}
	case b.s == nil:
		x := a.s[:len(dst)]
		for i := range dst {
			dst[i] = x[i] / b.x
		}
	default:
		x, y := a.s[:len(dst)], b.s[:len(dst)]
		for i := range dst {
			dst[i] = x[i] / y[i]
		}
	}
}

func compare(op formula.Op, dst []float64, a, b vec) {
	switch op {
	case formula.Less:
		for i := range dst {
			dst[i] = truth(a.at(i) < b.at(i))
		}
	case formula.LessEq:
		for i := range dst {
			dst[i] = truth(a.at(i) <= b.at(i))
		}
	case formula.More:
		for i := range dst {
			dst[i] = truth(a.at(i) > b.at(i))
		}
	case formula.MoreEq:
		for i := range dst {
			dst[i] = truth(a.at(i) >= b.at(i))
		}
	case formula.Equal:
		for i := range dst {
			dst[i] = truth(a.at(i) == b.at(i))
		}
	case formula.Differ:
		for i := range dst {
			dst[i] = truth(a.at(i) != b.at(i))
		}
	}
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// choose works dst = cond ? yes : no.
func choose(dst []float64, cond, yes, no vec) {
	for i := range dst {
		if cond.at(i) != 0 {
			dst[i] = yes.at(i)
		} else {
			dst[i] = no.at(i)
		}
	}
}

// total works dst = a + b + …, left to right, over count when mean is wanted.
func total(dst []float64, args []vec, mean bool) {
	for i := range dst {
		dst[i] = args[0].at(i)
	}
	for _, a := range args[1:] {
		add(dst, vec{s: dst}, a)
	}
	if mean {
		div(dst, vec{s: dst}, vec{x: float64(len(args))})
	}
}

// apply works dst = fn(args…) season by season.
func apply(fn *formula.Function, dst []float64, args []vec, room []float64) {
	switch {
	case fn.F1 != nil:
		for i := range dst {
			dst[i] = fn.F1(args[0].at(i))
		}
	case fn.F2 != nil:
		a, b := args[0], args[1]
		for i := range dst {
			dst[i] = fn.F2(a.at(i), b.at(i))
		}
	case fn.F3 != nil:
		a, b, c := args[0], args[1], args[2]
		for i := range dst {
			dst[i] = fn.F3(a.at(i), b.at(i), c.at(i))
		}
	case fn.F4 != nil:
		a, b, c, d := args[0], args[1], args[2], args[3]
		for i := range dst {
			dst[i] = fn.F4(a.at(i), b.at(i), c.at(i), d.at(i))
		}
	default:
		for i := range dst {
			for j, a := range args {
				room[j] = a.at(i)
			}
			dst[i] = fn.Fn(room[:len(args)])
		}
	}
}

// finite reports whether every number of s is one. A product with nothing is
// nothing for every number but an infinity and NaN.
func finite(s []float64) bool {
	acc := 0.0
	for _, x := range s {
		acc += x * 0
	}
	return acc == 0
}
