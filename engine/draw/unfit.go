package draw

import (
	"fmt"
	"math"
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
	// Move is the value nearest to the present one that works for Which while
	// the two others stay, in the unit of the guess, rounded to few digits. NaN
	// when Which is empty.
	Move float64
	// Message says what is wrong, Hint what to do about it. Both give bare
	// numbers in the unit of the guess.
	Message, Hint string
}

// Error is the message with the hint in brackets.
func (u *Unfit) Error() string {
	if u.Hint == "" {
		return u.Message
	}
	return u.Message + " (" + u.Hint + ")"
}

var names = [3]string{"low", "likely", "high"}

// inOrder refuses numbers that are not finite or that fall where they should
// rise. Equal numbers pass.
func inOrder(low, likely, high float64) *Unfit {
	three := [3]float64{low, likely, high}
	for i, x := range three {
		if !finite(x) {
			return &Unfit{Reason: NotFinite, Move: math.NaN(),
				Message: fmt.Sprintf("%s is %v, wanted a number", names[i], x)}
		}
	}
	if low > high {
		return &Unfit{Reason: Order, Move: math.NaN(),
			Message: fmt.Sprintf("low %s is above high %s", short(low), short(high)),
			Hint:    "write the smaller number as low and the larger as high"}
	}
	if likely < low {
		return &Unfit{Reason: Order, Which: "likely", Move: low,
			Message: fmt.Sprintf("likely %s is below low %s", short(likely), short(low))}
	}
	if likely > high {
		return &Unfit{Reason: Order, Which: "likely", Move: high,
			Message: fmt.Sprintf("likely %s is above high %s", short(likely), short(high))}
	}
	return nil
}

// short writes a number with the digits it needs and no more.
func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// move fills in the one number to move, and the hint that says so. A target
// that is not a number leaves both out.
func (u *Unfit) move(which string, to float64) {
	if !finite(to) {
		u.Which, u.Move = "", math.NaN()
		return
	}
	u.Which, u.Move, u.Hint = which, to, fmt.Sprintf("move %s to %s", which, short(to))
}
