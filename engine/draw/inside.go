package draw

import "math"

// Outer carries a guess that was given for another share of the seasons to the
// one a sheet holds: inside is the share, above 0 and below 1, of the seasons
// that fall between low and high, as many below as above; the answer has the
// 10th and 90th percentile of the same metalog in their place, rounded by about
// a four-hundredth of the range. The general
// symmetric-percentile triplet is Keelin's (see Metalog). All numbers have the
// unit of the guess. The error is an *Unfit, about the numbers given.
func Outer(low, likely, high, inside float64, floor, ceiling *float64) (out [3]float64, err error) {
	three, b := [3]float64{low, likely, high}, bounds{floor, ceiling}
	if u := b.crossed(); u != nil {
		return three, u
	}
	u := inOrder(low, likely, high)
	if u == nil && !sure(low, likely, high) {
		u = b.outside(three)
	}
	if u != nil {
		return three, advise(u, b, three)
	}
	if inside == usualShare || sure(low, likely, high) {
		_, err = Metalog(low, likely, high, floor, ceiling)
		return three, err
	}
	if u := leans(b, three, inside); u != nil {
		return three, u
	}
	three = carried(b, three, inside)
	_, err = Metalog(three[0], three[1], three[2], floor, ceiling)
	return three, err
}

// leans refuses three numbers that no metalog goes through when that share of
// the seasons falls between the outer two: see leastShare, which is this for the
// usual share. It says where likely would have to be.
func leans(b bounds, three [3]float64, inside float64) *Unfit {
	least := 0.5 - inside/usualShare*(0.5-leastShare)
	low, likely, high := b.line(three[0]), b.line(three[1]), b.line(three[2])
	r := (likely - low) / (high - low)
	if r > least && r < 1-least {
		return nil
	}
	u := tooNear(three)
	const past = 0.005 // so that rounding does not lead back
	to := low + (least+past)*(high-low)
	if r > 0.5 {
		to = high - (least+past)*(high-low)
	}
	u.move("likely", near(b.back(to), math.Abs(b.back(to)-b.back(to+past*(high-low)))/2))
	return u
}

// usualShare of the seasons fall inside a guess as a sheet holds it.
const usualShare = 0.8

// carried is the 10th and 90th percentile of the metalog whose symmetric
// percentiles for another share are given.
func carried(b bounds, three [3]float64, inside float64) [3]float64 {
	below := (1 - inside) / 2
	wide := math.Log((1 - below) / below)
	low, likely, high := b.line(three[0]), b.line(three[1]), b.line(three[2])
	m := metalog{likely, (high - low) / (2 * wide), (high + low - 2*likely) / (2 * (0.5 - below) * wide)}
	// A few digits are enough, as many as keep the place on the straightened line.
	step := (m.Quantile(0.9) - m.Quantile(0.1)) / 400
	round := func(y float64) float64 { return near(b.back(y), math.Abs(b.back(y+step)-b.back(y-step))/2) }
	return [3]float64{round(m.Quantile(0.1)), three[1], round(m.Quantile(0.9))}
}

// Share is the share of the seasons in which a shape comes to no less than from
// and no more than to, to a millionth. It is 0 when from is above to.
func Share(shape Shape, from, to float64) float64 {
	// Quantile is pure and never falls, so the points where it first passes the
	// two values can be halved towards.
	first := func(passed func(x float64) bool) float64 {
		low, high := 0.0, 1.0
		for range 40 {
			middle := (low + high) / 2
			if passed(shape.Quantile(middle)) {
				high = middle
			} else {
				low = middle
			}
		}
		return (low + high) / 2
	}
	inside := first(func(x float64) bool { return x > to }) - first(func(x float64) bool { return x >= from })
	return max(0, inside)
}

// Point is a place on a shape's curve: At in the guess's unit, Height from 0 to
// 1, the highest being 1.
type Point struct{ At, Height float64 }

// Curve is a shape's density at n places that hold 98 of 100 seasons between
// them, closest where it bends most. It is nil for what has no density: a
// certain number, records.
func Curve(shape Shape, n int) []Point {
	const least = 0.01
	ends := math.Log(least / (1 - least))
	at := func(k int) float64 { return 1 / (1 + math.Exp(-ends*(1-2*float64(k)/float64(n-1)))) }
	var out []Point
	highest := 0.0
	for k := range n {
		u := at(k)
		step := min(u, 1-u) / 50
		rise := shape.Quantile(u+step) - shape.Quantile(u-step)
		height := 2 * step / rise
		if !(rise > 0) || !finite(height) {
			return nil
		}
		out = append(out, Point{shape.Quantile(u), height})
		highest = max(highest, height)
	}
	for k := range out {
		out[k].Height /= highest
	}
	return out
}
