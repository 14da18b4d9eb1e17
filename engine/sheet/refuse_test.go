package sheet

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

func TestEditsThatAreRefused(t *testing.T) {
	const source = `thawbook: 1
chapters:
  - title: Sap
    lines:
      - {id: taps, is: 140, unit: tap}
      - {id: fuel, choose: wood, among: [wood, oil]}
      - ? id
        : odd
        ? is
        : 3
        ? unit
        : tap
    tables:
      - id: fuels
        columns: [{id: heat, unit: BTU}, {id: twice, formula: heat * 2, unit: BTU}]
        rows: [{id: wood, heat: 3}]
`
	zero := 0
	tests := []struct {
		name    string
		edit    Edit
		code    diag.Code
		message string
	}{
		{"no such line", Edit{About: "tabs", Set: Set{Is: number(1)}}, diag.EditUnknown, `there is no line "tabs"`},
		{"no such cell", Edit{About: "fuels.wod.heat", Set: Set{Is: number(1)}}, diag.EditUnknown, `there is no line "fuels.wod.heat"`},
		{"no such column", Edit{About: "fuels.wood.id", Set: Set{Is: number(1)}}, diag.EditUnknown, `there is no line "fuels.wood.id"`},
		{"nothing to set", Edit{About: "taps", Set: Set{}}, diag.EditUnknown, `the edit of "taps" sets nothing`},
		{"two kinds", Edit{About: "taps", Set: Set{Is: number(1), Formula: text("2")}}, diag.SeveralKinds, `a line cannot be both "is" and "formula"`},
		{"an infinite number", Edit{About: "taps", Set: Set{Is: number(math.Inf(1))}}, diag.WrongKind, `"is" must be a number that is not infinite`},
		{"no number", Edit{About: "taps", Set: Set{Guess: guess(1, math.NaN(), 3)}}, diag.WrongKind, `"guess" must be a number that is not infinite`},
		{"no text", Edit{About: "taps", Set: Set{Note: text("\xff")}}, diag.WrongKind, `"note" must be text`},
		{"an empty formula", Edit{About: "taps", Set: Set{Formula: text(" ")}}, diag.WrongKind, "the formula is empty"},
		{"no seasons", Edit{About: "", Set: Set{Seasons: &zero}}, diag.OutOfBounds, "a sheet cannot have 0 seasons"},
		{"a title of a line", Edit{About: "taps", Set: Set{Title: text("x")}}, diag.EditUnknown, `a line has no "title" to set`},
		{"a number at the top", Edit{About: "", Set: Set{Is: number(1)}}, diag.EditUnknown, `a sheet has no "is" to set`},
		{"a number for a choice", Edit{About: "fuel", Set: Set{Is: number(1)}}, diag.EditUnknown, `"fuel" is a choice`},
		{"a choice for a number", Edit{About: "taps", Set: Set{Choose: text("oil")}}, diag.EditUnknown, `"taps" is not a choice`},
		{"a unit for a cell", Edit{About: "fuels.wood.heat", Set: Set{Unit: text("kJ")}}, diag.EditUnknown, `a cell has no "unit" to set`},
		{"a note for a cell its column works out", Edit{About: "fuels.wood.twice", Set: Set{Note: text("x")}}, diag.EditUnknown, `"fuels.wood.twice" is worked out by its column`},
		{"a number for a row", Edit{About: "fuels.wood", Set: Set{Is: number(1)}}, diag.EditUnknown, `a row has no "is" to set`},
		{"a line written in a way there are no means for", Edit{About: "odd", Set: Set{Is: number(1)}}, diag.EditUnknown, "the change cannot be written into the file as it stands"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, told := Parse("x.yaml", []byte(source))
			require.Empty(t, told)
			next, refused := d.Edit(tt.edit, nil)
			assert.Same(t, d, next, "the old document comes back")
			require.Len(t, refused, 1)
			assert.Equal(t, []any{tt.code, diag.Error, tt.edit.About, tt.message}, []any{refused[0].Code, refused[0].Severity, refused[0].About, refused[0].Message})
			assert.NotEmpty(t, refused[0].Hint)
			assert.Equal(t, source, string(d.Source()))
		})
	}
}

// One part that cannot be written leaves the parts before it unwritten too.
func TestEditIsWholeOrNotAtAll(t *testing.T) {
	d, _ := Parse("x.yaml", []byte(base))
	next, refused := d.Edit(Edit{About: "fuels.wood.heat", Set: Set{Is: number(9), Unit: text("kJ")}}, nil)
	require.Len(t, refused, 1)
	assert.Same(t, d, next)
}

// A sheet may be left with mistakes of sense: a person types one key at a time.
func TestEditMayLeaveMistakesOfSense(t *testing.T) {
	for _, set := range []Set{{Guess: guess(9, 5, 14)}, {Unit: text("gal/(h*ft)")}, {Unit: text("")}, {Floor: number(1000)}} {
		d, _ := Parse("x.yaml", []byte(base))
		next, refused := d.Edit(Edit{About: "taps", Set: set}, nil)
		require.Empty(t, refused)
		_, told := Resolve(next, nil)
		assert.Equal(t, 1, told.Errors(), "%v", told)
	}
}

func TestEditOfASheetWithMistakes(t *testing.T) {
	source := replaceOnce(base, "is: 140, unit: tap", "is: 140, unit: tap, nots: x")
	d, told := Parse("x.yaml", []byte(source))
	require.Len(t, told, 1)
	next, refused := d.Edit(Edit{About: "taps", Set: Set{Is: number(150)}}, nil)
	require.Empty(t, refused)
	assert.Equal(t, replaceOnce(source, "140", "150"), string(next.Source()))
	assert.Equal(t, told, next.Diagnostics())
}

func TestTextsReadBackAsWritten(t *testing.T) {
	for _, value := range []string{"plain", "a: b", "a #b", "#a", "- a", "-a", "--- a", "a, b", "[a]", "{a}", "a ? b : c", "'a'", `"a"`, `a\b`,
		"null", "~", "true", "No", "1", "1e5", "0x1F", "2024-01-01", "<<", "=", "a:", ":a", "?a", "? a", "*a", "&a", "!a", "%", "@a", "`a`", "|", ">",
		"two\nlines", "a\ttab", "°Bx", "naïve “quotes”", "x\u00a0y\u2028z", "emoji 🍁", "\U000E0001", "...", "a\\nb", "x[y].z * 2", "a > 1 ? b : c", "not a"} {
		for _, before := range []string{
			"      - {id: taps, note: old, is: 1, unit: tap}\n",
			"      - {id: taps, note: \"old\", is: 1, unit: tap}\n",
			"      - {id: taps, note: 'old', is: 1, unit: tap}\n",
			"      - id: taps\n        note: old\n        is: 1\n        unit: tap\n",
			"      - id: taps\n        is: 1\n        unit: tap\n",
			"      - id: taps\n        is: 1\n        note: >-\n          old\n        unit: tap\n",
		} {
			d, told := Parse("x.yaml", []byte("thawbook: 1\nchapters:\n  - title: A\n    lines:\n"+before))
			require.Empty(t, told)
			next, refused := d.Edit(Edit{About: "taps", Set: Set{Note: &value}}, nil)
			require.Empty(t, refused, "%q into %q", value, before)
			s, told := Resolve(next, nil)
			require.Empty(t, told)
			assert.Equal(t, value, s.Find("taps").Note)
		}
	}
}
