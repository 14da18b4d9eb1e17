package main

import (
	"fmt"
	"math"
	"strings"

	"thawbook/engine"
	"thawbook/engine/units"
)

// swings lays out what moves a line. Each mover has its share of the spread, and
// each of its guesses a strip of how far the line goes with it:
//
//	People at the fire                                                21 % ± 1 %
//	  1.2 to 2 people           ●━━━━━━◆━━━━━━━━━○        -$4,712 → -$5,963
type swings struct{ page }

// mostMovers is how many movers are shown unless all are asked for.
const mostMovers = 12

func (s swings) movers(m *engine.Movers, all bool) {
	fmt.Fprintln(s.w, s.on.bold(wrap("What moves "+m.Outcome.Label, width, "")))
	fmt.Fprintln(s.w, wrap(fmt.Sprintf("%s: %s seasons drawn, seed %d", m.Title, units.Number(float64(m.Seasons), units.One()), m.Seed), width, ""))
	fmt.Fprintf(s.w, "\n%s\n", wrap(m.Paragraph, width, ""))
	shown, low, high := moving(m.Movers), math.Inf(1), math.Inf(-1)
	if !all {
		shown = worthShowing(m.Movers)
	}
	for _, x := range append(ends(shown), m.Outcome.AtLikely) {
		if x != nil {
			low, high = min(low, *x), max(high, *x)
		}
	}
	if len(shown) > 0 {
		fmt.Fprintln(s.w, s.on.faint(right("share of the spread", width)))
	}
	for _, mover := range shown {
		s.mover(mover, m.Outcome.AtLikely, low, high)
	}
	s.rest(m, len(shown))
	if len(shown) > 0 {
		s.legend()
	}
}

// moving are the movers that do anything at all: the price of a fuel that is not
// chosen does not.
func moving(movers []engine.Mover) []engine.Mover {
	n := len(movers)
	for n > 0 && *movers[n-1].Total.Value == 0 {
		n--
	}
	return movers[:n]
}

// worthShowing are the first movers, down to a hundredth of the spread.
func worthShowing(movers []engine.Mover) []engine.Mover {
	n := 0
	for n < len(movers) && n < mostMovers && !movers[n].Total.AboutZero && *movers[n].Total.Value >= 0.01 {
		n++
	}
	return movers[:n]
}

// ends are the line's numbers at both ends of every swing.
func ends(movers []engine.Mover) []*float64 {
	var out []*float64
	for _, mover := range movers {
		for _, g := range mover.Guesses {
			out = append(out, g.AtLow, g.AtHigh)
		}
	}
	return out
}

func (s swings) mover(m engine.Mover, likely *float64, low, high float64) {
	share := m.Total.Shown
	if m.Total.ShownError != "" {
		share += " ± " + m.Total.ShownError
	}
	if m.Interacts {
		share += ", alone " + m.First.Shown
	}
	fmt.Fprintln(s.w)
	s.ends(m.Label, share, s.on.bold)
	for _, g := range m.Guesses {
		if len(m.Guesses) > 1 {
			fmt.Fprintln(s.w, wrap(g.Label, width, "  "))
		}
		s.swing(g, likely, low, high)
	}
	if m.Missing > 0 {
		fmt.Fprintln(s.w, wrap(units.Number(float64(m.Missing), units.One())+" seasons came to no number and are left out", width, "  "))
	}
}

// ends writes a name and, at the right end of its last line, what belongs to it.
func (s swings) ends(name, text string, ink func(string) string) {
	lines := strings.Split(wrap(name, width-columns(text)-2, ""), "\n")
	for i, line := range lines {
		if i < len(lines)-1 {
			fmt.Fprintln(s.w, ink(line))
			continue
		}
		fmt.Fprintln(s.w, ink(line)+strings.Repeat(" ", width-columns(line)-columns(text))+text)
	}
}

// swing writes a guess's range, its strip and the line's numbers at both ends.
// What is too long for one line takes lines of its own.
func (s swings) swing(g engine.MovingGuess, likely *float64, low, high float64) {
	const first, picture, last = 26, 28, width - 26 - 28
	from := clean(between(g.Shown.Low, g.Shown.High))
	to := clean(g.Shown.AtLow + " → " + g.Shown.AtHigh)
	if g.Direction == "" && g.AtLow != nil && g.AtHigh != nil {
		to = clean(g.Shown.AtLow + " either way")
	}
	text := swingStrip(g.AtLow, likely, g.AtHigh, low, high, picture)
	if columns(from)+3 > first {
		fmt.Fprintln(s.w, wrap(from, width, "  "))
		from = ""
	}
	row := left("  "+from, first) + left(text, picture)
	if columns(to)+1 > last {
		fmt.Fprintln(s.w, trimRight(row))
		row = ""
	}
	fmt.Fprintln(s.w, row+right(to, width-columns(row)))
}

// swingStrip draws how far a line goes, in n columns from low to high: a ring
// where the guess is at its low, a disc where it is at its high, a diamond where
// all are at their likely numbers. It is empty when a number is missing.
func swingStrip(atLow, likely, atHigh *float64, low, high float64, n int) string {
	if atLow == nil || likely == nil || atHigh == nil || !(high > low) || math.IsInf(high-low, 0) || n < 2 {
		return ""
	}
	at := func(x float64) int { return int(math.Round((x - low) / (high - low) * float64(n-1))) }
	cells := []rune(strings.Repeat("·", n))
	from, to, middle := at(*atLow), at(*atHigh), at(*likely)
	for i := min(from, to, middle); i <= max(from, to, middle); i++ {
		cells[i] = '━'
	}
	cells[from], cells[to] = '○', '●'
	cells[middle] = '◆'
	return string(cells)
}

// between says a range; a unit that both ends share is said once.
func between(low, high string) string {
	return rangeOf(engine.Answer{Shown: engine.Shown{Low: low, High: high}})
}

// rest counts what is not shown.
func (s swings) rest(m *engine.Movers, shown int) {
	var text []string
	if more := len(moving(m.Movers)) - shown; more > 0 {
		// The first that is not shown has the largest share of them.
		share := "about none of the spread"
		if t := m.Movers[shown].Total; !t.AboutZero {
			share = t.Shown + " of the spread or less"
		}
		text = append(text, fmt.Sprintf("Another %s with %s each; --all shows them.", guesses(more), share))
	}
	idle := len(m.Apart)
	for _, mover := range m.Movers[len(moving(m.Movers)):] {
		idle += len(mover.Guesses)
	}
	if idle == 1 {
		text = append(text, "1 guess has nothing to do with it as the sheet stands.")
	} else if idle > 1 {
		text = append(text, guesses(idle)+" have nothing to do with it as the sheet stands.")
	}
	if len(text) > 0 {
		fmt.Fprintf(s.w, "\n%s\n", wrap(strings.Join(text, " "), width, ""))
	}
}

func guesses(n int) string {
	if n == 1 {
		return "1 guess"
	}
	return fmt.Sprintf("%d guesses", n)
}

func (s swings) legend() {
	fmt.Fprintln(s.w, s.on.faint("\n  ○ the guess at its low   ● at its high   ◆ every guess at its likely number"))
	text := "A guess's share is the part of the variance over the seasons that it has a hand in; where guesses act together " +
		"they share a part, and the shares add up to more than the whole. The ± is two standard errors."
	fmt.Fprintln(s.w, s.on.faint(wrap(text, width, "  ")))
}
