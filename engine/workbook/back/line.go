package back

import (
	"slices"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/guard"
)

func lower(text string) string { return strings.ToLower(strings.TrimSpace(text)) }

// short cuts what is quoted from a cell.
func short(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}

// line compares one line: what was sent, what came, and what is here.
func (c *comparer) line(entries []workbook.Entry) {
	id := entries[0].ID
	sent := sentBy(entries)
	came, ch, ok := c.came(entries, sent)
	if !ok || ch.Problem == "" && came.same(sent) {
		return
	}
	c.merge(id, sent, came, ch)
}

// merge sets what came against what was sent and what is here.
func (c *comparer) merge(id string, sent, came Said, ch Change) {
	i := c.here.Find(id)
	ch.About, ch.Label, ch.Effects = id, c.label(id), []Effect{}
	ch.Edits = []sheet.Edit{}
	if ch.What == "" {
		ch.What = Numbers
	}
	var u units.Unit
	var names []sheet.Name
	line := c.sent.Find(id)
	if i >= 0 {
		line = c.here.Slots[i].Line
	}
	if line != nil {
		u, _ = units.Parse(line.Unit, c.here.Sheet.Money)
		names = line.Among
	}
	ch.Key = c.key(id, "")
	ch.Sent = sent.show(u, names)
	if ch.Problem == "" {
		ch.Came = came.show(u, names)
	}
	if from, ok := sent.middle(); ok {
		if to, ok := came.middle(); ok && from != to {
			ch.By = moved(from, to, u)
		}
	}
	switch {
	case i < 0:
		ch.Problem = "the line is no longer in the sheet"
	default:
		now := saidBy(line)
		if !now.same(sent) {
			ch.Here = now.show(u, names)
			if ch.Problem == "" && now.same(came) {
				c.out.Agreed = append(c.out.Agreed, id)
				return
			}
			ch.Conflict = true
		}
	}
	if ch.Problem == "" {
		ch.Edits = append(ch.Edits, sheet.Edit{About: id, Set: came.set()})
	}
	c.out.Changes = append(c.out.Changes, ch)
}

// key is a change's key, each once.
func (c *comparer) key(id, word string) string {
	key := id
	if word != "" {
		key += " " + word
	}
	for base, k := key, 2; c.keys[key]; k++ {
		key = base + " " + sheet.FormatNumber(float64(k))
	}
	c.keys[key] = true
	return key
}

// came is what a line says in the workbook. ok is false when it says nothing
// that could be taken.
func (c *comparer) came(entries []workbook.Entry, sent Said) (said Said, ch Change, ok bool) {
	e, found := entryOf(entries, workbook.Value)
	if sent.Kind == sheet.Records {
		return c.cameRecords(entries, sent)
	}
	if !found {
		return sent, ch, false
	}
	if sent.Kind == sheet.Choose {
		return c.cameChoice(e)
	}
	r := c.read(e)
	ch.Where = where(r.at)
	switch {
	case r.state == nowhere:
		c.lose(e.ID, c.label(e.ID), "the row is gone")
		return sent, ch, false
	case r.state == working:
		return c.cameWorking(e, r, sent, ch)
	case sent.Kind == sheet.Formula:
		return c.cameInsteadOfWorking(e, r, sent, ch)
	}
	return c.cameNumbers(entries, e, r, sent, ch)
}

func where(at spot) Where {
	if at.sheet == nil {
		return Where{}
	}
	return Where{at.sheet.Name, at.row}
}

func entryOf(entries []workbook.Entry, part workbook.Part) (workbook.Entry, bool) {
	i := slices.IndexFunc(entries, func(e workbook.Entry) bool { return e.Part == part })
	if i < 0 {
		return workbook.Entry{}, false
	}
	return entries[i], true
}

// cameNumbers reads a line that is a number or a guess: a guess becomes a number
// when its low and high are taken out, and a number a guess when both are given.
func (c *comparer) cameNumbers(entries []workbook.Entry, e workbook.Entry, r reading, sent Said, ch Change) (Said, Change, bool) {
	low, high := c.end(entries, e, workbook.Low), c.end(entries, e, workbook.High)
	for _, x := range []reading{low, high} {
		if x.state == working {
			c.notRead(x.at, e.ID, "", "the low or high of %s is worked out, and was taken as the number it came to", c.label(e.ID))
		}
	}
	gone := func(x reading) bool { return x.state == blank || x.state == nowhere }
	switch {
	case r.state == unread || low.state == unread || high.state == unread:
		return sent, ch, false
	case r.state == blank:
		c.lose(e.ID, c.label(e.ID), "the number is gone")
		return sent, ch, false
	case sent.Kind == sheet.Guess && low.state == nowhere && high.state == nowhere:
		return Said{Kind: sheet.Guess, Low: sent.Low, Likely: r.x, High: sent.High}, ch, true
	case gone(low) && gone(high):
		return Said{Kind: sheet.Is, Is: r.x}, ch, true
	case gone(low) || gone(high):
		c.notRead(r.at, e.ID, "give both, or neither", "%s has a low or a high, but not both", c.label(e.ID))
		return sent, ch, false
	}
	return Said{Kind: sheet.Guess, Low: low.x, Likely: r.x, High: high.x}, ch, true
}

// end reads the low or the high of a line, which a line that was sent as a
// number has no entry for.
func (c *comparer) end(entries []workbook.Entry, e workbook.Entry, part workbook.Part) reading {
	if own, ok := entryOf(entries, part); ok {
		return c.read(own)
	}
	at, found := c.cells[cellKey{lineKey{c.plan, e.ID}, part}]
	if !found {
		return reading{state: nowhere}
	}
	own := e
	own.Part, own.Sent, own.Written = part, "", ""
	return c.readCell(own, at)
}

// cameInsteadOfWorking reads what stands where a working was sent.
func (c *comparer) cameInsteadOfWorking(e workbook.Entry, r reading, sent Said, ch Change) (Said, Change, bool) {
	was, had := e.Number()
	switch {
	case r.state == unchanged || r.state == unread:
		return sent, ch, false
	case r.state == blank && e.Sent == "":
		return sent, ch, false
	case r.state == blank:
		c.lose(e.ID, c.label(e.ID), "the working is gone")
		return sent, ch, false
	case c.gone && !e.Held:
		return sent, ch, false
	case had && sameNumber(was, r.x) && e.Held:
		return sent, ch, false
	}
	ch.What = Formulas
	ch.Note = "a number stands where the line was worked out"
	return Said{Kind: sheet.Is, Is: r.x}, ch, true
}

// cameChoice reads the name that was chosen.
func (c *comparer) cameChoice(e workbook.Entry) (said Said, ch Change, ok bool) {
	at, found := c.cells[cellKey{lineKey{c.plan, e.ID}, workbook.Value}]
	if !found {
		c.lose(e.ID, c.label(e.ID), "the row is gone")
		return said, ch, false
	}
	ch.Where = where(at)
	cell := at.cell()
	text := strings.TrimSpace(textOf(cell))
	var ids []string
	if line := c.here.Sheet.Find(e.ID); line != nil {
		for _, n := range line.Among {
			if n.ID == text || lower(n.Label) == lower(text) || lower(n.ID) == lower(text) {
				return Said{Kind: sheet.Choose, Choose: n.ID}, ch, true
			}
			ids = append(ids, n.ID)
		}
	}
	switch {
	case text == e.Sent:
		return said, ch, false
	case cell.Kind == guard.Blank:
		c.lose(e.ID, c.label(e.ID), "the choice is gone")
	default:
		c.notRead(at, e.ID, diag.Nearest(text, ids), "%s has no choice %q", c.label(e.ID), short(text))
	}
	return said, ch, false
}

// cameRecords reads past values, wherever below their mark they stand.
func (c *comparer) cameRecords(entries []workbook.Entry, sent Said) (said Said, ch Change, ok bool) {
	past, _ := entryOf(entries, workbook.Past)
	value, shown := entryOf(entries, workbook.Value)
	if shown {
		if r := c.read(value); r.state == number && !c.gone && r.at.cell().Formula == "" {
			ch.Where, ch.What, ch.Note = where(r.at), Formulas, "a number stands where the middle of the records was worked out"
			return Said{Kind: sheet.Is, Is: r.x}, ch, true
		} else if r.state == working {
			return c.cameWorking(value, r, sent, Change{Where: where(r.at)})
		}
	}
	said.Kind = sheet.Records
	spots := c.past[lineKey{c.plan, past.ID}]
	left := slices.Clone(sent.Records)
	for _, at := range spots {
		own := past
		own.Sent, own.Written = "", ""
		r := c.readCell(own, at)
		switch r.state {
		case unread:
			return sent, ch, false
		case number, working:
			x := r.x
			if i := slices.IndexFunc(left, func(was float64) bool { return sameNumber(was, x) }); i >= 0 {
				x = left[i]
				left = slices.Delete(left, i, i+1)
			}
			said.Records = append(said.Records, x)
			ch.Where = where(at)
		}
	}
	if len(said.Records) < 2 {
		c.lose(past.ID, c.label(past.ID), "the records are gone")
		return sent, ch, false
	}
	return said, ch, true
}
