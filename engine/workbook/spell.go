package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thawbook/engine/formula"
)

// How tightly the parts of a formula hold together.
const (
	comparing = iota
	adding
	multiplying
	whole // a name, a number, a call, or anything in brackets
)

// piece is a stretch of a workbook formula.
type piece struct {
	text string
	hold int // comparing, adding, multiplying or whole
	// deep counts the brackets inside each other.
	deep int
	// fixed says the piece is the number value.
	fixed bool
	value float64
	// picked is the look-up by a choice that the piece is, when it is one among
	// the names that an argument may have.
	picked *formula.Node
	// name says the piece is a defined name; light that it is one times a number,
	// as a conversion is, and may be said again without a cell of its own.
	name, light bool
}

// Where a formula is cut into steps. The standard allows 8,192 characters and
// programs 64 brackets inside each other; both are kept well away from, because
// other programs write formulas back longer than they read them.
const (
	longest = 1200
	deepest = 24
)

// step is a part of a working that stands in a cell of its own.
type step struct {
	Name string
	// About says what it is, for people.
	About   string
	Formula string
}

// speller writes checked workings as formulas that any program of the open
// standard can follow: names, + - * / ^, comparisons and a few functions.
type speller struct {
	names *planNames
	steps []step
	// known are the steps by what they work out, so that two lines share one.
	known map[string]piece
	// owner are the words of the line in hand and label what people call it.
	owner []string
	label string
	lets  map[int]piece
	table map[string]expansion
	// stuck says why the line in hand cannot be spelt out.
	stuck string
}

func newSpeller(names *planNames) *speller {
	return &speller{names: names, known: map[string]piece{}, table: expansions()}
}

// line is the formula of a slot, without a leading sign. why is "" unless the
// slot cannot be spelt out; it then goes out as a number.
func (s *speller) line(slot *formula.Slot) (text, why string) {
	s.owner, s.label, s.lets, s.stuck = words(slot.Line), slot.Line.Label, map[int]piece{}, ""
	before := len(s.steps)
	p := s.node(slot.Expr)
	if s.stuck != "" {
		for _, gone := range s.steps[before:] {
			for text, known := range s.known {
				if known.text == gone.Name {
					delete(s.known, text)
				}
			}
		}
		s.steps = s.steps[:before]
		return "", s.stuck
	}
	if slot.Kind == formula.Truth {
		return "IF(" + p.text + ",1,0)", ""
	}
	return bare(p.text), ""
}

// bare takes off brackets that stand around the whole of a formula.
func bare(text string) string {
	if !strings.HasPrefix(text, "(") || !strings.HasSuffix(text, ")") {
		return text
	}
	depth := 0
	for i, c := range text[:len(text)-1] {
		switch c {
		case '(':
			depth++
		case ')':
			depth--
		}
		if depth == 0 && i > 0 {
			return text
		}
	}
	return text[1 : len(text)-1]
}

// node spells n, and sets what has grown too long or too deep apart.
func (s *speller) node(n *formula.Node) piece {
	p := s.work(n)
	if (len(p.text) > longest || p.deep > deepest) && n.Kind == formula.Number {
		return s.apart("part of the working of "+s.label, p)
	}
	return p
}

func (s *speller) work(n *formula.Node) piece {
	switch n.Op {
	case formula.Const:
		return s.constant(n)
	case formula.Ref:
		return s.ref(n)
	case formula.Var:
		return s.lets[n.Slot]
	case formula.Let:
		s.lets[n.Slot] = s.let(n)
		return s.node(n.Args[1])
	case formula.Neg:
		return bracketed("-" + s.tight(n.Args[0], whole).text)
	case formula.Not:
		return call("NOT", s.node(n.Args[0]))
	case formula.And:
		return call("AND", s.node(n.Args[0]), s.node(n.Args[1]))
	case formula.Or:
		return call("OR", s.node(n.Args[0]), s.node(n.Args[1]))
	case formula.If:
		return call("IF", s.node(n.Args[0]), s.node(n.Args[1]), s.node(n.Args[2]))
	case formula.Pick:
		return s.pick(n)
	case formula.Sum, formula.Mean:
		return s.total(n)
	case formula.Pow:
		return s.power(n)
	case formula.Call:
		return s.call(n)
	case formula.Add, formula.Sub, formula.Mul, formula.Div,
		formula.Less, formula.LessEq, formula.More, formula.MoreEq, formula.Equal, formula.Differ:
		return s.twoSides(n)
	}
	return s.give("it has a part that no workbook can follow")
}

// give gives the line in hand up.
func (s *speller) give(why string) piece {
	if s.stuck == "" {
		s.stuck = why
	}
	return piece{text: "0", hold: whole}
}

func (s *speller) constant(n *formula.Node) piece {
	switch n.Kind {
	case formula.Truth:
		return piece{text: strings.ToUpper(strconv.FormatBool(n.Value != 0)), hold: whole}
	case formula.Choice:
		return quoted(n.Name)
	}
	return number(n.Value)
}

func (s *speller) ref(n *formula.Node) piece {
	p := piece{text: s.names.value[n.Slot], hold: whole, name: true}
	if n.Kind == formula.Truth {
		return piece{text: p.text + "<>0", hold: comparing}
	}
	return p
}

// let stands apart under its own name, as a truth is held in cells: 1 or 0.
func (s *speller) let(n *formula.Node) piece {
	value := n.Args[0]
	p := s.node(value)
	if value.Kind != formula.Truth {
		return s.atom(fmt.Sprintf("%q in the working of %s", n.Name, s.label), p)
	}
	held := s.apart(fmt.Sprintf("%q in the working of %s, 1 for yes", n.Name, s.label), call("IF", p, number(1), number(0)))
	return piece{text: held.text + "<>0", hold: comparing}
}

// sign is how an operation reads, and how tightly it holds.
func sign(op formula.Op) (text string, hold int) {
	switch op {
	case formula.Add:
		return "+", adding
	case formula.Sub:
		return "-", adding
	case formula.Mul:
		return "*", multiplying
	case formula.Div:
		return "/", multiplying
	case formula.Less:
		return "<", comparing
	case formula.LessEq:
		return "<=", comparing
	case formula.More:
		return ">", comparing
	case formula.MoreEq:
		return ">=", comparing
	case formula.Equal:
		return "=", comparing
	}
	return "<>", comparing
}

func (s *speller) twoSides(n *formula.Node) piece {
	text, hold := sign(n.Op)
	// The right side holds tighter, because a-(b-c) is not a-b-c and a*(b*c) does
	// not round as a*b*c does.
	a, b := s.tight(n.Args[0], hold), s.tight(n.Args[1], hold+1)
	if hold == comparing {
		a = s.tight(n.Args[0], adding)
	}
	return piece{text: a.text + text + b.text, hold: hold, deep: max(a.deep, b.deep), light: n.Conversion && n.Op == formula.Mul && a.name}
}

// power has both sides in brackets: programs differ on which of - and ^ comes
// first, and on which of two ^ does. Nothing to the power of nothing is 1 here
// and an error there.
func (s *speller) power(n *formula.Node) piece {
	a, b := s.tight(n.Args[0], whole), s.tight(n.Args[1], whole)
	if b.fixed && b.value != 0 {
		return piece{text: a.text + "^" + b.text, hold: multiplying, deep: max(a.deep, b.deep)}
	}
	b = s.atom("an exponent in the working of "+s.label, b)
	return call("IF", piece{text: b.text + "=0"}, number(1), piece{text: a.text + "^" + b.text, deep: a.deep})
}

// tight spells n in brackets unless it holds at least that tightly.
func (s *speller) tight(n *formula.Node, hold int) piece { return s.node(n).tight(hold) }

func (p piece) tight(hold int) piece {
	if p.hold >= hold {
		return p
	}
	out := bracketed(p.text)
	out.deep = p.deep + 1
	return out
}

func bracketed(text string) piece { return piece{text: "(" + text + ")", hold: whole, deep: 1} }

// call is a function of the open standard over pieces.
func call(name string, args ...piece) piece {
	texts, deep := make([]string, len(args)), 0
	for i, a := range args {
		texts[i], deep = a.text, max(deep, a.deep)
	}
	return piece{text: name + "(" + strings.Join(texts, ",") + ")", hold: whole, deep: deep + 1}
}

// number writes x in full; one below nothing stands in brackets, since programs
// differ on what -2^2 is.
func number(x float64) piece {
	text := strconv.FormatFloat(math.Abs(x), 'f', -1, 64)
	if a := math.Abs(x); a != 0 && (a < 1e-6 || a >= 1e15) {
		text = strconv.FormatFloat(a, 'E', -1, 64)
	}
	if x < 0 {
		text = "(-" + text + ")"
	}
	return piece{text: text, hold: whole, fixed: true, value: x}
}

// quoted is a text in a formula. Names of choices have small letters, digits and
// _ only, so a quote within is doubled for form's sake.
func quoted(text string) piece {
	return piece{text: `"` + strings.ReplaceAll(text, `"`, `""`) + `"`, hold: whole}
}

// missing is what stands where our functions come to no number.
func missing() piece { return piece{text: "NA()", hold: whole, deep: 1} }

// atom is p itself when it is a name, a number or a name converted, else a step: for what is said
// more than once.
func (s *speller) atom(about string, p piece) piece {
	switch {
	case p.name || p.fixed:
		return p
	case p.light:
		return p.tight(whole)
	}
	return s.apart(about, p)
}

// apart puts a piece in a cell of its own, once for each text.
func (s *speller) apart(about string, p piece) piece {
	return s.called(append(append([]string{}, s.owner...), "step"), true, about, p)
}

// called is apart under a name of the caller's; counted puts a number behind.
func (s *speller) called(name []string, counted bool, about string, p piece) piece {
	if known, ok := s.known[p.text]; ok {
		return known
	}
	if counted {
		k := 1
		for s.names.namer.taken[strings.Join(name, "_")+"_"+strconv.Itoa(k)] {
			k++
		}
		name = append(name, strconv.Itoa(k))
	}
	out := piece{text: s.names.namer.name(s.names.number, name...), hold: whole, name: true}
	s.steps = append(s.steps, step{Name: out.text, About: about, Formula: p.text})
	s.known[p.text] = out
	return out
}

// pick looks a table up by a choice, or goes through the choice's names.
func (s *speller) pick(n *formula.Node) piece {
	choice := s.node(n.Args[0])
	if ids, column, ok := s.names.looked(n.Args[0], n.Args[1:]); ok {
		return call("INDEX", piece{text: column}, call("MATCH", choice, piece{text: ids}, number(0)))
	}
	return s.among(n, s.node)
}

// among goes through the names of a choice; what gives what each stands for.
func (s *speller) among(n *formula.Node, what func(*formula.Node) piece) piece {
	choice, out := s.node(n.Args[0]), missing()
	for i := len(n.Args) - 1; i >= 1; i-- {
		if i > len(n.Args[0].Names) {
			return s.give("it looks up a name that is not there")
		}
		test := piece{text: choice.text + "=" + quoted(n.Args[0].Names[i-1]).text}
		out = call("IF", test, what(n.Args[i]), out)
		if out.deep > deepest {
			out = s.apart("part of the working of "+s.label, out)
		}
	}
	out.picked = n
	return out
}

func (s *speller) total(n *formula.Node) piece {
	name := "SUM"
	if n.Op == formula.Mean {
		name = "AVERAGE"
	}
	return s.over(name, n.Args)
}

// over is a function over a whole column by its name, or over pieces. A cell
// that holds no number is passed over by these functions where a sum with +
// would stop, so anything but a whole column is worked out first.
func (s *speller) over(name string, nodes []*formula.Node) piece {
	if column := s.names.column(nodes); column != "" {
		return call(name, piece{text: column})
	}
	args := make([]piece, len(nodes))
	for i, n := range nodes {
		args[i] = s.node(n)
	}
	return call(name, args...)
}
