package engine

import (
	"fmt"
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

// flipSheet has a cost worked out from w, a guess h and a cost of its own.
func flipSheet(t testing.TB, title, cost string) *Book {
	return openText(t, fmt.Sprintf(`thawbook: 1
title: %s
seasons: 4000
chapters:
  - title: All
    lines:
      - {id: w, label: The worth of an hour, is: 3, unit: $/h}
      - {id: g, label: A guess, guess: {low: 1, likely: 2, high: 4}, unit: $/h, floor: 0}
      - {id: h, label: Hours, guess: {low: 5, likely: 8, high: 12}, unit: h, floor: 0}
      - {id: s, label: Share, is: 50, unit: "%%", floor: 0, ceiling: 100}
      - {id: nil_now, label: Nothing yet, is: 0, unit: $/h}
      - {id: temp, label: Cold, is: 20, unit: °F}
      - {id: fuel, label: Fuel, choose: wood, among: [wood, gas]}
      - {id: late, label: Late, formula: w * 2, unit: $/h}
      - {id: apart, label: Apart, is: 1, unit: $}
      - {id: cost, label: Cost, formula: '%s', unit: $, headline: {better: less}}
      - {id: plain, label: Plain cost, formula: cost, unit: $}
`, title, cost))
}

func flipOver(low, high float64) FlipQuestion {
	return FlipQuestion{About: "w", Outcome: "cost", Low: &low, High: &high}
}

func TestFlipIsWhereTheMiddleDifferenceChangesSign(t *testing.T) {
	// Second less first is 40 - h·w: hours at 5, 8 and 12 are their 10th, 50th and
	// 90th percentile, so it changes sign at 40/8, and its ends at 40/12 and 40/5.
	wood, gas := flipSheet(t, "wood", "h * w"), flipSheet(t, "gas", `of(40, "$")`)
	f, err := FindFlip(wood, gas, flipOver(0, 20), Options{})
	require.NoError(t, err)
	require.Len(t, f.Flips, 1)
	assert.InEpsilon(t, 5, f.Flips[0].At, 1e-3)
	require.Len(t, f.Balance, 1)
	assert.InEpsilon(t, 40.0/12, f.Balance[0].From, 2e-3)
	assert.InEpsilon(t, 8, f.Balance[0].To, 2e-3)
	assert.Equal(t, []string{"first", "second"}, []string{f.Sides[0].Ahead, f.Sides[1].Ahead})
	assert.Equal(t, "Cost: gas comes out ahead once the worth of an hour goes beyond $5.00/h; below that, wood does."+
		" Between $3.33/h and $8.00/h it is in the balance: neither comes out ahead in 9 seasons of 10.", f.Sentence)
	assert.Equal(t, "$3.00/h", f.Shown.Now)

	require.Len(t, f.Curve, 21)
	for i, p := range f.Curve {
		assert.InDelta(t, float64(i), p.Value, 1e-12)
	}
	assert.InDelta(t, 0, *f.Curve[0].Ahead, 0)
	assert.InDelta(t, 0.5, *f.Curve[5].Ahead, 0.01)
	assert.InDelta(t, 0.9, *f.Curve[8].Ahead, 0.01)
	assert.Equal(t, "$40.00 more", f.Curve[0].Shown.Middle)
}

// TestTheFlipIsWhereTryingTheValueTurns holds the answer to another route: a
// comparison with the value tried just below and just above it.
func TestTheFlipIsWhereTryingTheValueTurns(t *testing.T) {
	books := shippedBooks(t, "pallets", "propane")
	o := Options{Seasons: 2000}
	low, high := 0.0, 60.0
	for _, outcome := range []string{"cost_per_gallon", "left_hours"} {
		f, err := FindFlip(books[0], books[1], FlipQuestion{About: "worth", Outcome: outcome, Low: &low, High: &high}, o)
		require.NoError(t, err)
		require.Len(t, f.Flips, 1, outcome)
		require.Equal(t, []string{"first", "second"}, []string{f.Sides[0].Ahead, f.Sides[1].Ahead}, "gas is ahead for those whose hours are dear")
		middle := func(worth float64) float64 {
			var tried []*Book
			for _, b := range books {
				next, list := b.Try(sheet.Edit{About: "worth", Set: sheet.Set{Is: &worth}})
				require.Empty(t, list)
				tried = append(tried, next)
			}
			c, err := Compare(tried, CompareOptions{Options: o, On: []string{outcome}})
			require.NoError(t, err)
			return *c.Lines[0].Difference[0].P50
		}
		below, above := middle(f.Flips[0].At*0.9999), middle(f.Flips[0].At*1.0001)
		assert.Negative(t, below*above, "%s: %g %g", outcome, below, above)
	}
}

func TestFlipNoneAndSeveral(t *testing.T) {
	nothing := `w * of(0, "h")`
	for name, c := range map[string]struct {
		cost  string
		flips []float64
		tol   float64
		sides []string
		say   string
	}{
		"never": {`w * of(1, "h") + of(2, "$")`, nil, 0, []string{"first"}, "wood comes out ahead at every value of the worth of an hour from $0/h to $10.00/h, so the answer does not flip there."},
		"twice": {`(w - of(2, "$/h")) * (w - of(7.25, "$/h")) * of(1, "h^2/$")`, []float64{2, 7.25}, 1e-5, []string{"first", "second", "first"},
			"the answer flips 2 times as the worth of an hour grows: wood comes out ahead up to $2.00/h; from there to $7.25/h gas does; beyond that wood does."},
		"only touches":        {`(w - of(4, "$/h")) ^ 2 * of(1, "h^2/$")`, nil, 0, []string{"first"}, "does not flip"},
		"a step":              {`(w > of(3.3, "$/h") ? of(5, "$") : of(-5, "$"))`, []float64{3.3}, 1e-4, []string{"second", "first"}, "goes beyond $3.30/h"},
		"even for a while":    {`max(of(0, "h") * w, (w - of(4, "$/h")) * of(1, "h"))`, []float64{4}, 1e-4, []string{"even", "first"}, "below that, the two come to the same"},
		"no difference":       {nothing, nil, 0, []string{"even"}, "the two come to the same at every value"},
		"no number at first":  {`sqrt(number(w, "$/h") - 5) * of(1, "$")`, []float64{5}, 1e-4, []string{"none", "first"}, "below that, no season comes to a number"},
		"a step in the limit": {`(w >= of(10, "$/h") ? of(-5, "$") : of(5, "$"))`, nil, 0, []string{"first"}, "does not flip"},
	} {
		f, err := FindFlip(flipSheet(t, "wood", nothing), flipSheet(t, "gas", c.cost), flipOver(0, 10), Options{})
		require.NoError(t, err, name)
		var sides []string
		for _, s := range f.Sides {
			sides = append(sides, s.Ahead)
		}
		require.Equal(t, c.sides, sides, "%s: %s", name, f.Sentence)
		require.Len(t, f.Flips, len(c.flips), name)
		for i, want := range c.flips {
			assert.InDelta(t, want, f.Flips[i].At, 10*c.tol, name)
		}
		assert.Contains(t, f.Sentence, c.say, name)
	}
}

func TestFlipWordsOfTheBalance(t *testing.T) {
	wood := flipSheet(t, "wood", "h * w")
	for say, cost := range map[string]string{
		"From $3.33/h on it is in the balance":      `of(40, "$")`,
		"Up to $2.00/h it is in the balance":        `of(10, "$") + (w < of(2, "$/h") ? h * w + (h - of(8, "h")) * of(1, "$/h") - of(10, "$") : of(90, "$"))`,
		"All the way it is in the balance: neither": `h * w + (h - of(8.1, "h")) * of(1, "$/h")`,
	} {
		f, err := FindFlip(wood, flipSheet(t, "gas", cost), flipOver(0, 6), Options{})
		require.NoError(t, err)
		assert.Contains(t, f.Sentence, say, "%v", f.Balance)
	}
	f, err := FindFlip(wood, flipSheet(t, "gas", `h * w + of(1, "$")`), flipOver(0, 6), Options{})
	require.NoError(t, err)
	assert.Empty(t, f.Balance)
	assert.NotContains(t, f.Sentence, "balance")
}

func TestFlipWithoutABetter(t *testing.T) {
	q := flipOver(0, 20)
	q.Outcome = "plain"
	f, err := FindFlip(flipSheet(t, "wood", "h * w"), flipSheet(t, "gas", `of(40, "$")`), q, Options{})
	require.NoError(t, err)
	assert.Contains(t, f.Sentence, "Plain cost: wood comes to more once the worth of an hour goes beyond $5.00/h; below that, gas does.")
	assert.InDelta(t, 1, *f.Curve[0].Ahead, 0, "in all seasons gas comes to more")
}

func TestFlipHoldsAGuessInBoth(t *testing.T) {
	cost := `h * g`
	q := FlipQuestion{About: "g", Outcome: "cost"}
	wood, gas := flipSheet(t, "wood", cost), flipSheet(t, "gas", `of(20, "$") + g * of(1, "h")`)
	f, err := FindFlip(wood, gas, q, Options{})
	require.NoError(t, err)
	assert.InDelta(t, 0, f.Low, 0)
	assert.InDelta(t, 6, f.High, 0, "three times what is likely")
	require.Len(t, f.Flips, 1)
	assert.InEpsilon(t, 20.0/7, f.Flips[0].At, 2e-3)
	assert.Equal(t, sheet.Guess, wood.Sheet().Find("g").Kind, "the sheet itself is as it was")

	q = FlipQuestion{About: "s", Outcome: "cost"}
	f, err = FindFlip(flipSheet(t, "wood", `s * of(10, "$")`), flipSheet(t, "gas", `of(2, "$")`), q, Options{})
	require.NoError(t, err)
	assert.InDelta(t, 100, f.High, 0, "floor and ceiling are the usual limits")
	assert.InDelta(t, 20, f.Flips[0].At, 1e-3)
}

func TestFlipInOtherUnits(t *testing.T) {
	wood := flipSheet(t, "wood", "h * w")
	gas := openText(t, strings.NewReplacer("is: 3, unit: $/h", "is: 0.05, unit: $/min").Replace(string(flipSheet(t, "gas", `of(40, "$")`).Source())))
	f, err := FindFlip(wood, gas, flipOver(0, 20), Options{})
	require.NoError(t, err)
	assert.InEpsilon(t, 5, f.Flips[0].At, 1e-3)

	low, high := 0.0, 100.0
	q := FlipQuestion{About: "temp", Outcome: "cost", Low: &low, High: &high}
	f, err = FindFlip(flipSheet(t, "wood", `(temp - of(50, "°F")) * of(1, "$/F°")`), flipSheet(t, "gas", `w * of(0, "h")`), q, Options{System: units.Metric})
	require.NoError(t, err)
	assert.Equal(t, "°C", f.Unit)
	assert.InDelta(t, 10, f.Flips[0].At, 1e-3, "50 °F")
	assert.Equal(t, "10.0 °C", f.Flips[0].Shown)
}

func TestFlipWhatCannotBeAsked(t *testing.T) {
	wood, gas := flipSheet(t, "wood", "h * w"), flipSheet(t, "gas", `of(40, "$")`)
	limit := func(x float64) *float64 { return &x }
	for name, c := range map[string]struct {
		q    FlipQuestion
		code diag.Code
		say  string
	}{
		"unknown line":    {FlipQuestion{About: "ww", Outcome: "cost"}, diag.UnknownName, `no line of "small.yaml" is called "ww"`},
		"unknown outcome": {FlipQuestion{About: "w", Outcome: "costs"}, diag.UnknownName, `"costs"`},
		"a choice":        {FlipQuestion{About: "fuel", Outcome: "cost"}, diag.NotANumber, `"fuel"`},
		"a formula":       {FlipQuestion{About: "late", Outcome: "cost"}, diag.NotComparable, "worked out by a formula"},
		"not on it":       {FlipQuestion{About: "apart", Outcome: "cost"}, diag.DoesNotHang, `"cost" does not hang on "apart"`},
		"turned limits":   {FlipQuestion{About: "w", Outcome: "cost", Low: limit(5), High: limit(1)}, diag.BadQuestion, "hold nothing between them"},
		"no number":       {FlipQuestion{About: "w", Outcome: "cost", Low: limit(math.NaN()), High: limit(1)}, diag.BadQuestion, "hold nothing between them"},
		"no limits":       {FlipQuestion{About: "nil_now", Outcome: "cost"}, diag.BadQuestion, "no usual limits"},
		"cold":            {FlipQuestion{About: "temp", Outcome: "cost"}, diag.BadQuestion, "no usual limits"},
		"below the floor": {FlipQuestion{About: "g", Outcome: "cost", Low: limit(-1)}, diag.OutOfBounds, `what "g" may be`},
	} {
		_, err := FindFlip(wood, gas, c.q, Options{})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, c.code, d.Code, "%s: %s", name, d.Message)
		assert.Contains(t, d.Message, c.say, name)
		assert.NotEmpty(t, d.Hint, name)
	}
	last, of := 0, 0
	_, err := FindFlip(wood, gas, flipOver(0, 9), Options{Progress: func(done, total int) bool {
		assert.GreaterOrEqual(t, done, last)
		last, of = done, total
		return true
	}})
	require.NoError(t, err)
	assert.Equal(t, of, last, "it says when it is through")
	_, err = FindFlip(wood, gas, flipOver(0, 9), Options{Progress: func(int, int) bool { return false }})
	assert.ErrorIs(t, err, columns.ErrStopped)
	_, err = FindFlip(wood, gas, flipOver(0, 9), Options{Seasons: 200_000})
	assert.ErrorContains(t, err, "more seasons")
}

// BenchmarkFlip reports how many times as long the worth of an hour takes as one
// full reckoning.
func BenchmarkFlip(b *testing.B) {
	books := shippedBooks(b, "pallets", "propane")
	one := timed(func() {
		_, err := books[0].Reckon(Options{})
		require.NoError(b, err)
	})
	spent := 0.0
	for b.Loop() {
		books := shippedBooks(b, "pallets", "propane")
		spent = timed(func() {
			_, err := FindFlip(books[0], books[1], FlipQuestion{About: "worth", Outcome: "cost_per_gallon"}, Options{})
			require.NoError(b, err)
		})
	}
	b.ReportMetric(spent/one, "times-one-reckoning")
	b.ReportMetric(spent*1000, "flip-ms")
}
