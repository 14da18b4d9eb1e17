package plain_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook/guard"
	"thawbook/engine/workbook/plain"
)

func found(t testing.TB, also func(*excelize.File), rows ...[]any) *plain.Found {
	f := excelize.NewFile()
	for i, row := range rows {
		for k, v := range row {
			cell, err := excelize.CoordinatesToCellName(k+1, i+1)
			require.NoError(t, err)
			if v != nil {
				require.NoError(t, f.SetCellValue("Sheet1", cell, v))
			}
		}
	}
	if also != nil {
		also(f)
	}
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	book, list := guard.Open(b.Bytes())
	require.Empty(t, list)
	return plain.Find(book, "USD", map[string]bool{"taps": true})
}

// bound is the sheet that a source makes, which must have nothing wrong.
func bound(t testing.TB, source []byte) *sheet.Sheet {
	doc, list := sheet.Parse("new.yaml", source)
	require.NotNil(t, doc, "%v\n%s", list, source)
	require.Empty(t, list, string(source))
	s, list := sheet.Resolve(doc, nil)
	require.Empty(t, list, string(source))
	_, list = formula.Bind(s)
	require.Empty(t, list, string(source))
	return s
}

func told(f *plain.Found) string {
	var out []string
	for _, d := range f.Told {
		out = append(out, d.Message)
	}
	return strings.Join(out, "\n")
}

func TestAHouseholdsList(t *testing.T) {
	f := found(t, nil,
		[]any{"Our season 2026"},
		[]any{"Item", "How many?", "Unit", "Low", "High", "Notes", "Shop"},
		[]any{"Trees:"},
		[]any{"Taps", 140, "taps", nil, nil, "buckets: \"old\" # ones", "none"},
		[]any{"Sap each", "9.2 gal", nil, 6, 13.8},
		[]any{"Money"},
		[]any{"Jars", "$1.10", nil, 1.5, 2},
		[]any{"Syrup price", "1,240", "$", 900},
		[]any{"Total", 1300},
		[]any{nil, 5, "gal"},
		[]any{"Kettle", "ask Jim"},
	)
	require.Len(t, f.Lists, 1)
	require.Empty(t, f.Logs)
	lines := f.Lists[0].Lines
	require.Len(t, lines, 4)
	assert.Equal(t, plain.Line{Row: 4, ID: "taps_2", Label: "Taps", Unit: "taps", Note: `buckets: "old" # ones`, Chapter: "Trees", Is: lines[0].Is}, lines[0])
	assert.InDelta(t, 140, *lines[0].Is, 0)
	assert.Equal(t, &sheet.GuessValue{Low: 6, Likely: 9.2, High: 13.8}, lines[1].Guess)
	assert.Equal(t, "gal", lines[1].Unit)
	assert.InDelta(t, 1.1, *lines[2].Is, 0, "a low above the number is left out")
	assert.Equal(t, "$", lines[2].Unit)
	assert.InDelta(t, 1240, *lines[3].Is, 0)
	for _, want := range []string{`"Shop" was left out`, `low and high of "Jars"`, `"Syrup price" has a low or a high`, `"Total" adds others up`, "without a name", `"Kettle" has no number`} {
		assert.Contains(t, told(f), want)
	}
	assert.Equal(t, diag.CellNotRead, f.Told[0].Code)
	s := bound(t, f.Source("Ours: 2026", "USD"))
	assert.Equal(t, []string{"Trees", "Money"}, []string{s.Chapters[0].Title, s.Chapters[1].Title})
	assert.Equal(t, `buckets: "old" # ones`, s.Find("taps_2").Note)
	require.Len(t, f.Edits(), 4)
	assert.Equal(t, "Trees", f.Edits()[0].Add.Chapter)
}

func TestNumbersThatAreShownInTheirOwnWay(t *testing.T) {
	f := found(t, func(f *excelize.File) {
		for cell, format := range map[string]string{"B2": "0%", "B3": "yyyy-mm-dd", "B4": "$#,##0.00"} {
			style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
			require.NoError(t, err)
			require.NoError(t, f.SetCellStyle("Sheet1", cell, cell, style))
		}
	}, []any{"Name", "Value"}, []any{"Lost", 0.05}, []any{"First day", 45000}, []any{"Propane", 12})
	require.Len(t, f.Lists, 1)
	require.Len(t, f.Lists[0].Lines, 2)
	assert.InDelta(t, 5, *f.Lists[0].Lines[0].Is, 1e-12)
	assert.Equal(t, "%", f.Lists[0].Lines[0].Unit)
	assert.Equal(t, "$", f.Lists[0].Lines[1].Unit)
	assert.Contains(t, told(f), `"First day" has no number`)
}

func TestABoilLog(t *testing.T) {
	f := found(t, func(f *excelize.File) {
		for cell, format := range map[string]int{"A2": 14, "A3": 14, "D2": 20} {
			style, err := f.NewStyle(&excelize.Style{NumFmt: format})
			require.NoError(t, err)
			require.NoError(t, f.SetCellStyle("Sheet1", cell, cell, style))
		}
	},
		[]any{"Date", "Sap (L)", "Sugar %", "Hours at the fire", "Fuel", "Syrup (qt)", "Weather"},
		[]any{43538, 1400, 2.1, 0.3125, "pallets", 9, "sun"},
		[]any{59, 1500, "2,3", "7:45", "pallets", "10 1/2", "wind"},
		[]any{"March 20", 900, 2, "8 h", "oak", nil},
		[]any{"Total", 3800},
		[]any{nil, 4},
	)
	require.Len(t, f.Logs, 1)
	log := f.Logs[0]
	assert.Equal(t, []plain.Column{{"sap", "Sap", "L"}, {"sugar", "Sugar", "°Bx"}, {"hours", "Hours", "h"}, {"syrup", "Syrup", "qt"}}, log.Columns)
	require.Len(t, log.Days, 3)
	assert.Equal(t, []string{"2019-03-14", "1900-02-28", "March 20"}, []string{log.Days[0].Label, log.Days[1].Label, log.Days[2].Label})
	assert.Equal(t, []float64{1400, 2.1, 7.5, 9}, numbers(log.Days[0]))
	assert.Equal(t, []float64{1500, 2.3, 7.75, 10.5}, numbers(log.Days[1]))
	assert.Nil(t, log.Days[2].Cells[3])
	assert.Contains(t, told(f), `"Weather" was left out`)
	assert.Contains(t, told(f), `"Fuel" holds words`)
	s := bound(t, f.Source("Log", "USD"))
	require.Len(t, s.Table("boil_log").Rows, 2, "a day with a number missing stays out of the table")
	assert.InDelta(t, 7.5, s.Find("boil_log.day_2019_03_14.hours").Is, 1e-12)
}

func numbers(d plain.Day) []float64 {
	var out []float64
	for _, x := range d.Cells {
		out = append(out, *x)
	}
	return out
}

// The published log of testdata, laid out as its own columns.
func TestAPublishedLog(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/family_log_2019.csv")
	require.NoError(t, err)
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	records, err := r.ReadAll()
	require.NoError(t, err)
	var rows [][]any
	for _, record := range records {
		var row []any
		for _, field := range record {
			if x, err := strconv.ParseFloat(field, 64); err == nil {
				row = append(row, x)
			} else {
				row = append(row, field)
			}
		}
		rows = append(rows, row)
	}
	f := found(t, nil, rows...)
	require.Len(t, f.Logs, 1, told(f))
	log := f.Logs[0]
	require.Len(t, log.Days, 8)
	assert.Equal(t, []plain.Column{{"sap", "Sap", "gal"}, {"sugar", "Sugar", "°Bx"}, {"syrup", "Syrup", "gal"}}, log.Columns)
	total := 0.0
	for _, d := range log.Days {
		total += *d.Cells[2]
	}
	assert.InDelta(t, 92.6, total, 0.01, "the producer's own total")
	bound(t, f.Source("2019", "USD"))
}

func TestNothingIsMadeOfWhatIsNoList(t *testing.T) {
	for name, rows := range map[string][][]any{
		"no headings": {{"Buckets", 12}, {"Lids", 12}},
		"words only":  {{"Name", "Colour"}, {"Tree", "brown"}},
		"no rows":     {{"Name", "Number"}},
		"empty":       {},
	} {
		assert.True(t, found(t, nil, rows...).Empty(), name)
	}
}

func TestDatesOfBothCounts(t *testing.T) {
	for _, c := range []struct {
		serial float64
		want   string
	}{{1, "1900-01-01"}, {59, "1900-02-28"}, {61, "1900-03-01"}, {36526, "2000-01-01"}, {45351, "2024-02-29"}, {45352, "2024-03-01"}, {2958465, "9999-12-31"}} {
		f := found(t, func(f *excelize.File) {
			style, err := f.NewStyle(&excelize.Style{NumFmt: 14})
			require.NoError(t, err)
			require.NoError(t, f.SetCellStyle("Sheet1", "A2", "A2", style))
		}, []any{"Date", "Sap", "Syrup"}, []any{c.serial, 100, 2})
		require.Len(t, f.Logs, 1)
		assert.Equal(t, c.want, f.Logs[0].Days[0].Label)
	}
}

func FuzzFind(f *testing.F) {
	f.Add("Item", "How many (gal)", "Taps", "1,240 gal", 3.0)
	f.Add("Date", "Sap", "Syrup [qt]", "7:45", 43538.0)
	f.Fuzz(func(t *testing.T, a, b, c, d string, x float64) {
		s := &guard.Sheet{Name: a, Cells: []guard.Cell{{Row: 1, Column: 1, Kind: guard.Text, Text: a}, {Row: 1, Column: 2, Kind: guard.Text, Text: b}, {Row: 1, Column: 3, Kind: guard.Text, Text: "syrup"},
			{Row: 2, Column: 1, Kind: guard.Text, Text: c}, {Row: 2, Column: 2, Kind: guard.Text, Text: d}, {Row: 2, Column: 3, Kind: guard.Number, Number: x, Shown: guard.Date}}}
		got := plain.Find(&guard.Book{Sheets: []*guard.Sheet{s}}, "USD", map[string]bool{})
		if !got.Empty() && x-x == 0 {
			if doc, list := sheet.Parse("x.yaml", got.Source(a, "USD")); doc == nil {
				t.Fatal(list, string(got.Source(a, "USD")))
			}
		}
	})
}
