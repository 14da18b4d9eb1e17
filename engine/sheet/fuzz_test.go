package sheet

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func addSeeds(f *testing.F, add func(string)) {
	for _, text := range []string{base, full, "thawbook: 1\nfrom: base.yaml\nchange: {taps: 3}\nadd:\n  - title: Sap\n    lines: [{id: x, is: 1, unit: 1}]\n"} {
		add(text)
	}
	paths, err := filepath.Glob(filepath.Join(brokenFiles, "*.yaml"))
	require.NoError(f, err)
	for _, path := range paths {
		source, err := os.ReadFile(path)
		require.NoError(f, err)
		add(string(source))
	}
}

// FuzzParse holds that no text makes Parse or Resolve panic, that a document
// keeps its bytes, and that every place told lies within the file.
func FuzzParse(f *testing.F) {
	addSeeds(f, func(text string) { f.Add(text) })
	f.Fuzz(func(t *testing.T, text string) {
		d, list := Parse("x.yaml", []byte(text))
		if d == nil {
			require.NotEmpty(t, list)
		} else {
			require.Equal(t, text, string(d.Source()))
			s, more := Resolve(d, files(map[string]string{"base.yaml": base}))
			list = append(list, more...)
			for _, l := range s.All() {
				_ = l.At("unit")
			}
		}
		lines := strings.Count(text, "\n") + strings.Count(text, "\r") + strings.Count(text, "\u0085") + strings.Count(text, "\u2028") + strings.Count(text, "\u2029") + 1
		for _, one := range list {
			if one.Place.File == "x.yaml" && one.Place.Line > lines+1 {
				t.Fatalf("%v lies beyond %d lines", one, lines)
			}
			if one.Message == "" || one.Code == "" {
				t.Fatalf("%v says nothing", one)
			}
		}
	})
}

// FuzzEdit holds that an edit is refused and leaves everything as it was, or is
// read back as asked, changes nothing but the lines of text its line stands on,
// and leaves every other line of the sheet saying what it said.
func FuzzEdit(f *testing.F) {
	addSeeds(f, func(text string) { f.Add(text, uint8(1), uint8(0), 2.5, "a * b") })
	f.Add(full, uint8(2), uint8(1), -3.0, "x ? y : z")
	f.Add(full, uint8(9), uint8(2), 7.0, "two\nlines")
	f.Add(full, uint8(3), uint8(3), 1e300, "null")
	f.Add(full, uint8(1), uint8(5), 1.0, "- [x]: {y} #z")
	load := files(map[string]string{"base.yaml": base})
	f.Fuzz(func(t *testing.T, source string, which, what uint8, x float64, words string) {
		d, told := Parse("x.yaml", []byte(source))
		if d == nil {
			return
		}
		before, more := Resolve(d, load)
		all := before.All()
		if told.Errors()+more.Errors() > 0 || len(all) == 0 {
			return // which of two lines of one id is meant, no one knows
		}
		line := all[int(which)%len(all)]
		set := fuzzedSet(what, x, words)
		next, refused := d.Edit(Edit{About: line.ID, Set: set}, before)
		require.Equal(t, source, string(d.Source()))
		if len(refused) > 0 {
			require.Same(t, d, next)
			return
		}
		after, _ := Resolve(next, load)
		requireSet(t, after.Find(line.ID), set)
		for _, other := range all {
			if other.ID != line.ID {
				requireSame(t, other, after.Find(other.ID))
			}
		}
		if next.From() == "" {
			requireOwnLines(t, d, line, string(next.Source()))
		}
	})
}

func fuzzedSet(what uint8, x float64, words string) Set {
	switch what % 7 {
	case 0:
		return Set{Is: &x}
	case 1:
		return Set{Guess: guess(x, x+1, x+2)}
	case 2:
		return Set{Note: &words}
	case 3:
		return Set{Formula: &words}
	case 4:
		return Set{Records: []float64{x, x, 1}}
	case 5:
		return Set{Label: &words, Is: &x}
	}
	return Set{Unit: &words, Floor: &x}
}

func requireSet(t *testing.T, l *Line, set Set) {
	t.Helper()
	require.NotNil(t, l)
	settings, _ := set.settings()
	for _, s := range settings {
		switch s.key {
		case "is":
			require.Equal(t, []any{Is, *s.number}, []any{l.Kind, l.Is})
		case "guess":
			require.Equal(t, []any{Guess, s.guess.Low, s.guess.Likely, s.guess.High}, []any{l.Kind, l.Low, l.Likely, l.High})
		case "records":
			require.Equal(t, s.records, l.Records)
		case "formula":
			require.Equal(t, []any{Formula, *s.text}, []any{l.Kind, l.Formula})
		case "note":
			require.Equal(t, *s.text, l.Note)
		case "unit":
			require.Equal(t, *s.text, l.Unit)
		case "floor":
			require.Equal(t, *s.number, *l.Floor)
		}
	}
}

// requireSame compares two lines but for their places and company: what moves
// with a line that is now fixed no longer does.
func requireSame(t *testing.T, a, b *Line) {
	t.Helper()
	require.NotNil(t, b)
	x, y := *a, *b
	x.Place, x.Places, x.MovesWith = y.Place, y.Places, y.MovesWith
	require.Equal(t, x, y)
}

// requireOwnLines checks that the texts differ only where the line stands, or
// the row for a cell: the same lines of text before and after.
func requireOwnLines(t *testing.T, d *Doc, line *Line, after string) {
	t.Helper()
	target, refused := d.locate(line.ID, nil)
	require.Nil(t, refused)
	node := target.mapping
	if node == nil {
		node = target.in
	}
	if line.ID == "elevation" && target.slot == "elevation" {
		node = target.value()
	}
	from := d.marks.lines[node.Line-1]
	to := d.marks.lineEnd(d.marks.end(node))
	assert.True(t, strings.HasPrefix(after, d.marks.text[:from]), "the text before is as it was")
	assert.True(t, strings.HasSuffix(after, d.marks.text[to:]), "the text after is as it was")
}
