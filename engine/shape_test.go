package engine

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/draw"
	"thawbook/engine/units"
)

func shaped(t *testing.T, q GuessQuestion) *GuessShape {
	t.Helper()
	s, err := openText(t, smallSheet).Shape(q, units.AsWritten)
	require.NoError(t, err)
	return s
}

func TestShapeOfAGuessInTheMaking(t *testing.T) {
	s := shaped(t, GuessQuestion{About: "each", Low: 5, Likely: 9, High: 14})
	assert.Equal(t, &GuessView{5, 9, 14}, s.Guess)
	assert.Empty(t, s.Message)
	require.Len(t, s.Curve, curvePoints)
	assert.Contains(t, s.Says, "8 seasons of 10 fall between 5 gal/tap and 14 gal/tap, as many above 9 gal/tap as below.")
	metric, err := openText(t, smallSheet).Shape(GuessQuestion{About: "each", Low: 5, Likely: 9, High: 14}, units.Metric)
	require.NoError(t, err)
	assert.Contains(t, metric.Says, "between 18.9 L/tap and 53 L/tap")
	assert.Equal(t, s.Curve, metric.Curve, "numbers stay in the line's unit")
	highest := 0.0
	for i, p := range s.Curve {
		assert.Greater(t, p.At, 0.0, "above the line's floor")
		highest = max(highest, p.Height)
		if i > 0 {
			assert.Greater(t, p.At, s.Curve[i-1].At)
		}
	}
	assert.InDelta(t, 1, highest, 1e-12)
}

// Who says that only 5 seasons of 10 fall inside means a wider guess; who says 9
// a narrower one. What the sheet then holds must have the share asked inside.
func TestShapeAsksInHowManySeasons(t *testing.T) {
	for _, inside := range []float64{5, 6, 7, 9} {
		s := shaped(t, GuessQuestion{About: "each", Low: 5, Likely: 9, High: 14, Inside: inside})
		require.NotNil(t, s.Guess, "%v", s.Message)
		assert.Equal(t, inside < 8, s.Guess.Low < 5 && s.Guess.High > 14, "%v: %v", inside, *s.Guess)
		floor := 0.0
		made, err := draw.Metalog(s.Guess.Low, s.Guess.Likely, s.Guess.High, &floor, nil)
		require.NoError(t, err)
		assert.InDelta(t, inside/10, draw.Share(made, 5, 14), 0.01)
	}
}

func TestShapeOffersTheNearestGuessThatWorks(t *testing.T) {
	for name, q := range map[string]GuessQuestion{
		"too near":         {About: "each", Low: 5, Likely: 5.01, High: 14},
		"too near in five": {About: "each", Low: 5, Likely: 6, High: 14, Inside: 5},
		"out of order":     {About: "each", Low: 14, Likely: 9, High: 5},
		"below the floor":  {About: "each", Low: -2, Likely: 9, High: 14},
		"two things":       {About: "each", Low: 0, Likely: 20, High: 14},
	} {
		s := shaped(t, q)
		assert.Nil(t, s.Guess, name)
		assert.NotEmpty(t, s.Message, name)
		assert.NotEmpty(t, s.Hint, name)
		require.NotNil(t, s.Nearest, name)
		again := shaped(t, GuessQuestion{About: "each", Low: s.Nearest.Low, Likely: s.Nearest.Likely, High: s.Nearest.High})
		assert.Equal(t, s.Nearest, again.Guess, name)
	}
}

func TestShapeOfWhatIsCertainOrCannotBe(t *testing.T) {
	s := shaped(t, GuessQuestion{About: "taps", Low: 3, Likely: 3, High: 3})
	assert.Equal(t, "3 taps in every season.", s.Says)
	assert.Empty(t, s.Curve)
	s = shaped(t, GuessQuestion{About: "taps", Low: math.NaN(), Likely: 3, High: 3})
	assert.Nil(t, s.Guess)
	assert.Nil(t, s.Nearest, "nothing is near what is not a number")
	for _, q := range []GuessQuestion{{About: "tapz"}, {About: "fuel"}, {About: "taps", Inside: 10}, {About: "taps", Inside: -1}} {
		_, err := openText(t, smallSheet).Shape(q, units.AsWritten)
		assert.Error(t, err)
	}
}
