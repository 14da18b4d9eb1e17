package units

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The most a unit text may hold.
const (
	MaxRunes   = 80
	MaxFactors = 12
	maxWritten = 9 // the largest exponent that may be written
)

// ParseError says where a unit text cannot be read. From and To are runes
// within the text, counted from 0; To is one past the last.
type ParseError struct {
	From, To int
	Message  string
	Hint     string
}

// Error is the message with its hint.
func (e *ParseError) Error() string {
	if e.Hint == "" {
		return e.Message
	}
	return e.Message + " (" + e.Hint + ")"
}

// Parse reads a unit text. currency is the ISO code of the sheet's money, such
// as "USD": it and the signs $ € £ ¥ all mean that money, and any other ISO code
// is an error; a currency that is not three letters is none. A word that is no known unit is a count of its own, in the
// singular and whatever its case; Doubts tells which of these look like slips.
// The error is a *ParseError, and the unit is then One.
func Parse(text, currency string) (Unit, error) {
	if folded := strings.TrimSpace(text); strings.EqualFold(folded, yesNoCounts) {
		return YesNo(), nil
	}
	if n := utf8.RuneCountInString(text); n > MaxRunes {
		return One(), &ParseError{MaxRunes, n, fmt.Sprintf("a unit of %d characters is longer than %d", n, MaxRunes), "write a shorter word for the count"}
	}
	p := parser{text: text, currency: codeOf(currency)}
	if err := p.run(); err != nil {
		return One(), err
	}
	return p.unit(), nil
}

// parser reads one text; at is a byte offset.
type parser struct {
	text     string
	currency string
	at       int
	terms    []term
	factors  int
	scaly    bool // a factor was a temperature on a scale
	head     int  // where money that stands first ends
	room     [4]term
}

func (p *parser) run() *ParseError {
	p.terms = p.room[:0]
	sign := 1
	for {
		if err := p.factor(sign); err != nil {
			return err
		}
		p.space()
		from := p.at
		if p.at == len(p.text) {
			return nil
		}
		r := p.next()
		switch {
		case r == '*' || r == '·' || r == '×' || r == '⋅':
			sign = 1
		case r == '/':
			sign = -1
		case p.perAt(from):
			sign, p.at = -1, from+len("per")
		default:
			return p.stray(from, r)
		}
	}
}

// unit makes the unit of what was read.
func (p *parser) unit() Unit {
	out := &parts{terms: append([]term(nil), p.terms...), text: strings.TrimSpace(p.text)}
	out.measure()
	out.scaly = p.scaly && p.factors == 1 && out.terms[0].exp == 1
	if p.head > 0 {
		out.head = p.head - (len(p.text) - len(strings.TrimLeftFunc(p.text, unicode.IsSpace)))
	}
	return Unit{p: out}
}

func (p *parser) next() rune {
	r, size := utf8.DecodeRuneInString(p.text[p.at:])
	p.at += size
	return r
}

func (p *parser) peek() rune {
	if p.at == len(p.text) {
		return 0
	}
	r, _ := utf8.DecodeRuneInString(p.text[p.at:])
	return r
}

func (p *parser) space() {
	for p.at < len(p.text) && unicode.IsSpace(p.peek()) {
		p.next()
	}
}

// fail is an error from a byte offset to where the parser stands.
func (p *parser) fail(from int, hint, format string, args ...any) *ParseError {
	start := utf8.RuneCountInString(p.text[:from])
	return &ParseError{
		From: start, To: start + utf8.RuneCountInString(p.text[from:p.at]),
		Message: fmt.Sprintf(format, args...), Hint: hint,
	}
}

// factor reads a name or a 1, with its exponent.
func (p *parser) factor(sign int) *ParseError {
	p.space()
	from := p.at
	name := p.name()
	if name == "" {
		return p.missing(from)
	}
	if p.factors++; p.factors > MaxFactors {
		return p.fail(from, "", "a unit of more than %d factors", MaxFactors)
	}
	var r reading
	if name[0] >= '0' && name[0] <= '9' {
		if name != "1" {
			return p.numberInside(from, name)
		}
	} else {
		var err *ParseError
		if r, err = p.read(from, name); err != nil {
			return err
		}
	}
	exp, err := p.exponent()
	if err != nil {
		return err
	}
	if p.factors == 1 && exp == 1 && len(r.terms) == 1 && r.terms[0].isMoney() {
		p.head = p.at
	}
	p.scaly = p.scaly || r.scale
	for _, t := range r.terms {
		t.exp *= exp * sign
		p.terms = merge(p.terms, t)
	}
	return nil
}

// name takes a sign that is a name by itself, or words with single spaces
// between them, up to the word "per".
func (p *parser) name() string {
	from := p.at
	if r := p.peek(); strings.ContainsRune(signs, r) && r != 0 {
		p.next()
		return p.text[from:p.at]
	}
	for {
		word := p.at
		for p.at < len(p.text) && isWord(p.peek(), p.at > word) {
			p.next()
		}
		if p.at == word {
			p.at = from + len(strings.TrimRightFunc(p.text[from:word], unicode.IsSpace))
			return p.text[from:p.at]
		}
		if p.text[word:p.at] == "per" {
			if word == from {
				return p.text[from:p.at]
			}
			p.at = from + len(strings.TrimRightFunc(p.text[from:word], unicode.IsSpace))
			return p.text[from:p.at]
		}
		p.space()
	}
}

func isWord(r rune, inside bool) bool {
	switch {
	case r >= '0' && r <= '9' || unicode.IsLetter(r) || r == '°' || r == 'º' || r == '˚' || r == '℉' || r == '℃' || r == '_' || r == '∆':
		return true
	case r == '-' || r == '.' || unicode.IsMark(r):
		return inside
	}
	return false
}

func (p *parser) perAt(from int) bool {
	rest, ok := strings.CutPrefix(p.text[from:], "per")
	r, _ := utf8.DecodeRuneInString(rest)
	return ok && unicode.IsSpace(r)
}

// exponent reads ^2, ^-2 or raised digits, and is 1 when there is none.
func (p *parser) exponent() (int, *ParseError) {
	from, minus, n, digits := p.at, false, 0, 0
	caret := p.peek() == '^'
	if caret {
		p.next()
	}
	for ; p.at < len(p.text); p.next() {
		r := p.peek()
		digit := digitOf(r, caret)
		switch {
		case digits == 0 && !minus && (r == '⁻' || caret && r == '-'):
			minus = true
			continue
		case digit >= 0:
			n, digits = min(n*10+digit, 1000), digits+1
			continue
		}
		break
	}
	switch {
	case p.at == from:
		return 1, nil
	case digits == 0 || n == 0 || n > maxWritten:
		return 0, p.fail(from, fmt.Sprintf("write a whole number from -%d to %d, not 0", maxWritten, maxWritten), "%q is no exponent", p.text[from:p.at])
	case minus:
		return -n, nil
	}
	return n, nil
}

func digitOf(r rune, caret bool) int {
	switch {
	case caret && r >= '0' && r <= '9':
		return int(r - '0')
	case r == '¹':
		return 1
	case r == '²' || r == '³':
		return int(r-'²') + 2
	case r == '⁰' || r >= '⁴' && r <= '⁹':
		return int(r - '⁰')
	}
	return -1
}
