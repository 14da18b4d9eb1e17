package sheet

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// fresh says why id cannot be given to something new, or nil.
func (d *Doc) fresh(id string, in *Sheet, fault func(string) (string, string)) *diag.Diagnostic {
	name := id[strings.LastIndexByte(id, '.')+1:]
	if wrong, hint := fault(name); wrong != "" {
		return refuse(diag.BadID, hint, "%s %s", quote(name), wrong)
	}
	_, taken := d.ownItem(id)
	if in != nil && !taken {
		_, taken = inherited(id, in)
	}
	if taken || id == "elevation" && d.head.elevation != nil {
		return refuse(diag.DuplicateID, "give it another id", "the id %s is taken", quote(id))
	}
	return nil
}

// addOrder is what a new line may be given, in the order it is written. A choice
// needs names too, and is written by hand.
var addOrder = []string{"label", "is", "guess", "records", "formula", "unit", "note", "source", "floor", "ceiling"}

// addLine writes a new line.
func (d *Doc) addLine(id string, at Add, settings []setting, in *Sheet) (*Doc, *diag.Diagnostic) {
	if refused := d.fresh(id, in, functionFault); refused != nil {
		return nil, refused
	}
	if i := slices.IndexFunc(settings, func(s setting) bool { return !slices.Contains(addOrder, s.key) }); i >= 0 {
		return nil, refuse(diag.EditUnknown, "what may be set is "+strings.Join(addOrder, ", "), "a new line has no %q to set", settings[i].key)
	}
	if !slices.ContainsFunc(settings, setting.isKind) {
		return nil, refuse(diag.NoKind, "set is, guess, records or formula", "nothing says what %s comes to", quote(id))
	}
	if at.Chapter == "" {
		return nil, refuse(diag.MissingKey, "name a chapter by its title", "nothing says which chapter %s goes to", quote(id))
	}
	text := "{id: " + id
	for _, key := range addOrder {
		for _, s := range settings {
			if s.key == key && !s.empty() {
				text += ", " + s.key + ": " + s.render(true, nil)
			}
		}
	}
	w := &writer{marks: d.marks}
	allowed := w.addToChapter(d, at, id, text+"}")
	next, refused := d.written(w, allowed, d.root)
	if refused != nil {
		return nil, refused
	}
	for _, s := range settings {
		if !next.says(id, s, in) {
			return nil, unwritable(d.root)
		}
	}
	return next, nil
}

// addToChapter writes a line into the chapter of that title, which it makes when
// there is none. It returns the paths of the tree that come to differ by it.
func (w *writer) addToChapter(d *Doc, at Add, id, line string) (allowed []string) {
	key := d.chaptersKey()
	chapters := lookUp(d.root, key)
	title := renderText(at.Chapter, true, nil)
	flow := "{title: " + title + ", lines: [" + line + "]}"
	for path, chapter := range each(chapters, "/"+key) {
		if name := lookUp(chapter, "title"); name != nil && strings.TrimSpace(name.Value) == at.Chapter {
			return []string{w.addToLines(chapter, path, at.After, id, line)}
		}
	}
	if chapters == nil || len(chapters.Content) == 0 {
		w.insertTop(d.root, key, "["+flow+"]", []string{"- title: " + title, "  lines:", "    - " + line})
		return []string{"/" + key}
	}
	w.insertItem(chapters, "", flow, []string{"title: " + title, "lines:", "  - " + line})
	return []string{"/" + key + "/" + at.Chapter}
}

// addToLines writes a line into a chapter's lines. It returns the path of the
// tree that comes to differ by it.
func (w *writer) addToLines(chapter *yaml.Node, path, after, id, line string) (allowed string) {
	key, lines := keyAndValue(chapter, "lines")
	switch {
	case lines == nil && isFlow(chapter):
		w.insert(chapter, beforeLines(chapter), "lines: ["+line+"]")
	case lines == nil:
		w.insert(chapter, beforeLines(chapter), "lines:"+w.below(chapter.Content[0].Column+2, []string{"- " + line}))
	case len(lines.Content) == 0:
		w.putValue(key, lines, "["+line+"]")
	default:
		w.insertItem(lines, after, line, nil)
		return path + "/lines/" + id
	}
	return path + "/lines"
}

// beforeLines is the key of a chapter that its lines are written behind.
func beforeLines(chapter *yaml.Node) string {
	if lookUp(chapter, "note") != nil {
		return "note"
	}
	return "title"
}

// addRow writes a new row, with 0 for each column that has no formula.
func (d *Doc) addRow(id string, settings []setting, in *Sheet) (*Doc, *diag.Diagnostic) {
	table, row, _ := strings.Cut(id, ".")
	t, own := d.ownItem(table)
	if !own || t.what != "a table" {
		return nil, refuse(diag.EditUnknown, "write the row under add in the file", "the file has no table %s to add a row to", quote(table))
	}
	if refused := d.fresh(id, in, idFault); refused != nil {
		return nil, refused
	}
	text := "{id: " + row
	for _, s := range settings {
		if !slices.Contains(rowEdits, s.key) {
			return nil, refuse(diag.EditUnknown, "set its cells after it is there", "a row has no %q to set", s.key)
		}
		if !s.empty() {
			text += ", " + s.key + ": " + s.render(true, nil)
		}
	}
	for _, column := range d.valueColumns(table, in) {
		text += ", " + column + ": 0"
	}
	w := &writer{marks: d.marks}
	key, rows := keyAndValue(t.node(), "rows")
	switch {
	case rows == nil:
		w.insert(t.node(), "", "rows: ["+text+"}]")
	case len(rows.Content) == 0:
		w.putValue(key, rows, "["+text+"}]")
	default:
		w.insertItem(rows, "", text+"}", nil)
	}
	return d.written(w, []string{t.path + "/rows/" + row}, t.node())
}

// valueColumns are the columns of a table that each row gives a value for.
func (d *Doc) valueColumns(table string, in *Sheet) []string {
	var ids []string
	if in != nil {
		if t := in.Table(table); t != nil {
			for _, c := range t.Columns {
				if c.Formula == "" {
					ids = append(ids, c.ID)
				}
			}
			return ids
		}
	}
	for _, chapter := range d.chapters {
		for _, t := range chapter.tables {
			for _, c := range t.columns {
				if t.id == table && c.Formula == "" {
					ids = append(ids, c.ID)
				}
			}
		}
	}
	return ids
}
