package outcome

import "math"

// Summary is what the drawn seasons say about one number. All fields but the
// counts have the number's own unit and are NaN when N is 0.
type Summary struct {
	// N counts the seasons that came to a finite number, Missing those that came
	// to none (NaN or an infinity). Everything else here is about the N alone.
	N, Missing int
	Mean       float64
	// SD is the standard deviation of a sample, with N-1 below: NaN when N is 1.
	SD       float64
	Min, Max float64
	// Percentiles are of type 7, see Quantile.
	P05, P10, P50, P90, P95 float64
}

// shares are those of P05 to P95, in the order of quantiles.
var shares = [...]float64{0.05, 0.1, 0.5, 0.9, 0.95}

func (s *Summary) setQuantiles(q [len(shares)]float64) {
	s.P05, s.P10, s.P50, s.P90, s.P95 = q[0], q[1], q[2], q[3], q[4]
}

// Summarise sums up a column of seasons. It works in scratch, which it leaves in
// disorder and makes for itself when scratch is shorter than col; col is only
// read. The time taken grows with len(col), without sorting it.
func Summarise(col []float64, scratch []float64) Summary {
	kept := keepFinite(col, scratch)
	s := Summary{N: len(kept), Missing: len(col) - len(kept)}
	m := momentsOf(kept)
	s.Mean, s.SD, s.Min, s.Max = m.mean, m.sd(), m.min, m.max
	s.setQuantiles(quantiles(kept))
	return s
}

// Steady is the Summary of n seasons that all came to value.
func Steady(value float64, n int) Summary {
	one := Summarise([]float64{value}, nil)
	one.N, one.Missing = one.N*n, one.Missing*n
	if one.N > 1 {
		one.SD = 0
	}
	return one
}

// keepFinite copies the finite numbers of col to the front of scratch.
func keepFinite(col, scratch []float64) []float64 {
	if len(scratch) < len(col) {
		scratch = make([]float64, len(col))
	}
	n := 0
	for _, x := range col {
		if finite(x) {
			scratch[n] = x
			n++
		}
	}
	return scratch[:n]
}

func finite(x float64) bool { return x-x == 0 }

// quantiles of finite numbers in any order, which it changes.
func quantiles(x []float64) (q [len(shares)]float64) {
	if len(x) == 0 {
		for i := range q {
			q[i] = math.NaN()
		}
		return q
	}
	var ranks [2 * len(shares)]int
	for i, p := range shares {
		rank, _ := position(len(x), p)
		ranks[2*i], ranks[2*i+1] = rank, min(rank+1, len(x)-1)
	}
	place(x, ranks[:])
	for i, p := range shares {
		q[i] = Quantile(x, p)
	}
	return q
}
