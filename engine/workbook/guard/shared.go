package guard

import (
	"strconv"
	"strings"
)

// shared reads a part that all sheets look things up in.
func (r *reader) shared(l link) error {
	if l.outside || !r.has(l.target) {
		return nil
	}
	switch l.kind {
	case "sharedStrings":
		return r.texts(l.target)
	case "styles":
		return r.styles(l.target)
	}
	return nil
}

// gathered collects the text of an item that may be cut into runs. Readings of
// eastern scripts stand beside their text and are left out.
type gathered struct {
	strings.Builder
	aside, in int
}

func (g *gathered) open(name string) {
	switch name {
	case "rPh":
		g.aside++
	case "t":
		g.in++
	}
}

func (g *gathered) close(name string) {
	switch name {
	case "rPh":
		g.aside--
	case "t":
		g.in--
	}
}

func (g *gathered) add(t []byte) {
	if g.in > 0 && g.aside == 0 && g.Len()+len(t) <= maxText {
		g.Write(t)
	}
}

// take is the text and forgets it.
func (g *gathered) take() string {
	text := unescape(g.String())
	g.Reset()
	return text
}

func (r *reader) texts(part string) error {
	var g gathered
	total := 0
	return r.walk(part, visitor{
		open: func(name string, _ attributes) error {
			g.open(name)
			if len(r.strings) > MaxCells || total > maxLetters {
				return errTooMuch
			}
			return nil
		},
		text: g.add,
		close: func(name string) {
			g.close(name)
			if name == "si" {
				text := g.take()
				total += len(text)
				r.strings = append(r.strings, text)
			}
		},
	})
}

// styles reads how each style shows a number.
func (r *reader) styles(part string) error {
	codes := map[string]string{}
	inCells := false
	return r.walk(part, visitor{
		open: func(name string, attr attributes) error {
			switch {
			case name == "numFmt" && len(codes) < maxStyles:
				codes[attr.get("numFmtId")] = attr.get("formatCode")
			case name == "cellXfs":
				inCells = true
			case name == "xf" && inCells && len(r.shown) < maxStyles:
				id := attr.get("numFmtId")
				code, own := codes[id]
				if own {
					r.shown = append(r.shown, shownBy(code))
				} else {
					r.shown = append(r.shown, builtIn(id))
				}
			}
			return nil
		},
		close: func(name string) { inCells = inCells && name != "cellXfs" },
	})
}

// builtIn is how a format that the standard numbers shows (ECMA-376 part 1,
// 18.8.30, with the dates of eastern programs).
func builtIn(id string) Shown {
	n, err := strconv.Atoi(id)
	switch {
	case err != nil:
		return Bare
	case n == 9 || n == 10:
		return Percent
	case n >= 14 && n <= 22, n >= 27 && n <= 36, n >= 45 && n <= 47, n >= 50 && n <= 58:
		return Date
	case n >= 5 && n <= 8, n == 42, n == 44:
		return Money
	}
	return Bare
}

// shownBy is how a format's code shows a number: by the letters of its first
// part that are not quoted, escaped or in square brackets.
func shownBy(code string) Shown {
	money := strings.ContainsAny(code, "$€£¥")
	for i := 0; i < len(code); i++ {
		switch c := code[i]; c {
		case ';':
			i = len(code)
		case '"', '[':
			end := strings.IndexByte(code[i+1:], map[byte]byte{'"': '"', '[': ']'}[c])
			if end < 0 {
				return Bare
			}
			if inside := strings.ToLower(code[i+1 : i+1+end]); c == '[' && (inside == "h" || inside == "hh" || inside == "m" || inside == "mm" || inside == "s") {
				return Date
			}
			i += end + 1
		case '\\', '_', '*':
			i++
		case '%':
			return Percent
		case 'd', 'D', 'm', 'M', 'y', 'Y', 'h', 'H':
			return Date
		}
	}
	if money {
		return Money
	}
	return Bare
}
