package engine

import (
	"math"

	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// A wage is looked for by multiplying prices with a factor between widest and its
// inverse, in equal steps of its logarithm; the answer is good to a hundredth of a
// cent in the dollar.
const (
	widest      = 10
	wageCells   = 12
	wageNearest = 1e-4
)

// wage finds the prices that pay the wage asked for: in the middle season, and in
// 9 seasons of 10.
func (p *pricing) wage() (*WagePrices, error) {
	at, ok := p.found.lines["pay"]
	if !ok {
		return nil, diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, Message: "the sheet has no line for the pay of an hour",
			Hint: `add a line "pay" in $/h, or name yours for the role "pay"`}
	}
	slot := p.slot(at)
	perHour := p.money.Div(p.hour)
	pay := p.drawn(p.book, p.base)(at, perHour)
	w := &WagePrices{Wage: *p.o.Wage, ShownWage: units.Show(*p.o.Wage, perHour),
		Now: NamedAmount{slot.ID(), slot.Line.Label, p.amount(pay, p.atLikely()(at, perHour), perHour)}}
	all := &payCurve{p: p, rows: p.found.rows, at: at, known: map[float64]outcome.Summary{}}
	w.Middle.All = all.solve("", *p.o.Wage, middlePay)
	w.Bad.All = all.solve("", *p.o.Wage, badPay)
	w.Middle.Each, w.Bad.Each = []ScaledPrices{}, []ScaledPrices{}
	for _, row := range p.found.rows {
		if len(p.found.rows) == 1 {
			break // it is all there is
		}
		one := &payCurve{p: p, rows: []priceRow{row}, at: at, known: map[float64]outcome.Summary{}}
		w.Middle.Each = append(w.Middle.Each, one.solve(row.id, *p.o.Wage, middlePay))
		w.Bad.Each = append(w.Bad.Each, one.solve(row.id, *p.o.Wage, badPay))
		if one.err != nil {
			return nil, one.err
		}
	}
	return w, all.err
}

func middlePay(s outcome.Summary) float64 { return s.P50 }

// badPay is the pay that 9 seasons of 10 reach.
func badPay(s outcome.Summary) float64 { return s.P10 }

// payCurve is the pay for an hour when the prices of rows are multiplied. It
// remembers what it has worked, because the middle and the bad season are looked
// for on the same curve.
type payCurve struct {
	p     *pricing
	rows  []priceRow
	at    int
	known map[float64]outcome.Summary // by the logarithm of the factor
	err   error
}

func (c *payCurve) summary(x float64) outcome.Summary {
	if s, ok := c.known[x]; ok {
		return s
	}
	s := outcome.Steady(math.NaN(), c.p.seasons.N)
	if tried := c.p.scaledBook(c.rows, math.Exp(x)); tried != nil && c.err == nil && !tried.plan.Slots[c.at].Broken {
		r, err := c.p.run(tried)
		if err != nil {
			c.err = err
			return s
		}
		s = outcome.Summarise(c.p.drawn(tried, r)(c.at, c.p.money.Div(c.p.hour)), nil)
	}
	c.known[x] = s
	return s
}

// solve finds the factor at which the pay meets the wage.
func (c *payCurve) solve(id string, wage float64, of func(outcome.Summary) float64) ScaledPrices {
	out := ScaledPrices{ID: id, Prices: []ScaledPrice{}}
	limit := math.Log(widest)
	roots, _ := outcome.FindRoots(func(x float64) float64 { return of(c.summary(x)) - wage },
		outcome.RootSearch{Low: -limit, High: limit, Cells: wageCells, Tol: wageNearest})
	if len(roots) == 0 {
		out.Shown = "no price from a tenth to ten times does it"
		return out
	}
	best := math.Inf(1)
	for _, root := range roots {
		x := root.To.X
		if root.To.F < 0 { // of a step, the end that does pay the wage
			x = root.From.X
		}
		if math.Abs(x) < math.Abs(best) {
			best = x
		}
	}
	factor := math.Exp(best)
	out.Found, out.Several, out.Factor = true, len(roots) > 1, &factor
	out.Shown = "× " + units.Number(factor, units.One())
	for _, row := range c.rows {
		out.Prices = append(out.Prices, c.p.multiplied(row, factor))
	}
	return out
}

// multiplied is a size's likely price times factor.
func (p *pricing) multiplied(row priceRow, factor float64) ScaledPrice {
	unit := p.money.Div(p.found.count)
	price := p.atLikely()(row.price, unit)[0] * factor
	return ScaledPrice{row.id, row.label, price, units.Show(price, unit)}
}
