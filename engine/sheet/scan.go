package sheet

import (
	"strings"
	"unicode/utf8"

	"thawbook/engine/diag"
)

// marks is what a walk over the text, before the YAML library sees it, found:
// where lines begin and where scalars and flow collections end. The library
// tells only where things start, and its own nesting would go too deep for a
// browser's stack before it stopped; the walk follows the same rules (YAML 1.1
// as libyaml scans it) without recursion.
type marks struct {
	text  string
	lines []int       // byte at which each line starts
	ends  map[int]int // start byte of a scalar or flow collection: byte after it
}

// fault is what stops a file from being read at all.
type fault struct {
	code          diag.Code
	at            int // byte
	message, hint string
}

func (f *fault) diagnostic(file string, m *marks) diag.Diagnostic {
	d := diag.Diagnostic{Code: f.code, Severity: diag.Error, Message: f.message, Hint: f.hint}
	d.Place.File = file
	if m != nil {
		d.Place.Line, d.Place.Column = m.position(f.at)
	}
	return d
}

// position is the line and column, both from 1 and in runes, of a byte.
func (m *marks) position(at int) (line, column int) {
	low, high := 0, len(m.lines)
	for high-low > 1 {
		if mid := (low + high) / 2; m.lines[mid] <= at {
			low = mid
		} else {
			high = mid
		}
	}
	return low + 1, utf8.RuneCountInString(m.text[m.lines[low]:at]) + 1
}

// offset is the byte of a line and column.
func (m *marks) offset(line, column int) int {
	if line < 1 || line > len(m.lines) {
		return len(m.text)
	}
	at := m.lines[line-1]
	for ; column > 1 && at < len(m.text); column-- {
		_, size := utf8.DecodeRuneInString(m.text[at:])
		at += size
	}
	return at
}

// lineEnd is the byte of the break that ends the line at stands on, or the end
// of the text.
func (m *marks) lineEnd(at int) int {
	for at < len(m.text) && breakAt(m.text, at) == 0 {
		at++
	}
	return at
}

const bom = "\uFEFF"

// breakAt is the length of the line break at a byte, 0 when there is none. YAML
// 1.1 breaks lines in more ways than most editors do.
func breakAt(text string, at int) int {
	switch text[at] {
	case '\r':
		if at+1 < len(text) && text[at+1] == '\n' {
			return 2
		}
		return 1
	case '\n':
		return 1
	case 0xC2:
		if strings.HasPrefix(text[at:], "\u0085") {
			return 2
		}
	case 0xE2:
		if strings.HasPrefix(text[at:], "\u2028") || strings.HasPrefix(text[at:], "\u2029") {
			return 3
		}
	}
	return 0
}

// findLines fills in where lines begin and refuses bytes no sheet has.
func (m *marks) findLines() *fault {
	at := 0
	if strings.HasPrefix(m.text, bom) {
		at = len(bom)
	}
	m.lines = append(m.lines, at)
	for at < len(m.text) {
		if n := breakAt(m.text, at); n > 0 {
			at += n
			m.lines = append(m.lines, at)
			continue
		}
		c, size := utf8.DecodeRuneInString(m.text[at:])
		switch {
		case c == utf8.RuneError && size == 1:
			return &fault{diag.YAMLSyntax, at, "the text is not UTF-8", "save the file as UTF-8"}
		case c < ' ' && c != '\t' || c == 0x7F || c > 0x7F && c < 0xA0 || c == 0xFEFF || c == 0xFFFE || c == 0xFFFF:
			return &fault{diag.YAMLSyntax, at, "a control character stands in the text", "delete it and type the place anew"}
		}
		at += size
	}
	return nil
}

// scanner walks the text token by token. Its fields are libyaml's: indent is the
// column of the innermost block collection, keyAllowed says whether a key may
// start here, keys hold what may yet turn out to be a key, one a flow level.
type scanner struct {
	*marks
	at, line, column int
	indent           int
	indents          []int
	flow             []int // start bytes of open brackets
	keys             []possibleKey
	keyAllowed       bool
	whole            bool // a value was just walked over: a comma, a key or the end comes next
	started, ended   bool // a document was begun, or closed with "..."
}

type possibleKey struct {
	possible         bool
	at, line, column int
}

// scan walks the whole text. It tells nesting deeper than [MaxDepth], a second
// document, anchors, aliases, tags and directives, and quotes or brackets that
// are never closed.
func scan(text string) (*marks, *fault) {
	m := &marks{text: text, ends: map[int]int{}}
	if f := m.findLines(); f != nil {
		return m, f
	}
	s := &scanner{marks: m, at: m.lines[0], indent: -1, keyAllowed: true, keys: make([]possibleKey, 1)}
	for {
		s.toNextToken()
		depth := len(s.indents)
		if len(s.flow) == 0 {
			s.unroll(s.column)
		}
		if s.at >= len(text) {
			break
		}
		if len(s.indents) < depth && s.indent < s.column {
			return m, s.fault(diag.YAMLSyntax, s.at, "the indentation does not fit what stands above", "line it up with its neighbours")
		}
		at := s.at
		if f := s.token(); f != nil {
			return m, f
		}
		if len(s.flow)+len(s.indents) > MaxDepth {
			return m, s.fault(diag.YAMLTooDeep, at, "things stand more than 64 deep in each other", "a sheet needs no more than ten")
		}
	}
	if len(s.flow) > 0 {
		open := s.flow[len(s.flow)-1]
		return m, s.fault(diag.YAMLSyntax, open, quote(text[open:open+1])+" is never closed", "close it where the list or mapping ends")
	}
	return m, nil
}

func (s *scanner) fault(code diag.Code, at int, message, hint string) *fault {
	return &fault{code, at, message, hint}
}

// peek is the byte n further on, 0 past the end.
func (s *scanner) peek(n int) byte {
	if s.at+n < len(s.text) {
		return s.text[s.at+n]
	}
	return 0
}

func (s *scanner) atBreak(n int) bool {
	return s.at+n < len(s.text) && breakAt(s.text, s.at+n) > 0
}

// blankOrEnd says whether a blank, a line break or the end stands n bytes on.
func (s *scanner) blankOrEnd(n int) bool {
	c := s.peek(n)
	return c == 0 || c == ' ' || c == '\t' || s.atBreak(n)
}

// skip goes one rune on, skipLine over a line break.
func (s *scanner) skip() {
	_, size := utf8.DecodeRuneInString(s.text[s.at:])
	s.at += size
	s.column++
}

func (s *scanner) skipLine() {
	s.at += breakAt(s.text, s.at)
	s.line++
	s.column = 0
}

func (s *scanner) toNextToken() {
	for s.at < len(s.text) {
		for s.peek(0) == ' ' || s.peek(0) == '\t' && (len(s.flow) > 0 || !s.keyAllowed) {
			s.skip()
		}
		if s.peek(0) == '#' {
			for s.at < len(s.text) && !s.atBreak(0) {
				s.skip()
			}
		}
		if !s.atBreak(0) {
			return
		}
		s.skipLine()
		if len(s.flow) == 0 {
			s.keyAllowed = true
		}
	}
}

// roll opens a block collection at column, unroll closes those further right.
func (s *scanner) roll(column int) {
	if len(s.flow) == 0 && s.indent < column {
		s.indents = append(s.indents, s.indent)
		s.indent = column
	}
}

func (s *scanner) unroll(column int) {
	for s.indent > column {
		s.indent = s.indents[len(s.indents)-1]
		s.indents = s.indents[:len(s.indents)-1]
	}
}

func (s *scanner) key() *possibleKey { return &s.keys[len(s.keys)-1] }

// mayBeKey remembers that what starts here may turn out to be a key.
func (s *scanner) mayBeKey() {
	if s.keyAllowed {
		*s.key() = possibleKey{true, s.at, s.line, s.column}
	}
}
