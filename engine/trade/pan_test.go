package trade_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestPanHolds(t *testing.T) {
	// Exact: 144 cubic inches over 231, the 0.623 gal of the trade.
	assert.InDelta(t, 0.623, trade.PanHolds(1, 1), 0.0005)
	// 7.48 gal to the cubic foot, exact to its digits.
	assert.InDelta(t, 7.48, trade.PanHolds(1, 12), 0.001)
	// A pan of 33 by 14 by 1 inch is two gallons of 231 cubic inches.
	assert.InDelta(t, 2, trade.PanHolds(33*14/144.0, 1), 1e-12)
}
