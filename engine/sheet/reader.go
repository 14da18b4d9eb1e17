package sheet

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// maxTold is how many diagnostics one file gets; nobody reads further.
const maxTold = 300

// reader reads one file's tree and collects what is wrong with its form.
type reader struct {
	file  string
	marks *marks
	list  diag.List
	about string // id of the line being read
	lines int    // lines and cells read so far
}

func (r *reader) place(n *yaml.Node) diag.Place {
	return diag.Place{File: r.file, Line: n.Line, Column: n.Column}
}

func (r *reader) tell(code diag.Code, n *yaml.Node, hint, format string, args ...any) {
	if len(r.list) < maxTold {
		r.list = append(r.list, diag.Diagnostic{Code: code, Severity: diag.Error, About: r.about,
			Place: r.place(n), Message: fmt.Sprintf(format, args...), Hint: hint})
	}
}

// entry is one key and value of a mapping.
type entry struct {
	key   string
	at    *yaml.Node
	value *yaml.Node
}

// entries is a mapping's keys and values, each key once.
func (r *reader) entries(n *yaml.Node, what string) []entry {
	if n.Kind != yaml.MappingNode {
		r.tell(diag.WrongKind, n, "write key: value", "%s must be a mapping, not %s", what, describe(n))
		return nil
	}
	var out []entry
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		switch {
		case key.Kind != yaml.ScalarNode:
			r.tell(diag.WrongKind, key, "a key is one word", "a key must be text, not %s", describe(key))
		case key.Value == "<<" && key.Style == 0:
			r.tell(diag.YAMLAlias, key, "write the keys out", `"<<" takes over another mapping, and a sheet has no such thing`)
		case seen[key.Value]:
			r.tell(diag.DuplicateKey, key, "delete one of the two", "%s is given twice", quote(key.Value))
		default:
			seen[key.Value] = true
			out = append(out, entry{key.Value, key, n.Content[i+1]})
		}
	}
	return out
}

// items is a list's items.
func (r *reader) items(n *yaml.Node, what string) []*yaml.Node {
	switch {
	case n.Kind == yaml.SequenceNode:
		return n.Content
	case isNull(n):
		return nil // "lines:" with nothing under it yet
	}
	r.tell(diag.WrongKind, n, "begin each with a dash on a line of its own", "%s must be a list, not %s", what, describe(n))
	return nil
}

// unknown tells a key that what does not have.
func (r *reader) unknown(e entry, what string, keys []string) {
	r.tell(diag.UnknownKey, e.at, nearest(e.key, keys), "%s has no key %s", what, quote(e.key))
}

func isNull(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && n.Style == 0 && n.Tag == "!!null"
}

func describe(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "a mapping"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case isNull(n):
		return "nothing"
	}
	return quote(n.Value)
}

// text is a scalar's text without blanks around it; nothing at all is "".
func (r *reader) text(n *yaml.Node) string {
	if n.Kind != yaml.ScalarNode {
		r.tell(diag.WrongKind, n, "put it in quotes if it is meant as text", "text must stand here, not %s", describe(n))
		return ""
	}
	if isNull(n) {
		return ""
	}
	return strings.TrimSpace(n.Value)
}

var (
	numberForm  = regexp.MustCompile(`^[+-]?(0|[1-9][0-9]*|[0-9]+\.|[0-9]*\.[0-9]+|[0-9]+\.[0-9]*)([eE][+-]?[0-9]+)?$`)
	groupedForm = regexp.MustCompile(`^[+-]?[0-9]{1,3}([,_' ][0-9]{3})+(\.[0-9]*)?$`)
	leadsNumber = regexp.MustCompile(`^[$€£]?\s*[+-]?[0-9.,]+\s*\S`)
)

// number is a scalar's number; false when it is none, which it tells.
func (r *reader) number(n *yaml.Node) (float64, bool) {
	if n.Kind == yaml.ScalarNode && n.Style == 0 && numberForm.MatchString(n.Value) {
		x, err := strconv.ParseFloat(n.Value, 64)
		if err == nil && !math.IsInf(x, 0) {
			return x, true
		}
	}
	r.tell(diag.WrongKind, n, numberHint(n), "a number must stand here, not %s", describe(n))
	return 0, false
}

func numberHint(n *yaml.Node) string {
	text := strings.TrimSpace(n.Value)
	switch {
	case n.Kind != yaml.ScalarNode || text == "":
		return "write a number like 140 or 2.5"
	case n.Style != 0 && numberForm.MatchString(text):
		return "write it without quotes: " + text
	case groupedForm.MatchString(text):
		return "write it without marks between thousands: " + strings.NewReplacer(",", "", "_", "", "'", "", " ", "").Replace(text)
	case leadsNumber.MatchString(text):
		return "write a plain decimal number; the unit goes under unit"
	}
	return "write a plain decimal number like 140 or 2.5"
}

// whole is a scalar's whole number between low and high, nil when it is none.
func (r *reader) whole(n *yaml.Node, what string, low, high uint64) *uint64 {
	x, ok := r.number(n)
	if !ok {
		return nil
	}
	whole, err := strconv.ParseUint(strings.TrimPrefix(n.Value, "+"), 10, 64)
	switch {
	case err == nil && whole > high || err != nil && x > float64(high):
		r.tell(diag.TooMany, n, fmt.Sprintf("at most %d", high), "%s of %s are too many", what, n.Value)
	case x < float64(low):
		r.tell(diag.OutOfBounds, n, fmt.Sprintf("at least %d", low), "%s cannot be %s", what, n.Value)
	case err != nil:
		r.tell(diag.WrongKind, n, "write a whole number, digits only", "%s must be a whole number, not %s", what, quote(n.Value))
	default:
		return &whole
	}
	return nil
}

// optional is number for a field that may be nil.
func (r *reader) optional(n *yaml.Node) *float64 {
	if x, ok := r.number(n); ok {
		return &x
	}
	return nil
}

// truth is whether a scalar says true; told is whether it said either.
func (r *reader) truth(n *yaml.Node) (yes, told bool) {
	if n.Kind == yaml.ScalarNode && n.Style == 0 {
		switch n.Value {
		case "true":
			return true, true
		case "false":
			return false, true
		}
	}
	return false, false
}

// id is a scalar's id, "" when it could not be one, which it tells.
func (r *reader) id(n *yaml.Node, fault func(string) (string, string)) string {
	id := r.text(n)
	if n.Kind != yaml.ScalarNode {
		return ""
	}
	if wrong, hint := fault(id); wrong != "" {
		r.tell(diag.BadID, n, hint, "%s %s", quote(id), wrong)
		return ""
	}
	return id
}
