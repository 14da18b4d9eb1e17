package engine

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

const explainSheet = `thawbook: 1
title: To explain
seasons: 2000
seed: 3
chapters:
  - title: Trees
    lines:
      - {id: taps, label: Taps hung, is: 10, unit: tap, note: One to a tree., source: our own count}
      - {id: each, label: Sap a tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0}
      - {id: lost, label: Sap lost, is: 5, unit: "%"}
      - {id: sap, label: Sap gathered, formula: taps * each, unit: gal, headline: {better: more}}
      - {id: kept, label: Sap kept, formula: sap * (1 - lost), unit: gal}
      - {id: evenings, label: Evenings, records: [9, 14, 11], unit: evening}
      - {id: store, label: Store, is: 200, unit: L}
      - {id: over, label: Over the store, formula: "kept > store ? kept - store : 0", unit: gal, headline: true}
      - {id: quarts, label: In quarts, formula: kept, unit: qt}
  - title: Fire
    lines:
      - {id: fuel, label: What burns, choose: wood, among: fuels}
      - {id: cost, label: Cost, formula: "kept * fuels[fuel].price + kept * fuels[fuel].dear", unit: $, headline: {better: less}}
      - {id: bad, label: Bad one, formula: kept + taps, unit: gal}
      - {id: waits, label: Waits, formula: bad * 2, unit: gal}
    tables:
      - id: fuels
        label: Fuels
        columns:
          - {id: price, label: Price, unit: $/gal}
          - {id: dear, label: Dearer, unit: $/gal, formula: price * 2}
        rows:
          - {id: wood, label: Split wood, price: 0.5, source: the woodlot}
          - {id: gas, label: Bottled gas, price: {guess: {low: 1, likely: 2, high: 3}}}
`

func toExplain(t testing.TB) *Book {
	book, list := Open("x.yaml", texts(map[string]string{"x.yaml": explainSheet}))
	require.Equal(t, 2, list.Errors(), "bad, and what waits for it")
	return book
}

func explained(t testing.TB, b *Book, id string, o ExplainOptions) *Explanation {
	e, err := b.Explain(id, o)
	require.NoError(t, err, id)
	return e
}

func setIs(id string, x float64) sheet.Edit {
	return sheet.Edit{About: id, Set: sheet.Set{Is: &x}}
}

// steps lists a tree's steps, parents first.
func steps(s *Step) []*Step {
	out := []*Step{s}
	for _, use := range s.Uses {
		out = append(out, steps(use)...)
	}
	return out
}

func TestExplainAtTheLikelyNumbers(t *testing.T) {
	e := explained(t, toExplain(t), "kept", ExplainOptions{})
	assert.Equal(t, "likely", e.At)
	assert.Equal(t, "at the likely numbers", e.Where)
	assert.Nil(t, e.Season)
	kept := e.Tree
	assert.InDelta(t, 85.5, *kept.Value, 1e-12)
	assert.Equal(t, "85.5 gal", kept.Shown)
	assert.Equal(t, "sap * (1 - lost)", kept.Formula)
	assert.Equal(t, "90 gal × (1 − 5 %)", kept.Worked)
	require.Len(t, kept.Uses, 2)
	sap, lost := kept.Uses[0], kept.Uses[1]
	assert.Equal(t, "10 taps × 9 gal/tap", sap.Worked)
	assert.Equal(t, "5 %", lost.Shown)
	assert.Equal(t, "One to a tree.", sap.Uses[0].Note)
	assert.Equal(t, "our own count", sap.Uses[0].Source)
	assert.Equal(t, "a guess: low 5, likely 9, high 14 gal/tap", sap.Uses[1].Drawn)
}

func TestExplainShowsConversionsAndSides(t *testing.T) {
	b := toExplain(t)
	quarts := explained(t, b, "quarts", ExplainOptions{}).Tree
	assert.Equal(t, "85.5 gal", quarts.Worked)
	assert.Equal(t, []StepConversion{{From: "gal", To: "qt", Factor: 4, Shown: "gal to qt: × 4"}}, quarts.Conversions)

	over := explained(t, b, "over", ExplainOptions{}).Tree
	assert.Equal(t, "85.5 gal − (200 L = 52.8 gal)", over.Worked)
	require.Len(t, over.Sides, 1)
	assert.Equal(t, StepSide{Condition: "kept > store", Worked: "85.5 gal > (200 L = 52.8 gal)", Holds: true, Took: "kept - store"}, over.Sides[0])
	require.Len(t, over.Conversions, 1)
	// A US gallon is 231 cubic inches, so a litre is 0.2641720524 of one.
	assert.InEpsilon(t, 0.2641720524, over.Conversions[0].Factor, 1e-9)

	small, list := b.Try(setIs("each", 1))
	require.Empty(t, list)
	over = explained(t, small, "over", ExplainOptions{}).Tree
	assert.False(t, over.Sides[0].Holds)
	assert.Equal(t, "0", over.Sides[0].Took)
	assert.Equal(t, "0 gal", over.Worked)
	assert.Equal(t, []string{"kept", "store"}, []string{over.Uses[0].ID, over.Uses[1].ID}, "the condition was looked at")
}

func TestExplainFollowsTheChoice(t *testing.T) {
	cost := explained(t, toExplain(t), "cost", ExplainOptions{}).Tree
	assert.Equal(t, "85.5 gal × $0.50/gal + 85.5 gal × $1.00/gal", cost.Worked)
	var ids []string
	for _, use := range cost.Uses {
		ids = append(ids, use.ID)
	}
	assert.Equal(t, []string{"kept", "fuel", "fuels.wood.price", "fuels.wood.dear"}, ids, "the gas is not burnt")
	assert.Equal(t, "Split wood", cost.Uses[1].Shown)
	assert.Nil(t, cost.Uses[1].Value)
	assert.Equal(t, "chosen among 2", cost.Uses[1].Drawn)
	assert.Equal(t, &StepRow{Label: "Split wood", Source: "the woodlot"}, cost.Uses[2].Row)
	assert.Nil(t, cost.Uses[3].Row, "a row is told of once")
	assert.True(t, cost.Uses[3].Uses[0].Again)
}

func TestExplainInASeason(t *testing.T) {
	b := toExplain(t)
	reckoned(t, b, Options{})
	sap, err := b.Column("sap")
	require.NoError(t, err)
	for name, want := range map[string]float64{"middle": 90, "bad": 50, "low": 50, "good": 140, "high": 140} {
		e := explained(t, b, "sap", ExplainOptions{Season: name})
		require.NotNil(t, e.Season, name)
		assert.InDelta(t, sap[*e.Season-1], *e.Tree.Value, 0, name)
		assert.InDelta(t, want, *e.Tree.Value, 0.5, name)
	}
	cost := explained(t, b, "cost", ExplainOptions{Season: "bad"})
	assert.Contains(t, cost.Where, "nearest the 1-in-10 high", "less is better")
	numbered := explained(t, b, "sap", ExplainOptions{Season: "17"})
	assert.Equal(t, 17, *numbered.Season)
	assert.Equal(t, "in season 17 of 2,000", numbered.Where)
	assert.InDelta(t, sap[16], *numbered.Tree.Value, 0)
	assert.Contains(t, explained(t, b, "sap", ExplainOptions{Season: "low"}).Tree.Uses[1].Drawn, "; 1 season of 10 is lower")
	assert.Contains(t, explained(t, b, "taps", ExplainOptions{Season: "middle"}).Where, "the same in all others")
}

func TestExplainRefusesBadQuestions(t *testing.T) {
	b := toExplain(t)
	for name, test := range map[string]struct {
		id, season string
		code       diag.Code
		hint       string
	}{
		"no such line":    {"sapp", "", diag.UnknownName, `did you mean "sap"?`},
		"a table":         {"fuels", "", diag.UnknownName, "name one cell of the table: fuels.wood.dear"},
		"a broken line":   {"bad", "", diag.UnitMismatch, ""},
		"one that waits":  {"waits", "", diag.WaitsFor, ""},
		"no such season":  {"sap", "2001", diag.BadQuestion, "name one from 1 to 2000"},
		"season nothing":  {"sap", "0", diag.BadQuestion, "name one from 1 to 2000"},
		"a misspelt word": {"sap", "midle", diag.BadQuestion, `did you mean "middle"?`},
		"bad, not known":  {"over", "bad", diag.BadQuestion, "ask for low or high"},
		"a choice":        {"fuel", "middle", diag.BadQuestion, "name a season's number"},
	} {
		_, err := b.Explain(test.id, ExplainOptions{Season: test.season})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, test.code, d.Code, name)
		assert.Contains(t, d.Hint, test.hint, name)
	}
	_, err := b.Explain("sap", ExplainOptions{Season: "middle", Options: Options{Seasons: 200_000}})
	assert.ErrorContains(t, err, "so many")
	assert.Equal(t, "What burns", explained(t, b, "fuel", ExplainOptions{Season: "3"}).Tree.Label)
}

// A line cut off for its depth is told in full where it stands nearer the top.
func TestExplainToADepth(t *testing.T) {
	b := openText(t, `thawbook: 1
chapters:
  - title: All
    lines:
      - {id: a, label: A, is: 1, unit: 1}
      - {id: b, label: B, formula: a + 1, unit: 1}
      - {id: c, label: C, formula: b + 1, unit: 1}
      - {id: d, label: D, formula: c + b, unit: 1}
`)
	d := explained(t, b, "d", ExplainOptions{Depth: 1}).Tree
	assert.True(t, d.Uses[0].More)
	assert.Equal(t, "b + 1", d.Uses[0].Formula)
	assert.Empty(t, d.Uses[0].Uses)
	d = explained(t, b, "d", ExplainOptions{Depth: 2}).Tree
	assert.True(t, d.Uses[0].Uses[0].More, "b under c")
	assert.False(t, d.Uses[1].Again, "b under d")
	assert.Equal(t, "a", d.Uses[1].Uses[0].ID)
}

func TestExplainStopsInALongChain(t *testing.T) {
	var b strings.Builder
	b.WriteString("thawbook: 1\nchapters:\n  - title: All\n    lines:\n      - {id: l0, label: L, is: 1, unit: 1}\n")
	for i := range 1000 {
		fmt.Fprintf(&b, "      - {id: l%d, label: L, formula: l%d + 1, unit: 1}\n", i+1, i)
	}
	all := steps(explained(t, openText(t, b.String()), "l1000", ExplainOptions{}).Tree)
	require.Len(t, all, deepest+1)
	assert.True(t, all[deepest].More)
	assert.InDelta(t, 1001-deepest, *all[deepest].Value, 0)
}

// TestExplainEveryLine explains every line of every shipped sheet: each number is
// the run's own, each line is told in full once, and what is told in full and
// worked names all it was worked from.
func TestExplainEveryLine(t *testing.T) {
	files, err := filepath.Glob("../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		b := openShipped(t, filepath.Base(file))
		r := reckoned(t, b, Options{Seasons: 200})
		for _, line := range r.Lines {
			e := explained(t, b, line.ID, ExplainOptions{Season: "7", Options: Options{Seasons: 200}})
			told := map[string]int{}
			for _, s := range steps(e.Tree) {
				if s.Value != nil {
					column, err := b.Column(s.ID)
					require.NoError(t, err)
					require.LessOrEqual(t, math.Abs(column[6]-*s.Value), 0.0, "%s %s", file, s.ID)
				}
				if !s.Again {
					told[s.ID]++
				}
				if s.Kind == "formula" && !s.Again {
					require.NotEmpty(t, s.Worked, s.ID)
				}
				require.False(t, s.More, "no shipped sheet is that deep")
			}
			for id, n := range told {
				require.Equal(t, 1, n, "%s: %s is told in full once under %s", file, id, line.ID)
			}
			likely := explained(t, b, line.ID, ExplainOptions{}).Tree
			if line.AtLikely != nil {
				require.Equal(t, *line.AtLikely, *likely.Value, line.ID)
			}
		}
	}
}

func TestExplainInMetric(t *testing.T) {
	e := explained(t, toExplain(t), "over", ExplainOptions{Options: Options{System: units.Metric}}).Tree
	assert.Equal(t, "L", e.Unit)
	assert.Equal(t, "324 L − 200 L", e.Worked)
	assert.Empty(t, e.Conversions, "both are shown in litres")
}
