package workbook

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/sheet"
)

func TestMarksReadBack(t *testing.T) {
	for text, mark := range map[string]Mark{
		"thawbook plan 1 label":            {Area: PlanArea, Plan: 1, Part: Label},
		"thawbook plan 16 working":         {Area: PlanArea, Plan: 16, Part: Working},
		"thawbook table 2 fuels id":        {Area: TableArea, Plan: 2, Of: "fuels", Part: ID},
		"thawbook table 1 fuels low heat":  {Area: TableArea, Plan: 1, Of: "fuels", Part: Low, Column: "heat"},
		"thawbook table 1 label value low": {Area: TableArea, Plan: 1, Of: "label", Part: Value, Column: "low"},
		"thawbook records 1 value value":   {Area: RecordsArea, Plan: 1, Of: "value", Part: Value},
		"thawbook names 1 filter id":       {Area: NamesArea, Plan: 1, Of: "filter", Part: ID},
		"thawbook own 1 note":              {Area: OwnArea, Plan: 1, Part: Note},
	} {
		assert.Equal(t, text, mark.String())
		got, ok := ParseMark("  " + strings.ReplaceAll(text, " ", "  ") + "\n")
		assert.True(t, ok, text)
		assert.Equal(t, mark, got)
	}
}

func TestOtherTextsAreNoMarks(t *testing.T) {
	for _, text := range []string{"", "thawbook", "thawbook plan", "thawbook plan 1", "thawbook plan 0 label", "thawbook plan 17 label",
		"thawbook plan one label", "thawbook plan 1 label heat", "thawbook tables 1 fuels id", "thawbook table 1 fuels",
		"thawbook table 1 id", "thawbook table 1 fuels id heat more", "Thawbook plan 1 label", "thawbook plan 1 " + strings.Repeat("x", 1000)} {
		_, ok := ParseMark(text)
		assert.False(t, ok, text)
	}
}

func TestNamesAreOnesPeopleCanRead(t *testing.T) {
	n := newNamer()
	assert.Equal(t, "taps", n.name(1, "taps"))
	assert.Equal(t, "fuels_propane_price", n.name(1, "fuels", "propane", "price"))
	assert.Equal(t, "taps_2", n.name(2, "taps"))
	assert.Equal(t, "taps_2_2x", n.name(1, "taps_2"), "a line's own id may look like another plan's")
	assert.Equal(t, "line_tap1", n.name(1, "tap1"), "a cell's address")
	assert.Equal(t, "line_r1c1", n.name(1, "r1c1"), "a cell's address by row and column")
	assert.Equal(t, "line_c", n.name(1, "c"), "a whole column")
	assert.Equal(t, "line_auto_open", n.name(1, "auto_open"), "what some programs run when they open a file")
	assert.Equal(t, "a_b_c", n.name(1, "a_b", "c"))
	assert.Equal(t, "a_b_c_2x", n.name(1, "a", "b_c"), "two cells may come to one name")
	assert.Equal(t, "thawbook_index_2x", n.name(1, "thawbook_index"))
}

func TestNamesAreValidHoweverLongTheIds(t *testing.T) {
	// Section 18.2.5 of ECMA-376 part 1 and the forms addresses take.
	valid := regexp.MustCompile(`^[A-Za-z_\\][A-Za-z0-9_.\\]*$`)
	address := regexp.MustCompile(`(?i)^([a-z]{1,3}[0-9]+|r[0-9]*c[0-9]*|r|c)$`)
	n, seen := newNamer(), map[string]bool{}
	for i := range 3000 {
		long := strings.Repeat("x", i%70+1) + fmt.Sprint(i%7)
		for _, name := range []string{n.name(1+i%3, long), n.name(1, long, long, long), n.name(1, long, "low")} {
			require.Regexp(t, valid, name)
			require.NotRegexp(t, address, name)
			require.LessOrEqual(t, len(name), 255)
			require.False(t, seen[name], name)
			seen[name] = true
		}
	}
}

func sampleIndex() Index {
	return Index{Version: 1, Money: "USD", Plans: []Sent{
		{File: "plans/a.yaml", Title: "=A", Source: []byte("thawbook: 1\r\n# _x0041_ \t end  \n"), Seasons: 10000, Seed: 1<<64 - 1},
		{File: "b.yaml", Title: "B", Source: []byte(strings.Repeat("no pattern 0123456789 é\n", 9000)), Seasons: 1},
	}, Entries: []Entry{
		{Plan: 1, ID: "taps", Part: Value, Kind: sheet.Is, Unit: "tap", Name: "taps", Sheet: "Plan", Cell: "B7", Sent: "140"},
		{Plan: 2, ID: "sap", Part: Value, Kind: sheet.Formula, Unit: "gal", Name: "sap_2", Sheet: "Plan 2", Cell: "B9",
			Sent: "1260.0000000000002", Formula: "taps * sap_per_tap", Written: "taps_2*sap_per_tap_2"},
		{Plan: 1, ID: "evenings", Part: Past, Kind: sheet.Records, Sent: strings.Repeat("12345.678 ", 9000), Name: "evenings_records"},
		{Plan: 1, ID: "walk", Part: Value, Kind: sheet.Formula, Formula: "season_walk()", Held: true},
	}}
}

func TestIndexReadsBack(t *testing.T) {
	want := sampleIndex()
	rows, err := want.rows()
	require.NoError(t, err)
	for _, row := range rows {
		for _, text := range row {
			require.LessOrEqual(t, len(text), 32767)
		}
	}
	got, err := ReadIndex(rows)
	require.NoError(t, err)
	for i := range want.Plans {
		want.Plans[i].Hash = Hash(want.Plans[i].Source)
	}
	assert.Equal(t, want, got)
}

func TestIndexOfALaterFormIsPassedOverOrRefused(t *testing.T) {
	rows, err := sampleIndex().rows()
	require.NoError(t, err)
	_, err = ReadIndex(append(rows, []string{"something", "new"}, nil))
	assert.NoError(t, err)
	rows[0][1] = "2"
	_, err = ReadIndex(rows)
	assert.ErrorContains(t, err, "form 2")
}

// Every way of losing a part of the index ends in an error or in an index with
// fewer cells, never in a text that was not sent.
func TestDamagedIndexIsRefused(t *testing.T) {
	good, err := sampleIndex().rows()
	require.NoError(t, err)
	want := sampleIndex()
	for name, damage := range map[string]func([][]string) [][]string{
		"nothing":      func([][]string) [][]string { return nil },
		"no title":     func(r [][]string) [][]string { return r[1:] },
		"no plan":      func(r [][]string) [][]string { return r[:1] },
		"plan lost":    func(r [][]string) [][]string { return append(r[:1:1], r[2:]...) },
		"text lost":    func(r [][]string) [][]string { return append(r[:2:2], r[3:]...) },
		"text changed": func(r [][]string) [][]string { r[2][2] = "AAAA" + r[2][2][4:]; return r },
		"hash changed": func(r [][]string) [][]string { r[1][4] = strings.Repeat("0", 64); return r },
		"size changed": func(r [][]string) [][]string { r[1][5] = "999999999999"; return r },
		"no seed":      func(r [][]string) [][]string { r[1][7] = "-1"; return r },
		"cut cell":     func(r [][]string) [][]string { r[len(r)-1] = r[len(r)-1][:3]; return r },
		"wild count":   func(r [][]string) [][]string { r[len(r)-1][10] = "2000000000"; return r },
	} {
		t.Run(name, func(t *testing.T) {
			rows := make([][]string, len(good))
			for i, row := range good {
				rows[i] = append([]string{}, row...)
			}
			got, err := ReadIndex(damage(rows))
			assert.Error(t, err)
			assert.Empty(t, got.Plans)
		})
	}
	assert.Equal(t, Hash(want.Plans[0].Source), good[1][4])
}
