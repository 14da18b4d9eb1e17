package trade_test

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/trade"
)

// ranged is one function with arguments inside its range, and the last values
// inside and the first outside for each argument that is bounded.
type ranged struct {
	name    string
	call    func(a []float64) float64
	inside  []float64
	edges   [][]float64 // by argument: values that must answer
	outside [][]float64 // by argument: values that must not
}

func one(f func(a float64) float64) func([]float64) float64 {
	return func(a []float64) float64 { return f(a[0]) }
}

func two(f func(a, b float64) float64) func([]float64) float64 {
	return func(a []float64) float64 { return f(a[0], a[1]) }
}

func three(f func(a, b, c float64) float64) func([]float64) float64 {
	return func(a []float64) float64 { return f(a[0], a[1], a[2]) }
}

func four(f func(a, b, c, d float64) float64) func([]float64) float64 {
	return func(a []float64) float64 { return f(a[0], a[1], a[2], a[3]) }
}

func ranges() []ranged {
	var (
		brix    = []float64{0, 85}
		sugary  = []float64{1e-6, 85}
		notBrix = []float64{-1e-9, 85.001}
		dry     = []float64{-1e-9, 0, 85.001}
		size    = []float64{0, 1e6}
		notSize = []float64{-1e-9, math.Inf(1)}
		free    = []float64{-1e6, 0, 1e6}
		share   = []float64{0, 1}
		rate    = []float64{0, 10}
		notRate = []float64{-1e-9, 10.001}
		height  = []float64{-1000, 20000}
		beyond  = []float64{-1000.1, 20000.1}
	)
	return []ranged{
		{"Density", two(trade.Density), []float64{66, 20}, [][]float64{brix, {0, 100}}, [][]float64{notBrix, {-0.001, 100.001}}},
		{"WeightInAir", two(trade.WeightInAir), []float64{66, 20}, [][]float64{brix, {0, 100}}, [][]float64{notBrix, {-0.001, 100.001}}},
		{"SapPerSyrup", two(trade.SapPerSyrup), []float64{2, 66}, [][]float64{sugary, brix}, [][]float64{dry, notBrix}},
		{"SyrupFrom", three(trade.SyrupFrom), []float64{100, 2, 66}, [][]float64{free, brix, sugary}, [][]float64{nil, notBrix, dry}},
		{"Concentrate", three(trade.Concentrate), []float64{100, 2, 8}, [][]float64{free, brix, sugary}, [][]float64{nil, notBrix, dry}},
		{"Hydrometer", two(trade.Hydrometer), []float64{66, 180}, [][]float64{{25, 85}, {32, 212}}, [][]float64{notBrix, {31.99, 212.01}}},
		{"TapsInTree", one(trade.TapsInTree), []float64{14}, [][]float64{size}, [][]float64{notSize}},
		{"WaterBoilsAt", one(trade.WaterBoilsAt), []float64{900}, [][]float64{height}, [][]float64{beyond}},
		{"DrawOffAt", two(trade.DrawOffAt), []float64{66, 900}, [][]float64{brix, height}, [][]float64{notBrix, beyond}},
		{"BoilHeat", four(trade.BoilHeat), []float64{100, 2, 66, 35}, [][]float64{free, {0, 66}, {2, 85}, {32, 212}},
			[][]float64{nil, {-1e-9, 66.001, 85.001}, {0, 1.999, 85.001}, {31.99, 212.01}}},
		{"PanHolds", two(trade.PanHolds), []float64{8, 1.5}, [][]float64{size, size}, [][]float64{notSize, notSize}},
		{"WoodHeat", one(trade.WoodHeat), []float64{0.2}, [][]float64{{0, 0.85}}, [][]float64{{-1e-9, 0.8501}}},
		{"BricksFor", two(trade.BricksFor), []float64{20, 1}, [][]float64{size, {0, 1}}, [][]float64{notSize, {-1, 0.5, 2}}},
		{"SheetWeight", two(trade.SheetWeight), []float64{20, 0.0375}, [][]float64{size, size}, [][]float64{notSize, notSize}},
		{"YearlyShare", four(trade.YearlyShare), []float64{900, 15, 0.05, 0.2}, [][]float64{free, {1e-3, 1000}, rate, share},
			[][]float64{nil, {-1, 0, 1000.1}, notRate, {-1e-9, 1.001}}},
		{"WorthNow", three(trade.WorthNow), []float64{300, 15, 0.05}, [][]float64{free, {0, 1000}, rate}, [][]float64{nil, {-1e-9, 1000.1}, notRate}},
		{"YearsToRepay", three(trade.YearsToRepay), []float64{300, 900, 0.05}, [][]float64{free[:2], {900, 1e6}, {0, 2}}, [][]float64{nil, nil, notRate}},
		{"JarsFilled", three(trade.JarsFilled), []float64{10, 0.25, 0.01}, [][]float64{size, {1e-3, 1e6}, share}, [][]float64{notSize, {-1, 0}, {-1e-9, 1.001}}},
		{"UnitsSold", four(trade.UnitsSold), []float64{14, 12, 40, -1.2}, [][]float64{{1e-3, 1e6}, {1e-3, 1e6}, size, {-5, 0, 5}},
			[][]float64{{-1, 0, math.Inf(1)}, {-1, 0, math.Inf(1)}, notSize, nil}},
	}
}

func TestRanges(t *testing.T) {
	for _, r := range ranges() {
		finite := func(a []float64) bool { x := r.call(a); return !math.IsNaN(x) && !math.IsInf(x, 0) }
		require.True(t, finite(r.inside), r.name)
		for i := range r.inside {
			with := func(x float64) []float64 {
				a := append([]float64(nil), r.inside...)
				a[i] = x
				return a
			}
			for _, x := range r.edges[i] {
				assert.True(t, finite(with(x)), "%s%v", r.name, with(x))
			}
			for _, x := range append(r.outside[i], math.NaN()) {
				assert.True(t, math.IsNaN(r.call(with(x))), "%s%v", r.name, with(x))
			}
		}
	}
}

// TestEveryFunctionSaysWhatItCovers reads the comments: each exported function
// names its source and its range, and stands in the table above.
func TestEveryFunctionSaysWhatItCovers(t *testing.T) {
	tested := map[string]bool{}
	for _, r := range ranges() {
		tested[r.name] = true
	}
	files, fset := []*ast.File{}, token.NewFileSet()
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	for _, entry := range entries {
		if name := entry.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
			file, err := parser.ParseFile(fset, name, nil, parser.ParseComments)
			require.NoError(t, err)
			files = append(files, file)
		}
	}
	pkg, err := doc.NewFromFiles(fset, files, "thawbook/engine/trade")
	require.NoError(t, err)
	require.NotEmpty(t, pkg.Funcs)
	for _, f := range pkg.Funcs {
		assert.True(t, tested[f.Name], "%s is missing from ranges()", f.Name)
		assert.Contains(t, f.Doc, "Valid: ", f.Name)
		assert.Contains(t, f.Doc, "Source: ", f.Name)
	}
}
