package outcome

import (
	"math"
	"slices"
)

const (
	// pilot is how many seasons a Sketch keeps whole before it chooses edges.
	pilot = 16384
	// mostEdges is one less than a power of two, so that every search takes the
	// same number of halvings.
	mostEdges = 4095
)

// Sketch sums up more seasons than are kept. The first 16,384 that come to a
// number are kept and give up to 4,095 edges, evenly spread over their ranks;
// from then on a season is only counted, at an edge or between two.
//
// N, Missing, Mean, SD, Min and Max of its Summary are those of all seasons,
// to rounding. Percentiles are exact while no more than the pilot's seasons have
// come, and after that wherever all values are among no more than 4,095
// different ones. Else a percentile lies between the same two edges as the exact
// one. About 1 season in 4,096 falls between two edges, so that the share of
// seasons below it is off by some 0.0002, hardly ever by 0.001.
//
// That holds for seasons in random order, as a draw.Stream has them: of numbers
// that rise or fall with the season, all that lie beyond the pilot's would share
// one gap. A Sketch must not be used from several goroutines at once.
type Sketch struct {
	moments moments
	missing int
	scratch []float64
	kept    []float64
	edges   []float64 // rising, filled up with +Inf to mostEdges; nil in the pilot
	real    int       // edges that are not filling
	at      []int     // seasons equal to an edge
	before  []int     // seasons below an edge and above the one before; one more for those above all
}

// NewSketch makes an empty Sketch for about n seasons; more may come.
func NewSketch(n int) *Sketch {
	return &Sketch{moments: momentsOf(nil), kept: make([]float64, 0, min(max(n, 0), pilot))}
}

// Add counts the next seasons of the number. It does not keep chunk.
func (s *Sketch) Add(chunk []float64) {
	if len(s.scratch) < len(chunk) {
		s.scratch = make([]float64, len(chunk))
	}
	finiteOnes := keepFinite(chunk, s.scratch)
	s.missing += len(chunk) - len(finiteOnes)
	s.moments = s.moments.join(momentsOf(finiteOnes))
	if s.edges == nil {
		room := min(pilot-len(s.kept), len(finiteOnes))
		s.kept = append(s.kept, finiteOnes[:room]...)
		finiteOnes = finiteOnes[room:]
		if len(finiteOnes) == 0 {
			return
		}
		s.choose()
	}
	s.count(finiteOnes)
}

// choose takes the edges from the pilot and counts it.
func (s *Sketch) choose() {
	slices.Sort(s.kept)
	s.edges = slices.Compact(slices.Clone(s.kept))
	if len(s.edges) > mostEdges {
		s.edges = s.edges[:0]
		for i := range mostEdges {
			s.edges = append(s.edges, s.kept[i*(len(s.kept)-1)/(mostEdges-1)])
		}
		s.edges = slices.Compact(s.edges)
	}
	s.real = len(s.edges)
	s.at, s.before = make([]int, s.real), make([]int, s.real+1)
	for len(s.edges) < mostEdges {
		s.edges = append(s.edges, math.Inf(1))
	}
	s.count(s.kept)
	s.kept = nil
}

func (s *Sketch) count(values []float64) {
	edges := s.edges
	for _, x := range values {
		k := 0
		for step := (mostEdges + 1) / 2; step > 0; step /= 2 {
			next := k + step
			if edges[next-1] < x {
				k = next
			}
		}
		if k < s.real && edges[k] == x {
			s.at[k]++
		} else {
			s.before[k]++
		}
	}
}

// Summary sums up the seasons that have come so far.
func (s *Sketch) Summary() Summary {
	if s.edges == nil {
		out := Summarise(s.kept, nil)
		out.Missing = s.missing
		return out
	}
	m := s.moments
	out := Summary{N: m.n, Missing: s.missing, Mean: m.mean, SD: m.sd(), Min: m.min, Max: m.max}
	var q [len(shares)]float64
	for i, p := range shares {
		rank, part := position(m.n, p)
		q[i] = blend(s.ranked(rank), s.ranked(min(rank+1, m.n-1)), part)
	}
	out.setQuantiles(q)
	return out
}

// ranked is the season of that rank. Those between two edges are taken to lie
// evenly between them.
func (s *Sketch) ranked(rank int) float64 {
	low := s.moments.min
	for k := range s.real {
		if rank < s.before[k] {
			return blend(low, s.edges[k], evenly(rank, s.before[k]))
		}
		if rank -= s.before[k]; rank < s.at[k] {
			return s.edges[k]
		}
		rank -= s.at[k]
		low = s.edges[k]
	}
	return blend(low, s.moments.max, evenly(rank, s.before[s.real]))
}

// evenly is how far up the season of that rank stands among n in one gap.
func evenly(rank, n int) float64 { return float64(rank+1) / float64(n+1) }
