package plain

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"thawbook/engine/sheet"
)

// Source is a whole sheet of what was found: the lists' lines in their chapters
// and each log as a table. A log's day with a number missing is left out, because
// a table has no empty cells, and so is a column that most days lack.
func (f *Found) Source(title, money string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "thawbook: 1\ntitle: %s\nmoney: %s\n\nchapters:\n", quoted(title), money)
	for _, list := range f.Lists {
		chapter := ""
		for i, l := range list.Lines {
			if i == 0 || l.Chapter != chapter {
				chapter = l.Chapter
				fmt.Fprintf(&b, "  - title: %s\n    lines:\n", quoted(chapter))
			}
			fmt.Fprintf(&b, "      - {id: %s, label: %s, %s, unit: %s", l.ID, quoted(l.Label), l.says(), quoted(l.Unit))
			if l.Note != "" {
				fmt.Fprintf(&b, ", note: %s", quoted(l.Note))
			}
			b.WriteString("}\n")
		}
	}
	for _, l := range f.Logs {
		l.table(&b)
	}
	return b.Bytes()
}

func (l Line) says() string {
	if l.Guess != nil {
		return fmt.Sprintf("guess: {low: %s, likely: %s, high: %s}", sheet.FormatNumber(l.Guess.Low), sheet.FormatNumber(l.Guess.Likely), sheet.FormatNumber(l.Guess.High))
	}
	return "is: " + sheet.FormatNumber(*l.Is)
}

// quoted is text as YAML reads it whatever it holds. JSON's quotes are YAML's.
func quoted(text string) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(strings.Join(strings.Fields(text), " ")); err != nil {
		return `""`
	}
	return strings.TrimSpace(b.String())
}

// table writes a log.
func (l Log) table(b *bytes.Buffer) {
	kept := l.kept()
	if len(kept) == 0 {
		return
	}
	fmt.Fprintf(b, "  - title: %s\n    tables:\n      - id: %s\n        label: %s\n        columns:\n", quoted(l.Label), l.ID, quoted(l.Label))
	for _, k := range kept {
		c := l.Columns[k]
		fmt.Fprintf(b, "          - {id: %s, label: %s, unit: %s}\n", c.ID, quoted(c.Label), quoted(c.Unit))
	}
	b.WriteString("        rows:\n")
	for _, d := range l.Days {
		if !d.whole(kept) {
			continue
		}
		fmt.Fprintf(b, "          - {id: %s, label: %s", d.ID, quoted(d.Label))
		for _, k := range kept {
			fmt.Fprintf(b, ", %s: %s", l.Columns[k].ID, sheet.FormatNumber(*d.Cells[k]))
		}
		b.WriteString("}\n")
	}
}

// kept are the columns that more than half of the days have a number in.
func (l Log) kept() []int {
	var out []int
	for k := range l.Columns {
		n := 0
		for _, d := range l.Days {
			if d.Cells[k] != nil {
				n++
			}
		}
		if 2*n > len(l.Days) {
			out = append(out, k)
		}
	}
	return out
}

func (d Day) whole(columns []int) bool {
	for _, k := range columns {
		if d.Cells[k] == nil {
			return false
		}
	}
	return true
}
