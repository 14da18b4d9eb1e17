package units

import "math"

// Same says whether values in a and b can be added and compared once their
// scales agree: the same dimension, and both or neither a temperature on a
// scale. A unit whose exponents or scale have gone beyond all reason is like
// nothing.
func Same(a, b Unit) bool {
	p, q := a.parts(), b.parts()
	return p.dim == q.dim && p.scaly == q.scaly && !p.dim.beyond
}

// Conversion is how a value in one unit becomes one in another:
//
//	value in to = value in from × factor + offset
//
// The factor is the float64 nearest the true ratio of the scales and exactly 1
// when they are equal. The offset is 0 unless both are temperatures on a scale.
// It is not ok, with factor and offset NaN, when Same(from, to) is false.
func Conversion(from, to Unit) (factor, offset float64, ok bool) {
	if !Same(from, to) {
		return math.NaN(), math.NaN(), false
	}
	p, q := from.parts(), to.parts()
	if p == q || p.scale == q.scale && !p.scaly {
		return 1, 0, true
	}
	by := p.scale.div(q.scale)
	factor = by.float()
	if p.scaly {
		zero := p.terms[0].def.zero.mul(by).add(q.terms[0].def.zero.neg())
		offset = zero.float()
	}
	if factor == 0 || math.IsInf(factor, 0) || math.IsNaN(factor) {
		return math.NaN(), math.NaN(), false
	}
	return factor, offset, true
}

// Convert brings x from one unit to another by Conversion; NaN and the
// infinities stay what they are. It is NaN and false when Same(from, to) is
// false.
func Convert(x float64, from, to Unit) (float64, bool) {
	factor, offset, ok := Conversion(from, to)
	// The product is rounded apart from the sum, the same on every machine.
	return float64(x*factor) + offset, ok
}
