//go:build !js

package workbook

import (
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

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
