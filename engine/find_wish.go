package engine

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
)

// wish is what of an outcome should come to what.
type wish struct {
	in string // "middle", "mean", "low", "high" or "share"
	// share of the seasons, and in words, when in is "share".
	share  float64
	words  string
	asked  string // "is", "at_least" or "at_most"
	target float64
}

// wishOf reads what is asked of the outcome.
func wishOf(q FindQuestion, slot *formula.Slot) (wish, *diag.Diagnostic) {
	w, wrong := targetOf(q, slot)
	if wrong != nil {
		return w, wrong
	}
	better := ""
	if slot.Line.Headline != nil {
		better = slot.Line.Headline.Better
	}
	switch q.In {
	case "", "middle":
		w.in, w.words = "middle", "in the middle season"
	case "mean":
		w.in, w.words = "mean", "in the mean of the seasons"
	case "low":
		w.in, w.words = "low", "in the 1-in-10 low season"
	case "high":
		w.in, w.words = "high", "in the 1-in-10 high season"
	case "bad":
		w.words = "in the 1-in-10 bad season"
		switch better {
		case "more":
			w.in = "low"
		case "less":
			w.in = "high"
		default:
			return w, badQuestion(slot.ID(), "ask for the low or the high season instead", "%q does not say whether more or less of it is better", slot.ID())
		}
	default:
		return w.seasonsOf(q.In, slot.ID())
	}
	return w, nil
}

// seasonsOf reads "9/10".
func (w wish) seasonsOf(text, about string) (wish, *diag.Diagnostic) {
	share, words, ok := readChance(text)
	switch {
	case !ok:
		return w, badQuestion(about, "middle, mean, bad, low, high, or seasons as in 9/10", "%q is no way to look at the seasons", text)
	case w.asked == "is":
		return w, badQuestion(about, "ask for at least or at most so much", "%s cannot come to the same number", words)
	}
	w.in, w.share, w.words = "share", share, "in "+words
	return w, nil
}

// targetOf is the target that q gives, or the outcome's goal.
func targetOf(q FindQuestion, slot *formula.Slot) (w wish, wrong *diag.Diagnostic) {
	is, least, most := q.Is, q.AtLeast, q.AtMost
	if goal := goalOf(slot.Line); is == nil && least == nil && most == nil && goal != nil {
		least, most = goal.AtLeast, goal.AtMost
	}
	given := 0
	for _, t := range []struct {
		asked string
		x     *float64
	}{{"is", is}, {"at_least", least}, {"at_most", most}} {
		if t.x != nil {
			w.asked, w.target, given = t.asked, *t.x, given+1
		}
	}
	switch {
	case given == 0:
		return w, badQuestion(slot.ID(), "say what it should be, at least or at most", "%q has no goal of its own", slot.ID())
	case given > 1:
		return w, badQuestion(slot.ID(), "give one: what it should be, at least or at most", "the target of %q is more than one number", slot.ID())
	case math.IsNaN(w.target) || math.IsInf(w.target, 0):
		return w, badQuestion(slot.ID(), "give a number", "the target of %q is no number", slot.ID())
	}
	return w, nil
}

func badQuestion(about, hint, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, About: about, Message: fmt.Sprintf(format, args...), Hint: hint}
}

// readChance reads "9/10" as a share above 0 and at most 1, with its words.
func readChance(text string) (share float64, words string, ok bool) {
	over, under, found := strings.Cut(text, "/")
	a, err := strconv.Atoi(strings.TrimSpace(over))
	b, err2 := strconv.Atoi(strings.TrimSpace(under))
	if !found || err != nil || err2 != nil || a < 1 || b < a || b > 1_000_000 {
		return 0, "", false
	}
	seasons := "seasons"
	if a == 1 {
		seasons = "season"
	}
	return float64(a) / float64(b), fmt.Sprintf("%d %s of %d", a, seasons, b), true
}

// reached is what of the outcome should reach the target, NaN when too few
// seasons come to a number. room is as long as a column.
//
// For a share of the seasons it is the number that so many of them reach: the
// k-th best of all, k rounded up, and not a quantile between two seasons.
func (w wish) reached(c *columns.Column, room []float64) float64 {
	if c.Steady {
		return c.Value + 0*c.Value // no infinity
	}
	if w.in == "share" {
		k := int(math.Ceil(w.share*float64(len(c.Values)) - 1e-9))
		return outcome.Kth(c.Values, k, w.asked == "at_least", room)
	}
	return w.of(outcome.Summarise(c.Values, room))
}

func (w wish) of(s outcome.Summary) float64 {
	switch w.in {
	case "mean":
		return s.Mean
	case "low":
		return s.P10
	case "high":
		return s.P90
	}
	return s.P50
}

// toward is how far past the target reached is, in the direction asked: 0 or
// more is good.
func (w wish) toward(reached float64) float64 {
	if w.asked == "at_most" {
		return w.target - reached
	}
	return reached - w.target
}

// met is the share of all seasons that meet the target; nil when it is to be
// reached exactly.
func (w wish) met(c *columns.Column, n int) *float64 {
	if w.asked == "is" {
		return nil
	}
	count := 0
	for k := range n {
		if w.toward(c.At(k)) >= 0 {
			count++
		}
	}
	share := float64(count) / float64(n)
	return &share
}
