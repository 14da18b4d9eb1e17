package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"thawbook/engine"
	"thawbook/engine/diag"
)

// show writes each diagnostic with the line it is about and a marker under the
// place:
//
//	pallets.yaml:14:22: error: cannot add "gal" to "lb"
//	    - {id: both, formula: sap + weight, unit: gal}
//	                          ^^^^^^^^^^^^
//	  write number(weight, "lb") to take the unit off
func (o *opened) show(w io.Writer, on ink, list diag.List) {
	for _, d := range list {
		word := on.red("error")
		if d.Severity == diag.Warning {
			word = on.yellow("warning")
		}
		at := ""
		if place := clean(d.Place.String()); place != "" {
			at = on.bold(place) + ": "
		}
		fmt.Fprintf(w, "%s%s: %s\n", at, word, clean(d.Message))
		if quoted, from, to, ok := o.quote(d); ok {
			text, marker := snippet(quoted, from, to)
			fmt.Fprintf(w, "    %s\n    %s\n", text, on.red(marker))
		}
		if d.Hint != "" {
			fmt.Fprintln(w, wrap(d.Hint, width, "  "))
		}
	}
}

// quote finds the line a diagnostic is about and the stretch of it to mark, in
// runes. A place inside a formula is marked where the formula stands on its
// line of the file, or on the formula alone when it is written over several
// lines or with escapes.
func (o *opened) quote(d diag.Diagnostic) (line string, from, to int, ok bool) {
	line, ok = lineOf(string(o.texts[d.Place.File]), d.Place.Line)
	start := max(0, d.Place.Column-1)
	if span := d.Place.Formula; span != nil {
		formula := o.formula(d.About)
		if at := indexFrom(line, formula, start); ok && at >= 0 {
			return line, at + span.From, at + span.To, true
		}
		if formula != "" {
			return formula, span.From, span.To, true
		}
	}
	return line, start, wordEnd(line, start), ok && d.Place.Column > 0
}

// formula is the text of the formula that the line or cell works by, "" when
// there is none.
func (o *opened) formula(about string) string {
	if o.book == nil || about == "" {
		return ""
	}
	text := ""
	eachLine(o.book.View(), func(line engine.LineView) {
		if line.ID == about {
			text = line.Formula
		}
	})
	return text
}

func eachLine(view engine.View, do func(engine.LineView)) {
	for _, chapter := range view.Chapters {
		for _, line := range chapter.Lines {
			do(line)
		}
		for _, table := range chapter.Tables {
			for _, row := range table.Rows {
				for _, cell := range row.Cells {
					do(cell)
				}
			}
		}
	}
}

func lineOf(text string, n int) (string, bool) {
	if n < 1 {
		return "", false
	}
	i := 1
	for line := range strings.Lines(text) {
		if i == n {
			return strings.TrimRight(line, "\r\n"), true
		}
		i++
	}
	return "", false
}

// indexFrom is where part stands in line at or after rune start, in runes; -1
// when it is empty or not there.
func indexFrom(line, part string, start int) int {
	runes := []rune(line)
	if part == "" || start > len(runes) {
		return -1
	}
	before, _, found := strings.Cut(string(runes[start:]), part)
	if !found {
		return -1
	}
	return start + columns(before)
}

// wordEnd is one past the last rune of the word or number at start.
func wordEnd(line string, start int) int {
	end := start
	for _, r := range []rune(line)[min(start, columns(line)):] {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("_-.+%°$", r) {
			break
		}
		end++
	}
	return max(end, start+1)
}

// snippet cuts a long line down to a window around what is marked and draws
// the marker for it. Tabs become spaces so that the marker stands right.
func snippet(line string, from, to int) (text, marker string) {
	const room = width - 4
	runes := []rune(strings.TrimRight(clean(line), " "))
	from = min(max(from, 0), len(runes))
	to = min(max(to, from+1), max(len(runes), from+1))
	trimmed := 0
	for trimmed < from && trimmed < len(runes) && runes[trimmed] == ' ' {
		trimmed++
	}
	first := trimmed
	if to-trimmed > room {
		first = max(trimmed, from-room/3)
	}
	last := min(len(runes), first+room)
	window := runes[first:last]
	if first > trimmed {
		window = append([]rune("…"), window[1:]...)
	}
	if last < len(runes) {
		window = append(append([]rune{}, window[:len(window)-1]...), '…')
	}
	length := min(to, first+room) - from
	return string(window), strings.Repeat(" ", from-first) + strings.Repeat("^", max(1, length))
}
