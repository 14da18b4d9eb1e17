package sheet

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// splice replaces a stretch of the text.
type splice struct {
	from, to int
	text     string
}

// writer collects the splices of one edit. stuck says that the text is written
// in a way the edit has no means for.
type writer struct {
	*marks
	splices []splice
	stuck   bool
}

func (w *writer) replace(from, to int, text string) {
	w.splices = append(w.splices, splice{from, to, text})
}

// spliced is the text with the splices made; they do not overlap.
func (w *writer) spliced() string {
	slices.SortStableFunc(w.splices, func(a, b splice) int { return a.from - b.from })
	var out strings.Builder
	at := 0
	for _, s := range w.splices {
		out.WriteString(w.text[at:s.from])
		out.WriteString(s.text)
		at = s.to
	}
	out.WriteString(w.text[at:])
	return out.String()
}

// start is the byte a node starts at.
func (m *marks) start(n *yaml.Node) int { return m.offset(n.Line, n.Column) }

// end is the byte after a node: after its bracket, quote or text, and for a
// block collection after the last thing in it.
func (m *marks) end(n *yaml.Node) int {
	if end, known := m.ends[m.start(n)]; known && (n.Kind == yaml.ScalarNode || n.Style&yaml.FlowStyle != 0) {
		return end
	}
	if count := len(n.Content); count > 0 {
		if n.Kind == yaml.MappingNode {
			return m.entryEnd(n.Content[count-2], n.Content[count-1])
		}
		return m.end(n.Content[count-1])
	}
	return m.start(n)
}

// entryEnd is the byte after a key and its value, which may be nothing.
func (m *marks) entryEnd(key, value *yaml.Node) int {
	if m.unwritten(value) {
		if colon := m.colon(key); colon >= 0 {
			return colon + 1
		}
		return m.end(key)
	}
	return m.end(value)
}

// unwritten says whether a value is nothing at all, not even "null" or "~".
func (m *marks) unwritten(n *yaml.Node) bool { return isNull(n) && n.Value == "" }

// colon is the byte of the ":" after a key, or -1 when it does not follow on the
// same line.
func (m *marks) colon(key *yaml.Node) int {
	at := m.end(key)
	for at < len(m.text) && (m.text[at] == ' ' || m.text[at] == '\t') {
		at++
	}
	if at < len(m.text) && m.text[at] == ':' {
		return at
	}
	return -1
}

// newline is the line break the file uses.
func (m *marks) newline() string {
	if at := m.lineEnd(0); at < len(m.text) && breakAt(m.text, at) == 2 && m.text[at] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// margin begins a line on which text starts at a column.
func (m *marks) margin(column int) string { return m.newline() + strings.Repeat(" ", column-1) }

func isFlow(n *yaml.Node) bool { return n.Style&yaml.FlowStyle != 0 }

func isBlockCollection(n *yaml.Node) bool { return n.Kind != yaml.ScalarNode && !isFlow(n) }

// putValue writes a value in place of the one a key has.
func (w *writer) putValue(key, old *yaml.Node, text string) {
	colon := w.colon(key)
	switch {
	case colon < 0:
		w.stuck = true
	case w.unwritten(old):
		w.replace(colon+1, colon+1, " "+text)
	case isBlockCollection(old) && w.lineEnd(colon) < w.start(old):
		// The collection stands on lines of its own, and a comment may stand
		// behind the key.
		w.replace(colon+1, colon+1, " "+text)
		w.replace(w.lineEnd(colon), w.end(old), "")
	default:
		w.replace(w.start(old), w.end(old), text)
	}
}

// putEntry writes another key and value in place of an entry.
func (w *writer) putEntry(key, old *yaml.Node, newKey, text string) {
	w.putValue(key, old, text)
	w.replace(w.start(key), w.end(key), newKey)
}

// insert writes a new entry, "key: value", into a mapping, behind the entry of the
// key after when there is one, else behind the last.
func (w *writer) insert(m *yaml.Node, after, entry string) {
	count := len(m.Content)
	if count == 0 {
		at := w.start(m) + 1 // an empty mapping is "{}"
		w.replace(at, at, entry)
		return
	}
	at, value := keyAndValue(m, after)
	if value == nil {
		at, value = m.Content[count-2], m.Content[count-1]
	}
	end := w.entryEnd(at, value)
	if isFlow(m) {
		comma := ", "
		if end > 0 && w.text[end-1] == ':' {
			comma = " , " // "key:," would be text
		}
		w.replace(end, end, comma+entry)
		return
	}
	end = w.lineEnd(end)
	w.replace(end, end, w.margin(m.Content[0].Column)+entry)
}

// remove takes an entry out of a mapping that has others.
func (w *writer) remove(m *yaml.Node, key string) {
	i := 0
	for i < len(m.Content) && m.Content[i].Value != key {
		i += 2
	}
	at, value := m.Content[i], m.Content[i+1]
	switch {
	case len(m.Content) == 2:
		w.stuck = true
	case i == 0:
		// It stands behind a bracket or a dash, where the next one goes.
		w.replace(w.start(at), w.start(m.Content[2]), "")
	case isFlow(m):
		w.replace(w.entryEnd(m.Content[i-2], m.Content[i-1]), w.entryEnd(at, value), "")
	default:
		w.replace(w.lineEnd(w.entryEnd(m.Content[i-2], m.Content[i-1])), w.lineEnd(w.entryEnd(at, value)), "")
	}
}
