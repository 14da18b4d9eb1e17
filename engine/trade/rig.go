package trade

import "math"

// Faces of a firebrick of 9 × 4.5 × 2.5 in, in square inches.
const (
	flatFace = 9 * 4.5
	edgeFace = 9 * 2.5
)

// stainlessWeight is lb per cubic inch of 304 stainless. Value from memory.
const stainlessWeight = 0.29

// BricksFor is how many firebricks of 9 × 4.5 × 2.5 in cover an area in square
// feet: 3.56 to the square foot laid flat (onEdge 0), 6.4 on edge (onEdge 1). It is
// not rounded up and has nothing in it for joints, cuts or breakage: 5 to 10 % more
// is common practice.
//
// Source: exact, from the brick's own faces.
//
// Valid: squareFeet 0 or more, onEdge 0 or 1.
func BricksFor(squareFeet, onEdge float64) float64 {
	if !measurable(squareFeet) {
		return math.NaN()
	}
	switch onEdge {
	case 0:
		return squareFeet * (squareInchesPerSquareFoot / flatFace)
	case 1:
		return squareFeet * (squareInchesPerSquareFoot / edgeFace)
	}
	return math.NaN()
}

// SheetWeight is the weight in pounds of 304 stainless sheet of that area in
// square feet and thickness in inches. It asks for inches because gauge numbers
// for stainless differ between tables.
//
// Source: 0.29 lb per cubic inch, value from memory.
//
// Valid: squareFeet 0 or more, inches 0 or more.
func SheetWeight(squareFeet, inches float64) float64 {
	if !measurable(squareFeet) || !measurable(inches) {
		return math.NaN()
	}
	return squareFeet * inches * (squareInchesPerSquareFoot * stainlessWeight)
}
