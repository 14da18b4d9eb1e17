package engine

import (
	"slices"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// mostExplained is how many changes are tried alone; those beyond it count among
// what the changes do together.
const mostExplained = 100

// changeList is all that one sheet says otherwise than the first, in the order
// of the first sheet's file.
type changeList struct {
	changes []lineChange
	// added and dropped are ids of lines that only one of the two has.
	added, dropped []string
}

// lineChange is one line, cell or whole column that comes to something else.
type lineChange struct {
	about, label string
	ids          []string
	was, is      string
}

// structure says whether lines came or went.
func (l changeList) structure() bool { return len(l.added)+len(l.dropped) > 0 }

// runs counts the runs that explaining takes at most.
func (l changeList) runs() int { return min(len(l.changes), mostExplained) + 1 }

// changesBetween compares two sheets line by line.
func changesBetween(first, other *sheet.Sheet) changeList {
	var l changeList
	for _, old := range first.All() {
		next := other.Find(old.ID)
		switch {
		case next == nil:
			l.dropped = append(l.dropped, old.ID)
		case !sameWorth(old, next):
			l.add(first, other, old, next)
		}
	}
	for _, line := range other.All() {
		if first.Find(line.ID) == nil {
			l.added = append(l.added, line.ID)
		}
	}
	return l
}

// add takes up a change; the cells of a column that got another formula are one.
func (l *changeList) add(first, other *sheet.Sheet, old, next *sheet.Line) {
	c := lineChange{about: old.ID, label: old.Label, ids: []string{old.ID},
		was: worthWords(old, first.Money), is: worthWords(next, other.Money)}
	was, is := columnOf(first, old), columnOf(other, next)
	if was != nil && is != nil && old.Formula == was.Formula && next.Formula == is.Formula && was.Formula != is.Formula {
		c.about, c.label = old.Table+"."+old.Column, is.Label
		at := slices.IndexFunc(l.changes, func(have lineChange) bool { return have.about == c.about })
		if at >= 0 {
			l.changes[at].ids = append(l.changes[at].ids, old.ID)
			return
		}
	}
	l.changes = append(l.changes, c)
}

// columnOf is the column whose formula a cell may be worked by; nil when the
// line is no cell or its column has none.
func columnOf(s *sheet.Sheet, l *sheet.Line) *sheet.Column {
	t := s.Table(l.Table)
	if l.Table == "" || t == nil || l.Kind != sheet.Formula {
		return nil
	}
	for i := range t.Columns {
		if t.Columns[i].ID == l.Column && t.Columns[i].Formula != "" {
			return &t.Columns[i]
		}
	}
	return nil
}

// sameWorth says whether two forms of a line come to the same number when all
// else is the same.
func sameWorth(a, b *sheet.Line) bool {
	if a.Kind != b.Kind || a.Unit != b.Unit {
		return false
	}
	switch a.Kind {
	case sheet.Is:
		return a.Is == b.Is
	case sheet.Guess:
		return a.Low == b.Low && a.Likely == b.Likely && a.High == b.High && a.Shape == b.Shape &&
			sameBound(a.Floor, b.Floor) && sameBound(a.Ceiling, b.Ceiling) && slices.Equal(a.MovesWith, b.MovesWith)
	case sheet.Records:
		return slices.Equal(a.Records, b.Records) && slices.Equal(a.MovesWith, b.MovesWith)
	case sheet.Choose:
		return a.Choose == b.Choose
	}
	return a.Formula == b.Formula
}

func sameBound(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

// worthWords says what a line is given as: "15 $/h", "5 to 14 gal/tap, likely 9
// gal/tap", a choice's label, or a formula.
func worthWords(l *sheet.Line, money string) string {
	u, err := units.Parse(l.Unit, money)
	if err != nil {
		u = units.One()
	}
	switch l.Kind {
	case sheet.Is:
		return units.Show(l.Is, u)
	case sheet.Guess:
		return units.Number(l.Low, u) + " to " + units.Show(l.High, u) + ", likely " + units.Show(l.Likely, u)
	case sheet.Records:
		return units.Number(float64(len(l.Records)), units.One()) + " records"
	case sheet.Choose:
		return choiceLabel(l)
	}
	return l.Formula
}

// aloneOn is the first book with one change of the other's made, or nil when
// the first cannot carry it without the rest.
func (c lineChange) aloneOn(first, other *Book) *Book {
	s := mixed(first.sheet, func(l *sheet.Line) *sheet.Line {
		if slices.Contains(c.ids, l.ID) {
			return other.sheet.Find(l.ID)
		}
		return nil
	})
	b := first.variant(s, first.last)
	if len(breaks(b.plan, first.plan)) > 0 {
		return nil
	}
	return b
}

// restOn is the first book with the other's lines added and dropped, and with
// those changes made, by the ids in with, that cannot be made alone. Lines that
// turn out to need the other's form join them in with. It is nil when no such
// book can be reckoned.
func restOn(first, other *Book, with map[string]bool) *Book {
	for range 8 {
		s := mixed(other.sheet, func(l *sheet.Line) *sheet.Line {
			if with[l.ID] {
				return nil
			}
			return first.sheet.Find(l.ID)
		})
		b := other.variant(s, first.last)
		broken := breaks(b.plan, other.plan)
		if len(broken) == 0 {
			return b
		}
		grown := false
		for _, id := range broken {
			grown = grown || !with[id]
			with[id] = true
		}
		if !grown {
			return nil
		}
	}
	return nil
}
