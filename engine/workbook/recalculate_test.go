//go:build !js

package workbook

import (
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// calculate works one cell by the library's own calculator, which shares nothing
// with the one that Write checks itself by. It is false when the cell comes to an
// error.
func calculate(f *excelize.File, at where) (float64, bool) {
	text, err := f.CalcCellValue(at.Sheet, at.Cell, excelize.Options{RawCellValue: true})
	if err != nil {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil
}

// agree holds every worked cell to what the engine says, to a part in a thousand
// million.
func agree(t *testing.T, f *excelize.File, a answers, c oneCase) {
	t.Helper()
	doubtful := map[int]bool{}
	for _, k := range append(c.Doubtful, c.Edge...) {
		doubtful[k] = true
	}
	for k, at := range a.Worked {
		// The calculator's INT, ABS, EXP and their like take an error for 0, so what
		// hangs on one is left to the engines outside, which do not.
		if doubtful[k] {
			continue
		}
		got, ok := calculate(f, at)
		want := *c.Want[k]
		assert.True(t, ok && near(got, want), "%s: %v there (%v), %v here, after %v", at.ID, got, ok, want, c.Set)
	}
}

// The library's calculator needs more memory for a whole workbook than a browser's
// engine gives, so these run natively only.

// casesHere is how many changes each workbook is put through by the library's
// calculator, which takes a tenth of a second for each.
const casesHere = 36

func TestWorkbooksComeToWhatTheEngineComesTo(t *testing.T) {
	for k, file := range scenarios(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			p := scenario(t, file)
			f := open(t, write(t, Input{Plans: []Plan{p}}))
			a := answersFor(t, p, indexOf(t, f), casesHere, uint64(100+k))
			require.Greater(t, len(a.Worked), 10)
			for _, c := range a.Cases {
				before := map[where]string{}
				for _, s := range c.Set {
					at := a.Inputs[s.At]
					text, err := f.GetCellValue(at.Sheet, at.Cell, excelize.Options{RawCellValue: true})
					require.NoError(t, err)
					before[at] = text
					require.NoError(t, f.SetCellValue(at.Sheet, at.Cell, s.Value))
				}
				agree(t, f, a, c)
				for at, text := range before {
					if x, err := strconv.ParseFloat(text, 64); err == nil {
						require.NoError(t, f.SetCellValue(at.Sheet, at.Cell, x))
					} else {
						require.NoError(t, f.SetCellStr(at.Sheet, at.Cell, text))
					}
				}
			}
		})
	}
}
