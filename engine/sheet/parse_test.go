package sheet

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

// resolved is a sheet of its own that has no mistakes.
func resolved(t *testing.T, source string) *Sheet {
	t.Helper()
	d, told := Parse("plans/plan.yaml", []byte(source))
	require.Empty(t, told)
	s, told := Resolve(d, nil)
	require.Empty(t, told)
	return s
}

const full = `thawbook: 1
title: Heron Ridge
about: Two people.
money: CAD
elevation: {is: 900, unit: ft}
seasons: 500
seed: 41
chapters:
  - title: Trees and sap
    note: What the woods give.
    lines:
      - {id: taps, label: Taps hung, is: 140, unit: tap}
      - id: sap_per_tap
        guess: {low: 5, likely: 9, high: 14}
        unit: gal/tap
        shape: lognormal
        floor: 0
        ceiling: 30.5
        moves_with: {sugar: -0.3}
        note: Buckets.
        source: our log
        caution: Mind the ice.
      - {id: sugar, records: [1.6, 2, 2.5e0], unit: °Bx}
      - {id: sap, formula: taps * sap_per_tap, unit: gal, headline: {better: more, goal: {at_least: 900}}}
      - {id: fuel, choose: propane, among: fuels}
      - {id: filter, choose: wool, among: [{id: wool, label: Wool cone}, paper]}
      - {id: jars, is: 12, unit: jar, lay_in: {unit: box, round: 12, on_hand: 1, price: fuels.propane.price}, headline: true}
      - {id: even, guess: {low: 2, high: 4}, shape: even, unit: 1, lay_in: true}
    tables:
      - id: fuels
        label: What could be burned
        columns:
          - {id: heat, label: Heat in one, unit: BTU/unit}
          - {id: price, label: BTU price, unit: $/unit, note: Delivered.}
          - {id: dear, label: Price of a million BTU, formula: price / heat, unit: $/MMBTU}
        rows:
          - {id: pallets, label: Old pallets, heat: {guess: {low: 1, likely: 2, high: 3}, source: weighed}, price: 0, dear: 0.5}
          - {id: propane, label: Propane, caution: Outdoors., heat: 91452, price: {formula: 2 * 1.5}}
`

func TestEveryKeyIsRead(t *testing.T) {
	s := resolved(t, full)
	assert.Equal(t, []any{"plans/plan.yaml", "", "Heron Ridge", "Two people.", "CAD", 500, uint64(41)},
		[]any{s.File, s.From, s.Title, s.About, s.Money, s.Seasons, s.Seed})
	require.Len(t, s.Chapters, 2)
	assert.Equal(t, "The place", s.Chapters[0].Title)
	assert.Equal(t, "What the woods give.", s.Chapters[1].Note)

	height := s.Find("elevation")
	assert.Equal(t, []any{"Elevation", Is, 900.0, "ft"}, []any{height.Label, height.Kind, height.Is, height.Unit})
	sap := s.Find("sap_per_tap")
	assert.Equal(t, []any{Guess, 5.0, 9.0, 14.0, "lognormal", 0.0, 30.5}, []any{sap.Kind, sap.Low, sap.Likely, sap.High, sap.Shape, *sap.Floor, *sap.Ceiling})
	assert.Equal(t, []any{"Sap per tap", "Buckets.", "our log", "Mind the ice."}, []any{sap.Label, sap.Note, sap.Source, sap.Caution})
	assert.Equal(t, []Moves{{"sugar", -0.3}}, sap.MovesWith)
	assert.Equal(t, []float64{1.6, 2, 2.5}, s.Find("sugar").Records)
	assert.Equal(t, &Headline{Better: "more", Goal: &Goal{AtLeast: number(900)}}, s.Find("sap").Headline)
	assert.Equal(t, &Headline{}, s.Find("jars").Headline)
	assert.Equal(t, &LayIn{Unit: "box", Round: 12, OnHand: number(1), Price: "fuels.propane.price"}, s.Find("jars").LayIn)
	assert.Equal(t, &LayIn{Round: 1}, s.Find("even").LayIn)
	assert.Equal(t, 3.0, s.Find("even").Likely, "the middle of an even guess")
	assert.Equal(t, []Name{{"pallets", "Old pallets"}, {"propane", "Propane"}}, s.Find("fuel").Among)
	assert.Equal(t, []Name{{"wool", "Wool cone"}, {"paper", "Paper"}}, s.Find("filter").Among)
	assert.Equal(t, "wool", s.Find("filter").Choose)
}

func TestCells(t *testing.T) {
	s := resolved(t, full)
	table := s.Table("fuels")
	require.Len(t, table.Rows, 2)
	assert.Equal(t, "Delivered.", table.Columns[1].Note)
	assert.Equal(t, "Outdoors.", table.Rows[1].Caution)
	dear := s.Find("fuels.propane.dear")
	assert.Equal(t, table.Rows[1].Cells[2], dear)
	assert.Equal(t, []any{Formula, "price / heat", "$/MMBTU", "Propane, price of a million BTU"}, []any{dear.Kind, dear.Formula, dear.Unit, dear.Label})
	assert.Equal(t, []any{"fuels", "propane", "dear"}, []any{dear.Table, dear.Row, dear.Column})
	assert.Equal(t, table.Columns[2].Places["formula"], dear.At("formula"), "a column's formula stands with the column")
	own := s.Find("fuels.pallets.dear")
	assert.Equal(t, []any{Is, 0.5, ""}, []any{own.Kind, own.Is, own.Formula}, "a row's own number goes before its column's formula")
	assert.Equal(t, "Old pallets, BTU price", s.Find("fuels.pallets.price").Label)
	assert.Equal(t, "2 * 1.5", s.Find("fuels.propane.price").Formula)
	assert.Equal(t, "weighed", s.Find("fuels.pallets.heat").Source)
}

func TestAllIsInOrder(t *testing.T) {
	var ids []string
	for _, l := range resolved(t, full).All() {
		ids = append(ids, l.ID)
	}
	assert.Equal(t, []string{"elevation", "taps", "sap_per_tap", "sugar", "sap", "fuel", "filter", "jars", "even",
		"fuels.pallets.heat", "fuels.pallets.price", "fuels.pallets.dear", "fuels.propane.heat", "fuels.propane.price", "fuels.propane.dear"}, ids)
}

func TestDefaults(t *testing.T) {
	s := resolved(t, "thawbook: 1\nchapters:\n")
	assert.Equal(t, []any{"plan", "USD", DefaultSeasons, uint64(DefaultSeed)}, []any{s.Title, s.Money, s.Seasons, s.Seed})
	assert.Empty(t, s.All())
	assert.Nil(t, s.Find("taps"))
	assert.Nil(t, s.Table("fuels"))
}

func TestPlaces(t *testing.T) {
	s := resolved(t, full)
	lines := strings.Split(full, "\n")
	for _, tt := range []struct{ id, key, text string }{
		{"taps", "is", "140, unit"}, {"taps", "unit", "tap}"}, {"taps", "note", "{id: taps"},
		{"sap_per_tap", "guess", "{low: 5"}, {"sap_per_tap", "guess.likely", "9, high"}, {"sap_per_tap", "shape", "lognormal"},
		{"sap", "formula", "taps * sap"}, {"fuels.propane.price", "formula", "2 * 1.5"}, {"fuels.propane.heat", "is", "91452"},
		{"fuels.propane.heat", "unit", "BTU/unit"}, {"elevation", "is", "900, unit"},
	} {
		at := s.Find(tt.id).At(tt.key)
		require.Positive(t, at.Line, tt.id)
		assert.True(t, strings.HasPrefix(string([]rune(lines[at.Line-1])[at.Column-1:]), tt.text), "%s %s at %s", tt.id, tt.key, at)
		assert.Equal(t, "plans/plan.yaml", at.File)
	}
}

// What was read is never written anew, so what comes out is what went in.
func TestUnchangedIsByteForByte(t *testing.T) {
	paths, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	broken, err := filepath.Glob(filepath.Join(brokenFiles, "*.yaml"))
	require.NoError(t, err)
	for _, path := range append(paths, broken...) {
		source, err := os.ReadFile(path)
		require.NoError(t, err)
		if d, _ := Parse(path, source); d != nil {
			assert.Equal(t, string(source), string(d.Source()), path)
		}
	}
	for _, text := range []string{"thawbook: 1\r\nchapters: []\r\n", "\uFEFFthawbook: 1\nchapters: []", "# x\n\n\nthawbook:   1 # y\nchapters:\n\n\n"} {
		d, told := Parse("x.yaml", []byte(text))
		require.Empty(t, told)
		assert.Equal(t, text, string(d.Source()))
	}
}

func TestEveryMistakeIsToldAtOnce(t *testing.T) {
	d, told := Parse("x.yaml", []byte("thawbook: 1\nseasons: many\nchapters:\n  - title: A\n    lines:\n      - {id: Taps, is: x, uni: tap}\n      - {id: b, is: 1, guess: 3, unit: tap}\n"))
	require.NotNil(t, d)
	var codes []diag.Code
	for _, one := range told {
		codes = append(codes, one.Code)
	}
	assert.Equal(t, []diag.Code{diag.WrongKind, diag.BadID, diag.WrongKind, diag.UnknownKey, diag.SeveralKinds}, codes)
	assert.Equal(t, told, d.Diagnostics())
}

func TestHintsOfNumbers(t *testing.T) {
	for text, hint := range map[string]string{
		`"140"`: "write it without quotes: 140",
		"1,400": "write it without marks between thousands: 1400",
		"1_400": "write it without marks between thousands: 1400",
		"9 gal": "write a plain decimal number; the unit goes under unit",
		"$5.50": "write a plain decimal number; the unit goes under unit",
		"many":  "write a plain decimal number like 140 or 2.5",
		"":      "write a number like 140 or 2.5",
	} {
		_, told := Parse("x.yaml", []byte("thawbook: 1\nchapters:\n  - title: A\n    lines:\n      - id: a\n        unit: 1\n        is: "+text+"\n"))
		require.Len(t, told, 1, text)
		assert.Equal(t, hint, told[0].Hint, text)
	}
}

func TestNumbersAreReadWhole(t *testing.T) {
	for text, want := range map[string]float64{"1": 1, "-1.5": -1.5, "+2": 2, ".5": .5, "3.": 3, "1e3": 1000, "1.5E-2": .015, "0": 0, "0.1": .1} {
		s := resolved(t, "thawbook: 1\nchapters:\n  - title: A\n    lines:\n      - {id: a, unit: 1, is: "+text+"}\n")
		assert.Equal(t, want, s.Find("a").Is, text)
	}
}

func TestCaps(t *testing.T) {
	lines := func(n int) string {
		return "thawbook: 1\nchapters:\n  - title: A\n    lines:\n" + strings.Repeat("      - {id: a, is: 1, unit: 1}\n", n)
	}
	_, told := Parse("x.yaml", []byte(lines(MaxLines+5)))
	require.Len(t, told, 1)
	assert.Equal(t, diag.TooMany, told[0].Code)
	assert.Equal(t, MaxLines+5, told[0].Place.Line)

	_, told = Parse("x.yaml", []byte("thawbook: 1\nchapters:\n  - title: A\n    lines:\n      - {id: a, unit: 1, records: ["+strings.Repeat("1,", MaxRecords+1)+"]}\n"))
	require.Len(t, told, 1)
	assert.Equal(t, diag.TooMany, told[0].Code)

	// Columns with formulas times rows: a small file that asks for 9 million cells.
	var b strings.Builder
	b.WriteString("thawbook: 1\nchapters:\n  - title: A\n    tables:\n      - id: t\n        columns:\n")
	for i := range 3000 {
		b.WriteString("          - {id: c" + FormatNumber(float64(i)) + ", formula: 1 + 1, unit: 1}\n")
	}
	b.WriteString("        rows:\n")
	for i := range 3000 {
		b.WriteString("          - {id: r" + FormatNumber(float64(i)) + "}\n")
	}
	d, told := Parse("x.yaml", []byte(b.String()))
	require.Empty(t, told)
	s, told := Resolve(d, nil)
	require.Len(t, told, 1)
	assert.Equal(t, diag.TooMany, told[0].Code)
	assert.Empty(t, s.All())
}

func TestAskedForTooMuchIsNotRepeated(t *testing.T) {
	_, told := Parse("x.yaml", []byte("thawbook: 1\nchapters:\n"+strings.Repeat("  - 1\n", 5000)))
	assert.Len(t, told, maxTold)
}

func TestFormatNumber(t *testing.T) {
	for x, want := range map[float64]string{140: "140", 0.1: "0.1", -2.5: "-2.5", 1e6: "1000000", 123456789012: "123456789012",
		1e21: "1e+21", 1e-9: "1e-09", 0: "0", 1.0 / 3: "0.3333333333333333", 0.000015: "0.000015"} {
		assert.Equal(t, want, FormatNumber(x))
	}
	negativeZero := 0.0
	assert.Equal(t, "0", FormatNumber(-negativeZero))
}

func TestHintsOfIDs(t *testing.T) {
	for id, want := range map[string]string{"Taps Hung": "taps_hung", "2nd pan": "nd_pan", "Érable": "rable", "%": "my_line", "sap-per-tap!": "sap_per_tap"} {
		assert.Equal(t, want, idFrom(id))
		fault, hint := idFault(id)
		assert.Equal(t, "is not an id", fault)
		assert.Contains(t, hint, want)
	}
	fault, _ := idFault(strings.Repeat("a", maxID+1))
	assert.Equal(t, "is too long an id", fault)
}

func TestHandMadeSheetsAreSearchedToo(t *testing.T) {
	l := &Line{ID: "x"}
	s := &Sheet{Chapters: []Chapter{{Lines: []*Line{l}}}}
	assert.Same(t, l, s.Find("x"))
	assert.Nil(t, s.Find("y"))
}

// The YAML library's own words do not reach anyone.
func TestYAMLFaultsAreInOurWords(t *testing.T) {
	for _, text := range []string{"a: \"\\q\"\n", "a:\n b\nc\n", "a: [1\nb: 2]: 3]\n", "? [a\n", "a: \"\\uD800\"\n", "{a: b}: c: d\n", "- a\nb: c\n", "a: |x\n  b\n", "a: |0\n b\n"} {
		_, told := Parse("x.yaml", []byte(text))
		require.Len(t, told, 1, text)
		assert.NotEmpty(t, told[0].Hint, text)
		for _, word := range []string{"yaml:", "scanning", "token", "expected", "mapping values", "stream"} {
			assert.NotContains(t, told[0].Message, word, text)
		}
	}
}
