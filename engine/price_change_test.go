package engine

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

func outcomeOf(t *testing.T, c *PriceChange, id string) ChangedOutcome {
	for _, o := range c.Outcomes {
		if o.ID == id {
			return o
		}
	}
	require.Fail(t, "no outcome "+id)
	return ChangedOutcome{}
}

// TestPriceChange: $3 less on 16 quarts in the middle season is $48 asked, of
// which 80 % came in, less a tenth in fees.
func TestPriceChange(t *testing.T) {
	b := openText(t, jarSheet)
	card := priced(t, b, PriceOptions{Changes: []sheet.Edit{setIs("jars.quart.price", 22)}})
	c := card.Change
	require.NotNil(t, c)
	assert.Equal(t, []ChangedValue{{"jars.quart.price", "Quart, price", "$25.00/jar", "$22.00/jar"}}, c.Lines)
	assert.InDelta(t, -48, *outcomeOf(t, c, "").Difference.P50, 3.01)
	takings, left := outcomeOf(t, c, "takings"), outcomeOf(t, c, "left_gear")
	assert.InEpsilon(t, 0.9**takings.Difference.P50, *left.Difference.P50, 1e-9)
	assert.InDelta(t, 0, *left.More, 0)
	assert.Equal(t, "no season of 10", left.ShownMore)
	for _, o := range c.Outcomes {
		assert.NotEqual(t, "hours", o.ID, "a price does not reach the hours")
	}

	// Before and after are what the two sheets reckon by themselves.
	before := reckoned(t, b, Options{})
	changed, list := b.Try(setIs("jars.quart.price", 22))
	require.Empty(t, list)
	after := reckoned(t, changed, Options{})
	assert.Equal(t, *answerOf(t, before, "left_gear").P50, *left.Before.P50)
	assert.InEpsilon(t, *answerOf(t, after, "left_gear").P50, *left.After.P50, 1e-12)
}

func TestShiftOfTheMix(t *testing.T) {
	b := openText(t, jarSheet)
	card := priced(t, b, PriceOptions{Changes: []sheet.Edit{setIs("jars.pint.share", 70), setIs("jars.quart.share", 30)}})
	assert.Empty(t, card.Change.Warnings)
	assert.Positive(t, *outcomeOf(t, card.Change, "takings").Difference.P50, "pints bring more by the gallon")
	card = priced(t, b, PriceOptions{Changes: []sheet.Edit{setIs("jars.pint.share", 58)}})
	require.Len(t, card.Change.Warnings, 1)
	assert.Equal(t, diag.MixNotWhole, card.Change.Warnings[0].Code)
	assert.Contains(t, card.Change.Warnings[0].Message, "108 %")
}

// TestTenths: where sales do not answer the price, a tenth more on all prices
// brings a tenth more, and the sizes' gains come to the same.
func TestTenths(t *testing.T) {
	b := openText(t, jarSheet)
	card := priced(t, b, PriceOptions{})
	require.Len(t, card.Tenths, 3)
	all := card.Tenths[2]
	assert.Empty(t, all.ID)
	assert.InEpsilon(t, 0.1**namedAmount(t, card, "Takings").Mean, *all.Takings.Mean, 1e-9)
	assert.InEpsilon(t, *all.Takings.Mean, *card.Tenths[0].Takings.Mean+*card.Tenths[1].Takings.Mean, 1e-9)
	assert.InEpsilon(t, 0.9**all.Takings.Mean, *all.Left.Mean, 1e-9, "a tenth goes in fees")

	one := priced(t, openShipped(t, "petite-riviere.yaml"), PriceOptions{Options: Options{Seasons: 500}})
	require.Len(t, one.Tenths, 1)
	assert.Less(t, *one.Tenths[0].Takings.Mean, 0.1**namedAmount(t, one, "Takings").Mean, "fewer are sold")
}

func TestScaledPriceOfEveryKind(t *testing.T) {
	for name, price := range map[string]string{"number": "15", "guess": "{guess: {low: 13, likely: 15, high: 17}, floor: 0}",
		"records": "{records: [13, 15, 20]}", "formula": "{formula: 'jars.quart.price * 0.6'}"} {
		b := openText(t, strings.Replace(jarSheet, "{guess: {low: 13, likely: 15, high: 17}, floor: 0}", price, 1))
		p, err := b.newPricing(PriceOptions{})
		require.NoError(t, err)
		tried := p.scaledBook(p.found.rows[1:], 2)
		require.NotNil(t, tried, name)
		was, is := reckoned(t, b, Options{}), reckoned(t, tried, Options{})
		assert.InEpsilon(t, 2**answerOf(t, was, "jars.pint.price").P50, *answerOf(t, is, "jars.pint.price").P50, 1e-9, name)
	}
	capped := openText(t, strings.Replace(jarSheet, "floor: 0}, empty", "floor: 0, ceiling: 20}, empty", 1))
	p, err := capped.newPricing(PriceOptions{})
	require.NoError(t, err)
	assert.Nil(t, p.scaledBook(p.found.rows, 2), "a price the sheet itself rules out")
}

// TestWagePrices puts the prices found back into the sheet: the middle season, or
// 9 seasons of 10, pay the wage.
func TestWagePrices(t *testing.T) {
	const wage = 40
	b := openText(t, jarSheet)
	card := priced(t, b, PriceOptions{Wage: ptr(float64(wage))})
	w := card.Wage
	require.NotNil(t, w)
	assert.Equal(t, "$40.00/h", w.ShownWage)
	at := func(s ScaledPrices) Answer {
		p, err := b.newPricing(PriceOptions{})
		require.NoError(t, err)
		rows := p.found.rows
		if s.ID != "" {
			rows = nil
			for _, row := range p.found.rows {
				if row.id == s.ID {
					rows = append(rows, row)
				}
			}
		}
		require.Len(t, s.Prices, len(rows))
		return answerOf(t, reckoned(t, p.scaledBook(rows, *s.Factor), Options{}), "pay")
	}
	for _, s := range append(w.Middle.Each, w.Middle.All) {
		require.True(t, s.Found, s.ID)
		assert.InDelta(t, wage, *at(s).P50, 0.01, s.ID)
	}
	for _, s := range append(w.Bad.Each, w.Bad.All) {
		require.True(t, s.Found, s.ID)
		assert.InDelta(t, wage, *at(s).P10, 0.01, s.ID)
	}
	assert.Greater(t, *w.Bad.All.Factor, *w.Middle.All.Factor)
	assert.InEpsilon(t, 25**w.Middle.All.Factor, w.Middle.All.Prices[0].Price, 1e-12)
}

func TestWageThatNoPricePays(t *testing.T) {
	// Cans at petite-riviere answer the price by more than one for one: dearer cans
	// bring less, so a high wage has no price and a low one has two.
	b := openShipped(t, "petite-riviere.yaml")
	o := PriceOptions{Options: Options{Seasons: 500}, Wage: ptr(50.0)}
	high := priced(t, b, o).Wage.Middle
	assert.False(t, high.All.Found)
	assert.Nil(t, high.All.Factor)
	assert.Contains(t, high.All.Shown, "no price")
	assert.Empty(t, high.Each, "there is only one size")
	o.Wage = ptr(1.0)
	assert.True(t, priced(t, b, o).Wage.Bad.All.Several)

	withoutPay := strings.ReplaceAll(jarSheet, "id: pay,", "id: reward,")
	_, err := openText(t, withoutPay).PriceCard(PriceOptions{Wage: ptr(15.0)})
	assert.ErrorContains(t, err, "no line for the pay of an hour")
}

// The sheet and its last run are as before, however much was tried.
func TestPriceCardLeavesTheBookAsItWas(t *testing.T) {
	b := openText(t, jarSheet)
	before := reckoned(t, b, Options{})
	priced(t, b, PriceOptions{Wage: ptr(20.0), Changes: []sheet.Edit{setIs("jars.quart.price", 22)}})
	again := reckoned(t, b, Options{})
	assert.Zero(t, again.Worked)
	assert.Equal(t, before.Lines, again.Lines)
}

func BenchmarkPriceCard(b *testing.B) {
	book := openShipped(b, "heron-ridge-pallets.yaml")
	priced(b, book, PriceOptions{})
	b.ResetTimer()
	for b.Loop() {
		priced(b, book, PriceOptions{Wage: ptr(15.0)})
	}
}
