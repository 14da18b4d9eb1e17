package outcome

import "math"

// Quantile is the value that a share p of sorted lies below, of type 7 (R. J.
// Hyndman and Y. Fan, "Sample Quantiles in Statistical Packages", The American
// Statistician 50:361-365, 1996): the straight line between the numbers of
// rank floor((n-1)p) and the next, counted from 0. sorted must rise and hold no
// NaN. NaN when it is empty or p lies outside 0 to 1.
func Quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	rank, part := position(len(sorted), p)
	return blend(sorted[rank], sorted[min(rank+1, len(sorted)-1)], part)
}

// position is where the quantile of n numbers lies: the rank below it and the
// part of the way to the next.
func position(n int, p float64) (rank int, part float64) {
	at := float64(n-1) * p
	rank = min(int(at), n-1)
	return rank, at - float64(rank)
}

// blend is a, and part of the way from there to b.
func blend(a, b, part float64) float64 {
	wide := b - a
	if part == 0 || wide == 0 {
		return a
	}
	if math.IsInf(wide, 0) {
		return a*(1-part) + b*part
	}
	return a + part*wide
}
