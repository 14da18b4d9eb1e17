package trade

import "math"

// JarsFilled is how many whole jars a volume fills when wasteShare of it is lost
// in the filling. Volume and size are in the same unit, whichever it is.
//
// A jar short by less than a part in a thousand million counts as full, so that
// three quarts fill three quart jars however the quarts were converted.
//
// Source: exact; floor(volume × (1 − waste) / size).
//
// Valid: volume 0 or more, size above 0, wasteShare 0 to 1.
func JarsFilled(volume, size, wasteShare float64) float64 {
	if !measurable(volume) || !measurable(size) || size == 0 || !within(wasteShare, 0, 1) {
		return math.NaN()
	}
	const rounding = 1 + 1e-9
	return math.Floor(volume * (1 - wasteShare) / size * rounding)
}

// UnitsSold is what sells at another price than the usual one. Response is the
// elasticity: at -1.2 a price 1 % higher sells about 1.2 % less; at 0 the price
// does not matter. Both prices are in the same unit; the answer is in that of
// usualUnits and is not rounded.
//
// Source: demand of constant elasticity, usualUnits × (price / usualPrice)^response.
//
// Valid: price above 0, usualPrice above 0, usualUnits 0 or more.
func UnitsSold(price, usualPrice, usualUnits, response float64) float64 {
	if !measurable(price) || price == 0 || !measurable(usualPrice) || usualPrice == 0 || !measurable(usualUnits) {
		return math.NaN()
	}
	// Exp and Log cost two thirds of Pow and agree with it to the last few digits.
	return usualUnits * math.Exp(response*math.Log(price/usualPrice))
}
