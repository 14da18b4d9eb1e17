package outcome_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/outcome"
)

func TestNearest(t *testing.T) {
	none, endless := math.NaN(), math.Inf(1)
	for name, test := range map[string]struct {
		col    []float64
		target float64
		want   int
	}{
		"on it":              {[]float64{3, 1, 2}, 2, 2},
		"beside it":          {[]float64{10, 1, 7}, 8, 2},
		"the first of two":   {[]float64{5, 1, 3, 1}, 2, 1},
		"missing left out":   {[]float64{none, endless, 9}, 1, 2},
		"nothing but gaps":   {[]float64{none, endless}, 1, -1},
		"no target":          {[]float64{1, 2}, none, -1},
		"no seasons":         {nil, 1, -1},
		"an endless target":  {[]float64{1, 2}, endless, -1},
		"negative and small": {[]float64{-3, -1e-9, 4}, 0, 1},
	} {
		assert.Equal(t, test.want, outcome.Nearest(test.col, test.target), name)
	}
}

func TestBelow(t *testing.T) {
	none := math.NaN()
	col := []float64{4, 2, none, 1, 3, math.Inf(-1)}
	assert.InDelta(t, 0, outcome.Below(col, 0.5), 0)
	assert.InDelta(t, 0.125, outcome.Below(col, 1), 0, "itself counts half")
	assert.InDelta(t, 0.5, outcome.Below(col, 2.5), 0)
	assert.InDelta(t, 1, outcome.Below(col, 9), 0)
	assert.InDelta(t, 0.5, outcome.Below([]float64{7, 7, 7}, 7), 0, "alike in all seasons")
	assert.True(t, math.IsNaN(outcome.Below(col, none)))
	assert.True(t, math.IsNaN(outcome.Below([]float64{none}, 1)))
}
