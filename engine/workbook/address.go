package workbook

import "strings"

// address is a range on a sheet, fixed in place as defined names need it.
func address(sheet string, from, to place) string {
	out := "'" + strings.ReplaceAll(sheet, "'", "''") + "'!" + from.fixed()
	if to != from {
		out += ":" + to.fixed()
	}
	return out
}

// fixed is the cell's address with both parts held: $B$7.
func (p place) fixed() string {
	text := p.String()
	digits := strings.IndexAny(text, "0123456789")
	return "$" + text[:digits] + "$" + text[digits:]
}
