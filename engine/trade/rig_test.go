package trade_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestBricksFor(t *testing.T) {
	// A brick of 9 × 4.5 × 2.5 in: 144/40.5 and 144/22.5 to the square foot.
	assert.InDelta(t, 3.56, trade.BricksFor(1, 0), 0.005)
	assert.InDelta(t, 6.4, trade.BricksFor(1, 1), 1e-12)
	// A floor of 36 by 45 in takes 4 rows of 10 whole bricks laid flat.
	assert.InDelta(t, 40, trade.BricksFor(36*45/144.0, 0), 1e-12)
}

func TestSheetWeight(t *testing.T) {
	// 304 stainless, 41.8 lb/ft² to the inch; value from memory. The other way, from
	// its density of 8.0 kg/L (also from memory), must meet it within 1 %.
	assert.InDelta(t, 41.8, trade.SheetWeight(1, 1), 0.05)
	cubicInch := 8000 * 0.0254 * 0.0254 * 0.0254 / 0.45359237
	assert.InEpsilon(t, cubicInch*144, trade.SheetWeight(1, 1), 0.01)
	assert.InDelta(t, trade.SheetWeight(1, 1)*8*0.0375, trade.SheetWeight(8, 0.0375), 1e-9)
}
