package outcome

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Wallis's cubic, with which root finders have been shown since Newton. Its root
// and that of cos x = x are computed to the last digit by two routes.
func wallis(x float64) float64 { return x*x*x - 2*x - 5 }

const (
	wallisRoot = 2.0945514815423265
	cosineRoot = 0.7390851332151607
)

func cosine(x float64) float64 { return math.Cos(x) - x }

func TestBrentFindsPublishedRoots(t *testing.T) {
	for name, c := range map[string]struct {
		f          func(float64) float64
		a, b, root float64
	}{
		"Wallis":           {wallis, 2, 3, wallisRoot},
		"Wallis backwards": {wallis, 3, 2, wallisRoot},
		"cosine":           {cosine, 0, 1, cosineRoot},
		"root at the end":  {func(x float64) float64 { return x * (x - 4) }, 4, 6, 4},
		"root at the start": {
			func(x float64) float64 { return x * (x - 4) }, -3, 0, 0},
		"a flat cubic":  {func(x float64) float64 { return math.Pow(x-1, 3) }, 0, 3.7, 1},
		"no end below":  {math.Log, 0, 3, 1},
		"a steep curve": {func(x float64) float64 { return math.Exp(40*x) - math.Exp(20) }, 0, 1, 0.5},
	} {
		t.Run(name, func(t *testing.T) {
			x, found := Brent(c.f, c.a, c.b, 1e-12)
			require.True(t, found)
			assert.InDelta(t, c.root, x, 1e-10)
		})
	}
}

// Brent promises never to be much slower than halving, and to be far faster on
// smooth functions; halving this bracket to 1e-12 takes 40 values.
func TestBrentNeedsFewValues(t *testing.T) {
	tried := 0
	_, found := Brent(func(x float64) float64 { tried++; return wallis(x) }, 2, 3, 1e-12)
	require.True(t, found)
	assert.LessOrEqual(t, tried, 12)

	tried = 0
	x, found := Brent(func(x float64) float64 { tried++; return math.Copysign(1, x-math.Sqrt2) }, 0, 3, 1e-12)
	require.True(t, found)
	assert.InDelta(t, math.Sqrt2, x, 1e-12)
	assert.LessOrEqual(t, tried, 100)
}

func TestBrentSaysWhenThereIsNone(t *testing.T) {
	never := func(float64) float64 { return math.NaN() }
	for name, f := range map[string]func(float64) float64{
		"no change of sign": func(x float64) float64 { return x*x + 1 },
		"flat":              func(float64) float64 { return 3 },
		"no number":         never,
		"no number inside": func(x float64) float64 {
			if x > 0.2 && x < 0.8 {
				return math.NaN()
			}
			return x - 0.5
		},
		"no number at one end": func(x float64) float64 { return math.Sqrt(x - 0.5) },
	} {
		t.Run(name, func(t *testing.T) {
			_, found := Brent(f, 0, 1, 1e-12)
			assert.False(t, found)
		})
	}
}

// find looks to within a ten-millionth of the limits, so that a root between 0
// and 32 is known to 1e-5.
func find(f func(float64) float64, low, high float64) []Root {
	roots, _ := FindRoots(f, RootSearch{Low: low, High: high, Cells: 32, Tol: 1e-7 * (high - low)})
	return roots
}

func TestFindRootsFindsAll(t *testing.T) {
	// cos x + cos 2x is 0 at π/3, π and 5π/3 within one turn, and touches it at π.
	roots := find(func(x float64) float64 { return math.Cos(x) + math.Cos(2*x) }, 0.1, 2*math.Pi-0.05)
	require.Len(t, roots, 3)
	for i, want := range []float64{math.Pi / 3, math.Pi, 5 * math.Pi / 3} {
		assert.InDelta(t, want, roots[i].From.X, 1e-5)
		assert.Equal(t, roots[i].From.X, roots[i].To.X)
		assert.False(t, roots[i].Steps() || roots[i].Stays())
	}
}

func TestFindRootsLooksCloserAtABend(t *testing.T) {
	// Two roots inside one cell of [0, 32]: 10.4 and 10.6. And a bend near 0
	// that does not reach it.
	roots := find(func(x float64) float64 { return (x - 10.4) * (x - 10.6) }, 0, 32)
	require.Len(t, roots, 2)
	assert.InDelta(t, 10.4, roots[0].From.X, 1e-5)
	assert.InDelta(t, 10.6, roots[1].From.X, 1e-5)

	assert.Empty(t, find(func(x float64) float64 { return (x-10.5)*(x-10.5) + 0.01 }, 0, 32))
	assert.Empty(t, find(func(x float64) float64 { return -math.Abs(x-10.5) - 0.01 }, 0, 32))

	touch := find(func(x float64) float64 { return -math.Abs(x - 10.5) }, 0, 32)
	require.Len(t, touch, 1)
	assert.InDelta(t, 10.5, touch[0].From.X, 1e-5)
}

func TestFindRootsAtTheEnds(t *testing.T) {
	roots := find(func(x float64) float64 { return x * (x - 4) }, 0, 4)
	require.Len(t, roots, 2)
	assert.Equal(t, Root{Trial{0, 0}, Trial{0, 0}}, roots[0])
	assert.Equal(t, Root{Trial{4, 0}, Trial{4, 0}}, roots[1])
}

func TestFindRootsTellsAStepFromARoot(t *testing.T) {
	roots := find(func(x float64) float64 { return math.Ceil(x) - 7.5 }, 0, 20)
	require.Len(t, roots, 1)
	assert.True(t, roots[0].Steps())
	assert.InDelta(t, 7, roots[0].From.X, 1e-5)
	assert.InDelta(t, 7, roots[0].To.X, 1e-5)
	assert.Less(t, roots[0].From.X, roots[0].To.X)
	assert.Equal(t, -0.5, roots[0].From.F)
	assert.Equal(t, 0.5, roots[0].To.F)

	// Many small steps to a cell, as of jars filled, are steps all the same.
	roots = find(func(x float64) float64 { return math.Floor(50*x) - 333.5 }, 0, 20)
	require.Len(t, roots, 1)
	assert.True(t, roots[0].Steps())
	assert.InDelta(t, 6.68, roots[0].From.X, 1e-5)
}

func TestFindRootsTellsHowLongAFunctionStays(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"rising":  func(x float64) float64 { return math.Ceil(x) - 8 },
		"falling": func(x float64) float64 { return 8 - math.Ceil(x) },
	} {
		t.Run(name, func(t *testing.T) {
			for _, high := range []float64{20, 400} { // across cells, and inside one
				roots := find(f, 0, high)
				require.Len(t, roots, 1)
				assert.True(t, roots[0].Stays())
				assert.InDelta(t, 7, roots[0].From.X, 1e-4)
				assert.InDelta(t, 8, roots[0].To.X, 1e-4)
			}
		})
	}
	roots, _ := FindRoots(func(float64) float64 { return 0 }, RootSearch{Low: 1, High: 2, Cells: 8, Tol: 1e-9})
	assert.Equal(t, []Root{{Trial{1, 0}, Trial{2, 0}}}, roots)
}

func TestFindRootsAmongWholeNumbers(t *testing.T) {
	whole := func(f func(float64) float64, low, high float64) []Root {
		roots, trials := FindRoots(func(x float64) float64 {
			require.Equal(t, math.Trunc(x), x)
			return f(x)
		}, RootSearch{Low: low, High: high, Cells: 8, Whole: true, Tol: 1})
		for i := 1; i < len(trials); i++ {
			require.Less(t, trials[i-1].X, trials[i].X)
		}
		return roots
	}
	assert.Equal(t, []Root{{Trial{31, -0.5}, Trial{32, 0.5}}}, whole(func(x float64) float64 { return x - 31.5 }, 0.5, 1000.5))
	assert.Equal(t, []Root{{Trial{31, 0}, Trial{31, 0}}}, whole(func(x float64) float64 { return 31 - x }, 1, 1000))
	assert.Equal(t, []Root{{Trial{30, 0}, Trial{44, 0}}}, whole(func(x float64) float64 { return math.Floor(x/15) - 2 }, 1, 1000))
	assert.Equal(t, []Root{{Trial{3, 0}, Trial{3, 0}}}, whole(func(x float64) float64 { return x - 3 }, 2.5, 4.5))
	// Two roots in one cell: 500 is the end of a cell, 452 and 460 are inside one.
	assert.Len(t, whole(func(x float64) float64 { return (x - 452.5) * (x - 460.5) }, 0, 1000), 2)
}

func TestFindRootsClaimsNothingBesideNoNumber(t *testing.T) {
	half := func(x float64) float64 { return math.Sqrt(x-1) - 2 } // no number below 1
	roots := find(half, -10, 10)
	require.Len(t, roots, 1)
	assert.InDelta(t, 5, roots[0].From.X, 1e-5)

	// 1/(x-3) changes sign without ever being 0: a step, not a root.
	roots = find(func(x float64) float64 { return 1 / (x - 3.1) }, 0, 10)
	require.Len(t, roots, 1)
	assert.True(t, roots[0].Steps())

	hole := func(x float64) float64 {
		if x > 4.9 && x < 5.1 {
			return math.NaN()
		}
		return x - 5
	}
	for _, r := range find(hole, 0.01, 10) {
		assert.True(t, r.Steps(), "it is not known to be 0 anywhere")
	}
	assert.Empty(t, find(func(float64) float64 { return math.NaN() }, 0, 1))
	assert.Empty(t, find(func(float64) float64 { return 3 }, 0, 1))
}
