package workbook

import (
	"math"
	"strconv"
	"strings"
)

// value is what a stretch of a workbook formula comes to.
type value struct {
	number float64
	text   string
	isText bool
	list   []value // of a name for several cells; nil for a single one
	bad    bool    // an error, whichever
}

func num(x float64) value {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return value{bad: true}
	}
	return value{number: x}
}

func yes(b bool) value {
	if b {
		return value{number: 1}
	}
	return value{}
}

// evaluator works the formulas that this package writes, and only those: what
// goes out is worked once before it goes, so that every cell carries its number
// and nothing leaves that does not come to what the sheet came to. It follows
// the open standard: an error stays one through every step but the side of a
// condition that is not taken.
type evaluator struct {
	of    func(name string) (value, bool)
	text  string
	at    int
	fault bool
}

// evaluate works one formula; ok is false when it is none of ours.
func evaluate(text string, of func(name string) (value, bool)) (v value, ok bool) {
	e := &evaluator{of: of, text: text}
	v = e.compare()
	return v, !e.fault && e.at == len(text)
}

func (e *evaluator) next(signs ...string) string {
	for _, s := range signs {
		if strings.HasPrefix(e.text[e.at:], s) {
			e.at += len(s)
			return s
		}
	}
	return ""
}

func (e *evaluator) wrong() value {
	e.fault = true
	e.at = len(e.text)
	return value{bad: true}
}

func (e *evaluator) compare() value {
	a := e.sum()
	sign := e.next("<=", ">=", "<>", "<", ">", "=")
	if sign == "" {
		return a
	}
	b := e.sum()
	if a.bad || b.bad {
		return value{bad: true}
	}
	order := 0
	switch {
	case a.isText && b.isText:
		order = strings.Compare(strings.ToLower(a.text), strings.ToLower(b.text))
	case a.isText || b.isText: // a text comes after every number
		order = 1
		if b.isText {
			order = -1
		}
	case a.number < b.number:
		order = -1
	case a.number > b.number:
		order = 1
	}
	switch sign {
	case "<":
		return yes(order < 0)
	case "<=":
		return yes(order <= 0)
	case ">":
		return yes(order > 0)
	case ">=":
		return yes(order >= 0)
	case "=":
		return yes(order == 0)
	}
	return yes(order != 0)
}

func (e *evaluator) sum() value {
	a := e.product()
	for {
		switch e.next("+", "-") {
		case "+":
			a = both(a, e.product(), func(x, y float64) float64 { return x + y })
		case "-":
			a = both(a, e.product(), func(x, y float64) float64 { return x - y })
		default:
			return a
		}
	}
}

func (e *evaluator) product() value {
	a := e.power()
	for {
		switch e.next("*", "/") {
		case "*":
			a = both(a, e.power(), func(x, y float64) float64 { return x * y })
		case "/":
			a = both(a, e.power(), func(x, y float64) float64 { return x / y })
		default:
			return a
		}
	}
}

func (e *evaluator) power() value {
	a := e.signed()
	for e.next("^") != "" {
		a = both(a, e.signed(), func(x, y float64) float64 {
			if x == 0 && y == 0 {
				return math.NaN()
			}
			return math.Pow(x, y)
		})
	}
	return a
}

func (e *evaluator) signed() value {
	if e.next("-") != "" {
		return both(value{}, e.signed(), func(_, y float64) float64 { return -y })
	}
	return e.single()
}

func both(a, b value, work func(x, y float64) float64) value {
	if a.bad || b.bad || a.isText || b.isText || a.list != nil || b.list != nil {
		return value{bad: true}
	}
	return num(work(a.number, b.number))
}

func (e *evaluator) single() value {
	rest := e.text[e.at:]
	switch {
	case rest == "":
		return e.wrong()
	case e.next("(") != "":
		v := e.compare()
		if e.next(")") == "" {
			return e.wrong()
		}
		return v
	case rest[0] == '"':
		end := strings.IndexByte(rest[1:], '"')
		if end < 0 {
			return e.wrong()
		}
		e.at += end + 2
		return value{text: rest[1 : 1+end], isText: true}
	case rest[0] >= '0' && rest[0] <= '9':
		return e.literal(rest)
	}
	return e.named(rest)
}

func (e *evaluator) literal(rest string) value {
	n := 0
	for n < len(rest) && (strings.IndexByte("0123456789.E", rest[n]) >= 0 || n > 0 && rest[n-1] == 'E' && (rest[n] == '+' || rest[n] == '-')) {
		n++
	}
	x, err := strconv.ParseFloat(rest[:n], 64)
	if err != nil {
		return e.wrong()
	}
	e.at += n
	return num(x)
}

// named is a name, a truth, or a call.
func (e *evaluator) named(rest string) value {
	n := 0
	for n < len(rest) && (rest[n] == '_' || rest[n] >= 'a' && rest[n] <= 'z' || rest[n] >= 'A' && rest[n] <= 'Z' || rest[n] >= '0' && rest[n] <= '9') {
		n++
	}
	name := rest[:n]
	e.at += n
	switch {
	case name == "":
		return e.wrong()
	case e.next("(") != "":
		return e.call(name)
	case name == "TRUE" || name == "FALSE":
		return yes(name == "TRUE")
	}
	v, ok := e.of(name)
	if !ok {
		return e.wrong()
	}
	return v
}
