package draw

import (
	"fmt"
	"math"
	"strings"
)

// Shape is a way of being unsure of one number.
type Shape interface {
	// Quantile is the value that a share u of seasons stays below. u lies
	// strictly between 0 and 1; elsewhere the answer is not defined. It has the
	// unit of the guess and is a pure function, safe to use from several
	// goroutines.
	Quantile(u float64) float64
}

// Names lists the names New knows, the usual one first.
func Names() []string {
	return []string{"metalog", "triangle", "pert", "normal", "lognormal", "even"}
}

// New makes the shape of that name ("" is "metalog") through a guess. Where the
// three numbers stand depends on the shape: metalog, normal and lognormal take
// low and high as the 10th and 90th percentile; triangle, pert and even take
// them as the ends. floor and ceiling are nil when there is none; only metalog
// bends to them, the others are refused if they reach beyond. All numbers have
// the unit of the guess. A guess whose three numbers are equal is Certain.
//
// The error is an *Unfit, except for a name that is not in Names.
func New(shape string, low, likely, high float64, floor, ceiling *float64) (Shape, error) {
	b := bounds{floor, ceiling}
	var maker func(low, likely, high float64) (Shape, error)
	switch shape {
	case "", "metalog":
		return Metalog(low, likely, high, floor, ceiling)
	case "triangle":
		maker = Triangle
	case "pert":
		maker = Pert
	case "normal":
		maker = Normal
	case "lognormal":
		maker = Lognormal
	case "even":
		maker = Even
	default:
		return nil, fmt.Errorf("unknown shape %q, wanted one of %s", shape, strings.Join(Names(), ", "))
	}
	if u := b.crossed(); u != nil {
		return nil, u
	}
	made, err := maker(low, likely, high)
	if err != nil {
		return nil, err
	}
	if u := within(shape, made, low, high, b); u != nil {
		if !moves(maker, u, low, likely, high, b) {
			u.stay()
		}
		return nil, u
	}
	return made, nil
}

// Apply turns a column of points into the shape's values, in place.
func Apply(shape Shape, column []float64) {
	for i, u := range column {
		column[i] = shape.Quantile(u)
	}
}

// Draw sets dst to the values of seasons from, from+1, … of a guess that moves
// with no other.
func Draw(shape Shape, s Stream, dst []float64, from int) {
	s.Fill(dst, from)
	Apply(shape, dst)
}

// within refuses a shape that reaches beyond the guess's bounds: normal has no
// ends at all, lognormal ends at 0 below, the others end at low and high.
func within(name string, made Shape, low, high float64, b bounds) *Unfit {
	from, to, endless := low, high, false
	switch made.(type) {
	case normal:
		from, to, endless = math.Inf(-1), math.Inf(1), true
	case lognormal:
		from, to, endless = 0, math.Inf(1), true
	}
	switch {
	case b.holds(from) && b.holds(to):
		return nil
	case b.floor != nil && from < *b.floor && endless:
		return spills(name, "below the floor", *b.floor)
	case b.ceiling != nil && to > *b.ceiling && endless:
		return spills(name, "above the ceiling", *b.ceiling)
	case b.floor != nil && from < *b.floor:
		return stands("low", low, "below the floor", *b.floor)
	}
	return stands("high", high, "above the ceiling", *b.ceiling)
}

func spills(shape, side string, bound float64) *Unfit {
	return &Unfit{Reason: Bounds, Move: math.NaN(),
		Message: fmt.Sprintf("a %s shape reaches %s %s", shape, side, short(bound)),
		Hint:    "leave the shape out: the usual one keeps to floor and ceiling"}
}

func stands(which string, x float64, side string, bound float64) *Unfit {
	u := &Unfit{Reason: Bounds, Message: fmt.Sprintf("%s %s is %s %s", which, short(x), side, short(bound))}
	u.move(which, bound)
	return u
}

// moves tells whether the guess works once the one number has moved.
func moves(maker func(low, likely, high float64) (Shape, error), u *Unfit, low, likely, high float64, b bounds) bool {
	switch u.Which {
	case "low":
		low = u.Move
	case "high":
		high = u.Move
	}
	_, err := maker(low, likely, high)
	return err == nil && b.holds(low) && b.holds(high)
}
