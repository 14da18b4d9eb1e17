package plain

import (
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook/back"
	"thawbook/engine/workbook/calc"
	"thawbook/engine/workbook/guard"
)

// list makes lines of the rows below a list's headings. A row with a name alone
// begins a chapter.
func (f *finder) list(s *guard.Sheet, at int, heads []head, rows []line) {
	out := List{Sheet: s.Name, Row: at, Headings: shown(heads), Lines: []Line{}}
	for _, h := range heads {
		if h.Means == "" {
			f.tell(s, at, "", "the column %q was left out", h.Text)
		}
	}
	chapter := s.Name
	for _, row := range rows {
		c := cells(row, heads)
		name := words(c["name"])
		switch {
		case name == "":
			f.tell(s, row[0].Row, "", "a row without a name was left out")
		case len(row) == 1:
			chapter = strings.TrimSuffix(name, ":")
		case isTotal(name):
			f.tell(s, row[0].Row, "", "%q adds others up and was left out", name)
		case f.made == maxLines:
			f.tell(s, row[0].Row, "", "the rest was left out: there are more than %d lines", maxLines)
			return
		default:
			if l, ok := f.line(s, row[0].Row, name, c, heads); ok {
				l.Chapter = chapter
				out.Lines = append(out.Lines, l)
				f.made++
			}
		}
	}
	if len(out.Lines) > 0 {
		f.out.Lists = append(f.out.Lists, out)
	}
}

// isTotal says whether a row's name is that of a sum.
func isTotal(name string) bool {
	first, _, _ := strings.Cut(strings.ToLower(name), " ")
	first = strings.Trim(first, ":")
	return first == "total" || first == "totals" || first == "sum" || first == "subtotal"
}

func (f *finder) line(s *guard.Sheet, row int, name string, c map[string]guard.Cell, heads []head) (Line, bool) {
	l := Line{Row: row, Label: name, Note: words(c["note"])}
	x, beside, ok := f.number(c["number"])
	if !ok {
		f.tell(s, row, "write a number alone", "%q has no number that reads, and was left out", name)
		return l, false
	}
	l.Unit = f.unit(s, row, c["unit"], beside, heads, c["number"])
	if l.Unit == "%" && c["number"].Shown == guard.Percent {
		x *= 100
	}
	if c["number"].Formula != "" {
		f.tell(s, row, "", "%q is worked out there; the number it came to was taken", name)
	}
	l.Is = &x
	low, _, okLow := f.number(c["low"])
	high, _, okHigh := f.number(c["high"])
	switch {
	case okLow && okHigh && low <= x && x <= high && low < high:
		l.Is, l.Guess = nil, &sheet.GuessValue{Low: low, Likely: x, High: high}
	case okLow && okHigh && !(low == x && high == x):
		f.tell(s, row, "low, likely and high must rise", "the low and high of %q were left out", name)
	case okLow != okHigh:
		f.tell(s, row, "a guess has both", "%q has a low or a high, but not both", name)
	}
	l.ID = back.FreshID(name, "", f.taken)
	return l, true
}

// number reads a cell; beside is the unit or the sign of money in the cell.
func (f *finder) number(c guard.Cell) (x float64, beside string, ok bool) {
	switch {
	case c.Kind == guard.Number && c.Shown == guard.Date:
		return 0, "", false
	case c.Kind == guard.Number && c.Shown == guard.Percent:
		return c.Number, "%", true
	case c.Kind == guard.Number && c.Shown == guard.Money:
		return c.Number, "$", true
	case c.Kind == guard.Number:
		return c.Number, "", true
	case c.Kind == guard.Text:
		return calc.ReadNumber(c.Text)
	}
	return 0, "", false
}

// unit is a row's unit: its own, what stands beside the number, or what its
// column's heading says; a bare number's when there is none.
func (f *finder) unit(s *guard.Sheet, row int, c guard.Cell, beside string, heads []head, number guard.Cell) string {
	for _, text := range []string{words(c), beside, headed(heads)} {
		if text == "" {
			continue
		}
		if _, err := units.Parse(text, f.money); err == nil {
			return text
		}
		f.tell(s, row, "", "the unit %q does not read", text)
	}
	return "1"
}

// headed is the unit at the head of the column of numbers.
func headed(heads []head) string {
	for _, h := range heads {
		if h.Means != "number" {
			continue
		}
		text := strings.ToLower(h.Text)
		if h.Unit == "" && (strings.Contains(text, "price") || strings.Contains(text, "cost")) {
			return "$"
		}
		return h.Unit
	}
	return ""
}
