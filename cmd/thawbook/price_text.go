package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// priceCard lays a price card out as text.
type priceCard struct {
	w    io.Writer
	on   ink
	card *engine.PriceCard
}

func (p priceCard) write() {
	c := p.card
	fmt.Fprintln(p.w, p.on.bold(wrap(c.Title, width, "")))
	fmt.Fprintf(p.w, "%s\n", wrap(fmt.Sprintf("price card: %s; %s seasons drawn, seed %d", c.Label, units.Number(float64(c.Seasons), units.One()), c.Seed), width, ""))
	p.sizes()
	p.ladder()
	p.season()
	p.outlets()
	p.tenths()
	p.change()
	p.wage()
	p.reference()
	p.notes()
}

func (p priceCard) title(text string) {
	fmt.Fprintf(p.w, "\n%s\n", p.on.bold(wrap(text, width, "")))
}

// A block of sizes side by side: names take nameWide columns, each size cellWide.
const (
	nameWide = 25
	cellWide = 11
	aBlock   = (width - nameWide) / cellWide
)

// sizes shows where the money for one of each goes, some sizes at a time.
func (p priceCard) sizes() {
	p.title("Where the money for one goes, at the likely numbers")
	for from := 0; from < len(p.card.Sizes); from += aBlock {
		if from > 0 {
			fmt.Fprintln(p.w)
		}
		p.block(p.card.Sizes[from:min(from+aBlock, len(p.card.Sizes))])
	}
}

func (p priceCard) block(sizes []engine.PricedSize) {
	var heads []string
	for _, s := range sizes {
		heads = append(heads, s.Label)
	}
	p.heads(heads)
	for _, r := range cardRows(sizes[0]) {
		p.cells(r, sizes)
	}
}

// cardRow is one line of a block: a number of each size.
type cardRow struct {
	name  string
	of    func(engine.PricedSize) *engine.Amount
	shown func(engine.ShownAmount) string
}

// cardRows are the lines of a block. Where the money goes adds up only at the
// likely numbers; what is left has its range over the seasons.
func cardRows(first engine.PricedSize) []cardRow {
	likely := func(s engine.ShownAmount) string { return s.Likely }
	rows := []cardRow{
		{"holds", func(s engine.PricedSize) *engine.Amount { return &s.Size }, likely},
		{"price asked", func(s engine.PricedSize) *engine.Amount { return &s.Price }, likely},
		{"brings, all told", func(s engine.PricedSize) *engine.Amount { return &s.Brings }, likely},
		{"− fees and selling", func(s engine.PricedSize) *engine.Amount { return s.Selling }, likely},
	}
	for i, part := range first.Parts {
		rows = append(rows, cardRow{"− " + lower(part.Label), func(s engine.PricedSize) *engine.Amount { return partOf(s, i) }, likely})
	}
	rows = append(rows, cardRow{"− the syrup in it", func(s engine.PricedSize) *engine.Amount { return s.Syrup }, likely})
	rows = append(rows, ranged("left for the hours", func(s engine.PricedSize) *engine.Amount { return &s.Left })...)
	rows = append(rows,
		cardRow{"hours in it", func(s engine.PricedSize) *engine.Amount { return s.Hours }, likely},
		cardRow{"− what they are worth", func(s engine.PricedSize) *engine.Amount { return s.Worked }, likely},
		cardRow{"left after our hours", func(s engine.PricedSize) *engine.Amount { return s.After }, likely})
	_, volume, _ := strings.Cut(first.ByVolume.Unit, "/")
	rows = append(rows, ranged("left for each "+volume, func(s engine.PricedSize) *engine.Amount { return &s.ByVolume })...)
	return append(rows, ranged("left for each hour", func(s engine.PricedSize) *engine.Amount { return s.ByHour })...)
}

// ranged is a number at the likely numbers with the ends of its range below it.
func ranged(name string, of func(engine.PricedSize) *engine.Amount) []cardRow {
	return []cardRow{
		{name, of, func(s engine.ShownAmount) string { return s.Likely }},
		{"  1 season in 10 under", of, func(s engine.ShownAmount) string { return s.Low }},
		{"  middle season", of, func(s engine.ShownAmount) string { return s.Middle }},
		{"  1 season in 10 over", of, func(s engine.ShownAmount) string { return s.High }},
	}
}

func partOf(s engine.PricedSize, i int) *engine.Amount {
	if i >= len(s.Parts) {
		return nil
	}
	return &s.Parts[i].Amount
}

// heads writes names over columns, on as many lines as the longest needs.
func (p priceCard) heads(names []string) {
	var wrapped [][]string
	most := 0
	for _, name := range names {
		lines := strings.Split(wrap(name, cellWide-1, ""), "\n")
		wrapped, most = append(wrapped, lines), max(most, len(lines))
	}
	for i := range most {
		text := left("", nameWide)
		for _, lines := range wrapped {
			word := ""
			if at := i - (most - len(lines)); at >= 0 {
				word = lines[at]
			}
			text += right(word, cellWide)
		}
		fmt.Fprintln(p.w, p.on.bold(trimRight(text)))
	}
}

// cells writes one line of a block; nothing when no size has the number.
func (p priceCard) cells(r cardRow, sizes []engine.PricedSize) {
	text, any := "", false
	for _, s := range sizes {
		cell := ""
		if a := r.of(s); a != nil {
			cell, any = short(r.shown(a.Shown)), true
		}
		text += right(cell, cellWide)
	}
	if !any {
		return
	}
	names := []string{clean(r.name)}
	if columns(r.name) >= nameWide {
		names = strings.Split(wrap(r.name, nameWide-1, ""), "\n")
	}
	for _, part := range names[:len(names)-1] {
		fmt.Fprintln(p.w, part)
	}
	fmt.Fprintln(p.w, trimRight(left(names[len(names)-1], nameWide)+text))
}

// short leaves off what a number is for: "$24.00/jar" reads "$24.00".
func short(shown string) string {
	before, _, _ := strings.Cut(clean(shown), "/")
	return before
}

// ladder draws the price of a volume, largest size first.
func (p priceCard) ladder() {
	if len(p.card.Ladder) < 2 {
		p.warnings(p.card.Warnings)
		return
	}
	_, unit, _ := strings.Cut(p.card.Ladder[0].ByVolume.Unit, "/")
	p.title("The ladder: price of one " + unit)
	most := 0.0
	for _, r := range p.card.Ladder {
		if r.ByVolume.Likely != nil {
			most = math.Max(most, *r.ByVolume.Likely)
		}
	}
	for _, r := range p.card.Ladder {
		text := "  " + left(shortened(clean(r.Label), 18), 18) + right(short(r.ByVolume.Shown.Likely), 8) + "  " + left(bar(r.ByVolume.Likely, most, 20), 20)
		if r.FallsIn != nil {
			text += "  " + r.Shown.Against + " times the largest"
		}
		fmt.Fprintln(p.w, trimRight(text))
		if r.FallsIn != nil && *r.FallsIn > 0 {
			fmt.Fprintln(p.w, wrap("under the size above it in "+r.Shown.FallsIn, width, "    "))
		}
	}
	p.warnings(p.card.Warnings)
}

func bar(x *float64, most float64, n int) string {
	if x == nil || !(most > 0) || *x < 0 {
		return ""
	}
	return strings.Repeat("━", int(math.Round(*x/most*float64(n))))
}

// shortened cuts a name that is too long for its column; it stands in full above.
func shortened(name string, n int) string {
	if columns(name) <= n {
		return name
	}
	return string([]rune(name)[:n-1]) + "…"
}

func (p priceCard) warnings(list diag.List) {
	for _, d := range list {
		text := "! " + d.Message
		if d.Seasons > 0 {
			text += fmt.Sprintf(", in %s of %s seasons", units.Number(float64(d.Seasons), units.One()), units.Number(float64(d.Of), units.One()))
		}
		fmt.Fprintln(p.w, p.on.yellow(wrap(text+": "+d.Hint, width, "  ")))
	}
}

// amount writes a name with its middle and range.
func (p priceCard) amount(indent, name string, a engine.Amount) {
	page{w: p.w, on: p.on}.row(indent, clean(name), right(clean(a.Shown.Middle), 14)+"  "+spread(a))
}

// spread is an amount's range, "" when it is the same in every season.
func spread(a engine.Amount) string {
	return rangeOf(engine.Answer{Shown: engine.Shown{Low: a.Shown.Low, High: a.Shown.High}})
}

func (p priceCard) season() {
	p.title("The season: the middle, and what 8 seasons in 10 fall between")
	for _, a := range p.card.Season {
		p.amount("  ", a.Label, a.Amount)
	}
}

// lower and upper change the first letter, for a label inside a sentence and a
// note that begins one.
func lower(text string) string { return cased(text, unicode.ToLower) }
func upper(text string) string { return cased(text, unicode.ToUpper) }

func cased(text string, to func(rune) rune) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(to(first)) + text[size:]
}
