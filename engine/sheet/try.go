package sheet

import (
	"fmt"
	"maps"
	"slices"

	"thawbook/engine/diag"
)

// Try is s with the edits made to its lines but not to any file: a what-if. It
// takes Is, Guess, Records, Choose and Formula; other keys are left alone. s is
// not changed and shares every line that no edit is about. When an edit cannot
// be made the diagnostics say why and the sheet is nil. Whether a guess's three
// numbers fit is for whoever binds the sheet to say.
func Try(s *Sheet, edits []Edit) (*Sheet, diag.List) {
	changed := map[string]*Line{}
	var list diag.List
	for _, e := range edits {
		if e.asks() > 0 {
			list = append(list, diag.Diagnostic{Code: diag.EditUnknown, Severity: diag.Error, About: e.About,
				Message: "a what-if adds no line and takes none away", Hint: "edit the sheet"})
			continue
		}
		line := changed[e.About]
		if line == nil {
			if line = s.Find(e.About); line == nil {
				list = append(list, noSuchLine(s, e.About))
				continue
			}
		}
		next := *line
		if d := e.Set.apply(&next); d != nil {
			list = append(list, *d)
			continue
		}
		changed[e.About] = &next
	}
	if len(list) > 0 {
		return nil, list
	}
	return s.with(changed), nil
}

func noSuchLine(s *Sheet, id string) diag.Diagnostic {
	var ids []string
	for _, l := range s.All() {
		ids = append(ids, l.ID)
	}
	return diag.Diagnostic{Code: diag.EditUnknown, Severity: diag.Error, About: id,
		Message: fmt.Sprintf("no line is called %q", id), Hint: diag.Nearest(id, ids)}
}

// apply changes what l comes to, or says why it cannot.
func (set Set) apply(l *Line) *diag.Diagnostic {
	wrong := func(code diag.Code, hint, format string, args ...any) *diag.Diagnostic {
		return &diag.Diagnostic{Code: code, Severity: diag.Error, About: l.ID, Message: fmt.Sprintf(format, args...), Hint: hint}
	}
	switch {
	case l.Kind == Choose && set.Choose == nil && (set.Is != nil || set.Guess != nil || set.Formula != nil || set.Records != nil):
		return wrong(diag.WrongKind, diag.Nearest("", nameIDs(l.Among)), "%q is a choice, not a number", l.ID)
	case set.Choose != nil && l.Kind != Choose:
		return wrong(diag.WrongKind, "give it a number", "%q is not a choice", l.ID)
	case set.Choose != nil:
		if !slices.Contains(nameIDs(l.Among), *set.Choose) {
			return wrong(diag.UnknownChoice, diag.Nearest(*set.Choose, nameIDs(l.Among)), "%q has no choice %q", l.ID, *set.Choose)
		}
		l.Choose = *set.Choose
	case set.Is != nil:
		if l.Floor != nil && *set.Is < *l.Floor || l.Ceiling != nil && *set.Is > *l.Ceiling {
			return wrong(diag.OutOfBounds, "keep it between the line's floor and ceiling", "%s is out of bounds for %q", FormatNumber(*set.Is), l.ID)
		}
		l.Kind, l.Is = Is, *set.Is
	case set.Guess != nil:
		l.Kind, l.Low, l.Likely, l.High = Guess, set.Guess.Low, set.Guess.Likely, set.Guess.High
	case set.Records != nil:
		if len(set.Records) < 2 {
			return wrong(diag.RecordsFew, "give two or more", "%q has too few records to draw from", l.ID)
		}
		l.Kind, l.Records = Records, set.Records
	case set.Formula != nil:
		l.Kind, l.Formula = Formula, *set.Formula
	}
	return nil
}

// with is a copy of s in which changed lines stand for those of the same id.
func (s *Sheet) with(changed map[string]*Line) *Sheet {
	out := *s
	if s.byID != nil {
		out.byID = maps.Clone(s.byID)
		maps.Copy(out.byID, changed)
	}
	swap := func(lines []*Line) []*Line {
		lines = slices.Clone(lines)
		for i, l := range lines {
			if next, ok := changed[l.ID]; ok {
				lines[i] = next
			}
		}
		return lines
	}
	out.Chapters = slices.Clone(s.Chapters)
	for i := range out.Chapters {
		c := &out.Chapters[i]
		c.Lines = swap(c.Lines)
		c.Tables = slices.Clone(c.Tables)
		for j, t := range c.Tables {
			table := *t
			table.Rows = slices.Clone(t.Rows)
			for k := range table.Rows {
				table.Rows[k].Cells = swap(table.Rows[k].Cells)
			}
			c.Tables[j] = &table
		}
	}
	return &out
}
