package trade_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestHydrometerWorked(t *testing.T) {
	// Worked from the float's balance outside this program: 66.9 °Bx syrup.
	assert.InDelta(t, 59.0, trade.Hydrometer(66.9, 211), 0.05)
	assert.InDelta(t, 66.9, trade.Hydrometer(66.9, 60), 1e-9)
}

func TestHydrometerIsTrueAtItsMark(t *testing.T) {
	for brix := 0.0; brix <= 85; brix += 0.5 {
		assert.InDelta(t, brix, trade.Hydrometer(brix, 60), 1e-9)
	}
}

// TestHydrometerBalances puts the reading back into the balance it solves.
func TestHydrometerBalances(t *testing.T) {
	for brix := 0.0; brix <= 85; brix += 2.5 {
		for fahrenheit := 32.0; fahrenheit <= 212; fahrenheit += 7.5 {
			reads := trade.Hydrometer(brix, fahrenheit)
			if math.IsNaN(reads) {
				continue // off the scale: the next test
			}
			celsius := (fahrenheit - 32) / 1.8
			swollen := 1 + 25e-6*(fahrenheit-60)/1.8
			assert.InEpsilon(t, trade.Density(brix, celsius)*swollen, trade.Density(reads, 28/1.8), 1e-12,
				"%g °Bx, %g °F", brix, fahrenheit)
			if fahrenheit > 60 {
				assert.Less(t, reads, brix, "warm syrup reads low")
			}
		}
	}
}

func TestHydrometerOffItsScale(t *testing.T) {
	assert.True(t, math.IsNaN(trade.Hydrometer(0, 211)), "hot water reads under 0")
	assert.True(t, math.IsNaN(trade.Hydrometer(85, 32)), "cold thick syrup reads over 85")
	assert.False(t, math.IsNaN(trade.Hydrometer(2, 38)), "cold sap reads")
}
