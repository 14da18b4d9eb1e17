package outcome

import "math"

// Nearest is the season whose number lies nearest to target, the first of them
// when several do; -1 when no season came to a finite number or target is none.
func Nearest(col []float64, target float64) int {
	best, least := -1, math.Inf(1)
	for i, x := range col {
		if apart := math.Abs(x - target); finite(x) && apart < least {
			best, least = i, apart
		}
	}
	return best
}

// Below is the share of the seasons whose number is lower than x, those equal to
// it counted half: a middle season has 0.5. Seasons without a finite number are
// left out; NaN when there is no other or x is NaN.
func Below(col []float64, x float64) float64 {
	n, lower := 0, 0.0
	for _, y := range col {
		switch {
		case !finite(y):
			continue
		case y < x:
			lower++
		case y == x:
			lower += 0.5
		}
		n++
	}
	if n == 0 || math.IsNaN(x) {
		return math.NaN()
	}
	return lower / float64(n)
}
