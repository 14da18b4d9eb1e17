package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func number(x float64) *float64 { return &x }
func text(s string) *string     { return &s }
func guess(low, likely, high float64) *GuessValue {
	return &GuessValue{Low: low, Likely: likely, High: high}
}

// edited makes an edit of a sheet of its own and gives the new text.
func edited(t *testing.T, source, about string, set Set) string {
	t.Helper()
	d, told := Parse("plan.yaml", []byte(source))
	require.NotNil(t, d, "%v", told)
	next, refused := d.Edit(Edit{About: about, Set: set}, nil)
	require.Empty(t, refused)
	assert.Equal(t, source, string(d.Source()), "the old document stays as it was")
	return string(next.Source())
}

func TestEditOfOneLine(t *testing.T) {
	const top = "thawbook: 1\nchapters:\n  - title: Sap\n    lines:\n"
	tests := []struct {
		name, before string
		set          Set
		after        string
	}{
		{"a number in braces",
			"      - {id: taps, label: Taps hung, is: 140, unit: tap} # buckets\n", Set{Is: number(150)},
			"      - {id: taps, label: Taps hung, is: 150, unit: tap} # buckets\n"},
		{"a number on a line of its own",
			"      - id: taps\n        is: 140   # buckets\n        unit: tap\n", Set{Is: number(150.5)},
			"      - id: taps\n        is: 150.5   # buckets\n        unit: tap\n"},
		{"a number it has already, written otherwise",
			"      - {id: taps, is: 1.40e2, unit: tap}\n", Set{Is: number(140)},
			"      - {id: taps, is: 1.40e2, unit: tap}\n"},
		{"a guess in braces, only what differs",
			"      - {id: taps, guess: {low: 5.0, likely: 9, high: 14}, unit: tap}\n", Set{Guess: guess(5, 9.5, 14)},
			"      - {id: taps, guess: {low: 5.0, likely: 9.5, high: 14}, unit: tap}\n"},
		{"a guess on lines of its own, comments kept",
			"      - id: taps\n        guess:\n          low: 5 # a bad spring\n          likely: 9\n          high: 14 # 2019\n        unit: tap\n", Set{Guess: guess(4, 9, 15)},
			"      - id: taps\n        guess:\n          low: 4 # a bad spring\n          likely: 9\n          high: 15 # 2019\n        unit: tap\n"},
		{"a number becomes a guess",
			"      - {id: taps, is: 140, unit: tap}\n", Set{Guess: guess(120, 140, 150)},
			"      - {id: taps, guess: {low: 120, likely: 140, high: 150}, unit: tap}\n"},
		{"a guess on lines of its own becomes a number",
			"      - id: taps\n        guess: # from the log\n          low: 5\n          likely: 9\n          high: 14\n\n        unit: tap\n", Set{Is: number(9)},
			"      - id: taps\n        is: 9 # from the log\n\n        unit: tap\n"},
		{"a number becomes a formula that needs quotes",
			"      - {id: taps, is: 140, unit: tap}\n", Set{Formula: text("a > 1 ? b : c")},
			"      - {id: taps, formula: \"a > 1 ? b : c\", unit: tap}\n"},
		{"a number becomes a formula that needs none",
			"      - {id: taps, is: 140, unit: tap}\n", Set{Formula: text("trees * 2")},
			"      - {id: taps, formula: trees * 2, unit: tap}\n"},
		{"a table look-up is safe on a line of its own",
			"      - id: taps\n        is: 140\n        unit: tap\n", Set{Formula: text("fuels[fuel].heat")},
			"      - id: taps\n        formula: fuels[fuel].heat\n        unit: tap\n"},
		{"records of the same number, one by one",
			"      - {id: taps, records: [1, 2.50, 3], unit: tap}\n", Set{Records: []float64{1, 2.5, 4}},
			"      - {id: taps, records: [1, 2.50, 4], unit: tap}\n"},
		{"records on lines of their own, one more",
			"      - id: taps\n        records: # five springs\n          - 1\n          - 2\n        unit: tap\n", Set{Records: []float64{1, 2, 3}},
			"      - id: taps\n        records: [1, 2, 3] # five springs\n        unit: tap\n"},
		{"a choice",
			"      - {id: taps, choose: wood, among: [wood, oil]}\n", Set{Choose: text("oil")},
			"      - {id: taps, choose: oil, among: [wood, oil]}\n"},
		{"a note that was not there, in braces",
			"      - {id: taps, is: 140, unit: tap,\n         floor: 0} # x\n", Set{Note: text("Buckets, no vacuum")},
			"      - {id: taps, is: 140, unit: tap,\n         floor: 0, note: \"Buckets, no vacuum\"} # x\n"},
		{"a note that was not there, on lines",
			"      - id: taps\n        is: 140\n        unit: tap # x\n\n      - {id: b, is: 1, unit: 1}\n", Set{Note: text("Buckets, no vacuum")},
			"      - id: taps\n        is: 140\n        unit: tap # x\n        note: Buckets, no vacuum\n\n      - {id: b, is: 1, unit: 1}\n"},
		{"a note in single quotes keeps them",
			"      - {id: taps, is: 140, unit: tap, note: 'It''s old'}\n", Set{Note: text("It's new")},
			"      - {id: taps, is: 140, unit: tap, note: 'It''s new'}\n"},
		{"a note over several lines",
			"      - id: taps\n        is: 140\n        note: |\n          One.\n\n          Two.\n\n        unit: tap\n", Set{Note: text("One.\nThree.")},
			"      - id: taps\n        is: 140\n        note: \"One.\\nThree.\"\n\n        unit: tap\n"},
		{"a plain note over several lines",
			"      - id: taps\n        is: 140\n        note: One\n          and two # x\n        unit: tap\n", Set{Note: text("Three")},
			"      - id: taps\n        is: 140\n        note: Three # x\n        unit: tap\n"},
		{"a key with nothing behind it",
			"      - id: taps\n        is: 140\n        note:   # to do\n        unit: tap\n", Set{Note: text("Done")},
			"      - id: taps\n        is: 140\n        note: Done   # to do\n        unit: tap\n"},
		{"behind a last key with nothing behind it",
			"      - id: taps\n        is: 140\n        unit: tap\n        source:\n", Set{Note: text("Done")},
			"      - id: taps\n        is: 140\n        unit: tap\n        source:\n        note: Done\n"},
		{"behind a last key in braces with nothing behind it",
			"      - {id: taps, is: 140, unit: tap, source: }\n", Set{Note: text("Done")},
			"      - {id: taps, is: 140, unit: tap, source: , note: Done }\n"},
		{"behind a last key in braces without a colon",
			"      - {id: taps, is: 140, unit: tap, source}\n", Set{Note: text("Done")},
			"      - {id: taps, is: 140, unit: tap, source, note: Done}\n"},
		{"behind text over several lines",
			"      - id: taps\n        is: 140\n        unit: tap\n        source: |\n          One.\n\n          Two.\n\n      - {id: b, is: 1, unit: 1}\n", Set{Note: text("Done")},
			"      - id: taps\n        is: 140\n        unit: tap\n        source: |\n          One.\n\n          Two.\n        note: Done\n\n      - {id: b, is: 1, unit: 1}\n"},
		{"an empty note takes the key out",
			"      - id: taps\n        is: 140\n        note: x\n        unit: tap\n", Set{Note: text("")},
			"      - id: taps\n        is: 140\n        unit: tap\n"},
		{"an empty note takes the key out of braces",
			"      - {id: taps, note: x, is: 140, unit: tap}\n", Set{Note: text(" ")},
			"      - {id: taps, is: 140, unit: tap}\n"},
		{"an empty first key gives its dash to the next",
			"      - note: x\n        id: taps\n        is: 140\n        unit: tap\n", Set{Note: text("")},
			"      - id: taps\n        is: 140\n        unit: tap\n"},
		{"a unit that YAML would misread",
			"      - {id: taps, is: 140, unit: tap}\n", Set{Unit: text("%")},
			"      - {id: taps, is: 140, unit: \"%\"}\n"},
		{"a unit and a label that were not there",
			"      - {id: taps, is: 140, note: x}\n", Set{Unit: text("tap"), Label: text("Taps")},
			"      - {id: taps, label: Taps, is: 140, unit: tap, note: x}\n"},
		{"a floor and a ceiling",
			"      - {id: taps, is: 140, unit: tap, floor: 1}\n", Set{Floor: number(0), Ceiling: number(1e6)},
			"      - {id: taps, is: 140, unit: tap, floor: 0, ceiling: 1000000}\n"},
		{"line breaks of another system",
			"      - id: taps\r\n        is: 140\r\n        unit: tap\r\n", Set{Is: number(1), Note: text("x")},
			"      - id: taps\r\n        is: 1\r\n        unit: tap\r\n        note: x\r\n"},
		{"no line break at the end",
			"      - id: taps\n        is: 140\n        unit: tap", Set{Note: text("x")},
			"      - id: taps\n        is: 140\n        unit: tap\n        note: x"},
		{"letters of more than one byte before it",
			"      - {id: taps, label: Érablière, unit: °Bx, is: 140}\n", Set{Is: number(-2)},
			"      - {id: taps, label: Érablière, unit: °Bx, is: -2}\n"},
		{"quoted keys without blanks",
			"      - {\"id\":\"taps\",\"is\":140,\"unit\":\"tap\"}\n", Set{Is: number(3), Unit: text("x")},
			"      - {\"id\":\"taps\",\"is\":3,\"unit\":\"x\"}\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			head := top
			if tt.name == "line breaks of another system" {
				head = "thawbook: 1\r\nchapters:\r\n  - title: Sap\r\n    lines:\r\n"
			}
			assert.Equal(t, head+tt.after, edited(t, head+tt.before, "taps", tt.set))
		})
	}
}

func TestEditOfTables(t *testing.T) {
	const source = `thawbook: 1
chapters:
  - title: Fire
    tables:
      - id: fuels
        label: Fuels
        columns:
          - {id: heat, label: Heat in one, unit: BTU/unit}
          - {id: price, unit: $/unit}
          - {id: dear, formula: price / heat, unit: $/MMBTU}
        rows:
          - {id: wood, heat: {guess: {low: 1, likely: 2, high: 3}}, price: 0} # free
          - id: gas
            heat: 91452 # EIA
            price:
              guess: {low: 2, likely: 3, high: 4}
`
	tests := []struct {
		name, about string
		set         Set
		from, to    string
	}{
		{"a bare number", "fuels.wood.price", Set{Is: number(3)}, "price: 0}", "price: 3}"},
		{"a bare number becomes a guess", "fuels.gas.heat", Set{Guess: guess(1, 2, 3)}, "heat: 91452 #", "heat: {guess: {low: 1, likely: 2, high: 3}} #"},
		{"a bare number gets a source", "fuels.gas.heat", Set{Source: text("EIA")}, "heat: 91452 #", "heat: {is: 91452, source: EIA} #"},
		{"a guess in braces", "fuels.wood.heat", Set{Guess: guess(1, 2, 4)}, "high: 3}}", "high: 4}}"},
		{"a guess becomes a number", "fuels.wood.heat", Set{Is: number(2)}, "{guess: {low: 1, likely: 2, high: 3}}", "{is: 2}"},
		{"a guess on a line of its own", "fuels.gas.price", Set{Is: number(2)}, "guess: {low: 2, likely: 3, high: 4}", "is: 2"},
		{"a column's formula gives way in one row", "fuels.gas.dear", Set{Formula: text("price")},
			"high: 4}\n", "high: 4}\n            dear: {formula: price}\n"},
		{"a column's formula gives way to a number", "fuels.wood.dear", Set{Is: number(0)}, "price: 0}", "price: 0, dear: 0}"},
		{"a column", "fuels.dear", Set{Formula: text("price / (heat * 2)"), Unit: text("$/kBTU")},
			"formula: price / heat, unit: $/MMBTU", "formula: price / (heat * 2), unit: $/kBTU"},
		{"a row", "fuels.gas", Set{Label: text("Propane")}, "- id: gas\n", "- id: gas\n            label: Propane\n"},
		{"the table", "fuels", Set{Label: text("What burns")}, "label: Fuels", "label: What burns"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Contains(t, source, tt.from)
			assert.Equal(t, replaceOnce(source, tt.from, tt.to), edited(t, source, tt.about, tt.set))
		})
	}
}

func TestEditOfTheTop(t *testing.T) {
	const source = "# A plan\nthawbook: 1\ntitle: Old\nseasons: 100 # few\n\nelevation: {is: 900, unit: ft}\nchapters:\n  - title: A\n    lines: [{id: x, is: 1, unit: 1}]\n"
	seasons, seed := 2000, uint64(4)
	got := edited(t, source, "", Set{Title: text("New: plan"), About: text("Ours."), Seasons: &seasons, Seed: &seed})
	assert.Equal(t, "# A plan\nthawbook: 1\ntitle: \"New: plan\"\nabout: Ours.\nseasons: 2000 # few\nseed: 4\n\nelevation: {is: 900, unit: ft}\nchapters:\n  - title: A\n    lines: [{id: x, is: 1, unit: 1}]\n", got)
	got = edited(t, source, "elevation", Set{Guess: guess(800, 900, 1000)})
	assert.Equal(t, replaceOnce(source, "is: 900", "guess: {low: 800, likely: 900, high: 1000}"), got)
	got = edited(t, source, "x", Set{Is: number(2)})
	assert.Equal(t, replaceOnce(source, "is: 1,", "is: 2,"), got)
	big := uint64(1<<64 - 1)
	got = edited(t, "{thawbook: 1, chapters: []}", "", Set{Seed: &big, Title: text("x, y")})
	assert.Equal(t, `{thawbook: 1, title: "x, y", seed: 18446744073709551615, chapters: []}`, got)
}

const base = `thawbook: 1
title: Base
chapters:
  - title: Sap
    lines:
      - {id: taps, is: 140, unit: tap}
      - {id: fuel, choose: wood, among: fuels}
    tables:
      - id: fuels
        columns:
          - {id: heat, unit: BTU/unit}
          - {id: twice, formula: heat * 2, unit: BTU/unit}
        rows:
          - {id: wood, heat: 1}
          - {id: gas, heat: 2}
`

// editedScenario makes an edit of a scenario of base and resolves it again.
func editedScenario(t *testing.T, source, about string, set Set) (string, *Sheet) {
	t.Helper()
	load := files(map[string]string{"base.yaml": base})
	d, told := Parse("dry.yaml", []byte(source))
	require.Empty(t, told)
	in, told := Resolve(d, load)
	require.Empty(t, told)
	next, refused := d.Edit(Edit{About: about, Set: set}, in)
	require.Empty(t, refused)
	s, told := Resolve(next, load)
	require.Empty(t, told)
	return string(next.Source()), s
}

func TestEditOfAScenario(t *testing.T) {
	const top = "thawbook: 1\nfrom: base.yaml # ours\ntitle: Dry\n"
	tests := []struct {
		name, before, about string
		set                 Set
		after               string
	}{
		{"the first change", "", "taps", Set{Is: number(100)}, "\nchange:\n  taps: 100\n"},
		{"the first change, before what is added", "\ndrop: [fuels.gas]\n", "taps", Set{Is: number(100)}, "\nchange:\n  taps: 100\n\ndrop: [fuels.gas]\n"},
		{"a first change with nothing under it", "change: # mine\n", "taps", Set{Is: number(100)}, "change: # mine\n  taps: 100\n"},
		{"a first change in braces", "change: {}\n", "taps", Set{Is: number(100)}, "change: {taps: 100}\n"},
		{"one more change", "change:\n    fuel: gas # cheap\n", "taps", Set{Guess: guess(1, 2, 3)}, "change:\n    fuel: gas # cheap\n    taps: {guess: {low: 1, likely: 2, high: 3}}\n"},
		{"a change of a change", "change:\n  taps: 100 # fewer\n", "taps", Set{Is: number(90)}, "change:\n  taps: 90 # fewer\n"},
		{"a change gets a note", "change:\n  taps: 100 # fewer\n", "taps", Set{Note: text("Fewer")}, "change:\n  taps: {is: 100, note: Fewer} # fewer\n"},
		{"a choice gets a note", "change: {fuel: gas}\n", "fuel", Set{Note: text("Dear")}, "change: {fuel: {choose: gas, note: Dear}}\n"},
		{"a change with keys", "change:\n  taps:\n    is: 100\n    unit: tap\n", "taps", Set{Formula: text("1 + 1")}, "change:\n  taps:\n    formula: 1 + 1\n    unit: tap\n"},
		{"a cell", "", "fuels.gas.heat", Set{Is: number(3)}, "\nchange:\n  fuels.gas.heat: 3\n"},
		{"a cell its column works out", "", "fuels.gas.twice", Set{Formula: text("heat * 3")}, "\nchange:\n  fuels.gas.twice: {formula: heat * 3}\n"},
		{"a column", "", "fuels.twice", Set{Formula: text("heat * 3")}, "\nchange:\n  fuels.twice: {formula: heat * 3}\n"},
		{"a row", "", "fuels.gas", Set{Label: text("Propane")}, "\nchange:\n  fuels.gas: {label: Propane}\n"},
		{"a line it adds", "add:\n  - title: Sap\n    lines:\n      - {id: more, is: 1, unit: 1}\n", "more", Set{Is: number(2)}, "add:\n  - title: Sap\n    lines:\n      - {id: more, is: 2, unit: 1}\n"},
		{"a row it adds", "add:\n  - title: Sap\n    tables:\n      - id: fuels\n        rows: [{id: oil, heat: 5}]\n", "fuels.oil.twice", Set{Is: number(2)}, "add:\n  - title: Sap\n    tables:\n      - id: fuels\n        rows: [{id: oil, heat: 5, twice: 2}]\n"},
		{"a table it adds to", "add:\n  - title: Sap\n    tables:\n      - id: fuels\n        rows: [{id: oil, heat: 5}]\n", "fuels", Set{Label: text("Fire")}, "\nchange:\n  fuels: {label: Fire}\nadd:\n  - title: Sap\n    tables:\n      - id: fuels\n        rows: [{id: oil, heat: 5}]\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, s := editedScenario(t, top+tt.before, tt.about, tt.set)
			assert.Equal(t, top+tt.after, got)
			if l := s.Find(tt.about); l != nil {
				assert.True(t, l.Changed)
			}
		})
	}
}

func TestEditTakesABaseTextAway(t *testing.T) {
	load := files(map[string]string{"base.yaml": replaceOnce(base, "unit: tap}", "unit: tap, note: Old}")})
	d, _ := Parse("dry.yaml", []byte("thawbook: 1\nfrom: base.yaml\nchange: {taps: {is: 3}}\n"))
	in, told := Resolve(d, load)
	require.Empty(t, told)
	require.Equal(t, "Old", in.Find("taps").Note)
	next, refused := d.Edit(Edit{About: "taps", Set: Set{Note: text("")}}, in)
	require.Empty(t, refused)
	s, told := Resolve(next, load)
	require.Empty(t, told)
	assert.Empty(t, s.Find("taps").Note)
	assert.Equal(t, 3.0, s.Find("taps").Is)
}

func TestEditOfAScenarioInBraces(t *testing.T) {
	for before, after := range map[string]string{
		"{thawbook: 1, from: base.yaml}":                        "{thawbook: 1, from: base.yaml, change: {taps: 3}}",
		"{thawbook: 1, from: base.yaml, change: }":              "{thawbook: 1, from: base.yaml, change: {taps: 3} }",
		"{thawbook: 1, from: base.yaml, change: {}}":            "{thawbook: 1, from: base.yaml, change: {taps: 3}}",
		"{thawbook: 1, from: base.yaml, change: {fuel: gas}} #": "{thawbook: 1, from: base.yaml, change: {fuel: gas, taps: 3}} #",
	} {
		got, s := editedScenario(t, before, "taps", Set{Is: number(3)})
		assert.Equal(t, after, got)
		assert.Equal(t, 3.0, s.Find("taps").Is)
	}
}
