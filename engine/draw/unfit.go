package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Reason says in what way a guess cannot be carried.
type Reason string

const (
	NotFinite Reason = "not-finite" // a number that is NaN or infinite
	Order     Reason = "order"      // low, likely and high out of order
	Bounds    Reason = "bounds"     // beyond the floor or the ceiling, or the two crossed
	Form      Reason = "form"       // in order, but the shape cannot go through them
)

// Unfit is a guess that a shape cannot carry.
type Unfit struct {
	Reason Reason
	// Which is the number to move: "low", "likely" or "high"; empty when moving
	// one number alone does not help.
	Which string
	// Move is the value near the present one that works for Which while the two
	// others stay, in the unit of the guess, rounded to few digits. NaN when
	// Which is empty.
	Move float64
	// Message says what is wrong, Hint what to do about it; Hint may be empty.
	// Both give bare numbers in the unit of the guess.
	Message, Hint string
}

// Error is the message with the hint in brackets.
func (u *Unfit) Error() string {
	if u.Hint == "" {
		return u.Message
	}
	return u.Message + " (" + u.Hint + ")"
}

// move fills in the one number to move, and the hint that says so.
func (u *Unfit) move(which string, to float64) {
	u.Which, u.Move, u.Hint = which, to, fmt.Sprintf("move %s to %s", which, short(to))
}

// stay fills in that no one number can be moved.
func (u *Unfit) stay() {
	u.Which, u.Move = "", math.NaN()
	if u.Reason == Bounds {
		u.Hint = "more than one number has to move, or the bound does"
	}
}

var names = [3]string{"low", "likely", "high"}

// inOrder refuses numbers that are not finite or that fall where they should
// rise. Equal numbers pass.
func inOrder(low, likely, high float64) *Unfit {
	three := []float64{low, likely, high}
	for i, x := range three {
		if !finite(x) {
			return &Unfit{Reason: NotFinite, Move: math.NaN(),
				Message: fmt.Sprintf("%s is %v, wanted a number", names[i], x)}
		}
	}
	u := &Unfit{Reason: Order, Move: math.NaN()}
	switch {
	case low > high:
		u.Message = fmt.Sprintf("low %s is above high %s", short(low), short(high))
		slices.Sort(three)
		u.Hint = fmt.Sprintf("in order they are low %s, likely %s, high %s", short(three[0]), short(three[1]), short(three[2]))
	case likely < low:
		u.Message = fmt.Sprintf("likely %s is below low %s", short(likely), short(low))
		u.move("likely", low)
	case likely > high:
		u.Message = fmt.Sprintf("likely %s is above high %s", short(likely), short(high))
		u.move("likely", high)
	default:
		return nil
	}
	return u
}

// sure tells whether a guess leaves nothing open. likely may be NaN for not
// given.
func sure(low, likely, high float64) bool {
	return finite(low) && low == high && (likely == low || math.IsNaN(likely))
}

// short writes a number with the digits it needs and no more.
func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
