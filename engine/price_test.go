package engine

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// jarSheet is worked by hand in TestPriceCardByHand.
const jarSheet = `thawbook: 1
title: Jars
seasons: 1000
seed: 3
chapters:
  - title: Selling
    lines:
      - {id: syrup, label: Syrup made, guess: {low: 8, likely: 10, high: 12}, unit: gal, floor: 0}
      - {id: kept, label: Kept, is: 2, unit: gal}
      - {id: wood, label: Wood, is: 30, unit: $}
      - {id: label_price, label: Label, is: 0.5, unit: $/jar}
      - {id: worth, label: An hour is worth, is: 12, unit: $/h}
      - {id: hours, label: Hours, is: 20, unit: h}
      - {id: takings, label: Takings, formula: sum(jars.income) * sold, unit: $}
      - {id: sold, label: Sold, is: 80, unit: "%"}
      - {id: card_fees, label: Fees, formula: 'takings * of(10, "%")', unit: $}
      - {id: gear_share, label: Wear, is: 10, unit: $}
      - {id: cash_cost, label: Paid out, formula: wood + card_fees + sum(jars.costs), unit: $, headline: {better: less}}
      - {id: left_gear, label: Left, formula: takings - cash_cost - gear_share, unit: $, headline: {better: more}}
      - {id: pay, label: Pay, formula: left_gear / hours, unit: $/h}
    tables:
      - id: jars
        label: Sizes
        columns:
          - {id: size, label: Holds, unit: fl oz/jar}
          - {id: share, label: Share, unit: "%"}
          - {id: price, label: Price, unit: $/jar}
          - {id: empty, label: Empty jar, unit: $/jar}
          - {id: filled, label: Filled, unit: jar, formula: "jars_filled((syrup - kept) * share, size, 0)"}
          - {id: income, label: Brings, unit: $, formula: filled * price}
          - {id: costs, label: Jars and labels, unit: $, formula: filled * (empty + label_price)}
        rows:
          - {id: quart, label: Quart, size: 32, share: 50, price: 25, empty: 1}
          - {id: pint, label: Pint, size: 16, share: 50, price: {guess: {low: 13, likely: 15, high: 17}, floor: 0}, empty: 0.5}
`

func priced(t testing.TB, b *Book, o PriceOptions) *PriceCard {
	card, err := b.PriceCard(o)
	require.NoError(t, err)
	return card
}

// TestPriceCardByHand: of 10 gal 8 are for sale, so 16 quarts at $25 and 32 pints at
// $15: $880 asked, $704 taken, $70.40 in fees. A quart brings $20 and pays $2; its
// jar and label are $1.50; the syrup costs $30 of wood and $10 of wear for 10 gal, so
// $1 a quart; $15.50 are left, for 20 h / 10 gal / 4 = half an hour.
func TestPriceCardByHand(t *testing.T) {
	card := priced(t, openText(t, jarSheet), PriceOptions{})
	assert.Equal(t, "jars", card.Table)
	require.Len(t, card.Sizes, 2)
	quart := card.Sizes[0]
	assert.Equal(t, "jars.quart.price", quart.PriceID)
	for name, pair := range map[string]struct {
		got  *Amount
		want float64
		text string
	}{
		"holds":   {&quart.Size, 32, "32 fl oz/jar"},
		"filled":  {&quart.Filled, 16, "16 jars"},
		"price":   {&quart.Price, 25, "$25.00/jar"},
		"brings":  {&quart.Brings, 20, "$20.00/jar"},
		"selling": {quart.Selling, 2, "$2.00/jar"},
		"syrup":   {quart.Syrup, 1, "$1.00/jar"},
		"left":    {&quart.Left, 15.5, "$15.50/jar"},
		"hours":   {quart.Hours, 0.5, "0.5 h/jar"},
		"worked":  {quart.Worked, 6, "$6.00/jar"},
		"after":   {quart.After, 9.5, "$9.50/jar"},
		"gallon":  {&quart.ByVolume, 62, "$62.00/gal"},
		"hour":    {quart.ByHour, 31, "$31.00/h"},
	} {
		require.NotNil(t, pair.got, name)
		assert.InDelta(t, pair.want, *pair.got.Likely, 1e-9, name)
		assert.Equal(t, pair.text, pair.got.Shown.Likely, name)
	}
	require.Len(t, quart.Parts, 2)
	assert.Equal(t, []string{"Empty jar", "Label"}, []string{quart.Parts[0].Label, quart.Parts[1].Label})
	assert.InDelta(t, 0.5, *quart.Parts[1].Likely, 0)
	assert.Less(t, *quart.Left.P10, *quart.Left.P90)
	assert.Empty(t, card.NotCounted)
	kept := namedAmount(t, card, "What kept and given syrup cost")
	assert.InDelta(t, 8, *kept.Likely, 1e-9, "2 gal at $4")
	assert.False(t, card.SalesAnswer)
}

func namedAmount(t *testing.T, card *PriceCard, label string) NamedAmount {
	for _, a := range card.Season {
		if a.Label == label {
			return a
		}
	}
	require.Fail(t, "no amount "+label)
	return NamedAmount{}
}

// TestPriceCardAddsUp: in every season of every shipped sheet that has a table of
// sizes, what is left of all jars behind the hours, less what the syrup in no jar
// cost, is what the sheet itself says is left after the hours.
func TestPriceCardAddsUp(t *testing.T) {
	for _, name := range []string{"heron-ridge-pallets.yaml", "heron-ridge-cordwood.yaml", "heron-ridge-propane.yaml", "heron-ridge-growth.yaml"} {
		b := openShipped(t, name)
		p, err := b.newPricing(PriceOptions{Options: Options{Seasons: 500}})
		require.NoError(t, err)
		r, err := p.run(b)
		require.NoError(t, err)
		a := p.accounts(p.drawn(b, r))
		left := p.drawn(b, r)(b.plan.Find("left_hours"), p.money)
		counted := 0
		for i := range left {
			jars, inJars := 0.0, 0.0
			for k, jar := range a.jars {
				jars += jar.Filled[i] * a.each[k].After[i]
				inJars += jar.Filled[i] * jar.Size[i]
			}
			rest := (a.season.Syrup[i] - inJars) * (a.season.Making[i] + a.season.Hours[i]*a.season.Worth[i]) / a.season.Syrup[i]
			if math.IsNaN(jars) {
				continue // no jar was filled
			}
			counted++
			require.InDelta(t, left[i], jars-rest, 1e-6, "%s season %d", name, i)
		}
		assert.Greater(t, counted, 450, name)
	}
}

func TestPriceCardSumsAtTheLikelyNumbers(t *testing.T) {
	card := priced(t, openShipped(t, "heron-ridge-pallets.yaml"), PriceOptions{Options: Options{Seasons: 300}})
	require.Len(t, card.Sizes, 5)
	for _, s := range card.Sizes {
		sum := *s.Selling.Likely + *s.Syrup.Likely + *s.Left.Likely
		for _, part := range s.Parts {
			sum += *part.Likely
		}
		assert.InDelta(t, *s.Brings.Likely, sum, 1e-9, s.ID)
		assert.InDelta(t, *s.Left.Likely, *s.Worked.Likely+*s.After.Likely, 1e-9, s.ID)
	}
	require.Len(t, card.Outlets, 3)
	market := card.Outlets[0]
	selling := *namedAmount(t, card, "Card fees").Likely + *namedAmount(t, card, "Market fees and driving").Likely
	kept := 0.0
	for _, o := range card.Outlets {
		kept += *o.Taken.Likely - *o.Kept.Likely
	}
	assert.InDelta(t, selling, kept, 1e-9, "every outlet's costs are some of the season's, and the stall is the market's")
	assert.InDelta(t, *card.Sizes[0].Price.Likely, *market.Sizes[0].Price.Likely, 1e-9, "the market pays the whole price")
}

func TestPriceCardOfOneSizeInLines(t *testing.T) {
	card := priced(t, openShipped(t, "petite-riviere.yaml"), PriceOptions{Options: Options{Seasons: 500}})
	assert.Empty(t, card.Table)
	require.Len(t, card.Sizes, 1)
	can := card.Sizes[0]
	assert.Equal(t, "price", can.PriceID)
	assert.Equal(t, "540 mL/can", can.Size.Shown.Likely)
	require.Len(t, can.Parts, 1)
	assert.Equal(t, "can_cost", can.Parts[0].ID, "last year's price is by the can too, and no cost")
	assert.Equal(t, "$/L", can.ByVolume.Unit)
	assert.True(t, card.SalesAnswer)
	assert.Contains(t, card.SalesNote, "Cans wanted at our price")
	assert.Equal(t, []string{`no line "worth", so hours cost nothing`}, card.NotCounted)
	assert.Nil(t, can.After)
	assert.Contains(t, card.Reference.Note, "not turned into CAD")
	assert.Nil(t, card.Reference.Sizes[0].Retail, "the survey has no such can")
}

func TestLadderWarnsWhereItFalls(t *testing.T) {
	b := openText(t, jarSheet)
	card := priced(t, b, PriceOptions{})
	require.Len(t, card.Ladder, 2)
	assert.Equal(t, "Quart", card.Ladder[0].Label)
	assert.InDelta(t, 25.0/32, *card.Ladder[0].ByVolume.Likely, 1e-12)
	assert.InDelta(t, (15.0/16)/(25.0/32), *card.Ladder[1].Against, 1e-12)
	assert.False(t, card.Ladder[1].Falls)
	assert.Empty(t, card.Warnings)

	cheap, list := b.Try(sheet.Edit{About: "jars.pint.price", Set: sheet.Set{Guess: &sheet.GuessValue{Low: 11, Likely: 12, High: 12.5}}})
	require.Empty(t, list)
	card = priced(t, cheap, PriceOptions{})
	assert.True(t, card.Ladder[1].Falls)
	// A pint is dearer by the ounce above $12.50, its 1-in-10 high.
	assert.InDelta(t, 0.9, *card.Ladder[1].FallsIn, 0.01)
	require.Len(t, card.Warnings, 1)
	assert.Equal(t, diag.LadderFalls, card.Warnings[0].Code)
	assert.Equal(t, `"Pint" costs less by volume than the larger "Quart"`, card.Warnings[0].Message)
}

func reckonedColumn(t *testing.T, b *Book, id string) []float64 {
	reckoned(t, b, Options{})
	column, err := b.Column(id)
	require.NoError(t, err)
	return column
}

func TestPriceCardWhenNothingIsFilled(t *testing.T) {
	b, list := openText(t, jarSheet).Try(setIs("kept", 9))
	require.Empty(t, list)
	card := priced(t, b, PriceOptions{})
	require.Len(t, card.Warnings, 1)
	w := card.Warnings[0]
	// A season fills nothing when less than 9 gal and two pints were made.
	made := reckonedColumn(t, b, "syrup")
	few := 0
	for _, x := range made {
		if x < 9.25 {
			few++
		}
	}
	assert.Equal(t, 1000, w.Of)
	assert.Equal(t, few, w.Seasons)
	assert.Equal(t, w.Seasons, card.Sizes[0].Left.Missing)
	assert.NotNil(t, card.Sizes[0].Left.P50)

	b, list = b.Try(setIs("kept", 99))
	require.Empty(t, list)
	card = priced(t, b, PriceOptions{Wage: ptr(15.0)})
	assert.Equal(t, 1000, card.Warnings[0].Seasons)
	assert.Nil(t, card.Sizes[0].Left.P50)
	assert.Equal(t, "no number", card.Sizes[0].Left.Shown.Middle)
	assert.False(t, card.Wage.Middle.All.Found)
}

func TestPriceCardInMetric(t *testing.T) {
	card := priced(t, openText(t, jarSheet), PriceOptions{Options: Options{System: units.Metric}})
	quart := card.Sizes[0]
	assert.Equal(t, "mL/jar", quart.Size.Unit)
	// 32 fl oz are a quarter of 231 cubic inches of 16.387064 mL.
	assert.InEpsilon(t, 231*16.387064/4, *quart.Size.Likely, 1e-9)
	assert.Equal(t, "$/L", card.Ladder[0].ByVolume.Unit)
	assert.InEpsilon(t, 25/0.946352946, *card.Ladder[0].ByVolume.Likely, 1e-9)
	assert.InEpsilon(t, 62/3.785411784, *quart.ByVolume.Likely, 1e-9)
}

func TestPriceCardNamesWhatIsMissing(t *testing.T) {
	for name, test := range map[string]struct {
		text string
		o    PriceOptions
		code diag.Code
		says string
	}{
		"sells nothing":    {smallSheet, PriceOptions{}, diag.NoneMarked, "does not say what it sells"},
		"lacks a column":   {strings.ReplaceAll(jarSheet, "id: filled", "id: full"), PriceOptions{}, diag.NoneMarked, `"jars" lacks`},
		"no such table":    {jarSheet, PriceOptions{Table: "jugs"}, diag.NoneMarked, `"jugs" is not a table`},
		"no such role":     {jarSheet, PriceOptions{Roles: map[string]string{"ours": "hours"}}, diag.BadQuestion, `nothing called "ours"`},
		"no such line":     {jarSheet, PriceOptions{Roles: map[string]string{"hours": "ours"}}, diag.UnknownName, `no line is called "ours"`},
		"of another kind":  {jarSheet, PriceOptions{Roles: map[string]string{"hours": "wood"}}, diag.WrongUnit, `"wood" cannot be the hours`},
		"no such state":    {jarSheet, PriceOptions{State: "Vermunt"}, diag.BadQuestion, "no prices of"},
		"paid nothing":     {jarSheet, PriceOptions{Wage: ptr(0.0)}, diag.BadQuestion, "more than nothing"},
		"paid no number":   {jarSheet, PriceOptions{Wage: ptr(math.NaN())}, diag.BadQuestion, "more than nothing"},
		"too many seasons": {jarSheet, PriceOptions{Options: Options{Seasons: 200_000}}, diag.TooMany, "more seasons"},
		"change nothing": {jarSheet, PriceOptions{Changes: []sheet.Edit{setIs("jars.quart.prise", 3)}},
			diag.EditUnknown, "no line is called"},
	} {
		b, _ := Open("small.yaml", texts(map[string]string{"small.yaml": test.text}))
		_, err := b.PriceCard(test.o)
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, test.code, d.Code, name)
		assert.Contains(t, d.Message, test.says, name)
	}
	_, err := openText(t, jarSheet).PriceCard(PriceOptions{Options: Options{Progress: func(done, total int) bool { return done < 2000 }}})
	assert.ErrorIs(t, err, columns.ErrStopped)
	last, of := 0, 0
	priced(t, openText(t, jarSheet), PriceOptions{Options: Options{Progress: func(done, total int) bool {
		assert.GreaterOrEqual(t, done, last)
		last, of = done, total
		return true
	}}, Wage: ptr(20.0)})
	assert.Positive(t, of)
	assert.Equal(t, of, last, "it ends")
}

func TestPriceRolesNameOtherLines(t *testing.T) {
	text := strings.ReplaceAll(strings.ReplaceAll(jarSheet, "id: hours,", "id: toil,"), "/ hours", "/ toil")
	b := openText(t, text)
	card := priced(t, b, PriceOptions{})
	assert.Nil(t, card.Sizes[0].Hours)
	assert.Nil(t, card.Sizes[0].ByHour)
	assert.Equal(t, []string{`no line "hours", so hours are not counted`}, card.NotCounted)
	card = priced(t, b, PriceOptions{Roles: map[string]string{"hours": "toil"}})
	assert.InDelta(t, 0.5, *card.Sizes[0].Hours.Likely, 1e-12)
}

func TestPriceReference(t *testing.T) {
	card := priced(t, openText(t, jarSheet), PriceOptions{State: "Vermont"})
	r := card.Reference
	assert.Equal(t, 2017, r.Year)
	require.Len(t, r.Sizes, 2)
	quart := r.Sizes[0]
	assert.Equal(t, "quart", quart.Container)
	assert.Equal(t, "$16.30", quart.Retail.ShownMedian, "USDA NASS 2017, the middle of 13 states")
	assert.Equal(t, "$16.10", quart.ShownInState, "USDA NASS 2017, Vermont")
	assert.Len(t, r.AllSales, 26)
	assert.Equal(t, "$33.00/gal", r.AllSales[25].Shown)
	assert.Contains(t, r.Note, "for reference")
}
