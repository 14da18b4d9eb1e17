package engine

import (
	"fmt"
	"slices"

	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/trade"
	"thawbook/engine/units"
)

// reference is what others got for the sizes of the sheet, in the last year that
// was surveyed. The error is for a state the survey does not have.
func (p *pricing) reference() (*PriceReference, error) {
	dollars := p.dollars()
	r := &PriceReference{Source: trade.SurveySource, Year: trade.SurveyYear, State: p.o.State,
		Note: fmt.Sprintf("What others got in %d, for reference; prices have moved since, and yours are your own to set.", trade.SurveyYear)}
	if p.book.sheet.Money != "USD" {
		r.Note += fmt.Sprintf(" They are in US dollars and are not turned into %s.", p.book.sheet.Money)
	}
	state, err := p.stateAsked()
	if err != nil {
		return nil, err
	}
	likely := outcome.AtLikely(p.book.plan)
	for _, row := range p.found.rows {
		ounces, _ := units.Convert(likely[row.size], p.slot(row.size).Unit, p.ounce.Div(p.found.count))
		r.Sizes = append(r.Sizes, referenceSize(row, ounces, state, dollars))
	}
	perGallon := dollars.Div(p.gallon)
	for _, y := range trade.PricesByYear() {
		r.AllSales = append(r.AllSales, ReferenceYear{y.Year, y.PerGallon, units.Show(y.PerGallon, perGallon)})
	}
	return r, nil
}

// dollars are US dollars, which stand as $ only where the sheet counts in them.
func (p *pricing) dollars() units.Unit {
	text := "$"
	if p.book.sheet.Money != "USD" {
		text = "USD"
	}
	u, err := units.Parse(text, "USD")
	if err != nil {
		panic("engine: US dollars do not read")
	}
	return u
}

// stateAsked is nil when none was asked for.
func (p *pricing) stateAsked() (*trade.StatePrices, error) {
	if p.o.State == "" {
		return nil, nil
	}
	var names []string
	for _, s := range trade.PricesByState() {
		if s.State == p.o.State {
			return &s, nil
		}
		names = append(names, s.State)
	}
	hint := diag.Nearest(p.o.State, names)
	if hint == "" {
		hint = fmt.Sprintf("it has %d states, such as %s and %s", len(names), names[len(names)-3], names[0])
	}
	return nil, diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error,
		Message: fmt.Sprintf("the survey has no prices of %q", p.o.State), Hint: hint}
}

func referenceSize(row priceRow, ounces float64, state *trade.StatePrices, dollars units.Unit) ReferenceSize {
	s := ReferenceSize{ID: row.id, Label: row.label}
	containers := trade.Containers()
	container := slices.IndexFunc(containers[:], func(c trade.Container) bool { return c.Holds(ounces) })
	if container < 0 {
		return s
	}
	s.Container = containers[container].Name
	s.Retail = referenceSpread(trade.RetailPrices(container), dollars)
	s.Wholesale = referenceSpread(trade.WholesalePrices(container), dollars)
	if state != nil && state.Retail[container] > 0 {
		price := state.Retail[container]
		s.InState, s.ShownInState = &price, units.Show(price, dollars)
	}
	return s
}

func referenceSpread(p trade.PriceSpread, dollars units.Unit) *ReferenceSpread {
	if p.States == 0 {
		return nil
	}
	return &ReferenceSpread{p.States, p.Low, p.Median, p.High, units.Show(p.Median, dollars),
		units.Show(p.Low, dollars) + " to " + units.Show(p.High, dollars)}
}
