package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine"
	"thawbook/engine/diag"
)

func number(x float64) *float64 { return &x }

func answerOf(label string, p05, p10, p50, p90, p95 float64, low, middle, high string) engine.Answer {
	return engine.Answer{
		ID: strings.ToLower(label), Label: label, Chapter: "Trees and sap", Kind: "guess",
		P05: number(p05), P10: number(p10), P50: number(p50), P90: number(p90), P95: number(p95),
		Shown: engine.Shown{Low: low, Middle: middle, High: high},
	}
}

func textOf(r *engine.Reckoning, all bool) string {
	var out strings.Builder
	page{w: &out, names: map[string]string{
		"syrup made": "Syrup made", "taps hung": "Taps hung", "fuels": "What could be burned", "fuels.propane": "Propane",
	}}.reckoning(r, all)
	return out.String()
}

func TestReckoningShowsHeadlinesFirst(t *testing.T) {
	syrup := answerOf("Syrup made", 14, 17, 24, 32, 36, "17.0 gal", "24.0 gal", "32.0 gal")
	syrup.Headline, syrup.Goal = true, "at least 20 gal"
	syrup.Shown.Goal = "8 seasons of 10"
	taps := answerOf("Taps hung", 140, 140, 140, 140, 140, "140 taps", "140 taps", "140 taps")
	cell := answerOf("Propane, price", 1, 2, 3, 4, 5, "$2", "$3", "$4")
	cell.Table, cell.Row = "fuels", "propane"
	r := &engine.Reckoning{
		Title: "Heron Ridge", Seasons: 10000, Seed: 41, Paragraph: "Expect about 24 gal.",
		Lines:    []engine.Answer{taps, syrup, cell},
		Warnings: diag.List{{About: "syrup made", Message: "division by zero", Seasons: 312, Of: 10000}},
		Cautions: []engine.Caution{{About: "taps hung", Text: "Mind the ladder.", Source: "common practice"}},
	}
	assert.Equal(t, `Heron Ridge
10,000 seasons drawn, seed 41

Syrup made
  24.0 gal          17.0 to 32.0 gal          │············───━━━━━━◆━━━━━━━────
  goal: at least 20 gal, met in 8 seasons of 10

  ◆ middle   ━ 8 seasons in 10   ─ 9 in 10   │ nothing

Expect about 24 gal.

Trees and sap
  Taps hung                                  140 taps
  Syrup made                                 24.0 gal  17.0 to 32.0 gal

Warnings
  Syrup made: division by zero, in 312 of 10,000 seasons

Take care
  Taps hung: Mind the ladder.
    from: common practice
`, textOf(r, false))
	assert.Contains(t, textOf(r, true), `  Syrup made                                 24.0 gal  17.0 to 32.0 gal
  What could be burned
    Propane
      price                                        $3  $2 to $4
`)
}

func TestReckoningFitsTheWidth(t *testing.T) {
	long := strings.Repeat("what the old evaporator burns in March ", 4)
	line := answerOf(long, 1, 2, 3, 4, 5, "$12,345,678.90/MMBTU", "$22,345,678.90/MMBTU", "$32,345,678.90/MMBTU")
	line.Headline, line.Goal, line.Shown.Goal = true, long, "8 seasons of 10"
	choice := engine.Answer{ID: "fuel", Label: "Fuel", Choice: "pallets", Shown: engine.Shown{Middle: "Old hardwood pallets, sawn and dried"}}
	bare := engine.Answer{ID: "x", Label: "Waits", Shown: engine.Shown{Low: "no number", Middle: "no number", High: "no number"}}
	r := &engine.Reckoning{
		Title: long, Paragraph: long, Lines: []engine.Answer{line, choice, bare},
		Warnings: diag.List{{About: line.ID, Message: long, Hint: long, Seasons: 1, Of: 10}},
		Cautions: []engine.Caution{{About: line.ID, Text: long, Source: long}},
	}
	text := textOf(r, true)
	n, widestLine := widest(text)
	assert.LessOrEqual(t, n, width, widestLine)
	assert.Regexp(t, `(?m)^  Waits +no number$`, text)
	for _, s := range strings.Split(text, "\n") {
		assert.Equal(t, trimRight(s), s, "no line ends in spaces")
	}
}
