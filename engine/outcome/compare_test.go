package outcome_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"thawbook/engine/draw"
	"thawbook/engine/outcome"
)

func seasonsOf(id string, n int) []float64 {
	u := make([]float64, n)
	draw.NewStream(41, id, n).Fill(u, 0)
	return u
}

func squared(x []float64) []float64 {
	y := make([]float64, len(x))
	for i, v := range x {
		y[i] = v * v
	}
	return y
}

// Var(U - U²) = 1/180 over common seasons and 1/12 + 4/45 = 0.1722 over separate
// ones (worked out by hand from the moments of a uniform number).
func TestCommonSeasonsCancelWhatIsShared(t *testing.T) {
	const n = 10_000
	u := seasonsOf("u", n)
	same := outcome.Differ(u, squared(u), nil)
	assert.InEpsilon(t, 1.0/180, same.SD*same.SD, 1e-3)
	assert.InEpsilon(t, 1.0/3-1.0/2, same.Mean, 1e-6)
	assert.InDelta(t, 0, same.More, 0, "U² is never above U")
	assert.InDelta(t, 1, same.Less, 0)

	apart := outcome.Differ(u, squared(seasonsOf("other", n)), nil)
	assert.InEpsilon(t, 1.0/12+4.0/45, apart.SD*apart.SD, 0.03)
	assert.InEpsilon(t, same.Mean, apart.Mean, 1e-4, "the mean does not mind")
}

func TestDifferCountsPairs(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	x := []float64{1, 2, 3, nan, 5, inf, inf, 8}
	y := []float64{2, 2, 1, 4, nan, 6, inf, -inf}
	keptX, keptY := slices.Clone(x), slices.Clone(y)
	d := outcome.Differ(x, y, nil)
	assert.Equal(t, 3, d.N)
	assert.Equal(t, 5, d.Missing)
	assert.InDelta(t, (1+0-2)/3.0, d.Mean, 1e-15)
	assert.InDelta(t, 1.0/3, d.More, 1e-15)
	assert.InDelta(t, 1.0/3, d.Less, 1e-15)
	assert.InDelta(t, 0, d.P50, 0)
	for i := range x { // NaN is not equal to itself
		assert.Equal(t, math.Float64bits(keptX[i]), math.Float64bits(x[i]))
		assert.Equal(t, math.Float64bits(keptY[i]), math.Float64bits(y[i]))
	}

	none := outcome.Differ([]float64{nan}, []float64{1}, nil)
	assert.Equal(t, 0, none.N)
	assert.True(t, math.IsNaN(none.P50) && math.IsNaN(none.More) && math.IsNaN(none.Less))
	assert.Equal(t, 0, outcome.Differ(nil, nil, nil).N)
}

func TestDifferAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	x, y, apart := make([]float64, 777), make([]float64, 777), make([]float64, 777)
	for i := range x {
		x[i], y[i] = r.NormFloat64(), 0.3+2*r.NormFloat64()
		apart[i] = y[i] - x[i]
	}
	room := make([]float64, 2*len(x))
	d := outcome.Differ(x, y, room)
	mean, sd := stat.MeanStdDev(apart, nil)
	assert.InEpsilon(t, mean, d.Mean, 1e-12)
	assert.InEpsilon(t, sd, d.SD, 1e-12)
	assert.Equal(t, d, outcome.Differ(x, y, room), "room may be in any disorder")
	back := outcome.Differ(y, x, nil)
	assert.InDelta(t, -d.P10, back.P90, 1e-12)
	assert.InDelta(t, d.More, back.Less, 0)
}

func TestDominance(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		first, second []float64
		want          int
	}{
		"better in every season":          {[]float64{1, 2, 3}, []float64{2, 3, 4}, 1},
		"better by rank though not in 2":  {[]float64{3, 1, 2}, []float64{2, 4, 3}, 1},
		"worse once and never better":     {[]float64{1, 2, 3}, []float64{1, 2, 2}, -1},
		"the same in another order":       {[]float64{1, 2, 3}, []float64{3, 1, 2}, 0},
		"wider to both sides":             {[]float64{1, 2, 3}, []float64{0, 2, 4}, 0},
		"ends agree and the middle not":   {[]float64{1, 2, 3, 9}, []float64{1, 4, 2.5, 9}, 1},
		"crossing between equal ends":     {[]float64{0, 2, 5, 9}, []float64{0, 3, 4, 9}, 0},
		"one season without a number":     {[]float64{1, nan, 3}, []float64{2, 0, 4}, 1},
		"a season that only one counts":   {[]float64{1, 9, 3}, []float64{2, nan, 4}, 1},
		"nothing to go by":                {[]float64{nan}, []float64{1}, 0},
		"better mean and a worse low end": {[]float64{1, 2, 3}, []float64{0.9, 20, 30}, 0},
	} {
		assert.Equal(t, c.want, outcome.Dominates(c.first, c.second), name)
		assert.Equal(t, -c.want, outcome.Dominates(c.second, c.first), name)
	}
}

// TestDominanceByCounting holds the sorted test to the definition: at no value
// are there more seasons of the second at or below it than of the first.
func TestDominanceByCounting(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	seen := map[int]int{}
	for range 400 {
		x, y := make([]float64, 6), make([]float64, 6)
		for i := range x {
			x[i], y[i] = float64(r.IntN(7)), float64(r.IntN(7)+r.IntN(3))
		}
		above, below := false, false
		for v := -1.0; v < 12; v++ {
			atX, atY := 0, 0
			for i := range x {
				if x[i] <= v {
					atX++
				}
				if y[i] <= v {
					atY++
				}
			}
			above, below = above || atY < atX, below || atY > atX
		}
		want := 0
		if above != below {
			want = map[bool]int{true: 1, false: -1}[above]
		}
		require.Equal(t, want, outcome.Dominates(x, y), "%v %v", x, y)
		seen[want]++
	}
	assert.Len(t, seen, 3, "all three answers came up")
}

func TestEffectsAndTheRestSumToTheMean(t *testing.T) {
	nan := math.NaN()
	// y = (x1+1)·(x2+2) from x = x1·x2: alone +x2 and +2x1, together +2.
	x1, x2 := []float64{1, 2, 4, nan}, []float64{3, 5, 7, 9}
	var x, y, one, two []float64
	for i := range x1 {
		x = append(x, x1[i]*x2[i])
		y = append(y, (x1[i]+1)*(x2[i]+2))
		one = append(one, (x1[i]+1)*x2[i])
		two = append(two, x1[i]*(x2[i]+2))
	}
	a, b := outcome.Effect(x, y, one), outcome.Effect(x, y, two)
	assert.InDelta(t, 5, a, 1e-12)
	assert.InDelta(t, 14.0/3, b, 1e-12)
	assert.InDelta(t, 2, outcome.Differ(x, y, nil).Mean-a-b, 1e-12)

	one[0] = math.Inf(1)
	assert.InDelta(t, 4, outcome.Effect(x, y, one), 1e-12, "a season it breaks counts as none")
	assert.True(t, math.IsNaN(outcome.Effect([]float64{nan}, []float64{1}, []float64{1})))
}
