package draw

import (
	"fmt"
	"math"
)

// bounds are a guess's floor and ceiling, nil where there is none.
type bounds struct{ floor, ceiling *float64 }

// line carries x onto the whole number line: the logarithm of its height above
// the floor, of its depth below the ceiling (turned, so that more stays more),
// or the logit between the two. x outside the bounds goes to an infinity.
func (b bounds) line(x float64) float64 {
	switch {
	case b.floor != nil && !(x > *b.floor):
		return math.Inf(-1)
	case b.ceiling != nil && !(x < *b.ceiling):
		return math.Inf(1)
	case b.floor != nil && b.ceiling != nil:
		return math.Log((x - *b.floor) / (*b.ceiling - x))
	case b.floor != nil:
		return math.Log(x - *b.floor)
	case b.ceiling != nil:
		return -math.Log(*b.ceiling - x)
	}
	return x
}

// back undoes line.
func (b bounds) back(y float64) float64 {
	switch {
	case b.floor != nil && b.ceiling != nil:
		return *b.floor + (*b.ceiling-*b.floor)/(1+math.Exp(-y))
	case b.floor != nil:
		return *b.floor + math.Exp(y)
	case b.ceiling != nil:
		return *b.ceiling - math.Exp(-y)
	}
	return y
}

// crossed refuses bounds that leave no room or are not numbers.
func (b bounds) crossed() *Unfit {
	for _, one := range []struct {
		name string
		at   *float64
	}{{"floor", b.floor}, {"ceiling", b.ceiling}} {
		if one.at != nil && !finite(*one.at) {
			return &Unfit{Reason: NotFinite, Move: math.NaN(),
				Message: fmt.Sprintf("%s is %v, wanted a number", one.name, *one.at)}
		}
	}
	if b.floor != nil && b.ceiling != nil && *b.floor >= *b.ceiling {
		return &Unfit{Reason: Bounds, Move: math.NaN(),
			Message: fmt.Sprintf("floor %s is not below ceiling %s", short(*b.floor), short(*b.ceiling)),
			Hint:    "lower the floor or raise the ceiling"}
	}
	return nil
}

// outside names the first of the three numbers that does not lie strictly
// between the bounds.
func (b bounds) outside(three [3]float64) *Unfit {
	for i, x := range three {
		switch y := b.line(x); {
		case math.IsInf(y, -1):
			return &Unfit{Reason: Bounds, Message: fmt.Sprintf("%s %s is not above the floor %s", names[i], short(x), short(*b.floor))}
		case math.IsInf(y, 1):
			return &Unfit{Reason: Bounds, Message: fmt.Sprintf("%s %s is not below the ceiling %s", names[i], short(x), short(*b.ceiling))}
		}
	}
	return nil
}

// holds tells whether x is one of the bounds or lies between them.
func (b bounds) holds(x float64) bool {
	return (b.floor == nil || x >= *b.floor) && (b.ceiling == nil || x <= *b.ceiling)
}
