package draw

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// column is the whole of a stream.
func column(seed uint64, id string, n int) []float64 {
	out := make([]float64, n)
	NewStream(seed, id, n).Fill(out, 0)
	return out
}

// cells is the permutation under a stream's points, centred and scaled so that
// the dot product of two is their Spearman correlation.
func cells(seed uint64, id string, n int) []float64 {
	out := column(seed, id, n)
	size := math.Sqrt(float64(n) * (float64(n)*float64(n) - 1) / 12)
	for i, u := range out {
		out[i] = (math.Floor(u*float64(n)) - float64(n-1)/2) / size
	}
	return out
}

// McKay, Beckman and Conover 1979: a Latin hypercube has exactly one point in
// each n-th of every dimension.
func TestStreamHasOnePointInEachCell(t *testing.T) {
	for _, n := range []int{1, 2, 3, 4, 5, 7, 8, 9, 63, 64, 65, 100, 1000, 4095, 4097, 10000, 16384, 100003, 1 << 20} {
		for seed := range uint64(4) {
			taken := make([]bool, n)
			for _, u := range column(seed, "sap_per_tap", n) {
				require.True(t, u > 0 && u < 1, "n %d: %v", n, u)
				cell := int(u * float64(n))
				require.False(t, taken[cell], "n %d: two points in cell %d", n, cell)
				taken[cell] = true
			}
		}
	}
}

// At the largest n the cells and the places in them together use every bit of
// a float64; the points must still stay in their cells, apart from each other.
func TestStreamOfMostSeasons(t *testing.T) {
	s := NewStream(3, "taps", MostSeasons)
	seen := map[int]bool{}
	points := make([]float64, 10000)
	s.Fill(points, MostSeasons-len(points))
	for _, u := range points {
		require.True(t, u > 0 && u < 1)
		cell := int(u * MostSeasons)
		require.False(t, seen[cell])
		seen[cell] = true
	}
	assert.Equal(t, MostSeasons, NewStream(3, "taps", MostSeasons+5).Seasons())
}

func TestStreamIsTheSameFromAnyStart(t *testing.T) {
	const n = 1000
	s := NewStream(41, "sap_sugar", n)
	whole := column(41, "sap_sugar", n)
	for _, from := range []int{0, 1, 17, 512, 999} {
		part := make([]float64, min(100, n-from))
		s.Fill(part, from)
		assert.Equal(t, whole[from:from+len(part)], part)
	}
	for i := 0; i < n; i += 37 {
		assert.Equal(t, whole[i], s.At(i))
	}
	assert.Equal(t, whole[0], s.At(n), "beyond the end it goes round")
	assert.Equal(t, whole[n-1], s.At(-1))
}

func TestStreamOfNoSeasons(t *testing.T) {
	for _, s := range []Stream{{}, NewStream(1, "taps", 0), NewStream(1, "taps", -3)} {
		assert.Equal(t, 1, s.Seasons())
		assert.True(t, s.At(0) > 0 && s.At(0) < 1)
		assert.Equal(t, s.At(0), s.At(7))
	}
}

// A sheet keeps its seasons from one version and machine to the next. These
// bits were written down from the first version; they check that it is so, not
// that the points are good ones.
func TestStreamKeepsItsPoints(t *testing.T) {
	pinned := map[string][3]uint64{
		"sap_per_tap": {0x3fe5082434bd5fd9, 0x3fe733de2ac21c43, 0x3fd90c2f68331340},
		"sap_sugar":   {0x3fc2b249e8f7404f, 0x3febf4d01485bb99, 0x3fdad229646359b4},
	}
	for id, want := range pinned {
		s := NewStream(41, id, 10000)
		for i := range want {
			assert.Equal(t, fmt.Sprintf("%#x", want[i]), fmt.Sprintf("%#x", math.Float64bits(s.At(i))), "%s season %d", id, i)
		}
	}
}

func TestStreamChangesWithSeedAndID(t *testing.T) {
	const n = 10000
	base := column(41, "taps", n)
	for _, other := range []struct {
		seed uint64
		id   string
	}{{42, "taps"}, {0, "taps"}, {41 | 1<<63, "taps"}, {41, "taps2"}, {41, "Taps"}, {41, "tapt"}, {41, ""}} {
		changed := column(other.seed, other.id, n)
		samePoint, sameCell := 0, 0
		for i := range base {
			if base[i] == changed[i] {
				samePoint++
			}
			if int(base[i]*n) == int(changed[i]*n) {
				sameCell++
			}
		}
		assert.Zero(t, samePoint, "%+v", other)
		// The matches of two independent permutations are Poisson with mean 1:
		// more than 8 come once in a million times.
		assert.LessOrEqual(t, sameCell, 8, "%+v", other)
	}
}

// Over many pairs the Spearman correlation of independent permutations has
// mean 0 and standard deviation 1/sqrt(n-1), and is close to normal.
func TestStreamsOfDifferentIDsDoNotCorrelate(t *testing.T) {
	const n, ids = 10000, 200
	columns := make([][]float64, ids)
	for i := range columns {
		columns[i] = cells(41, fmt.Sprintf("line_%d", i), n)
	}
	var all []float64
	for i := range columns {
		for j := range i {
			all = append(all, dot(columns[i], columns[j])*math.Sqrt(n-1))
		}
	}
	requireStandardNormal(t, all)
}

func TestStreamsOfDifferentSeedsDoNotCorrelate(t *testing.T) {
	const n, seeds = 1000, 300
	columns := make([][]float64, seeds)
	for i := range columns {
		columns[i] = cells(uint64(i), "taps", n)
	}
	var all []float64
	for i := range columns {
		for j := range i {
			all = append(all, dot(columns[i], columns[j])*math.Sqrt(n-1))
		}
	}
	requireStandardNormal(t, all)
}

func TestStreamsOfFewSeasonsDoNotCorrelate(t *testing.T) {
	const n, ids = 50, 400
	columns := make([][]float64, ids)
	for i := range columns {
		columns[i] = cells(7, fmt.Sprint("g", i), n)
	}
	var all []float64
	for i := range columns {
		for j := range i {
			all = append(all, dot(columns[i], columns[j])*math.Sqrt(n-1))
		}
	}
	requireStandardNormal(t, all)
}

func TestStreamSeasonsFollowEachOtherWithoutPattern(t *testing.T) {
	for _, try := range []struct{ n, streams int }{{100, 1000}, {1000, 1000}, {10000, 200}} {
		var all []float64
		for id := range try.streams {
			c := cells(41, fmt.Sprintf("line_%d", id), try.n)
			for _, lag := range []int{1, 2, 3, 4, 5, 8, 16, 32} {
				pairs := float64(try.n - lag)
				// No number follows itself, which draws pairs of a permutation apart by
				// 1/n(n-1) each.
				apart := pairs / float64(try.n) / float64(try.n-1)
				all = append(all, (dot(c[:try.n-lag], c[lag:])+apart)*float64(try.n)/math.Sqrt(pairs))
			}
		}
		requireStandardNormal(t, all)
	}
}

// requireStandardNormal wants mean, spread and the farthest of many scores to
// be those of a standard normal sample, each within 5 of its standard errors.
func requireStandardNormal(t *testing.T, z []float64) {
	t.Helper()
	n := float64(len(z))
	mean, sd := stat.MeanStdDev(z, nil)
	far := 0.0
	for _, x := range z {
		far = max(far, math.Abs(x))
	}
	require.InDelta(t, 0, mean, 5/math.Sqrt(n))
	require.InDelta(t, 1, sd, 5/math.Sqrt(2*n))
	require.Less(t, far, distuv.UnitNormal.Quantile(1-1e-5/n))
}

// Two streams side by side fill the square evenly: counts over 16 by 16 boxes
// against what independent permutations give.
func TestStreamPairsFillTheSquare(t *testing.T) {
	const n, side, pairs = 10000, 16, 100
	total := 0.0
	for p := range pairs {
		a, b := column(41, fmt.Sprint("a", p), n), column(41, fmt.Sprint("b", p), n)
		total += squareChi(a, b, side)
	}
	// Both margins are fixed by the Latin hypercube: (side-1)² degrees of freedom.
	freedom := float64(pairs * (side - 1) * (side - 1))
	assert.InDelta(t, freedom, total, 5*math.Sqrt(2*freedom))
}

func TestStreamNeighboursFillTheSquare(t *testing.T) {
	const n, side, streams = 10000, 16, 100
	total := 0.0
	for p := range streams {
		a := column(41, fmt.Sprint("a", p), n)
		total += squareChi(a[:n-1], a[1:], side)
	}
	freedom := float64(streams * (side - 1) * (side - 1))
	assert.InDelta(t, freedom, total, 5*math.Sqrt(2*freedom))
}

func squareChi(a, b []float64, side int) float64 {
	counts := make([]float64, side*side)
	for i := range a {
		counts[int(a[i]*float64(side))*side+int(b[i]*float64(side))]++
	}
	want, chi := float64(len(a))/float64(side*side), 0.0
	for _, c := range counts {
		chi += (c - want) * (c - want) / want
	}
	return chi
}

// With few seasons every order of them must come up as often as the others.
func TestStreamOrdersAreAllAlike(t *testing.T) {
	for n, orders := range map[int]int{3: 6, 4: 24, 5: 120, 6: 720} {
		counts := map[string]int{}
		trials := orders * 100
		for i := range trials {
			order := ""
			for _, u := range column(uint64(i), "taps", n) {
				order += fmt.Sprint(int(u * float64(n)))
			}
			counts[order]++
		}
		chi := 0.0
		for _, c := range counts {
			chi += float64((c-100)*(c-100)) / 100
		}
		freedom := float64(orders - 1)
		assert.Len(t, counts, orders, "n %d", n)
		assert.InDelta(t, freedom, chi, 5*math.Sqrt(2*freedom), "n %d", n)
	}
}

// The place inside the cell is uniform and has nothing to do with the cell.
func TestStreamPlacesInsideCells(t *testing.T) {
	const n, streams = 10000, 50
	counts := make([]float64, 20)
	var along []float64
	for s := range streams {
		u := column(41, fmt.Sprint("line", s), n)
		cell, inside := make([]float64, n), make([]float64, n)
		for i := range u {
			cell[i], inside[i] = math.Modf(u[i] * n)
			counts[int(inside[i]*20)]++
		}
		along = append(along, stat.Correlation(cell, inside, nil)*math.Sqrt(n))
	}
	chi := 0.0
	for _, c := range counts {
		chi += (c - n*streams/20) * (c - n*streams/20) / (n * streams / 20)
	}
	assert.Less(t, chi, distuv.ChiSquared{K: 19}.Quantile(1-1e-5))
	requireStandardNormal(t, along)
}
