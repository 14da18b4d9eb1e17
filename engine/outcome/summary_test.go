package outcome

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// seasonsOf makes columns of several kinds, the same ones every time.
func seasonsOf(kind string, n int) []float64 {
	r := rand.New(rand.NewPCG(41, uint64(n)))
	x := make([]float64, n)
	for i := range x {
		switch kind {
		case "normal":
			x[i] = r.NormFloat64()
		case "long tail":
			x[i] = math.Exp(3 * r.NormFloat64())
		case "few values":
			x[i] = float64(r.IntN(5))
		case "yes or no":
			x[i] = float64(r.IntN(2))
		case "all the same":
			x[i] = 3
		case "many zeros":
			x[i] = max(0, r.NormFloat64())
		case "rising":
			x[i] = float64(i)
		case "falling":
			x[i] = float64(n - i)
		case "there and back":
			x[i] = float64(min(i, n-i))
		}
	}
	return x
}

var kinds = []string{"normal", "long tail", "few values", "yes or no", "all the same", "many zeros", "rising", "falling", "there and back"}

// Referee: gonum's moments, and quantiles of the sorted column.
func TestSummariseAgainstSortingAndGonum(t *testing.T) {
	for _, kind := range kinds {
		for _, n := range []int{2, 3, 10, 11, 33, 100, 1000, 9999, 10000} {
			t.Run(fmt.Sprint(kind, " ", n), func(t *testing.T) {
				col := seasonsOf(kind, n)
				before := slices.Clone(col)
				s := Summarise(col, make([]float64, n))
				require.Equal(t, before, col, "the column keeps its order")
				sorted := slices.Sorted(slices.Values(col))
				mean, sd := stat.MeanStdDev(col, nil)
				assert.Equal(t, []int{n, 0}, []int{s.N, s.Missing})
				assert.InDelta(t, mean, s.Mean, 1e-12*(1+math.Abs(mean)))
				assert.InDelta(t, sd, s.SD, 1e-12*(1+sd))
				assert.Equal(t, []float64{sorted[0], sorted[n-1]}, []float64{s.Min, s.Max})
				for i, q := range []float64{s.P05, s.P10, s.P50, s.P90, s.P95} {
					assert.Equal(t, Quantile(sorted, shares[i]), q)
				}
			})
		}
	}
}

func TestSummariseLeavesOutWhatIsNoNumber(t *testing.T) {
	s := Summarise([]float64{math.NaN(), 4, math.Inf(1), 2, math.Inf(-1)}, nil)
	assert.Equal(t, 2, s.N)
	assert.Equal(t, 3, s.Missing)
	assert.Equal(t, 3.0, s.Mean)
	assert.Equal(t, math.Sqrt2, s.SD)
	assert.Equal(t, 3.0, s.P50)
	assert.Equal(t, []float64{2, 4}, []float64{s.Min, s.Max})
}

func TestSummariseOfNothing(t *testing.T) {
	for _, col := range [][]float64{nil, {math.NaN(), math.NaN()}} {
		s := Summarise(col, nil)
		assert.Equal(t, []int{0, len(col)}, []int{s.N, s.Missing})
		for _, x := range []float64{s.Mean, s.SD, s.Min, s.Max, s.P05, s.P10, s.P50, s.P90, s.P95} {
			assert.True(t, math.IsNaN(x))
		}
	}
}

func TestSummariseOfOneSeason(t *testing.T) {
	s := Summarise([]float64{7}, nil)
	assert.Equal(t, []float64{7, 7, 7, 7, 7}, []float64{s.Mean, s.Min, s.P05, s.P95, s.Max})
	assert.True(t, math.IsNaN(s.SD))
}

func TestSteadyIsTheSummaryOfEqualSeasons(t *testing.T) {
	for _, n := range []int{2, 5, 1000} {
		assert.Equal(t, Summarise(slices.Repeat([]float64{3.7}, n), nil), Steady(3.7, n))
	}
	one := Steady(3.7, 1)
	assert.True(t, one.N == 1 && one.P50 == 3.7 && math.IsNaN(one.SD))
	lost := Steady(math.NaN(), 8)
	assert.Equal(t, []int{0, 8}, []int{lost.N, lost.Missing})
	assert.True(t, math.IsNaN(lost.Mean) && math.IsNaN(lost.SD))
}

// No season is that large, but an answer that is infinite could not be written.
func TestSummariseOfTheLargestNumbers(t *testing.T) {
	s := Summarise([]float64{-math.MaxFloat64, math.MaxFloat64, math.MaxFloat64, -math.MaxFloat64}, nil)
	assert.Zero(t, s.Mean)
	assert.Zero(t, s.P50)
	assert.Equal(t, math.MaxFloat64, s.P95)
	// The standard deviation is √(4/3) of the largest number: it has none.
	assert.True(t, math.IsInf(s.SD, 1))
	s = Summarise([]float64{-1e200, 1e200}, nil)
	assert.InEpsilon(t, math.Sqrt2*1e200, s.SD, 1e-14)
}

func TestPlacePutsEveryRankRight(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, kind := range kinds {
		for range 20 {
			n := 1 + r.IntN(3000)
			x := seasonsOf(kind, n)
			sorted := slices.Sorted(slices.Values(x))
			ranks := make([]int, r.IntN(8))
			for i := range ranks {
				ranks[i] = r.IntN(n)
			}
			slices.Sort(ranks)
			place(x, ranks)
			for _, k := range ranks {
				require.Equal(t, sorted[k], x[k], "%s %d ranks %v", kind, n, ranks)
			}
			slices.Sort(x)
			require.Equal(t, sorted, x, "numbers were lost")
		}
	}
}

// Where every guess at a pivot is wrong, sorting takes over.
func TestPlaceSortsWhenItsRoundsAreOver(t *testing.T) {
	x := seasonsOf("normal", 1000)
	placeFrom(x, 0, []int{500}, 0)
	assert.True(t, slices.IsSorted(x))
}

func BenchmarkSummarise(b *testing.B) {
	for _, kind := range kinds {
		col, scratch := seasonsOf(kind, 10000), make([]float64, 10000)
		b.Run(kind, func(b *testing.B) {
			for b.Loop() {
				Summarise(col, scratch)
			}
		})
	}
}

// BenchmarkSort is what Summarise's quantiles would cost by sorting.
func BenchmarkSort(b *testing.B) {
	for _, kind := range kinds[:2] {
		col, scratch := seasonsOf(kind, 10000), make([]float64, 10000)
		b.Run(kind, func(b *testing.B) {
			for b.Loop() {
				copy(scratch, col)
				slices.Sort(scratch)
			}
		})
	}
}
