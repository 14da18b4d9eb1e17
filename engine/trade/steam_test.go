package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSaturationPublished(t *testing.T) {
	// IAPWS-IF97, revised release of 2007, table 36: verification of equation 31.
	for megapascals, want := range map[float64]float64{
		0.1: 0.372755919e3, 1: 0.453035632e3, 10: 0.584149488e3,
	} {
		assert.InDelta(t, want, saturation(megapascals), 0.5e-6, "%g MPa", megapascals)
	}
}

func TestStandardPressure(t *testing.T) {
	// US Standard Atmosphere 1976, pressure in Pa by geopotential height in m; the
	// equation is published, these rows of its table are values from memory.
	for metres, want := range map[float64]float64{
		0: 101325, 1000: 89874.6, 2000: 79495.2, 3000: 70108.5, 5000: 54019.9,
	} {
		assert.InEpsilon(t, want, standardPressure(metres/0.3048)*3386.389, 1e-5, "%g m", metres)
	}
}

func TestBarometerMovesTheBoilingPoint(t *testing.T) {
	// Worked outside this program: about 1.7 F° to an inch of mercury near the sea.
	inch := saturation(29.92*megapascalsPerInch) - saturation(28.92*megapascalsPerInch)
	assert.InDelta(t, 1.7, inch*1.8, 0.05)
}
