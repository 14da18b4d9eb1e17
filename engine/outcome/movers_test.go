package outcome_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/draw"
	"thawbook/engine/outcome"
)

// model is a function of numbers that are each drawn evenly from 0 to 1.
type model struct {
	inputs int
	f      func(u []float64) float64
}

// effects measures every input of a model over n seasons: Latin hypercube ones,
// or ones drawn independently of each other.
func (m model) effects(n int, seed uint64, hypercube bool) []outcome.Effects {
	points := func(set string) [][]float64 {
		out := make([][]float64, m.inputs)
		for i := range out {
			out[i] = make([]float64, n)
			if id := fmt.Sprintf("%s%d", set, i); hypercube {
				draw.NewStream(seed, id, n).Fill(out[i], 0)
			} else {
				// Neighbours of a very long stream hardly know of each other.
				draw.NewStream(seed, id, 1<<30).Fill(out[i], 0)
			}
		}
		return out
	}
	column := func(x [][]float64) []float64 {
		out, season := make([]float64, n), make([]float64, m.inputs)
		for k := range out {
			for i := range season {
				season[i] = x[i][k]
			}
			out[k] = m.f(season)
		}
		return out
	}
	a, b := points("a"), points("b")
	fa, fb := column(a), column(b)
	out := make([]outcome.Effects, m.inputs)
	for i := range out {
		mixed := append([][]float64{}, a...)
		mixed[i] = b[i]
		out[i] = outcome.Measure(fa, fb, column(mixed))
	}
	return out
}

// ishigami is T. Ishigami and T. Homma, "An importance quantification technique
// in uncertainty analysis for computer models", ISUMA 1990, with a = 7, b = 0.1.
func ishigami() model {
	return model{3, func(u []float64) float64 {
		x := [3]float64{}
		for i := range x {
			x[i] = math.Pi * (2*u[i] - 1)
		}
		return math.Sin(x[0]) + 7*math.Pow(math.Sin(x[1]), 2) + 0.1*math.Pow(x[2], 4)*math.Sin(x[0])
	}}
}

// The shares below are worked from the model's equation: V = a²/8 + bπ⁴/5 +
// b²π⁸/18 + 1/2, V₁ = (1 + bπ⁴/5)²/2, V₂ = a²/8, V₁₃ = b²π⁸(1/18 − 1/50).
func ishigamiShares() (first, total [3]float64) {
	p4, p8 := math.Pow(math.Pi, 4), math.Pow(math.Pi, 8)
	v := 49.0/8 + 0.1*p4/5 + 0.01*p8/18 + 0.5
	v1, v2, v13 := math.Pow(1+0.1*p4/5, 2)/2, 49.0/8, 0.01*p8*(1.0/18-1.0/50)
	return [3]float64{v1 / v, v2 / v, 0}, [3]float64{(v1 + v13) / v, v2 / v, v13 / v}
}

func TestIshigami(t *testing.T) {
	first, total := ishigamiShares()
	assert.InDelta(t, 0.313905191148, first[0], 1e-12)
	assert.InDelta(t, 0.243683664062, total[2], 1e-12)
	const seeds = 40
	for i := range first {
		of := map[string]*tally{"first": {want: first[i]}, "total": {want: total[i]}, "together": {want: total[i] - first[i]}}
		for seed := range uint64(seeds) {
			e := ishigami().effects(4096, seed, true)[i]
			of["first"].add(e.First)
			of["total"].add(e.Total)
			of["together"].add(e.Together)
		}
		for name, got := range of {
			// Forty seeds together know the share to a third of a percent; of single
			// ones 19 in 20 should lie within two of their own errors.
			assert.InDelta(t, got.want, got.sum/seeds, 0.006, "%s of x%d", name, i+1)
			assert.GreaterOrEqual(t, got.near, seeds*85/100, "%s of x%d", name, i+1)
			assert.Equal(t, math.Abs(got.want) < 1e-12, got.zero >= seeds*85/100, "%s of x%d about zero in %d", name, i+1, got.zero)
		}
	}
}

// tally counts how estimates of one share come out over many seeds.
type tally struct {
	want, sum  float64
	near, zero int
}

func (c *tally) add(s outcome.Share) {
	c.sum += s.Value
	if math.Abs(s.Value-c.want) <= 2*s.Error {
		c.near++
	}
	if s.AboutZero() {
		c.zero++
	}
}

// within wants a share near want: no more than so many of its own errors away,
// and those errors small enough to mean something.
func within(t *testing.T, want float64, got outcome.Share, errors, most float64, format string, args ...any) {
	t.Helper()
	what := fmt.Sprintf(format, args...)
	assert.InDelta(t, want, got.Value, errors*got.Error+1e-12, what)
	assert.Less(t, got.Error, most, what)
}

// TestLinearModel: of a sum of independent parts, each has the share its
// variance has, first and total alike.
func TestLinearModel(t *testing.T) {
	weights := []float64{5, 3, -2, 1, 0.1, 0}
	m := model{len(weights), func(u []float64) float64 {
		y := 1000.0 // far from 0, which must not make the shares any worse
		for i, w := range weights {
			y += w * u[i]
		}
		return y
	}}
	all := 0.0
	for _, w := range weights {
		all += w * w
	}
	for i, e := range m.effects(10_000, 41, true) {
		want := weights[i] * weights[i] / all
		// Errors of about 1 part in 100 of the largest share, at 10,000 seasons.
		within(t, want, e.First, 3, 0.015, "first of %d", i)
		within(t, want, e.Total, 3, 0.015, "total of %d", i)
	}
	none := m.effects(10_000, 41, true)[5]
	assert.Zero(t, none.First.Value)
	assert.Zero(t, none.Total.Value)
	assert.True(t, none.First.AboutZero() && none.Total.AboutZero() && none.Together.AboutZero())
}

// TestProduct: for a product of two even draws V = 7/144 and each by itself makes
// 1/48 of it.
func TestProduct(t *testing.T) {
	m := model{2, func(u []float64) float64 { return u[0] * u[1] }}
	for i, e := range m.effects(10_000, 7, true) {
		within(t, 3.0/7, e.First, 3, 0.02, "first of %d", i)
		within(t, 4.0/7, e.Total, 3, 0.02, "total of %d", i)
		within(t, 1.0/7, e.Together, 3, 0.02, "together of %d", i)
		assert.False(t, e.Together.AboutZero())
	}
}

// TestErrorsAreWhatTheySay lives through 400 sets of seasons: estimates must
// scatter about the true share as their errors say when seasons are independent,
// and no more than that in a Latin hypercube.
func TestErrorsAreWhatTheySay(t *testing.T) {
	if testing.Short() {
		t.Skip("400 sets of seasons")
	}
	first, total := ishigamiShares()
	for _, hypercube := range []bool{false, true} {
		var off [3][2]float64
		const sets = 400
		for seed := range uint64(sets) {
			for i, e := range ishigami().effects(1000, 1000+seed, hypercube) {
				off[i][0] += math.Pow((e.First.Value-first[i])/e.First.Error, 2) / sets
				off[i][1] += math.Pow((e.Total.Value-total[i])/e.Total.Error, 2) / sets
			}
		}
		for i := range off {
			for k, name := range []string{"first", "total"} {
				ratio := math.Sqrt(off[i][k])
				assert.Less(t, ratio, 1.15, "%s of x%d, hypercube %v", name, i+1, hypercube)
				if !hypercube {
					assert.Greater(t, ratio, 0.87, "%s of x%d", name, i+1)
				}
			}
		}
	}
}

func TestMeasureLeavesOutWhatIsNoNumber(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	a := []float64{1, nan, 3, 4, 5, 6}
	b := []float64{2, 2, inf, 1, 7, 3}
	s := []float64{1.5, 2, 3, nan, 6, 5}
	e := outcome.Measure(a, b, s)
	kept := outcome.Measure([]float64{1, 5, 6}, []float64{2, 7, 3}, []float64{1.5, 6, 5})
	assert.Equal(t, 3, e.N)
	assert.Equal(t, 3, e.Missing)
	assert.Equal(t, kept.Total.Value, e.Total.Value)
	// By hand: mean (a-s)² is 0.75, variance of 1 5 6 2 7 3 is 5.6.
	assert.InDelta(t, 0.75/2/5.6, e.Total.Value, 1e-12)
	// By hand: f(B) from the mean 4 is -2, 3 and -1; times 0.5, 1 and -1.
	assert.InDelta(t, 3.0/3/5.6, e.First.Value, 1e-12)
}

func TestMeasureOfNothing(t *testing.T) {
	for name, column := range map[string][]float64{
		"the same every season": {3, 3, 3, 3, 3, 3},
		"no season":             {},
		"no number":             {math.NaN(), math.NaN(), math.NaN(), math.NaN()},
	} {
		e := outcome.Measure(column, column, column)
		assert.True(t, math.IsNaN(e.First.Value), name)
		assert.True(t, math.IsNaN(e.Total.Value), name)
		assert.True(t, e.First.AboutZero() && e.Total.AboutZero(), name)
	}
	one := outcome.Measure([]float64{1}, []float64{2}, []float64{2})
	assert.True(t, math.IsNaN(one.Total.Error), "one season says nothing of the error")
}

// TestMeasureOfVeryLargeAndSmall: shares know no unit.
func TestMeasureOfVeryLargeAndSmall(t *testing.T) {
	m := model{2, func(u []float64) float64 { return u[0] + 2*u[1] }}
	want := m.effects(500, 3, true)
	for _, scale := range []float64{1e-200, 1e-9, 1e12, 1e200, 5e307} {
		scaled := model{2, func(u []float64) float64 { return scale * m.f(u) }}
		got := scaled.effects(500, 3, true)
		for i := range want {
			require.InEpsilon(t, want[i].First.Value, got[i].First.Value, 1e-9, "scale %g", scale)
			require.InEpsilon(t, want[i].Total.Value, got[i].Total.Value, 1e-9, "scale %g", scale)
			require.InEpsilon(t, want[i].Total.Error, got[i].Total.Error, 1e-6, "scale %g", scale)
		}
	}
}
