package outcome

import (
	"cmp"
	"math"
	"slices"
)

// RootSearch says where and how finely to look for roots.
type RootSearch struct {
	// Low and High are the limits, finite, Low below High.
	Low, High float64
	// Cells is into how many equal parts the limits are cut before looking
	// closer; 2 or more. Two roots closer together than one part can be missed.
	Cells int
	// Tol is how near to come to a root, in the unit of x, above 0.
	Tol float64
	// Whole says that only whole numbers may be tried.
	Whole bool
}

// FindRoots looks for every place between the limits where f is 0. It tries the
// ends of equal cells, closes in on each change of sign by [Brent]'s method, and
// looks closer where f bends back short of 0 between two cells. trials are the
// values at the ends of the cells and where f bends back, rising; roots rise too.
// A stretch at which f comes to no number has no roots, and none are claimed
// between a number and such a stretch.
func FindRoots(f func(x float64) float64, s RootSearch) (roots []Root, trials []Trial) {
	l := looking{f: f, RootSearch: s}
	trials = l.bends(l.cells())
	for i := 0; i < len(trials); i++ {
		if trials[i].F == 0 {
			last := i
			for last+1 < len(trials) && trials[last+1].F == 0 {
				last++
			}
			roots = append(roots, l.zero(trials, i, last))
			i = last
		}
		if i+1 < len(trials) && opposite(trials[i].F, trials[i+1].F) {
			roots = append(roots, l.close(trials[i], trials[i+1]))
		}
	}
	return roots, trials
}

type looking struct {
	f func(x float64) float64
	RootSearch
}

func (l looking) try(x float64) Trial { return Trial{x, l.f(x)} }

// cells tries the ends of the cells.
func (l looking) cells() []Trial {
	low, high := l.Low, l.High
	if l.Whole {
		low, high = math.Ceil(low), math.Floor(high)
	}
	var out []Trial
	for i := range l.Cells + 1 {
		x := low + (high-low)*float64(i)/float64(l.Cells)
		if i == l.Cells {
			x = high
		}
		if l.Whole {
			x = math.Round(x)
		}
		if n := len(out); n == 0 || x > out[n-1].X {
			out = append(out, l.try(x))
		}
	}
	return out
}

// bends adds a trial wherever f bends back before it has reached 0 but might
// have reached it within the two cells around.
func (l looking) bends(trials []Trial) []Trial {
	out := trials
	for i := 1; i+1 < len(trials); i++ {
		if a, b, c := trials[i-1], trials[i], trials[i+1]; mightReach(a, b, c) {
			out = append(out, l.lowest(a, b, c))
		}
	}
	slices.SortFunc(out, func(a, b Trial) int { return cmp.Compare(a.X, b.X) })
	return slices.CompactFunc(out, func(a, b Trial) bool { return a.X == b.X })
}

// mightReach says that f, of one sign at all three and nearest 0 at b, came so far
// on its way to b that as much again would reach 0.
func mightReach(a, b, c Trial) bool {
	size := math.Abs(b.F)
	nearer, farther := math.Min(math.Abs(a.F), math.Abs(c.F)), math.Max(math.Abs(a.F), math.Abs(c.F))
	return a.F*b.F > 0 && b.F*c.F > 0 && nearer >= size && farther-size >= size
}

// golden is the smaller part of a golden section, (3 − √5)/2.
const golden = 0.3819660112501051

// lowest closes in on the value between a and c where f comes nearest 0, by
// golden sections, until its sign changes or it is clear that it will not. b is
// nearer 0 than a and c. A hundred-thousandth of where it started counts as 0,
// for a curve that only touches.
func (l looking) lowest(a, b, c Trial) Trial {
	start := math.Abs(b.F)
	for mightReach(a, b, c) && c.X-a.X > l.Tol {
		x := b.X + golden*(c.X-b.X)
		if b.X-a.X > c.X-b.X {
			x = b.X - golden*(b.X-a.X)
		}
		if l.Whole {
			x = math.Round(x)
		}
		if x == b.X {
			break
		}
		t := l.try(x)
		switch {
		case opposite(t.F, b.F) || t.F == 0:
			return t
		case math.Abs(t.F) < math.Abs(b.F) && t.X < b.X:
			b, c = t, b
		case math.Abs(t.F) < math.Abs(b.F):
			a, b = b, t
		case t.X < b.X:
			a = t
		default:
			c = t
		}
	}
	if math.Abs(b.F) <= 1e-5*start {
		b.F = 0
	}
	return b
}

// close finds the root between two trials of opposite signs.
func (l looking) close(a, b Trial) Root {
	if l.Whole {
		return l.halve(a, b)
	}
	near, far := brent(l.f, a, b, l.Tol)
	switch {
	case math.IsNaN(near.F):
		return Root{a, b}
	case near.F == 0:
		return l.stretch(a, near, b)
	case math.Abs(near.F-far.F) > 1e-3*math.Abs(a.F-b.F):
		// A bracket this narrow beside its cell holds no such share of the
		// cell's change unless the function jumps.
		return ordered(near, far)
	}
	return Root{near, near}
}

func ordered(a, b Trial) Root {
	if a.X > b.X {
		a, b = b, a
	}
	return Root{a, b}
}

// halve closes in on a change of sign among whole numbers.
func (l looking) halve(a, b Trial) Root {
	for b.X-a.X > 1 {
		t := l.try(math.Floor((a.X + b.X) / 2))
		switch {
		case t.F == 0:
			return l.stretch(a, t, b)
		case opposite(t.F, b.F):
			a = t
		case opposite(t.F, a.F):
			b = t
		default:
			return Root{a, b} // no number there
		}
	}
	return Root{a, b}
}

// zero is the root at trials first to last, which are all 0.
func (l looking) zero(trials []Trial, first, last int) Root {
	from, to := trials[first], trials[last]
	if first > 0 {
		from = l.edge(trials[first-1], from)
	}
	if last+1 < len(trials) {
		to = l.edge(trials[last+1], to)
	}
	return Root{from, to}
}

// stretch is the root at zero, as far as f stays at 0 towards a and b.
func (l looking) stretch(a, zero, b Trial) Root { return Root{l.edge(a, zero), l.edge(b, zero)} }

// edge is the last value from zero towards out at which f is still 0. A first
// try right beside zero spares the rest for a function that only passes through.
func (l looking) edge(out, zero Trial) Trial {
	reach := l.Tol
	if l.Whole {
		reach = 1
	}
	if math.Abs(out.X-zero.X) <= reach {
		return zero
	}
	beside := l.try(zero.X + math.Copysign(reach, out.X-zero.X))
	if beside.F != 0 {
		return zero
	}
	for zero = beside; math.Abs(out.X-zero.X) > reach; {
		x := (out.X + zero.X) / 2
		if l.Whole {
			x = math.Floor(x)
		}
		if t := l.try(x); t.F == 0 {
			zero = t
		} else {
			out = t
		}
	}
	return zero
}
