package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"thawbook/engine"
	"thawbook/engine/units"
)

// page lays a reckoning out as text of at most width columns. names are the
// labels of lines, tables, rows and cells by id.
type page struct {
	w     io.Writer
	on    ink
	names map[string]string
}

func (p page) reckoning(r *engine.Reckoning, all bool) {
	fmt.Fprintln(p.w, p.on.bold(wrap(r.Title, width, "")))
	fmt.Fprintf(p.w, "%s seasons drawn, seed %d\n", units.Number(float64(r.Seasons), units.One()), r.Seed)
	p.headlines(r.Lines)
	if r.Paragraph != "" {
		fmt.Fprintf(p.w, "\n%s\n", wrap(r.Paragraph, width, ""))
	}
	p.chapters(r.Lines, all)
	p.warnings(r)
	p.cautions(r)
}

// headlines shows each headline line with its range drawn, and its goal.
func (p page) headlines(lines []engine.Answer) {
	drawn := false
	for _, line := range lines {
		if !line.Headline {
			continue
		}
		fmt.Fprintf(p.w, "\n%s\n", p.on.bold(wrap(line.Label, width, "")))
		picture := strip(bandOf(line), 34)
		drawn = drawn || picture != ""
		p.value(line, "  ", 16, picture)
		if line.Goal != "" && line.Shown.Goal != "" {
			fmt.Fprintln(p.w, wrap("goal: "+line.Goal+", met in "+line.Shown.Goal, width, "  "))
		}
	}
	if drawn {
		fmt.Fprintln(p.w, p.on.faint("\n  ◆ middle   ━ 8 seasons in 10   ─ 9 in 10   │ nothing"))
	}
}

// value writes the middle and the range of a line, and a picture when there is
// room for it on the same line or else on the next.
func (p page) value(line engine.Answer, indent string, middle int, picture string) {
	text := indent + left(middleOf(line), middle)
	if spread := rangeOf(line); spread != "" {
		text += "  " + spread
	}
	if picture == "" {
		fmt.Fprintln(p.w, trimRight(text))
		return
	}
	at := width - columns(picture)
	if columns(text) < at {
		fmt.Fprintln(p.w, left(text, at)+picture)
		return
	}
	fmt.Fprintln(p.w, trimRight(text))
	fmt.Fprintln(p.w, right(picture, width))
}

// chapters lists every line under its chapter; tables only when all is asked
// for.
func (p page) chapters(lines []engine.Answer, all bool) {
	chapter, table, row := "", "", ""
	for _, line := range lines {
		if line.Table != "" && !all {
			continue
		}
		if line.Chapter != chapter {
			chapter = line.Chapter
			fmt.Fprintf(p.w, "\n%s\n", p.on.bold(wrap(chapter, width, "")))
		}
		if line.Table != table && line.Table != "" {
			fmt.Fprintln(p.w, wrap(p.names[line.Table], width, "  "))
		}
		if at := line.Table + "." + line.Row; at != row && line.Table != "" {
			row = at
			fmt.Fprintln(p.w, wrap(p.names[at], width, "    "))
		}
		table = line.Table
		p.answer(line)
	}
}

// answer writes a line's name and its numbers; a cell stands in its row, and
// needs only what it adds to the row's name.
func (p page) answer(line engine.Answer) {
	indent, name := "  ", line.Label
	if line.Table != "" {
		indent, name = "      ", strings.TrimPrefix(name, p.names[line.Table+"."+line.Row]+", ")
	}
	p.row(indent, clean(name), right(middleOf(line), 14)+"  "+rangeOf(line))
}

// row writes a name and, in a column of its own, an answer. A name or an answer
// too long for that takes lines of its own.
func (p page) row(indent, name, answer string) {
	const column = 39
	answer = trimRight(answer)
	if columns(indent+name)+1 > column || column+columns(answer) > width {
		fmt.Fprintln(p.w, wrap(name, width, indent))
		name = ""
	}
	switch text := trimLeft(answer); {
	case column+columns(answer) <= width:
		fmt.Fprintln(p.w, left(indent+name, column)+answer)
	case columns(text) <= width:
		fmt.Fprintln(p.w, right(text, width))
	default:
		fmt.Fprintln(p.w, wrap(text, width, "    "))
	}
}

func (p page) warnings(r *engine.Reckoning) {
	if len(r.Warnings) == 0 {
		return
	}
	fmt.Fprintf(p.w, "\n%s\n", p.on.bold("Warnings"))
	for _, d := range r.Warnings {
		text := d.Message
		if d.Seasons > 0 {
			text += fmt.Sprintf(", in %s of %s seasons", units.Number(float64(d.Seasons), units.One()), units.Number(float64(d.Of), units.One()))
		}
		p.note(d.About, text)
		if d.Hint != "" {
			fmt.Fprintln(p.w, wrap(d.Hint, width, "    "))
		}
	}
}

func (p page) cautions(r *engine.Reckoning) {
	if len(r.Cautions) == 0 {
		return
	}
	fmt.Fprintf(p.w, "\n%s\n", p.on.bold("Take care"))
	for _, c := range r.Cautions {
		p.note(c.About, c.Text)
		if c.Source != "" {
			fmt.Fprintln(p.w, wrap("from: "+c.Source, width, "    "))
		}
	}
}

// note writes text under a heading, with what it is about before it.
func (p page) note(about, text string) {
	if name := p.names[about]; name != "" {
		text = name + ": " + text
	}
	fmt.Fprintln(p.w, strings.Replace(wrap(text, width, "    "), "    ", "  ", 1))
}

func labels(view engine.View) map[string]string {
	names := map[string]string{}
	eachLine(view, func(line engine.LineView) { names[line.ID] = line.Label })
	for _, chapter := range view.Chapters {
		for _, table := range chapter.Tables {
			names[table.ID] = table.Label
			for _, row := range table.Rows {
				names[table.ID+"."+row.ID] = row.Label
			}
		}
	}
	return names
}

// middleOf is a line's middle with its unit, or the name of what a choice is.
func middleOf(line engine.Answer) string { return clean(line.Shown.Middle) }

// rangeOf is "" for a line that is the same in every season. A unit that low
// and high share is said once.
func rangeOf(line engine.Answer) string {
	low, high := line.Shown.Low, line.Shown.High
	if low == high {
		return ""
	}
	if i := strings.IndexAny(low, " /"); i > 0 && strings.HasSuffix(high, low[i:]) {
		low = low[:i]
	}
	return clean(low + " to " + high)
}

func bandOf(line engine.Answer) band {
	value := func(x *float64) float64 {
		if x == nil {
			return math.NaN()
		}
		return *x
	}
	return band{
		p05: value(line.P05), p10: value(line.P10), p50: value(line.P50),
		p90: value(line.P90), p95: value(line.P95),
	}
}
