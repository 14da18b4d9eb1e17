package sheet

import (
	"strings"

	"thawbook/engine/diag"
)

// token walks over one token.
func (s *scanner) token() *fault {
	if s.column == 0 && (s.documentMark("---") || s.documentMark("...")) {
		return s.documentToken()
	}
	if s.ended {
		return s.fault(diag.YAMLSyntax, s.at, "text goes on after the end of the document", `delete the "..." line`)
	}
	s.started = true
	if f := s.misplaced(); f != nil {
		return f
	}
	inFlow := len(s.flow) > 0
	switch c := s.peek(0); {
	case s.column == 0 && c == '%':
		return s.fault(diag.YAMLSyntax, s.at, `a line cannot begin with "%"`, "put the text in quotes")
	case c == '[' || c == '{':
		s.open()
	case c == ']' || c == '}':
		return s.close()
	case c == ',' && inFlow:
		s.key().possible = false
		s.keyAllowed, s.whole = true, false
		s.skip()
	case c == '-' && s.blankOrEnd(1), c == '?' && (inFlow || s.blankOrEnd(1)):
		return s.entry(c)
	case c == ':' && (inFlow || s.blankOrEnd(1)):
		return s.value()
	case c == '&' || c == '*' || c == '!':
		return s.fault(diag.YAMLAlias, s.at, aliasMessage(c), "put the text in quotes if it is meant as text")
	case (c == '|' || c == '>') && !inFlow:
		return s.blockScalar()
	case c == '\'' || c == '"':
		return s.quoted(c)
	case c == '\t':
		return s.tab()
	case strings.IndexByte(",#|>%@`", c) >= 0:
		return s.fault(diag.YAMLSyntax, s.at, "text cannot begin with "+quote(string(c)), "put the text in quotes")
	default:
		return s.plain()
	}
	return nil
}

// misplaced tells something that stands behind a whole value: without a comma in
// brackets, or further right than the next key or dash can.
func (s *scanner) misplaced() *fault {
	c, inFlow := s.peek(0), len(s.flow) > 0
	switch {
	case !s.whole || c == ']' || c == '}' || c == ',' && inFlow || c == ':' && (inFlow || s.blankOrEnd(1)):
		return nil
	case inFlow:
		return s.fault(diag.YAMLSyntax, s.at, `a "," is missing before this`, "put text that holds brackets, quotes or commas in quotes")
	case s.column > s.indent && strings.TrimSpace(s.text[s.lines[s.line]:s.at]) != "":
		return s.fault(diag.YAMLSyntax, s.at, "something stands behind the end of a text or list", "put the whole text in quotes")
	case s.column > s.indent:
		return s.fault(diag.YAMLSyntax, s.at, "the indentation does not fit what stands above", "line it up with its neighbours")
	}
	s.whole = false
	return nil
}

// entry walks over the "-" of a list or the "?" of a long key.
func (s *scanner) entry(c byte) *fault {
	inFlow := len(s.flow) > 0
	if c == '-' && !inFlow && !s.keyAllowed {
		return s.fault(diag.YAMLSyntax, s.at, `"-" stands where no list can begin`, "begin the list on a line of its own, or put the text in quotes")
	}
	s.roll(s.column)
	s.key().possible = false
	s.keyAllowed, s.whole = c == '-' || !inFlow, false
	s.skip()
	return nil
}

func aliasMessage(c byte) string {
	switch c {
	case '&':
		return `"&" names a part of the file, and a sheet has no such names`
	case '*':
		return `"*" repeats a named part of the file, and a sheet has no such names`
	}
	return `"!" gives a type, and a sheet has no types`
}

func (s *scanner) documentMark(mark string) bool {
	return strings.HasPrefix(s.text[s.at:], mark) && s.blankOrEnd(3)
}

func (s *scanner) documentToken() *fault {
	if s.peek(0) == '-' && s.started {
		return s.fault(diag.YAMLSyntax, s.at, "a second document begins", `one file is one sheet: delete the "---" line or move the rest to another file`)
	}
	s.unroll(-1)
	s.ended = s.peek(0) == '.'
	s.started = true
	s.key().possible = false
	s.keyAllowed, s.whole = false, false
	s.at, s.column = s.at+3, s.column+3
	return nil
}

func (s *scanner) open() {
	s.mayBeKey()
	s.flow = append(s.flow, s.at)
	s.keys = append(s.keys, possibleKey{})
	s.keyAllowed, s.whole = true, false
	s.skip()
}

func (s *scanner) close() *fault {
	if len(s.flow) == 0 {
		return s.fault(diag.YAMLSyntax, s.at, quote(s.text[s.at:s.at+1])+" closes nothing", "delete it, or put the text in quotes")
	}
	start := s.flow[len(s.flow)-1]
	if s.text[start] == '[' != (s.peek(0) == ']') {
		line, column := s.position(start)
		return s.fault(diag.YAMLSyntax, s.at, quote(s.text[s.at:s.at+1])+" cannot close "+quote(s.text[start:start+1]),
			"the bracket it closes stands at "+diag.Place{Line: line, Column: column}.String())
	}
	s.flow = s.flow[:len(s.flow)-1]
	s.keys = s.keys[:len(s.keys)-1]
	s.keyAllowed, s.whole = false, true
	s.skip()
	s.ends[start] = s.at
	return nil
}

// value walks over the ":" of a mapping.
func (s *scanner) value() *fault {
	k := s.key()
	switch {
	case k.possible && k.line == s.line:
		s.roll(k.column)
		s.keyAllowed = false
	case len(s.flow) == 0 && !s.keyAllowed:
		return s.fault(diag.YAMLSyntax, s.at, `":" stands where no key can`, "put the text in quotes if it holds a colon, or check the indentation")
	default:
		s.roll(s.column)
		s.keyAllowed = len(s.flow) == 0
	}
	k.possible, s.whole = false, false
	s.skip()
	return nil
}

func (s *scanner) quoted(mark byte) *fault {
	start := s.at
	s.mayBeKey()
	s.keyAllowed = false
	s.skip()
	for s.at < len(s.text) {
		switch c := s.peek(0); {
		case s.atBreak(0):
			s.skipLine()
		case c == mark && mark == '\'' && s.peek(1) == '\'':
			s.skip()
			s.skip()
		case c == mark:
			s.skip()
			s.ends[start], s.whole = s.at, true
			return nil
		case c == '\\' && mark == '"' && !s.atBreak(1) && s.at+1 < len(s.text):
			s.skip()
			s.skip()
		default:
			s.skip()
		}
	}
	return s.fault(diag.YAMLSyntax, start, "the quote is never closed", "put the same quote at the end of the text")
}

// plain walks over text without quotes, which may go on over lines that are
// indented further than the collection it stands in.
func (s *scanner) plain() *fault {
	start, end, broke := s.at, s.at, false
	s.mayBeKey()
	s.keyAllowed = false
	for s.at < len(s.text) && s.peek(0) != '#' && !(s.column == 0 && (s.documentMark("---") || s.documentMark("..."))) {
		for s.at < len(s.text) && !s.blankOrEnd(0) && !s.endsPlain() {
			s.skip()
			end, broke = s.at, false
		}
		if !s.blankOrEnd(0) || s.at >= len(s.text) {
			break
		}
		for s.at < len(s.text) && s.blankOrEnd(0) {
			switch {
			case s.atBreak(0):
				s.skipLine()
				broke = true
			case broke && s.peek(0) == '\t' && s.column < s.indent+1:
				return s.tab()
			default:
				s.skip()
			}
		}
		if len(s.flow) == 0 && s.column < s.indent+1 {
			break
		}
	}
	s.ends[start], s.whole = end, true
	if broke {
		s.keyAllowed = true
	}
	return nil
}

func (s *scanner) tab() *fault {
	return s.fault(diag.YAMLSyntax, s.at, "a tab stands where only spaces indent", "use spaces")
}

func (s *scanner) endsPlain() bool {
	c := s.peek(0)
	return c == ':' && s.blankOrEnd(1) || len(s.flow) > 0 && strings.IndexByte(",?[]{}", c) >= 0
}

// blockScalar walks over "|" or ">" and the indented lines that follow. It ends
// after its last line with text, or after the blank lines too when "+" keeps them.
func (s *scanner) blockScalar() *fault {
	start := s.at
	s.key().possible = false
	s.keyAllowed = true
	keep, step := s.blockHeader()
	end := s.at
	indent := max(s.indent, 0) + step
	if step == 0 {
		indent = s.blockIndent()
	}
	for s.at < len(s.text) {
		s.skipLine()
		for s.peek(0) == ' ' && s.column < indent {
			s.skip()
		}
		if s.at < len(s.text) && s.atBreak(0) {
			if keep {
				end = s.at
			}
			continue
		}
		if s.column < indent || s.at >= len(s.text) {
			break
		}
		for s.at < len(s.text) && !s.atBreak(0) {
			s.skip()
		}
		end = s.at
	}
	s.ends[start], s.whole = end, true
	return nil
}

// blockHeader walks over the line of a "|" or ">". keep is set by "+", step by a
// digit that says how far the text is indented.
func (s *scanner) blockHeader() (keep bool, step int) {
	s.skip()
	for c := s.peek(0); c == '+' || c == '-' || c >= '1' && c <= '9'; c = s.peek(0) {
		if keep = keep || c == '+'; c >= '1' && c <= '9' {
			step = int(c - '0')
		}
		s.skip()
	}
	for s.at < len(s.text) && !s.atBreak(0) {
		s.skip()
	}
	return keep, step
}

// blockIndent is how far the first line of a block scalar with text, or a
// longer blank line before it, is indented.
func (s *scanner) blockIndent() int {
	most := 0
	for at := s.at; at < len(s.text); {
		at += breakAt(s.text, at)
		column := 0
		for at < len(s.text) && s.text[at] == ' ' {
			at, column = at+1, column+1
		}
		most = max(most, column)
		if at >= len(s.text) || breakAt(s.text, at) == 0 {
			break
		}
	}
	return max(most, s.indent+1, 1)
}
