package engine

import (
	"fmt"
	"math"

	"thawbook/engine/outcome"
)

// leastShare is the least part of the spread worth a word of its own, and
// leastNamed the least that has a guess named in the paragraph.
const (
	leastShare = 0.02
	leastNamed = 0.05
)

func tellShare(s outcome.Share) Share {
	out := Share{Value: number(s.Value), Error: number(s.Error), AboutZero: s.AboutZero(), Shown: "about zero"}
	switch {
	case out.Value == nil, s.Value == 0 && s.Error == 0:
		out.Shown = "none"
		return out
	case !out.AboutZero:
		out.Shown = percent(s.Value)
	}
	if out.Error != nil {
		out.ShownError = percent(2 * s.Error)
	}
	return out
}

// percent writes a share of a whole; an estimate may overshoot it.
func percent(x float64) string {
	if x > 0 && x < 0.005 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", math.Abs(math.Round(min(x, 1)*100)))
}

// joinLabels names guesses that move together as one.
func joinLabels(guesses []MovingGuess) string {
	var labels []string
	for i, g := range guesses {
		if i > 0 {
			g.Label = lowerFirst(g.Label)
		}
		labels = append(labels, g.Label)
	}
	return listed(labels)
}

func moversParagraph(m *Movers) string {
	label := lowerFirst(m.Outcome.Label)
	if len(m.Movers) == 0 {
		return m.Outcome.Label + " is the same in every season: no guess moves it."
	}
	named := 0
	for named < len(m.Movers) && *m.Movers[named].Total.Value >= leastNamed && named < 5 {
		named++
	}
	named = max(named, 1)
	first := m.Movers[0]
	text := fmt.Sprintf("%s moves %s most: it has a hand in %s of the spread.", first.Label, label, first.Total.Shown)
	if len(first.Guesses) > 1 {
		text = fmt.Sprintf("%s, which move together, move %s most: they have a hand in %s of the spread.", first.Label, label, first.Total.Shown)
	}
	var next []string
	for _, mover := range m.Movers[1:named] {
		next = append(next, lowerFirst(mover.Label)+" ("+mover.Total.Shown+")")
	}
	if len(next) == 1 {
		text += " After it comes " + next[0] + "."
	} else if len(next) > 1 {
		text += " After it come " + listed(next) + "."
	}
	rest := 0
	for _, mover := range m.Movers[named:] {
		if *mover.Total.Value > 0 {
			rest++
		}
	}
	if rest > 0 {
		text += fmt.Sprintf(" The other %s in %s or less.", othersHave(rest), percent(*m.Movers[named].Total.Value))
	}
	return text + togetherWords(m)
}

// togetherWords says how much arises only where guesses act together.
func togetherWords(m *Movers) string {
	if m.Alone.Value == nil || m.Alone.Error == nil {
		return ""
	}
	together := 1 - *m.Alone.Value
	if together < leastShare || together <= 2**m.Alone.Error {
		return ""
	}
	text := fmt.Sprintf(" About %s of the spread arises only where guesses act together", percent(together))
	var names []string
	for _, mover := range m.Movers {
		if mover.Interacts && len(names) < 3 {
			names = append(names, lowerFirst(mover.Label))
		}
	}
	if len(names) > 1 {
		text += ", most of all " + listed(names)
	}
	return text + "."
}

func othersHave(n int) string {
	if n == 1 {
		return "1 has a hand"
	}
	return fmt.Sprintf("%d have a hand", n)
}
