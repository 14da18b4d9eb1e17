package outcome

import (
	"math"
	"slices"
)

// Spearman is the rank correlation of two columns of one length, from -1 to 1:
// the linear correlation of their ranks, equal numbers sharing the average of
// theirs (C. Spearman, American Journal of Psychology 15:72-101, 1904).
// Seasons where either is NaN or infinite are left out. NaN when lengths differ,
// when fewer than two seasons are left, or when either column is all one number.
func Spearman(x, y []float64) float64 {
	if len(x) != len(y) {
		return math.NaN()
	}
	var a, b []float64
	for i := range x {
		if finite(x[i]) && finite(y[i]) {
			a, b = append(a, x[i]), append(b, y[i])
		}
	}
	return linear(averageRanks(a), averageRanks(b))
}

// averageRanks are counted from 1.
func averageRanks(x []float64) []float64 {
	order := make([]placed, len(x))
	for i, v := range x {
		order[i] = placed{v, i}
	}
	slices.SortFunc(order, func(a, b placed) int {
		switch {
		case a.x < b.x:
			return -1
		case a.x > b.x:
			return 1
		}
		return 0
	})
	rank := make([]float64, len(x))
	for from := 0; from < len(order); {
		to := from + 1
		for to < len(order) && order[to].x == order[from].x {
			to++
		}
		for _, p := range order[from:to] {
			rank[p.i] = float64(from+1+to) / 2
		}
		from = to
	}
	return rank
}

type placed struct {
	x float64
	i int
}

// linear is Pearson's correlation.
func linear(a, b []float64) float64 {
	meanA, meanB := momentsOf(a).mean, momentsOf(b).mean
	var ab, aa, bb float64
	for i := range a {
		da, db := a[i]-meanA, b[i]-meanB
		ab += da * db
		aa += da * da
		bb += db * db
	}
	if !(aa > 0 && bb > 0) {
		return math.NaN()
	}
	return max(-1, min(1, ab/math.Sqrt(aa*bb)))
}
