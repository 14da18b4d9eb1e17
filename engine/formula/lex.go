package formula

import (
	"errors"
	"fmt"
	"unicode/utf8"

	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser/lexer"

	"thawbook/engine/diag"
)

// Limits on a formula's text. They are checked on its tokens, before parsing.
const (
	MaxRunes = 2000 // characters
	MaxDepth = 100  // brackets, signs, powers, conditions and lets inside each other
)

type token struct{ lexer.Token }

// lex cuts text into tokens and refuses what formulas do not have.
func lex(text string) ([]token, diag.List) {
	// The byte count bounds the rune count, so that a huge text is not walked.
	if len(text) > MaxRunes*utf8.UTFMax || utf8.RuneCountInString(text) > MaxRunes {
		return nil, diag.List{{Code: diag.FormulaTooLong, Severity: diag.Error,
			Place:   diag.Place{Formula: &diag.Span{From: MaxRunes, To: MaxRunes + 1}},
			Message: fmt.Sprintf("formula is longer than %d characters", MaxRunes),
			Hint:    "split it into lines of their own"}}
	}
	raw, err := lexer.Lex(file.NewSource(text))
	if err != nil {
		return nil, diag.List{lexError(err)}
	}
	tokens := make([]token, len(raw))
	for i, t := range raw {
		tokens[i] = token{t}
	}
	if list := refuse(tokens); len(list) > 0 {
		return nil, list
	}
	if at, deep := tooDeep(tokens); deep {
		return nil, diag.List{{Code: diag.FormulaTooDeep, Severity: diag.Error,
			Place:   diag.Place{Formula: &diag.Span{From: at.From, To: at.To}},
			Message: fmt.Sprintf("formula nests deeper than %d", MaxDepth),
			Hint:    "split it into lines of their own"}}
	}
	return tokens, nil
}

func lexError(err error) diag.Diagnostic {
	d := diag.Diagnostic{Code: diag.FormulaSyntax, Severity: diag.Error, Message: "formula does not read"}
	var at *file.Error
	if errors.As(err, &at) {
		d.Message = "formula does not read: " + at.Message
		d.Place.Formula = &diag.Span{From: at.From, To: max(at.To, at.From+1)}
	}
	return d
}

// refusals names each construct of expr that formulas do not have, and what to
// write instead.
func refusals(value string) (what, hint string) {
	switch value {
	case "|":
		return "pipes", "write the function around its argument: round(x)"
	case "#":
		return "steps over a list", "give the table a column with a formula and sum that"
	case "%":
		return "the remainder sign", `a share is written of(5, "%"), or as a line whose unit is %`
	case "?.", "??", "nil":
		return "missing values", "every line has a number; use a condition"
	case "..":
		return "runs of numbers", "lay the numbers out as a table"
	case "in", "matches", "contains", "startsWith", "endsWith":
		return "tests of text and lists", `compare a choice with one of its names: fuel == "propane"`
	case "{", "}":
		return "maps and blocks", "use a table, or a condition: a > b ? x : y"
	case "::":
		return "names of packages", "functions are called by their name alone"
	case "&&":
		return `"&&"`, `write "and"`
	case "||":
		return `"||"`, `write "or"`
	case "!":
		return `"!"`, `write "not"`
	case "=":
		return `a single "="`, `a comparison is "==", and a formula starts without a sign`
	}
	return "", ""
}

func refuse(tokens []token) diag.List {
	var list diag.List
	for i, t := range tokens {
		var what, hint string
		switch {
		case t.Kind == lexer.Bytes:
			what, hint = "bytes", "only numbers and choices can be worked with"
		case t.Is(lexer.Operator, "=") && i >= 2 && tokens[i-2].Is(lexer.Operator, "let"):
			continue
		case t.Kind == lexer.Operator || t.Kind == lexer.Bracket || t.Is(lexer.Identifier, "nil"):
			what, hint = refusals(t.Value)
		}
		if what != "" {
			list = append(list, diag.Diagnostic{Code: diag.Refused, Severity: diag.Error,
				Place:   diag.Place{Formula: &diag.Span{From: t.From, To: t.To}},
				Message: "formulas do not have " + what, Hint: hint})
		}
	}
	return list
}

// tooDeep bounds every construct that makes the parser call itself: brackets,
// prefix signs, powers, conditions and lets. A level's own signs are forgotten
// when its bracket closes.
func tooDeep(tokens []token) (token, bool) {
	depth, level := 0, []int{}
	for i, t := range tokens {
		switch {
		case t.Kind == lexer.Bracket && (t.Value == "(" || t.Value == "["):
			level = append(level, depth)
			depth++
		case t.Kind == lexer.Bracket && len(level) > 0:
			depth = level[len(level)-1]
			level = level[:len(level)-1]
		case t.Is(lexer.Operator, "^", "**", "?", "let", "not"):
			depth++
		case t.Is(lexer.Operator, "-", "+") && i > 0 && tokens[i-1].Kind == lexer.Operator:
			depth++
		case t.Is(lexer.Operator, ",", ";") && len(level) > 0:
			depth = level[len(level)-1] + 1
		}
		if depth > MaxDepth {
			return t, true
		}
	}
	return token{}, false
}

// brackets maps where a bracket opens to the end of the one that closes it.
func brackets(tokens []token) map[int]int {
	closer := map[int]int{}
	var open []int
	for _, t := range tokens {
		if t.Kind != lexer.Bracket {
			continue
		}
		if t.Value == "(" || t.Value == "[" {
			open = append(open, t.From)
		} else if len(open) > 0 {
			closer[open[len(open)-1]] = t.To
			open = open[:len(open)-1]
		}
	}
	return closer
}
