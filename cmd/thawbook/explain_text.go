package main

import (
	"fmt"
	"io"
	"strings"

	"thawbook/engine"
)

// tree draws an explanation: each line with its value at the right, and what it
// was worked from on branches below.
//
//	Sap in the buckets (sap)                                          1,288 gal
//	│ taps * sap_per_tap
//	│ = 140 taps × 9.2 gal/tap
//	├╴Taps hung (taps)                                                 140 taps
//	╰╴Sap from one tap (sap_per_tap)                                9.2 gal/tap
//	    a guess: low 6, likely 9.2, high 13.8 gal/tap
type tree struct {
	w  io.Writer
	on ink
}

// deepestDrawn is how many branches are drawn inside each other before the rest
// goes on at the margin: beyond it too little of the width is left for words.
const deepestDrawn = 16

func (p tree) explanation(e *engine.Explanation) {
	fmt.Fprintln(p.w, p.on.bold(wrap(e.Title, width, "")))
	fmt.Fprintf(p.w, "%s\n\n", wrap(e.Where, width, ""))
	for later := []*engine.Step{e.Tree}; len(later) > 0; {
		step := later[0]
		later = append(p.branch(step, "", "", 0), later[1:]...)
		if len(later) > 0 {
			fmt.Fprintln(p.w)
		}
	}
}

// branch draws a step whose first line begins with first and whose others begin
// with rest. It gives back the steps that lie too deep to be drawn here.
func (p tree) branch(s *engine.Step, first, rest string, depth int) (later []*engine.Step) {
	uses := s.Uses
	deep := depth >= deepestDrawn && len(uses) > 0
	if deep {
		uses = nil
	}
	p.head(s, first, rest)
	trunk := "│ "
	if len(uses) == 0 {
		trunk = "  "
	}
	for _, line := range said(s, deep) {
		fmt.Fprintln(p.w, wrap(line, width, rest+trunk))
	}
	for i, use := range uses {
		if i < len(uses)-1 {
			later = append(later, p.branch(use, rest+"├╴", rest+"│ ", depth+1)...)
		} else {
			later = append(later, p.branch(use, rest+"╰╴", rest+"  ", depth+1)...)
		}
	}
	if deep {
		later = append(later, s)
	}
	return later
}

// head writes the label, the id and, at the right end, the value.
func (p tree) head(s *engine.Step, first, rest string) {
	value := clean(s.Shown)
	if s.Again {
		value += ", above"
	}
	room := max(width-columns(first)-columns(value)-2, 24)
	lines := strings.Split(wrap(s.Label+" ("+s.ID+")", room, ""), "\n")
	for i, line := range lines {
		lead := rest
		if i == 0 {
			lead = first
		}
		if i < len(lines)-1 {
			fmt.Fprintln(p.w, lead+line)
			continue
		}
		if columns(lead+line)+2+columns(value) > width { // a value as long as a name
			fmt.Fprintln(p.w, lead+line)
			fmt.Fprintln(p.w, right(p.on.bold(value), width))
			continue
		}
		gap := width - columns(lead+line) - columns(value)
		fmt.Fprintln(p.w, lead+line+strings.Repeat(" ", gap)+p.on.bold(value))
	}
}

// said are the lines under a step's head.
func said(s *engine.Step, deep bool) []string {
	var out []string
	add := func(lead, text string) {
		if text != "" {
			out = append(out, lead+text)
		}
	}
	if s.Again {
		return nil
	}
	add("", s.Formula)
	switch {
	case s.More:
		return append(out, "worked from lines further down: give a greater --depth")
	case deep:
		return append(out, "goes on below")
	}
	if s.Worked != s.Shown {
		add("= ", s.Worked)
	}
	for _, side := range s.Sides {
		out = append(out, sideWords(side))
	}
	var changes []string
	for _, c := range s.Conversions {
		changes = append(changes, c.Shown)
	}
	add("units: ", strings.Join(changes, "; "))
	for _, f := range s.Functions {
		out = append(out, f.Name+": "+strings.TrimSuffix(f.Summary, ".")+" ("+f.Source+")")
	}
	add("", s.Drawn)
	add("note: ", s.Note)
	add("from: ", s.Source)
	if s.Row != nil {
		add(s.Row.Label+", note: ", s.Row.Note)
		add(s.Row.Label+", from: ", s.Row.Source)
	}
	return out
}

func sideWords(s engine.StepSide) string {
	text := s.Condition + " does not hold"
	if s.Holds {
		text = s.Condition + " holds"
	}
	if s.Worked != s.Condition {
		text += ", " + s.Worked
	}
	return text + ": takes " + s.Took
}
