package trade_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

// poundsPerGallon turns kg/m³ into lb/gal, from the definitions of the pound and
// the inch.
const poundsPerGallon = 231 * 0.0254 * 0.0254 * 0.0254 / 0.45359237

func TestWeightInAirPublished(t *testing.T) {
	// NBS Circular C440 (1942), as compiled by C. S. Chen, University of Florida,
	// 1992: weight in air at 68 °F, lb/gal.
	for brix, want := range map[float64]float64{0: 8.322, 1: 8.354, 2: 8.387, 3: 8.419, 4: 8.452} {
		assert.InDelta(t, want, trade.WeightInAir(brix, 20)*poundsPerGallon, 0.002, "%g °Bx", brix)
	}
	// Worked from the same equation outside this program.
	assert.InDelta(t, 11.030, trade.WeightInAir(66.0, 20)*poundsPerGallon, 0.0005)
	assert.InDelta(t, 11.076, trade.WeightInAir(66.9, 20)*poundsPerGallon, 0.0005)
	// The older federal standard (1967): syrup weighs at least 11 lb a gallon at 68 °F.
	assert.Greater(t, trade.WeightInAir(66.0, 20)*poundsPerGallon, 11.0)
}

func TestDensityOfWater(t *testing.T) {
	// Density of air-free water, kg/m³; values from memory.
	for celsius, want := range map[float64]float64{0: 999.84, 4: 999.97, 20: 998.20, 60: 983.2, 100: 958.4} {
		assert.InDelta(t, want, trade.Density(0, celsius), 0.1, "%g °C", celsius)
	}
}

func TestDensityAcrossTheSugars(t *testing.T) {
	// Specific gravity 20/20 °C of sucrose by °Bx as the tables of NBS Circular C440
	// have it; values from memory.
	for brix, want := range map[float64]float64{10: 1.0400, 20: 1.0829, 30: 1.1290, 40: 1.1785, 50: 1.2317, 60: 1.2887} {
		assert.InDelta(t, want, trade.Density(brix, 20)/trade.Density(0, 20), 3e-4, "%g °Bx", brix)
	}
	// The quadratic 0.99823 + 0.0038601 B + 0.0000141 B² that is passed about is wrong
	// by 0.6 % at 66: the equation here must stand clear of it.
	quadratic := 998.23 + 3.8601*66 + 0.0141*66*66
	assert.InDelta(t, 0.006, math.Abs(trade.Density(66, 20)/quadratic-1), 0.001)
}

// TestDensityAsPrinted works the equation as the paper prints it, power by power.
func TestDensityAsPrinted(t *testing.T) {
	rows := [][]float64{
		{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890},
		{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
		{59.7712, 7.2491, 12.3630, -35.4791},
		{-47.2207, -21.6977, 27.6301},
		{18.3184, 12.3081},
	}
	printed := func(brix, t float64) float64 {
		d := (999.83952 + 16.952577*t - 7.9905127e-3*t*t - 46.241757e-6*math.Pow(t, 3) +
			105.84601e-9*math.Pow(t, 4) - 281.03006e-12*math.Pow(t, 5)) / (1 + 16.887236e-3*t)
		for power, row := range rows {
			for i, c := range row {
				d += math.Pow((t-20)/100, float64(power)) * c * math.Pow(brix/100, float64(i+1))
			}
		}
		return d
	}
	for brix := 0.0; brix <= 85; brix += 5 {
		for celsius := 0.0; celsius <= 100; celsius += 12.5 {
			assert.InEpsilon(t, printed(brix, celsius), trade.Density(brix, celsius), 1e-12,
				"%g °Bx, %g °C", brix, celsius)
		}
	}
}

func TestDensityRisesWithSugarAndFallsWithHeat(t *testing.T) {
	for celsius := 5.0; celsius <= 100; celsius += 5 {
		for brix := 1.0; brix <= 85; brix++ {
			at := trade.Density(brix, celsius)
			assert.Greater(t, at, trade.Density(brix-1, celsius), "%g °Bx, %g °C", brix, celsius)
			assert.Less(t, at, trade.Density(brix, celsius-1), "%g °Bx, %g °C", brix, celsius)
		}
	}
}

func ExampleWeightInAir() {
	fmt.Printf("%.2f lb/gal\n", trade.WeightInAir(66.9, 20)*poundsPerGallon)
	// Output: 11.08 lb/gal
}
