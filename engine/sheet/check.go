package sheet

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"thawbook/engine/diag"
)

// check tells what is wrong with the sense of the whole sheet.
func (b *builder) check(s *Sheet) {
	for _, c := range s.Chapters {
		for _, t := range c.Tables {
			for i := range t.Columns {
				b.checkColumn(s, t, &t.Columns[i])
			}
		}
	}
	for _, l := range s.All() {
		if l.Table == "" && l.Kind != Choose {
			b.checkUnit(s, l.ID, l.Unit, l.Places, cmp.Or(kindPlace(l), l.Place))
		}
		switch l.Kind {
		case Choose:
			b.checkChoice(s, l)
		case Guess:
			b.checkGuess(l)
		case Is:
			b.checkBounds(l, "is", l.Is, l.At("is"))
		case Records:
			for _, x := range l.Records {
				if !b.checkBounds(l, "a record", x, l.At("records")) {
					break
				}
			}
		}
		if l.Floor != nil && l.Ceiling != nil && *l.Floor >= *l.Ceiling {
			b.tell(diag.OutOfBounds, l.ID, l.At("floor"), "swap them", "the floor %s is not below the ceiling %s", FormatNumber(*l.Floor), FormatNumber(*l.Ceiling))
		}
		b.checkLayIn(s, l)
	}
	b.checkMoves(s)
}

func kindPlace(l *Line) diag.Place { return l.Places[string(l.Kind)] }

func (b *builder) checkColumn(s *Sheet, t *Table, c *Column) {
	b.checkUnit(s, t.ID+"."+c.ID, c.Unit, c.Places, c.Place)
}

// checkUnit tells a unit that is missing or cannot be read.
func (b *builder) checkUnit(s *Sheet, id, unit string, places map[string]diag.Place, otherwise diag.Place) {
	at, written := places["unit"]
	if !written {
		at = otherwise
	}
	if unit == "" {
		b.tell(diag.MissingUnit, id, at, "write unit: gal, or unit: 1 for a bare number", "%s has no unit", quote(id))
		return
	}
	problem, hint, doubt := readUnit(unit, s.Money)
	switch {
	case problem != "":
		b.tell(diag.UnknownUnit, id, at, hint, "%s", problem)
	case doubt != "" && len(b.list) < maxTold:
		b.list = append(b.list, diag.Diagnostic{Code: diag.UnknownUnit, Severity: diag.Warning, About: id, Place: at, Message: doubt, Hint: hint})
	}
}

// checkChoice fills in the names of a choice among a table's rows, and tells a
// name that is not there.
func (b *builder) checkChoice(s *Sheet, l *Line) {
	if l.Unit != "" {
		b.tell(diag.UnknownKey, l.ID, l.At("unit"), "delete it", "a choice has no unit")
	}
	switch t := s.Table(l.AmongTable); {
	case l.AmongTable != "" && t == nil:
		var tables []string
		for _, c := range s.Chapters {
			for _, t := range c.Tables {
				tables = append(tables, t.ID)
			}
		}
		if !b.lax {
			b.tell(diag.UnknownTable, l.ID, l.At("among"), nearest(l.AmongTable, tables), "there is no table %s to choose among", quote(l.AmongTable))
		}
		return
	case l.AmongTable != "":
		l.Among = nil
		for _, r := range t.Rows {
			l.Among = append(l.Among, Name{r.ID, r.Label})
		}
	case l.Places["among"] == diag.Place{}:
		b.tell(diag.MissingKey, l.ID, l.At("choose"), "among: [wood, propane], or the id of a table", "nothing says what %s chooses among", quote(l.ID))
		return
	}
	if ids := nameIDs(l.Among); l.Choose != "" && len(ids) > 0 && !slices.Contains(ids, l.Choose) {
		b.tell(diag.UnknownChoice, l.ID, l.At("choose"), nearest(l.Choose, ids), "%s is not among what %s chooses", quote(l.Choose), quote(l.ID))
	}
}

// checkGuess tells numbers out of order or out of bounds. Whether the shape can
// carry them is the draw room's to say.
func (b *builder) checkGuess(l *Line) {
	_, low := l.Places["guess.low"]
	_, high := l.Places["guess.high"]
	if !low || !high {
		return // told already
	}
	if math.IsNaN(l.Likely) {
		if _, written := l.Places["guess.likely"]; !written && l.Shape != "even" {
			b.tell(diag.MissingKey, l.ID, l.At("guess"), "the number it is as often above as below", "the guess lacks its likely")
		}
		l.Likely = l.Low + (l.High-l.Low)/2
	}
	switch {
	case l.Likely < l.Low:
		b.outOfOrder(l, "likely", l.Likely, "low", l.Low)
	case l.High < l.Likely:
		b.outOfOrder(l, "high", l.High, "likely", l.Likely)
	case l.High == l.Low:
		b.tell(diag.GuessOrder, l.ID, l.At("guess.high"), "if it is certain, write is: "+FormatNumber(l.Low), "low and high are both %s", FormatNumber(l.Low))
	}
	if b.checkBounds(l, "low", l.Low, l.At("guess.low")) {
		b.checkBounds(l, "high", l.High, l.At("guess.high"))
	}
}

func (b *builder) outOfOrder(l *Line, upper string, x float64, lower string, y float64) {
	b.tell(diag.GuessOrder, l.ID, l.At("guess."+upper), "low, likely and high go up", "%s %s is below %s %s", upper, FormatNumber(x), lower, FormatNumber(y))
}

func (b *builder) checkBounds(l *Line, what string, x float64, at diag.Place) bool {
	switch {
	case l.Floor != nil && x < *l.Floor:
		b.tell(diag.OutOfBounds, l.ID, at, "raise it, or lower the floor", "%s %s is below the floor %s", what, FormatNumber(x), FormatNumber(*l.Floor))
	case l.Ceiling != nil && x > *l.Ceiling:
		b.tell(diag.OutOfBounds, l.ID, at, "lower it, or raise the ceiling", "%s %s is above the ceiling %s", what, FormatNumber(x), FormatNumber(*l.Ceiling))
	default:
		return true
	}
	return false
}

func (b *builder) checkLayIn(s *Sheet, l *Line) {
	if l.LayIn == nil {
		return
	}
	at := l.At("lay_in")
	if l.LayIn.Unit != "" {
		b.checkUnit(s, l.ID, l.LayIn.Unit, map[string]diag.Place{"unit": at}, at)
	}
	if l.LayIn.Price == "" || s.Find(l.LayIn.Price) != nil || b.lax {
		return
	}
	if _, err := strconv.ParseFloat(l.LayIn.Price, 64); err != nil {
		b.tell(diag.UnknownName, l.ID, at, nearest(l.LayIn.Price, s.ids()), "the price names %s, which is no line", quote(l.LayIn.Price))
	}
}

func (s *Sheet) ids() []string {
	var ids []string
	for _, l := range s.All() {
		ids = append(ids, l.ID)
	}
	return ids
}

// checkMoves tells company that is not there, and guesses that keep each other
// company in a circle. Company that has been fixed at one number is left out:
// fixing a guess must not stop those that move with it.
func (b *builder) checkMoves(s *Sheet) {
	var guesses []string
	for _, l := range s.All() {
		if l.Varies() {
			guesses = append(guesses, l.ID)
		}
	}
	for _, l := range s.All() {
		var kept []Moves
		for _, m := range l.MovesWith {
			other := s.Find(m.ID)
			switch {
			case m.ID == l.ID:
				b.tell(diag.MovesCircle, l.ID, l.At("moves_with"), "name another guess", "%s cannot move with itself", quote(l.ID))
			case other != nil && other.Varies():
				kept = append(kept, m)
			case (other == nil || other.Kind == Formula || other.Kind == Choose) && l.Varies() && !b.lax && (other == nil || !other.Changed):
				b.tell(diag.MovesUnknown, l.ID, l.At("moves_with"), nearest(m.ID, guesses), "%s moves with %s, which is no guess", quote(l.ID), quote(m.ID))
			}
		}
		l.MovesWith = kept
	}
	b.checkMovesCircle(s)
}
