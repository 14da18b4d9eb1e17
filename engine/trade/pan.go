package trade

import "math"

// PanHolds is what a flat pan of that floor area holds in gallons when the sap
// stands that many inches deep: 0.623 gal for each inch on each square foot.
//
// Source: exact; a gallon is 231 cubic inches.
//
// Valid: squareFeet 0 or more, inches 0 or more.
func PanHolds(squareFeet, inches float64) float64 {
	if !measurable(squareFeet) || !measurable(inches) {
		return math.NaN()
	}
	return squareFeet * inches * (squareInchesPerSquareFoot / cubicInchesPerGallon)
}
