package outcome

import "math"

// moments are mean and spread of some seasons, such that those of two halves
// can be joined. min, max and mean are NaN while n is 0.
type moments struct {
	n        int
	mean     float64
	spread   float64 // the sum of squared distances from the mean, by scale²
	scale    float64 // a power of two that keeps spread from overflowing
	min, max float64
}

// momentsOf takes two passes, the second one correcting what the first one
// rounded off (T. F. Chan, G. H. Golub and R. J. LeVeque, "Algorithms for
// computing the sample variance", The American Statistician 37:242-247, 1983,
// equation 1.7). Numbers must be finite.
func momentsOf(x []float64) moments {
	if len(x) == 0 {
		return moments{mean: math.NaN(), min: math.NaN(), max: math.NaN(), scale: 1}
	}
	m := moments{n: len(x), min: x[0], max: x[0], scale: 1}
	for _, v := range x {
		if v < m.min {
			m.min = v
		}
		if v > m.max {
			m.max = v
		}
	}
	if max(math.Abs(m.min), math.Abs(m.max)) > 1e150 {
		m.scale = 0x1p-600
	}
	n, first, sum := float64(len(x)), x[0]*m.scale, 0.0
	for _, v := range x {
		sum += v*m.scale - first
	}
	mean, left := first+sum/n, 0.0
	for _, v := range x {
		d := v*m.scale - mean
		left += d
		m.spread += d * d
	}
	m.spread = max(0, m.spread-left*left/n)
	m.mean = (mean + left/n) / m.scale
	return m
}

// join adds the seasons of o (equation 2.1 of the same paper).
func (m moments) join(o moments) moments {
	if m.n == 0 || o.n == 0 {
		if m.n == 0 {
			return o
		}
		return m
	}
	scale := min(m.scale, o.scale)
	byM, byO := scale/m.scale, scale/o.scale
	n, apart := float64(m.n)+float64(o.n), o.mean*scale-m.mean*scale
	share := float64(o.n) / n
	return moments{
		n:      m.n + o.n,
		mean:   (m.mean*scale + apart*share) / scale,
		spread: m.spread*byM*byM + o.spread*byO*byO + apart*apart*float64(m.n)*share,
		scale:  scale,
		min:    min(m.min, o.min), max: max(m.max, o.max),
	}
}

// sd is the standard deviation with n-1 below.
func (m moments) sd() float64 {
	if m.n < 2 {
		return math.NaN()
	}
	return math.Sqrt(m.spread/float64(m.n-1)) / m.scale
}
