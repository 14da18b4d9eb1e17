package back

import (
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
)

// tidy brings two ways of keeping one text together: programs change line ends
// and drop spaces.
func tidy(text string) string { return strings.Join(strings.Fields(text), " ") }

// words compares labels, notes and units.
func (c *comparer) words() {
	for _, chapter := range c.sent.Chapters {
		for _, l := range chapter.Lines {
			r := c.rows[rowKey{c.plan, "", l.ID}]
			if r == nil {
				continue
			}
			c.word(r, l.ID, l.Label, "label", workbook.Label, l.Label, func(s *string) sheet.Set { return sheet.Set{Label: s} })
			c.word(r, l.ID, l.Label, "note", workbook.Note, l.Note, func(s *string) sheet.Set { return sheet.Set{Note: s} })
			if l.Kind != sheet.Choose {
				c.unit(r, l)
			}
		}
		for _, t := range chapter.Tables {
			for i := range t.Rows {
				row := &t.Rows[i]
				r := c.rows[rowKey{c.plan, t.ID, row.ID}]
				if r == nil {
					continue
				}
				id := t.ID + "." + row.ID
				c.word(r, id, row.Label, "label", workbook.Label, row.Label, func(s *string) sheet.Set { return sheet.Set{Label: s} })
				c.word(r, id, row.Label, "note", workbook.Note, row.Note, func(s *string) sheet.Set { return sheet.Set{Note: s} })
			}
		}
	}
}

// word compares one text. One that was taken out is not a change: a cleared
// label is a slip, and a note that is not wanted there does no harm here.
func (c *comparer) word(r *row, about, label, name string, part workbook.Part, sent string, set func(*string) sheet.Set) {
	if _, there := r.columns[columnKey{part: part}]; !there {
		return
	}
	came := r.text(part)
	if came == "" || tidy(came) == tidy(sent) {
		return
	}
	ch := Change{Key: c.key(about, name), About: about, Label: label, What: Words, Where: Where{r.sheet.Name, r.at},
		Sent: sent, Came: came, Effects: []Effect{}, Edits: []sheet.Edit{{About: about, Set: set(&came)}}}
	if here, ok := c.textHere(about, part); !ok {
		ch.Problem, ch.Edits = "the line is no longer in the sheet", []sheet.Edit{}
	} else if tidy(here) == tidy(came) {
		c.out.Agreed = append(c.out.Agreed, about)
		return
	} else if tidy(here) != tidy(sent) {
		ch.Here, ch.Conflict = here, true
	}
	c.out.Changes = append(c.out.Changes, ch)
}

// textHere is a label or a note as the sheet here has it.
func (c *comparer) textHere(about string, part workbook.Part) (string, bool) {
	pick := func(label, note string) (string, bool) {
		if part == workbook.Label {
			return label, true
		}
		return note, true
	}
	if l := c.here.Sheet.Find(about); l != nil {
		return pick(l.Label, l.Note)
	}
	table, id, _ := strings.Cut(about, ".")
	if t := c.here.Sheet.Table(table); t != nil {
		for _, r := range t.Rows {
			if r.ID == id {
				return pick(r.Label, r.Note)
			}
		}
	}
	return "", false
}

// unit compares a line's unit, which stands in the words people see.
func (c *comparer) unit(r *row, l *sheet.Line) {
	was, err := units.Parse(l.Unit, c.sent.Money)
	text := r.text(workbook.UnitOf)
	if err != nil || text == "" || tidy(text) == tidy(units.UnitLabel(was)) || text == l.Unit {
		return
	}
	u, err := units.Parse(text, c.sent.Money)
	at := spot{r.sheet, r.at, r.columns[columnKey{part: workbook.UnitOf}]}
	if err != nil {
		c.notRead(at, l.ID, "", "the unit %q of %s does not read", short(text), l.Label)
		return
	}
	ch := Change{Key: c.key(l.ID, "unit"), About: l.ID, Label: l.Label, What: Words, Where: where(at), Sent: l.Unit, Came: text,
		Note: "only the unit changes, the number stays", Effects: []Effect{}, Edits: []sheet.Edit{{About: l.ID, Set: sheet.Set{Unit: &text}}}}
	if !units.Same(was, u) {
		ch.Note = "another kind of unit: formulas that read the line may no longer hold"
	}
	now := c.here.Sheet.Find(l.ID)
	switch {
	case now == nil:
		ch.Problem, ch.Edits = "the line is no longer in the sheet", []sheet.Edit{}
	case now.Unit == text:
		c.out.Agreed = append(c.out.Agreed, l.ID)
		return
	case now.Unit != l.Unit:
		ch.Here, ch.Conflict = now.Unit, true
	}
	c.out.Changes = append(c.out.Changes, ch)
}
