package outcome

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sketch adds a column in pieces of the size given.
func sketch(col []float64, size int) *Sketch {
	s := NewSketch(len(col))
	for piece := range slices.Chunk(col, size) {
		s.Add(piece)
	}
	return s
}

func percentiles(s Summary) []float64 { return []float64{s.P05, s.P10, s.P50, s.P90, s.P95} }

func TestSketchOfThePilotIsExact(t *testing.T) {
	for _, n := range []int{1, 2, 1000, pilot} {
		col := seasonsOf("normal", n)
		want, got := Summarise(col, nil), sketch(col, 1000).Summary()
		assert.Equal(t, percentiles(want), percentiles(got), "n %d", n)
		assert.Equal(t, want.N, got.N)
	}
}

func TestSketchOfFewValuesIsExact(t *testing.T) {
	for _, kind := range []string{"few values", "yes or no", "all the same"} {
		col := seasonsOf(kind, 200000)
		assert.Equal(t, percentiles(Summarise(col, nil)), percentiles(sketch(col, 4096).Summary()), kind)
	}
}

func TestSketchKeepsCountsAndMoments(t *testing.T) {
	for _, kind := range kinds {
		col := seasonsOf(kind, 100001)
		col[7], col[50000] = math.NaN(), math.Inf(-1)
		want, got := Summarise(col, nil), sketch(col, 1024).Summary()
		assert.Equal(t, []int{want.N, want.Missing}, []int{got.N, got.Missing}, kind)
		assert.Equal(t, []float64{want.Min, want.Max}, []float64{got.Min, got.Max}, kind)
		assert.InDelta(t, want.Mean, got.Mean, 1e-12*(1+math.Abs(want.Mean)), kind)
		assert.InDelta(t, want.SD, got.SD, 1e-12*(1+want.SD), kind)
	}
}

// The error is one of the share below the answer: how many seasons of all lie
// below what the sketch says, against how many should.
func TestSketchPercentilesAreNear(t *testing.T) {
	for _, kind := range []string{"normal", "long tail", "many zeros"} {
		const n = 1000000
		col := seasonsOf(kind, n)
		got := percentiles(sketch(col, 1024).Summary())
		slices.Sort(col)
		for i, p := range shares {
			if got[i] == 0 {
				assert.Zero(t, Quantile(col, p), "%s at %v", kind, p)
				continue
			}
			rank, _ := slices.BinarySearch(col, got[i])
			assert.InDelta(t, p, float64(rank)/n, 0.0005, "%s at %v", kind, p)
		}
	}
}

// The worst case: every season after the pilot lies beyond all its edges.
func TestSketchOfRisingSeasonsStaysInside(t *testing.T) {
	got := sketch(seasonsOf("rising", 100000), 1024).Summary()
	before := got.Min
	for _, q := range percentiles(got) {
		require.GreaterOrEqual(t, q, before)
		before = q
	}
	assert.LessOrEqual(t, before, got.Max)
}

func TestSketchOfNothing(t *testing.T) {
	for _, s := range []*Sketch{NewSketch(0), NewSketch(-1), sketch([]float64{math.NaN()}, 1)} {
		got := s.Summary()
		assert.Zero(t, got.N)
		assert.True(t, math.IsNaN(got.Mean) && math.IsNaN(got.P50) && math.IsNaN(got.Min))
	}
}

func TestSketchMayBeReadInBetween(t *testing.T) {
	col := seasonsOf("normal", 40000)
	s := NewSketch(len(col))
	for i, piece := range slices.Collect(slices.Chunk(col, 8000)) {
		s.Add(piece)
		so := Summarise(col[:(i+1)*8000], nil)
		assert.InDelta(t, so.P50, s.Summary().P50, 0.003)
		assert.Equal(t, so.N, s.Summary().N)
	}
}

func BenchmarkSketchAdd(b *testing.B) {
	s := sketch(seasonsOf("normal", pilot+1), 1024)
	chunk := seasonsOf("normal", 1024)
	for b.Loop() {
		s.Add(chunk)
	}
}
