package engine

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// ladder is the price of a volume from the largest size to the smallest, with a
// warning where it falls.
func (p *pricing) ladder(seasons, likely *accounts) ([]Rung, diag.List) {
	order := make([]int, len(p.found.rows))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(likely.jars[b].Size[0], likely.jars[a].Size[0]) })
	unit := p.ladderUnit()
	var rungs []Rung
	warnings := diag.List{}
	for at, k := range order {
		s, l := outcome.PerVolume(seasons.jars[k]), outcome.PerVolume(likely.jars[k])
		row := p.found.rows[k]
		rung := Rung{ID: row.id, Label: row.label, ByVolume: p.inUnit(s, l, p.money.Div(p.gallon), unit)}
		against := l[0] / outcome.PerVolume(likely.jars[order[0]])[0]
		rung.Against = number(against)
		rung.Shown.Against = show(rung.Against, units.One())
		if at > 0 {
			larger := order[at-1]
			rung.Falls = l[0] < outcome.PerVolume(likely.jars[larger])[0]
			rung.FallsIn = number(outcome.ShareBelow(s, outcome.PerVolume(seasons.jars[larger])))
			rung.Shown.FallsIn = seasonsOfTen(rung.FallsIn)
			if rung.Falls {
				warnings = append(warnings, p.falls(row, p.found.rows[larger]))
			}
		}
		rungs = append(rungs, rung)
	}
	return rungs, warnings
}

func (p *pricing) falls(row, larger priceRow) diag.Diagnostic {
	return diag.Diagnostic{Code: diag.LadderFalls, Severity: diag.Warning, About: p.slot(row.price).ID(), Place: p.slot(row.price).Line.Place,
		Message: fmt.Sprintf("%q costs less by volume than the larger %q", row.label, larger.label),
		Hint:    "whoever wants a little pays less for it, and the small jar costs more to fill"}
}

// metric says whether the sizes are shown in metric.
func (p *pricing) metric() bool {
	shown := p.slot(p.found.rows[0].size).Unit.In(p.o.System)
	return shown.In(units.Metric).String() == shown.String() && shown.In(units.Customary).String() != shown.String()
}

// ladderUnit is money by the fluid ounce, or by the litre in metric.
func (p *pricing) ladderUnit() units.Unit {
	if p.metric() {
		return p.money.Div(p.book.unit("L"))
	}
	return p.money.Div(p.ounce)
}

// volumeUnit is money by the gallon, or by the litre in metric.
func (p *pricing) volumeUnit() units.Unit {
	if p.metric() {
		return p.money.Div(p.book.unit("L"))
	}
	return p.money.Div(p.gallon)
}

// inUnit is amount, shown in a unit of the card's own choosing.
func (p *pricing) inUnit(seasons, likely []float64, from, to units.Unit) Amount {
	factor, _, _ := units.Conversion(from, to)
	asIs := *p
	asIs.o.System = units.AsWritten
	return asIs.amount(scaledColumn(seasons, factor), scaledColumn(likely, factor), to)
}

func scaledColumn(col []float64, factor float64) []float64 {
	out := make([]float64, len(col))
	for i, x := range col {
		out[i] = x * factor
	}
	return out
}

// mixWarnings tells when the shares of a mix do not come to the whole.
func (p *pricing) mixWarnings(b *Book) diag.List {
	likely := outcome.AtLikely(b.plan)
	sum := 0.0
	for _, row := range p.found.rows {
		if row.share < 0 {
			return nil
		}
		x, _ := units.Convert(likely[row.share], b.plan.Slots[row.share].Unit, units.One())
		sum += x
	}
	if !(math.Abs(sum-1) >= 1e-6) {
		return nil // or a share comes to no number, which the run tells
	}
	return diag.List{{Code: diag.MixNotWhole, Severity: diag.Warning, About: p.found.table,
		Message: "the shares of the sizes come to " + strconv.FormatFloat(sum*100, 'g', 4, 64) + " %, not 100",
		Hint:    "let one size take what the others leave"}}
}

// emptyWarnings tells in how many seasons nothing was filled: they have no share
// in what one brings and leaves.
func (p *pricing) emptyWarnings(seasons *accounts) diag.List {
	n := 0
	for _, x := range asked(seasons.jars) {
		if !(x > 0) { // nothing, or no number
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return diag.List{{Code: diag.NotFinite, Severity: diag.Warning, About: p.found.table, Seasons: n, Of: p.seasons.N,
		Message: "nothing is filled, so what one brings is not known", Hint: "those seasons are left out of what is left of one"}}
}

// outlets are the places where jars are sold, with what each leaves of one.
func (p *pricing) outlets(seasons, likely *accounts) []PricedOutlet {
	out := []PricedOutlet{}
	for _, o := range p.found.outlets {
		level, taken := p.slot(o.level).Unit, seasons.of(o.taken, p.money)
		priced := PricedOutlet{ID: o.id, Label: o.label, Level: p.amount(seasons.of(o.level, level), likely.of(o.level, level), level),
			Taken: p.amount(taken, likely.of(o.taken, p.money), p.money),
			Kept:  p.amount(p.keptAt(o, seasons), p.keptAt(o, likely), p.money)}
		for k, row := range p.found.rows {
			each := p.money.Div(p.found.count)
			price, left := p.atOutlet(o, k, seasons)
			likelyPrice, likelyLeft := p.atOutlet(o, k, likely)
			priced.Sizes = append(priced.Sizes, OutletSize{ID: row.id, Price: p.amount(price, likelyPrice, each), Left: p.amount(left, likelyLeft, each)})
		}
		out = append(out, priced)
	}
	return out
}

// keptAt is what an outlet's takings leave behind its fees and its own cost.
func (p *pricing) keptAt(o outletRow, a *accounts) []float64 {
	kept := a.of(o.taken, p.money)
	for _, cost := range []int{o.fees, o.own} {
		if cost >= 0 {
			kept = minusEach(kept, a.of(cost, p.money))
		}
	}
	return kept
}

// atOutlet is the price of one there and what is left of it for the hours. What
// the outlet costs is shared out by what it takes.
func (p *pricing) atOutlet(o outletRow, k int, a *accounts) (price, left []float64) {
	price = timesEach(a.jars[k].Price, a.of(o.level, units.One()))
	left = timesEach(price, overEach(p.keptAt(o, a), a.of(o.taken, p.money)))
	for _, cost := range [][]float64{a.each[k].Parts, a.each[k].Syrup} {
		if cost != nil {
			left = minusEach(left, cost)
		}
	}
	return price, left
}

// salesAnswer says whether the sheet lets sales answer the price.
func (p *pricing) salesAnswer() (bool, string) {
	for i, slot := range p.book.plan.Slots {
		if slot.Broken || slot.Expr == nil || !calls(slot.Expr, "units_sold") {
			continue
		}
		for _, row := range p.found.rows {
			if p.hangs(i, row.price) && p.fedBy(i) {
				return true, fmt.Sprintf("fewer are sold at a higher price, as %q says", slot.Line.Label)
			}
		}
	}
	return false, "as many are sold at any price, as far as this sheet knows: give it a line with units_sold to change that"
}

// fedBy says whether the takings hang on a slot.
func (p *pricing) fedBy(i int) bool {
	takings, ok := p.found.lines["takings"]
	return ok && p.hangs(takings, i)
}
