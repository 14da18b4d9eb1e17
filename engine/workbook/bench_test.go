package workbook

import (
	"bytes"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// writeBare writes the cells of grids with the library alone: values and formulas,
// and nothing else.
func writeBare(b testing.TB, grids []*grid, w io.Writer) {
	f := excelize.NewFile()
	defer f.Close()
	for _, g := range grids {
		_, err := f.NewSheet(g.name)
		require.NoError(b, err)
		for r, row := range g.rows {
			for c, cell := range row.cells {
				at := place{c + 1, r + 1}.String()
				switch {
				case cell.formula != "":
					err = f.SetCellFormula(g.name, at, cell.formula)
				case cell.value != nil:
					err = f.SetCellValue(g.name, at, written(cell))
				}
				require.NoError(b, err)
			}
		}
	}
	require.NoError(b, f.Write(w))
}

// BenchmarkOut writes the household sheet and says how many times as long that
// takes, and how many times as large it is, as the same cells written bare.
func BenchmarkOut(b *testing.B) {
	in := Input{Plans: []Plan{scenario(b, "../../scenarios/heron-ridge-pallets.yaml")}}
	grids := layOut(in).grids
	var ours, theirs bytes.Buffer
	var here, there time.Duration
	for b.Loop() {
		ours.Reset()
		theirs.Reset()
		start := time.Now()
		require.NoError(b, Write(&ours, in))
		here += time.Since(start)
		start = time.Now()
		writeBare(b, grids, &theirs)
		there += time.Since(start)
	}
	b.ReportMetric(here.Seconds()/there.Seconds(), "times-bare")
	b.ReportMetric(float64(ours.Len())/float64(theirs.Len()), "times-bare-size")
	b.ReportMetric(float64(ours.Len()), "bytes")
}

// BenchmarkLayOut is what spelling and laying out take of that.
func BenchmarkLayOut(b *testing.B) {
	in := Input{Plans: []Plan{scenario(b, "../../scenarios/heron-ridge-pallets.yaml")}}
	for b.Loop() {
		layOut(in)
	}
}
