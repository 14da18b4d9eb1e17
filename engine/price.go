package engine

import (
	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// A sheet says what it sells by the names it gives, and needs no mark for it.
//
// The sizes are the rows of the first table that has the columns
//
//	size    what one holds, a volume for each: fl oz/jar
//	price   what is asked for one: $/jar
//	filled  how many are filled: jar
//
// with one count, here the jar, in all three. The money by the jar that a further
// column "costs" reads (the empty jar, the label) is what stands around the syrup;
// without that column it is every other column in $/jar whose name has no "price"
// in it. A column "share" is the mix. A sheet with one size only may instead have a
// line "price" in $/can, a line in a volume for each can, and a line that fills cans
// with jars_filled; what stands around the syrup is then whatever by the can the line
// of what is paid out reads.
//
// Outlets are the rows of the first table with the columns "level" (the share of the
// price that is asked there) and "taken" (the money); "part" and "fees" are read when
// they are there, and a line called after an outlet, "market_cost", is its own cost.
//
// What the jars have to carry is read off lines by the names in [priceRoles]. Any
// may be missing, and then the card says what it does not count; PriceOptions.Roles
// names another line for one.

// PriceOptions say what to put on a price card.
type PriceOptions struct {
	Options
	// Table is the table of sizes; "" finds it.
	Table string
	// Roles name lines for what the card reads, by role: {"hours": "my_hours"}.
	Roles map[string]string
	// Changes are tried, and what they do to the season is told.
	Changes []sheet.Edit
	// Wage, when not nil, is the money an hour that prices are to pay.
	Wage *float64
	// State is the state whose published prices stand beside the others'; "" none.
	State string
}

// PriceCard says what each size costs and leaves, and what a change of price
// does. The error is a diag.Diagnostic for a sheet that sells nothing that can be
// recognised and for a question that cannot be asked, or columns.ErrStopped.
func (b *Book) PriceCard(o PriceOptions) (*PriceCard, error) {
	p, err := b.newPricing(o)
	if err != nil {
		return nil, err
	}
	reference, err := p.reference()
	if err != nil {
		return nil, err
	}
	card := &PriceCard{Title: b.sheet.Title, Money: b.sheet.Money, Seasons: p.seasons.N, Seed: p.seasons.Seed, Table: p.found.table,
		Label: p.found.label, NotCounted: append([]string{}, p.found.notCounted...), Warnings: diag.List{}, Reference: reference}
	r, err := p.run(b)
	if err != nil {
		return nil, err
	}
	p.base = r
	seasons, likely := p.accounts(p.drawn(b, r)), p.accounts(p.atLikely())
	card.Sizes = p.sizes(seasons, likely)
	card.Season = p.season(seasons, likely)
	card.Ladder, card.Warnings = p.ladder(seasons, likely)
	card.Warnings = append(card.Warnings, append(p.mixWarnings(b), p.emptyWarnings(seasons)...)...)
	card.Outlets = p.outlets(seasons, likely)
	card.SalesAnswer, card.SalesNote = p.salesAnswer()
	if card.Tenths, err = p.tenths(); err != nil {
		return nil, err
	}
	if len(o.Changes) > 0 {
		if card.Change, err = p.change(card); err != nil {
			return nil, err
		}
	}
	if o.Wage != nil {
		if card.Wage, err = p.wage(); err != nil {
			return nil, err
		}
	}
	b.last, p.done = p.base, p.of
	return card, p.tell()
}

// pricing is a price card under way.
type pricing struct {
	book    *Book
	o       PriceOptions
	found   *priceSheet
	seasons columns.Seasons
	base    *run
	// done and of count runs, for telling progress.
	done, of int
	money    units.Unit // the sheet's, for one
	gallon   units.Unit
	hour     units.Unit
	ounce    units.Unit
}

func (b *Book) newPricing(o PriceOptions) (*pricing, error) {
	seasons, err := b.seasons(o.Options)
	if err != nil {
		return nil, err
	}
	if seasons.N > columns.MostKept {
		return nil, diag.Diagnostic{Code: diag.TooMany, Severity: diag.Error, Message: "more seasons than a price card is worked over",
			Hint: "draw " + units.Number(columns.MostKept, units.One()) + " or fewer"}
	}
	if o.Wage != nil && !(*o.Wage > 0 && *o.Wage < 1e9) {
		return nil, diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, Message: "an hour is paid more than nothing", Hint: "ask for a wage such as 15"}
	}
	p := &pricing{book: b, o: o, seasons: seasons, money: b.unit("$"), gallon: b.unit("gal"), hour: b.unit("h"), ounce: b.unit("fl oz")}
	if p.found, err = p.find(); err != nil {
		return nil, err
	}
	n := len(p.found.rows)
	p.of = 2 + n
	if len(o.Changes) > 0 {
		p.of++
	}
	if o.Wage != nil {
		p.of += (n + 1) * 30 // as many as a search usually takes
	}
	return p, nil
}

// unit reads a unit text of our own.
func (b *Book) unit(text string) units.Unit {
	u, err := units.Parse(text, b.sheet.Money)
	if err != nil {
		panic("engine: the price card has the unit " + text)
	}
	return u
}

// run works a form of the book. Progress is told run by run, as if each worked
// all its seasons; how many runs there will be is known only about.
func (p *pricing) run(b *Book) (*run, error) {
	if p.base != nil {
		b.last = p.base
	}
	r, err := b.run(p.seasons, nil)
	if err != nil {
		return nil, err
	}
	p.done = min(p.done+1, p.of-1)
	return r, p.tell()
}

func (p *pricing) tell() error {
	if p.o.Progress != nil && !p.o.Progress(p.done*p.seasons.N, p.of*p.seasons.N) {
		return columns.ErrStopped
	}
	return nil
}

// source gives a slot's numbers in a unit of its dimension: a season each, or one
// number at the likely numbers.
type source func(slot int, unit units.Unit) []float64

func (p *pricing) drawn(b *Book, r *run) source {
	return func(slot int, unit units.Unit) []float64 {
		col := make([]float64, p.seasons.N)
		r.result.Columns[slot].Fill(col, 0)
		factor, _, _ := units.Conversion(b.plan.Slots[slot].Unit, unit) // finding the sizes has seen to its dimension
		for i := range col {
			col[i] *= factor
		}
		return col
	}
}

func (p *pricing) atLikely() source {
	likely := outcome.AtLikely(p.book.plan)
	return func(slot int, unit units.Unit) []float64 {
		x, _ := units.Convert(likely[slot], p.book.plan.Slots[slot].Unit, unit)
		return []float64{x}
	}
}
