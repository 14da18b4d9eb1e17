package draw

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// spearman ranks by sorting, so that it shares nothing with what it checks.
func spearman(x, y []float64) float64 {
	order := func(v []float64) []float64 {
		sorted := slices.Sorted(slices.Values(v))
		out := make([]float64, len(v))
		for i, a := range v {
			at, _ := slices.BinarySearch(sorted, a)
			out[i] = float64(at)
		}
		return out
	}
	return stat.Correlation(order(x), order(y), nil)
}

func columns(n int, ids ...string) [][]float64 {
	out := make([][]float64, len(ids))
	for i, id := range ids {
		out[i] = column(41, id, n)
	}
	return out
}

// The scores of n seasons are given their linear correlation exactly. Their
// ranks follow it up to chance: normal scores and ranks correlate by √(3/π), so
// what the scores leave open has a standard deviation of √((1-3/π)/n), and less
// than that away from 0.
func nearRank(n int) float64 { return 4 * math.Sqrt((1-3/math.Pi)/float64(n)) }

func TestTogetherReachesOneRank(t *testing.T) {
	const n = 10000
	own, other := column(41, "own", n), column(41, "other", n)
	for _, want := range []float64{-1, -0.99, -0.8, -0.3, 0, 0.05, 0.5, 0.7, 0.95, 1} {
		moved, err := Together(own, [][]float64{other}, []float64{want}, nil)
		require.NoError(t, err)
		assert.InDelta(t, want, spearman(moved, other), nearRank(n), "rank %v", want)
		if math.Abs(want) == 1 {
			assert.InDelta(t, want, spearman(moved, other), 1e-12)
		}
	}
}

func TestTogetherReachesSeveralRanksAtOnce(t *testing.T) {
	const n = 10000
	others := columns(n, "a", "b", "c")
	// b is given a rank of 0.6 with a first, as a sheet would.
	b, err := Together(others[1], others[:1], []float64{0.6}, nil)
	require.NoError(t, err)
	others[1] = b
	among := [][]float64{{1, 0.6, 0}, {0.6, 1, 0}, {0, 0, 1}}
	for _, want := range [][]float64{{0.5, 0.5, 0.5}, {0.7, 0.2, -0.5}, {-0.4, 0.3, 0}, {0, 0, 0.9}} {
		for _, given := range [][][]float64{nil, among} {
			moved, err := Together(column(41, "own", n), others, want, given)
			require.NoError(t, err)
			for j, other := range others {
				assert.InDelta(t, want[j], spearman(moved, other), nearRank(n), "ranks %v, other %d", want, j)
			}
		}
	}
}

// Iman and Conover's promise: the marginals are the same to the last bit.
func TestTogetherKeepsTheNumbers(t *testing.T) {
	const n = 1000
	own, others := column(41, "own", n), columns(n, "a", "b")
	ownBefore, othersBefore := slices.Clone(own), [][]float64{slices.Clone(others[0]), slices.Clone(others[1])}
	moved, err := Together(own, others, []float64{0.6, -0.3}, nil)
	require.NoError(t, err)
	assert.Equal(t, slices.Sorted(slices.Values(own)), slices.Sorted(slices.Values(moved)))
	assert.NotEqual(t, own, moved)
	assert.Equal(t, ownBefore, own)
	assert.Equal(t, othersBefore, others)
}

// The method asks for ranks alone: columns of values, of any shape and with
// equal ones among them, do as well as columns of points.
func TestTogetherTakesColumnsOfValues(t *testing.T) {
	const n = 10000
	own, other := column(41, "own", n), column(41, "other", n)
	Apply(Records([]float64{1, 2, 3, 5, 8, 13, 21, 34, 55, 89}), own)
	metalog, err := Metalog(5, 9, 14, at(0), nil)
	require.NoError(t, err)
	Apply(metalog, other)
	moved, err := Together(own, [][]float64{other}, []float64{0.5}, nil)
	require.NoError(t, err)
	assert.InDelta(t, 0.5, spearman(moved, other), nearRank(n))
	assert.Equal(t, slices.Sorted(slices.Values(own)), slices.Sorted(slices.Values(moved)))
}

// Two columns that correlate by chance or by design are first taken apart.
func TestTogetherTakesApartWhatCorrelates(t *testing.T) {
	const n = 10000
	other := column(41, "other", n)
	own, err := Together(column(41, "own", n), [][]float64{other}, []float64{0.8}, nil)
	require.NoError(t, err)
	moved, err := Together(own, [][]float64{other}, []float64{-0.2}, nil)
	require.NoError(t, err)
	assert.InDelta(t, -0.2, spearman(moved, other), nearRank(n))
	_, err = Together(other, [][]float64{other}, []float64{0.5}, nil)
	assert.EqualError(t, err, "a column that already moves with the others in every season")
}

// For normal scores Spearman = (6/pi)·asin(c/2).
func TestLinearUndoesSpearmanOfNormalScores(t *testing.T) {
	for _, s := range []float64{-1, -0.5, 0, 0.3, 0.9, 1} {
		assert.InDelta(t, s, 6/math.Pi*math.Asin(linear([]float64{s})[0]/2), 1e-15)
	}
}

func TestTogetherWithFewSeasons(t *testing.T) {
	for n := 1; n <= 12; n++ {
		own, other := column(1, "own", n), column(1, "other", n)
		moved, err := Together(own, [][]float64{other}, []float64{1}, nil)
		require.NoError(t, err)
		assert.Equal(t, ranks(other), ranks(moved), "n %d", n)
	}
	// Two seasons cannot have a rank correlation of a half with three others, but
	// a sheet must open with two seasons all the same.
	for n := 1; n <= 12; n++ {
		own := column(1, "own", n)
		moved, err := Together(own, columns(n, "a", "b", "c"), []float64{0.5, 0.4, -0.6}, nil)
		require.NoError(t, err)
		assert.Equal(t, slices.Sorted(slices.Values(own)), slices.Sorted(slices.Values(moved)), "n %d", n)
	}
	moved, err := Together([]float64{0.3, 0.6}, nil, nil, nil)
	require.NoError(t, err)
	assert.Equal(t, []float64{0.3, 0.6}, moved)
}

func TestTogetherRefusesWhatCannotBe(t *testing.T) {
	const n = 1000
	others := columns(n, "a", "b")
	cases := []struct {
		rank  []float64
		among [][]float64
		most  []float64
		text  string
	}{
		// sin(pi·s/6) = 1/√8 for both: s = 0.6902.
		{[]float64{0.9, 0.9}, [][]float64{{1, 0}, {0, 1}}, []float64{0.69, 0.69},
			"rank correlations 0.9 and 0.9 cannot hold together, at most 0.69 and 0.69"},
		{[]float64{0.9, -0.5}, [][]float64{{1, 0.8}, {0.8, 1}}, []float64{0.37, -0.2},
			"rank correlations 0.9 and -0.5 cannot hold together, at most 0.37 and -0.2"},
		{[]float64{0.5, 0.2}, [][]float64{{1, 1}, {1, 1}}, []float64{0, 0},
			"rank correlations 0.5 and 0.2 cannot hold together, at most 0 and 0"},
		{[]float64{1.5, 0}, nil, nil, "rank correlation 1.5, wanted one from -1 to 1"},
		{[]float64{math.NaN(), 0}, nil, nil, "rank correlation NaN, wanted one from -1 to 1"},
	}
	for _, c := range cases {
		moved, err := Together(column(41, "own", n), others, c.rank, c.among)
		assert.Nil(t, moved)
		var impossible *Impossible
		require.ErrorAs(t, err, &impossible)
		assert.Equal(t, c.text, impossible.Error())
		assert.InDeltaSlice(t, c.most, impossible.Most, 1e-12)
	}
	_, err := Together(column(41, "own", n), columns(n, "a", "b", "c"), []float64{0, 0, 0},
		[][]float64{{1, -0.9, -0.9}, {-0.9, 1, -0.9}, {-0.9, -0.9, 1}})
	assert.EqualError(t, err, "the rank correlations of the others contradict each other")
}

// What an error says is possible must be so, and a little more must not.
func TestTogetherMostIsTheMost(t *testing.T) {
	among := [][]float64{{1, 0.3}, {0.3, 1}}
	err := possible([]float64{0.9, -0.6}, [][]float64{linear(among[0]), linear(among[1])})
	var impossible *Impossible
	require.ErrorAs(t, err, &impossible)
	given := [][]float64{linear(among[0]), linear(among[1])}
	assert.NoError(t, possible(impossible.Most, given))
	assert.Error(t, possible([]float64{impossible.Most[0] + 0.03, impossible.Most[1] - 0.03}, given))
}

// One other given twice has one place only; the factor leaves the second out.
func TestTogetherWithOneOtherTwice(t *testing.T) {
	const n = 10000
	other := column(41, "other", n)
	moved, err := Together(column(41, "own", n), [][]float64{other, other}, []float64{0.6, 0.6}, nil)
	require.NoError(t, err)
	assert.InDelta(t, 0.6, spearman(moved, other), nearRank(n))
}

func TestTogetherRefusesUnequalLengths(t *testing.T) {
	own := column(1, "own", 10)
	for _, c := range []struct {
		others [][]float64
		rank   []float64
		among  [][]float64
		text   string
	}{
		{columns(10, "a"), nil, nil, "1 columns for 0 rank correlations"},
		{columns(9, "a"), []float64{0}, nil, "a column of 9 points beside one of 10"},
		{columns(10, "a"), []float64{0}, [][]float64{{1, 0}}, "2 rank correlations among 1 columns"},
		{columns(10, "a"), []float64{0}, [][]float64{{1}, {1}}, "1 columns for 1 rank correlations"},
	} {
		_, err := Together(own, c.others, c.rank, c.among)
		assert.EqualError(t, err, c.text)
	}
}

func TestCellRanksAndSortingAgree(t *testing.T) {
	points := column(5, "a", 500)
	fast, ok := cellRanks(points)
	require.True(t, ok)
	values := slices.Clone(points)
	for i := range values {
		values[i] = 100 * values[i]
	}
	_, ok = cellRanks(values)
	require.False(t, ok)
	assert.Equal(t, fast, ranks(values))
}

func TestCholesky(t *testing.T) {
	matrix := [][]float64{{1, 0.5, 0.2}, {0.5, 1, -0.3}, {0.2, -0.3, 1}}
	factor, ok := cholesky(matrix)
	require.True(t, ok)
	for i := range matrix {
		for j := range matrix {
			assert.InDelta(t, matrix[i][j], dot(factor[i], factor[j]), 1e-15, fmt.Sprint(i, j))
		}
	}
	x := backward(factor, forward(factor, []float64{1, 2, 3}))
	for i, row := range matrix {
		assert.InDelta(t, float64(i+1), dot(row, x), 1e-14)
	}
}
