package back

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/guard"
)

func bound(t *testing.T, file string) (workbook.Plan, *formula.Plan) {
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	doc, list := sheet.Parse(file, source)
	require.Empty(t, list)
	resolved, list := sheet.Resolve(doc, os.ReadFile)
	require.Zero(t, list.Errors())
	plan, list := formula.Bind(resolved)
	require.Zero(t, list.Errors())
	return workbook.Plan{File: filepath.Base(file), Source: source, Bound: plan, Likely: outcome.AtLikely(plan),
		Seasons: resolved.Seasons, Seed: resolved.Seed, Ranges: make([]*workbook.Range, len(plan.Slots))}, plan
}

func out(t *testing.T, p workbook.Plan) []byte {
	var b bytes.Buffer
	require.NoError(t, workbook.Write(&b, workbook.Input{Plans: []workbook.Plan{p}}))
	return b.Bytes()
}

func reported(t *testing.T, file []byte, here *formula.Plan) Report {
	book, list := guard.Open(file)
	require.NotNil(t, book, list)
	return Find(book).Compare(1, nil, here)
}

func sheets(t *testing.T) []string {
	files, err := filepath.Glob("../../../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}

func TestNothingChangedReportsNothing(t *testing.T) {
	for _, file := range sheets(t) {
		p, plan := bound(t, file)
		r := reported(t, out(t, p), plan)
		assert.Empty(t, r.Changes, file)
		assert.Empty(t, r.Lost, file)
		assert.Empty(t, r.Told, file)
	}
}

// edited is a workbook in which some numbers were typed over, and the lines that
// were.
func edited(t *testing.T, file []byte, seed uint64, n int, also func(*excelize.File)) ([]byte, []string) {
	book, list := guard.Open(file)
	require.NotNil(t, book, list)
	w := Find(book)
	require.NotNil(t, w.Index)
	f, err := excelize.OpenReader(bytes.NewReader(file))
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(seed, 7))
	var ids []string
	entries := slices.Clone(w.Index.Entries)
	r.Shuffle(len(entries), func(i, j int) { entries[i], entries[j] = entries[j], entries[i] })
	for _, e := range entries {
		if len(ids) == n || e.Kind != sheet.Is || e.Formula != "" || slices.Contains(ids, e.ID) {
			continue
		}
		require.NoError(t, f.SetCellValue(e.Sheet, e.Cell, 3.25+float64(r.IntN(50))))
		ids = append(ids, e.ID)
	}
	if also != nil {
		also(f)
	}
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	slices.Sort(ids)
	return b.Bytes(), ids
}

func changed(r Report) []string {
	var ids []string
	for _, c := range r.Changes {
		ids = append(ids, c.About)
	}
	slices.Sort(ids)
	return ids
}

func TestRandomEditsComeBackAsThemselves(t *testing.T) {
	for k, file := range sheets(t) {
		p, plan := bound(t, file)
		for seed := range uint64(3) {
			came, ids := edited(t, out(t, p), uint64(k)*10+seed, 1+int(seed)*4, nil)
			r := reported(t, came, plan)
			assert.Equal(t, ids, changed(r), file)
			for _, c := range r.Changes {
				assert.Equal(t, Numbers, c.What)
				assert.NotEmpty(t, c.Edits, c.Key)
				assert.NotEqual(t, c.Sent, c.Came)
			}
		}
	}
}

func TestEditsAreFoundWhereverRowsAndSheetsWent(t *testing.T) {
	p, plan := bound(t, "../../../scenarios/back-yard-twelve.yaml")
	file := out(t, p)
	for name, move := range map[string]func(f *excelize.File){
		"rows put in above": func(f *excelize.File) { require.NoError(t, f.InsertRows("Plan", 2, 3)) },
		"a sheet renamed":   func(f *excelize.File) { require.NoError(t, f.SetSheetName("Plan", "Our numbers")) },
		"a column put in":   func(f *excelize.File) { require.NoError(t, f.InsertCols("Plan", "B", 1)) },
	} {
		came, ids := edited(t, file, 5, 4, move)
		assert.Equal(t, ids, changed(reported(t, came, plan)), name)
	}
}

func TestAWorkbookWithoutItsHiddenListSaysSo(t *testing.T) {
	p, plan := bound(t, "../../../scenarios/back-yard-twelve.yaml")
	came, _ := edited(t, out(t, p), 5, 0, func(f *excelize.File) {
		require.NoError(t, f.DeleteSheet("thawbook"))
	})
	r := reported(t, came, plan)
	require.NotEmpty(t, r.Told)
	assert.Equal(t, diag.MarksLost, r.Told[0].Code)
}

func TestTextWhereANumberStoodIsToldAndNotTaken(t *testing.T) {
	p, plan := bound(t, "../../../scenarios/back-yard-twelve.yaml")
	file := out(t, p)
	book, _ := guard.Open(file)
	w := Find(book)
	f, err := excelize.OpenReader(bytes.NewReader(file))
	require.NoError(t, err)
	for _, e := range w.Index.Entries {
		if e.ID == "taps" {
			require.NoError(t, f.SetCellStr(e.Sheet, e.Cell, "a dozen or so"))
		}
	}
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	r := reported(t, b.Bytes(), plan)
	codes := map[diag.Code]bool{}
	for _, d := range r.Told {
		codes[d.Code] = true
	}
	assert.True(t, codes[diag.CellNotRead], "%v %v", r.Told, r.Changes)
}
