package back

import (
	"math"

	"thawbook/engine/workbook/calc"
)

// workCall works a function of the open standard.
func (t *translator) workCall(n *calc.Term, get func(int) float64) float64 {
	switch n.Text {
	case "IF":
		if len(n.Args) == 3 {
			return t.workIf(n, get)
		}
		return math.NaN()
	case "INDEX":
		return t.workLookUp(n, get)
	}
	x := t.numbers(n, get)
	for _, v := range x {
		if v != v {
			return math.NaN()
		}
	}
	switch {
	case len(x) == 0:
		return math.NaN()
	case len(x) == 1 || len(n.Args) == 1:
		if f, ok := singles()[n.Text]; ok {
			return f(x[0])
		}
	case len(x) == 2:
		if f, ok := doubles()[n.Text]; ok {
			return f(x[0], x[1])
		}
	}
	return total(n.Text, x)
}

func (t *translator) workIf(n *calc.Term, get func(int) float64) float64 {
	switch test := t.work(n.Args[0], get); {
	case test != test:
		return test
	case test != 0:
		return t.work(n.Args[1], get)
	}
	return t.work(n.Args[2], get)
}

func (t *translator) workLookUp(n *calc.Term, get func(int) float64) float64 {
	if len(n.Args) != 2 {
		return math.NaN()
	}
	choice, table, column, ok := t.looked(n.Args)
	if !ok {
		return math.NaN()
	}
	i := t.here.Find(table + "." + t.here.Slots[choice].Names[int(get(choice))] + "." + column)
	if i < 0 {
		return math.NaN()
	}
	return get(i)
}

// numbers are a call's arguments, a column counting as each of its rows.
func (t *translator) numbers(n *calc.Term, get func(int) float64) []float64 {
	var out []float64
	for _, a := range n.Args {
		if a.Op == calc.Named || a.Op == calc.Cells {
			if table, column, ok := t.column(a); ok {
				for _, r := range t.here.Sheet.Table(table).Rows {
					out = append(out, get(t.here.Find(table+"."+r.ID+"."+column)))
				}
				continue
			}
		}
		out = append(out, t.work(a, get))
	}
	return out
}

func singles() map[string]func(float64) float64 {
	return map[string]func(float64) float64{"ABS": math.Abs, "SQRT": math.Sqrt, "EXP": math.Exp, "LN": math.Log, "INT": math.Floor,
		"LOG10": math.Log10, "NOT": func(x float64) float64 { return yes(x == 0) }}
}

func doubles() map[string]func(a, b float64) float64 {
	to := func(digits float64, f func(float64) float64) func(a, b float64) float64 {
		return func(a, b float64) float64 {
			if b != digits {
				return math.NaN()
			}
			return f(a)
		}
	}
	return map[string]func(a, b float64) float64{"POWER": math.Pow, "ROUND": to(0, math.Round), "ROUNDDOWN": to(0, math.Trunc),
		"ROUNDUP": to(0, func(x float64) float64 { return math.Copysign(math.Ceil(math.Abs(x)), x) }),
		"CEILING": to(1, math.Ceil), "FLOOR": to(1, math.Floor)}
}

// total works a function of any number of numbers.
func total(name string, x []float64) float64 {
	out := x[0]
	for _, v := range x[1:] {
		switch name {
		case "SUM", "AVERAGE":
			out += v
		case "PRODUCT":
			out *= v
		case "MIN":
			out = math.Min(out, v)
		case "MAX":
			out = math.Max(out, v)
		case "AND":
			out = math.Min(yes(out != 0), yes(v != 0))
		case "OR":
			out = math.Max(yes(out != 0), yes(v != 0))
		}
	}
	switch name {
	case "AVERAGE":
		return out / float64(len(x))
	case "SUM", "PRODUCT", "MIN", "MAX":
		return out
	case "AND", "OR":
		return yes(out != 0)
	}
	return math.NaN()
}
