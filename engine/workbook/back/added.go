package back

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/guard"
)

// ownChapter is where lines go that a partner wrote below all others.
const ownChapter = "Added by the partner"

// added offers the partner's own rows: as lines when they say what they come to,
// as rows of their table, and otherwise as words to be kept.
func (c *comparer) added() {
	taken := c.taken()
	for _, r := range c.extra {
		if r.plan != c.plan || r.id != "" && !r.copy && c.here.Sheet.Find(r.line()) != nil {
			continue
		}
		switch r.area {
		case workbook.TableArea:
			c.addedRow(r, taken)
		case workbook.PlanArea, workbook.OwnArea:
			c.addedLine(r, taken)
		}
	}
}

// taken are the ids that a new line must not have.
func (c *comparer) taken() map[string]bool {
	out := map[string]bool{}
	for _, s := range []*sheet.Sheet{c.here.Sheet, c.sent} {
		for _, l := range s.All() {
			out[l.ID] = true
		}
		for _, chapter := range s.Chapters {
			for _, t := range chapter.Tables {
				out[t.ID] = true
				for _, r := range t.Rows {
					out[t.ID+"."+r.ID] = true
				}
			}
		}
	}
	for _, name := range sheet.FunctionNames() {
		out[name] = true
	}
	return out
}

// FreshID makes an id of a label that is not among the taken, and takes it.
// prefix stands before it in taken but not in the id.
func FreshID(label, prefix string, taken map[string]bool) string {
	base := idOf(label)
	id := base
	for k := 2; taken[prefix+id] || taken[id] && prefix == ""; k++ {
		id = fmt.Sprintf("%s_%d", base, k)
	}
	taken[prefix+id] = true
	return id
}

// idOf is a label in the letters that ids have.
func idOf(label string) string {
	var out strings.Builder
	for _, c := range strings.ToLower(label) {
		switch {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9' && out.Len() > 0:
			out.WriteRune(c)
		case out.Len() > 0 && !strings.HasSuffix(out.String(), "_"):
			out.WriteByte('_')
		}
		if out.Len() >= 40 {
			break
		}
	}
	id := strings.Trim(out.String(), "_")
	if id == "" {
		return "added_line"
	}
	if slices.Contains([]string{"let", "and", "or", "not", "true", "false", "nil", "in", "if", "else", "matches", "contains"}, id) {
		id += "_line"
	}
	return id
}

func (c *comparer) addedLine(r *row, taken map[string]bool) {
	label := tidy(r.text(workbook.Label))
	unit := c.unitText(r)
	set, came, ok := c.ownNumbers(r, workbook.Entry{ID: label, Unit: unit}, "")
	if label == "" || !ok {
		c.keepWords(r)
		return
	}
	set.Label, set.Unit = &label, &unit
	if note := joinWords(r.text(workbook.Note), r.text(workbook.Remark)); note != "" {
		set.Note = &note
	}
	id := FreshID(label, "", taken)
	ch := Change{Key: c.key(id, ""), About: id, Label: label, What: NewLine, Where: Where{r.sheet.Name, r.at}, Came: came,
		Effects: []Effect{}, Edits: []sheet.Edit{{About: id, Set: set, Add: c.placeOf(r)}}}
	if r.copy {
		ch.Note = "a copy of the line " + c.label(r.line())
	}
	c.out.Changes = append(c.out.Changes, ch)
}

// placeOf is where a new line goes: behind the line above it.
func (c *comparer) placeOf(r *row) *sheet.Add {
	if r.area == workbook.PlanArea {
		for _, chapter := range c.here.Sheet.Chapters {
			for _, l := range chapter.Lines {
				if l.ID == r.after && chapter.Title != "" {
					return &sheet.Add{Chapter: chapter.Title, After: l.ID}
				}
			}
		}
	}
	return &sheet.Add{Chapter: ownChapter}
}

// unitText is the unit of a row, a bare number's when none is given or known.
func (c *comparer) unitText(r *row) string {
	text := r.text(workbook.UnitOf)
	if _, err := units.Parse(text, c.here.Sheet.Money); text == "" || err != nil {
		return "1"
	}
	return text
}

// ownNumbers reads what a row the partner wrote comes to, in a table's column or
// as a line of its own.
func (c *comparer) ownNumbers(r *row, e workbook.Entry, column string) (set sheet.Set, came string, ok bool) {
	read := func(part workbook.Part) reading {
		k := columnKey{part, column}
		at, there := r.columns[k]
		if !there || r.cell(k).Kind == guard.Blank && r.cell(k).Formula == "" {
			return reading{state: nowhere}
		}
		out := c.readCell(e, spot{r.sheet, r.at, at})
		if out.state == working && out.hasValue {
			out.state = number
		}
		return out
	}
	u, _ := units.Parse(e.Unit, c.here.Sheet.Money)
	v, low, high := read(workbook.Value), read(workbook.Low), read(workbook.High)
	said := Said{Kind: sheet.Is, Is: v.x}
	switch {
	case v.state != number:
		return set, "", false
	case low.state == number && high.state == number && low.x < high.x:
		said = Said{Kind: sheet.Guess, Low: low.x, Likely: v.x, High: high.x}
	}
	return said.set(), said.show(u, nil), true
}

func (c *comparer) addedRow(r *row, taken map[string]bool) {
	t := c.here.Sheet.Table(r.of)
	label := tidy(r.text(workbook.Label))
	if t == nil || label == "" {
		c.keepWords(r)
		return
	}
	row := FreshID(label, r.of+".", taken)
	id := r.of + "." + row
	ch := Change{Key: c.key(id, ""), About: id, Label: label, What: NewRow, Where: Where{r.sheet.Name, r.at}, Effects: []Effect{},
		Edits: []sheet.Edit{{About: id, Set: sheet.Set{Label: &label}, Add: &sheet.Add{}}}}
	if note := joinWords(r.text(workbook.Note), r.text(workbook.Remark)); note != "" {
		ch.Edits[0].Set.Note = &note
	}
	if r.copy {
		ch.Note = "a copy of the row " + r.id
	}
	var shown []string
	for _, column := range t.Columns {
		if column.Formula != "" {
			continue
		}
		set, came, ok := c.ownNumbers(r, workbook.Entry{ID: label, Unit: column.Unit}, column.ID)
		if !ok {
			came = "nothing yet"
		} else {
			ch.Edits = append(ch.Edits, sheet.Edit{About: id + "." + column.ID, Set: set})
		}
		shown = append(shown, lower(column.Label)+" "+came)
	}
	ch.Came = strings.Join(shown, "; ")
	c.out.Changes = append(c.out.Changes, ch)
}

func joinWords(texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(t string) bool { return t == "" }), " ")
}

// keepWords offers a row that says nothing in numbers as words for the sheet's
// own about.
func (c *comparer) keepWords(r *row) {
	var texts []string
	for _, part := range []workbook.Part{workbook.Label, workbook.Value, workbook.UnitOf, workbook.Note, workbook.Remark} {
		texts = append(texts, r.text(part))
	}
	text := tidy(joinWords(texts...))
	if text == "" || r.copy {
		return
	}
	c.remark("", "The sheet", text, Where{r.sheet.Name, r.at})
}
