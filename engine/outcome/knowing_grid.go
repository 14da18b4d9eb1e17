package outcome

import (
	"cmp"
	"math"
	"slices"
)

const (
	folds = 10
	// leastInCell keeps a cell's choice from resting on a handful of seasons.
	leastInCell = 20
	mostLevels  = 6 // 64 cells
)

// grid holds the sums of gains over the seasons that fall into each of the
// finest cells, fold by fold. Level l joins them into 2^l cells.
type grid struct {
	c      *Choosing
	levels int
	cell   []int // by season used: its finest cell
	fold   []int
	sums   [][folds]tally // by finest cell
	low    []float64      // by finest cell: the least and largest x in it
	high   []float64
}

// tally is how many seasons fell in, and each option's gains there.
type tally struct {
	n     float64
	gains []float64
}

func newTally(options int) tally { return tally{gains: make([]float64, options)} }

func (t *tally) add(o tally) {
	t.n += o.n
	for j, gain := range o.gains {
		t.gains[j] += gain
	}
}

// less is t without o.
func (t tally) less(o tally) tally {
	rest := newTally(len(t.gains))
	rest.n = t.n - o.n
	for j, gain := range t.gains {
		rest.gains[j] = gain - o.gains[j]
	}
	return rest
}

func (c *Choosing) grid(x []float64) *grid {
	g := &grid{c: c, cell: make([]int, c.N), fold: make([]int, c.N)}
	for g.levels < mostLevels && c.N>>(g.levels+1) >= leastInCell {
		g.levels++
	}
	cells := 1 << g.levels
	g.sums, g.low, g.high = make([][folds]tally, cells), make([]float64, cells), make([]float64, cells)
	for i := range cells {
		g.low[i], g.high[i] = math.Inf(1), math.Inf(-1)
		for f := range folds {
			g.sums[i][f] = newTally(len(c.gains))
		}
	}
	order := make([]placed, c.N)
	for at, k := range c.seasons {
		order[at] = placed{x[k], at}
	}
	slices.SortFunc(order, func(a, b placed) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.i, b.i)) })
	for from := 0; from < len(order); {
		to := from + 1
		for to < len(order) && order[to].x == order[from].x {
			to++
		}
		g.put(order[from:to], from, (from+to-1)/2*cells/c.N)
		from = to
	}
	return g
}

// put lets seasons of one x into a cell; their ranks begin at from.
func (g *grid) put(same []placed, from, cell int) {
	g.low[cell], g.high[cell] = min(g.low[cell], same[0].x), max(g.high[cell], same[0].x)
	for k, p := range same {
		fold := (from + k) % folds
		g.cell[p.i], g.fold[p.i] = cell, fold
		t := &g.sums[cell][fold]
		t.n++
		for j := range t.gains {
			t.gains[j] += g.c.gains[j][p.i]
		}
	}
}

// joined are the sums of the grid's cells at a level, the folds apart, and with
// all of them together.
func (g *grid) joined(level int) (byFold [][folds]tally, all []tally) {
	byFold, all = make([][folds]tally, 1<<level), make([]tally, 1<<level)
	for at := range all {
		all[at] = newTally(len(g.c.gains))
		for f := range folds {
			byFold[at][f] = newTally(len(g.c.gains))
		}
	}
	for i := range g.sums {
		at := i >> (g.levels - level)
		for f := range folds {
			byFold[at][f].add(g.sums[i][f])
			all[at].add(g.sums[i][f])
		}
	}
	return byFold, all
}

// level is the one whose means foretell the seasons left out best: that of the
// least sum of squares. A single cell gives way only to what chance would not
// do: squares smaller by ln N times the variance, the price of one more number
// in G. Schwarz, "Estimating the dimension of a model", Annals of Statistics
// 6:461-464, 1978.
func (g *grid) level() int {
	best, least := 0, math.Inf(1)
	for level := range g.levels + 1 {
		byFold, all := g.joined(level)
		missed := 0.0
		for i := range all {
			for f := range folds {
				missed += all[i].less(byFold[i][f]).foretell(byFold[i][f])
			}
		}
		if level == 0 {
			missed -= math.Log(float64(g.c.N)) * g.c.variance()
		}
		if missed < least {
			best, least = level, missed
		}
	}
	return best
}

// foretell is the sum of squares by which t's means miss out's seasons, less the
// squares of those seasons' own gains.
func (t tally) foretell(out tally) float64 {
	missed := 0.0
	for j := range t.gains {
		if t.n > 0 {
			mean := t.gains[j] / t.n
			missed += mean * (mean*out.n - 2*out.gains[j])
		}
	}
	return missed
}

// choices are the options to choose in each cell of a level, found without one
// fold each.
func (g *grid) choices(level int) [][folds]int {
	byFold, all := g.joined(level)
	out := make([][folds]int, len(all))
	for i := range all {
		for f := range folds {
			out[i][f] = g.c.highest(all[i].less(byFold[i][f]))
		}
	}
	return out
}

// highest is the option whose gains are highest; Best unless another is better.
func (c *Choosing) highest(t tally) int {
	choice := c.Best
	for j, gain := range t.gains {
		if gain > t.gains[choice] {
			choice = j
		}
	}
	return choice
}
