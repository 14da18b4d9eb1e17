package trade

import "math"

// Heat of hardwood.
const (
	dryHeat     = 8600.0 // BTU/lb gross, oven-dry hardwood; published
	steamTakes  = 1050.0 // BTU/lb of water gone up the stack; value from memory
	waterMade   = 0.54   // lb of water its hydrogen burns to, a lb of dry wood; value from memory
	dryNet      = dryHeat - steamTakes*waterMade
	wettestWood = 0.85 // beyond this the wood hardly boils its own water
)

// WoodHeat is the net heat in BTU that a pound of hardwood gives up as it lies,
// when moistureShare of its whole weight is water: 8,033 bone dry, 6,216 at 0.20,
// 3,492 at 0.50. What the stack carries off besides its steam is not taken off.
// Conifers give 3 to 4 % more a pound for their resin.
//
// Source: H (1 − w) − 1,050 (w + 0.54 (1 − w)) with H = 8,600 BTU/lb: gross heat of
// the dry part less the steam of the water in it and of the water it burns to. H
// is published, the form is the usual one for net heat (from memory).
//
// Valid: moistureShare 0 to 0.85.
func WoodHeat(moistureShare float64) float64 {
	if !within(moistureShare, 0, wettestWood) {
		return math.NaN()
	}
	return dryNet - moistureShare*(dryNet+steamTakes)
}
