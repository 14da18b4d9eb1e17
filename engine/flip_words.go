package engine

import (
	"fmt"
	"strings"
)

// flipSentence says who is ahead where, and where it is in the balance. show
// writes a value of the number it hangs on.
func flipSentence(f *Flip, show func(float64) string) string {
	label, lead, last := lowerFirst(f.Label), f.OutcomeLabel+": ", len(f.Sides)-1
	switch {
	case last < 0:
		return lead + "nothing can be said."
	case last == 0:
		return lead + fmt.Sprintf("%s at every value of %s from %s to %s, so the answer does not flip there.",
			f.who(f.Sides[0], true), label, f.Shown.Low, f.Shown.High) + f.balanceWords(show)
	case last == 1:
		return lead + fmt.Sprintf("%s once %s goes beyond %s; below that, %s.",
			f.who(f.Sides[1], true), label, f.Flips[0].Shown, f.who(f.Sides[0], false)) + f.balanceWords(show)
	}
	var parts []string
	for i, s := range f.Sides {
		switch i {
		case 0:
			parts = append(parts, f.who(s, true)+" up to "+show(s.To))
		case last:
			parts = append(parts, "beyond that "+f.who(s, false))
		default:
			parts = append(parts, "from there to "+show(s.To)+" "+f.who(s, false))
		}
	}
	return lead + fmt.Sprintf("the answer flips %d times as %s grows: %s.", last, label, strings.Join(parts, "; ")) + f.balanceWords(show)
}

// who says who is ahead in a stretch, at length or to follow where it was.
func (f *Flip) who(s FlipStretch, long bool) string {
	verb := " does"
	if long {
		verb = " " + f.verb()
	}
	switch s.Ahead {
	case "first":
		return f.First + verb
	case "second":
		return f.Second + verb
	case "even":
		return "the two come to the same"
	}
	return "no season comes to a number"
}

func (f *Flip) verb() string {
	if f.Better == "" {
		return "comes to more"
	}
	return "comes out ahead"
}

// balanceWords says between which values it is in the balance.
func (f *Flip) balanceWords(show func(float64) string) string {
	so := "it is in the balance: neither " + f.verb() + " in 9 seasons of 10."
	var parts []string
	for _, s := range f.Balance {
		switch atLow, atHigh := s.From == f.Low, s.To == f.High; {
		case atLow && atHigh:
			return " All the way " + so
		case atLow:
			parts = append(parts, "up to "+show(s.To))
		case atHigh:
			parts = append(parts, "from "+show(s.From)+" on")
		default:
			parts = append(parts, "between "+show(s.From)+" and "+show(s.To))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return " " + upperFirst(listed(parts)) + " " + so
}
