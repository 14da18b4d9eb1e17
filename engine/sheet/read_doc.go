package sheet

import (
	"regexp"
	"slices"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// form is the form of sheet files this package reads.
const form = 1

var (
	sheetKeys    = []string{"thawbook", "title", "about", "money", "elevation", "seasons", "seed", "chapters"}
	scenarioKeys = []string{"thawbook", "title", "about", "from", "seasons", "seed", "change", "add", "drop"}
	moneyForm    = regexp.MustCompile(`^[A-Z]{3}$`)
)

// readDoc reads the whole file into d; false when it is not a sheet.
func (r *reader) readDoc(d *Doc) bool {
	if !r.readForm(d.root) {
		return false
	}
	d.head.places = map[string]diag.Place{}
	entries := r.entries(d.root, "the sheet")
	scenario := hasKey(entries, "from")
	for _, e := range entries {
		d.head.places[e.key] = r.place(e.value)
		if !r.belongs(e, scenario) {
			continue
		}
		if !r.headKey(&d.head, e) {
			r.bodyKey(d, e)
		}
	}
	if !scenario && !hasKey(entries, "chapters") {
		r.tell(diag.MissingKey, d.root, "a sheet of its own has chapters; a scenario says from: base.yaml", `"chapters" is missing`)
	}
	return true
}

func hasKey(entries []entry, key string) bool {
	return slices.ContainsFunc(entries, func(e entry) bool { return e.key == key })
}

// readForm checks that the file calls itself a sheet, and of this form.
func (r *reader) readForm(root *yaml.Node) bool {
	value := lookUp(root, "thawbook")
	if value == nil {
		r.tell(diag.NotASheet, root, `put "thawbook: 1" at its top`, "the file does not say that it is a sheet")
		return false
	}
	x, ok := r.number(value)
	switch {
	case !ok:
		return false
	case x > form:
		r.tell(diag.SheetTooNew, value, "open it with the newer program", "the sheet is of form %s, written by a later form of this program, which reads %d", value.Value, form)
		return false
	case x != form:
		r.tell(diag.NotASheet, value, `write "thawbook: 1"`, "there is no form %s of a sheet", quote(value.Value))
		return false
	}
	return true
}

// lookUp is the value of a mapping's key, or nil.
func lookUp(mapping *yaml.Node, key string) *yaml.Node {
	if _, value := keyAndValue(mapping, key); value != nil {
		return value
	}
	return nil
}

func keyAndValue(mapping *yaml.Node, key string) (at, value *yaml.Node) {
	if mapping == nil || mapping.Kind != yaml.MappingNode {
		return nil, nil
	}
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if k := mapping.Content[i]; k.Kind == yaml.ScalarNode && k.Value == key {
			return k, mapping.Content[i+1]
		}
	}
	return nil, nil
}

// belongs tells a key that only the other sort of file has, and an unknown one.
func (r *reader) belongs(e entry, scenario bool) bool {
	own, other, what, hint := sheetKeys, scenarioKeys, "a sheet of its own", "a scenario says which sheet it is taken from: from: base.yaml"
	if scenario {
		own, other, what, hint = scenarioKeys, sheetKeys, "a scenario", "put it under change, add or drop"
	}
	switch {
	case slices.Contains(own, e.key):
		return true
	case slices.Contains(other, e.key):
		r.tell(diag.UnknownKey, e.at, hint, "%s has no key %s", what, quote(e.key))
	default:
		r.unknown(e, what, own)
	}
	return false
}

// headKey reads a key of the top of the file; false when it is another.
func (r *reader) headKey(h *head, e entry) bool {
	switch e.key {
	case "thawbook":
	case "title":
		h.title = r.textOrNil(e.value)
	case "about":
		h.about = r.textOrNil(e.value)
	case "from":
		h.from = r.textOrNil(e.value)
		if h.from == nil {
			r.tell(diag.MissingKey, e.at, "from: base.yaml", `"from" names no sheet`)
		}
	case "money":
		if h.money = r.textOrNil(e.value); h.money != nil && !moneyForm.MatchString(*h.money) {
			r.tell(diag.WrongKind, e.value, "three capitals: USD, CAD, EUR", "%s is not a currency's code", quote(*h.money))
			h.money = nil
		}
	case "seasons":
		if n := r.whole(e.value, "seasons", 1, MaxSeasons); n != nil {
			seasons := int(*n)
			h.seasons = &seasons
		}
	case "seed":
		h.seed = r.whole(e.value, "the seed", 0, 1<<64-1)
	case "elevation":
		h.elevation = r.elevation(e.value)
	default:
		return false
	}
	return true
}

func (r *reader) textOrNil(n *yaml.Node) *string {
	if text := r.text(n); text != "" {
		return &text
	}
	return nil
}

func (r *reader) bodyKey(d *Doc, e entry) {
	switch e.key {
	case "chapters", "add":
		for _, item := range r.items(e.value, quote(e.key)) {
			if c := r.chapter(item); c != nil {
				d.chapters = append(d.chapters, c)
			}
		}
	case "change":
		d.changes = r.changes(e.value)
	case "drop":
		for _, item := range r.items(e.value, `"drop"`) {
			if id := r.text(item); id != "" {
				d.drops = append(d.drops, drop{id, r.place(item)})
			}
		}
	}
}

func (r *reader) chapter(n *yaml.Node) *chapterPart {
	entries := r.entries(n, "a chapter")
	if entries == nil {
		return nil
	}
	c := &chapterPart{place: r.place(n)}
	for _, e := range entries {
		switch e.key {
		case "title":
			c.title = r.text(e.value)
		case "note":
			c.note = r.text(e.value)
		case "lines":
			for _, item := range r.items(e.value, `"lines"`) {
				if l := r.line(item); l != nil {
					c.lines = append(c.lines, l)
				}
			}
		case "tables":
			for _, item := range r.items(e.value, `"tables"`) {
				if t := r.table(item); t != nil {
					c.tables = append(c.tables, t)
				}
			}
		default:
			r.unknown(e, "a chapter", []string{"title", "note", "lines", "tables"})
		}
	}
	if c.title == "" {
		r.tell(diag.MissingKey, n, "title: Trees and sap", "the chapter has no title")
	}
	return c
}

// changes reads a scenario's change.
func (r *reader) changes(n *yaml.Node) []*change {
	if isNull(n) {
		return nil
	}
	var out []*change
	for _, e := range r.entries(n, `"change"`) {
		r.about = e.key
		c := &change{id: e.key, place: r.place(e.at)}
		switch e.value.Kind {
		case yaml.MappingNode:
			c.line = r.changedLine(e.value)
		case yaml.ScalarNode:
			c.line = r.changedValue(e.value)
		default:
			r.tell(diag.WrongKind, e.value, "write taps: 150, or taps: {guess: {low: …}}", "a change must be a value or a mapping, not %s", describe(e.value))
		}
		if c.line != nil {
			out = append(out, c)
		}
		r.about = ""
	}
	return out
}

// changedLine is a change that gives keys of a line.
func (r *reader) changedLine(n *yaml.Node) *Line {
	l := &Line{Place: r.place(n), Places: map[string]diag.Place{}}
	r.lineKeys(l, r.entries(n, "the change"), changeKeys)
	return l
}

// changedValue is a change that gives only a number, or a name to choose.
func (r *reader) changedValue(n *yaml.Node) *Line {
	l := &Line{Place: r.place(n), Places: map[string]diag.Place{}}
	if n.Style == 0 && idForm.MatchString(n.Value) && !isNull(n) {
		l.Kind, l.Choose = Choose, n.Value
		l.Places["choose"] = l.Place
		return l
	}
	x, ok := r.number(n)
	if !ok {
		return nil
	}
	l.Kind, l.Is = Is, x
	l.Places["is"] = l.Place
	return l
}
