package trade_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestTapsInTree(t *testing.T) {
	// Conservative guideline of the North American manual; University of Vermont 2012
	// for the 12 in.
	for diameter, want := range map[float64]float64{0: 0, 11.99: 0, 12: 1, 15: 1, 18: 1, 18.01: 2, 60: 2} {
		assert.Equal(t, want, trade.TapsInTree(diameter), "%g in", diameter)
	}
}
