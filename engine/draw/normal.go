package draw

import (
	"fmt"
	"math"
)

// z90 is the 90th percentile of the standard normal distribution.
const z90 = 1.2815515655446004

type normal struct{ mean, sd float64 }

// Normal is the normal distribution with low and high as its 10th and 90th
// percentile. likely is their middle or NaN for not given; within a hundredth
// of high-low beside the middle it counts as the middle, so that a rounded one
// passes. low = high gives Certain. The error is an *Unfit.
func Normal(low, likely, high float64) (Shape, error) {
	middle := low + (high-low)/2
	if sure(low, likely, high) {
		return Certain(low), nil
	}
	if u := centred("normal", low, likely, high, middle); u != nil {
		return nil, u
	}
	return normal{middle, (high - low) / (2 * z90)}, nil
}

func (s normal) Quantile(u float64) float64 { return s.mean + s.sd*standardNormal(u) }

type lognormal struct{ mu, sigma float64 }

// Lognormal is the distribution whose logarithm is normal, with low and high
// as its 10th and 90th percentile, both above 0. likely is their geometric mean
// √(low·high) or NaN for not given, judged as in Normal. low = high gives
// Certain. The error is an *Unfit.
func Lognormal(low, likely, high float64) (Shape, error) {
	if sure(low, likely, high) {
		return Certain(low), nil
	}
	if low <= 0 {
		return nil, notAboveZero(low, likely, high)
	}
	if u := centred("lognormal", low, likely, high, math.Sqrt(low)*math.Sqrt(high)); u != nil {
		return nil, u
	}
	from, to := math.Log(low), math.Log(high)
	return lognormal{(from + to) / 2, (to - from) / (2 * z90)}, nil
}

func (s lognormal) Quantile(u float64) float64 { return math.Exp(s.mu + s.sigma*standardNormal(u)) }

func notAboveZero(low, likely, high float64) *Unfit {
	u := &Unfit{Reason: Bounds, Move: math.NaN(), Hint: "give a low above 0 or another shape",
		Message: fmt.Sprintf("low %s is not above 0, as a lognormal shape must be", short(low))}
	if likely > 0 && likely < high {
		works := func(x float64) bool { return x > 0 && centred("", x, likely, high, math.Sqrt(x*high)) == nil }
		if to, ok := tidy(likely*likely/high, high, math.Round, works); ok {
			u.move("low", to)
		}
	}
	return u
}

type even struct{ low, wide float64 }

// Even is every value from low to high alike. likely is their middle or NaN for
// not given, judged as in Normal. low = high gives Certain. The error is an
// *Unfit.
func Even(low, likely, high float64) (Shape, error) {
	if sure(low, likely, high) {
		return Certain(low), nil
	}
	if u := centred("even", low, likely, high, low+(high-low)/2); u != nil {
		return nil, u
	}
	return even{low, high - low}, nil
}

func (s even) Quantile(u float64) float64 { return s.low + s.wide*u }

// centred refuses a likely that is not the middle its shape has by itself.
func centred(shape string, low, likely, high, middle float64) *Unfit {
	if math.IsNaN(likely) {
		likely = middle
	}
	u := inOrder(low, likely, high)
	slack := (high - low) / 100
	if u == nil && math.Abs(likely-middle) <= slack {
		return nil
	}
	if u == nil {
		u = &Unfit{Reason: Form, Which: "likely", Message: fmt.Sprintf(
			"likely %s is not the middle between %s and %s that the shape %q has", short(likely), short(low), short(high), shape)}
	}
	if u.Which == "likely" {
		u.move("likely", near(middle, slack))
	}
	return u
}

// standardNormal is the quantile of the standard normal distribution for u
// strictly between 0 and 1. The library's Erfinv is M. J. Wichura's algorithm
// AS 241, Applied Statistics 37:477-484 (1988), good to 16 digits of 1-2u.
func standardNormal(u float64) float64 {
	tail := min(u, 1-u)
	z := -math.Sqrt2 * math.Erfinv(1-2*tail)
	for i := 0; tail < 1e-6 && i < 2; i++ {
		// 1-2·tail has lost the last digits of tail by now: steps of Newton's
		// method on the tail's logarithm bring them back.
		z = max(z, -38)
		density := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
		below := math.Erfc(-z/math.Sqrt2) / 2
		z -= math.Log(below/tail) * below / density
	}
	if u > 0.5 {
		return -z
	}
	return z
}
