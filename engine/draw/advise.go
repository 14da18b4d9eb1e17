package draw

import (
	"math"
	"strconv"
)

// advise fills in which one of the three numbers to move, to where: the
// smallest move after which a metalog goes through them.
func advise(u *Unfit, b bounds, three [3]float64) *Unfit {
	least := math.Inf(1)
	for _, which := range []int{1, 0, 2} {
		to, ok := nearest(b, three, which)
		if by := math.Abs(to - three[which]); ok && by < least {
			least = by
			u.move(names[which], to)
		}
	}
	if math.IsInf(least, 1) {
		u.stay()
	}
	return u
}

// nearest is the value nearest to three[which] that a metalog can carry while
// the two others stay. Keeping r = (likely-low)/(high-low) above leastShare
// and below 1-leastShare bounds each of the three on the straightened line.
func nearest(b bounds, three [3]float64, which int) (float64, bool) {
	low, likely, high := b.line(three[0]), b.line(three[1]), b.line(three[2])
	const most = (1 - leastShare) / leastShare
	var from, to float64
	switch which {
	case 0:
		from, to = likely-most*(high-likely), likely-(high-likely)/most
	case 1:
		from, to = low+leastShare*(high-low), high-leastShare*(high-low)
	case 2:
		from, to = likely+(likely-low)/most, likely+most*(likely-low)
	}
	if !(from < to) || !finite(from) || !finite(to) {
		return math.NaN(), false
	}
	least, largest := b.back(from), b.back(to)
	works := func(x float64) bool {
		moved := three
		moved[which] = x
		return x >= least && x <= largest && carries(b, moved)
	}
	if x := three[which]; x < (least+largest)/2 {
		return tidy(least, largest-least, math.Ceil, works)
	}
	return tidy(largest, largest-least, math.Floor, works)
}

// tidy is the number of fewest digits just past edge, away from which round
// leads, that works: at most a fiftieth of room farther than it need be.
func tidy(edge, room float64, round func(float64) float64, works func(float64) bool) (float64, bool) {
	if !(room > 0) || !finite(edge) || !finite(room) {
		return math.NaN(), false
	}
	step := int(math.Floor(math.Log10(room)))
	for digits := -step; digits <= 12-step; digits++ {
		unit := math.Pow(10, float64(digits))
		x, err := strconv.ParseFloat(strconv.FormatFloat(round(edge*unit)/unit, 'f', max(digits, 0), 64), 64)
		if err == nil && math.Abs(x-edge) <= room/50 && works(x) {
			return x, true
		}
	}
	return math.NaN(), false
}

// near is the number of fewest digits within slack of x.
func near(x, slack float64) float64 {
	if tidied, ok := tidy(x, 50*slack, math.Round, func(float64) bool { return true }); ok {
		return tidied
	}
	return x
}
