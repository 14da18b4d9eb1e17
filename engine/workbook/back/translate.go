package back

import (
	"errors"
	"fmt"
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/calc"
)

// maxSteps is far above what the formulas of a whole sheet take.
const maxSteps = 5_000_000

var errTooMuch = errors.New("its working is too much to follow")

type saidKind uint8

const (
	numeric saidKind = iota
	truthful
	chosen
	wordy
)

// said is a part of a formula in our language.
type said struct {
	text string
	kind saidKind
	// id is the line of a choice.
	id string
}

// translator says one formula in our language.
type translator struct {
	*comparer
	entry workbook.Entry
	// bare takes the unit off everything.
	bare bool
	// own is what the line's own formula was written as.
	own *calc.Term
	// depth counts steps within steps.
	depth int
}

func (t *translator) say(n *calc.Term) (said, error) {
	if t.left--; t.left < 0 {
		return said{}, errTooMuch
	}
	if t.own != nil && n.Op != calc.Named && n.Op != calc.Number && calc.Same(n, t.own) {
		return t.counted("("+t.entry.Formula+")", t.entry.Unit), nil
	}
	switch n.Op {
	case calc.Number:
		return said{text: constant(n.Value)}, nil
	case calc.Truth:
		if n.Value != 0 {
			return said{text: "true", kind: truthful}, nil
		}
		return said{text: "false", kind: truthful}, nil
	case calc.Text:
		return said{text: n.Text, kind: wordy}, nil
	case calc.Cells, calc.Named:
		return t.refer(n)
	case calc.Neg:
		return t.joined("(-%s)", numeric, n.Args...)
	case calc.Share:
		return t.joined("(%s / 100)", numeric, n.Args...)
	case calc.Binary:
		return t.binary(n)
	}
	return t.call(n)
}

func constant(x float64) string {
	text := sheet.FormatNumber(x)
	if strings.HasPrefix(text, "-") {
		return "(" + text + ")"
	}
	return text
}

// counted is a quantity, its unit taken off when the way is bare.
func (t *translator) counted(text, unit string) said {
	switch {
	case unit == "yes/no":
		return said{text: text, kind: truthful}
	case t.bare && unit != "1":
		return said{text: "number(" + text + ", " + inQuotes(unit) + ")"}
	}
	return said{text: text}
}

// joined puts numbers into a form.
func (t *translator) joined(form string, kind saidKind, args ...*calc.Term) (said, error) {
	texts := make([]any, len(args))
	for i, a := range args {
		text, err := t.number(a)
		if err != nil {
			return said{}, err
		}
		texts[i] = text
	}
	text := fmt.Sprintf(form, texts...)
	if len(text) > calc.MaxRunes {
		return said{}, errTooMuch
	}
	return said{text: text, kind: kind}, nil
}

func (t *translator) number(n *calc.Term) (string, error) {
	p, err := t.say(n)
	switch {
	case err != nil:
		return "", err
	case p.kind == truthful:
		return "(" + p.text + " ? 1 : 0)", nil
	case p.kind != numeric:
		return "", errors.New("it works with words")
	}
	return p.text, nil
}

func (t *translator) truth(n *calc.Term) (string, error) {
	p, err := t.say(n)
	switch {
	case err != nil:
		return "", err
	case p.kind == numeric:
		return "(" + p.text + " != 0)", nil
	case p.kind != truthful:
		return "", errors.New("it asks a word for yes or no")
	}
	return p.text, nil
}

func (t *translator) binary(n *calc.Term) (said, error) {
	switch n.Text {
	case "+", "-", "*", "/":
		return t.joined("(%s "+n.Text+" %s)", numeric, n.Args...)
	case "^":
		return t.joined("((%s)^(%s))", numeric, n.Args...)
	case "&":
		return said{}, errors.New("it puts words together")
	}
	sign := n.Text
	if sign == "=" {
		sign = "=="
	} else if sign == "<>" {
		sign = "!="
	}
	a, err := t.say(n.Args[0])
	if err != nil {
		return said{}, err
	}
	b, err := t.say(n.Args[1])
	if err != nil {
		return said{}, err
	}
	if a.kind == wordy {
		a, b = b, a
	}
	switch {
	case a.kind == chosen && b.kind == wordy && (sign == "==" || sign == "!="):
		return said{text: "(" + a.text + " " + sign + " " + inQuotes(b.text) + ")", kind: truthful}, nil
	case a.kind == truthful && sign == "!=" && n.Args[1].Op == calc.Number && n.Args[1].Value == 0:
		return a, nil // how a yes or no is read from its cell
	}
	return t.joined("(%s "+sign+" %s)", truthful, n.Args...)
}

// refer is a line, a cell of a table or a step of a working.
func (t *translator) refer(n *calc.Term) (said, error) {
	id, part, err := t.referent(n)
	if err != nil {
		return t.step(n, err)
	}
	line := t.here.Sheet.Find(id)
	switch {
	case part == workbook.Low || part == workbook.High:
		return said{}, fmt.Errorf("it reads the %s of %s", part, t.label(id))
	case line == nil:
		return said{}, fmt.Errorf("it reads %s, which is no longer in the sheet", id)
	case line.Kind == sheet.Choose:
		return said{text: id, kind: chosen, id: id}, nil
	}
	return t.counted(id, line.Unit), nil
}

// step says the formula of a cell that is none of a line's.
func (t *translator) step(n *calc.Term, why error) (said, error) {
	at := t.spotsOf(n)
	if len(at) != 1 || at[0].cell().Formula == "" || t.depth > 8 {
		return said{}, why
	}
	inner, err := calc.Parse(at[0].cell().Formula)
	if err != nil {
		return said{}, why
	}
	t.depth++
	defer func() { t.depth-- }()
	return t.say(inner)
}

// spotsOf are the cells that a name or an address means.
func (t *translator) spotsOf(n *calc.Term) []spot {
	r := n.At
	if n.Op == calc.Named {
		named, ok := t.names[lower(n.Text)]
		if !ok {
			return nil
		}
		r = named
	}
	if r.Sheet == "" {
		if at, found := t.cells[cellKey{lineKey{t.plan, t.entry.ID}, t.entry.Part}]; found {
			r.Sheet = at.sheet.Name
		}
	}
	at := t.spots(r)
	if t.left -= len(at); t.left < 0 {
		return nil
	}
	return at
}

// referent is the line and the part that a name or an address means.
func (t *translator) referent(n *calc.Term) (id string, part workbook.Part, err error) {
	if n.Op == calc.Named {
		if e, ok := t.named()[lower(n.Text)]; ok {
			if e.Plan != t.plan {
				return "", "", fmt.Errorf("it reads %s of another plan", e.ID)
			}
			return e.ID, e.Part, nil
		}
	}
	at := t.spotsOf(n)
	if len(at) == 1 {
		if k, ok := t.meaning()[at[0]]; ok && k.plan == t.plan {
			return k.id, k.part, nil
		}
	}
	if n.Op == calc.Named {
		return "", "", fmt.Errorf("it reads %q, which is none of ours", short(n.Text))
	}
	return "", "", errors.New("it reads a cell that is none of ours")
}

// column is the table's column whose every row's number the term means.
func (t *translator) column(n *calc.Term) (table, column string, ok bool) {
	if n.Op != calc.Named && n.Op != calc.Cells {
		return "", "", false
	}
	at := t.spotsOf(n)
	for _, s := range at {
		if s.cell().Kind == 0 && s.cell().Formula == "" {
			continue // a row left empty
		}
		k, known := t.meaning()[s]
		words := strings.Split(k.id, ".")
		if !known || k.part != workbook.Value || len(words) != 3 || table != "" && (words[0] != table || words[2] != column) {
			return "", "", false
		}
		table, column = words[0], words[2]
	}
	tb := t.here.Sheet.Table(table)
	return table, column, tb != nil && len(tb.Rows) == len(at)
}

// ids is the table whose rows' ids the term means.
func (t *translator) ids(n *calc.Term) (table string, ok bool) {
	at := t.spotsOf(n)
	for _, s := range at {
		of, found := t.idsAt()[s]
		if !found || table != "" && of != table {
			return "", false
		}
		table = of
	}
	return table, table != ""
}

// slot is the slot of the line that a term means, -1 for none.
func (t *translator) slot(n *calc.Term) int {
	id, part, err := t.referent(n)
	if err != nil || part != workbook.Value {
		return -1
	}
	return t.here.Find(id)
}
