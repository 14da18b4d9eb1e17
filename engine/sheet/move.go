package sheet

import (
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// move puts a line, table, column or row elsewhere in its list, or a line or
// table at the end of another chapter.
func (d *Doc) move(id string, m Move, in *Sheet) (*Doc, *diag.Diagnostic) {
	i, own := d.ownItem(id)
	if !own || i.what == "a table" && d.inherits(in, id) {
		return nil, d.notOwn(id, in)
	}
	w := &writer{marks: d.marks}
	to := i.path
	switch {
	case m.Chapter != "" && m.By != 0:
		return nil, refuse(diag.EditUnknown, "make two edits of it", "one edit of %s asks for two things", quote(id))
	case m.Chapter != "":
		path, refused := w.toChapter(d, i, m.Chapter)
		if refused != nil {
			return nil, refused
		}
		to = path
	default:
		at := i.index + m.By
		if m.By == 0 || at < 0 || at >= len(i.list.Content) {
			return nil, refuse(diag.EditUnknown, "there is nothing beyond", "%s cannot move further", quote(id))
		}
		w.shift(i, at)
	}
	next, refused := d.written(w, []string{i.path, to}, i.node())
	if refused == nil {
		if moved, found := next.ownItem(id); !found || !sameBut(i.node(), moved.node(), nil) {
			return nil, unwritable(i.node())
		}
	}
	return next, refused
}

// shift lets the items between an item's place and its new one change places.
func (w *writer) shift(i item, at int) {
	order := make([]int, 0, len(i.list.Content))
	for k := range i.list.Content {
		if k != i.index {
			order = append(order, k)
		}
	}
	order = append(order[:at], append([]int{i.index}, order[at:]...)...)
	for place, k := range order {
		if place == k {
			continue
		}
		from, to := w.block(i, place)
		a, b := w.block(i, k)
		w.replace(from, to, w.text[a:b])
	}
}

// block is the stretch of text that is an item's own: in a block list with the
// line break and the comments before it.
func (w *writer) block(i item, k int) (from, to int) {
	n := i.list.Content[k]
	if isFlow(i.list) {
		return w.start(n), w.end(n)
	}
	to = w.lineEnd(w.end(n))
	if k > 0 {
		return w.lineEnd(w.end(i.list.Content[k-1])), to
	}
	key, _ := keyAndValue(i.holder, i.key)
	colon := w.colon(key)
	if colon < 0 || w.lineEnd(colon) > w.dash(n) {
		w.stuck = true
		return to, to
	}
	return w.lineEnd(colon), to
}

// toChapter takes an item out of its chapter and writes it at the end of another.
// It gives the item's new path.
func (w *writer) toChapter(d *Doc, i item, title string) (string, *diag.Diagnostic) {
	if i.what != "a line" && i.what != "a table" {
		return "", refuse(diag.EditUnknown, "move its table", "%s stands in no chapter of its own", i.what)
	}
	for path, chapter := range each(lookUp(d.root, d.chaptersKey()), "/"+d.chaptersKey()) {
		name := lookUp(chapter, "title")
		if name == nil || strings.TrimSpace(name.Value) != title {
			continue
		}
		if chapter == i.holder {
			return "", refuse(diag.EditUnknown, "move it up or down", "it stands in %s already", quote(title))
		}
		w.append(chapter, i)
		if isFlow(i.list) || len(i.list.Content) == 1 {
			w.removeItem(i)
		} else {
			from, to := w.block(i, i.index)
			w.replace(from, to, "")
		}
		return path + "/" + i.key + i.path[strings.LastIndexByte(i.path, '/'):], nil
	}
	return "", refuse(diag.EditUnknown, nearest(title, d.titles()), "the file has no chapter %s", quote(title))
}

// append writes an item of another chapter at the end of this one's list.
func (w *writer) append(chapter *yaml.Node, i item) {
	n := i.node()
	key, list := keyAndValue(chapter, i.key)
	flow := w.text[w.start(n):w.end(n)]
	oneLine := isFlow(n) && !strings.ContainsAny(flow, "\r\n")
	switch {
	case list != nil && len(list.Content) > 0 && !isFlow(list):
		end := w.lineEnd(w.end(list.Content[len(list.Content)-1]))
		w.replace(end, end, w.indented(i, list.Column))
	case list == nil && !isFlow(chapter):
		behind := ""
		if i.key == "lines" {
			behind = beforeLines(chapter)
		}
		w.insert(chapter, behind, i.key+":"+w.indented(i, chapter.Content[0].Column+2))
	case !oneLine:
		w.stuck = true
	case list == nil:
		w.insert(chapter, "", i.key+": ["+flow+"]")
	case len(list.Content) == 0:
		w.putValue(key, list, "["+flow+"]")
	default:
		w.insertItem(list, "", flow, nil)
	}
}

// indented is an item's own text as an item of a block list whose dashes stand
// at a column.
func (w *writer) indented(i item, column int) string {
	n := i.node()
	if isFlow(i.list) {
		if strings.ContainsAny(w.text[w.start(n):w.end(n)], "\r\n") {
			w.stuck = true
		}
		return w.margin(column) + "- " + w.text[w.start(n):w.end(n)]
	}
	from, to := w.block(i, i.index)
	lines := strings.Split(w.text[from:to], "\n")
	by := column - i.list.Column
	for at, line := range lines {
		switch blank := strings.TrimSpace(line) == ""; {
		case blank:
		case by >= 0:
			lines[at] = strings.Repeat(" ", by) + line
		case strings.HasPrefix(line, strings.Repeat(" ", -by)):
			lines[at] = line[-by:]
		default:
			w.stuck = true
		}
	}
	return strings.Join(lines, "\n")
}

// titles are the titles of the chapters this file writes.
func (d *Doc) titles() []string {
	var out []string
	for _, c := range d.chapters {
		out = append(out, c.title)
	}
	return out
}
