package sheet

import (
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// restructure is Edit for what comes, goes or moves whole.
func (d *Doc) restructure(e Edit, settings []setting, in *Sheet) (*Doc, *diag.Diagnostic) {
	switch {
	case e.asks() > 1:
		return nil, refuse(diag.EditUnknown, "make two edits of it", "one edit of %s asks for two things", quote(e.About))
	case e.Add != nil && strings.Contains(e.About, "."):
		return d.addRow(e.About, settings, in)
	case e.Add != nil:
		return d.addLine(e.About, *e.Add, settings, in)
	case e.Duplicate != "":
		return d.duplicate(e.About, e.Duplicate, settings, in)
	case len(settings) > 0:
		return nil, refuse(diag.EditUnknown, "make two edits of it", "what is taken away or moved cannot be set")
	case e.Rename != "":
		return d.rename(e.About, e.Rename, in)
	case e.Move != nil:
		return d.move(e.About, *e.Move, in)
	case e.Remove:
		return d.removeItem(e.About, in)
	}
	return d.restore(e.About)
}

// removeItem takes an item out of the file, or drops what a scenario inherits.
func (d *Doc) removeItem(id string, in *Sheet) (*Doc, *diag.Diagnostic) {
	w := &writer{marks: d.marks}
	i, own := d.ownItem(id)
	if own && i.what == "a column" {
		for _, row := range each(lookUp(i.holder, "rows"), "") {
			if lookUp(row, id[strings.IndexByte(id, '.')+1:]) != nil {
				return nil, refuse(diag.EditUnknown, "take its values out of the rows first", "rows have values in the column %s", quote(id))
			}
		}
	}
	if own && !(i.what == "a table" && d.inherits(in, id)) {
		w.removeItem(i)
		return d.written(w, []string{i.path}, i.node())
	}
	t, known := target{}, false
	if d.head.from != nil && in != nil {
		t, known = inherited(id, in)
	}
	switch {
	case !known:
		return nil, refuse(diag.EditUnknown, nearest(id, d.editable(in)), "there is nothing called %s to take out", quote(id))
	case t.what == "a cell" || t.what == "a column":
		return nil, refuse(diag.EditUnknown, "drop the row, or change what it comes to", "a scenario cannot drop %s", t.what)
	}
	list := lookUp(d.root, "drop")
	if list == nil || len(list.Content) == 0 {
		w.insertTop(d.root, "drop", "["+id+"]", []string{"- " + id})
		return d.written(w, []string{"/drop"}, d.root)
	}
	w.insertItem(list, "", id, nil)
	return d.written(w, []string{"/drop/" + strconv.Itoa(len(list.Content))}, list)
}

// restore takes back a scenario's change, or a cell's own value where its column
// has a formula.
func (d *Doc) restore(id string) (*Doc, *diag.Diagnostic) {
	w := &writer{marks: d.marks}
	if changes := lookUp(d.root, "change"); lookUp(changes, id) != nil {
		if key, _ := keyAndValue(d.root, "change"); len(changes.Content) == 2 {
			w.putValue(key, changes, "{}")
		} else {
			w.remove(changes, id)
		}
		return d.written(w, []string{"/change/" + id}, changes)
	}
	if t, found := d.locateOwn(id, nil); found && t.what == "a cell" && t.value() != nil {
		row, _ := d.ownItem(id[:strings.LastIndexByte(id, '.')])
		for _, column := range each(lookUp(row.holder, "columns"), "") {
			if hasID(column, t.slot) && lookUp(column, "formula") != nil {
				w.remove(t.in, t.slot)
				return d.written(w, []string{t.path + "/" + t.slot}, t.in)
			}
		}
	}
	return nil, refuse(diag.EditUnknown, "it says what it always said", "there is no change of %s to take back", quote(id))
}

// removeItem takes an item out of its list.
func (w *writer) removeItem(i item) {
	key, _ := keyAndValue(i.holder, i.key)
	items := i.list.Content
	switch n := i.node(); {
	case len(items) == 1:
		w.putValue(key, i.list, "[]")
	case i.index > 0 && isFlow(i.list):
		w.replace(w.end(items[i.index-1]), w.end(n), "")
	case i.index > 0:
		w.replace(w.lineEnd(w.end(items[i.index-1])), w.lineEnd(w.end(n)), "")
	case isFlow(i.list):
		w.replace(w.start(n), w.start(items[1]), "")
	default:
		w.replace(w.dash(n), w.dash(items[1]), "")
	}
}

// dash is the byte of the "-" that a block list's item stands behind.
func (w *writer) dash(n *yaml.Node) int {
	at := w.start(n) - 1
	for at > 0 && (w.text[at] == ' ' || w.text[at] == '\t') {
		at--
	}
	w.stuck = w.stuck || w.text[at] != '-'
	return at
}

// insertItem writes a new item behind the one called after, or at the end of a
// list that has items. flow is the item in one piece, lines the same over lines
// for a block list, or nil when flow will do there too.
func (w *writer) insertItem(list *yaml.Node, after, flow string, lines []string) {
	last := list.Content[len(list.Content)-1]
	if i := slices.IndexFunc(list.Content, func(n *yaml.Node) bool { return hasID(n, after) }); i >= 0 {
		last = list.Content[i]
	}
	if isFlow(list) {
		end := w.end(last)
		w.replace(end, end, ", "+flow)
		return
	}
	if lines == nil {
		lines = []string{flow}
	}
	column := list.Column
	text := w.margin(column) + "- " + lines[0] + w.below(column+2, lines[1:])
	end := w.lineEnd(w.end(last))
	w.replace(end, end, text)
}
