package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRecordsComeUpEquallyOften(t *testing.T) {
	past := []float64{31, 18, 25, 25, 40}
	const n = 1000
	drawn := make([]float64, n)
	Draw(Records(past), NewStream(41, "sap", n), drawn, 0)
	counts := map[float64]int{}
	for _, x := range drawn {
		counts[x]++
	}
	assert.Equal(t, map[float64]int{18: 200, 25: 400, 31: 200, 40: 200}, counts)
	assert.Equal(t, []float64{31, 18, 25, 25, 40}, past, "the caller's values stay in their order")
}

func TestRecordsRise(t *testing.T) {
	shape := Records([]float64{3, 1, 2})
	for u, want := range map[float64]float64{1e-12: 1, 0.33: 1, 0.34: 2, 0.66: 2, 0.67: 3, 1 - 1e-16: 3} {
		assert.Equal(t, want, shape.Quantile(u))
	}
}

func TestRecordsLeaveOutWhatIsNoNumber(t *testing.T) {
	shape := Records([]float64{math.NaN(), 4, math.Inf(1)})
	assert.Equal(t, 4.0, shape.Quantile(0.01))
	assert.Equal(t, 4.0, shape.Quantile(0.99))
	assert.True(t, math.IsNaN(Records(nil).Quantile(0.5)))
	assert.True(t, math.IsNaN(shape.Quantile(math.NaN())))
}
