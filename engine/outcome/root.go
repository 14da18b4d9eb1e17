package outcome

import "math"

// Trial is one value tried and what a function came to there; F is NaN when it
// came to no number.
type Trial struct{ X, F float64 }

// Root is where a function is 0. There are three kinds:
//
//   - it meets 0 at one value: From and To are the same;
//   - it stays at 0 from From to To: F is 0 at both;
//   - it steps over 0 somewhere between From and To: F has another sign at
//     each, and no value between them makes it 0 as far as can be told.
type Root struct{ From, To Trial }

// Steps says that the function jumps over 0 and is never 0 here.
func (r Root) Steps() bool { return r.From.X != r.To.X && (r.From.F != 0 || r.To.F != 0) }

// Stays says that the function is 0 along a stretch.
func (r Root) Stays() bool { return r.From.X != r.To.X && r.From.F == 0 && r.To.F == 0 }

// ulp is the distance from 1 to the next number of a float64.
const ulp = 2.220446049250313e-16

// Brent is a root of f between a and b, to within tol of it: inverse quadratic
// or straight-line steps while they help, halving when they do not. found is
// false when f has one sign at both ends, or comes to no number at an end or at a
// value tried on the way. A root at an end is found. For a function that jumps
// over 0, x is a value beside the jump.
//
// Source: R. P. Brent, "Algorithms for Minimization without Derivatives",
// Prentice-Hall 1973, chapter 4.
//
// Valid: finite a and b, in either order; tol 0 or more, in the unit of x.
func Brent(f func(x float64) float64, a, b, tol float64) (x float64, found bool) {
	from, to := Trial{a, f(a)}, Trial{b, f(b)}
	if !opposite(from.F, to.F) && from.F != 0 && to.F != 0 || math.IsNaN(from.F+to.F) {
		return math.NaN(), false
	}
	near, _ := brent(f, from, to, tol)
	return near.X, !math.IsNaN(near.F)
}

func opposite(a, b float64) bool { return a < 0 && b > 0 || a > 0 && b < 0 }

// brent closes the bracket from a to b, whose signs differ or one of which is a
// root. near is the best value found; far has the other sign and stands within
// about tol of it, unless near is a root itself. near.F is NaN when the
// function came to no number at near.
func brent(f func(x float64) float64, a, b Trial, tol float64) (near, far Trial) {
	if a.F == 0 {
		return a, b
	}
	c, step, before := a, b.X-a.X, b.X-a.X
	for {
		if b.F != 0 && !opposite(b.F, c.F) {
			c, step, before = a, b.X-a.X, b.X-a.X
		}
		if math.Abs(c.F) < math.Abs(b.F) {
			a, b, c = b, c, b
		}
		least := 2*ulp*math.Abs(b.X) + tol/2
		half := (c.X - b.X) / 2
		if b.F == 0 || math.Abs(half) <= least || math.IsNaN(b.F) {
			return b, c
		}
		guess, good := interpolated(a, b, c, half, before, least)
		if good {
			step, before = guess, step
		} else {
			step, before = half, half
		}
		a = b
		if math.Abs(step) > least {
			b.X += step
		} else {
			b.X += math.Copysign(least, half)
		}
		b.F = f(b.X)
	}
}

// interpolated is the step from b to where a parabola on its side through a, b
// and c, or a straight line when a and c are one, meets 0. It is good while it
// stays inside the bracket and is under half the step before last.
func interpolated(a, b, c Trial, half, before, least float64) (step float64, good bool) {
	if math.Abs(before) < least || math.Abs(a.F) <= math.Abs(b.F) {
		return 0, false
	}
	s := b.F / a.F
	p, q := 2*half*s, 1-s
	if a.X != c.X {
		t, r := a.F/c.F, b.F/c.F
		p = s * (2*half*t*(t-r) - (b.X-a.X)*(r-1))
		q = (t - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	// So written, a working with an infinity in it is not good either.
	good = 2*p < 3*half*q-math.Abs(least*q) && p < math.Abs(before*q/2)
	return p / q, good
}
