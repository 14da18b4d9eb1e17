package outcome

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestKthAgreesWithSorting(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	col := make([]float64, 3000)
	for i := range col {
		col[i] = math.Floor(r.NormFloat64() * 40) // many alike
	}
	sorted := slices.Clone(col)
	slices.Sort(sorted)
	kept := slices.Clone(col)
	for _, k := range []int{1, 2, 300, 1500, 2999, 3000} {
		assert.Equal(t, sorted[k-1], Kth(col, k, false, nil))
		assert.Equal(t, sorted[3000-k], Kth(col, k, true, make([]float64, 4000)))
	}
	assert.Equal(t, kept, col, "the column is only read")
}

func TestKthOfSeasonsWithoutANumber(t *testing.T) {
	col := []float64{math.NaN(), 3, math.Inf(1), 1, math.NaN()}
	assert.Equal(t, 1.0, Kth(col, 1, false, nil))
	assert.Equal(t, 3.0, Kth(col, 2, false, nil))
	assert.Equal(t, math.Inf(1), Kth(col, 1, true, nil))
	assert.True(t, math.IsNaN(Kth(col, 4, false, nil)), "three seasons cannot keep four")
	assert.True(t, math.IsNaN(Kth(col, 0, false, nil)))
	assert.True(t, math.IsNaN(Kth(nil, 1, true, nil)))
}
