package engine

import (
	"thawbook/engine/outcome"
)

// accounts are the card's columns from one source: over the seasons, or one
// number each at the likely numbers.
type accounts struct {
	of      source
	jars    []outcome.Jar
	season  outcome.Season
	each    []outcome.Account
	inParts [][][]float64 // by size and part
}

// accounts works the card's columns.
func (p *pricing) accounts(of source) *accounts {
	a := &accounts{of: of}
	for _, row := range p.found.rows {
		jar := outcome.Jar{Size: of(row.size, p.gallon.Div(p.found.count)), Price: of(row.price, p.money.Div(p.found.count)),
			Filled: of(row.filled, p.found.count)}
		var parts [][]float64
		for _, part := range row.parts {
			parts = append(parts, of(part, p.money.Div(p.found.count)))
		}
		if len(parts) > 0 {
			jar.Parts = plusAll(parts...)
		}
		a.jars, a.inParts = append(a.jars, jar), append(a.inParts, parts)
	}
	a.season = outcome.Season{Takings: p.line(of, "takings"), Selling: p.selling(of), Syrup: p.line(of, "made"),
		Hours: p.line(of, "hours"), Worth: p.line(of, "worth")}
	a.season.Making = p.making(a)
	a.each = outcome.Accounts(a.jars, a.season)
	return a
}

// line is the column of a role's line, nil when the sheet has none.
func (p *pricing) line(of source, role string) []float64 {
	i, ok := p.found.lines[role]
	if !ok {
		return nil
	}
	for _, r := range priceRoles() {
		if r.role == role {
			return of(i, p.book.unit(r.unit))
		}
	}
	return nil
}

// selling is what is paid to sell the jars.
func (p *pricing) selling(of source) []float64 {
	return plusAll(p.line(of, "fees"), p.line(of, "selling"))
}

// making is what the syrup itself costs: all that is paid out, less what is paid
// to sell it and for the jars around it, and with the year's wear of the gear in
// place of what was bought. Each is taken off only when it is in what is paid.
func (p *pricing) making(a *accounts) []float64 {
	paid, ok := p.found.lines["paid"]
	if !ok {
		return nil
	}
	making := plusAll(p.line(a.of, "paid"))
	without := func(role string) {
		if i, found := p.found.lines[role]; found && p.hangs(paid, i) {
			making = minusEach(making, p.line(a.of, role))
		}
	}
	without("fees")
	without("selling")
	if worn, found := p.found.lines["worn"]; found && !p.hangs(paid, worn) {
		without("bought")
		making = plusAll(making, p.line(a.of, "worn"))
	}
	for k, row := range p.found.rows {
		for part, i := range row.parts {
			if p.hangs(paid, i) {
				making = minusEach(making, timesEach(a.jars[k].Filled, a.inParts[k][part]))
			}
		}
	}
	return making
}

// plusAll adds columns, leaving out those that are nil; nil when all are.
func plusAll(columns ...[]float64) []float64 {
	var out []float64
	for _, col := range columns {
		if col == nil {
			continue
		}
		if out == nil {
			out = make([]float64, len(col))
		}
		for i, x := range col {
			out[i] += x
		}
	}
	return out
}

func minusEach(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i := range out {
		out[i] = a[i] - b[i]
	}
	return out
}

func timesEach(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i := range out {
		out[i] = a[i] * b[i]
	}
	return out
}

func overEach(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i := range out {
		out[i] = a[i] / b[i]
	}
	return out
}
