package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

func TestShowMarksThePlaceInTheFile(t *testing.T) {
	o := &opened{texts: map[string][]byte{"a.yaml": []byte("thawbook: 1\r\n\ttitel: Heron Ridge\r\n")}}
	var out strings.Builder
	o.show(&out, false, diag.List{
		{Severity: diag.Error, Place: diag.Place{File: "a.yaml", Line: 2, Column: 2}, Message: `unknown key "titel"`, Hint: `did you mean "title"?`},
		{Severity: diag.Warning, Place: diag.Place{File: "a.yaml"}, Message: "no headline"},
	})
	assert.Equal(t, `a.yaml:2:2: error: unknown key "titel"
    titel: Heron Ridge
    ^^^^^
  did you mean "title"?
a.yaml: warning: no headline
`, out.String())
}

func TestShowOfAPlaceThatIsNotThere(t *testing.T) {
	o := &opened{texts: map[string][]byte{"a.yaml": []byte("one line")}}
	for _, place := range []diag.Place{
		{File: "a.yaml", Line: 9, Column: 1}, {File: "other.yaml", Line: 1, Column: 1}, {},
		{File: "a.yaml", Line: 1, Column: 1, Formula: &diag.Span{From: 3, To: 900}},
		{File: "a.yaml", Line: 1, Column: 400},
	} {
		var out strings.Builder
		o.show(&out, false, diag.List{{Severity: diag.Error, Place: place, Message: "wrong"}})
		assert.Contains(t, out.String(), "error: wrong\n")
	}
}

func TestSnippet(t *testing.T) {
	for name, test := range map[string]struct {
		line     string
		from, to int
		text     string
		marker   string
	}{
		"indent goes":      {"    - id: taps", 10, 14, "- id: taps", "      ^^^^"},
		"tab is one":       {"\tid: taps", 1, 3, "id: taps", "^^"},
		"past the end":     {"taps *", 6, 7, "taps *", "      ^"},
		"runes not bytes":  {"unit: °Bx", 6, 9, "unit: °Bx", "      ^^^"},
		"at least one":     {"taps", 0, 0, "taps", "^"},
		"marker is on ink": {"  ", 0, 1, "", "^"},
	} {
		t.Run(name, func(t *testing.T) {
			text, marker := snippet(test.line, test.from, test.to)
			assert.Equal(t, test.text, text)
			assert.Equal(t, test.marker, marker)
		})
	}
}

func TestSnippetOfALongLineShowsWhatIsMarked(t *testing.T) {
	line := "formula: " + strings.Repeat("taps + ", 40) + "birches" + strings.Repeat(" + taps", 40)
	from := strings.Index(line, "birches")
	text, marker := snippet(line, from, from+len("birches"))
	require.LessOrEqual(t, columns(text), width-4)
	require.LessOrEqual(t, columns(marker), columns(text))
	at := strings.Index(marker, "^")
	assert.Equal(t, "birches", string([]rune(text)[at:at+len("birches")]))
	assert.True(t, strings.HasPrefix(text, "…") && strings.HasSuffix(text, "…"))
}

func TestWordEnd(t *testing.T) {
	assert.Equal(t, 4, wordEnd("taps: 140", 0))
	assert.Equal(t, 9, wordEnd("taps: 140", 6))
	assert.Equal(t, 1, wordEnd(`"quoted"`, 0), "a mark stands alone")
	assert.Equal(t, 31, wordEnd("short", 30), "past the end there is still a place")
}
