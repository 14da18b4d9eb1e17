package draw

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
)

// Var(X-Y) with X = U and Y = U²: 1/180 when both live through the same
// seasons, 1/12 + 4/45 = 0.1722 when each has its own.
func TestCommonSeasons(t *testing.T) {
	const n = 10000
	u, own := column(41, "shared", n), column(41, "another", n)
	same, apart := make([]float64, n), make([]float64, n)
	for i := range u {
		same[i] = u[i] - u[i]*u[i]
		apart[i] = u[i] - own[i]*own[i]
	}
	assert.InEpsilon(t, 1.0/180, stat.Variance(same, nil), 0.001)
	assert.InEpsilon(t, 1.0/12+4.0/45, stat.Variance(apart, nil), 0.03)
}

// McKay, Beckman and Conover 1979: the mean of a linear model over a Latin
// hypercube varies far less than over plain draws. Each cell leaves 1/12n² of
// the variance of one, so a thousandth is ample with 100 seasons.
func TestLinearModelVariesFarLessThanWithPlainDraws(t *testing.T) {
	const n, trials = 100, 400
	weight := []float64{1, -2, 3, 0.5}
	plain := rand.New(rand.NewPCG(1, 2))
	var hypercube, drawn []float64
	for trial := range trials {
		h, d := 0.0, 0.0
		for g, w := range weight {
			for _, u := range column(uint64(trial), fmt.Sprint("g", g), n) {
				h += w * u / n
				d += w * plain.Float64() / n
			}
		}
		hypercube, drawn = append(hypercube, h), append(drawn, d)
	}
	assert.InDelta(t, 1.25, stat.Mean(hypercube, nil), 1e-3)
	assert.Less(t, stat.Variance(hypercube, nil), stat.Variance(drawn, nil)/1000)
}
