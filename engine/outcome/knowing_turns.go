package outcome

import (
	"math"
	"slices"
)

// stretches join cells of one choice, found from all folds. What a stretch gains
// over the choice beside it must be more than noise, or it joins that one. A
// stretch ends half way to the next cell's values.
func (g *grid) stretches(level int) []Stretch {
	var parts []part
	_, all := g.joined(level)
	size := 1 << (g.levels - level)
	for i, t := range all {
		if t.n > 0 {
			parts = append(parts, part{t, g.c.highest(t),
				slices.Min(g.low[i*size : (i+1)*size]), slices.Max(g.high[i*size : (i+1)*size])})
		}
	}
	parts, apart := joinAlike(parts), g.c.apart()
	for len(parts) > 1 {
		at, into, least := weakest(parts, apart)
		if least > 2 {
			break
		}
		parts[at].option = into
		parts = joinAlike(parts)
	}
	var out []Stretch
	from := math.Inf(-1)
	for i, p := range parts {
		to := math.Inf(1)
		if i+1 < len(parts) {
			to = p.high + (parts[i+1].low-p.high)/2
		}
		out = append(out, Stretch{from, to, p.option})
		from = to
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// part is a run of cells with one choice, from the least x in it to the largest.
type part struct {
	tally
	option    int
	low, high float64
}

// joinAlike joins neighbours of one choice.
func joinAlike(parts []part) []part {
	out := parts[:0:0]
	for _, p := range parts {
		if n := len(out); n > 0 && out[n-1].option == p.option {
			joined := newTally(len(p.gains))
			joined.add(out[n-1].tally)
			joined.add(p.tally)
			out[n-1].tally, out[n-1].high = joined, p.high
			continue
		}
		out = append(out, p)
	}
	return out
}

// weakest is the part that gains least over a neighbour's choice, that choice,
// and the gain in standard errors.
func weakest(parts []part, apart [][]float64) (at, into int, least float64) {
	least = math.Inf(1)
	for i, p := range parts {
		for _, k := range []int{i - 1, i + 1} {
			if k < 0 || k == len(parts) {
				continue
			}
			other := parts[k].option
			spread := math.Sqrt(p.n) * apart[p.option][other]
			if gain := (p.gains[p.option] - p.gains[other]) / spread; gain < least {
				at, into, least = i, other, gain
			}
		}
	}
	return at, into, least
}

// apart are the standard deviations between any two options' gains.
func (c *Choosing) apart() [][]float64 {
	out := make([][]float64, len(c.gains))
	difference := make([]float64, c.N)
	for a := range c.gains {
		out[a] = make([]float64, len(c.gains))
		for b := range c.gains {
			for at := range difference {
				difference[at] = c.gains[a][at] - c.gains[b][at]
			}
			out[a][b] = momentsOf(difference).sd()
		}
	}
	return out
}
