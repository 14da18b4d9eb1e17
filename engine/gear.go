package engine

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/trade"
	"thawbook/engine/units"
)

// Gear weighs what each piece of gear saves against what it costs, in every
// drawn season: see [GearQuestion] for how a sheet says it.
//
// The error is a diag.Diagnostic for a question that cannot be asked of the
// sheet, or columns.ErrStopped.
func (b *Book) Gear(q GearQuestion) (*GearList, error) {
	s, err := b.keptSeasons(q.Options)
	if err != nil {
		return nil, err
	}
	g := &gearing{b: b, n: s.N, list: &GearList{Title: b.sheet.Title, Seasons: s.N, Seed: s.Seed, Pieces: []GearPiece{}, Silent: []string{}, Warnings: diag.List{}}}
	tables := g.tables()
	if len(tables) == 0 {
		return nil, diag.Diagnostic{Code: diag.NoneMarked, Severity: diag.Error, Message: "no table says what gear saves",
			Hint: "give the table of gear the columns price, life and saves_money or saves_hours"}
	}
	if g.run, err = b.run(s, q.Progress); err != nil {
		return nil, err
	}
	if err := g.terms(q); err != nil {
		return nil, err
	}
	for _, t := range tables {
		for _, row := range t.Rows {
			g.row(t, row)
		}
	}
	g.list.Warnings.Sort()
	g.list.Paragraph = g.paragraph()
	return g.list, nil
}

// gearing is the work under way.
type gearing struct {
	b    *Book
	run  *run
	n    int
	list *GearList
	// rate is a share a year, worth money an hour, by season; worth is nil when
	// hours have none.
	rate, worth func(k int) float64
}

// tables are those that say what gear saves.
func (g *gearing) tables() []*sheet.Table {
	var out []*sheet.Table
	for _, chapter := range g.b.sheet.Chapters {
		for _, t := range chapter.Tables {
			has := map[string]bool{}
			for _, c := range t.Columns {
				has[c.ID] = true
			}
			if has["price"] && has["life"] && (has["saves_money"] || has["saves_hours"]) {
				out = append(out, t)
			}
		}
	}
	return out
}

// terms settles what money and hours are reckoned at.
func (g *gearing) terms(q GearQuestion) error {
	perHour := g.currency().Div(unitOf("h"))
	worth, term, err := g.term(q.Worth, "worth", perHour)
	if err != nil {
		return err
	}
	if worth != nil {
		g.worth, g.list.Worth = worth, term
	}
	rate, term, err := g.term(q.Rate, "rate", unitOf("%"))
	if err != nil {
		return err
	}
	g.rate, g.list.Rate = func(int) float64 { return 0 }, GearTerm{Label: "no rate", Shown: "0 %"}
	if rate != nil {
		g.rate, g.list.Rate = func(k int) float64 { return rate(k) / 100 }, *term
	}
	return nil
}

// term reads a number, or the line of that id, in a unit; nil when neither the
// question nor the sheet has it. A bare number for a rate is a share.
func (g *gearing) term(asked, usual string, unit units.Unit) (func(k int) float64, *GearTerm, error) {
	if x, err := strconv.ParseFloat(strings.TrimSpace(asked), 64); err == nil {
		if unit.IsPlain() {
			x /= unit.Scale()
		}
		if !(x >= 0) || math.IsInf(x, 0) {
			return nil, nil, *badQuestion("", "give a number of 0 or more", "%s of %s makes no sense", usual, asked)
		}
		return func(int) float64 { return x }, &GearTerm{Label: usual, Shown: units.Show(x, unit)}, nil
	}
	id := asked
	if id == "" {
		if id = usual; g.b.plan.Find(id) < 0 {
			return nil, nil, nil
		}
	}
	slot, wrong := g.b.numberLine(id)
	if wrong != nil {
		return nil, nil, *wrong
	}
	factor, _, ok := units.Conversion(slot.Unit, unit)
	if !ok {
		return nil, nil, diag.Diagnostic{Code: diag.UnitMismatch, Severity: diag.Error, About: id, Place: slot.Line.At("unit"),
			Message: fmt.Sprintf("%q is in %q and cannot be the %s, which is in %q", id, slot.Line.Unit, usual, unit), Hint: "name another line, or give a number"}
	}
	c := g.run.at(id)
	return func(k int) float64 { return c.At(k) * factor },
		&GearTerm{ID: id, Label: slot.Line.Label, Shown: units.Show(g.run.summary(c).P50*factor, unit)}, nil
}

func (g *gearing) currency() units.Unit { return currencyOf(g.b.sheet) }

// currencyOf is one of a sheet's money.
func currencyOf(s *sheet.Sheet) units.Unit {
	u, err := units.Parse("$", s.Money)
	if err != nil {
		return units.One() // a sheet whose money cannot be read has no prices either
	}
	return u
}

// unitOf is a unit known to all sheets.
func unitOf(text string) units.Unit {
	u, err := units.Parse(text, "")
	if err != nil {
		panic("engine: " + text + " is no unit: " + err.Error())
	}
	return u
}

// row weighs one piece.
func (g *gearing) row(t *sheet.Table, row sheet.Row) {
	w := weighed{n: g.n}
	for _, c := range []struct {
		id string
		in []units.Unit
		to *func(k int) float64
	}{
		{"price", []units.Unit{g.currency()}, &w.price},
		{"life", []units.Unit{unitOf("year")}, &w.life},
		{"left_over", []units.Unit{units.One()}, &w.leftOver},
		{"saves_money", []units.Unit{g.currency(), g.currency().Div(unitOf("year"))}, &w.money},
		{"saves_hours", []units.Unit{unitOf("h"), unitOf("h/year")}, &w.hours},
	} {
		*c.to = func(int) float64 { return 0 }
		if i := g.b.plan.Find(t.ID + "." + row.ID + "." + c.id); i >= 0 {
			if *c.to = g.cell(g.b.plan.Slots[i], c.in); *c.to == nil {
				return
			}
		}
	}
	if w.savesNothing() {
		g.list.Silent = append(g.list.Silent, row.Label)
		return
	}
	piece := GearPiece{ID: t.ID + "." + row.ID, Label: row.Label, Note: row.Note}
	w.weigh(g, &piece)
	g.list.Pieces = append(g.list.Pieces, piece)
}

// cell is the number of a cell in each season, in the first of the units that is
// of its kind; nil, with a warning, when there is none.
func (g *gearing) cell(slot *formula.Slot, in []units.Unit) func(k int) float64 {
	warn := func(code diag.Code, hint, format string, args ...any) func(int) float64 {
		g.list.Warnings = append(g.list.Warnings, diag.Diagnostic{Code: code, Severity: diag.Warning, About: slot.ID(), Place: slot.Line.Place,
			Message: fmt.Sprintf(format, args...), Hint: hint})
		return nil
	}
	c := g.run.at(slot.ID())
	if c == nil {
		return warn(diag.WaitsFor, "put right what is wrong with it first", "%q cannot be reckoned", slot.ID())
	}
	for _, unit := range in {
		// A time over a time is a bare number, and so are many things that are
		// no hours a year.
		hours := unit.IsPlain() && unit.String() != "1"
		if factor, _, ok := units.Conversion(slot.Unit, unit); ok && slot.Kind == formula.Number && (!hours || strings.Contains(slot.Unit.String(), "/")) {
			return func(k int) float64 { return c.At(k) * factor }
		}
	}
	return warn(diag.UnitMismatch, "give the column a unit in "+in[0].String(), "%q is in %q", slot.ID(), slot.Line.Unit)
}

// weighed are the numbers of one piece by season: money, years, a share, money
// and hours a year.
type weighed struct {
	n                                   int
	price, life, leftOver, money, hours func(k int) float64
}

func (w weighed) savesNothing() bool {
	for k := range w.n {
		if w.money(k) != 0 || w.hours(k) != 0 {
			return false
		}
	}
	return true
}

// weigh fills in the piece.
func (w weighed) weigh(g *gearing, p *GearPiece) {
	money := g.currency()
	share := func(k int) float64 { return trade.YearlyShare(w.price(k), w.life(k), g.rate(k), w.leftOver(k)) }
	p.Price, p.Life = g.over(w.price, money), g.over(w.life, unitOf("year"))
	p.SavesMoney, p.SavesHours = g.over(w.money, money), g.over(w.hours, unitOf("h"))
	p.YearShare = g.over(share, money)
	p.Money = g.verdict(w, w.money, share)
	if g.worth != nil {
		both := g.verdict(w, func(k int) float64 { return w.money(k) + w.hours(k)*g.worth(k) }, share)
		p.WithHours = &both
	}
	cost := g.over(func(k int) float64 {
		if w.hours(k) <= 0 {
			return math.NaN()
		}
		return (share(k) - w.money(k)) / w.hours(k)
	}, money.Div(unitOf("h")))
	if cost.P50 != nil {
		p.HourCosts = &cost
	}
	for k := range w.n {
		if math.IsNaN(share(k) + w.money(k) + w.hours(k)) {
			p.Missing++
		}
	}
	p.Sentence = g.sentence(p)
}

// verdict weighs a yearly saving against the piece.
func (g *gearing) verdict(w weighed, saving, share func(k int) float64) GearVerdict {
	v := GearVerdict{Leaves: g.over(func(k int) float64 { return saving(k) - share(k) }, g.currency())}
	v.Years = g.over(func(k int) float64 { return trade.YearsToRepay(w.price(k), saving(k), g.rate(k)) }, unitOf("year"))
	repays, of := 0, 0
	for k := range g.n {
		switch s, c := saving(k), share(k); {
		case math.IsNaN(s + c):
			continue
		case s >= c-smidgen*math.Abs(c):
			repays++
		}
		of++
	}
	v.Repays = number(float64(repays) / float64(of))
	v.ShownRepays = seasonsOfTen(v.Repays)
	return v
}

// over is a number over the seasons. An infinity, a time that never comes, is
// longer than any number; percentiles are therefore drawn seasons, with nothing
// put between two of them.
func (g *gearing) over(f func(k int) float64, unit units.Unit) GearRange {
	col := make([]float64, g.n)
	numbers := 0
	for k := range col {
		if col[k] = f(k); !math.IsNaN(col[k]) {
			numbers++
		}
	}
	at := func(share float64) float64 {
		return outcome.Kth(col, max(1, int(math.Ceil(share*float64(numbers)-smidgen))), false, g.run.scratch)
	}
	low, middle, high := at(0.1), at(0.5), at(0.9)
	r := GearRange{P10: number(low), P50: number(middle), P90: number(high), Shown: units.Show(middle, unit)}
	if least, most := at(0), at(1); least < most {
		r.Range = spanWords(units.Show(low, unit), units.Show(high, unit))
	}
	return r
}
