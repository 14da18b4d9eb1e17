package formula

import (
	"errors"
	"strings"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"

	"thawbook/engine/diag"
)

// parsed is a formula's syntax tree with what is needed to find spans in it.
type parsed struct {
	root   ast.Node
	tokens []token
	closer map[int]int // end of the bracket that opens at a rune
}

// parse reads text. Whatever is too long, too deep or refused is told before
// expr's parser sees it, because that parser does not bound nesting itself.
func parse(text string) (*parsed, diag.List) {
	tokens, list := lex(text)
	if len(list) > 0 {
		return nil, list
	}
	tree, err := parser.ParseWithConfig(text, languageConfig())
	if err != nil {
		return nil, diag.List{syntaxError(err)}
	}
	return &parsed{root: tree.Node, tokens: tokens, closer: brackets(tokens)}, nil
}

// languageConfig makes every name of expr's own library an ordinary call, so
// that only our table of functions decides what a formula may use.
func languageConfig() *conf.Config {
	c := conf.CreateNew()
	c.DisableIfOperator = true
	for _, f := range builtin.Builtins {
		c.Functions[f.Name] = f
	}
	return c
}

// syntaxError is expr's parse error in our words: found what, where.
func syntaxError(err error) diag.Diagnostic {
	d := diag.Diagnostic{Code: diag.FormulaSyntax, Severity: diag.Error, Message: "formula does not read"}
	var at *file.Error
	if !errors.As(err, &at) {
		return d
	}
	d.Place.Formula = &diag.Span{From: at.From, To: max(at.To, at.From+1)}
	message := at.Message
	switch {
	case strings.Contains(message, "unexpected token EOF"):
		d.Message, d.Hint = "formula stops too soon", "finish the last step, or close its bracket"
	case strings.Contains(message, "unexpected token"):
		d.Message = "formula does not read at " + found(message)
		d.Hint = "look for a missing operator or bracket just before it"
	default:
		d.Message = "formula does not read: " + message
	}
	return d
}

// found picks the quoted token out of expr's `unexpected token Kind("text")`.
func found(message string) string {
	from, to := strings.Index(message, `("`), strings.LastIndex(message, `")`)
	if from < 0 || to <= from {
		return "its end"
	}
	return message[from+1 : to+1]
}

// span is the stretch of text a tree node covers, with every bracket that opens
// or closes inside it whole.
func (p *parsed) span(n ast.Node) diag.Span {
	s := p.reach(n)
	for _, t := range p.tokens {
		end, opens := p.closer[t.From]
		if opens && t.From < s.To && end > s.From {
			if t.From >= s.From {
				s.To = max(s.To, end)
			} else if end <= s.To {
				s.From = t.From
			}
		}
	}
	return s
}

// reach is where the tree says n and everything below it stands.
func (p *parsed) reach(n ast.Node) diag.Span {
	at := n.Location()
	s := diag.Span{From: at.From, To: at.To}
	switch n := n.(type) {
	case *ast.ConditionalNode:
		s = p.reach(n.Cond) // its own location is the token after it
	case *ast.CallNode:
		s.To++ // the bracket of its arguments, which follows the name
	}
	for _, child := range children(n) {
		c := p.reach(child)
		s.From, s.To = min(s.From, c.From), max(s.To, c.To)
	}
	return s
}

func children(n ast.Node) []ast.Node {
	switch n := n.(type) {
	case *ast.UnaryNode:
		return []ast.Node{n.Node}
	case *ast.BinaryNode:
		return []ast.Node{n.Left, n.Right}
	case *ast.MemberNode:
		return []ast.Node{n.Node, n.Property}
	case *ast.CallNode:
		return append([]ast.Node{n.Callee}, n.Arguments...)
	case *ast.ConditionalNode:
		return []ast.Node{n.Cond, n.Exp1, n.Exp2}
	case *ast.VariableDeclaratorNode:
		return []ast.Node{n.Value, n.Expr}
	case *ast.ArrayNode:
		return n.Nodes
	case *ast.SequenceNode:
		return n.Nodes
	}
	return nil
}
