package back

import (
	"fmt"
	"math"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/calc"
	"thawbook/engine/workbook/guard"
)

// Compare says what came back for a plan, counted from 1, against what was sent
// and against here, the sheet as it is now. sent is the sheet that was sent, for
// the words of its labels and notes; nil when it cannot be had, and here then
// stands for it.
func (w *Workbook) Compare(plan int, sent *sheet.Sheet, here *formula.Plan) Report {
	c := &comparer{Workbook: w, plan: plan, sent: sent, here: here, keys: map[string]bool{}, left: maxSteps}
	c.out = Report{Changes: []Change{}, Agreed: []string{}, Lost: []Lost{}, Told: append(diag.List{}, w.Told...)}
	if c.sent == nil {
		c.sent = here.Sheet
	}
	c.entries = w.entriesOf(plan, here)
	c.gone = c.workingsGone()
	for _, group := range c.entries {
		c.line(group)
	}
	c.words()
	c.added()
	c.remarks()
	return c.out
}

type comparer struct {
	*Workbook
	plan    int
	sent    *sheet.Sheet
	here    *formula.Plan
	entries [][]workbook.Entry // by line
	keys    map[string]bool
	// gone says that the program that saved the file keeps no workings.
	gone bool
	out  Report
	// translations counts the formulas that were read, which each cost a check of
	// the whole sheet.
	translations int
	looked       lookedUp
	// left bounds the steps and cells that all translations together may cost.
	left int
}

// entriesOf are a plan's entries, line by line. When the hidden list is lost the
// sheet here stands for what was sent.
func (w *Workbook) entriesOf(plan int, here *formula.Plan) [][]workbook.Entry {
	all := w.Index.Entries
	if w.Lost {
		all = entriesFrom(here, plan)
	}
	var out [][]workbook.Entry
	at := map[string]int{}
	for _, e := range all {
		if e.Plan != plan {
			continue
		}
		i, known := at[e.ID]
		if !known {
			i = len(out)
			at[e.ID] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], e)
	}
	return out
}

// near is how far a number may come back from what was sent and still be the
// same: some programs write 15 digits.
const near = 1e-12

func sameNumber(a, b float64) bool { return a == b || math.Abs(a-b) <= near*math.Abs(a) }

// workingsGone says whether all formula cells came back without one.
func (c *comparer) workingsGone() bool {
	had, kept := 0, 0
	for _, group := range c.entries {
		for _, e := range group {
			if e.Written == "" && !(c.Lost && e.Kind == sheet.Formula) {
				continue
			}
			if s, found := c.cells[cellKey{lineKey{c.plan, e.ID}, e.Part}]; found {
				had++
				if s.cell().Formula != "" {
					kept++
				}
			}
		}
	}
	if had > 0 && kept == 0 {
		c.tell(diag.CellNotRead, "", "no working came back: the program that saved it keeps numbers only; those it worked out were left alone")
		return true
	}
	return false
}

func (c *comparer) tell(code diag.Code, about, format string, args ...any) {
	c.out.Told = append(c.out.Told, diag.Diagnostic{Code: code, Severity: diag.Warning, About: about, Message: fmt.Sprintf(format, args...)})
}

// at is a cell's place for a diagnostic: the sheet and the row.
func (s spot) place() diag.Place { return diag.Place{File: s.sheet.Name, Line: s.row} }

// notRead tells a cell of ours that cannot be understood.
func (c *comparer) notRead(at spot, about, hint, format string, args ...any) {
	c.out.Told = append(c.out.Told, diag.Diagnostic{Code: diag.CellNotRead, Severity: diag.Warning, About: about, Place: at.place(),
		Message: fmt.Sprintf(format, args...), Hint: hint})
}

func (c *comparer) lose(about, label, what string) {
	c.out.Lost = append(c.out.Lost, Lost{about, label, what})
}

// label is what people call a line, or its id when nobody knows it any more.
func (c *comparer) label(id string) string {
	for _, s := range []*sheet.Sheet{c.here.Sheet, c.sent} {
		if l := s.Find(id); l != nil {
			return l.Label
		}
	}
	return id
}

// state is what a cell says of a number.
type state uint8

const (
	unchanged state = iota
	number
	working
	blank
	unread // and told
	nowhere
)

// reading is what came back in one cell.
type reading struct {
	state state
	x     float64
	term  *calc.Term
	// hasValue says that x is what the program that saved it made of a working.
	hasValue bool
	at       spot
	text     string
}

// read reads the cell of an entry.
func (c *comparer) read(e workbook.Entry) reading {
	at, found := c.cells[cellKey{lineKey{c.plan, e.ID}, e.Part}]
	if !found {
		return reading{state: nowhere}
	}
	return c.readCell(e, at)
}

func (c *comparer) readCell(e workbook.Entry, at spot) reading {
	cell := at.cell()
	out := reading{at: at, text: textOf(cell)}
	if cell.Formula != "" {
		return c.readWorking(e, cell, out)
	}
	switch cell.Kind {
	case guard.Blank:
		out.state = blank
	case guard.Number:
		out.state, out.x = c.readNumber(e, cell, at)
	case guard.Truth:
		out.state, out.x = number, cell.Number
	case guard.Text:
		out.state, out.x = c.readText(e, cell, at)
	default:
		c.notRead(at, e.ID, "", "%s holds the error %s", c.label(e.ID), cell.Text)
		out.state = unread
	}
	if was, ok := e.Number(); ok && out.state == number && e.Written == "" && sameNumber(was, out.x) {
		out.state, out.x = unchanged, was
	}
	return out
}

func (c *comparer) readNumber(e workbook.Entry, cell guard.Cell, at spot) (state, float64) {
	switch cell.Shown {
	case guard.Date:
		c.notRead(at, e.ID, "type the number again, and choose a plain format for the cell", "%s holds a date, not a number", c.label(e.ID))
		return unread, 0
	case guard.Percent:
		if e.Unit == "%" {
			return number, cell.Number * 100
		}
	}
	return number, cell.Number
}

// readText reads a number that came as text: typed so, or saved so.
func (c *comparer) readText(e workbook.Entry, cell guard.Cell, at spot) (state, float64) {
	u, _ := units.Parse(e.Unit, c.here.Sheet.Money)
	if u.IsYesNo() {
		switch lower(cell.Text) {
		case "yes", "true":
			return number, 1
		case "no", "false":
			return number, 0
		}
	}
	x, rest, ok := calc.ReadNumber(cell.Text)
	if ok && rest != "" && rest != e.Unit && rest != units.UnitLabel(u) {
		ok = false
		if v, err := units.Parse(rest, c.here.Sheet.Money); err == nil && units.Same(u, v) {
			x, ok = units.Convert(x, v, u)
		} else if units.UnitLabel(u) != "" && rest == units.UnitLabel(u)[:1] && rest == "$" {
			ok = true
		}
	}
	if !ok {
		c.notRead(at, e.ID, "write a number alone", "%s holds %q, not a number", c.label(e.ID), short(cell.Text))
		return unread, 0
	}
	return number, x
}

// readWorking tells whether a cell's formula is the one that was sent.
func (c *comparer) readWorking(e workbook.Entry, cell guard.Cell, out reading) reading {
	out.x, out.hasValue = cell.Number, cell.Kind == guard.Number || cell.Kind == guard.Truth
	if cell.Kind == guard.Text { // some programs save every number that was worked out as text
		x, rest, ok := calc.ReadNumber(cell.Text)
		out.x, out.hasValue = x, ok && rest == ""
	}
	term, err := calc.Parse(cell.Formula)
	if err != nil {
		out.state, out.text = working, err.Error()
		return out
	}
	if e.Written != "" {
		if was, err := calc.Parse(e.Written); err == nil && calc.Same(was, term) {
			out.state = unchanged
			return out
		}
	} else if c.Lost && e.Kind == sheet.Formula {
		out.state = unchanged // nothing tells what stood there
		return out
	}
	out.state, out.term = working, term
	return out
}
