package workbook

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostileTexts are what a person may type, or a stranger's sheet may hold.
func hostileTexts() []string {
	return []string{`=1+1`, `+cmd|' /C calc'!A0`, `-2+3`, `@SUM(1)`, `=HYPERLINK("http://127.0.0.1","x")`, `<b>&amp;</b> ]]> <!--`,
		`_x0041_ and _x005F_`, "two\nlines\tand a tab", "  spaces  ", `"quoted" 'both'`, "é ü 漢字 🍁", "thawbook plan 1 label", "#N/A", "TRUE", "1e5", "2026-11-25", `C:\a\b`}
}

// hostileSheet has such texts wherever a sheet takes text.
func hostileSheet() string {
	var b strings.Builder
	quoted := func(text string) string { return fmt.Sprintf("%q", text) }
	texts := hostileTexts()
	fmt.Fprintf(&b, "thawbook: 1\ntitle: %s\nabout: %s\nchapters:\n", quoted(texts[0]), quoted(texts[1]))
	for i, text := range texts {
		fmt.Fprintf(&b, "  - title: %s\n    note: %s\n    lines:\n", quoted(text+fmt.Sprint(i)), quoted(text))
		fmt.Fprintf(&b, "      - {id: line%d, label: %s, is: %d, unit: gal, note: %s, source: %s, caution: %s}\n", i, quoted(text), i, quoted(text), quoted(text), quoted(text))
		fmt.Fprintf(&b, "      - {id: worked_%d, label: %s, formula: line%d * 2, unit: gal, headline: {better: more}}\n", i, quoted(text), i)
	}
	fmt.Fprintf(&b, "  - title: Choices\n    lines:\n      - id: pick\n        label: Pick\n        choose: tap1\n        among: [{id: tap1, label: %s}, {id: r1c1, label: %s}]\n", quoted(texts[0]), quoted(texts[4]))
	b.WriteString("      - {id: true_or, label: T, formula: 'pick == \"tap1\" ? 1 : 2', unit: 1}\n    tables:\n      - id: t\n")
	fmt.Fprintf(&b, "        label: %s\n        columns: [{id: c, label: %s, unit: gal, note: %s}]\n        rows:\n", quoted(texts[0]), quoted(texts[2]), quoted(texts[3]))
	fmt.Fprintf(&b, "          - {id: r1, label: %s, note: %s, source: %s, c: 3}\n", quoted(texts[4]), quoted(texts[5]), quoted(texts[6]))
	return b.String()
}

// Nothing a person typed becomes a formula, and all of it comes out as it went
// in.
func TestTextIsAlwaysText(t *testing.T) {
	p := plan(t, hostileSheet())
	p.Paragraph = "=2+2"
	p.Warnings, p.Cautions = []string{"=3+3"}, []Caution{{Text: "=4+4", Source: "=5+5"}}
	file := write(t, Input{Plans: []Plan{p}})
	formulas, texts := map[string]bool{}, map[string]bool{}
	for _, ws := range worksheets(t, file) {
		for _, r := range ws.Rows {
			for _, c := range r.Cells {
				switch {
				case c.F != nil:
					formulas[*c.F] = true
				case c.Is != nil:
					texts[c.Is.T] = true
				}
			}
		}
	}
	for f := range formulas {
		assert.Regexp(t, `^(line_line[0-9]+\*2|worked_[0-9]+|true_or|IF\(pick="tap1",1,2\)|INDEX\('Records'.*)$`, f, "a formula of ours")
	}
	f := open(t, file)
	for i, want := range hostileTexts() {
		for _, e := range indexOf(t, f).Entries {
			if e.ID != fmt.Sprintf("line%d", i) {
				continue
			}
			got, err := f.GetCellValue(e.Sheet, "A"+e.Cell[1:])
			require.NoError(t, err)
			assert.Equal(t, strings.TrimSpace(want), got, "the sheet itself trims")
		}
	}
	assert.True(t, texts["=2+2"] && texts["=3+3"] && texts["=4+4 (=5+5)"])
}

// An edited cell is read again by the program, so text that looks like a formula
// stands in cells of the text format wherever people may write.
func TestCellsForWordsAreOfTheTextFormat(t *testing.T) {
	f := open(t, write(t, Input{Plans: []Plan{plan(t, hostileSheet())}}))
	id, err := f.GetCellStyle("Plan", "G6")
	require.NoError(t, err)
	s, err := f.GetStyle(id)
	require.NoError(t, err)
	require.NotNil(t, s.CustomNumFmt)
	assert.Equal(t, "@", *s.CustomNumFmt)
	assert.False(t, s.Protection.Locked)
}

func TestPlainTextTakesOutWhatXMLCannotHold(t *testing.T) {
	assert.Equal(t, "ab\nc\td", plainText("a\x00b\nc\td\x1f\x7f\uE000\uFFFE\uFFFF"))
	assert.Equal(t, "a", plainText("a\xff"))
	long := plainText(strings.Repeat("🍁", 20000))
	assert.Equal(t, 16383, len([]rune(long)), "32,767 units of UTF-16")
	assert.Len(t, plainText(strings.Repeat("x", 40000)), 32767)
}

func TestEscapedKeepsTheStandardsOwnEscapesApart(t *testing.T) {
	for text, want := range map[string]string{"_x0041_": "_x005F_x0041_", "_x005F_x0041_": "_x005F_x005F_x005F_x0041_", "_xyz1_": "_xyz1_", "_x0041": "_x0041", "plain": "plain", "_": "_"} {
		assert.Equal(t, want, escaped(text))
	}
}
