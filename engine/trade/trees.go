package trade

import "math"

// TapsInTree is how many taps a trunk bears, by its diameter in inches at breast
// height: none under 12, one from 12 to 18, two above 18, and never more.
//
// Source: the conservative tapping guideline of the North American maple
// producers' manual; University of Vermont (2012) for the 12 inches.
//
// Valid: diameterInches 0 or more.
func TapsInTree(diameterInches float64) float64 {
	switch {
	case !measurable(diameterInches):
		return math.NaN()
	case diameterInches < 12:
		return 0
	case diameterInches <= 18:
		return 1
	}
	return 2
}
