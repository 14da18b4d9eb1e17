// Package diag holds the one diagnostic type that serves the sheet file, its
// formulas, a run and a workbook: a code, a place, a message and a hint.
//
// Messages are lower case, carry no full stop, quote the person's own text and
// name what was found and what was wanted, with units. The hint says what to do.
package diag

import (
	"fmt"
	"sort"
	"strings"
)

// Span is a stretch of a formula's text, counted in runes from 0; To is one
// past the last rune.
type Span struct {
	From int `json:"from"`
	To   int `json:"to"`
}

// Place says where something stands. Line and Column are counted from 1 in
// runes and are 0 when the place has none. Formula is set when the place is a
// stretch of a formula's own text.
type Place struct {
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`
	Column  int    `json:"column,omitempty"`
	Formula *Span  `json:"formula,omitempty"`
}

// String is the place as "file:line:column", leaving out what it lacks.
func (p Place) String() string {
	var parts []string
	if p.File != "" {
		parts = append(parts, p.File)
	}
	if p.Line > 0 {
		parts = append(parts, fmt.Sprint(p.Line))
		if p.Column > 0 {
			parts = append(parts, fmt.Sprint(p.Column))
		}
	}
	return strings.Join(parts, ":")
}

// Severity says what a diagnostic stops.
type Severity string

const (
	// Error means the line, or the whole sheet, cannot be reckoned.
	Error Severity = "error"
	// Warning travels beside the values it is about.
	Warning Severity = "warning"
)

// Diagnostic is one thing found wrong, with where it stands and what to do.
type Diagnostic struct {
	Code     Code     `json:"code"`
	Severity Severity `json:"severity"`
	// About is the id of the line or cell ("taps", "fuels.propane.price"),
	// empty when the whole file is meant.
	About   string `json:"about,omitempty"`
	Place   Place  `json:"place"`
	Message string `json:"message"`
	Hint    string `json:"hint,omitempty"`
	// Seasons counts the drawn seasons a run's warning was seen in; Of is how
	// many were drawn. Both are 0 for anything that is not a run's warning.
	Seasons int `json:"seasons,omitempty"`
	Of      int `json:"of,omitempty"`
}

// Error makes a Diagnostic an error: place, message and hint on one line.
func (d Diagnostic) Error() string {
	var b strings.Builder
	if at := d.Place.String(); at != "" {
		b.WriteString(at + ": ")
	}
	b.WriteString(d.Message)
	if d.Hint != "" {
		b.WriteString(" (" + d.Hint + ")")
	}
	return b.String()
}

// List is every diagnostic a stage found; a stage never stops at the first.
type List []Diagnostic

// Errors counts the entries whose severity is Error.
func (l List) Errors() int {
	n := 0
	for _, d := range l {
		if d.Severity == Error {
			n++
		}
	}
	return n
}

// Sort orders the list by file, line, column, formula span, code, about and
// message, so that two runs over one sheet say the same things in the same order.
func (l List) Sort() {
	sort.SliceStable(l, func(i, j int) bool { return less(l[i], l[j]) })
}

func less(a, b Diagnostic) bool {
	switch {
	case a.Place.File != b.Place.File:
		return a.Place.File < b.Place.File
	case a.Place.Line != b.Place.Line:
		return a.Place.Line < b.Place.Line
	case a.Place.Column != b.Place.Column:
		return a.Place.Column < b.Place.Column
	case from(a) != from(b):
		return from(a) < from(b)
	case a.Code != b.Code:
		return a.Code < b.Code
	case a.About != b.About:
		return a.About < b.About
	}
	return a.Message < b.Message
}

func from(d Diagnostic) int {
	if d.Place.Formula == nil {
		return -1
	}
	return d.Place.Formula.From
}
