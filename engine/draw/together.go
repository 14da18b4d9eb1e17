package draw

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// few is the number of seasons below which columns say little about the guesses
// they are drawn from.
const few = 100

// Together reorders one guess's column of points so that its Spearman rank
// correlation with others[j] approaches rank[j] (each from -1 to 1), and gives
// back a new column with the very same numbers; own and others stay as they
// are. All columns need one length. otherRank[j][k] is the rank correlation
// that the others were given among themselves; nil takes it from the columns.
//
// The method is R. L. Iman and W. J. Conover, "A distribution-free approach to
// inducing rank correlation among input variables", Communications in
// Statistics B11(3):311-334 (1982), one row of the Cholesky factor at a time:
// van der Waerden scores of own, made orthogonal to those of the others, are
// mixed with them, and own takes the order of the mix. As normal scores with
// linear correlation c have rank correlation (6/pi)·asin(c/2), the scores are
// given c = 2·sin(pi·rank/6).
//
// With fewer than 100 seasons chance decides much: ranks are approached as far
// as so few allow, and nothing is refused on account of the columns.
//
// The error is an *Impossible when the ranks contradict each other or lie
// beyond -1 and 1, and another one when lengths do not match or own is a mere
// mix of the others.
func Together(own []float64, others [][]float64, rank []float64, otherRank [][]float64) ([]float64, error) {
	if err := fits(own, others, rank, otherRank); err != nil {
		return nil, err
	}
	if len(others) == 0 || len(own) < 2 {
		return slices.Clone(own), nil
	}
	score := vanDerWaerden(len(own))
	basis := make([][]float64, len(others))
	for j, column := range others {
		basis[j] = scored(ranks(column), score)
	}
	among := products(basis)
	if err := judge(rank, otherRank, among, len(own)); err != nil {
		return nil, err
	}
	before := ranks(own)
	mix, err := blend(scored(before, score), basis, among, linear(rank))
	if err != nil {
		return nil, err
	}
	return reorder(own, before, ranks(mix)), nil
}

// reorder gives each season the number of own that has the season's new rank.
func reorder(own []float64, before, after []int32) []float64 {
	ordered, out := make([]float64, len(own)), make([]float64, len(own))
	for i, r := range before {
		ordered[r] = own[i]
	}
	for i, r := range after {
		out[i] = ordered[r]
	}
	return out
}

// blend is the new scores of own: what makes them correlate as wanted with the
// basis, and as much of own's part orthogonal to it as keeps their spread 1.
// With a basis that is not independent, as when one guess is there twice, its
// superfluous scores have no part.
func blend(own []float64, basis, among [][]float64, wanted []float64) ([]float64, error) {
	// Scores that are dot products of real columns always have a factor.
	factor, _ := cholesky(among)
	part := make([]float64, len(basis))
	for j := range basis {
		part[j] = dot(own, basis[j])
	}
	part = backward(factor, forward(factor, part))
	along := forward(factor, wanted)
	rest := math.Sqrt(max(0, 1-dot(along, along)))
	weight := backward(factor, along)
	mix := slices.Clone(own)
	for j, b := range basis {
		for i := range mix {
			mix[i] -= part[j] * b[i]
		}
	}
	size := math.Sqrt(dot(mix, mix))
	if size < 1e-6 && rest > 1e-6 && len(own) >= few {
		return nil, errors.New("a column that already moves with the others in every season")
	}
	for i := range mix {
		mix[i] *= rest / max(size, 1e-6)
	}
	for j, b := range basis {
		for i := range mix {
			mix[i] += weight[j] * b[i]
		}
	}
	return mix, nil
}

func fits(own []float64, others [][]float64, rank []float64, otherRank [][]float64) error {
	if len(rank) != len(others) || otherRank != nil && len(otherRank) != len(others) {
		return fmt.Errorf("%d columns for %d rank correlations", len(others), len(rank))
	}
	for j, column := range others {
		if len(column) != len(own) {
			return fmt.Errorf("a column of %d points beside one of %d", len(column), len(own))
		}
		if otherRank != nil && len(otherRank[j]) != len(others) {
			return fmt.Errorf("%d rank correlations among %d columns", len(otherRank[j]), len(others))
		}
	}
	return nil
}
