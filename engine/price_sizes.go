package engine

import (
	"math"

	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// amount sums up a column over the seasons, with its one number at the likely
// ones; both are in unit. likely may be nil.
func (p *pricing) amount(seasons, likely []float64, unit units.Unit) Amount {
	shown := unit.In(p.o.System)
	factor, _, _ := units.Conversion(unit, shown) // no card has a temperature
	s := outcome.Summarise(seasons, nil)
	a := Amount{Unit: shown.String(), Missing: s.Missing, Mean: number(s.Mean * factor), P10: number(s.P10 * factor),
		P50: number(s.P50 * factor), P90: number(s.P90 * factor)}
	if likely != nil {
		a.Likely = number(likely[0] * factor)
	}
	a.Shown = ShownAmount{Likely: show(a.Likely, shown), Mean: show(a.Mean, shown), Low: show(a.P10, shown), Middle: show(a.P50, shown), High: show(a.P90, shown)}
	return a
}

// maybe is amount for a column that is nil when it is not known.
func (p *pricing) maybe(seasons, likely []float64, unit units.Unit) *Amount {
	if seasons == nil {
		return nil
	}
	a := p.amount(seasons, likely, unit)
	return &a
}

// sizes are the accounts of one of each size.
func (p *pricing) sizes(seasons, likely *accounts) []PricedSize {
	each := p.money.Div(p.found.count)
	hours := p.hour.Div(p.found.count)
	var out []PricedSize
	for k, row := range p.found.rows {
		a, l := seasons.each[k], likely.each[k]
		size := PricedSize{ID: row.id, Label: row.label, PriceID: p.slot(row.price).ID(),
			Size:     p.amount(seasons.of(row.size, p.slot(row.size).Unit), likely.of(row.size, p.slot(row.size).Unit), p.slot(row.size).Unit),
			Filled:   p.amount(seasons.jars[k].Filled, likely.jars[k].Filled, p.found.count),
			Price:    p.amount(seasons.jars[k].Price, likely.jars[k].Price, each),
			Brings:   p.amount(a.Brings, l.Brings, each),
			Selling:  p.maybe(a.Selling, l.Selling, each),
			Parts:    []NamedAmount{},
			Syrup:    p.maybe(a.Syrup, l.Syrup, each),
			Left:     p.amount(a.Left, l.Left, each),
			ByVolume: p.inUnit(a.ByVolume, l.ByVolume, p.money.Div(p.gallon), p.volumeUnit()),
			ByHour:   p.maybe(a.ByHour, l.ByHour, p.money.Div(p.hour)),
			Hours:    p.maybe(a.Hours, l.Hours, hours),
			Worked:   p.maybe(a.Worked, l.Worked, each),
			After:    p.maybe(a.After, l.After, each)}
		for part, i := range row.parts {
			line := p.slot(i).Line
			size.Parts = append(size.Parts, NamedAmount{line.ID, p.partLabel(i), p.amount(seasons.inParts[k][part], likely.inParts[k][part], each)})
		}
		out = append(out, size)
	}
	return out
}

// partLabel is a line's label, or for a cell its column's, which is the same for
// every size.
func (p *pricing) partLabel(i int) string {
	line := p.slot(i).Line
	if line.Table == "" {
		return line.Label
	}
	for _, c := range p.book.sheet.Table(line.Table).Columns {
		if c.ID == line.Column {
			return c.Label
		}
	}
	return line.Label
}

// season is what the whole comes to.
func (p *pricing) season(seasons, likely *accounts) []NamedAmount {
	var out []NamedAmount
	add := func(id, label string, s, l []float64, unit units.Unit) {
		if s != nil {
			out = append(out, NamedAmount{id, label, p.amount(s, l, unit)})
		}
	}
	line := func(role string) {
		if i, ok := p.found.lines[role]; ok {
			add(p.slot(i).ID(), p.slot(i).Line.Label, seasons.of(i, p.slot(i).Unit), likely.of(i, p.slot(i).Unit), p.slot(i).Unit)
		}
	}
	for _, role := range []string{"made", "kept", "given"} {
		line(role)
	}
	add("", "What kept and given syrup cost", p.keptCost(seasons), p.keptCost(likely), p.money)
	add("", "All jars at the price asked", asked(seasons.jars), asked(likely.jars), p.money)
	for _, role := range []string{"takings", "fees", "selling"} {
		line(role)
	}
	add("", "The syrup itself, jars and selling apart", seasons.season.Making, likely.season.Making, p.money)
	for _, role := range []string{"hours", "left", "pay"} {
		line(role)
	}
	return out
}

// keptCost is what making the syrup that is kept and given away costs.
func (p *pricing) keptCost(a *accounts) []float64 {
	kept := plusAll(p.line(a.of, "kept"), p.line(a.of, "given"))
	if kept == nil || a.season.Making == nil || a.season.Syrup == nil {
		return nil
	}
	for i := range kept { // no more than there was
		kept[i] = math.Min(kept[i], a.season.Syrup[i])
	}
	return timesEach(kept, overEach(a.season.Making, a.season.Syrup))
}

// asked is what all jars would bring at their prices.
func asked(jars []outcome.Jar) []float64 {
	var out []float64
	for _, j := range jars {
		out = plusAll(out, timesEach(j.Filled, j.Price))
	}
	return out
}
