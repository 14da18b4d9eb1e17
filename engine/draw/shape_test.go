package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

var none = math.NaN()

// grid holds points from deep in one tail to deep in the other.
var grid = []float64{1e-9, 1e-6, 0.0001, 0.01, 0.1, 0.25, 0.3, 0.5, 0.62, 0.75, 0.9, 0.99, 0.9999, 1 - 1e-6, 1 - 1e-9}

// Outside reference: gonum's distributions with the parameters that each shape
// has by its definition.
func TestShapesAgainstGonum(t *testing.T) {
	type quantiler interface{ Quantile(float64) float64 }
	cases := []struct {
		shape             string
		low, likely, high float64
		want              quantiler
	}{
		{"triangle", 6, 10, 18, distuv.NewTriangle(6, 18, 10, nil)},
		{"triangle", 6, 6, 18, distuv.NewTriangle(6, 18, 6, nil)},
		{"triangle", -18, -6, -6, distuv.NewTriangle(-18, -6, -6, nil)},
		{"normal", 7, 11.5, 16, distuv.Normal{Mu: 11.5, Sigma: 4.5 / distuv.UnitNormal.Quantile(0.9)}},
		{"normal", -3, none, 5, distuv.Normal{Mu: 1, Sigma: 4 / distuv.UnitNormal.Quantile(0.9)}},
		{"lognormal", 7, none, 16, distuv.LogNormal{Mu: math.Log(112) / 2, Sigma: math.Log(16.0/7) / 2 / distuv.UnitNormal.Quantile(0.9)}},
		{"even", 2, 3, 4, distuv.Uniform{Min: 2, Max: 4}},
		{"even", -4, none, 2, distuv.Uniform{Min: -4, Max: 2}},
	}
	for _, c := range cases {
		shape, err := New(c.shape, c.low, c.likely, c.high, nil, nil)
		require.NoError(t, err)
		for _, u := range grid {
			assert.InEpsilon(t, c.want.Quantile(u), shape.Quantile(u), 1e-9, "%s at %v", c.shape, u)
		}
	}
}

// Worked out from the equations by two routes, see each shape's source.
func TestShapesAgainstWorkedValues(t *testing.T) {
	cases := []struct {
		shape             string
		low, likely, high float64
		want              map[float64]float64
		mean, variance    float64
	}{
		{"triangle", 6, 10, 18, map[float64]float64{0.1: 8.190890, 0.5: 11.071797, 0.9: 14.901613}, 11.333333, 6.222222},
		{"pert", 6, 10, 18, map[float64]float64{0.1: 7.836332, 0.5: 10.509750, 0.9: 13.733480}, 10.666667, 2.211083 * 2.211083},
		{"lognormal", 7, none, 16, map[float64]float64{0.1: 7, 0.5: 10.583005, 0.9: 16}, 11.148025, none},
	}
	for _, c := range cases {
		shape, err := New(c.shape, c.low, c.likely, c.high, nil, nil)
		require.NoError(t, err)
		for u, want := range c.want {
			assert.InDelta(t, want, shape.Quantile(u), 5e-7, "%s at %v", c.shape, u)
		}
		const n = 1 << 20
		drawn := make([]float64, n)
		Draw(shape, NewStream(1, "g", n), drawn, 0)
		mean, sd := stat.MeanStdDev(drawn, nil)
		assert.InEpsilon(t, c.mean, mean, 1e-6, c.shape)
		if !math.IsNaN(c.variance) {
			assert.InEpsilon(t, c.variance, sd*sd, 2e-5, c.shape)
		}
	}
}

func TestLognormalParameters(t *testing.T) {
	shape, err := Lognormal(7, 10.58, 16)
	require.NoError(t, err)
	assert.InDelta(t, 2.359249, shape.(lognormal).mu, 5e-7)
	assert.InDelta(t, 0.322530, shape.(lognormal).sigma, 5e-7)
}

func TestNewRefuses(t *testing.T) {
	cases := []struct {
		shape             string
		low, likely, high float64
		floor, ceiling    *float64
		text              string
	}{
		{"triangle", 14, 9, 5, nil, nil, "low 14 is above high 5 (in order they are low 5, likely 9, high 14)"},
		{"pert", 5, 4, 14, nil, nil, "likely 4 is below low 5 (move likely to 5)"},
		{"triangle", 5, 15, 14, nil, nil, "likely 15 is above high 14 (move likely to 14)"},
		{"pert", 5, none, 14, nil, nil, "likely is NaN, wanted a number"},
		{"triangle", -1, 9, 14, at(0), nil, "low -1 is below the floor 0 (move low to 0)"},
		{"pert", 5, 9, 14, nil, at(12), "high 14 is above the ceiling 12 (move high to 12)"},
		{"pert", 5, 13, 14, nil, at(12), "high 14 is above the ceiling 12 (more than one number has to move, or the bound does)"},
		{"triangle", -1, 9, 14, at(0), at(12), "low -1 is below the floor 0 (more than one number has to move, or the bound does)"},
		{"even", -1, 1, 3, at(0), nil, "low -1 is below the floor 0 (more than one number has to move, or the bound does)"},
		{"normal", 5, 9, 13, at(0), nil, "a normal shape reaches below the floor 0 (leave the shape out: the usual one keeps to floor and ceiling)"},
		{"lognormal", 5, none, 13, at(1), nil, "a lognormal shape reaches below the floor 1 (leave the shape out: the usual one keeps to floor and ceiling)"},
		{"lognormal", 5, none, 13, at(0), at(99), "a lognormal shape reaches above the ceiling 99 (leave the shape out: the usual one keeps to floor and ceiling)"},
		{"lognormal", 0, 9, 13, nil, nil, "low 0 is not above 0, as a lognormal shape must be (move low to 6.2)"},
		{"lognormal", -2, none, 13, nil, nil, "low -2 is not above 0, as a lognormal shape must be (give a low above 0 or another shape)"},
		{"normal", 3, 5, 14, nil, nil, `likely 5 is not the middle between 3 and 14 that the shape "normal" has (move likely to 8.5)`},
		{"even", 3, 15, 14, nil, nil, "likely 15 is above high 14 (move likely to 8.5)"},
		{"triangle", 3, 5, 14, at(2), at(1), "floor 2 is not below ceiling 1 (lower the floor or raise the ceiling)"},
		{"bell", 3, 5, 14, nil, nil, `unknown shape "bell", wanted one of metalog, triangle, pert, normal, lognormal, even`},
	}
	for _, c := range cases {
		shape, err := New(c.shape, c.low, c.likely, c.high, c.floor, c.ceiling)
		assert.Nil(t, shape)
		assert.EqualError(t, err, c.text)
	}
}

func TestNewKeepsToItsBounds(t *testing.T) {
	for _, shape := range []string{"", "metalog", "triangle", "pert", "even"} {
		made, err := New(shape, 5, 9.5, 14, at(4), at(15))
		require.NoError(t, err, shape)
		assert.True(t, made.Quantile(1e-9) >= 4 && made.Quantile(1-1e-9) <= 15, shape)
	}
	_, err := New("lognormal", 5, none, 14, at(0), nil)
	assert.NoError(t, err, "a lognormal value is never below 0")
}

func TestEveryShapeOfEqualNumbersIsCertain(t *testing.T) {
	for _, shape := range Names() {
		for _, x := range []float64{-3, 0, 7} {
			made, err := New(shape, x, x, x, nil, nil)
			require.NoError(t, err, shape)
			assert.Equal(t, Certain(x), made, shape)
		}
		_, err := New(shape, 7, 7, 7, at(8), nil)
		assert.Error(t, err, shape)
	}
}

func TestStandardNormalInTheTails(t *testing.T) {
	// Referee: the library's Erfc, good to full precision in the lower tail.
	for u := 1e-15; u < 0.5; u *= 1.7 {
		z := standardNormal(u)
		assert.InEpsilon(t, u, math.Erfc(-z/math.Sqrt2)/2, 1e-9)
	}
	assert.InDelta(t, z90, standardNormal(0.9), 1e-15)
	assert.Zero(t, standardNormal(0.5))
}

func TestDrawInPiecesIsTheSame(t *testing.T) {
	const n = 500
	shape, err := Pert(6, 10, 18)
	require.NoError(t, err)
	s := NewStream(3, "taps", n)
	whole, pieces := make([]float64, n), make([]float64, n)
	Draw(shape, s, whole, 0)
	Draw(shape, s, pieces[:123], 0)
	Draw(shape, s, pieces[123:], 123)
	assert.Equal(t, whole, pieces)
}
