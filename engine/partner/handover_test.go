package partner

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine"
	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/workbook"
)

// rows are the texts of a sheet of a workbook.
func rows(t *testing.T, file []byte, sheet string) [][]string {
	f, err := excelize.OpenReader(bytes.NewReader(file))
	require.NoError(t, err)
	defer f.Close()
	out, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	return out
}

func said(rows [][]string) string {
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(strings.Join(r, " | ") + "\n")
	}
	return b.String()
}

// What goes out is what the engine answers: paragraph, ranges, seasons, seed,
// cautions, what to lay in.
func TestHandOverGathersWhatTheEngineAnswers(t *testing.T) {
	book := opened(t, "../../scenarios/heron-ridge-pallets.yaml")
	seed := uint64(7)
	o := engine.Options{Seasons: 400, Seed: &seed}
	var out bytes.Buffer
	require.NoError(t, HandOver(&out, []*engine.Book{book}, HandOverOptions{Options: o, Chance: "19/20"}))
	r, err := book.Reckon(o)
	require.NoError(t, err)
	cover := said(rows(t, out.Bytes(), "Start here"))
	assert.Contains(t, cover, r.Paragraph)
	assert.Contains(t, cover, "400 drawn seasons, seed 7")
	for _, c := range r.Cautions {
		assert.Contains(t, cover, c.Text)
	}
	in, err := gather([]*engine.Book{book}, HandOverOptions{Options: o, Chance: "19/20"})
	require.NoError(t, err)
	for _, a := range r.Lines {
		got := in.Plans[0].Ranges[book.Plan().Find(a.ID)]
		if a.P50 == nil {
			assert.Nil(t, got, a.ID)
			continue
		}
		assert.Equal(t, [4]float64{*a.P10, *a.P50, *a.P90, *a.Mean}, [4]float64{got.Low, got.Middle, got.High, got.Mean}, a.ID)
	}
	list, err := book.LayIn(engine.LayInQuestion{Options: o, Chance: "19/20"})
	require.NoError(t, err)
	layIn := said(rows(t, out.Bytes(), "Lay in"))
	assert.Contains(t, layIn, list.ChanceShown)
	n := 0
	for _, g := range list.Groups {
		for _, item := range g.Items {
			assert.Contains(t, layIn, item.Label)
			n++
		}
	}
	assert.Len(t, in.LayIn.Needs, n)
}

// Several go side by side over the same seasons, the first's, however many each
// would draw by itself.
func TestHandOverComparesOverTheSameSeasons(t *testing.T) {
	books := []*engine.Book{opened(t, "../../scenarios/heron-ridge-pallets.yaml"), opened(t, "../../scenarios/heron-ridge-propane.yaml")}
	in, err := gather(books, HandOverOptions{Options: engine.Options{Seasons: 300}})
	require.NoError(t, err)
	c, err := engine.Compare(books, engine.CompareOptions{Options: engine.Options{Seasons: 300}})
	require.NoError(t, err)
	require.Len(t, in.Compare.Lines, len(c.Lines))
	for i, line := range c.Lines {
		assert.Equal(t, line.ID, in.Compare.Lines[i].ID)
		assert.Equal(t, *line.Difference[0].P50, in.Compare.Lines[i].Differences[0].Middle)
	}
	assert.Equal(t, in.Plans[0].Seed, in.Plans[1].Seed)
	assert.Equal(t, 300, in.Plans[1].Seasons)
	var out bytes.Buffer
	require.NoError(t, workbook.Write(&out, in))
	assert.Contains(t, said(rows(t, out.Bytes(), "Compare")), "Less the first, over the same seasons")
}

// Sheets that have no outcome in common go out together all the same, without a
// comparison.
func TestHandOverOfSheetsWithNothingInCommon(t *testing.T) {
	books := []*engine.Book{opened(t, yard), text(t, "USD")}
	in, err := gather(books, HandOverOptions{Options: engine.Options{Seasons: 200}})
	require.NoError(t, err)
	assert.Len(t, in.Plans, 2)
}

func text(t *testing.T, money string) *engine.Book {
	source := "thawbook: 1\ntitle: Other\nmoney: " + money + "\nchapters:\n  - title: A\n    lines:\n      - {id: z, label: Z, is: 3, unit: $}\n"
	book, list := engine.Open("z.yaml", func(string) ([]byte, error) { return []byte(source), nil })
	require.Empty(t, list)
	return book
}

func TestHandOverRefuses(t *testing.T) {
	book := opened(t, yard)
	var d diag.Diagnostic
	for name, books := range map[string][]*engine.Book{
		"nothing":     nil,
		"other money": {book, text(t, "CAD")},
		"too many":    make([]*engine.Book, workbook.MaxPlans+1),
	} {
		err := HandOver(io.Discard, books, HandOverOptions{})
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, diag.NotComparable, d.Code, name)
		assert.NotEmpty(t, d.Hint, name)
	}
	err := HandOver(io.Discard, []*engine.Book{book}, HandOverOptions{Options: engine.Options{Progress: func(int, int) bool { return false }}})
	assert.True(t, errors.Is(err, columns.ErrStopped), err)
	err = HandOver(io.Discard, []*engine.Book{opened(t, "../../scenarios/heron-ridge-pallets.yaml")}, HandOverOptions{Chance: "nine"})
	assert.Error(t, err, "a chance that is none")
}

// A sheet with a mistake goes out with the lines that can be reckoned, and says
// what is wrong.
func TestHandOverOfASheetWithAMistake(t *testing.T) {
	source := "thawbook: 1\ntitle: Half\nchapters:\n  - title: A\n    lines:\n      - {id: a, label: A, is: 3, unit: gal}\n      - {id: b, label: B, formula: a + nothing, unit: gal}\n      - {id: c, label: C, formula: a * 2, unit: gal}\n"
	book, _ := engine.Open("h.yaml", func(string) ([]byte, error) { return []byte(source), nil })
	require.NotNil(t, book)
	var out bytes.Buffer
	require.NoError(t, HandOver(&out, []*engine.Book{book}, HandOverOptions{Made: "2026-11-25T10:00:00Z"}))
	assert.Contains(t, said(rows(t, out.Bytes(), "Start here")), `b: nothing is called "nothing".`)
	assert.Contains(t, said(rows(t, out.Bytes(), "Plan")), "a * 2")
	f, err := excelize.OpenReader(&out)
	require.NoError(t, err)
	defer f.Close()
	props, err := f.GetDocProps()
	require.NoError(t, err)
	assert.Equal(t, "2026-11-25T10:00:00Z", props.Created)
}
