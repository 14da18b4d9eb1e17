package calc

import (
	"fmt"
	"math"
	"strings"
)

// Op is what a [Term] is.
type Op uint8

// The kinds of term.
const (
	Number Op = iota // Value
	Text             // Text
	Truth            // Value is 1 or 0
	Cells            // At
	Named            // Text is a defined name, as written
	Call             // Text is a function in capitals, over Args
	Neg              // -a
	Share            // a %
	Binary           // Text is + - * / ^ & = <> < <= > >=, over two Args
)

// Term is a formula, or a part of one.
type Term struct {
	Op    Op
	Text  string
	Value float64
	At    Range
	Args  []*Term
}

// Parse makes a tree of a formula, without its leading sign. The error says, in
// words that can follow "because", what it holds that is not understood.
func Parse(formula string) (*Term, error) {
	tokens, err := lex(formula)
	if err != nil {
		return nil, err
	}
	p := &parser{tokens: tokens}
	out := p.comparison()
	if p.err == nil && p.now().kind != end {
		p.fail("%q is not understood", p.now().text)
	}
	return out, p.err
}

type parser struct {
	tokens []token
	at     int
	depth  int
	err    error
}

func (p *parser) now() token { return p.tokens[p.at] }

// fail records the first thing that is wrong, and goes to the end so that every
// loop stops.
func (p *parser) fail(format string, args ...any) *Term {
	if p.err == nil {
		p.err = fmt.Errorf(format, args...)
	}
	p.at = len(p.tokens) - 1
	return &Term{}
}

// takes goes past a symbol when it is one of those.
func (p *parser) takes(symbols ...string) (string, bool) {
	t := p.now()
	if t.kind != symbol {
		return "", false
	}
	for _, s := range symbols {
		if t.text == s {
			p.at++
			return s, true
		}
	}
	return "", false
}

// chain is operands with operators of one rank between them, the left first.
func (p *parser) chain(operand func() *Term, symbols ...string) *Term {
	out := operand()
	for {
		s, ok := p.takes(symbols...)
		if !ok {
			return out
		}
		out = &Term{Op: Binary, Text: s, Args: []*Term{out, operand()}}
	}
}

func (p *parser) comparison() *Term {
	if p.depth++; p.depth > MaxDepth {
		return p.fail("it is nested deeper than %d", MaxDepth)
	}
	defer func() { p.depth-- }()
	return p.chain(p.joined, "=", "<>", "<", "<=", ">", ">=")
}

func (p *parser) joined() *Term  { return p.chain(p.sum, "&") }
func (p *parser) sum() *Term     { return p.chain(p.product, "+", "-") }
func (p *parser) product() *Term { return p.chain(p.power, "*", "/") }

// power: the standard has signs hold tighter than ^, and ^ run from the left.
func (p *parser) power() *Term { return p.chain(p.signed, "^") }

func (p *parser) signed() *Term {
	signs := 0
	for {
		s, ok := p.takes("-", "+")
		if !ok {
			break
		}
		if s == "-" {
			signs++
		}
	}
	out := p.single()
	for {
		if _, ok := p.takes("%"); !ok {
			break
		}
		out = &Term{Op: Share, Args: []*Term{out}}
	}
	if signs%2 == 1 {
		out = &Term{Op: Neg, Args: []*Term{out}}
	}
	return out
}

func (p *parser) single() *Term {
	t := p.now()
	p.at = min(p.at+1, len(p.tokens)-1)
	switch t.kind {
	case numeral:
		return &Term{Op: Number, Value: t.number}
	case text:
		return &Term{Op: Text, Text: t.text}
	case cells:
		return &Term{Op: Cells, At: t.at}
	case word:
		return p.word(t)
	case fault:
		return p.fail("it holds %s", t.text)
	case end:
		return p.fail("it stops too soon")
	}
	if t.text != "(" {
		return p.fail("%q is not understood", t.text)
	}
	out := p.comparison()
	if _, ok := p.takes(")"); !ok {
		return p.fail("a bracket is not closed")
	}
	return out
}

func (p *parser) word(t token) *Term {
	if _, ok := p.takes("("); !ok {
		switch strings.ToUpper(t.text) {
		case "TRUE":
			return &Term{Op: Truth, Value: 1}
		case "FALSE":
			return &Term{Op: Truth}
		}
		return &Term{Op: Named, Text: t.text}
	}
	name := strings.ToUpper(t.text)
	for _, prefix := range []string{"_XLFN.", "_XLWS."} {
		name = strings.TrimPrefix(name, prefix)
	}
	out := &Term{Op: Call, Text: name}
	if _, ok := p.takes(")"); ok {
		return out
	}
	for p.err == nil {
		out.Args = append(out.Args, p.comparison())
		if _, more := p.takes(",", ";"); more {
			continue
		}
		if _, ok := p.takes(")"); !ok {
			return p.fail("the brackets of %s are not closed", name)
		}
		break
	}
	return out
}

// near is how far two programs' ways of writing one number may differ: some
// write 15 digits.
const near = 1e-14

// Same says whether two formulas do the same by the same names, however they
// are spaced, bracketed and capitalised.
func Same(a, b *Term) bool {
	switch {
	case a.Op == Cells && b.Op == Cells:
		x, y := a.At, b.At
		x.fixed, y.fixed = [4]bool{}, [4]bool{}
		x.Sheet, y.Sheet = strings.ToLower(x.Sheet), strings.ToLower(y.Sheet)
		return x == y
	case a.Op != b.Op || len(a.Args) != len(b.Args):
		return false
	case a.Op == Text && a.Text != b.Text, !strings.EqualFold(a.Text, b.Text):
		return false
	case math.Abs(a.Value-b.Value) > near*math.Abs(a.Value):
		return false
	}
	for i := range a.Args {
		if !Same(a.Args[i], b.Args[i]) {
			return false
		}
	}
	return true
}
