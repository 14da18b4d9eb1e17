package trade_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestJarsFilledIsWhole(t *testing.T) {
	for _, c := range []struct{ volume, size, waste, want float64 }{
		{10, 0.125, 0, 80},    // pints from gallons
		{10, 0.125, 0.01, 79}, // 79.2
		{0.9, 1, 0, 0},
		{0, 0.25, 0, 0},
		{10, 0.25, 1, 0},
		{0.3, 0.1, 0, 3},                     // 2.9999999999999996 in binary
		{3 * 0.946352946, 0.946352946, 0, 3}, // three quarts by the litre
		{0.999 * 8, 1, 0, 7},                 // truly short is short
	} {
		assert.Equal(t, c.want, trade.JarsFilled(c.volume, c.size, c.waste), "%+v", c)
	}
}

func TestJarsFilledInAnyUnit(t *testing.T) {
	// The same jars whichever unit both volumes come in, for every whole number of
	// jars, where rounding would lose one.
	for _, scale := range []float64{1, 128, 3.785411784, 1 / 3.0, 0.1} {
		for jars := 1.0; jars <= 400; jars++ {
			size := 0.125 * scale
			assert.Equal(t, jars, trade.JarsFilled(jars*0.125*scale, size, 0), "scale %g", scale)
			assert.Equal(t, jars-1, trade.JarsFilled((jars-0.001)*0.125*scale, size, 0), "scale %g", scale)
		}
	}
}

func TestUnitsSold(t *testing.T) {
	assert.Equal(t, 40.0, trade.UnitsSold(12, 12, 40, -1.2), "the usual price sells the usual units")
	assert.Equal(t, 40.0, trade.UnitsSold(30, 12, 40, 0), "no response")
	assert.InEpsilon(t, 20, trade.UnitsSold(24, 12, 40, -1), 1e-12, "twice the price, half the jars")
	assert.InEpsilon(t, 160, trade.UnitsSold(6, 12, 40, -2), 1e-12)
	// What elasticity means: 1 % on the price, 1.2 % off the sales, to first order.
	assert.InDelta(t, 0.012, 1-trade.UnitsSold(12.12, 12, 1, -1.2), 2e-4)
	// At -1 what comes in stays the same at any price.
	for price := 5.0; price < 40; price += 2.5 {
		assert.InEpsilon(t, 480, price*trade.UnitsSold(price, 12, 40, -1), 1e-12)
	}
}
