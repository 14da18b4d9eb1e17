package main

import (
	"fmt"
	"strings"

	"thawbook/engine"
)

// outlets shows what one of each size leaves for the hours where it is sold.
func (p priceCard) outlets() {
	if len(p.card.Outlets) == 0 {
		return
	}
	p.title("Where it is sold, at the likely numbers")
	for from := 0; from < len(p.card.Sizes); from += aBlock {
		sizes := p.card.Sizes[from:min(from+aBlock, len(p.card.Sizes))]
		var heads []string
		for _, s := range sizes {
			heads = append(heads, s.Label)
		}
		p.heads(heads)
		for _, o := range p.card.Outlets {
			p.outlet(o, from, len(sizes))
		}
	}
}

func (p priceCard) outlet(o engine.PricedOutlet, from, n int) {
	fmt.Fprintln(p.w, wrap(fmt.Sprintf("%s, at %s of the price: takes %s and keeps %s of it behind its own costs",
		o.Label, o.Level.Shown.Likely, o.Taken.Shown.Likely, o.Kept.Shown.Likely), width, ""))
	var prices, lefts string
	for _, s := range o.Sizes[from : from+n] {
		prices += right(short(s.Price.Shown.Likely), cellWide)
		lefts += right(short(s.Left.Shown.Likely), cellWide)
	}
	fmt.Fprintln(p.w, trimRight(left("  price there", nameWide)+prices))
	fmt.Fprintln(p.w, trimRight(left("  left for the hours", nameWide)+lefts))
}

func (p priceCard) tenths() {
	p.title("A price one tenth higher: what the season gains, and its range")
	fmt.Fprintln(p.w, wrap(upper(p.card.SalesNote)+".", width, "  "))
	for _, m := range p.card.Tenths {
		if m.Left != nil {
			p.amount("  ", m.Label, *m.Left)
		} else if m.Takings != nil {
			p.amount("  ", m.Label, *m.Takings)
		}
	}
}

// change shows each outcome before and after, and what lies between.
func (p priceCard) change() {
	c := p.card.Change
	if c == nil {
		return
	}
	p.title("If this is changed")
	for _, l := range c.Lines {
		fmt.Fprintln(p.w, wrap(fmt.Sprintf("%s: from %s to %s", l.Label, l.Was, l.Is), width, "  "))
	}
	p.warnings(c.Warnings)
	fmt.Fprintln(p.w)
	for _, o := range c.Outcomes {
		p.amount("  ", o.Label, o.Before)
		p.amount("    ", "changed", o.After)
		p.amount("    ", "difference", o.Difference)
		if spread(o.Difference) != "" {
			fmt.Fprintln(p.w, wrap("more in "+o.ShownMore, width, "    "))
		}
	}
}

// wage shows the prices that pay it.
func (p priceCard) wage() {
	w := p.card.Wage
	if w == nil {
		return
	}
	p.title("Prices that pay " + w.ShownWage)
	fmt.Fprintln(p.w, wrap(fmt.Sprintf("now: %s in the middle season, %s to %s in 8 of 10", w.Now.Shown.Middle, w.Now.Shown.Low, w.Now.Shown.High), width, "  "))
	for _, answer := range []struct {
		lead string
		engine.WageAnswer
	}{{"In the middle season", w.Middle}, {"In 9 seasons of 10", w.Bad}} {
		fmt.Fprintf(p.w, "\n  %s\n", answer.lead)
		all := "all prices "
		if len(p.card.Sizes) == 1 {
			all = "the price "
		}
		fmt.Fprintln(p.w, wrap(all+scaledWords(answer.All), width, "    "))
		for _, one := range answer.Each {
			fmt.Fprintln(p.w, wrap(p.label(one.ID)+" alone "+scaledWords(one), width, "    "))
		}
	}
	if !p.card.SalesAnswer {
		fmt.Fprintln(p.w, wrap("This counts on selling as many at any price.", width, "  "))
	}
}

func scaledWords(s engine.ScaledPrices) string {
	if !s.Found {
		return "cannot: " + s.Shown
	}
	var prices []string
	for _, price := range s.Prices {
		text := short(price.Shown)
		if len(s.Prices) > 1 {
			text = lower(price.Label) + " " + text
		}
		prices = append(prices, text)
	}
	text := s.Shown + ": " + strings.Join(prices, ", ")
	if s.Several {
		text += " (not the only price that does)"
	}
	return text
}

func (p priceCard) label(id string) string {
	for _, s := range p.card.Sizes {
		if s.ID == id {
			return s.Label
		}
	}
	return id
}

// reference shows what others got.
func (p priceCard) reference() {
	r := p.card.Reference
	if r == nil {
		return
	}
	p.title(fmt.Sprintf("What others got in %d", r.Year))
	fmt.Fprintln(p.w, wrap(r.Note, width, "  "))
	for _, s := range r.Sizes {
		if s.Retail == nil {
			continue
		}
		text := fmt.Sprintf("%s at retail: %s, the middle of %d states (%s)", s.Container, s.Retail.ShownMedian, s.Retail.States, s.Retail.ShownRange)
		if s.ShownInState != "" {
			text += fmt.Sprintf("; %s in %s", s.ShownInState, r.State)
		}
		if s.Wholesale != nil {
			text += "; " + s.Wholesale.ShownMedian + " wholesale"
		}
		fmt.Fprintln(p.w, wrap(text, width, "  "))
	}
	if n := len(r.AllSales); n > 0 {
		first, last := r.AllSales[0], r.AllSales[n-1]
		fmt.Fprintln(p.w, wrap(fmt.Sprintf("all US sales, bulk and all: %s in %d, %s in %d", last.Shown, last.Year, first.Shown, first.Year), width, "  "))
	}
	fmt.Fprintln(p.w, wrap("from: "+r.Source, width, "  "))
}

func (p priceCard) notes() {
	if len(p.card.NotCounted) == 0 {
		return
	}
	p.title("Not counted")
	for _, note := range p.card.NotCounted {
		fmt.Fprintln(p.w, wrap(note, width, "  "))
	}
}
