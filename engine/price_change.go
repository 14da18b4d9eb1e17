package engine

import (
	"fmt"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// scaled is the edit that multiplies what a price line comes to.
func scaled(line *sheet.Line, factor float64) sheet.Edit {
	e := sheet.Edit{About: line.ID}
	switch line.Kind {
	case sheet.Is:
		x := line.Is * factor
		e.Set.Is = &x
	case sheet.Guess:
		e.Set.Guess = &sheet.GuessValue{Low: line.Low * factor, Likely: line.Likely * factor, High: line.High * factor}
	case sheet.Records:
		for _, x := range line.Records {
			e.Set.Records = append(e.Set.Records, x*factor)
		}
	case sheet.Formula:
		text := "(" + line.Formula + ") * " + sheet.FormatNumber(factor)
		e.Set.Formula = &text
	}
	return e
}

// scaledBook is the book with the prices of the rows multiplied; nil when the
// sheet does not take such a price.
func (p *pricing) scaledBook(rows []priceRow, factor float64) *Book {
	var edits []sheet.Edit
	for _, row := range rows {
		edits = append(edits, scaled(p.slot(row.price).Line, factor))
	}
	tried, list := p.book.Try(edits...)
	if list.Errors() > 0 {
		return nil
	}
	for _, row := range rows {
		if tried.plan.Slots[row.price].Broken {
			return nil
		}
	}
	return tried
}

// tenths tells what a tenth more on each price alone, and on all, does.
func (p *pricing) tenths() ([]PriceMove, error) {
	var out []PriceMove
	for _, row := range p.found.rows {
		move, err := p.move(PriceMove{ID: row.id, Label: row.label}, []priceRow{row}, 1.1)
		if err != nil {
			return nil, err
		}
		out = append(out, move)
	}
	if len(out) == 1 {
		return out, nil
	}
	move, err := p.move(PriceMove{Label: "All sizes"}, p.found.rows, 1.1)
	return append(out, move), err
}

func (p *pricing) move(m PriceMove, rows []priceRow, factor float64) (PriceMove, error) {
	tried := p.scaledBook(rows, factor)
	if tried == nil {
		return m, nil
	}
	r, err := p.run(tried)
	if err != nil {
		return m, err
	}
	m.Takings = p.difference(tried, r, "takings")
	m.Left = p.difference(tried, r, "left")
	return m, nil
}

// difference is how a role's line differs from the sheet's own, nil when there is
// no such line or it can no longer be reckoned.
func (p *pricing) difference(tried *Book, r *run, role string) *Amount {
	i, ok := p.found.lines[role]
	if !ok || tried.plan.Slots[i].Broken {
		return nil
	}
	unit := p.slot(i).Unit
	return p.maybe(minusEach(p.drawn(tried, r)(i, unit), p.drawn(p.book, p.base)(i, unit)), nil, unit)
}

// change tells what the changes asked for do to the season.
func (p *pricing) change(card *PriceCard) (*PriceChange, error) {
	tried, list := p.book.Try(p.o.Changes...)
	if list.Errors() > 0 {
		return nil, list[0]
	}
	for _, e := range p.o.Changes {
		if _, err := tried.explainable(e.About); err != nil {
			return nil, err
		}
	}
	r, err := p.run(tried)
	if err != nil {
		return nil, err
	}
	c := &PriceChange{Lines: []ChangedValue{}, Outcomes: []ChangedOutcome{}, Warnings: p.newMixWarnings(tried)}
	for _, e := range p.o.Changes {
		slot := p.slot(p.book.plan.Find(e.About))
		now := tried.plan.Slots[tried.plan.Find(e.About)]
		c.Lines = append(c.Lines, ChangedValue{e.About, slot.Line.Label, p.saidValue(slot), p.saidValue(now)})
	}
	if asked, ok := p.askedChange(tried, r); ok {
		c.Outcomes = append(c.Outcomes, asked)
	}
	for _, role := range []string{"takings", "paid", "hours", "left", "pay"} {
		i, ok := p.found.lines[role]
		if !ok || tried.plan.Slots[i].Broken {
			continue
		}
		if role != "left" && r.result.Columns[i] == p.base.result.Columns[i] {
			continue // the change does not reach it
		}
		slot := p.slot(i)
		c.Outcomes = append(c.Outcomes, p.beforeAndAfter(slot.ID(), slot.Line.Label, p.drawn(p.book, p.base)(i, slot.Unit), p.drawn(tried, r)(i, slot.Unit), slot.Unit))
	}
	return c, nil
}

// newMixWarnings are the mix's warnings, when the sheet as it stands has none.
func (p *pricing) newMixWarnings(tried *Book) diag.List {
	if w := p.mixWarnings(tried); w != nil && p.mixWarnings(p.book) == nil {
		return w
	}
	return diag.List{}
}

// askedChange is all jars at their prices, before and after.
func (p *pricing) askedChange(tried *Book, r *run) (ChangedOutcome, bool) {
	for _, row := range p.found.rows {
		if tried.plan.Slots[row.size].Broken || tried.plan.Slots[row.price].Broken || tried.plan.Slots[row.filled].Broken {
			return ChangedOutcome{}, false
		}
	}
	of := func(at source) []float64 {
		var out []float64
		for _, row := range p.found.rows {
			out = plusAll(out, timesEach(at(row.filled, p.found.count), at(row.price, p.money.Div(p.found.count))))
		}
		return out
	}
	return p.beforeAndAfter("", "All jars at the price asked", of(p.drawn(p.book, p.base)), of(p.drawn(tried, r)), p.money), true
}

func (p *pricing) beforeAndAfter(id, label string, before, after []float64, unit units.Unit) ChangedOutcome {
	c := ChangedOutcome{ID: id, Label: label, Before: p.amount(before, nil, unit), After: p.amount(after, nil, unit),
		Difference: p.amount(minusEach(after, before), nil, unit), More: number(outcome.ShareBelow(before, after))}
	c.ShownMore = seasonsOfTen(c.More)
	return c
}

// saidValue is what a line is given, in words.
func (p *pricing) saidValue(slot *formula.Slot) string {
	unit, convert := shownUnit(slot, p.o.System)
	line := slot.Line
	switch line.Kind {
	case sheet.Is:
		return units.Show(convert(line.Is), unit)
	case sheet.Guess:
		return fmt.Sprintf("%s, likely %s, to %s", units.Number(convert(line.Low), unit), units.Number(convert(line.Likely), unit), units.Show(convert(line.High), unit))
	case sheet.Records:
		return fmt.Sprintf("%d records", len(line.Records))
	case sheet.Choose:
		return choiceLabel(line)
	}
	return line.Formula
}
