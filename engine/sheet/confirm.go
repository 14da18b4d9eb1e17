package sheet

import (
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// An edit is believed only when the new text has been read and says what was
// asked, and everything it was not about says what it said before.

// itemPath is the path of a list's item: by its id or title when it has one, so
// that items may come and go before it.
func itemPath(path string, item *yaml.Node, i int) string {
	for _, key := range []string{"id", "title"} {
		if name := lookUp(item, key); name != nil {
			return path + "/" + name.Value
		}
	}
	return path + "/" + strconv.Itoa(i)
}

// sameBut says whether two trees say the same outside the allowed paths.
func sameBut(before, after *yaml.Node, allowed []string) bool {
	a, b := facts(before, allowed), facts(after, allowed)
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

type fact struct{ path, value string }

// facts lists every scalar of a tree with its path.
func facts(root *yaml.Node, allowed []string) []fact {
	var out []fact
	var walk func(n *yaml.Node, path string)
	walk = func(n *yaml.Node, path string) {
		for _, a := range allowed {
			if path == a || strings.HasPrefix(path, a+"/") {
				return
			}
		}
		switch {
		case n.Kind == yaml.ScalarNode:
			out = append(out, fact{path, n.Tag + n.Value})
		case n.Kind == yaml.MappingNode:
			for i := 0; i+1 < len(n.Content); i += 2 {
				walk(n.Content[i+1], path+"/"+n.Content[i].Value)
			}
		default:
			for i, item := range n.Content {
				walk(item, itemPath(path, item, i))
			}
		}
	}
	walk(root, "")
	return out
}

// says reads a setting back.
func (d *Doc) says(about string, s setting, in *Sheet) bool {
	t, refused := d.locate(about, in)
	if refused != nil {
		return false
	}
	holder := t.mapping
	if holder == nil {
		value := t.value()
		if value == nil {
			return false
		}
		if value.Kind != yaml.MappingNode {
			return (s.key == "is" || s.key == "choose") && s.sameAs(value)
		}
		holder = value
	}
	value := lookUp(holder, s.key)
	if value == nil {
		return s.empty()
	}
	for _, other := range kindKeys {
		if s.isKind() && other != s.key && lookUp(holder, other) != nil {
			return false
		}
	}
	return s.sameAs(value)
}

// sameAs says whether a value in the tree is what the setting asks for.
func (s setting) sameAs(n *yaml.Node) bool {
	r := &reader{}
	switch {
	case s.number != nil:
		return reads(n, *s.number)
	case s.guess != nil:
		l := &Line{Places: map[string]diag.Place{}}
		r.guess(l, entry{"guess", n, n})
		return len(r.list) == 0 && l.Low == s.guess.Low && l.Likely == s.guess.Likely && l.High == s.guess.High
	case s.records != nil:
		if n.Kind != yaml.SequenceNode || len(n.Content) != len(s.records) {
			return false
		}
		for i, item := range n.Content {
			if !reads(item, s.records[i]) {
				return false
			}
		}
		return true
	case s.text != nil:
		return r.text(n) == *s.text && len(r.list) == 0
	}
	return n.Kind == yaml.ScalarNode && n.Value == s.whole
}
