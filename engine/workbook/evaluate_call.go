package workbook

import (
	"math"
	"strings"
)

// call works one function of those that the speller writes. Its bracket is open.
func (e *evaluator) call(name string) value {
	if name == "IF" {
		return e.condition()
	}
	var args []value
	for e.next(")") == "" {
		if len(args) > 0 && e.next(",") == "" {
			return e.wrong()
		}
		args = append(args, e.compare())
		if e.fault {
			return value{bad: true}
		}
	}
	switch name {
	case "INDEX", "MATCH":
		return e.look(name, args)
	case "NA":
		return value{bad: true}
	}
	return e.work(name, args)
}

// condition works the side that is taken and reads over the other.
func (e *evaluator) condition() value {
	test := e.compare()
	if e.next(",") == "" {
		return e.wrong()
	}
	a := e.compare()
	if e.next(",") == "" {
		return e.wrong()
	}
	b := e.compare()
	if e.next(")") == "" {
		return e.wrong()
	}
	switch {
	case test.bad || test.isText:
		return value{bad: true}
	case test.number != 0:
		return a
	}
	return b
}

// work is a function of numbers. Cells of a name for several that hold no number
// are passed over, as the standard has it.
func (e *evaluator) work(name string, args []value) value {
	var xs []float64
	for _, a := range args {
		switch {
		case a.bad || a.isText:
			return value{bad: true}
		case a.list == nil:
			xs = append(xs, a.number)
		}
		for _, cell := range a.list {
			if cell.bad {
				return value{bad: true}
			}
			if !cell.isText {
				xs = append(xs, cell.number)
			}
		}
	}
	if len(xs) == 0 {
		return e.wrong()
	}
	switch name {
	case "MIN", "MAX", "SUM", "AVERAGE", "AND", "OR":
		return fold(name, xs)
	case "ABS":
		return num(math.Abs(xs[0]))
	case "INT":
		return num(math.Floor(xs[0]))
	case "SQRT":
		return num(math.Sqrt(xs[0]))
	case "EXP":
		return num(math.Exp(xs[0]))
	case "LN":
		return num(math.Log(xs[0]))
	case "ROUND":
		return num(math.Round(xs[0])) // the speller rounds to wholes only
	case "NOT":
		return yes(xs[0] == 0)
	}
	return e.wrong()
}

func fold(name string, xs []float64) value {
	out := xs[0]
	for _, x := range xs[1:] {
		switch name {
		case "MIN":
			out = math.Min(out, x)
		case "MAX":
			out = math.Max(out, x)
		case "SUM", "AVERAGE":
			out += x
		case "AND":
			out = yes(out != 0 && x != 0).number
		case "OR":
			out = yes(out != 0 || x != 0).number
		}
	}
	switch name {
	case "AVERAGE":
		out /= float64(len(xs))
	case "AND", "OR":
		out = yes(out != 0).number
	}
	return num(out)
}

// look is INDEX over a column, or MATCH of a text in one.
func (e *evaluator) look(name string, args []value) value {
	if len(args) < 2 || args[0].bad || args[1].bad {
		return value{bad: true}
	}
	if name == "INDEX" {
		at := int(args[1].number)
		if at < 1 || at > len(args[0].list) {
			return value{bad: true}
		}
		return args[0].list[at-1]
	}
	for i, cell := range args[1].list {
		if cell.isText && args[0].isText && strings.EqualFold(cell.text, args[0].text) {
			return value{number: float64(i + 1)}
		}
	}
	return value{bad: true}
}
