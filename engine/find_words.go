package engine

import (
	"fmt"
	"strings"

	"thawbook/engine/columns"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// outcomeAt fills in what a column of the outcome comes to.
func (f *finding) outcomeAt(at *FoundAt, c *columns.Column) {
	unit, to := shownUnit(f.outcome, f.q.System)
	var s outcome.Summary
	if c != nil && c.Steady {
		s = outcome.Steady(c.Value, f.seasons.N)
	} else if c != nil {
		s = outcome.Summarise(c.Values, f.room)
	}
	if s.N > 0 {
		at.Reached = number(to(f.wish.reached(c, f.room)))
		at.Mean, at.P10, at.P50, at.P90 = number(to(s.Mean)), number(to(s.P10)), number(to(s.P50)), number(to(s.P90))
		at.Met = f.wish.met(c, f.seasons.N)
	}
	at.Shown.Reached, at.Shown.Middle, at.Shown.Mean = show(at.Reached, unit), show(at.P50, unit), show(at.Mean, unit)
	at.Shown.Range = spanWords(show(at.P10, unit), show(at.P90, unit))
	at.Shown.Met = seasonsOfTen(at.Met)
}

// spanWords joins two numbers that are shown, saying a unit they share once:
// "19.9 to 31 gal".
func spanWords(low, high string) string {
	if low == high {
		return low
	}
	if i := strings.IndexAny(low, " /"); i > 0 && strings.HasSuffix(high, low[i:]) {
		low = low[:i]
	}
	return low + " to " + high
}

// wishWords says the target: "at least 30 gal in 9 seasons of 10".
func (f *finding) wishWords(unit units.Unit, to func(float64) float64) string {
	return f.wish.bound() + units.Show(to(f.wish.target), unit) + " " + f.wish.words
}

// bound is how the target bounds the outcome.
func (w wish) bound() string {
	return map[string]string{"is": "", "at_least": "at least ", "at_most": "at most "}[w.asked]
}

// gives says what a value gives, in the sense of the wish.
func (w wish) gives(at FoundAt) string {
	switch {
	case at.Reached == nil || w.in == "middle":
		return at.Shown.Reached
	case w.in == "share":
		return w.bound() + at.Shown.Reached + " " + w.words
	}
	return at.Shown.Reached + " " + w.words
}

// answerWords says one answer.
func answerWords(a FoundAnswer) string {
	from, to := a.From.Shown.Value, a.To.Shown.Value
	switch {
	case a.Kind == "over" && from == to:
		return fmt.Sprintf("at %s it steps over that, from %s to %s", from, a.From.Shown.Reached, a.To.Shown.Reached)
	case a.Kind == "over":
		return fmt.Sprintf("it steps over that between %s, with %s, and %s, with %s", from, a.From.Shown.Reached, to, a.To.Shown.Reached)
	case a.EndsLow && a.EndsHigh:
		return fmt.Sprintf("everywhere from %s", spanWords(from, to))
	case a.EndsHigh:
		return fmt.Sprintf("%s or more", from)
	case a.EndsLow:
		return fmt.Sprintf("%s or less", to)
	case a.Kind == "along" && from != to:
		return "from " + spanWords(from, to)
	}
	return "at " + from
}

// paragraph says the question and its answer in plain words.
func (w wish) paragraph(found *Found) string {
	limits := spanWords(found.Lowest.Shown.Value, found.Highest.Shown.Value)
	text := fmt.Sprintf("Wanted: %s, %s. %s: ", lowerFirst(found.Outcome.Label), found.Wish, found.Line.Label)
	switch n := len(found.Answers); {
	case found.NoNumber == len(found.Curve):
		text += fmt.Sprintf("nothing from %s gives a number at all.", limits)
	case n == 0 && flat(found.Curve):
		text += fmt.Sprintf("makes no difference as the sheet stands, it gives %s from %s.", w.gives(*found.Nearest), limits)
	case n == 0:
		text += fmt.Sprintf("nothing from %s does it. Nearest of those tried is %s, which gives %s.", limits, found.Nearest.Shown.Value, w.gives(*found.Nearest))
	default:
		for i, a := range found.Answers {
			text += joiner(i, n) + a.Sentence
		}
		text += fmt.Sprintf(". Tried from %s.", limits)
	}
	if found.NoNumber > 0 && found.NoNumber < len(found.Curve) {
		text += fmt.Sprintf(" %d of the %d values tried give no number.", found.NoNumber, len(found.Curve))
	}
	if found.Now.Value != nil {
		text += fmt.Sprintf(" Now it is %s, which gives %s.", found.Now.Shown.Value, w.gives(found.Now))
	}
	return text + howWords(found)
}

// howWords says how the line was moved when that is not plain.
func howWords(found *Found) string {
	switch {
	case found.Moved == "formula":
		return " Its formula was set aside to try them."
	case found.Moved == "guess" && len(found.Answers) == 1:
		at := found.Answers[0].From
		if found.Answers[0].EndsLow {
			at = found.Answers[0].To
		}
		if at.Shown.Guess != "" {
			return fmt.Sprintf(" The value is the likely one; low and high went along with it, here to %s.", at.Shown.Guess)
		}
	}
	if found.Moved == "guess" {
		return " The value is the likely one; low and high went along with it."
	}
	return ""
}

func flat(curve []FoundPoint) bool {
	for _, p := range curve {
		if p.Reached == nil || *p.Reached != *curve[0].Reached {
			return false
		}
	}
	return true
}

// joiner stands before the i-th of n things in a row.
func joiner(i, n int) string {
	switch {
	case i == 0:
		return ""
	case i == n-1:
		return " and "
	}
	return ", "
}
