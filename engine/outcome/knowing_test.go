package outcome_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"thawbook/engine/draw"
	"thawbook/engine/outcome"
)

// evenly are n Latin hypercube draws from 0 to 1.
func evenly(seed uint64, id string, n int) []float64 {
	out := make([]float64, n)
	draw.NewStream(seed, id, n).Fill(out, 0)
	return out
}

func normally(seed uint64, id string, n int) []float64 {
	out := evenly(seed, id, n)
	for k, u := range out {
		out[k] = distuv.UnitNormal.Quantile(u)
	}
	return out
}

// each works a column season by season.
func each(n int, f func(k int) float64) []float64 {
	out := make([]float64, n)
	for k := range out {
		out[k] = f(k)
	}
	return out
}

// TestDrillingForOil: a quarter of the land has oil. Drilling brings 700 there
// and loses 100 elsewhere, selling the land brings 90. Knowing beforehand is
// worth 0.25·700 + 0.75·90 − 100 = 142.5.
func TestDrillingForOil(t *testing.T) {
	const n = 10_000
	shape := draw.Records([]float64{0, 0, 0, 1})
	oil := evenly(41, "oil", n)
	for k, u := range oil {
		oil[k] = shape.Quantile(u)
	}
	drill := each(n, func(k int) float64 { return 800*oil[k] - 100 })
	sell := each(n, func(int) float64 { return 90 })
	c := outcome.Choose([][]float64{sell, drill})
	assert.Equal(t, 1, c.Best)
	assert.InDelta(t, 100, c.Means[1], 1e-9)
	assert.InDelta(t, 0.75, c.Ahead[0], 1e-9)

	all, known := c.KnowAll(), c.Know(oil)
	assert.InDelta(t, 142.5, all.Worth, 1e-9)
	assert.InDelta(t, 142.5, known.Worth, 1e-9, "the oil is all there is to know")
	assert.InDelta(t, 0.75, known.Changes, 1e-9)
	assert.Equal(t, []outcome.Stretch{{math.Inf(-1), 0.5, 0}, {0.5, math.Inf(1), 1}}, known.Stretches)
	assert.Zero(t, c.Know(evenly(41, "weather", n)).Worth, "the weather says nothing of the oil")
}

// TestNormalDifference: where two options differ by m + s·z + noise and z is
// known, the worth is s·φ(m/s) − |m|·Φ(−|m|/s), the unit normal loss integral
// (Raiffa and Schlaifer 1961).
func TestNormalDifference(t *testing.T) {
	const n = 10_000
	for _, test := range []struct{ m, s, noise float64 }{
		{0, 1, 0}, {0, 1, 3}, {-0.5, 1, 1}, {2, 1, 1}, {0.3, 0.5, 2},
	} {
		z, e := normally(3, "z", n), normally(3, "e", n)
		other := each(n, func(k int) float64 { return 50 + test.m + test.s*z[k] + test.noise*e[k] })
		c := outcome.Choose([][]float64{each(n, func(int) float64 { return 50 }), other})
		loss := func(s float64) float64 {
			m := math.Abs(test.m)
			return s*distuv.UnitNormal.Prob(m/s) - m*distuv.UnitNormal.CDF(-m/s)
		}
		what := fmt.Sprintf("%+v", test)
		got := c.Know(z)
		// Cells of equal count lose up to a fiftieth where they straddle the turn.
		want := loss(test.s)
		assert.InDelta(t, want, got.Worth, 3*got.Error+want/50, what)
		assert.Less(t, got.Error, 0.03, what)
		all := c.KnowAll()
		assert.InDelta(t, loss(math.Hypot(test.s, test.noise)), all.Worth, 3*all.Error+1e-3, what)
		if got.Worth > 0.05 {
			require.Len(t, got.Stretches, 2, what)
			// With noise the turn is found to within a few cells of an eighth.
			assert.InDelta(t, -test.m/test.s, got.Stretches[0].To, 0.15+0.3*test.noise, what)
		}
	}
}

// TestWhereTheChoiceTurnsMoreThanOnce: an option that is better only for middling
// values, and by how much is known exactly.
func TestWhereTheChoiceTurnsMoreThanOnce(t *testing.T) {
	const n = 10_000
	x, e := evenly(5, "x", n), normally(5, "e", n)
	c := outcome.Choose([][]float64{
		each(n, func(k int) float64 { return e[k] }),
		each(n, func(k int) float64 {
			if x[k] > 0.25 && x[k] < 0.5 {
				return e[k] + 10
			}
			return e[k] - 5
		}),
	})
	got := c.Know(x)
	assert.InDelta(t, 2.5, got.Worth, 1e-9)
	assert.InDelta(t, 0.25, got.Changes, 1e-9)
	require.Len(t, got.Stretches, 3)
	assert.InDelta(t, 0.25, got.Stretches[0].To, 1e-3)
	assert.InDelta(t, 0.5, got.Stretches[1].To, 1e-3)
}

// TestThreeOptions: with payoffs x, 1−x and 0.6 the best is the larger of the
// three: 2·∫ from 0.6 to 1 of x dx + 0.2·0.6 − 0.6 = 0.16.
func TestThreeOptions(t *testing.T) {
	const n = 10_000
	x := evenly(6, "x", n)
	c := outcome.Choose([][]float64{
		each(n, func(k int) float64 { return x[k] }),
		each(n, func(k int) float64 { return 1 - x[k] }),
		each(n, func(int) float64 { return 0.6 }),
	})
	assert.Equal(t, 2, c.Best)
	assert.InDelta(t, 0.16, c.KnowAll().Worth, 1e-4)
	got := c.Know(x)
	assert.InDelta(t, 0.16, got.Worth, 0.001)
	var options []int
	for _, s := range got.Stretches {
		options = append(options, s.Option)
	}
	assert.Equal(t, []int{1, 2, 0}, options)
}

// TestNoiseIsNotWorth: knowing what has nothing to do with the choice, in 200
// choices that are close calls, and never worth more than knowing all.
func TestNoiseIsNotWorth(t *testing.T) {
	const n, choices = 2000, 200
	told, sum := 0, 0.0
	for seed := range uint64(choices) {
		a, b, x := normally(seed, "a", n), normally(seed, "b", n), evenly(seed, "x", n)
		c := outcome.Choose([][]float64{a, each(n, func(k int) float64 { return b[k] + 0.02 })})
		got, all := c.Know(x), c.KnowAll()
		assert.GreaterOrEqual(t, got.Worth, 0.0)
		assert.LessOrEqual(t, got.Worth, all.Worth)
		sum += got.Worth / all.Worth / choices
		if !got.AboutNothing() {
			told++
		}
	}
	assert.LessOrEqual(t, told, choices*3/100, "told worth something")
	assert.Less(t, sum, 0.005, "what noise comes to, as a part of knowing all")
}

// TestAChoiceThatNeverChanges is worth exactly nothing to know anything about.
func TestAChoiceThatNeverChanges(t *testing.T) {
	const n = 1000
	x := normally(8, "x", n)
	c := outcome.Choose([][]float64{x, each(n, func(k int) float64 { return x[k] - 0.5 - math.Abs(x[k]) })})
	for name, k := range map[string]outcome.Knowing{"all": c.KnowAll(), "x": c.Know(x)} {
		assert.Equal(t, outcome.Knowing{}, k, name)
		assert.True(t, k.AboutNothing(), name)
	}
	assert.Equal(t, []float64{1, 0}, c.Ahead)
}

// TestOneTurnIsToldOnce: with much noise cells flip to and fro about the turn,
// which is no more than one.
func TestOneTurnIsToldOnce(t *testing.T) {
	const n, sets = 5000, 40
	once := 0
	for seed := range uint64(sets) {
		z, e := normally(seed, "z", n), normally(seed, "e", n)
		c := outcome.Choose([][]float64{each(n, func(k int) float64 { return 8 * e[k] }), each(n, func(k int) float64 { return 8*e[k] + z[k] + 3*e[(k+1)%n] })})
		got := c.Know(z)
		require.NotEmpty(t, got.Stretches)
		assert.Zero(t, got.Stretches[0].Option)
		if len(got.Stretches) == 2 {
			once++
			assert.InDelta(t, 0, got.Stretches[0].To, 0.8)
		}
	}
	assert.GreaterOrEqual(t, once, sets*9/10)
}

func TestChooseLeavesOutWhatIsNoNumber(t *testing.T) {
	nan := math.NaN()
	c := outcome.Choose([][]float64{{1, nan, 3, 9}, {2, 5, math.Inf(1), 1}})
	assert.Equal(t, 2, c.N)
	assert.Equal(t, 2, c.Missing)
	assert.Equal(t, []float64{5, 1.5}, c.Means)
	assert.InDelta(t, 0.5, c.KnowAll().Worth, 1e-12, "the mean of 2 and 9 less 5")
	assert.Zero(t, c.Know([]float64{1, 2, 3, 4}).Worth, "two seasons teach nothing")

	none := outcome.Choose([][]float64{{nan}, {1}})
	assert.Zero(t, none.N)
	assert.Zero(t, none.KnowAll().Worth)
	assert.Zero(t, none.Know([]float64{1}).Worth)
}

// TestEqualValuesShareACell: with seven different values the choice hangs on the
// value alone, wherever cells would have cut.
func TestEqualValuesShareACell(t *testing.T) {
	const n = 7000
	shape := draw.Records([]float64{9, 14, 11, 15, 12, 10, 13})
	x, e := evenly(2, "x", n), normally(2, "e", n)
	for k, u := range x {
		x[k] = shape.Quantile(u)
	}
	c := outcome.Choose([][]float64{e, each(n, func(k int) float64 { return e[k] + x[k] - 12.5 })})
	got := c.Know(x)
	// 13, 14 and 15 gain 0.5, 1.5 and 2.5 in a season of seven each.
	assert.InDelta(t, 4.5/7, got.Worth, 1e-9)
	assert.Equal(t, 12.5, got.Stretches[0].To)
}
