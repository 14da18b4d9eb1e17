package sheet

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRenameIsFollowed(t *testing.T) {
	const before = `thawbook: 1
chapters:
  - title: A
    lines:
      - {id: taps, label: Taps hung, is: 140, unit: tap} # taps
      - id: each
        guess: {low: 1, likely: 2, high: 3}
        unit: gal/tap
        moves_with: {other: 0.5}
      - {id: other, records: [1, 2], unit: gal}
      - {id: sap, formula: taps * each /* taps */, unit: gal}
      - {id: dear, formula: "fuel == \"taps\" ? taps*2 : fuels[fuel].taps", unit: tap, lay_in: {price: fuels.wood.taps}}
      - {id: fuel, choose: wood, among: fuels}
    tables:
      - id: fuels
        columns: [{id: taps, unit: tap}, {id: twice, unit: tap, formula: taps * 2}]
        rows: [{id: wood, taps: 1}]
      - id: jars
        columns: [{id: n, unit: tap, formula: taps * 1}]
        rows:
          - {id: small, n: {formula: taps + fuels.wood.taps}}
`
	taps := strings.NewReplacer("{id: taps, label", "{id: spouts, label", "formula: taps * each", "formula: spouts * each",
		"? taps*2", "? spouts*2", "formula: taps * 1", "formula: spouts * 1", "formula: taps + fuels", "formula: spouts + fuels")
	requireEdited(t, before, Edit{About: "taps", Rename: "spouts"}, taps.Replace(before))

	fuels := strings.NewReplacer("id: fuels", "id: fires", "among: fuels", "among: fires", ": fuels[", ": fires[", "+ fuels.", "+ fires.", "price: fuels.", "price: fires.")
	requireEdited(t, before, Edit{About: "fuels", Rename: "fires"}, fuels.Replace(before))

	requireEdited(t, before, Edit{About: "other", Rename: "brook"}, strings.NewReplacer("{other:", "{brook:", "id: other", "id: brook").Replace(before))
}

// There and back again leaves the text as it was, and in between the sheet says
// the same of every line.
func TestRenameOfEveryShippedLineAndBack(t *testing.T) {
	source, err := os.ReadFile("../../scenarios/heron-ridge-pallets.yaml")
	require.NoError(t, err)
	d, told := Parse("x.yaml", source)
	require.Empty(t, told)
	in, told := Resolve(d, nil)
	require.Empty(t, told)
	for _, line := range in.All() {
		if line.Table != "" || line.ID == "elevation" {
			continue
		}
		there, refused := d.Edit(Edit{About: line.ID, Rename: "quite_another"}, in)
		require.Empty(t, refused, line.ID)
		between, told := Resolve(there, nil)
		require.Empty(t, told, line.ID)
		require.Len(t, between.All(), len(in.All()))
		for i, other := range between.All() {
			want := in.All()[i]
			text, _ := renameIn(other.Formula, "quite_another", line.ID, nil)
			if want.Kind == Formula && want.Table == "" {
				require.Equal(t, want.Formula, text, "%s in %s", line.ID, want.ID)
			}
		}
		back, refused := there.Edit(Edit{About: "quite_another", Rename: line.ID}, between)
		require.Empty(t, refused, line.ID)
		require.Equal(t, string(source), string(back.Source()), line.ID)
	}
}

func TestRenameIn(t *testing.T) {
	for formula, want := range map[string]string{
		"a":                           "new",
		"a + aa * a2 - b.a":           "new + aa * a2 - b.a",
		"a.price + b[a].a":            "new.price + b[new].a",
		`c == "a" or c == 'it\'s a'`:  `c == "a" or c == 'it\'s a'`,
		"a // a\n+ a":                 "new // a\n+ new",
		"let a2 = a; a2*a":            "let a2 = new; a2*new",
		"1e5*a+.5*a":                  "1e5*new+.5*new",
		"`a` + a /* a":                "`a` + new /* a",
		"b . a":                       "b . a",
		"min(a, b) > 2 ? a : not (a)": "min(new, b) > 2 ? new : not (new)",
	} {
		got, clash := renameIn(formula, "a", "new", nil)
		assert.Equal(t, want, got)
		assert.False(t, clash, formula)
	}
	_, clash := renameIn("a + new", "a", "new", nil)
	assert.True(t, clash)
	_, clash = renameIn("a + b", "a", "new", []string{"new"})
	assert.True(t, clash, "a column of the table would be meant")
	same, clash := renameIn("a + new", "a", "new", []string{"a"})
	assert.Equal(t, "a + new", same, "the column is meant, not the line")
	assert.False(t, clash)
}

func TestRenameLeavesWhatIsInherited(t *testing.T) {
	load := files(map[string]string{"base.yaml": base})
	d, _ := Parse("dry.yaml", []byte("thawbook: 1\nfrom: base.yaml\n"))
	in, _ := Resolve(d, load)
	for _, e := range []Edit{{About: "taps", Rename: "spouts"}, {About: "taps", Move: &Move{By: 1}}} {
		same, refused := d.Edit(e, in)
		require.Len(t, refused, 1)
		assert.Contains(t, refused[0].Message, "is written in the sheet this one is taken from")
		assert.Same(t, d, same)
	}
}
