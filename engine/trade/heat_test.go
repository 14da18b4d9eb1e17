package trade_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestBoilHeatBySteamTables(t *testing.T) {
	// Steam tables, BTU/lb: 970.3 to boil off at 212 °F, 180.2 from 32 to 212, 1150.4
	// for both (the table's own rounding). A gallon of water weighs 8.33 lb.
	const pound = 1 / 8.3304
	assert.InDelta(t, 970.3, trade.BoilHeat(pound, 0, 66, 212), 0.05)
	assert.InDelta(t, 1150.4, trade.BoilHeat(pound, 0, 66, 32), 0.15)
	assert.InDelta(t, 180.2, trade.BoilHeat(pound, 0, 66, 32)-trade.BoilHeat(pound, 0, 66, 212), 0.05)
	// Worked from the tables outside this program: a gallon of water from 35 °F.
	assert.InDelta(t, 9558, trade.BoilHeat(1, 0, 66, 35), 1.5)
}

func TestBoilHeatSavedByPreheating(t *testing.T) {
	// Worked from steam tables outside this program: share of the pan's duty.
	cold := trade.BoilHeat(1, 0, 66, 35)
	assert.InDelta(t, 0.135, 1-trade.BoilHeat(1, 0, 66, 190)/cold, 0.0005)
	assert.InDelta(t, 0.154, 1-trade.BoilHeat(1, 0, 66, 212)/cold, 0.0005)
}

func TestBoilHeatOfSugar(t *testing.T) {
	// Nothing to drive off leaves the warming alone. By the equation as printed, at
	// 40 % sugar and the middle temperature 50 °C: 4184 − 1188.4 + 184 + 150 = 3329.6
	// J/(kg K) from 0 to 100 °C is 143.15 BTU/lb; taking water from the steam tables
	// (180.2 for 179.88) makes it 143.40.
	pounds := trade.Density(40, 20) * poundsPerGallon
	assert.InDelta(t, 143.40, trade.BoilHeat(1, 40, 40, 32)/pounds, 0.01)
	// At the boil only the water counts: 1 − 2/66 of the sap's weight.
	sap := trade.Density(2, 20) * poundsPerGallon
	assert.InDelta(t, 970.3*(1-2.0/66), trade.BoilHeat(1, 2, 66, 212)/sap, 1e-9)
	assert.InDelta(t, -trade.BoilHeat(5, 2, 66, 40), trade.BoilHeat(-5, 2, 66, 40), 1e-9, "a difference keeps its sign")
}

func TestBoilHeatInTwoSteps(t *testing.T) {
	// Boiling to 20 °Bx and on to 66, kept hot between, costs what boiling once does.
	once := trade.BoilHeat(100, 2, 66, 212)
	left := trade.Concentrate(100, 2, 20)
	assert.InEpsilon(t, once, trade.BoilHeat(100, 2, 20, 212)+trade.BoilHeat(left, 20, 66, 212), 1e-12)
}

func TestBoilHeatAgainstFuelFigures(t *testing.T) {
	perGallon := trade.BoilHeat(trade.SapPerSyrup(2, 66), 2, 66, 35)
	// Oil at 2.7 gal for a gallon of syrup, a figure to distrust: with heating oil at
	// 138,500 BTU/gal (US EIA) it is near 100 % efficiency, between boiling off alone
	// and boiling off from cold.
	oil := 2.7 * 138500
	assert.Greater(t, perGallon, oil)
	assert.Less(t, trade.BoilHeat(trade.SapPerSyrup(2, 66), 2, 66, 212), oil)
	// Syrup from a cord of about 20 million BTU (US EIA): 25 gal (Maine producers'
	// association), 21 (Pennsylvania), 20 (Michigan), 15 (a college forest). What that
	// makes of the wood must lie with the efficiencies published: loose arches 20 to
	// 40 %, open evaporators 40 to 60 % (Ohio State University).
	for _, gallons := range []float64{25, 21, 20, 15} {
		assert.InDelta(t, 0.40, gallons*perGallon/20e6, 0.20, "%g gal a cord", gallons)
	}
}

func ExampleBoilHeat() {
	fmt.Printf("%.0f thousand BTU\n", trade.BoilHeat(100, 2, 66, 35)/1000)
	// Output: 937 thousand BTU
}
