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
	if shape == "" || shape == "metalog" {
		return Metalog(low, likely, high, floor, ceiling)
	}
	makers := map[string]func(low, likely, high float64) (Shape, error){
		"triangle": Triangle, "pert": Pert, "normal": Normal, "lognormal": Lognormal, "even": Even,
	}
	maker, known := makers[shape]
	if !known {
		return nil, fmt.Errorf("unknown shape %q, wanted one of %s", shape, strings.Join(Names(), ", "))
	}
	made, err := maker(low, likely, high)
	if err != nil {
		return nil, err
	}
	if err := within(shape, made, low, high, bounds{floor, ceiling}); err != nil {
		return nil, err
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
func within(name string, made Shape, low, high float64, b bounds) error {
	from, to := low, high
	switch made.(type) {
	case normal:
		from, to = math.Inf(-1), math.Inf(1)
	case lognormal:
		from, to = 0, math.Inf(1)
	}
	if b.floor != nil && !(from >= *b.floor) {
		return beyond(name, "low", from, "below the floor", *b.floor)
	}
	if b.ceiling != nil && !(to <= *b.ceiling) {
		return beyond(name, "high", to, "above the ceiling", *b.ceiling)
	}
	return nil
}

func beyond(name, which string, reach float64, side string, bound float64) *Unfit {
	u := &Unfit{Reason: Bounds, Which: which, Move: bound}
	if math.IsInf(reach, 0) || which == "low" && name == "lognormal" {
		u.Which, u.Move = "", math.NaN()
		u.Message = fmt.Sprintf("a %s shape reaches %s %s", name, side, short(bound))
		u.Hint = "leave the shape out, the usual one keeps to floor and ceiling"
		return u
	}
	u.Message = fmt.Sprintf("%s %s is %s %s", which, short(reach), side, short(bound))
	u.Hint = fmt.Sprintf("move %s to %s", which, short(bound))
	return u
}
