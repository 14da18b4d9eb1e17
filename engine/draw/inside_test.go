package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The referee is the shape itself: carried to the 10th and 90th percentile, it
// must still have the asked share of its seasons inside the numbers given.
func TestOuterKeepsTheShareAsked(t *testing.T) {
	for _, g := range goodGuesses[:len(goodGuesses)-2] {
		for _, inside := range []float64{0.5, 0.6, 0.7, 0.8, 0.9, 0.95} {
			three, err := Outer(g.low, g.likely, g.high, inside, g.floor, g.ceiling)
			if err != nil {
				// The move it advises must work.
				assert.Contains(t, g.name, "leaning", "only what leans far may not be carried: %v", err)
				var u *Unfit
				require.ErrorAs(t, err, &u)
				require.Equal(t, "likely", u.Which)
				_, err = Outer(g.low, u.Move, g.high, inside, g.floor, g.ceiling)
				require.NoError(t, err, "%s at %v: %s", g.name, inside, u.Hint)
				continue
			}
			shape, err := Metalog(three[0], three[1], three[2], g.floor, g.ceiling)
			require.NoError(t, err)
			assert.InDelta(t, inside, Share(shape, g.low, g.high), 0.01, "%s at %v: %v", g.name, inside, three)
			assert.InDelta(t, (1-inside)/2, Share(shape, math.Inf(-1), g.low), 0.006, "%s at %v", g.name, inside)
		}
	}
}

func TestOuterOfTheUsualShareIsTheGuess(t *testing.T) {
	three, err := Outer(5.123456, 9, 14, 0.8, at(0), nil)
	require.NoError(t, err)
	assert.Equal(t, [3]float64{5.123456, 9, 14}, three)
	sure, err := Outer(3, 3, 3, 0.5, nil, nil)
	require.NoError(t, err)
	assert.Equal(t, [3]float64{3, 3, 3}, sure)
}

// By symmetry alone: a triplet about 0 with half the seasons inside ±1 is the
// logistic distribution, whose 90th percentile is ln 9 / ln 3 = 2.
func TestOuterOfTheLogistic(t *testing.T) {
	three, err := Outer(-1, 0, 1, 0.5, nil, nil)
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{-2, 0, 2}, three[:], 0.02)
}

func TestOuterRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		low, likely, high, inside float64
		reason                    Reason
	}{
		"out of order":     {5, 4, 9, 0.6, Order},
		"below its floor":  {-5, 4, 9, 0.6, Bounds},
		"not a number":     {5, math.NaN(), 9, 0.6, NotFinite},
		"leaning too far":  {5, 5.001, 9, 0.6, Form},
		"leaning in eight": {5, 5.001, 9, 0.8, Form},
	} {
		_, err := Outer(c.low, c.likely, c.high, c.inside, at(0), nil)
		var u *Unfit
		require.ErrorAs(t, err, &u, name)
		assert.Equal(t, c.reason, u.Reason, name)
	}
}

func TestShare(t *testing.T) {
	triangle, err := Triangle(0, 1, 2)
	require.NoError(t, err)
	assert.InDelta(t, 1, Share(triangle, 0, 2), 1e-6)
	assert.InDelta(t, 0.5, Share(triangle, 0, 1), 1e-6)
	assert.InDelta(t, 0.125, Share(triangle, 1.5, 9), 1e-6)
	assert.Zero(t, Share(triangle, 3, 1))
	assert.InDelta(t, 1, Share(Certain(3), 3, 3), 1e-6, "what is certain is inside its own ends")
	assert.Zero(t, Share(Certain(3), 4, 5))
	assert.InDelta(t, 0.75, Share(Records([]float64{1, 2, 2, 3}), 2, 3), 1e-6)
}

func TestCurve(t *testing.T) {
	// The normal density is exp(-z²/2) of its highest.
	shape, err := Normal(-z90, 0, z90)
	require.NoError(t, err)
	curve := Curve(shape, 61)
	require.Len(t, curve, 61)
	assert.InDelta(t, 1, curve[30].Height, 1e-12)
	for _, p := range curve {
		assert.InDelta(t, math.Exp(-p.At*p.At/2), p.Height, 0.002)
	}
	assert.InDelta(t, shape.Quantile(0.01), curve[0].At, 1e-9)
	assert.InDelta(t, shape.Quantile(0.99), curve[60].At, 1e-9)
	assert.Nil(t, Curve(Certain(3), 61))
	assert.Nil(t, Curve(Records([]float64{1, 2, 3}), 61))
}
