package back

import (
	"fmt"
	"math"
	"strings"

	"thawbook/engine/workbook/calc"
)

// call says a function of the open standard with ours.
func (t *translator) call(n *calc.Term) (said, error) {
	args := n.Args
	wrong := fmt.Errorf("it uses %s, which has no match here", n.Text)
	switch count := len(args); {
	case n.Text == "IF" && count == 3:
		return t.condition(args)
	case n.Text == "AND" || n.Text == "OR":
		return t.all(strings.ToLower(n.Text), args)
	case n.Text == "NOT" && count == 1:
		text, err := t.truth(args[0])
		return said{text: "(not " + text + ")", kind: truthful}, err
	case n.Text == "INDEX" && count == 2:
		return t.lookUp(args, wrong)
	case n.Text == "SUM" || n.Text == "AVERAGE" || n.Text == "MIN" || n.Text == "MAX" || n.Text == "PRODUCT":
		return t.over(n, wrong)
	case count == 1:
		form, ok := map[string]string{"ABS": "abs(%s)", "SQRT": "sqrt(%s)", "EXP": "exp(%s)", "LN": "ln(%s)", "INT": "floor(%s)",
			"LOG10": "(ln(%s) / 2.302585092994046)"}[n.Text]
		if ok {
			return t.joined(form, numeric, args...)
		}
	case count == 2 && n.Text == "POWER":
		return t.joined("((%s)^(%s))", numeric, args...)
	case count == 2 && isNumber(args[1], 0):
		form, ok := map[string]string{"ROUND": "round(%s)", "ROUNDUP": "(%[1]s < 0 ? floor(%[1]s) : ceil(%[1]s))", "ROUNDDOWN": "(%[1]s < 0 ? ceil(%[1]s) : floor(%[1]s))"}[n.Text]
		if ok {
			return t.joined(form, numeric, args[0])
		}
	case count == 2 && isNumber(args[1], 1):
		form, ok := map[string]string{"CEILING": "ceil(%s)", "FLOOR": "floor(%s)"}[n.Text]
		if ok {
			return t.joined(form, numeric, args[0])
		}
	}
	return said{}, wrong
}

func isNumber(n *calc.Term, x float64) bool { return n.Op == calc.Number && n.Value == x }

func (t *translator) condition(args []*calc.Term) (said, error) {
	test, err := t.truth(args[0])
	if err != nil {
		return said{}, err
	}
	// How a yes or no goes into its cell.
	if isNumber(args[1], 1) && isNumber(args[2], 0) && t.entry.Unit == "yes/no" {
		return said{text: test, kind: truthful}, nil
	}
	yes, err := t.number(args[1])
	if err != nil {
		return said{}, err
	}
	no, err := t.number(args[2])
	return said{text: "(" + test + " ? " + yes + " : " + no + ")"}, err
}

func (t *translator) all(word string, args []*calc.Term) (said, error) {
	texts := make([]string, len(args))
	for i, a := range args {
		text, err := t.truth(a)
		if err != nil {
			return said{}, err
		}
		texts[i] = text
	}
	return said{text: "(" + strings.Join(texts, " "+word+" ") + ")", kind: truthful}, nil
}

// lookUp is INDEX over a table's column with MATCH of a choice over its ids.
func (t *translator) lookUp(args []*calc.Term, wrong error) (said, error) {
	choice, table, column, ok := t.looked(args)
	if !ok {
		return said{}, wrong
	}
	unit := ""
	for _, c := range t.here.Sheet.Table(table).Columns {
		if c.ID == column {
			unit = c.Unit
		}
	}
	return t.counted(table+"["+t.here.Slots[choice].ID()+"]."+column, unit), nil
}

func (t *translator) looked(args []*calc.Term) (choice int, table, column string, ok bool) {
	m := args[1]
	if m.Op != calc.Call || m.Text != "MATCH" || len(m.Args) != 3 || !isNumber(m.Args[2], 0) {
		return 0, "", "", false
	}
	choice = t.slot(m.Args[0])
	table, column, ok = t.column(args[0])
	if !ok || choice < 0 {
		return 0, "", "", false
	}
	of, ok := t.ids(m.Args[1])
	return choice, table, column, ok && of == table
}

// over is a function over a column, or over numbers one by one.
func (t *translator) over(n *calc.Term, wrong error) (said, error) {
	if len(n.Args) == 1 {
		name := map[string]string{"SUM": "sum", "AVERAGE": "mean", "MIN": "min", "MAX": "max"}[n.Text]
		table, column, ok := t.column(n.Args[0])
		if !ok || name == "" {
			return said{}, wrong
		}
		unit := ""
		for _, c := range t.here.Sheet.Table(table).Columns {
			if c.ID == column {
				unit = c.Unit
			}
		}
		return t.counted(name+"("+table+"."+column+")", unit), nil
	}
	texts := make([]string, len(n.Args))
	for i, a := range n.Args {
		text, err := t.number(a)
		if err != nil {
			return said{}, err
		}
		texts[i] = text
	}
	switch n.Text {
	case "SUM":
		return said{text: "(" + strings.Join(texts, " + ") + ")"}, nil
	case "PRODUCT":
		return said{text: "(" + strings.Join(texts, " * ") + ")"}, nil
	case "AVERAGE":
		return said{text: fmt.Sprintf("((%s) / %d)", strings.Join(texts, " + "), len(texts))}, nil
	}
	return said{text: strings.ToLower(n.Text) + "(" + strings.Join(texts, ", ") + ")"}, nil
}

// work works a term on numbers of slots, a yes or no as 1 or 0. What cannot be
// worked comes to NaN.
func (t *translator) work(n *calc.Term, get func(int) float64) float64 {
	if t.left--; t.left < 0 {
		return math.NaN()
	}
	arg := func(i int) float64 { return t.work(n.Args[i], get) }
	switch n.Op {
	case calc.Number, calc.Truth:
		return n.Value
	case calc.Neg:
		return -arg(0)
	case calc.Share:
		return arg(0) / 100
	case calc.Cells, calc.Named:
		return t.workReference(n, get)
	case calc.Binary:
		return t.workBinary(n, get)
	case calc.Call:
		return t.workCall(n, get)
	}
	return math.NaN()
}

func (t *translator) workReference(n *calc.Term, get func(int) float64) float64 {
	if i := t.slot(n); i >= 0 {
		return get(i)
	}
	at := t.spotsOf(n)
	if len(at) != 1 || t.depth > 8 {
		return math.NaN()
	}
	inner, err := calc.Parse(at[0].cell().Formula)
	if err != nil {
		return math.NaN()
	}
	t.depth++
	defer func() { t.depth-- }()
	return t.work(inner, get)
}

func (t *translator) workBinary(n *calc.Term, get func(int) float64) float64 {
	for i, a := range n.Args {
		if a.Op == calc.Text {
			return t.workChoice(n, n.Args[1-i], a.Text, get)
		}
	}
	a, b := t.work(n.Args[0], get), t.work(n.Args[1], get)
	if a != a || b != b {
		return math.NaN()
	}
	switch n.Text {
	case "+":
		return a + b
	case "-":
		return a - b
	case "*":
		return a * b
	case "/":
		return a / b
	case "^":
		return math.Pow(a, b)
	case "=":
		return yes(a == b)
	case "<>":
		return yes(a != b)
	case "<":
		return yes(a < b)
	case "<=":
		return yes(a <= b)
	case ">":
		return yes(a > b)
	case ">=":
		return yes(a >= b)
	}
	return math.NaN()
}

func yes(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func (t *translator) workChoice(n, side *calc.Term, name string, get func(int) float64) float64 {
	i := t.slot(side)
	if i < 0 || len(t.here.Slots[i].Names) == 0 {
		return math.NaN()
	}
	is := strings.EqualFold(t.here.Slots[i].Names[int(get(i))], name)
	return yes(is == (n.Text == "="))
}
