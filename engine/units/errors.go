package units

import "strings"

// missing tells of a place where a name should stand.
func (p *parser) missing(from int) *ParseError {
	if strings.TrimSpace(p.text) == "" {
		return p.fail(from, "write 1 for a bare number", "no unit is written")
	}
	if p.at == len(p.text) {
		return p.fail(from, "write what it is counted in after it", "%q ends where a unit should stand", p.text)
	}
	if p.at == from {
		p.next()
	}
	found := strings.TrimSpace(p.text[from:p.at])
	if found == "/" || found == "per" {
		return p.fail(from, `write "1/tap" for one over a tap`, "nothing stands before %q in %q", found, p.text)
	}
	if found == "(" {
		return p.fail(from, "write BTU/h/ft² for BTU/(h·ft²)", "a unit has no brackets")
	}
	return p.fail(from, "a unit is a word such as gal, lb or tap", "%q cannot stand in a unit", found)
}

// stray tells of a character between two factors.
func (p *parser) stray(from int, r rune) *ParseError {
	hint := `between two units write "*" or "/"`
	switch r {
	case '(', ')':
		hint = "write BTU/h/ft² for BTU/(h·ft²)"
	case '-', '+':
		hint = "a unit is not worked out; put the working in a formula"
	}
	return p.fail(from, hint, "%q cannot stand in a unit", string(r))
}

// numberInside tells of a unit with its number still on it, such as "12 oz".
func (p *parser) numberInside(from int, name string) *ParseError {
	hint := "a number belongs in the line's value, and only its unit here"
	rest := strings.TrimLeft(name, "0123456789., ")
	if rest != "" {
		hint += `: "` + rest + `"`
	}
	return p.fail(from, hint, "%q has a number in it", name)
}
