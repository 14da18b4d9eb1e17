package trade

import "math"

// Steam tables, water at one atmosphere.
const (
	latentHeat   = 970.3 // BTU/lb to turn water of 212 °F into steam
	liquidHeat   = 180.2 // BTU/lb to bring water from 32 to 212 °F
	perDegree    = liquidHeat / 180
	boilsAtSea   = 212.0  // °F
	freezesAt    = 32.0   // °F
	waterCarries = 4184.0 // J/(kg K), the water term of the specific heat equation
)

// BoilHeat is the heat in BTU that a pan must take up to bring gallons of sap
// from its feed temperature in °F to 212 °F and to drive off the water that lies
// between the sap's sugar and the syrup's.
//
// It is heat into the sap and none of the losses: nothing for the fire's own
// efficiency, the walls, the stack or the steam's pre-warming of sap. Also left
// out, as each is under 0.5 % for sap: the last few degrees above 212 that
// thick syrup needs, and the lower boiling point at height. The sap's volume is
// taken at 68 °F; it may be a difference, and so below 0.
//
// Source: steam tables (970.3 BTU/lb to boil off water, 180.2 from 32 to 212 °F);
// for the sugar's smaller appetite for heat c = 4184 − 2971 w + 460 w P + 7.5 w t
// J/(kg K) at purity P = 1, as printed by Llano (2005), at the middle of the rise.
//
// Valid: sapBrix 0 to 85 °Bx, syrupBrix above 0 to 85 °Bx and not below sapBrix,
// feedFahrenheit 32 to 212.
func BoilHeat(gallons, sapBrix, syrupBrix, feedFahrenheit float64) float64 {
	if !within(sapBrix, 0, sweetest) || !within(syrupBrix, sapBrix, sweetest) || syrupBrix == 0 ||
		!within(feedFahrenheit, freezesAt, boilsAtSea) {
		return math.NaN()
	}
	w := sapBrix / 100
	pounds := gallons * gallonWeight * density20(w)
	warming := perDegree * shareOfWater(w, feedFahrenheit) * (boilsAtSea - feedFahrenheit)
	drivenOff := 1 - sapBrix/syrupBrix
	return pounds * (warming + latentHeat*drivenOff)
}

// shareOfWater is the specific heat of a sugar solution over that of water, on
// the way from the feed temperature to the boil. The equation is linear in the
// temperature, so its middle stands for the whole way.
func shareOfWater(w, feedFahrenheit float64) float64 {
	middle := toCelsius((feedFahrenheit + boilsAtSea) / 2)
	return 1 + w*(460-2971+7.5*middle)/waterCarries
}
