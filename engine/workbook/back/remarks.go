package back

import (
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/trade"
	"thawbook/engine/workbook"
)

// remarks offers the partner's words beside lines and in comments, to be kept in
// the line's note.
func (c *comparer) remarks() {
	known := c.ownWords()
	for _, l := range c.sent.All() {
		if l.Table == "" {
			c.remarkOf(c.rows[rowKey{c.plan, "", l.ID}], l.ID, l.Label)
		}
	}
	for _, chapter := range c.sent.Chapters {
		for _, t := range chapter.Tables {
			for _, r := range t.Rows {
				c.remarkOf(c.rows[rowKey{c.plan, t.ID, r.ID}], t.ID+"."+r.ID, r.Label)
			}
		}
	}
	if c.plan == 1 || !c.Lost {
		c.comments(known)
	}
}

func (c *comparer) remarkOf(r *row, about, label string) {
	if r == nil {
		return
	}
	if text := tidy(r.text(workbook.Remark)); text != "" {
		c.remark(about, label, text, Where{r.sheet.Name, r.at})
	}
}

// remark offers words for a line's note; about "" is the sheet as a whole.
func (c *comparer) remark(about, label, text string, at Where) {
	here, _ := c.textHere(about, workbook.Note)
	if strings.Contains(tidy(here), text) || about == "" && strings.Contains(tidy(c.here.Sheet.About), text) {
		return // taken before
	}
	ch := Change{Key: c.key(about, "remark"), About: about, Label: label, What: Remarks, Where: at, Came: text, Effects: []Effect{}}
	ch.Key = strings.TrimSpace(ch.Key)
	if about == "" {
		whole := joinWords(c.here.Sheet.About, text)
		ch.Edits = []sheet.Edit{{About: "", Set: sheet.Set{About: &whole}}}
	} else {
		note := joinWords(here, text)
		ch.Edits = []sheet.Edit{{About: about, Set: sheet.Set{Note: &note}}}
	}
	c.out.Changes = append(c.out.Changes, ch)
}

// ownWords are the lines of text that our own comments are made of.
func (c *comparer) ownWords() map[string]bool {
	out := map[string]bool{}
	add := func(texts ...string) {
		for _, text := range texts {
			for line := range strings.SplitSeq(text, "\n") {
				out[tidy(line)] = true
			}
			if known, ok := trade.CautionFor(text); ok {
				out[tidy(known.Text+" ("+known.Source+")")] = true
			}
		}
	}
	for _, l := range c.sent.All() {
		add(l.Note, l.Caution, l.Formula)
	}
	for _, chapter := range c.sent.Chapters {
		for _, t := range chapter.Tables {
			for _, column := range t.Columns {
				add(column.Note, column.Formula)
			}
			for _, r := range t.Rows {
				add(r.Note, r.Caution)
			}
		}
	}
	return out
}

// ours says whether a line of a comment is one that we wrote.
func ours(known map[string]bool, line string) bool {
	line = tidy(line)
	for _, head := range []string{"Source: ", "Worked out: ", "Stands still here: ", "The middle of ", "Not reckoned: "} {
		if strings.HasPrefix(line, head) {
			return true
		}
	}
	// Long comments are cut short on their way out.
	return known[line] || strings.HasSuffix(line, "…")
}

// comments looks for words of the partner's in the comments at our cells.
func (c *comparer) comments(known map[string]bool) {
	for _, s := range c.book.Sheets {
		for _, r := range s.Remarks {
			var words []string
			for line := range strings.SplitSeq(r.Text, "\n") {
				if line = tidy(line); line != "" && !ours(known, line) && line != tidy(r.Author)+":" {
					words = append(words, line)
				}
			}
			about, mine := c.aboutOf(spot{s, r.Row, r.Column})
			if text := joinWords(words...); text != "" && mine {
				c.remark(about, c.labelOf(about), text, Where{s.Name, r.Row})
			}
		}
	}
}

// aboutOf is the line whose row a cell stands in; mine is false for a cell of
// another plan.
func (c *comparer) aboutOf(at spot) (about string, mine bool) {
	if k, ok := c.meaning()[at]; ok {
		return c.rowOf(k.id), true
	}
	if r, ok := c.rowsAt()[rowAt{at.sheet, at.row}]; ok {
		return r.line(), r.plan == c.plan
	}
	return "", c.plan == 1
}

// rowOf is the table's row of a cell, or the line itself.
func (c *comparer) rowOf(id string) string {
	if i := strings.LastIndexByte(id, '.'); i >= 0 {
		return id[:i]
	}
	return id
}

func (c *comparer) labelOf(about string) string {
	if about == "" {
		return "The sheet"
	}
	if label, ok := c.textHere(about, workbook.Label); ok {
		return label
	}
	return about
}
