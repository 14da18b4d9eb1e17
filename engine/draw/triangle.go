package draw

import "math"

type triangle struct {
	low, high float64
	// turn is the share of seasons below likely.
	turn, rise, fall float64
}

// Triangle is the distribution that rises in a straight line from low to
// likely and falls in one to high: low and high are the ends. likely may be one
// of them. Three equal numbers give Certain. The error is an *Unfit.
func Triangle(low, likely, high float64) (Shape, error) {
	if u := inOrder(low, likely, high); u != nil {
		return nil, u
	}
	if sure(low, likely, high) {
		return Certain(low), nil
	}
	wide := high - low
	return triangle{low, high, (likely - low) / wide, wide * (likely - low), wide * (high - likely)}, nil
}

func (t triangle) Quantile(u float64) float64 {
	if u < t.turn {
		return t.low + math.Sqrt(u*t.rise)
	}
	return t.high - math.Sqrt((1-u)*t.fall)
}
