package trade_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestWaterBoilsAtWorked(t *testing.T) {
	// Worked from the two published equations outside this program.
	assert.InDelta(t, 211.95, trade.WaterBoilsAt(0), 0.01)
	assert.InDelta(t, 202.8, trade.WaterBoilsAt(5000), 0.05)
}

func TestDrawOffPublished(t *testing.T) {
	rise := func(brix, feet float64) float64 { return trade.DrawOffAt(brix, feet) - trade.WaterBoilsAt(feet) }
	// University of Maine and others: 66.0 °Bx boils 7.1 F° above water that day.
	for _, feet := range []float64{-500, 0, 900, 5000} {
		assert.InDelta(t, 7.1, rise(66.0, feet), 1e-9, "at %g ft", feet)
	}
	// Trade figures, values from memory.
	assert.InDelta(t, 7.5, rise(67, 0), 0.05)
	assert.InDelta(t, 7, rise(65.5, 0), 0.1)
	// Sucrose by sugar handbooks, C° above water; values from memory.
	for brix, want := range map[float64]float64{10: 0.1, 20: 0.3, 30: 0.6, 40: 1.0, 50: 1.8, 60: 3.0, 65: 3.8, 70: 5.1} {
		assert.InDelta(t, want, rise(brix, 0)/1.8, 0.2, "%g °Bx", brix)
	}
	// The kitchen table's 8.6 at 66 must stay out of reach.
	assert.Less(t, rise(68.9, 0), 8.6)
}

func TestDrawOffRisesWithSugarAndFallsWithHeight(t *testing.T) {
	assert.Equal(t, trade.WaterBoilsAt(900), trade.DrawOffAt(0, 900), "water boils as water")
	for brix := 1.0; brix <= 85; brix++ {
		assert.Greater(t, trade.DrawOffAt(brix, 0), trade.DrawOffAt(brix-1, 0), "%g °Bx", brix)
	}
	for feet := -900.0; feet <= 20000; feet += 100 {
		assert.Less(t, trade.WaterBoilsAt(feet), trade.WaterBoilsAt(feet-100), "%g ft", feet)
	}
}

func ExampleDrawOffAt() {
	fmt.Printf("%.1f °F\n", trade.DrawOffAt(66.9, 900))
	// Output: 217.8 °F
}
