package sheet

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

// scenario resolves the first of some files, named by their place.
func scenario(t *testing.T, texts map[string]string, name string) (*Sheet, diag.List) {
	t.Helper()
	d, told := Parse(name, []byte(texts[name]))
	require.NotNil(t, d, "%v", told)
	require.Empty(t, told)
	return Resolve(d, files(texts))
}

func TestScenarioChanges(t *testing.T) {
	s, told := scenario(t, map[string]string{"base.yaml": base, "dry.yaml": `thawbook: 1
from: base.yaml
title: Dry
seasons: 50
change:
  taps: {guess: {low: 1, likely: 2, high: 3}, note: Fewer}
  fuel: gas
  fuels.wood.heat: {formula: 1 + 1}
  fuels.twice: {formula: heat * 3, label: Thrice}
  fuels.gas: {label: Propane, caution: Outdoors.}
  fuels: {note: What burns}
`}, "dry.yaml")
	require.Empty(t, told)
	assert.Equal(t, []any{"dry.yaml", "base.yaml", "Dry", 50, uint64(1)}, []any{s.File, s.From, s.Title, s.Seasons, s.Seed})
	taps := s.Find("taps")
	assert.Equal(t, []any{Guess, 2.0, 0.0, "tap", "Fewer", true}, []any{taps.Kind, taps.Likely, taps.Is, taps.Unit, taps.Note, taps.Changed})
	assert.Equal(t, "dry.yaml", taps.At("guess").File)
	assert.Equal(t, "base.yaml", taps.At("unit").File)
	assert.Equal(t, taps.Place, taps.At("is"), "what the change replaced stands nowhere")
	assert.Equal(t, "gas", s.Find("fuel").Choose)
	assert.Len(t, s.Find("fuel").Among, 2)
	assert.Equal(t, []any{Formula, "1 + 1"}, []any{s.Find("fuels.wood.heat").Kind, s.Find("fuels.wood.heat").Formula})
	assert.Equal(t, []any{"heat * 3", "Propane, thrice", "dry.yaml"}, []any{s.Find("fuels.gas.twice").Formula, s.Find("fuels.gas.twice").Label, s.Find("fuels.gas.twice").At("formula").File})
	assert.Equal(t, "Outdoors.", s.Table("fuels").Rows[1].Caution)
	assert.Equal(t, "What burns", s.Table("fuels").Note)
	assert.False(t, s.Find("fuels.gas.heat").Changed)
}

func TestScenarioLeavesItsBaseAlone(t *testing.T) {
	texts := map[string]string{"base.yaml": base, "dry.yaml": "thawbook: 1\nfrom: base.yaml\nchange: {taps: 3, fuels.wood.heat: 9}\n"}
	d, _ := Parse("dry.yaml", []byte(texts["dry.yaml"]))
	for range 2 {
		s, told := Resolve(d, files(texts))
		require.Empty(t, told)
		assert.Equal(t, 3.0, s.Find("taps").Is)
	}
	own, told := scenario(t, texts, "base.yaml")
	require.Empty(t, told)
	assert.Equal(t, 140.0, own.Find("taps").Is)
	assert.Equal(t, 1.0, own.Find("fuels.wood.heat").Is)
}

func TestScenarioAddsAndDrops(t *testing.T) {
	s, told := scenario(t, map[string]string{"base.yaml": base, "dry.yaml": `thawbook: 1
from: base.yaml
drop: [taps, fuels.wood, fuel]
add:
  - title: Sap
    lines:
      - {id: taps, formula: trees * 2, unit: tap}
      - {id: trees, is: 70, unit: tree}
    tables:
      - id: fuels
        columns:
          - {id: smoke, formula: heat / 2, unit: BTU/unit}
        rows:
          - {id: oil, heat: 3}
  - title: New
    lines: [{id: fuel, choose: oil, among: fuels}]
`}, "dry.yaml")
	require.Empty(t, told)
	require.Len(t, s.Chapters, 2)
	var ids []string
	for _, l := range s.All() {
		ids = append(ids, l.ID)
	}
	assert.Equal(t, []string{"taps", "trees", "fuels.gas.heat", "fuels.gas.twice", "fuels.gas.smoke", "fuels.oil.heat", "fuels.oil.twice", "fuels.oil.smoke", "fuel"}, ids)
	assert.Equal(t, Formula, s.Find("taps").Kind)
	assert.True(t, s.Find("trees").Changed)
	assert.True(t, s.Find("fuels.oil.heat").Changed)
	assert.False(t, s.Find("fuels.gas.heat").Changed)
}

func TestScenarioOfAScenario(t *testing.T) {
	s, told := scenario(t, map[string]string{
		"plans/base.yaml":     base,
		"plans/dry.yaml":      "thawbook: 1\nfrom: base.yaml\ntitle: Dry\nseed: 7\nchange: {taps: 100, fuels.wood.heat: 5}\n",
		"plans/dry/cold.yaml": "thawbook: 1\nfrom: ../dry.yaml\nchange: {taps: {note: Cold}}\n",
	}, "plans/dry/cold.yaml")
	require.Empty(t, told)
	assert.Equal(t, []any{"Dry", uint64(7), 100.0, "Cold", true}, []any{s.Title, s.Seed, s.Find("taps").Is, s.Find("taps").Note, s.Find("taps").Changed})
	assert.Equal(t, 5.0, s.Find("fuels.wood.heat").Is)
	assert.False(t, s.Find("fuels.wood.heat").Changed, "another scenario changed it")
	assert.Equal(t, "plans/dry.yaml", s.Find("taps").At("is").File)
}

func TestChainIsCapped(t *testing.T) {
	texts := map[string]string{"0.yaml": base}
	for i := 1; i <= MaxChain+1; i++ {
		texts[fmt.Sprintf("%d.yaml", i)] = fmt.Sprintf("thawbook: 1\nfrom: %d.yaml\n", i-1)
	}
	_, told := scenario(t, texts, fmt.Sprintf("%d.yaml", MaxChain))
	assert.Empty(t, told)
	_, told = scenario(t, texts, fmt.Sprintf("%d.yaml", MaxChain+1))
	require.Len(t, told, 1)
	assert.Equal(t, diag.TooMany, told[0].Code)
}

func TestCircleNamesItsFiles(t *testing.T) {
	s, told := scenario(t, map[string]string{
		"a.yaml": "thawbook: 1\nfrom: b.yaml\n", "b.yaml": "thawbook: 1\nfrom: ./a.yaml\n",
	}, "a.yaml")
	require.NotNil(t, s)
	require.Len(t, told, 1)
	assert.Equal(t, diag.FromCircle, told[0].Code)
	assert.Equal(t, "the sheets are taken from each other: a.yaml, b.yaml, a.yaml", told[0].Message)
}

func TestMissingBaseIsToldOnce(t *testing.T) {
	s, told := scenario(t, map[string]string{"a.yaml": "thawbook: 1\nfrom: gone.yaml\nchange: {taps: 3}\ndrop: [fuel]\nadd:\n  - title: A\n    lines: [{id: x, is: 1, unit: 1}]\n"}, "a.yaml")
	require.Len(t, told, 1)
	assert.Equal(t, diag.FromMissing, told[0].Code)
	assert.NotNil(t, s.Find("x"), "what it has of its own is there to show")
}

func TestMistakesOfTheBaseAreTold(t *testing.T) {
	_, told := scenario(t, map[string]string{"a.yaml": "thawbook: 1\nfrom: b.yaml\n", "b.yaml": "thawbook: 1\nchapters: [{title: A, lines: [{id: x, is: 1, unit: 1, nots: x}]}]\n"}, "a.yaml")
	require.Len(t, told, 1)
	assert.Equal(t, "b.yaml", told[0].Place.File)
	_, told = scenario(t, map[string]string{"a.yaml": "thawbook: 1\nfrom: b.yaml\n", "b.yaml": "thawbook: [\n"}, "a.yaml")
	require.Len(t, told, 2)
	assert.Equal(t, []diag.Code{diag.FromMissing, diag.YAMLSyntax}, []diag.Code{told[0].Code, told[1].Code})
}

// A guess that a scenario fixes at one number must not stop those that move with it.
func TestCompanyThatIsFixed(t *testing.T) {
	texts := map[string]string{"base.yaml": `thawbook: 1
chapters:
  - title: A
    lines:
      - {id: sap, guess: {low: 1, likely: 2, high: 3}, unit: gal, shape: pert, floor: 0}
      - {id: sugar, guess: {low: 1, likely: 2, high: 3}, unit: °Bx, moves_with: {sap: -0.3}}
`,
		"is.yaml":      "thawbook: 1\nfrom: base.yaml\nchange: {sap: 2}\n",
		"formula.yaml": "thawbook: 1\nfrom: base.yaml\nchange: {sap: {formula: 1 + 1}}\n",
		"again.yaml":   "thawbook: 1\nfrom: is.yaml\nchange: {sap: {guess: {low: 1, likely: 2, high: 4}}}\n",
	}
	for name, company := range map[string]int{"base.yaml": 1, "is.yaml": 0, "formula.yaml": 0, "again.yaml": 1} {
		s, told := scenario(t, texts, name)
		assert.Empty(t, told, name)
		assert.Len(t, s.Find("sugar").MovesWith, company, name)
	}
	s, _ := scenario(t, texts, "again.yaml")
	assert.Equal(t, "pert", s.Find("sap").Shape, "the shape is there when the line is a guess again")
}

func TestChangeMakesAChoiceOfALine(t *testing.T) {
	s, told := scenario(t, map[string]string{"base.yaml": base, "a.yaml": `thawbook: 1
from: base.yaml
change:
  taps: {choose: few, among: [few, many]}
  fuel: {is: 3, unit: cord}
`}, "a.yaml")
	require.Empty(t, told)
	assert.Equal(t, []any{Choose, "few", ""}, []any{s.Find("taps").Kind, s.Find("taps").Choose, s.Find("taps").Unit})
	assert.Equal(t, []any{Is, 3.0, "cord", ""}, []any{s.Find("fuel").Kind, s.Find("fuel").Is, s.Find("fuel").Unit, s.Find("fuel").AmongTable})
}

func TestDoubtfulUnitIsAWarning(t *testing.T) {
	d, told := Parse("x.yaml", []byte("thawbook: 1\nchapters: [{title: A, lines: [{id: x, is: 1, unit: galon}]}]\n"))
	require.Empty(t, told)
	_, told = Resolve(d, nil)
	require.Len(t, told, 1)
	assert.Equal(t, []any{diag.UnknownUnit, diag.Warning, 0}, []any{told[0].Code, told[0].Severity, told.Errors()})
}

func TestChangeOfEveryKey(t *testing.T) {
	s, told := scenario(t, map[string]string{"base.yaml": base, "a.yaml": `thawbook: 1
from: base.yaml
change:
  taps:
    guess: {low: 1, likely: 2, high: 3}
    label: Taps
    unit: bucket
    note: n
    source: s
    caution: c
    floor: 0
    ceiling: 9
    shape: pert
    moves_with: {more: 0.5}
    headline: {better: less, goal: {at_most: 8}}
    lay_in: {round: 5}
  fuel: {choose: a, among: [a, b]}
  fuels: {label: Fire}
  fuels.gas: {note: n, source: s}
  fuels.heat: {unit: MJ/unit, note: n}
add:
  - title: Sap
    lines: [{id: more, records: [1, 2], unit: 1}]
`}, "a.yaml")
	require.Empty(t, told)
	l := *s.Find("taps")
	l.Place, l.Places = diag.Place{}, nil
	assert.Equal(t, Line{ID: "taps", Label: "Taps", Unit: "bucket", Note: "n", Source: "s", Caution: "c", Kind: Guess, Low: 1, Likely: 2, High: 3,
		Floor: number(0), Ceiling: number(9), Shape: "pert", MovesWith: []Moves{{"more", 0.5}},
		Headline: &Headline{Better: "less", Goal: &Goal{AtMost: number(8)}}, LayIn: &LayIn{Round: 5}, Changed: true}, l)
	assert.Equal(t, []Name{{"a", "A"}, {"b", "B"}}, s.Find("fuel").Among)
	assert.Equal(t, []string{"Fire", "n", "s"}, []string{s.Table("fuels").Label, s.Table("fuels").Rows[1].Note, s.Table("fuels").Rows[1].Source})
	assert.Equal(t, "MJ/unit", s.Find("fuels.wood.heat").Unit)
}
