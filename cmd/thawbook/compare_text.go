package main

import (
	"fmt"
	"math"
	"strings"

	"thawbook/engine"
	"thawbook/engine/units"
)

// sheets lays scenarios out side by side as text.
type sheets struct{ page }

func (s sheets) comparison(c *engine.Comparison) {
	for k, scenario := range c.Scenarios {
		fmt.Fprintln(s.w, strings.Repeat("  beside ", min(k, 1))+s.on.bold(wrap(scenario.Title, width-10, "")))
	}
	fmt.Fprintf(s.w, "%s seasons drawn, seed %d, the same ones for all\n", units.Number(float64(c.Seasons), units.One()), c.Seed)
	if c.Paragraph != "" {
		fmt.Fprintf(s.w, "\n%s\n", wrap(c.Paragraph, width, ""))
	}
	for _, l := range c.Lines {
		s.outcome(c, l)
	}
	fmt.Fprintln(s.w, s.on.faint("\n  ◆ middle   ━ 8 seasons in 10   ─ 9 in 10   │ no difference"))
	for _, f := range c.Flips {
		s.flip(f)
	}
	s.changes(c)
	s.warnings(&engine.Reckoning{Warnings: c.Warnings})
}

// outcome shows one line in every scenario, then each difference.
func (s sheets) outcome(c *engine.Comparison, l engine.ComparedLine) {
	fmt.Fprintf(s.w, "\n%s\n", s.on.bold(wrap(l.Label, width, "")))
	first := c.Scenarios[0].Short
	for k, v := range l.Values {
		answer := engine.Answer{Shown: v.Shown}
		s.row("  ", clean(c.Scenarios[k].Short), right(middleOf(answer), 14)+"  "+rangeOf(answer))
	}
	for _, d := range l.Difference {
		if picture := strip(bandOfDifference(d), 34); picture != "" {
			fmt.Fprintln(s.w)
			s.row("  ", clean(c.Scenarios[d.Scenario].Short+" less "+first), picture)
		}
		fmt.Fprintln(s.w, wrap(d.Sentence, width, "  "))
		if d.Explanation != "" {
			fmt.Fprintln(s.w, s.on.faint(wrap(d.Explanation, width, "    ")))
		}
	}
}

// flip shows from where on the answer turns, and a row for every other value.
func (s sheets) flip(f *engine.Flip) {
	fmt.Fprintf(s.w, "\n%s\n%s\n", s.on.bold(wrap("Where it flips: "+f.Second+" beside "+f.First, width, "")), wrap(f.Sentence, width, "  "))
	if f.Now != nil {
		fmt.Fprintln(s.w, wrap("The sheet has it at "+f.Shown.Now+".", width, "  "))
	}
	heading := "ahead"
	if f.Better == "" {
		heading = "more"
	}
	fmt.Fprintf(s.w, "\n%s\n", s.on.faint(wrap(f.Second+" "+heading+" in, and the middle difference:", width, "  ")))
	for i := 0; i < len(f.Curve); i += 2 {
		p := f.Curve[i]
		text := right(clean(p.Shown.Value), 14) + "  " + tally(p.Ahead) + "  " + left(p.Shown.Ahead, 28) + clean(p.Shown.Middle)
		fmt.Fprintln(s.w, trimRight(text))
	}
}

// tally draws a share of the seasons as ten marks.
func tally(share *float64) string {
	if share == nil {
		return strings.Repeat("·", 10)
	}
	n := int(math.Round(*share * 10))
	return strings.Repeat("●", n) + strings.Repeat("○", 10-n)
}

// changes lists what each scenario says otherwise than the first.
func (s sheets) changes(c *engine.Comparison) {
	for _, scenario := range c.Scenarios[1:] {
		fmt.Fprintf(s.w, "\n%s\n", s.on.bold(wrap("What "+scenario.Short+" says otherwise", width, "")))
		if len(scenario.Changes) == 0 {
			fmt.Fprintln(s.w, "  nothing that any line comes to")
		}
		for _, change := range scenario.Changes {
			text := wrap(change.Label+": "+change.Is+", not "+change.Was, width, "    ")
			if change.About == "" {
				text = wrap("Added: "+change.Is+". Dropped: "+change.Was+".", width, "    ")
			}
			fmt.Fprintln(s.w, strings.Replace(text, "    ", "  ", 1))
		}
	}
}

func bandOfDifference(d engine.ComparedDifference) band {
	return bandOf(engine.Answer{P05: d.P05, P10: d.P10, P50: d.P50, P90: d.P90, P95: d.P95})
}
