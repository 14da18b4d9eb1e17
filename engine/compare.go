package engine

import (
	"fmt"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/units"
)

// Compare lives the same seasons through two or more scenarios of one sheet and
// says how each differs from the first. Seasons and seed are the first's unless
// o gives others; a guess that two scenarios share is drawn alike in both, so
// that what they share cancels and the difference has a range of its own.
//
// What explains a difference is told of its mean, not of its middle: means sum,
// middles do not.
//
// The error is a diag.Diagnostic when there is nothing to compare, or
// columns.ErrStopped.
func Compare(books []*Book, o CompareOptions) (*Comparison, error) {
	c, err := newComparing(books, o)
	if err != nil {
		return nil, err
	}
	for k, b := range c.books {
		if b.last == nil || b.last.result.Seasons != c.seasons {
			b.last = c.books[0].last // most of its columns are the first's
		}
		r, err := b.run(c.seasons, c.progress())
		if err != nil {
			return nil, err
		}
		c.runs[k] = r
		for _, o := range c.outcomes {
			o.values[k] = r.valuesIn(o.id, o.unit())
		}
	}
	for k := 1; k < len(c.books); k++ {
		if err := c.explain(k); err != nil {
			return nil, err
		}
	}
	// Not every run that was reckoned with may have been needed.
	if tell, all := c.options.Progress, c.of*c.seasons.N; tell != nil && !tell(all, all) {
		return nil, columns.ErrStopped
	}
	return c.tell(), nil
}

// comparing is a comparison under way. Slices of books' things have one entry a
// book.
type comparing struct {
	books    []*Book
	options  CompareOptions
	seasons  columns.Seasons
	outcomes []*beside
	warnings diag.List
	runs     []*run
	changes  []changeList
	found    []map[*beside]*breakdown
	done, of int // runs, for telling progress
	room     []float64
}

// beside is one outcome in every book.
type beside struct {
	id, chapter, better string
	slots               []*formula.Slot
	values              [][]float64 // by book, in the first's unit
}

// unit is the first book's, in which the outcome is compared.
func (o *beside) unit() units.Unit { return o.slots[0].Unit }

// valuesIn are a line's seasons in a unit. They are the run's own when nothing
// has to be converted, so they must not be changed; nil when the line is not
// there, cannot be reckoned, or has no such unit.
func (r *run) valuesIn(id string, u units.Unit) []float64 {
	c := r.at(id)
	if c == nil {
		return nil
	}
	factor, offset, ok := units.Conversion(r.result.Plan.Slots[r.result.Plan.Find(id)].Unit, u)
	if !ok {
		return nil
	}
	if factor == 1 && offset == 0 && !c.Steady {
		return c.Values
	}
	out := make([]float64, r.result.Seasons.N)
	c.Fill(out, 0)
	for i := range out {
		out[i] = out[i]*factor + offset
	}
	return out
}

func newComparing(books []*Book, o CompareOptions) (*comparing, error) {
	if err := comparable(books); err != nil {
		return nil, err
	}
	s, err := books[0].seasons(o.Options)
	if err != nil {
		return nil, err
	}
	if s.N > columns.MostKept {
		return nil, tooManySeasons()
	}
	c := &comparing{books: books, options: o, seasons: s, runs: make([]*run, len(books)),
		changes: make([]changeList, len(books)), found: make([]map[*beside]*breakdown, len(books)), of: len(books),
		room: make([]float64, 2*s.N)}
	if err := c.choose(); err != nil {
		return nil, err
	}
	for k := 1; k < len(books); k++ {
		c.changes[k] = changesBetween(books[0].sheet, books[k].sheet)
		c.of += c.changes[k].runs()
	}
	return c, nil
}

func tooManySeasons() error {
	return diag.Diagnostic{Code: diag.TooMany, Severity: diag.Error, Message: "more seasons than can be set side by side",
		Hint: fmt.Sprintf("compare over %s or fewer", units.Number(columns.MostKept, units.One()))}
}

// comparable tells what keeps books from being compared at all.
func comparable(books []*Book) error {
	if len(books) < 2 {
		return incomparable("give two or more scenarios of one sheet", "there is nothing to compare with")
	}
	for _, b := range books[1:] {
		if b.sheet.Money != books[0].sheet.Money {
			return incomparable("write both in one currency; there is no exchange rate", "%q counts in %s and %q in %s",
				books[0].name, books[0].sheet.Money, b.name, b.sheet.Money)
		}
	}
	return nil
}

func incomparable(hint, format string, args ...any) diag.Diagnostic {
	return diag.Diagnostic{Code: diag.NotComparable, Severity: diag.Error, Message: fmt.Sprintf(format, args...), Hint: hint}
}

// progress shares out what is told of the whole among its runs.
func (c *comparing) progress() func(done, total int) bool {
	tell, before := c.options.Progress, c.done
	c.done++
	if tell == nil {
		return nil
	}
	return func(done, total int) bool { return tell(before*total+done, c.of*total) }
}

// choose finds the outcomes. A headline that cannot be compared is warned of,
// a line that was asked for by name is an error.
func (c *comparing) choose() error {
	first := c.books[0]
	chapters := map[string]string{}
	var ids []string
	first.eachSlot(func(i int, chapter string) {
		id := first.plan.Slots[i].ID()
		chapters[id] = chapter
		if c.headline(id) {
			ids = append(ids, id)
		}
	})
	asked := len(c.options.On) > 0
	if asked {
		ids = c.options.On
	}
	for _, id := range ids {
		o, err := findBeside(c.books, id)
		if err != nil && asked {
			return *err
		}
		if err != nil {
			err.Severity = diag.Warning
			c.warnings = append(c.warnings, *err)
			continue
		}
		o.chapter = chapters[id]
		c.outcomes = append(c.outcomes, o)
	}
	if len(c.outcomes) == 0 {
		return incomparable("compare scenarios of one sheet, or name lines that all of them have",
			"%q and the others have no headline line in common", first.name)
	}
	return nil
}

// headline says whether any of the books shows the line first.
func (c *comparing) headline(id string) bool {
	for _, b := range c.books {
		if i := b.plan.Find(id); i >= 0 && b.plan.Slots[i].Line.Headline != nil {
			return true
		}
	}
	return false
}

// findBeside is the line of that id in every book, or why it cannot be compared.
func findBeside(books []*Book, id string) (*beside, *diag.Diagnostic) {
	o := &beside{id: id, values: make([][]float64, len(books))}
	for _, b := range books {
		slot, err := b.numberLine(id)
		if err != nil {
			return nil, err
		}
		o.slots = append(o.slots, slot)
		if h := slot.Line.Headline; h != nil && o.better == "" {
			o.better = h.Better
		}
		if _, _, ok := units.Conversion(slot.Unit, o.slots[0].Unit); !ok {
			return nil, &diag.Diagnostic{Code: diag.UnitMismatch, Severity: diag.Error, About: id, Place: slot.Line.At("unit"),
				Message: fmt.Sprintf("%q is in %q in %q and in %q in %q", id, o.slots[0].Line.Unit, books[0].name, slot.Line.Unit, b.name),
				Hint:    "give both a unit of one kind"}
		}
	}
	return o, nil
}

// numberLine is the slot of a line that comes to a number.
func (b *Book) numberLine(id string) (*formula.Slot, *diag.Diagnostic) {
	i := b.plan.Find(id)
	if i < 0 {
		hint := diag.Nearest(id, b.lineIDs())
		if hint == "" {
			hint = "name one of its lines by its id, or a cell as table.row.column"
		}
		return nil, &diag.Diagnostic{Code: diag.UnknownName, Severity: diag.Error, About: id,
			Message: fmt.Sprintf("no line of %q is called %q", b.name, id), Hint: hint}
	}
	slot := b.plan.Slots[i]
	switch {
	case slot.Kind != formula.Number && !slot.Broken:
		return nil, &diag.Diagnostic{Code: diag.NotANumber, Severity: diag.Error, About: id, Place: slot.Line.Place,
			Message: fmt.Sprintf("%q is a choice or a yes or no, not a number", id), Hint: "name a line that comes to a number"}
	case slot.Broken:
		return nil, &diag.Diagnostic{Code: diag.WaitsFor, Severity: diag.Error, About: id, Place: slot.Line.Place,
			Message: fmt.Sprintf("%q cannot be reckoned in %q", id, b.name), Hint: "put right what is wrong with that sheet first"}
	}
	return slot, nil
}

func (b *Book) lineIDs() []string {
	var ids []string
	for _, slot := range b.plan.Slots {
		ids = append(ids, slot.ID())
	}
	return ids
}
