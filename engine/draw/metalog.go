package draw

import (
	"fmt"
	"math"
)

// The three-term metalog through symmetric percentiles, T. W. Keelin, "The
// Metalog Distributions", Decision Analysis 13(4):243-277 (2016), table 3 for
// the forms with bounds:
//
//	M(u) = a1 + a2·L + a3·(u-1/2)·L,  L = ln(u/(1-u))
//
// It rises everywhere when a2 > |a3|·g, g being the largest value of
// (u-1/2) + u(1-u)·L. That largest value, 0.59983932…, lies where
// (2u-1)·L = 2. In the guess's own terms, with r = (likely-low)/(high-low):
// leastShare < r < 1-leastShare, leastShare = 1/2 - 0.2/g.
const leastShare = 0.1665773761596141

// log9 is ln(0.9/0.1), L at the 90th percentile.
const log9 = 2.1972245773362196

// Metalog is the usual shape of a guess: 1 season in 10 below low, as many
// above likely as below, 1 in 10 above high. With a floor, a ceiling or both
// (nil where there is none) it stays between them, the same shape being laid
// through the logarithms of the distances to them. All arguments have the unit
// of the guess. Three equal numbers give Certain. The error is an *Unfit.
func Metalog(low, likely, high float64, floor, ceiling *float64) (Shape, error) {
	b, three := bounds{floor, ceiling}, [3]float64{low, likely, high}
	if u := b.crossed(); u != nil {
		return nil, u
	}
	if likely == low && sure(low, likely, high) && b.holds(low) {
		return Certain(low), nil
	}
	u := inOrder(low, likely, high)
	if u == nil {
		u = b.outside(three)
	}
	if u == nil && !carries(b, three) {
		u = tooNear(three)
	}
	if u != nil {
		return nil, advise(u, b, three)
	}
	m := through(b.line(low), b.line(likely), b.line(high))
	switch {
	case floor != nil && ceiling != nil:
		return between{m, *floor, *ceiling - *floor}, nil
	case floor != nil:
		return above{m, *floor}, nil
	case ceiling != nil:
		return below{m, *ceiling}, nil
	}
	return m, nil
}

type metalog struct{ a1, a2, a3 float64 }

// through is Keelin's closed form for the 10th, 50th and 90th percentile.
func through(q10, q50, q90 float64) metalog {
	wide := q90 - q10
	r := (q50 - q10) / wide
	return metalog{q50, wide / (2 * log9), (1 - 2*r) * wide / (0.8 * log9)}
}

func (m metalog) Quantile(u float64) float64 {
	return m.a1 + (m.a2+m.a3*(u-0.5))*math.Log(u/(1-u))
}

type above struct {
	metalog
	floor float64
}

func (s above) Quantile(u float64) float64 { return s.floor + math.Exp(s.metalog.Quantile(u)) }

type below struct {
	metalog
	ceiling float64
}

func (s below) Quantile(u float64) float64 { return s.ceiling - math.Exp(-s.metalog.Quantile(u)) }

type between struct {
	metalog
	floor, room float64
}

func (s between) Quantile(u float64) float64 {
	return s.floor + s.room/(1+math.Exp(-s.metalog.Quantile(u)))
}

// carries tells whether a metalog goes through three numbers.
func carries(b bounds, three [3]float64) bool {
	low, likely, high := b.line(three[0]), b.line(three[1]), b.line(three[2])
	r := (likely - low) / (high - low)
	return r > leastShare && r < 1-leastShare
}

func tooNear(three [3]float64) *Unfit {
	low, likely, high := short(three[0]), short(three[1]), short(three[2])
	u := &Unfit{Reason: Form}
	switch {
	case three[0] == three[1]:
		u.Message = fmt.Sprintf("low and likely are both %s while high is %s", low, high)
	case three[1] == three[2]:
		u.Message = fmt.Sprintf("likely and high are both %s while low is %s", high, low)
	case three[1]-three[0] < three[2]-three[1]:
		u.Message = fmt.Sprintf("likely %s is too near low %s for a high of %s", likely, low, high)
	default:
		u.Message = fmt.Sprintf("likely %s is too near high %s for a low of %s", likely, high, low)
	}
	return u
}
