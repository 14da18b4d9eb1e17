package outcome

import "math"

// Kth is the k-th smallest number of a column, counted from 1, or the k-th
// largest when fromTop is set: the number that k seasons stay within. NaN seasons
// never do; the answer is NaN when fewer than k others are left, or k is below 1.
// It works in scratch as [Summarise] does.
func Kth(col []float64, k int, fromTop bool, scratch []float64) float64 {
	if len(scratch) < len(col) {
		scratch = make([]float64, len(col))
	}
	n := 0
	for _, x := range col {
		if !math.IsNaN(x) {
			scratch[n] = x
			n++
		}
	}
	if k < 1 || k > n {
		return math.NaN()
	}
	rank := k - 1
	if fromTop {
		rank = n - k
	}
	place(scratch[:n], []int{rank})
	return scratch[rank]
}
