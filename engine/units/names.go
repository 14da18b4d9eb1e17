package units

import (
	"slices"
	"strings"
	"unicode"
)

// signs are names of one character that may touch other text.
const signs = "$€£¥¢%"

// read turns a name into terms.
func (p *parser) read(from int, name string) (reading, *ParseError) {
	name = tidy(name)
	if name == "" || name == "per" {
		return reading{}, p.missing(from)
	}
	if r, ok := lookup(name, p.currency); ok {
		return r, nil
	}
	if isCurrency(name) {
		return reading{}, p.fail(from, "write $ for the sheet's own money", "%q is not this sheet's money, and there is no exchange rate", name)
	}
	if !startsCount(name) || holdsPer(name) {
		hint := "a unit is a word such as gal, lb or tap"
		if meant := Suggest(name); meant != "" {
			hint = "did you mean " + meant + "?"
		}
		return reading{}, p.fail(from, hint, "%q is no unit", name)
	}
	if joint, ok := runTogether(name, p.currency); ok {
		return reading{}, p.fail(from, `write "`+joint+`" for the product, "/" for the quotient`, "%q has no sign between its units", name)
	}
	return reading{terms: []term{{count: fold(name, p.currency), exp: 1}}}, nil
}

// lookup finds a known unit: in its own case, in any, with a 2 or 3 behind it,
// or the sheet's money.
func lookup(name, currency string) (reading, bool) {
	if r, ok := known[name]; ok {
		return r.inMoney(currency), true
	}
	if r, ok := anyCase[strings.ToLower(name)]; ok {
		return r.inMoney(currency), true
	}
	if currency != "" && strings.EqualFold(name, currency) {
		return known["$"].inMoney(currency), true
	}
	last := len(name) - 1
	if exp := name[last]; last > 0 && (exp == '2' || exp == '3') && !strings.Contains(name, " ") {
		if r, ok := lookup(name[:last], ""); ok && len(r.terms) == 1 && r.terms[0].exp == 1 && r.terms[0].def.base != money {
			t := r.terms[0]
			t.exp = int(exp - '0')
			return reading{terms: []term{t}}, true
		}
	}
	return reading{}, false
}

// inMoney gives the sheet's money the sign it is shown with.
func (r reading) inMoney(currency string) reading {
	if len(r.terms) != 1 || r.terms[0].def.name != "$" {
		return r
	}
	if sign := signOf(currency); sign != "$" {
		t := r.terms[0]
		t.sign = sign
		return reading{terms: []term{t}}
	}
	return r
}

// tidy brings the spellings of a name to one: single spaces, no abbreviating
// dots, one degree sign. It leaves a name that needs nothing as it is.
func tidy(name string) string {
	plain := true
	for i := 0; i < len(name); i++ {
		c := name[i]
		plain = plain && c >= ' ' && c < 0x80 && c != '.' && (c != ' ' || name[i-1] != ' ')
	}
	if plain {
		return name
	}
	name = strings.Map(func(r rune) rune {
		switch r {
		case 'º', '˚':
			return '°'
		case '∆':
			return 'Δ'
		case '.':
			return -1
		}
		return r
	}, name)
	return strings.Join(strings.Fields(name), " ")
}

// startsCount says whether a name may be a count: a letter first, and none of
// the signs that belong to temperatures.
func startsCount(name string) bool {
	for i, r := range name {
		if i == 0 && !unicode.IsLetter(r) || r == '°' || r == 'Δ' || r == '℉' || r == '℃' {
			return false
		}
	}
	return true
}

// holdsPer finds the word that stands for a stroke, as in "a p.er b" once tidy.
func holdsPer(name string) bool { return slices.Contains(strings.Fields(name), "per") }

// runTogether finds two or more known units that have only a space or a hyphen
// between them, such as kW h, which is as likely a product as a quotient.
func runTogether(name, currency string) (string, bool) {
	words := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '-' })
	if len(words) < 2 {
		return "", false
	}
	for _, w := range words {
		if _, ok := lookup(w, currency); !ok {
			return "", false
		}
	}
	return strings.Join(words, "*"), true
}

// fold brings the writings of one count to one name: Taps, taps and tap are all
// tap. A word whose fold would be read as something else stays as it is.
func fold(name, currency string) string {
	out := singular(strings.ToLower(name))
	if out == name {
		return out
	}
	_, other := lookup(out, currency)
	_, apart := runTogether(out, currency)
	if other || apart || holdsPer(out) {
		return name
	}
	return out
}
