package units

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// slips are writings that a near miss would not find.
var slips = map[string]string{
	"mbtu": "kBTU or MMBTU", "f": "°F", "c": "°C",
}

// innocent are ordinary words a letter away from a unit, which are counts.
var innocent = " round sound mound hound bound wound found bounce pounce mouth there theme meteor metro quartz litter lifter " +
	"later liner miter loiter galleon collar minuet care acer cpu pcs "

// spellings is every name a slip may have meant, in order.
var spellings = spellingsOf(known)

func spellingsOf(names map[string]reading) []string {
	out := make([]string, 0, len(names))
	for name := range names {
		out = append(out, name)
	}
	sort.Strings(out)
	return out
}

// Suggest is the known unit a word that is none may have been meant for, or "".
// It is found when only its capitals are wrong, when a word of five letters or
// more is one slip away from it, and when a shorter word is that has two letters
// exchanged or no vowel. Ordinary short words are left alone: a cap is not a
// misspelt cup.
func Suggest(word string) string {
	if word == "" {
		return ""
	}
	low := strings.ToLower(word)
	if meant, ok := slips[low]; ok {
		return meant
	}
	if _, ok := lookup(word, ""); ok || strings.Contains(innocent, " "+low+" ") {
		return ""
	}
	for _, name := range spellings {
		if strings.ToLower(name) == low {
			return known[name].name(name)
		}
	}
	for _, name := range spellings {
		if isSlip(low, strings.ToLower(name)) {
			return known[name].name(name)
		}
	}
	return ""
}

// name is the canonical text of a reading, or the name it was found by when the
// reading has several terms or an exponent.
func (r reading) name(found string) string {
	if r.scale {
		return r.terms[0].def.onScale
	}
	if len(r.terms) == 1 && r.terms[0].exp == 1 {
		return r.terms[0].def.name
	}
	return found
}

func isSlip(word, name string) bool {
	shorter := min(utf8.RuneCountInString(word), utf8.RuneCountInString(name))
	if shorter < 3 {
		return false
	}
	one, exchanged := oneSlip(word, name)
	if shorter >= 5 {
		return one
	}
	return exchanged || one && !strings.ContainsAny(word, "aeiouy")
}

// oneSlip says whether a becomes b when one letter is put in, left out or
// changed, or two neighbours exchanged, and whether it was an exchange. The
// letters are bytes: a slip within a letter of several is not looked for.
func oneSlip(a, b string) (one, exchanged bool) {
	for a != "" && b != "" && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for a != "" && b != "" && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	exchanged = len(a) == 2 && len(b) == 2 && a[0] == b[1] && a[1] == b[0]
	return exchanged || len(a) <= 1 && len(b) <= 1 && a != b, exchanged
}

// Doubts tells, in the words of a message, what in a unit was read in a way its
// author may not have meant: a count that looks like a misspelt unit, or a sign
// of other money than the sheet's. It is empty for a unit that was worked out.
func (u Unit) Doubts() []string {
	p := u.parts()
	var out []string
	for _, t := range p.terms {
		switch {
		case t.def == nil:
			if meant := Suggest(t.count); meant != "" {
				out = append(out, `"`+p.written(t.count)+`" is a count of its own here; if a known unit is meant, write `+meant)
			}
		case t.def.base == money:
			for _, sign := range []string{"$", "€", "£", "¥"} {
				if sign != t.shown() && strings.Contains(p.text, sign) {
					out = append(out, `"`+sign+`" stands for the sheet's money, `+t.shown()+`, without any exchange`)
				}
			}
		}
	}
	return out
}

// written finds a count's name in the text it was read from, as it stands there.
func (p *parts) written(name string) string {
	low := strings.ToLower(p.text)
	if at := strings.Index(low, strings.ToLower(name)); at >= 0 && len(low) == len(p.text) {
		return p.text[at : at+len(name)]
	}
	return name
}
