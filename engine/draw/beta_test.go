package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// pertBetas are the distributions that pert makes, from peak at the low end to
// peak at the high end, and some that other weights would make.
var pertBetas = [][2]float64{{1, 5}, {1.01, 4.99}, {2, 4}, {7.0 / 3, 11.0 / 3}, {3, 3}, {4.5, 1.5}, {5, 1}, {0.5, 0.5}, {20, 3}}

func TestBetaCDFAgainstGonum(t *testing.T) {
	for _, p := range pertBetas {
		d := newBeta(p[0], p[1])
		for _, x := range []float64{1e-9, 1e-4, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.9999} {
			assert.InEpsilon(t, mathext.RegIncBeta(p[0], p[1], x), d.cdf(x), 1e-12, "%v at %v", p, x)
		}
	}
}

func TestBetaQuantileAgainstGonum(t *testing.T) {
	for _, p := range pertBetas {
		table, reference := tabulate(newBeta(p[0], p[1])), distuv.Beta{Alpha: p[0], Beta: p[1]}
		for _, u := range grid {
			assert.InEpsilon(t, reference.Quantile(u), table.quantile(u), 1e-9, "%v at %v", p, u)
		}
	}
}

// The table against the same distribution worked out afresh, between its knots
// and on both sides of where it ends.
func TestBetaTableFollowsTheQuantile(t *testing.T) {
	for _, p := range pertBetas[:7] {
		table := tabulate(newBeta(p[0], p[1]))
		for l := -tableEnd - 1.0; l < tableEnd+1; l += 0.0137 {
			u := 1 / (1 + math.Exp(-l))
			y := table.logit(math.Log(u / (1 - u)))
			require.InEpsilon(t, 1/(1+math.Exp(-y)), table.quantile(u), 1e-10, "%v at logit %v", p, l)
		}
	}
}

func TestBetaQuantileUndoesTheCDF(t *testing.T) {
	for _, p := range pertBetas {
		d := newBeta(p[0], p[1])
		for _, u := range grid {
			y := d.logit(math.Log(u / (1 - u)))
			if x := 1 / (1 + math.Exp(-y)); x < 0.5 {
				assert.InEpsilon(t, u, d.cdf(x), 1e-9, "%v at %v", p, u)
			} else {
				assert.InEpsilon(t, 1-u, d.mirror().cdf(1/(1+math.Exp(y))), 1e-9, "%v at %v", p, u)
			}
		}
	}
}

func TestPertStaysBetweenItsEnds(t *testing.T) {
	for _, likely := range []float64{6, 7, 10, 17, 18} {
		shape, err := Pert(6, likely, 18)
		require.NoError(t, err)
		before := 6.0
		for u := 1e-12; u < 1; u += 0.0009 {
			x := shape.Quantile(u)
			require.True(t, x >= before && x <= 18, "likely %v at %v: %v after %v", likely, u, x, before)
			before = x
		}
	}
}
