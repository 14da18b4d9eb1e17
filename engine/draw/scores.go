package draw

import (
	"math"
	"slices"
)

// linear is the linear correlation that normal scores need to have a given
// rank correlation.
func linear(rank []float64) []float64 {
	out := make([]float64, len(rank))
	for i, s := range rank {
		out[i] = 2 * math.Sin(math.Pi*s/6)
	}
	return out
}

// vanDerWaerden is the normal quantile of rank/(n+1) for every rank, scaled so
// that the squares sum to 1: the dot product of two orders of it is then their
// correlation.
func vanDerWaerden(n int) []float64 {
	score := make([]float64, n)
	for i := range n / 2 {
		z := standardNormal(float64(i+1) / float64(n+1))
		score[i], score[n-1-i] = z, -z
	}
	size := math.Sqrt(dot(score, score))
	for i := range score {
		score[i] /= size
	}
	return score
}

func scored(rank []int32, score []float64) []float64 {
	out := make([]float64, len(rank))
	for i, r := range rank {
		out[i] = score[r]
	}
	return out
}

// ranks is each number's place in the order of the column, counted from 0.
// Equal numbers are ranked as they stand.
func ranks(column []float64) []int32 {
	if r, ok := cellRanks(column); ok {
		return r
	}
	type placed struct {
		x float64
		i int32
	}
	order := make([]placed, len(column))
	for i, x := range column {
		order[i] = placed{x, int32(i)}
	}
	slices.SortFunc(order, func(a, b placed) int {
		switch {
		case a.x < b.x:
			return -1
		case a.x > b.x:
			return 1
		}
		return int(a.i - b.i)
	})
	rank := make([]int32, len(column))
	for r, p := range order {
		rank[p.i] = int32(r)
	}
	return rank
}

// cellRanks ranks a column that has one point in each cell, as a Stream makes
// them: there the cell's number is the rank, without any sorting.
func cellRanks(column []float64) ([]int32, bool) {
	n := len(column)
	rank, taken := make([]int32, n), make([]bool, n)
	for i, u := range column {
		cell := u * float64(n)
		if !(cell >= 0 && cell < float64(n)) || taken[int(cell)] {
			return nil, false
		}
		taken[int(cell)] = true
		rank[i] = int32(cell)
	}
	return rank, true
}
