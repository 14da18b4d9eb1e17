package engine

import (
	"fmt"
	"math"
	"strconv"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// LayIn lists what to gather or buy before the season, so that each thing lasts
// in the chance asked for: so much that so many of the drawn seasons need no more,
// less what is on hand, up to a whole number of what it is bought by.
//
// The error is a diag.Diagnostic for a chance that cannot be read or a sheet that
// marks nothing, or columns.ErrStopped.
func (b *Book) LayIn(q LayInQuestion) (*LayInList, error) {
	if q.Chance == "" {
		q.Chance = "9/10"
	}
	share, words, ok := readChance(q.Chance)
	if !ok {
		return nil, *badQuestion("", "write 9/10 for 9 seasons of 10", "%q is no chance", q.Chance)
	}
	s, err := b.keptSeasons(q.Options)
	if err != nil {
		return nil, err
	}
	r, err := b.run(s, q.Progress)
	if err != nil {
		return nil, err
	}
	l := &laying{b: b, run: r, n: s.N, share: share, system: q.System, total: make([]float64, s.N), lasts: everySeason(s.N), now: everySeason(s.N)}
	l.list = &LayInList{Title: b.sheet.Title, Seasons: s.N, Seed: s.Seed, Chance: share, ChanceShown: words, Groups: []LayInGroup{}, Warnings: diag.List{}}
	b.eachSlot(func(i int, chapter string) {
		if slot := b.plan.Slots[i]; slot.Line.LayIn != nil {
			l.add(slot, chapter)
		}
	})
	if len(l.list.Groups) == 0 && len(l.list.Warnings) == 0 {
		return nil, diag.Diagnostic{Code: diag.NoneMarked, Severity: diag.Error, Message: "no line is marked to be laid in",
			Hint: "write lay_in: {round: 12} on the lines to gather or buy"}
	}
	l.finish()
	return l.list, nil
}

// laying is a list being drawn up.
type laying struct {
	b      *Book
	run    *run
	n      int
	share  float64
	system units.System
	list   *LayInList
	total  []float64 // of money, by season
	priced bool
	// lasts and now say in which seasons nothing has run short so far, with the
	// list bought and without.
	lasts, now []bool
	things     int // to buy
}

func everySeason(n int) []bool {
	out := make([]bool, n)
	for k := range out {
		out[k] = true
	}
	return out
}

// add lists one line.
func (l *laying) add(slot *formula.Slot, chapter string) {
	line := slot.Line
	c := l.run.at(line.ID)
	unit, toLay, wrong := l.unit(slot)
	if wrong != nil {
		l.list.Warnings = append(l.list.Warnings, *wrong)
		return
	}
	if c == nil {
		l.list.Warnings = append(l.list.Warnings, *layInWarning(line, diag.WaitsFor, "put right what is wrong with the line first", "%q cannot be reckoned", line.ID))
		return
	}
	need := make([]float64, l.n)
	for k := range need {
		need[k] = toLay(c.At(k))
	}
	item := l.item(line, unit, need)
	if groups := l.list.Groups; len(groups) == 0 || groups[len(groups)-1].Chapter != chapter {
		l.list.Groups = append(l.list.Groups, LayInGroup{Chapter: chapter})
	}
	group := &l.list.Groups[len(l.list.Groups)-1]
	group.Items = append(group.Items, item)
}

// unit is the unit a line is listed in, with the step to it from the slot's.
func (l *laying) unit(slot *formula.Slot) (units.Unit, func(float64) float64, *diag.Diagnostic) {
	line, unit := slot.Line, slot.Unit
	if slot.Kind != formula.Number {
		return unit, nil, layInWarning(line, diag.NotANumber, "mark a line that comes to a number", "%q is a choice or a yes or no, nothing to lay in", line.ID)
	}
	if line.LayIn.Unit != "" {
		listed, err := units.Parse(line.LayIn.Unit, l.b.sheet.Money)
		if err != nil {
			return unit, nil, layInWarning(line, diag.UnknownUnit, "give lay_in another unit", "%q cannot be listed in %q", line.ID, line.LayIn.Unit)
		}
		unit = listed
	}
	factor, offset, ok := units.Conversion(slot.Unit, unit)
	if !ok {
		return unit, nil, layInWarning(line, diag.UnitMismatch, "give lay_in a unit of the line's kind", "%q is in %q and cannot be listed in %q",
			line.ID, line.Unit, line.LayIn.Unit)
	}
	return unit, func(x float64) float64 { return x*factor + offset }, nil
}

func layInWarning(line *sheet.Line, code diag.Code, hint, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{Code: code, Severity: diag.Warning, About: line.ID, Place: line.At("lay_in"), Message: fmt.Sprintf(format, args...), Hint: hint}
}

// smidgen is the share of a pack that is put down to how computers count, and
// not bought another pack for.
const smidgen = 1e-9

// item works out one thing from what each season needs of it, in the unit it is
// listed in.
func (l *laying) item(line *sheet.Line, unit units.Unit, need []float64) LayInItem {
	lay := line.LayIn
	item := LayInItem{ID: line.ID, Label: line.Label, Note: line.Note, Round: lay.Round}
	if lay.OnHand != nil {
		item.OnHand = *lay.OnHand
	}
	s := outcome.Summarise(need, l.run.scratch)
	item.Missing, item.Middle = s.Missing, number(s.P50)
	item.ShortNow = l.short(need, item.OnHand, l.now)
	item.Need = number(outcome.Kth(need, int(math.Ceil(l.share*float64(s.N)-smidgen)), false, l.run.scratch))
	if item.Need != nil {
		packs := math.Max(0, math.Ceil((*item.Need-item.OnHand)/lay.Round-smidgen))
		buy := packs * lay.Round
		item.Packs, item.Buy = &packs, &buy
		item.ShortThen = l.short(need, item.OnHand+buy, l.lasts)
		if buy > 0 {
			l.things++
			item.Cost = l.cost(line, unit, buy, &item)
		}
	}
	l.show(&item, unit)
	return item
}

// short is the share of the seasons that need more than there is, of those that
// come to a number; lasting loses those seasons.
func (l *laying) short(need []float64, there float64, lasting []bool) *float64 {
	count, of := 0, 0
	for k, x := range need {
		if math.IsNaN(x) {
			continue
		}
		of++
		if x > there+smidgen*math.Abs(there) {
			count++
			lasting[k] = false
		}
	}
	return number(float64(count) / float64(of))
}

// cost is what buying so much costs, nil when the sheet does not say.
func (l *laying) cost(line *sheet.Line, unit units.Unit, buy float64, item *LayInItem) *LayInCost {
	price, wrong := l.price(line, unit, item)
	if wrong != nil {
		l.list.Warnings = append(l.list.Warnings, *wrong)
	}
	if price == nil {
		l.list.Unpriced++
		return nil
	}
	l.priced = true
	sum := make([]float64, l.n)
	for k := range sum {
		sum[k] = buy * price(k)
		l.total[k] += sum[k]
	}
	return l.money(sum)
}

// price is what one of the unit costs in each season, nil when not said.
func (l *laying) price(line *sheet.Line, unit units.Unit, item *LayInItem) (func(k int) float64, *diag.Diagnostic) {
	id := line.LayIn.Price
	if id == "" {
		return nil, nil
	}
	if x, err := strconv.ParseFloat(id, 64); err == nil {
		each := l.currency().Div(unit)
		if shown, ok := units.Convert(x, each, each.In(l.system)); ok {
			item.Shown.Price = units.Show(shown, each.In(l.system))
		}
		return func(int) float64 { return x }, nil
	}
	slot, wrong := l.b.numberLine(id)
	if wrong != nil {
		return nil, layInWarning(line, wrong.Code, wrong.Hint, "%q cannot be priced: %s", line.ID, wrong.Message)
	}
	factor, _, ok := units.Conversion(slot.Unit.Mul(unit), l.currency())
	if plain, _, same := units.Conversion(slot.Unit, l.currency()); same {
		factor, ok = plain, true // the price of one
	}
	if !ok {
		return nil, layInWarning(line, diag.UnitMismatch, "name a price in "+l.currency().Div(unit).String(), "%q cannot be priced by %q, which is in %q",
			line.ID, id, slot.Line.Unit)
	}
	c := l.run.at(id)
	shown, to := shownUnit(slot, l.system)
	item.Shown.Price = units.Show(to(l.run.summary(c).P50), shown)
	return func(k int) float64 { return factor * c.At(k) }, nil
}

func (l *laying) currency() units.Unit { return currencyOf(l.b.sheet) }

// money sums a sum of money up.
func (l *laying) money(sum []float64) *LayInCost {
	s := outcome.Summarise(sum, l.run.scratch)
	c := &LayInCost{Mean: number(s.Mean), P10: number(s.P10), P50: number(s.P50), P90: number(s.P90)}
	c.Shown = show(c.P50, l.currency())
	if s.N > 0 && s.Min < s.Max {
		c.Range = spanWords(show(c.P10, l.currency()), show(c.P90, l.currency()))
	}
	return c
}
