package workbook

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
)

// scenarios are the shipped sheets.
func scenarios(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}

func planOf(t testing.TB, name string, source []byte, load func(string) ([]byte, error)) Plan {
	t.Helper()
	doc, list := sheet.Parse(name, source)
	require.Empty(t, list)
	resolved, list := sheet.Resolve(doc, load)
	require.Zero(t, list.Errors(), list)
	bound, list := formula.Bind(resolved)
	require.Zero(t, list.Errors(), list)
	return planFrom(bound, name, source)
}

// planFrom gives a bound sheet its likely numbers, and ranges about them.
func planFrom(bound *formula.Plan, name string, source []byte) Plan {
	p := Plan{File: name, Source: source, Bound: bound, Likely: outcome.AtLikely(bound), Seasons: bound.Sheet.Seasons, Seed: bound.Sheet.Seed,
		Paragraph: "In the middle season: much as last year."}
	for i, x := range p.Likely {
		var r *Range
		if finite(x) == any(x) && varies(bound.Slots[i]) {
			r = &Range{Low: x * 0.8, Middle: x, High: x * 1.3, Mean: x * 1.01}
		}
		p.Ranges = append(p.Ranges, r)
	}
	return p
}

func scenario(t testing.TB, file string) Plan {
	t.Helper()
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	return planOf(t, file, source, os.ReadFile)
}

// bind binds a sheet that may have mistakes.
func bind(s *sheet.Sheet) *formula.Plan {
	bound, _ := formula.Bind(s)
	return bound
}

// plan binds a sheet that is written in a test.
func plan(t testing.TB, text string) Plan {
	t.Helper()
	return planOf(t, "test.yaml", []byte(text), nil)
}

func write(t testing.TB, in Input) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, in))
	return out.Bytes()
}

func open(t testing.TB, file []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(file))
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, f.Close()) })
	return f
}

// indexOf is the hidden index of a workbook.
func indexOf(t testing.TB, f *excelize.File) Index {
	t.Helper()
	rows, err := f.GetRows(indexSheet)
	require.NoError(t, err)
	ix, err := ReadIndex(rows)
	require.NoError(t, err)
	return ix
}
