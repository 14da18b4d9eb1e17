package sheet

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// target is where in a file's tree an edit is written: a mapping that has the
// keys itself, or a slot, which is one key of a mapping whose value is a bare
// number or a mapping (a cell, a change) and may not be there yet.
type target struct {
	what    string // "a line", for messages
	about   string
	keys    []string // what may be set
	kind    Kind     // what it comes to so far, "" when it comes to nothing
	mapping *yaml.Node
	path    string // of mapping, or of the mapping the slot is in
	in      *yaml.Node
	slot    string
	// change says the slot is in a scenario's change, which in is, or nil while
	// there is no such mapping; root is then the file's.
	change bool
	root   *yaml.Node
}

var (
	topEdits    = []string{"title", "about", "seasons", "seed"}
	lineEdits   = []string{"is", "guess", "records", "choose", "formula", "unit", "label", "note", "source", "floor", "ceiling"}
	cellEdits   = []string{"is", "guess", "records", "formula", "note", "source", "floor", "ceiling"}
	placeEdits  = []string{"is", "guess", "records", "unit", "note", "source", "floor", "ceiling"}
	columnEdits = []string{"formula", "unit", "label", "note"}
	rowEdits    = []string{"label", "note", "source"}
	tableEdits  = []string{"label", "note"}
)

// node is a node of the tree near the target, for its place.
func (t target) node() *yaml.Node {
	for _, n := range []*yaml.Node{t.mapping, t.in, t.root} {
		if n != nil {
			return n
		}
	}
	return nil
}

// value is the slot's value, nil when there is none.
func (t target) value() *yaml.Node { return lookUp(t.in, t.slot) }

// takes says why the target cannot be given a setting, or nil.
func (t target) takes(s setting) *diag.Diagnostic {
	if !slices.Contains(t.keys, s.key) {
		return refuse(diag.EditUnknown, "what may be set is "+strings.Join(t.keys, ", "), "%s has no %q to set", t.what, s.key)
	}
	switch {
	case !s.isKind():
		if t.mapping == nil && !t.change && t.value() == nil {
			return refuse(diag.EditUnknown, "give the cell a value of its own first", "%s is worked out by its column", quote(t.about))
		}
	case s.key == "choose" && t.kind != Choose:
		return refuse(diag.EditUnknown, "set is, guess, records or formula", "%s is not a choice", quote(t.about))
	case s.key != "choose" && t.kind == Choose:
		return refuse(diag.EditUnknown, "set choose to one of its names", "%s is a choice", quote(t.about))
	}
	return nil
}

// locate finds where an edit about id is written.
func (d *Doc) locate(id string, in *Sheet) (target, *diag.Diagnostic) {
	if id == "" {
		return target{what: "a sheet", keys: topEdits, mapping: d.root}, nil
	}
	if lookUp(d.root, "elevation") != nil && id == "elevation" {
		return target{what: "the elevation", about: id, keys: placeEdits, in: d.root, slot: id, kind: Is}, nil
	}
	if t, found := d.locateOwn(id, in); found {
		return t, nil
	}
	if d.head.from != nil && in != nil {
		if t, found := inherited(id, in); found {
			t.in, t.root, t.slot, t.path, t.change = lookUp(d.root, "change"), d.root, id, "/change", true
			if t.in != nil && t.in.Kind != yaml.MappingNode {
				t.in = nil
			}
			return t, nil
		}
	}
	return target{}, refuse(diag.EditUnknown, nearest(id, d.editable(in)), "there is no line %s", quote(id))
}

// locateOwn finds what this file itself writes.
func (d *Doc) locateOwn(id string, in *Sheet) (target, bool) {
	if i, found := d.ownItem(id); found && !(i.what == "a table" && d.inherits(in, id)) {
		keys := map[string][]string{"a line": lineEdits, "a table": tableEdits, "a column": columnEdits, "a row": rowEdits}[i.what]
		return target{what: i.what, about: id, keys: keys, kind: kindOf(i.node()), mapping: i.node(), path: i.path}, true
	}
	dot := strings.LastIndexByte(id, '.')
	if dot < 0 || slices.Contains(rowKeys, id[dot+1:]) {
		return target{}, false
	}
	row, found := d.ownItem(id[:dot])
	if !found || row.what != "a row" {
		return target{}, false
	}
	t := target{what: "a cell", about: id, keys: cellEdits, kind: Is, in: row.node(), slot: id[dot+1:], path: row.path}
	return t, t.value() != nil || row.hasColumn(t.slot) || in != nil && in.Find(id) != nil
}

// inherited finds what a scenario takes over, with nothing yet of where to write.
func inherited(id string, in *Sheet) (target, bool) {
	if l := in.Find(id); l != nil {
		t := target{what: "a line", about: id, keys: lineEdits, kind: l.Kind}
		if l.Table != "" {
			t.what, t.keys = "a cell", cellEdits
		}
		return t, true
	}
	table, rest, dotted := strings.Cut(id, ".")
	t := in.Table(table)
	switch {
	case t == nil:
	case !dotted:
		return target{what: "a table", about: id, keys: tableEdits}, true
	case slices.ContainsFunc(t.Columns, func(c Column) bool { return c.ID == rest }):
		return target{what: "a column", about: id, keys: columnEdits}, true
	case slices.ContainsFunc(t.Rows, func(r Row) bool { return r.ID == rest }):
		return target{what: "a row", about: id, keys: rowEdits}, true
	}
	return target{}, false
}

// editable lists ids for a did-you-mean.
func (d *Doc) editable(in *Sheet) []string {
	if in != nil {
		return in.ids()
	}
	var ids []string
	for _, c := range d.chapters {
		for _, l := range c.lines {
			ids = append(ids, l.ID)
		}
		for _, t := range c.tables {
			for _, r := range t.rows {
				for _, cell := range r.cells {
					ids = append(ids, t.id+"."+r.row.ID+"."+cell.column)
				}
			}
		}
	}
	return ids
}

// kindOf is the kind a mapping gives, "" when it gives none.
func kindOf(n *yaml.Node) Kind {
	for _, key := range kindKeys {
		if lookUp(n, key) != nil {
			return Kind(key)
		}
	}
	return ""
}
