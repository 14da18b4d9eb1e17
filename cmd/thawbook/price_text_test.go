package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine"
)

func money(shown string) engine.Amount {
	x := 1.0
	return engine.Amount{Likely: &x, Shown: engine.ShownAmount{Likely: shown, Low: shown, Middle: shown, High: shown}}
}

func drawnCard(c *engine.PriceCard) string {
	var b strings.Builder
	priceCard{w: &b, card: c}.write()
	return b.String()
}

// cardOf is a card of sizes with nothing but a price and what is left.
func cardOf(labels ...string) *engine.PriceCard {
	c := &engine.PriceCard{Title: "T", Label: "Sizes", SalesNote: "as many are sold"}
	for _, label := range labels {
		volume := money("$9.00/gal")
		volume.Unit = "$/gal"
		c.Sizes = append(c.Sizes, engine.PricedSize{ID: label, Label: label, Size: money("8 fl oz/jar"), Price: money("$1.00/jar"),
			Brings: money("$1.00/jar"), Left: money("$0.50/jar"), ByVolume: volume})
		c.Ladder = append(c.Ladder, engine.Rung{ID: label, Label: label, ByVolume: volume})
	}
	return c
}

func TestCardLeavesOutRowsNobodyHas(t *testing.T) {
	got := drawnCard(cardOf("Quart", "Pint"))
	assert.Regexp(t, `(?m)^price asked {20}\$1\.00 {6}\$1\.00$`, got)
	assert.NotContains(t, got, "hours in it")
	assert.NotContains(t, got, "fees and selling")
	assert.NotContains(t, got, "Where it is sold")
	assert.NotContains(t, got, "Prices that pay")
}

func TestCardOfManySizesFits(t *testing.T) {
	got := drawnCard(cardOf("One", "Two", "Three", "Four", "Five", "Six", "A size whose name goes on and on without an end"))
	n, line := widest(got)
	assert.LessOrEqual(t, n, width, line)
	assert.Equal(t, 2, strings.Count(got, "price asked"), "in two blocks")
	assert.Contains(t, got, "A size whose name…")
}

func TestCardCannotBeRecoloured(t *testing.T) {
	c := cardOf("Quart\x1b[31m", "Pint")
	c.Sizes[0].Parts = []engine.NamedAmount{{Label: "Cap\x1b[0m", Amount: money("$0.10/jar")}}
	c.Season = []engine.NamedAmount{{Label: "Left\x07", Amount: money("$5")}}
	c.NotCounted = []string{"no \x1b line"}
	got := drawnCard(c)
	assert.NotContains(t, got, "\x1b")
	assert.NotContains(t, got, "\x07")
}

func TestShort(t *testing.T) {
	for shown, want := range map[string]string{"$24.00/jar": "$24.00", "32 fl oz/jar": "32 fl oz", "$3": "$3", "no number": "no number", "$2.00/h": "$2.00"} {
		assert.Equal(t, want, short(shown))
	}
}

func TestBar(t *testing.T) {
	half, none := 0.5, -1.0
	assert.Equal(t, "━━━━━", bar(&half, 1, 10))
	assert.Empty(t, bar(nil, 1, 10))
	assert.Empty(t, bar(&half, 0, 10))
	assert.Empty(t, bar(&none, 1, 10))
}

func TestCased(t *testing.T) {
	assert.Equal(t, "écu", lower("Écu"))
	assert.Equal(t, "As many", upper("as many"))
	assert.Empty(t, upper(""))
}

func TestScaledWords(t *testing.T) {
	factor := 2.0
	found := engine.ScaledPrices{Found: true, Several: true, Factor: &factor, Shown: "× 2", Prices: []engine.ScaledPrice{
		{Label: "Quart", Shown: "$40.00/jar"}, {Label: "Pint", Shown: "$22.00/jar"}}}
	assert.Equal(t, "× 2: quart $40.00, pint $22.00 (not the only price that does)", scaledWords(found))
	assert.Equal(t, "cannot: no price does it", scaledWords(engine.ScaledPrices{Shown: "no price does it"}))
}
