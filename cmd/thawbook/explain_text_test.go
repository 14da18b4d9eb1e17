package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine"
)

func drawnTree(s *engine.Step) string {
	var b strings.Builder
	tree{w: &b}.explanation(&engine.Explanation{Title: "T", Where: "here", Tree: s})
	return strings.TrimPrefix(b.String(), "T\nhere\n\n")
}

func TestTreeDrawsBranches(t *testing.T) {
	leaf := func(id string) *engine.Step {
		return &engine.Step{ID: id, Label: strings.ToUpper(id), Shown: "1 gal", Drawn: "a guess"}
	}
	again := leaf("a")
	again.Again = true
	got := drawnTree(&engine.Step{ID: "top", Label: "Top", Shown: "2 gal", Formula: "b + c", Worked: "1 gal + 1 gal", Uses: []*engine.Step{
		{ID: "b", Label: "B", Shown: "1 gal", Formula: "a", Worked: "1 gal", Uses: []*engine.Step{leaf("a")}},
		{ID: "c", Label: "C", Shown: "1 gal", Formula: "a + a", More: true},
		again,
	}})
	assert.Equal(t, `
Top (top)                                                                  2 gal
│ b + c
│ = 1 gal + 1 gal
├╴B (b)                                                                    1 gal
│ │ a
│ ╰╴A (a)                                                                  1 gal
│     a guess
├╴C (c)                                                                    1 gal
│   a + a
│   worked from lines further down: give a greater --depth
╰╴A (a)                                                             1 gal, above
`[1:], got)
}

// A tree too deep for the width goes on at the margin, and nothing is lost.
func TestTreeTooDeepGoesOnBelow(t *testing.T) {
	top := &engine.Step{ID: "line", Label: "The last of them", Shown: "1 gal"}
	for range 40 {
		top = &engine.Step{ID: "line", Label: "Line with a label that takes some room to write out", Shown: "1 gal", Formula: "line + line", Uses: []*engine.Step{top}}
	}
	got := drawnTree(top)
	n, line := widest(got)
	assert.LessOrEqual(t, n, width, line)
	assert.Equal(t, 2, strings.Count(got, "goes on below"))
	assert.Contains(t, got, "The last of them")
	assert.Equal(t, 40+2, strings.Count(got, "line + line"), "one for each, and again where it goes on")
}

func TestTreeWritesLongValuesOnTheirOwn(t *testing.T) {
	got := drawnTree(&engine.Step{ID: "fuel", Label: strings.Repeat("Fuel ", 14), Shown: strings.Repeat("wood", 12)})
	n, line := widest(got)
	assert.LessOrEqual(t, n, width, line)
	assert.Contains(t, got, strings.Repeat("wood", 12))
}

func TestTreeCannotBeRecoloured(t *testing.T) {
	got := drawnTree(&engine.Step{ID: "a", Label: "A\x1b[31m", Shown: "x\x1b[0m\ny", Formula: "1\x07", Note: "n\x1b"})
	assert.NotContains(t, got, "\x1b")
	assert.NotContains(t, got, "\x07")
}

func TestSideWords(t *testing.T) {
	assert.Equal(t, "a > b holds, 2 > 1: takes x", sideWords(engine.StepSide{Condition: "a > b", Worked: "2 > 1", Holds: true, Took: "x"}))
	assert.Equal(t, "2 > 3 does not hold: takes 0", sideWords(engine.StepSide{Condition: "2 > 3", Worked: "2 > 3", Took: "0"}))
}
