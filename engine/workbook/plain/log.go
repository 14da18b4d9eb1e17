package plain

import (
	"math"
	"strconv"
	"strings"

	"thawbook/engine/units"
	"thawbook/engine/workbook/back"
	"thawbook/engine/workbook/guard"
)

// usualUnits are what a log's columns are in when their headings do not say.
func usualUnit(means string) string {
	switch means {
	case "sap", "syrup":
		return "gal"
	case "sugar":
		return "°Bx"
	case "hours":
		return "h"
	}
	return "load"
}

// log makes a table of the rows below a log's headings.
func (f *finder) log(s *guard.Sheet, at int, heads []head, rows []line) {
	out := Log{Sheet: s.Name, Row: at, Headings: shown(heads), Label: s.Name, Columns: []Column{}, Days: []Day{}}
	var means []string
	for i, h := range heads {
		switch {
		case h.Means == "":
			f.tell(s, at, "", "the column %q was left out", h.Text)
		case h.Means == "day":
		case f.mostlyWords(rows, heads, h.Means):
			out.Headings[i].Means = ""
			f.tell(s, at, "", "the column %q holds words, not numbers, and was left out", h.Text)
		default:
			unit := f.logUnit(s, at, h)
			out.Headings[i].Unit = unit
			means = append(means, h.Means)
			out.Columns = append(out.Columns, Column{ID: h.Means, Label: strings.ToUpper(h.Means[:1]) + h.Means[1:], Unit: unit})
		}
	}
	ids := map[string]bool{}
	for _, row := range rows {
		if d, ok := f.day(s, row, heads, means, ids); ok {
			if f.made++; f.made > maxLines {
				f.tell(s, row[0].Row, "", "the rest was left out: there are more than %d days", maxLines)
				break
			}
			out.Days = append(out.Days, d)
		}
	}
	if len(out.Days) > 0 && len(out.Columns) > 0 {
		out.ID = back.FreshID("boil log", "", f.taken)
		f.out.Logs = append(f.out.Logs, out)
	}
}

// logUnit is the unit of a log's column, the usual one when its own is no
// measure of such a thing.
func (f *finder) logUnit(s *guard.Sheet, at int, h head) string {
	usual := usualUnit(h.Means)
	if h.Unit == "" || h.Means == "sugar" && h.Unit == "%" {
		return usual
	}
	a, errA := units.Parse(h.Unit, f.money)
	b, errB := units.Parse(usual, f.money)
	if errA == nil && (h.Means == "fuel" || errB == nil && units.Same(a, b)) {
		return h.Unit
	}
	f.tell(s, at, "", "%q is no unit for %q; %s was taken", h.Unit, h.Means, usual)
	return usual
}

// mostlyWords says whether a column that should hold numbers holds words.
func (f *finder) mostlyWords(rows []line, heads []head, means string) bool {
	numbers, others := 0, 0
	for _, row := range rows {
		c := cells(row, heads)[means]
		if c.Kind == guard.Blank {
			continue
		}
		if _, ok := f.logNumber(c, means); ok {
			numbers++
		} else {
			others++
		}
	}
	return others > numbers || numbers == 0
}

func (f *finder) day(s *guard.Sheet, row line, heads []head, means []string, ids map[string]bool) (Day, bool) {
	c := cells(row, heads)
	label := f.dayLabel(c["day"])
	if label == "" || isTotal(label) {
		f.tell(s, row[0].Row, "", "a row without a day was left out")
		return Day{}, false
	}
	out := Day{Row: row[0].Row, Label: label, Cells: make([]*float64, len(means))}
	any := false
	for i, m := range means {
		if x, ok := f.logNumber(c[m], m); ok {
			out.Cells[i], any = &x, true
		} else if c[m].Kind != guard.Blank {
			f.tell(s, row[0].Row, "", "the %s of %s does not read", m, label)
		}
	}
	if any {
		out.ID = back.FreshID("day "+label, "", ids)
	}
	return out, any
}

// logNumber reads a number of a log. Hours may come as a time of day, which is
// kept as a part of a day, or as 3:30.
func (f *finder) logNumber(c guard.Cell, means string) (float64, bool) {
	if means == "hours" {
		if c.Kind == guard.Number && c.Shown == guard.Date {
			return math.Round(c.Number*24*60) / 60, c.Number < 7
		}
		if h, m, found := strings.Cut(strings.TrimSpace(c.Text), ":"); c.Kind == guard.Text && found {
			hours, err1 := strconv.Atoi(h)
			minutes, err2 := strconv.Atoi(m)
			return float64(hours) + float64(minutes)/60, err1 == nil && err2 == nil && minutes < 60 && hours >= 0 && minutes >= 0
		}
	}
	if means == "sugar" && c.Shown == guard.Percent && c.Kind == guard.Number {
		return c.Number * 100, true
	}
	x, _, ok := f.number(c)
	return x, ok
}

// dayLabel is a day as people write it: 2019-03-14, or the text or number that
// stands there.
func (f *finder) dayLabel(c guard.Cell) string {
	switch {
	case c.Kind == guard.Text:
		return words(c)
	case c.Kind != guard.Number:
		return ""
	case c.Shown != guard.Date || c.Number < 1 || c.Number > 2_958_465:
		return strconv.FormatFloat(c.Number, 'g', -1, 64)
	}
	days := int(c.Number)
	switch {
	case f.book.From1904:
		days += 1462
	case days < 60:
		days++ // workbooks have a 29 February in 1900
	}
	return date(days)
}

// date is the day so many days after 30 December 1899, as 2019-03-14 (H.
// Hinnant, "chrono-Compatible Low-Level Date Algorithms", civil_from_days).
func date(days int) string {
	z := days + 719468 - 25569
	era := z / 146097
	doe := z - era*146097
	yoe := (doe - doe/1460 + doe/36524 - doe/146096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	day, month, year := doy-(153*mp+2)/5+1, mp+3, yoe+era*400
	if month > 12 {
		month -= 12
		year++
	}
	two := func(n int) string { return string(rune('0'+n/10)) + string(rune('0'+n%10)) }
	return strconv.Itoa(year) + "-" + two(month) + "-" + two(day)
}
