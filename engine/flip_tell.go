package engine

import (
	"slices"

	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// stretches parts the limits at the cuts by the side each part lies on, which
// its middle shows; neighbours on one side are one.
func (f *flipping) stretches(cuts []float64, side func(outcome.Difference) int) []flipReach {
	cuts = append([]float64{f.low, f.high}, cuts...)
	slices.Sort(cuts)
	var out []flipReach
	for i := 1; i < len(cuts); i++ {
		from, to := cuts[i-1], cuts[i]
		if to-from <= (f.high-f.low)*1e-5 {
			continue
		}
		s := side(f.at(from + (to-from)/2))
		if n := len(out); n > 0 && out[n-1].side == s {
			out[n-1].to = to
			continue
		}
		out = append(out, flipReach{from, to, s})
	}
	return out
}

// tell puts what was found into an answer.
func (f *flipping) tell(sides, balance []flipReach) *Flip {
	unit, convert := shownUnit(f.line, f.options.System)
	out := &Flip{About: f.question.About, Label: f.line.Line.Label, Unit: unit.String(),
		Outcome: f.question.Outcome, OutcomeLabel: f.outcome.slots[0].Line.Label, Better: f.outcome.better,
		First: f.short[0], Second: f.short[1], Seasons: f.seasons.N, Seed: f.seasons.Seed,
		Low: convert(f.low), High: convert(f.high), Now: number(convert(f.now)),
		Flips: []FlipAt{}, Sides: []FlipStretch{}, Balance: []FlipStretch{}}
	out.Shown = ShownFlip{Low: units.Show(out.Low, unit), High: units.Show(out.High, unit), Now: show(out.Now, unit)}
	stretch := func(r flipReach) FlipStretch {
		from, to := convert(r.from), convert(r.to)
		return FlipStretch{From: from, To: to, Ahead: f.ahead(r.side), Shown: units.Show(from, unit) + " to " + units.Show(to, unit)}
	}
	for i, r := range sides {
		out.Sides = append(out.Sides, stretch(r))
		if i > 0 {
			at := convert(r.from)
			out.Flips = append(out.Flips, FlipAt{at, units.Show(at, unit)})
		}
	}
	for _, r := range balance {
		if r.side == flipBalance {
			out.Balance = append(out.Balance, stretch(r))
		}
	}
	f.curve(out, unit, convert)
	out.Sentence = flipSentence(out, func(x float64) string { return units.Show(x, unit) })
	return out
}

// curve fills in the differences at equal steps.
func (f *flipping) curve(out *Flip, unit units.Unit, convert func(float64) float64) {
	slot := f.outcome.slots[0]
	shown, _ := shownUnit(slot, f.options.System)
	apart := shown.Difference()
	factor, _, _ := units.Conversion(slot.Unit.Difference(), apart)
	out.OutcomeUnit = apart.String()
	for i := range flipCells + 1 {
		x := f.low + (f.high-f.low)*float64(i)/flipCells
		if i == flipCells {
			x = f.high
		}
		d := f.at(x)
		p := FlipPoint{Value: convert(x), P10: number(d.P10 * factor), P50: number(d.P50 * factor), P90: number(d.P90 * factor),
			More: number(d.More), Less: number(d.Less), Missing: d.Missing}
		p.Ahead, _ = aheadBehind(out.Better, p.More, p.Less)
		if out.Better == "" {
			p.Ahead = p.More
		}
		p.Shown = ShownFlipPoint{Value: units.Show(p.Value, unit), Middle: byWords(p.P50, apart), Ahead: seasonsOfTen(p.Ahead)}
		out.Curve = append(out.Curve, p)
	}
}

// ahead is who is ahead on a side of the middle difference.
func (f *flipping) ahead(side int) string {
	names := [2]string{"first", "second"}
	if f.outcome.better == "less" {
		names = [2]string{"second", "first"}
	}
	switch side {
	case flipFirst:
		return names[0]
	case flipSecond:
		return names[1]
	case flipEven:
		return "even"
	case flipNoNumber:
		return "none"
	}
	return ""
}
