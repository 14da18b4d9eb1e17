package outcome

import (
	"math"
	"slices"
)

// Difference is what the drawn seasons say about a number less another, taken
// season by season. Its Summary has the number's own unit (for a temperature on
// a scale the unit of a difference); a season counts only when both came to a
// finite number.
type Difference struct {
	Summary
	// More and Less are the shares of the N seasons in which the second number
	// is above or below the first; NaN when N is 0. In the rest they are equal.
	More, Less float64
}

// Differ sums up second less first. Both must be in one unit and of one length.
// Because each season is lived through by both, what they share cancels: of
// X = U and Y = U² the variance of the difference is 1/180 over the same U, and
// 31 times that over separate ones. It works in room, which it leaves in
// disorder and makes for itself when room is shorter than twice a column.
func Differ(first, second, room []float64) Difference {
	n := len(first)
	if len(room) < 2*n {
		room = make([]float64, 2*n)
	}
	apart, more, less := room[:n], 0, 0
	for i, x := range first {
		d := second[i] - x
		apart[i] = d
		switch {
		case !finite(d):
		case d > 0:
			more++
		case d < 0:
			less++
		}
	}
	d := Difference{Summary: Summarise(apart, room[n:])}
	d.More, d.Less = float64(more)/float64(d.N), float64(less)/float64(d.N)
	return d
}

// Dominates says whether one of two columns of the same seasons is above the
// other at first order: with both sorted, no number of the one is below the
// other's of the same rank and some are above, so whoever likes more will take
// it, whatever they think of risk (J. Hadar and W. R. Russell, "Rules for
// Ordering Uncertain Prospects", American Economic Review 59:25-34, 1969). It is
// +1 when second dominates, -1 when first does, 0 when neither or when they are
// equal. Seasons in which either came to no finite number are left out.
func Dominates(first, second []float64) int {
	var a, b []float64
	for i, x := range first {
		if finite(x) && finite(second[i]) {
			a, b = append(a, x), append(b, second[i])
		}
	}
	if len(a) == 0 || endsDisagree(a, b) {
		return 0
	}
	slices.Sort(a)
	slices.Sort(b)
	above, below := false, false
	for i, x := range a {
		above = above || b[i] > x
		below = below || b[i] < x
	}
	switch {
	case above && !below:
		return 1
	case below && !above:
		return -1
	}
	return 0
}

// endsDisagree is a cheap look ahead: when the least says one thing and the
// greatest another, sorting can find nothing.
func endsDisagree(a, b []float64) bool {
	low, high := slices.Min(b)-slices.Min(a), slices.Max(b)-slices.Max(a)
	return low < 0 && high > 0 || low > 0 && high < 0
}

// Effect is the mean, over the seasons in which first and second both came to a
// finite number, of what one change does alone: alone less first. A season in
// which alone came to none counts as no effect. The effects of all changes and
// what is left of the mean difference, which is what they do together, therefore
// sum to the mean of second less first. NaN when no season counts.
func Effect(first, second, alone []float64) float64 {
	n, sum := 0, 0.0
	for i, x := range first {
		if !finite(second[i] - x) {
			continue
		}
		n++
		if d := alone[i] - x; finite(d) {
			sum += d
		}
	}
	if n == 0 {
		return math.NaN()
	}
	return sum / float64(n)
}
