package units

import "math"

// exact is a number held as the unevaluated sum hi + lo, about 106 bits wide,
// so that a ratio of two scales rounds to the float64 nearest the true ratio.
// The sums and products are the error-free ones of T. J. Dekker, "A
// floating-point technique for extending the available precision", Numerische
// Mathematik 18 (1971). Conversions to float64 within expressions keep every
// machine from fusing a product and a sum that must be rounded apart.
type exact struct{ hi, lo float64 }

var exactOne = exact{hi: 1}

// ratio is n/d for whole n and d below 2^53.
func ratio(n, d float64) exact { return exact{hi: n}.div(exact{hi: d}) }

func whole(n float64) exact { return exact{hi: n} }

func quickSum(big, small float64) exact {
	hi := big + small
	return exact{hi, small - (hi - big)}
}

func (a exact) add(b exact) exact {
	s := a.hi + b.hi
	v := s - a.hi
	e := (a.hi - (s - v)) + (b.hi - v)
	return quickSum(s, e+(a.lo+b.lo))
}

func (a exact) neg() exact { return exact{-a.hi, -a.lo} }

func (a exact) mul(b exact) exact {
	p := a.hi * b.hi
	e := math.FMA(a.hi, b.hi, -p)
	e += float64(a.hi*b.lo) + float64(a.lo*b.hi)
	return quickSum(p, e)
}

func (a exact) div(b exact) exact {
	q1 := a.hi / b.hi
	r := a.add(b.mul(exact{hi: q1}).neg())
	q2 := r.hi / b.hi
	r = r.add(b.mul(exact{hi: q2}).neg())
	q3 := r.hi / b.hi
	return quickSum(q1, q2).add(exact{hi: q3})
}

// pow is a to the power of n, which may be negative.
func (a exact) pow(n int) exact {
	if n < 0 {
		return exactOne.div(a.pow(-n))
	}
	out := exactOne
	for ; n > 0; n-- {
		out = out.mul(a)
	}
	return out
}

// float is the nearest float64.
func (a exact) float() float64 { return a.hi + a.lo }
