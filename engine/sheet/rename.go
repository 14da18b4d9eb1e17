package sheet

import (
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// rename gives a line or a table that this file writes another id, and lets
// everything in the file that names it follow: formulas, moves_with, lay_in and
// choices among the table's rows. A guess of another id draws other seasons.
func (d *Doc) rename(id, to string, in *Sheet) (*Doc, *diag.Diagnostic) {
	i, own := d.ownItem(id)
	switch {
	case !own || i.what == "a table" && d.inherits(in, id):
		return nil, d.notOwn(id, in)
	case i.what != "a line" && i.what != "a table":
		return nil, refuse(diag.EditUnknown, "give it another label", "%s keeps its id", i.what)
	}
	if refused := d.fresh(to, in, functionFault); refused != nil {
		return nil, refused
	}
	if strings.Contains(to, ".") {
		return nil, refuse(diag.BadID, "small letters, digits and _", "%s is not an id", quote(to))
	}
	w := &renamer{writer: writer{marks: d.marks}, from: id, to: to, table: i.what == "a table", texts: map[string]string{}}
	key, value := keyAndValue(i.node(), "id")
	w.putValue(key, value, to)
	renamed := i.path[:len(i.path)-len(id)] + to
	w.allowed = append(w.allowed, i.path, renamed)
	w.follow(d.root, "", nil)
	if w.clash != "" {
		return nil, refuse(diag.DuplicateID, "choose another id", "the formula %s has a %s of its own", quote(w.clash), quote(to))
	}
	next, refused := d.written(&w.writer, w.allowed, i.node())
	if refused == nil && !w.tells(next, i.path, renamed) {
		return nil, unwritable(i.node())
	}
	return next, refused
}

// tells says whether a document says the texts that were written into it, now
// that the item at one path is at another.
func (w *renamer) tells(d *Doc, was, is string) bool {
	told := map[string]string{}
	for _, f := range facts(d.root, nil) {
		told[f.path] = f.value
	}
	for path, text := range w.texts {
		if rest, inside := strings.CutPrefix(path, was+"/"); inside {
			path = is + "/" + rest
		}
		if !strings.HasSuffix(told[path], text) {
			return false
		}
	}
	return true
}

// notOwn says why something that another file writes, or none, is left alone.
func (d *Doc) notOwn(id string, in *Sheet) *diag.Diagnostic {
	if in != nil {
		if _, known := inherited(id, in); known && d.head.from != nil {
			return refuse(diag.EditUnknown, "change it in "+*d.head.from, "%s is written in the sheet this one is taken from", quote(id))
		}
	}
	return refuse(diag.EditUnknown, nearest(id, d.editable(in)), "there is nothing called %s here", quote(id))
}

// renamer writes one id in place of another wherever the file names it.
type renamer struct {
	writer
	from, to string
	table    bool              // the id is a table's
	allowed  []string          // paths that come to differ
	texts    map[string]string // what those of them that are texts say then
	clash    string            // a formula in which to means something else
}

// follow goes through the tree. columns are the ids that formulas of the table
// walked through find before any line.
func (w *renamer) follow(n *yaml.Node, path string, columns []string) {
	if n.Kind == yaml.SequenceNode {
		for path, item := range each(n, path) {
			w.follow(item, path, columns)
		}
		return
	}
	if n.Kind != yaml.MappingNode {
		return
	}
	if list := lookUp(n, "columns"); list != nil {
		columns = nil
		for _, column := range each(list, "") {
			if id := lookUp(column, "id"); id != nil {
				columns = append(columns, strings.TrimSpace(id.Value))
			}
		}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		w.entry(key, value, path+"/"+key.Value, columns, isFlow(n))
	}
}

func (w *renamer) entry(key, value *yaml.Node, path string, columns []string, flow bool) {
	scalar := value.Kind == yaml.ScalarNode
	switch {
	case key.Value == "formula" && scalar:
		text, clash := renameIn(value.Value, w.from, w.to, columns)
		if clash {
			w.clash = value.Value
		}
		w.put(key, value, text, path, flow)
	case key.Value == "among" && scalar && w.table && strings.TrimSpace(value.Value) == w.from:
		w.put(key, value, w.to, path, flow)
	case key.Value == "price" && scalar && strings.HasSuffix(path, "/lay_in/price"):
		first, rest, dotted := strings.Cut(value.Value, ".")
		if first == w.from {
			first = w.to
		}
		if dotted {
			first += "." + rest
		}
		w.put(key, value, first, path, flow)
	case key.Value == "moves_with" && value.Kind == yaml.MappingNode && !w.table:
		for i := 0; i+1 < len(value.Content); i += 2 {
			if with := value.Content[i]; with.Value == w.from {
				w.replace(w.start(with), w.end(with), w.to)
				w.allowed = append(w.allowed, path)
			}
		}
	default:
		w.follow(value, path, columns)
	}
}

// put writes a text in place of a value when it differs.
func (w *renamer) put(key, value *yaml.Node, text, path string, flow bool) {
	if text == value.Value {
		return
	}
	w.allowed, w.texts[path] = append(w.allowed, path), text
	from, to := w.start(value), w.end(value)
	if value.Style&(yaml.FoldedStyle|yaml.LiteralStyle) != 0 {
		// Lines of its own stay as they were laid out.
		raw, _ := renameIn(w.text[from:to], w.from, w.to, nil)
		w.replace(from, to, raw)
		return
	}
	w.putValue(key, value, renderText(text, flow, value))
}
