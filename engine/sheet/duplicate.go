package sheet

import (
	"strings"

	"thawbook/engine/diag"
)

// duplicate writes a line, table or row once more under another id, behind the
// first, and sets what the copy says otherwise. A line that a scenario inherits
// is written out among what it adds.
func (d *Doc) duplicate(id, as string, settings []setting, in *Sheet) (*Doc, *diag.Diagnostic) {
	i, own := d.ownItem(id)
	if !own || i.what == "a table" && d.inherits(in, id) {
		if l := d.inheritedLine(id, in); l != nil {
			return d.addLine(as, Add{Chapter: in.chapterOf(l)}, append(l.settings(settings), settings...), in)
		}
		return nil, d.notOwn(id, in)
	}
	fault, whole := functionFault, as
	switch {
	case strings.Contains(as, "."):
		return nil, refuse(diag.BadID, "small letters, digits and _", "%s is not an id", quote(as))
	case i.what == "a row":
		fault, whole = idFault, id[:strings.LastIndexByte(id, '.')+1]+as
	case i.what == "a column":
		return nil, refuse(diag.EditUnknown, "write the column into the file", "a column cannot be written twice")
	}
	if refused := d.fresh(whole, in, fault); refused != nil {
		return nil, refused
	}
	w := &writer{marks: d.marks}
	w.copy(i, as)
	next, refused := d.written(w, []string{i.path[:strings.LastIndexByte(i.path, '/')+1] + as}, i.node())
	if refused != nil {
		return nil, refused
	}
	if made, found := next.ownItem(whole); !found || !sameBut(i.node(), made.node(), []string{"/id"}) {
		return nil, unwritable(i.node())
	}
	for _, s := range settings {
		if next, refused = next.set(whole, s, in); refused != nil {
			return nil, refused
		}
	}
	return next, nil
}

// copy writes an item again behind itself, under another id.
func (w *writer) copy(i item, as string) {
	n := i.node()
	id := lookUp(n, "id")
	from, to := w.start(n), w.end(n)
	text := w.text[from:w.start(id)] + as + w.text[w.end(id):to]
	if isFlow(i.list) {
		w.replace(to, to, ", "+text)
		return
	}
	end := w.lineEnd(to)
	w.replace(end, end, w.margin(i.list.Column)+w.text[w.dash(n):from]+text)
}

// inheritedLine is a line of its own that a scenario takes over and that can be
// written in one piece, or nil.
func (d *Doc) inheritedLine(id string, in *Sheet) *Line {
	if d.head.from == nil || in == nil {
		return nil
	}
	if l := in.Find(id); l != nil && l.Table == "" && l.Kind != Choose && l.Kind != "" {
		return l
	}
	return nil
}

// chapterOf is the title of the chapter a line stands in.
func (s *Sheet) chapterOf(l *Line) string {
	for _, c := range s.Chapters {
		for _, other := range c.Lines {
			if other.ID == l.ID {
				return c.Title
			}
		}
	}
	return ""
}

// settings are what would write the line again, but for what is set otherwise.
func (l *Line) settings(otherwise []setting) []setting {
	set := Set{Label: &l.Label, Unit: &l.Unit, Note: &l.Note, Source: &l.Source, Floor: l.Floor, Ceiling: l.Ceiling}
	switch l.Kind {
	case Is:
		set.Is = &l.Is
	case Guess:
		set.Guess = &GuessValue{l.Low, l.Likely, l.High}
	case Records:
		set.Records = l.Records
	case Formula:
		set.Formula = &l.Formula
	}
	all, _ := set.settings()
	var out []setting
	for _, s := range all {
		replaced := false
		for _, other := range otherwise {
			replaced = replaced || other.key == s.key || other.isKind() && s.isKind()
		}
		if !replaced {
			out = append(out, s)
		}
	}
	return out
}
