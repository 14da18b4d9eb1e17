package outcome

import (
	"math"
	"slices"
)

// Choosing is a choice between options, to be made once for all seasons, by
// what each leaves in the same seasons.
type Choosing struct {
	// Best is the option of the highest mean, the first of equal ones: the one to
	// choose knowing no more than the seasons as a whole.
	Best int
	// Means are the options' means and Ahead the shares of the seasons in which
	// each leaves at least as much as every other.
	Means, Ahead []float64
	// N counts the seasons used, Missing those left out because an option came
	// to NaN or an infinity.
	N, Missing int

	seasons []int       // those used
	gains   [][]float64 // by option: what it leaves more than the best one
}

// Knowing is what it is worth to know something before choosing.
type Knowing struct {
	// Worth is how much more a season leaves on average than if Best were chosen
	// in all: 0 or above, in the unit of what the options leave.
	Worth float64
	// Error is Worth's standard error from the seasons being a sample.
	Error float64
	// Changes is the share of the seasons in which another option than Best
	// would be chosen.
	Changes float64
	// Stretches say which option to choose for which values of what is known, in
	// rising order; nil when the choice never changes or all is known.
	Stretches []Stretch
}

// Stretch is a range of values for which one option is best. The first has no
// lower and the last no upper end: -Inf and +Inf.
type Stretch struct {
	From, To float64
	Option   int
}

// AboutNothing says that the worth cannot be told from nothing: it is no more
// than two errors.
func (k Knowing) AboutNothing() bool { return !(k.Worth > 2*k.Error) }

// Choose sets up a choice between options that leave payoffs, one column an
// option and all of one length, more being better. There must be one or more.
// The columns are only read.
func Choose(payoffs [][]float64) *Choosing {
	c := &Choosing{Means: make([]float64, len(payoffs)), Ahead: make([]float64, len(payoffs)), gains: make([][]float64, len(payoffs))}
	for k := range payoffs[0] {
		if slices.ContainsFunc(payoffs, func(p []float64) bool { return !finite(p[k]) }) {
			c.Missing++
			continue
		}
		c.seasons = append(c.seasons, k)
	}
	c.N = len(c.seasons)
	for j, p := range payoffs {
		c.gains[j] = make([]float64, c.N)
		for at, k := range c.seasons {
			c.gains[j][at] = p[k]
		}
		c.Means[j] = momentsOf(c.gains[j]).mean
		if c.Means[j] > c.Means[c.Best] {
			c.Best = j
		}
	}
	best := slices.Clone(c.gains[c.Best])
	for at := range c.seasons {
		most := math.Inf(-1)
		for j := range c.gains {
			most = max(most, c.gains[j][at])
		}
		for j := range c.gains {
			if c.gains[j][at] == most {
				c.Ahead[j]++
			}
			c.gains[j][at] -= best[at]
		}
	}
	for j := range c.Ahead {
		c.Ahead[j] /= float64(c.N)
	}
	return c
}

// variance of the gains, summed over the options.
func (c *Choosing) variance() float64 {
	sum := 0.0
	for _, gains := range c.gains {
		if sd := momentsOf(gains).sd(); finite(sd) {
			sum += sd * sd
		}
	}
	return sum
}

// KnowAll is the worth of knowing each season whole: the mean of the best option
// less the best of the means, known as the expected value of perfect information
// (H. Raiffa and R. Schlaifer, Applied Statistical Decision Theory, 1961). No
// knowledge is worth more.
func (c *Choosing) KnowAll() Knowing {
	return c.worth(func(at int) int {
		choice := c.Best
		for j := range c.gains {
			if c.gains[j][at] > c.gains[choice][at] {
				choice = j
			}
		}
		return choice
	})
}

// Know is the worth of knowing x alone, a column as long as the payoffs and
// finite wherever they are: the expected value of partial perfect information.
//
// The seasons are sorted by x into cells of equal count, and a cell's choice is
// the option whose mean is highest there. So that noise does not pass for worth,
// each season is judged by a choice made without it (means over nine tenths of
// its cell, ten folds), and the number of cells is the power of two up to 64 by
// which those means foretell the seasons left out best; where that is a single
// cell, x tells nothing of the options and is worth 0. What is left of noise
// makes the worth too small rather than too large. Seasons of one and the same x
// always share a cell.
//
// The Worth is never above that of KnowAll over the same seasons.
func (c *Choosing) Know(x []float64) Knowing {
	g := c.grid(x)
	level := g.level()
	if level == 0 {
		return Knowing{}
	}
	choices, size := g.choices(level), 1<<(g.levels-level)
	k := c.worth(func(at int) int { return choices[g.cell[at]/size][g.fold[at]] })
	if k.Worth > 0 {
		k.Stretches = g.stretches(level)
	}
	return k
}

// worth is that of choosing as choice says for each season used.
func (c *Choosing) worth(choice func(at int) int) Knowing {
	k := Knowing{}
	gained := make([]float64, c.N)
	changed := 0
	for at := range gained {
		j := choice(at)
		gained[at] = c.gains[j][at]
		if j != c.Best {
			changed++
		}
	}
	m := momentsOf(gained)
	if !(m.mean > 0) {
		return k
	}
	k.Worth, k.Changes = m.mean, float64(changed)/float64(c.N)
	k.Error = m.sd() / math.Sqrt(float64(c.N))
	return k
}
