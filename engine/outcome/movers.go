package outcome

import "math"

// Share is a part of an outcome's spread. Spread is variance: 0.4 says that four
// tenths of the variance over the seasons is meant.
type Share struct {
	Value float64
	// Error is the standard error of Value, from the seasons being no more than a
	// sample. NaN with fewer than four seasons.
	Error float64
}

// AboutZero says that the share cannot be told from nothing: it lies no more
// than two errors above it. Estimates of a share of nothing fall on either side
// of 0. A Value of NaN is about zero.
func (s Share) AboutZero() bool { return !(s.Value > 2*s.Error) || s.Value <= 0 }

// Effects say how one guess, or several that move together taken as one, moves
// an outcome.
type Effects struct {
	// First is the part of the spread that the guess makes by itself: how much
	// smaller the spread would be, on average, if the guess were known.
	First Share
	// Total is the part that the guess has any hand in: what would be left of
	// the spread, on average, if all but this guess were known.
	Total Share
	// Together is Total less First: what the guess does only together with
	// others. Its error is its own, smaller than those of the two apart.
	Together Share
	// N counts the seasons the shares come from, Missing those left out because
	// the outcome was NaN or infinite in one of the three columns.
	N, Missing int
}

// batches is how many stretches of seasons the errors come from: enough that an
// error is itself known to a tenth.
const batches = 50

// Measure estimates the effects of one guess on an outcome from three columns
// of one length. a and b are the outcome in two sets of seasons drawn apart from
// each other; swapped is the outcome in the seasons of a with that guess alone
// taken from b. With f(A), f(B) and f(A_B) for the three and V for the variance
// over a and b,
//
//	First = mean(f(B)·(f(A_B) − f(A))) / V    A. Saltelli et al., Computer Physics Communications 181:259-270, 2010
//	Total = mean((f(A) − f(A_B))²) / (2 V)    M. J. W. Jansen, Computer Physics Communications 117:35-43, 1999
//
// f(B) is taken from its mean, which the expectation does not notice and the
// error does.
//
// Errors are jackknife errors over 50 stretches of following seasons, each left
// out in turn. They hold for seasons drawn independently; Latin hypercube
// seasons lie more evenly, so that the true error is the one told or less.
//
// Where the outcome is the same in every season, or no season is left, the
// shares are NaN. The columns are only read.
func Measure(a, b, swapped []float64) Effects {
	e, low, high, sum := Effects{}, math.Inf(1), math.Inf(-1), 0.0
	usable := func(k int) bool { return finite(a[k]) && finite(b[k]) && finite(swapped[k]) }
	for k := range a {
		if !usable(k) {
			e.Missing++
			continue
		}
		e.N++
		low, high = min(low, a[k], b[k]), max(high, a[k], b[k])
		sum += a[k]/float64(len(a)) + b[k]/float64(len(a))
	}
	// In widths of the range and from the mean, so that no square of what people
	// plan with leaves what a float can hold.
	mean, width := sum/float64(2*e.N)*float64(len(a)), high/2-low/2
	scaled := func(x float64) float64 { return (x/2 - mean/2) / width }
	parts := make([]products, min(batches, max(1, e.N/2)))
	per, at := float64(len(parts))/float64(e.N), 0
	for k := range a {
		if usable(k) {
			parts[int(float64(at)*per)].add(scaled(a[k]), scaled(b[k]), scaled(swapped[k]))
			at++
		}
	}
	e.First, e.Total, e.Together = jackknife(parts)
	return e
}

// products are the sums over some seasons that the estimates are made of, for
// outcomes from about 0.
type products struct{ n, y, yy, first, total float64 }

func (p *products) add(a, b, swapped float64) {
	p.n++
	p.y += a + b
	p.yy += a*a + b*b
	p.first += b * (swapped - a)
	p.total += (a - swapped) * (a - swapped)
}

// with is p and, by its sign, more or less of o.
func (p products) with(o products, sign float64) products {
	return products{p.n + sign*o.n, p.y + sign*o.y, p.yy + sign*o.yy, p.first + sign*o.first, p.total + sign*o.total}
}

// shares are First, Total and Together.
func (p products) shares() [3]float64 {
	m := 2 * p.n
	variance := (p.yy - p.y*p.y/m) / (m - 1)
	if !(variance > 0) {
		return [3]float64{math.NaN(), math.NaN(), math.NaN()}
	}
	first, total := p.first/p.n/variance, p.total/p.n/2/variance
	return [3]float64{first, total, total - first}
}

// jackknife gives the shares of all parts together, and how they change when
// each part in turn is left out (J. W. Tukey, Annals of Mathematical Statistics
// 29:614, 1958).
func jackknife(parts []products) (first, total, together Share) {
	var all products
	for _, p := range parts {
		all = all.with(p, 1)
	}
	var sum, square [3]float64
	whole := all.shares()
	for _, p := range parts {
		for i, x := range all.with(p, -1).shares() {
			sum[i] += x - whole[i]
			square[i] += (x - whole[i]) * (x - whole[i])
		}
	}
	m := float64(len(parts))
	share := func(i int) Share {
		spread := square[i] - sum[i]*sum[i]/m
		return Share{whole[i], math.Sqrt(max(0, spread) * (m - 1) / m)}
	}
	if m < 2 {
		return Share{whole[0], math.NaN()}, Share{whole[1], math.NaN()}, Share{whole[2], math.NaN()}
	}
	return share(0), share(1), share(2)
}
