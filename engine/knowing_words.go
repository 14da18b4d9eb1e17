package engine

import "fmt"

// mostTurns is how many turns a sentence can tell.
const mostTurns = 2

// turnSentence says what to choose on either side of each turn.
func turnSentence(turns []Turn, scenarios []WorthScenario) string {
	short := func(k int) string { return scenarios[k].Short }
	switch {
	case len(turns) == 0 || len(turns) > mostTurns:
		return ""
	case len(turns) == 1:
		t := turns[0]
		return fmt.Sprintf("Under about %s choose %s, above it %s.", t.Shown, short(t.Below), short(t.Above))
	}
	return fmt.Sprintf("Under about %s choose %s, from there to %s %s, and above that %s.",
		turns[0].Shown, short(turns[0].Below), turns[1].Shown, short(turns[0].Above), short(turns[1].Above))
}

// worthParagraph says what to choose now, and what would be worth knowing first.
func worthParagraph(w *Worth) string {
	best := w.Scenarios[w.Best]
	text := fmt.Sprintf("Knowing no more than the guesses, choose %s: %s comes to %s there on average, and it comes out ahead in %s.",
		best.Short, lowerFirst(w.Outcome.Label), best.Shown.Mean, best.Shown.Ahead)
	if w.All.AboutNothing {
		return text + " Hardly a season drawn would change that, so nothing is worth finding out first."
	}
	text += fmt.Sprintf(" To know every guess beforehand would be worth %s a season, and change the choice in %s.", w.All.Shown.Value, w.All.Shown.Changes)
	var worth []string
	for _, g := range w.Guesses {
		if !g.Worth.AboutNothing && len(worth) < 3 {
			worth = append(worth, fmt.Sprintf("%s (%s)", lowerFirst(g.Label), g.Worth.Shown.Value))
		}
	}
	switch len(worth) {
	case 0:
		return text + " No guess alone is worth finding out: by itself none would change the choice."
	case 1:
		return text + fmt.Sprintf(" One guess alone is worth finding out first: %s.", worth[0])
	}
	return text + fmt.Sprintf(" Most worth finding out first: %s.", listed(worth))
}
