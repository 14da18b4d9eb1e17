package draw

import (
	"fmt"
	"math"
	"strings"
)

// Impossible is a set of rank correlations that no seasons can have.
type Impossible struct {
	// Asked holds the rank correlations that were wanted, Most the largest of
	// the same proportions that can hold, rounded towards 0 to two decimals. Most
	// is nil when one of Asked lies beyond -1 and 1, or when the others' own
	// correlations already contradict each other.
	Asked, Most []float64
	Message     string
}

// Error is the message.
func (e *Impossible) Error() string { return e.Message }

// judge refuses rank correlations that no seasons can have, by the ranks that
// the others were given or, without any, by their scores' correlations in n
// seasons.
func judge(rank []float64, otherRank, measured [][]float64, n int) error {
	for _, s := range rank {
		if !(s >= -1 && s <= 1) {
			return &Impossible{Asked: rank, Message: fmt.Sprintf("rank correlation %v, wanted one from -1 to 1", s)}
		}
	}
	if otherRank == nil && n < few {
		return nil
	}
	among := measured
	if otherRank != nil {
		among = make([][]float64, len(otherRank))
		for j, row := range otherRank {
			among[j] = linear(row)
		}
	}
	return possible(rank, among)
}

// possible refuses them by the others' correlations on the scale of scores.
func possible(rank []float64, among [][]float64) error {
	factor, ok := cholesky(among)
	if !ok {
		return &Impossible{Asked: rank, Message: "the rank correlations of the others contradict each other"}
	}
	if reach(factor, linear(rank)) <= 1+1e-9 {
		return nil
	}
	most := shrink(rank, factor)
	return &Impossible{Asked: rank, Most: most, Message: fmt.Sprintf(
		"rank correlations %s cannot hold together, at most %s", list(rank), list(most))}
}

// reach is the squared length of the row that the correlations add to the
// factor. Its last element, the square root of what is missing to 1, is real
// only when reach is at most 1. Infinite when no row gives the correlations:
// two others that are one and the same, wanted at two different ones.
func reach(factor [][]float64, wanted []float64) float64 {
	row := forward(factor, wanted)
	for j, given := range wanted {
		if math.Abs(dot(factor[j], row)-given) > 1e-6 {
			return math.Inf(1)
		}
	}
	return dot(row, row)
}

// shrink finds by halving the largest proportion of rank that is possible.
func shrink(rank []float64, factor [][]float64) []float64 {
	low, high := 0.0, 1.0
	scaled := make([]float64, len(rank))
	for range 40 {
		middle := (low + high) / 2
		for j, s := range rank {
			scaled[j] = middle * s
		}
		if reach(factor, linear(scaled)) <= 1 {
			low = middle
		} else {
			high = middle
		}
	}
	for j, s := range rank {
		scaled[j] = math.Trunc(low*s*100) / 100
	}
	return scaled
}

func list(numbers []float64) string {
	texts := make([]string, len(numbers))
	for i, x := range numbers {
		texts[i] = short(x)
	}
	return strings.Join(texts, " and ")
}
