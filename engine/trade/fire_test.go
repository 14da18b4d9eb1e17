package trade_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestWoodHeatWorked(t *testing.T) {
	// Worked from the form outside this program, BTU/lb.
	for moisture, want := range map[float64]float64{0: 8033, 0.20: 6216, 0.50: 3492} {
		assert.InDelta(t, want, trade.WoodHeat(moisture), 0.51, "%g", moisture)
	}
}

func TestWoodHeatAgainstGross(t *testing.T) {
	// Iowa State University Extension: about 7,000 BTU/lb gross at 20 %. Gross counts
	// the steam back in: that of the water in the wood and of the water it burns to.
	steam := 1050 * (0.20 + 0.54*0.80)
	assert.InEpsilon(t, 7000, trade.WoodHeat(0.20)+steam, 0.02)
}

func TestWoodHeatAgainstSpecies(t *testing.T) {
	// University of Kentucky Forestry gives heat in a cord at 20 % and the same cord's
	// oven-dry weight. Its heat lies between net and gross: 3 to 4 % under gross,
	// which is the steam of the water lying in the wood, while the steam of the water
	// the wood burns to is still in. So the net heat of a dry pound, with that steam
	// put back, is what its hardwoods must come to.
	const driedPound = 0.80
	want := trade.WoodHeat(0.20)/driedPound + 1050*0.54
	for _, wood := range published(t, "kentucky_firewood.csv") {
		perPound := wood.number(t, "million_btu") * 1e6 / wood.number(t, "oven_dry_lb")
		switch wood["kind"] {
		case "hardwood":
			assert.InEpsilon(t, want, perPound, 0.015, wood["species"])
		case "conifer":
			// Resin holds more heat than wood does: 3 to 4 % over hardwood.
			assert.InDelta(t, 0.035, perPound/want-1, 0.005, wood["species"])
		default:
			assert.Fail(t, "unknown kind", "%v", wood)
		}
		// Never under the net heat, and within 5 % of gross for the dry pound.
		assert.Greater(t, perPound, trade.WoodHeat(0.20)/driedPound, wood["species"])
		assert.InEpsilon(t, 8600, perPound, 0.05, wood["species"])
	}
}

func TestWoodHeatFallsWithWater(t *testing.T) {
	for hundredths := 1; hundredths <= 85; hundredths++ {
		w := float64(hundredths) / 100
		assert.Less(t, trade.WoodHeat(w), trade.WoodHeat(w-0.01))
		assert.Positive(t, trade.WoodHeat(w))
	}
}

func ExampleWoodHeat() {
	fmt.Printf("%.0f BTU/lb\n", trade.WoodHeat(0.15))
	// Output: 6671 BTU/lb
}
