package units

// String is the unit's text: as its author wrote it when it was read, canonical
// when it was worked out, as in "gal/tap" or "BTU/h/ft²". Parse reads it back to
// the same dimension and scale, unless the working has made it longer than Parse
// allows.
func (u Unit) String() string { return u.parts().text }

// canonical writes terms: those above the stroke with money first, so that a
// price reads $/gal, then each below it.
func canonical(terms []term) string {
	var paid, over, under []string
	for _, t := range terms {
		switch {
		case t.exp < 0:
			t.exp = -t.exp
			under = append(under, t.text())
		case t.def != nil && t.def.base == money:
			paid = append(paid, t.text())
		default:
			over = append(over, t.text())
		}
	}
	return quotient(append(paid, over...), under)
}

// lead is the term that canonical writes first, or the zero term.
func lead(terms []term) term {
	var first term
	for _, t := range terms {
		switch {
		case t.exp < 0:
		case t.def != nil && t.def.base == money:
			return t
		case first.exp == 0:
			first = t
		}
	}
	return first
}

// text is one term without a stroke.
func (t term) text() string { return t.shown() + superscript(t.exp) }

// shown is a term's name.
func (t term) shown() string {
	switch {
	case t.sign != "":
		return t.sign
	case t.def != nil:
		return t.def.name
	}
	return t.count
}

// isMoney says whether a term is the sheet's whole money, which stands before
// its number.
func (t term) isMoney() bool { return t.def != nil && t.def.name == "$" && t.exp == 1 }
