package outcome

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Worked from the definition by two routes: the classic table of ten pairs
// without ties, and its like with ties by average ranks.
func TestSpearman(t *testing.T) {
	x := []float64{106, 86, 100, 101, 99, 103, 97, 113, 112, 110}
	y := []float64{7, 0, 27, 50, 28, 29, 20, 12, 6, 17}
	assert.InDelta(t, -0.175757575758, Spearman(x, y), 1e-12)
	// Ranks 1, 2.5, 2.5, 4 and 1, 3, 2, 4: 4.5 / √(4.5·5).
	assert.InDelta(t, 4.5/math.Sqrt(22.5), Spearman([]float64{1, 2, 2, 3}, []float64{1, 3, 2, 4}), 1e-15)
}

func TestSpearmanOfOrders(t *testing.T) {
	x := []float64{1, 2, 3, 4, 5}
	assert.Equal(t, 1.0, Spearman(x, []float64{0, 1, 10, 11, 1e9}))
	assert.Equal(t, -1.0, Spearman(x, []float64{5, 4, 3, 2, -1e9}))
}

// A rank correlation does not change when either column is stretched in a way
// that keeps its order.
func TestSpearmanSeesOrderAlone(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	x, y := make([]float64, 500), make([]float64, 500)
	for i := range x {
		x[i] = r.NormFloat64()
		y[i] = x[i] + r.NormFloat64()
	}
	stretched := slices.Clone(y)
	for i, v := range y {
		stretched[i] = math.Exp(v)
	}
	assert.Equal(t, Spearman(x, y), Spearman(x, stretched))
	assert.Equal(t, Spearman(x, y), Spearman(y, x))
}

func TestSpearmanLeavesOutWhatIsNoNumber(t *testing.T) {
	x := []float64{1, math.NaN(), 2, 3, 4}
	y := []float64{1, 2, 3, math.Inf(1), 4}
	assert.Equal(t, 1.0, Spearman(x, y))
}

func TestSpearmanOfNothing(t *testing.T) {
	for _, c := range [][2][]float64{{nil, nil}, {{1}, {2}}, {{1, 2}, {1, 2, 3}}, {{1, 2, 3}, {5, 5, 5}}, {{1, math.NaN()}, {1, 2}}} {
		assert.True(t, math.IsNaN(Spearman(c[0], c[1])), "%v", c)
	}
}
