package outcome

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"
)

func TestTwentyAreTheSortedColumnsPercentiles(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{1, 2, 3, 19, 20, 21, 41, 1000, 10_000} {
		col := make([]float64, n)
		for i := range col {
			col[i] = math.Round(random.NormFloat64()*100) / 10 // with many alike
		}
		before := slices.Clone(col)
		got := Twenty(col, nil)
		require.Equal(t, before, col, "the column is only read")
		sorted := slices.Sorted(slices.Values(col))
		require.Len(t, got, 20)
		for i, x := range got {
			require.Equal(t, Quantile(sorted, (2*float64(i)+1)/40), x, "dot %d of %d", i, n)
		}
	}
}

func TestTwentyOfANormalColumn(t *testing.T) {
	col := make([]float64, 40_000)
	for i := range col {
		col[i] = distuv.UnitNormal.Quantile((float64(i) + 0.5) / 40_000)
	}
	for i, x := range Twenty(col, make([]float64, 40_000)) {
		assert.InDelta(t, distuv.UnitNormal.Quantile((float64(i)+0.5)/20), x, 0.002)
	}
}

func TestTwentyLeavesOutWhatIsNoNumber(t *testing.T) {
	assert.Nil(t, Twenty([]float64{math.NaN(), math.Inf(1)}, nil))
	assert.Nil(t, Twenty(nil, nil))
	assert.Equal(t, slices.Repeat([]float64{7}, 20), Twenty([]float64{math.NaN(), 7, math.Inf(-1)}, nil))
}
