package outcome

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Worked by hand from Hyndman and Fan's definition of type 7.
func TestQuantileOfType7(t *testing.T) {
	five := []float64{15, 20, 35, 40, 50}
	ten := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	for _, c := range []struct {
		sorted  []float64
		p, want float64
	}{
		{five, 0.4, 29}, {five, 0.25, 20}, {five, 0, 15}, {five, 1, 50},
		{ten, 0.1, 1.9}, {ten, 0.9, 9.1}, {ten, 0.5, 5.5},
		{[]float64{7}, 0.3, 7},
	} {
		assert.InDelta(t, c.want, Quantile(c.sorted, c.p), 1e-12, "%v at %v", c.sorted, c.p)
	}
}

func TestQuantileOfNothing(t *testing.T) {
	assert.True(t, math.IsNaN(Quantile(nil, 0.5)))
	for _, p := range []float64{-0.1, 1.1, math.NaN()} {
		assert.True(t, math.IsNaN(Quantile([]float64{1, 2}, p)), "%v", p)
	}
}

func TestQuantileBetweenEqualNumbersIsThatNumber(t *testing.T) {
	assert.Equal(t, 0.1, Quantile([]float64{0.1, 0.1, 0.1}, 0.37))
}
