package sheet

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// set makes the splices that write s at t. It returns the paths of the tree that
// may come to differ by it.
func (w *writer) set(t target, s setting) (allowed []string) {
	if t.mapping != nil {
		return w.setKey(t.mapping, t.path, s)
	}
	if t.in == nil {
		w.beginChange(t, slotText(s))
		return []string{"/change"}
	}
	key, value := keyAndValue(t.in, t.slot)
	path := t.path + "/" + t.slot
	switch {
	case value == nil:
		w.insert(t.in, "", t.slot+": "+slotText(s))
	case value.Kind == yaml.MappingNode:
		if s.empty() && t.change && lookUp(value, s.key) == nil {
			w.insert(value, "", s.key+`: ""`) // takes the base's text away
			return []string{path + "/" + s.key}
		}
		return w.setKey(value, path, s)
	case s.empty() && !t.change:
	case s.key == "is" || s.key == "choose":
		w.set1(key, value, s, isFlow(t.in))
	case s.isKind():
		w.putValue(key, value, slotText(s))
	case value.Kind == yaml.ScalarNode && !w.unwritten(value):
		w.wrap(value, s)
	default:
		w.stuck = true
	}
	return []string{path}
}

// slotText is what a bare slot says to mean s.
func slotText(s setting) string {
	if s.key == "is" || s.key == "choose" {
		return s.render(true, nil)
	}
	return "{" + s.key + ": " + s.render(true, nil) + "}"
}

// wrap makes a bare number or name a mapping that says s too.
func (w *writer) wrap(value *yaml.Node, s setting) {
	kind := "is"
	if !numberForm.MatchString(value.Value) {
		kind = "choose"
	}
	w.replace(w.start(value), w.start(value), "{"+kind+": ")
	w.replace(w.end(value), w.end(value), ", "+s.key+": "+s.render(true, nil)+"}")
}

// setKey writes s into a mapping that has the keys itself.
func (w *writer) setKey(m *yaml.Node, path string, s setting) (allowed []string) {
	allowed = []string{path + "/" + s.key}
	key, value := keyAndValue(m, s.key)
	switch {
	case value != nil && s.empty():
		w.remove(m, s.key)
	case s.empty():
	case value != nil:
		w.set1(key, value, s, isFlow(m))
	case s.isKind():
		for _, other := range kindKeys {
			if key, value = keyAndValue(m, other); value != nil {
				w.putEntry(key, value, s.key, s.render(isFlow(m), nil))
				return append(allowed, path+"/"+other)
			}
		}
		w.insert(m, "label", s.key+": "+s.render(isFlow(m), nil))
	default:
		w.insert(m, neighbour(m, s.key), s.key+": "+s.render(isFlow(m), nil))
	}
	return allowed
}

// neighbour is the key a new one is written behind, "" for the last.
func neighbour(m *yaml.Node, key string) string {
	switch key {
	case "label":
		return "id"
	case "unit":
		if kind := kindOf(m); kind != "" {
			return string(kind)
		}
		return "label"
	case "title":
		return "thawbook"
	case "about", "seasons":
		if lookUp(m, "from") != nil {
			return "from"
		}
		return "title"
	case "seed":
		if lookUp(m, "seasons") != nil {
			return "seasons"
		}
		return neighbour(m, "seasons")
	}
	return ""
}

// set1 writes s in place of the value its key has, leaving what says so already.
func (w *writer) set1(key, old *yaml.Node, s setting, flow bool) {
	switch {
	case s.number != nil && reads(old, *s.number):
	case s.guess != nil && old.Kind == yaml.MappingNode && len(old.Content) > 0:
		w.setGuess(old, *s.guess)
	case s.records != nil && old.Kind == yaml.SequenceNode && len(old.Content) == len(s.records):
		for i, n := range old.Content {
			if !reads(n, s.records[i]) {
				w.replace(w.start(n), w.end(n), FormatNumber(s.records[i]))
			}
		}
	default:
		w.putValue(key, old, s.render(flow, old))
	}
}

// setGuess changes those of a guess's numbers that differ.
func (w *writer) setGuess(old *yaml.Node, g GuessValue) {
	after := ""
	for _, part := range []struct {
		key string
		x   float64
	}{{"low", g.Low}, {"likely", g.Likely}, {"high", g.High}} {
		key, value := keyAndValue(old, part.key)
		switch {
		case value == nil:
			w.insert(old, after, part.key+": "+FormatNumber(part.x))
		case !reads(value, part.x):
			w.putValue(key, value, FormatNumber(part.x))
		}
		after = part.key
	}
}

// reads says whether a node is the number x already, however it is written.
func reads(n *yaml.Node, x float64) bool {
	got, ok := (&reader{}).number(n)
	return ok && got == x
}

// beginChange writes a scenario's first change.
func (w *writer) beginChange(t target, text string) {
	w.insertTop(t.root, "change", "{"+t.slot+": "+text+"}", []string{t.slot + ": " + text})
}

// insertTop writes a key of the top that is not there, or has nothing behind it:
// as flow when the top is in braces, else with the lines below it.
func (w *writer) insertTop(root *yaml.Node, name, flow string, lines []string) {
	key, value := keyAndValue(root, name)
	switch {
	case value != nil && !w.unwritten(value):
		w.putValue(key, value, flow)
	case isFlow(root) && value != nil:
		w.putValue(key, value, flow)
	case isFlow(root):
		w.insert(root, "", name+": "+flow)
	case value != nil && w.colon(key) < 0:
		w.stuck = true
	case value != nil:
		end := w.lineEnd(w.colon(key))
		w.replace(end, end, w.below(root.Content[0].Column+2, lines))
	default:
		column := root.Content[0].Column
		at := w.lineEnd(w.headEnd(root, name))
		w.replace(at, at, w.newline()+w.margin(column)+name+":"+w.below(column+2, lines))
	}
}

// below is lines of text that start at a column, each after a line break.
func (m *marks) below(column int, lines []string) string {
	var out strings.Builder
	for _, line := range lines {
		out.WriteString(m.margin(column) + line)
	}
	return out.String()
}

// headEnd is the byte after the last key that stands before add and drop, which
// a new change goes before, or after everything for the others.
func (w *writer) headEnd(root *yaml.Node, name string) int {
	end := w.end(root)
	for i := 0; name == "change" && i+1 < len(root.Content); i += 2 {
		if slices.Contains([]string{"add", "drop"}, root.Content[i].Value) {
			break
		}
		end = w.entryEnd(root.Content[i], root.Content[i+1])
	}
	return end
}
