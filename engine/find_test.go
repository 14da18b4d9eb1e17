package engine

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

const findSheet = `thawbook: 1
title: Found
seasons: 2000
seed: 3
chapters:
  - title: All
    lines:
      - {id: taps, label: Taps hung, is: 10, unit: tap}
      - {id: each, label: Sap a tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0}
      - {id: sap, label: Sap gathered, formula: taps * each, unit: gal, headline: {better: more, goal: {at_least: 80}}}
      - {id: price, label: Price of a jar, is: 12, unit: $/jar}
      - {id: asked, label: Jars asked for, formula: 'of(100, "jar") - price * of(4, "jar*jar/$")', unit: jar}
      - {id: income, label: Takings, formula: price * asked, unit: $, headline: {better: more}}
      - {id: batch, label: Sap in a boil, is: 20, unit: gal, floor: 1}
      - {id: boils, label: Boils, formula: ceil(sap / batch), unit: 1}
      - {id: steady, label: Boils of a fixed run, formula: 'ceil(of(90, "gal") / batch)', unit: 1}
      - {id: nothing, label: Nothing yet, is: 0, unit: $}
      - {id: left, label: Left, formula: income - nothing, unit: $}
      - {id: lost, label: Lost, guess: {low: 2, likely: 5, high: 11}, unit: "%", floor: 0, ceiling: 60}
      - {id: kept, label: Kept, formula: sap * (1 - lost), unit: gal}
      - {id: warm, label: Feed, guess: {low: 40, likely: 60, high: 75}, unit: °F}
      - {id: rise, label: Still to rise, formula: 'of(212, "°F") - warm', unit: F°, headline: {better: less}}
      - {id: past, label: Past springs, records: [4, 6, 7, 9, 20], unit: gal}
      - {id: twice, label: Twice the past, formula: past * 2, unit: gal}
      - {id: root, label: Root, formula: 'sqrt(number(price, "$/jar") - 9)', unit: 1}
      - {id: enough, label: Enough, formula: 'sap > of(80, "gal")', unit: yes/no}
      - {id: fuel, label: Fuel, choose: wood, among: [wood, gas]}
`

func at(x float64) *float64 { return &x }

func mustFind(t testing.TB, b *Book, q FindQuestion) *Found {
	t.Helper()
	found, err := b.Find(q)
	require.NoError(t, err)
	return found
}

// retold is what the sheet says with the answer put in its place.
func retold(t testing.TB, b *Book, about string, set sheet.Set, outcome string) Answer {
	t.Helper()
	tried, list := b.Try(sheet.Edit{About: about, Set: set})
	require.NotSame(t, b, tried, "%v", list)
	r, err := tried.Reckon(Options{})
	require.NoError(t, err)
	for _, a := range r.Lines {
		if a.ID == outcome {
			return a
		}
	}
	t.Fatal("no line " + outcome)
	return Answer{}
}

// TestFindByHand: jars asked for fall by 4 for a dollar, so takings p(100 - 4p)
// are $400 at $5 and at $20, at most $625 at $12.50.
func TestFindByHand(t *testing.T) {
	b := openText(t, findSheet)
	found := mustFind(t, b, FindQuestion{Line: "price", Outcome: "income", Is: at(400), Low: at(1), High: at(24)})
	require.Len(t, found.Answers, 2)
	assert.InDelta(t, 5, *found.Answers[0].From.Value, 1e-5)
	assert.InDelta(t, 20, *found.Answers[1].From.Value, 1e-5)
	assert.Equal(t, "at", found.Answers[0].Kind)
	assert.Equal(t, "Wanted: takings, $400 in the middle season. Price of a jar: at $5.00/jar and at $20.00/jar. "+
		"Tried from $1.00 to $24.00/jar. Now it is $12.00/jar, which gives $624.", found.Paragraph)

	found = mustFind(t, b, FindQuestion{Line: "price", Outcome: "income", AtLeast: at(400), Low: at(1), High: at(24), In: "10/10"})
	require.Len(t, found.Answers, 1)
	assert.Equal(t, "along", found.Answers[0].Kind)
	assert.InDelta(t, 5, *found.Answers[0].From.Value, 1e-5)
	assert.InDelta(t, 20, *found.Answers[0].To.Value, 1e-5)
	assert.Equal(t, "from $5.00 to $20.00/jar", found.Answers[0].Sentence)
	assert.Equal(t, 1.0, *found.Answers[0].From.Met)

	found = mustFind(t, b, FindQuestion{Line: "price", Outcome: "income", AtMost: at(400), Low: at(1), High: at(24)})
	require.Len(t, found.Answers, 2)
	assert.True(t, found.Answers[0].EndsLow)
	assert.True(t, found.Answers[1].EndsHigh)
	assert.Equal(t, "$5.00/jar or less", found.Answers[0].Sentence)
	assert.Equal(t, "$20.00/jar or more", found.Answers[1].Sentence)

	found = mustFind(t, b, FindQuestion{Line: "price", Outcome: "income", Is: at(700)})
	assert.Empty(t, found.Answers)
	assert.InDelta(t, 12.5, *found.Nearest.Value, 0.6, "within a cell of the top")
	assert.Contains(t, found.Paragraph, "nothing from $6.00 to $24.00/jar does it. Nearest of those tried is")
}

// TestFindKeepsItsPromise puts each answer into the sheet, reckons it as anybody
// would, and looks whether the target is reached.
func TestFindKeepsItsPromise(t *testing.T) {
	b := openText(t, findSheet)
	value := func(a Answer, in string) float64 {
		return map[string]float64{"middle": *a.P50, "mean": *a.Mean, "low": *a.P10, "high": *a.P90, "bad": *a.P10}[in]
	}
	for _, in := range []string{"middle", "mean", "low", "high", "bad"} {
		for _, certain := range []bool{false, true} {
			q := FindQuestion{Line: "each", Outcome: "sap", Is: at(100), In: in, Certain: certain, Low: at(4), High: at(22)}
			found := mustFind(t, b, q)
			require.Len(t, found.Answers, 1, "%s %v", in, certain)
			a := found.Answers[0].From
			set := sheet.Set{Is: a.Value}
			if !certain {
				set = sheet.Set{Guess: &sheet.GuessValue{Low: *a.Low, Likely: *a.Value, High: *a.High}}
				assert.InEpsilon(t, 5.0/9, *a.Low / *a.Value, 1e-12, "the spread stays in proportion")
				assert.InEpsilon(t, 14.0/9, *a.High / *a.Value, 1e-12)
			}
			assert.InEpsilon(t, 100, value(retold(t, b, "each", set, "sap"), in), 1e-6, in)
			assert.InEpsilon(t, 100, *a.Reached, 1e-6)
		}
	}
}

func TestFindSeasonsOfTen(t *testing.T) {
	b := openText(t, findSheet)
	for _, in := range []string{"9/10", "5/10", "1/10", "19/20"} {
		share, _, ok := readChance(in)
		require.True(t, ok)
		found := mustFind(t, b, FindQuestion{Line: "taps", Outcome: "sap", In: in, Low: at(2), High: at(60)})
		require.Len(t, found.Answers, 1)
		a := found.Answers[0]
		assert.True(t, found.Whole)
		taps := *a.From.Value
		assert.Equal(t, math.Trunc(taps), taps)
		assert.True(t, a.EndsHigh)
		// The sheet's own goal says the same: met often enough with so many taps,
		// too seldom with one fewer.
		met := *retold(t, b, "taps", sheet.Set{Is: &taps}, "sap").GoalMet
		assert.GreaterOrEqual(t, met, share)
		assert.Equal(t, met, *a.From.Met)
		fewer := taps - 1
		assert.Less(t, *retold(t, b, "taps", sheet.Set{Is: &fewer}, "sap").GoalMet, share)
	}
	// At most so much, downward.
	found := mustFind(t, b, FindQuestion{Line: "taps", Outcome: "sap", AtMost: at(80), In: "9/10"})
	require.Len(t, found.Answers, 1)
	assert.True(t, found.Answers[0].EndsLow)
	assert.GreaterOrEqual(t, *found.Answers[0].To.Met, 0.9)
	assert.Regexp(t, `^Wanted: sap gathered, at most 80 gal in 9 seasons of 10\. Taps hung: 5 taps or less\.`, found.Paragraph)
}

func TestFindOnSteps(t *testing.T) {
	b := openText(t, findSheet)
	// 90 gal in boils of 20 are 5, of 30 are 3; 4 from 22.5 up to under 30.
	found := mustFind(t, b, FindQuestion{Line: "batch", Outcome: "steady", Is: at(4)})
	require.Len(t, found.Answers, 1)
	assert.Equal(t, "along", found.Answers[0].Kind)
	assert.InDelta(t, 22.5, *found.Answers[0].From.Value, 1e-4)
	assert.InDelta(t, 30, *found.Answers[0].To.Value, 1e-4)

	found = mustFind(t, b, FindQuestion{Line: "batch", Outcome: "steady", Is: at(4.5)})
	require.Len(t, found.Answers, 1)
	assert.Equal(t, "over", found.Answers[0].Kind)
	assert.InDelta(t, 22.5, *found.Answers[0].From.Value, 1e-4)
	assert.Equal(t, 5.0, *found.Answers[0].From.Reached)
	assert.Equal(t, 4.0, *found.Answers[0].To.Reached)
	assert.Equal(t, "at 22.5 gal it steps over that, from 5 to 4", found.Answers[0].Sentence)

	// Whole taps step over a target that lies between two of them.
	found = mustFind(t, b, FindQuestion{Line: "taps", Outcome: "sap", Is: at(100)})
	require.Len(t, found.Answers, 1)
	assert.Equal(t, "over", found.Answers[0].Kind)
	assert.Equal(t, 11.0, *found.Answers[0].From.Value)
	assert.Equal(t, 12.0, *found.Answers[0].To.Value)
	assert.Less(t, *found.Answers[0].From.Reached, 100.0)
	assert.Greater(t, *found.Answers[0].To.Reached, 100.0)
}

func TestFindMovesEveryKindOfLine(t *testing.T) {
	b := openText(t, findSheet)
	found := mustFind(t, b, FindQuestion{Line: "past", Outcome: "twice", Is: at(28)})
	require.Len(t, found.Answers, 1)
	assert.InDelta(t, 14, *found.Answers[0].From.Value, 1e-4, "the middle record becomes 14")

	found = mustFind(t, b, FindQuestion{Line: "sap", Outcome: "boils", AtMost: at(3), Low: at(10), High: at(200)})
	assert.Equal(t, "formula", found.Moved)
	require.Len(t, found.Answers, 1)
	assert.InDelta(t, 60, *found.Answers[0].To.Value, 1e-4)
	assert.Contains(t, found.Paragraph, "Its formula was set aside")

	// A temperature moves by degrees: 212 °F less 62 is 150, and the spread stays.
	found = mustFind(t, b, FindQuestion{Line: "warm", Outcome: "rise", Is: at(150)})
	require.Len(t, found.Answers, 1)
	assert.InDelta(t, 62, *found.Answers[0].From.Value, 0.01)
	assert.InDelta(t, 42, *found.Answers[0].From.Low, 0.01)
	assert.InDelta(t, 10, *found.Lowest.Value, 1e-9)

	found = mustFind(t, b, FindQuestion{Line: "lost", Outcome: "kept", AtLeast: at(80)})
	require.Len(t, found.Answers, 1)
	a := found.Answers[0].To
	assert.Greater(t, *a.Low, 0.0)
	assert.Less(t, *a.High, 60.0)
	odds := func(q float64) float64 { return q / (60 - q) }
	assert.InEpsilon(t, odds(11)/odds(5), odds(*a.High)/odds(*a.Value), 1e-9)

	// By hand: 6 L/tap on 10 taps is 60 L.
	found = mustFind(t, b, FindQuestion{Line: "each", Outcome: "sap", Is: at(100), Options: Options{System: units.Metric}})
	require.Len(t, found.Answers, 1)
	assert.Equal(t, "L/tap", found.Line.Unit)
	assert.InEpsilon(t, 378.5411784, found.Target, 1e-12, "100 gal in litres")
	assert.InEpsilon(t, 37.85411784, *found.Answers[0].From.Value, 1e-2)
	assert.InEpsilon(t, found.Target, *found.Answers[0].From.Reached, 1e-6)
}

// TestFindAGuessThatFitsGoesOnFitting moves guesses of every kind of bound over
// all they may be moved.
func TestFindAGuessThatFitsGoesOnFitting(t *testing.T) {
	for _, line := range []string{
		"guess: {low: 5, likely: 9, high: 14}, floor: 0", "guess: {low: 5, likely: 9, high: 30}, floor: 4.5",
		"guess: {low: -2.2, likely: -1.4, high: -0.8}, ceiling: 0", "guess: {low: 2, likely: 5, high: 40}, floor: 0, ceiling: 60",
		"guess: {low: 5, likely: 9, high: 14}", "guess: {low: -5, likely: 2, high: 14}",
		"guess: {low: 6, likely: 10, high: 18}, shape: triangle", "guess: {low: 6, likely: 10, high: 18}, shape: pert, floor: 2",
		"guess: {low: 6, likely: 10, high: 14}, shape: normal", "guess: {low: 7, likely: 10.583005, high: 16}, shape: lognormal",
		"records: [3, 4, 9], floor: 0, ceiling: 10",
	} {
		b := openText(t, fmt.Sprintf("thawbook: 1\ntitle: One\nseasons: 200\nchapters:\n  - title: A\n    lines:\n"+
			"      - {id: x, %s, unit: gal}\n      - {id: y, formula: x * 3, unit: gal}\n", line))
		found := mustFind(t, b, FindQuestion{Line: "x", Outcome: "y", AtMost: at(1e6)})
		assert.Zero(t, found.NoNumber, line)
		for i, p := range found.Curve[1:] {
			assert.Greater(t, *p.Reached, *found.Curve[i].Reached, line)
		}
		assert.Equal(t, "everywhere from "+spanWords(found.Lowest.Shown.Value, found.Highest.Shown.Value), found.Answers[0].Sentence)
	}
}

func TestFindWhereThereIsNoNumber(t *testing.T) {
	b := openText(t, findSheet)
	found := mustFind(t, b, FindQuestion{Line: "price", Outcome: "root", Is: at(2), Low: at(1), High: at(20)})
	require.Len(t, found.Answers, 1)
	assert.InDelta(t, 13, *found.Answers[0].From.Value, 1e-4)
	assert.Greater(t, found.NoNumber, 10)
	assert.Contains(t, found.Paragraph, "values tried give no number")
	found = mustFind(t, b, FindQuestion{Line: "price", Outcome: "root", Is: at(2), Low: at(1), High: at(8)})
	assert.Empty(t, found.Answers)
	assert.Nil(t, found.Nearest)
	assert.Contains(t, found.Paragraph, "nothing from $1.00 to $8.00/jar gives a number at all")
}

func TestFindRefusesWhatCannotBeAsked(t *testing.T) {
	b := openText(t, findSheet)
	for name, c := range map[string]struct {
		q    FindQuestion
		code diag.Code
		says string
	}{
		"unknown line":    {FindQuestion{Line: "tapps", Outcome: "sap"}, diag.UnknownName, `did you mean "taps"?`},
		"unknown outcome": {FindQuestion{Line: "taps", Outcome: "sup"}, diag.UnknownName, `did you mean "sap"?`},
		"a choice":        {FindQuestion{Line: "fuel", Outcome: "sap"}, diag.NotANumber, `"fuel"`},
		"a yes or no":     {FindQuestion{Line: "taps", Outcome: "enough", Is: at(1)}, diag.NotANumber, `"enough"`},
		"itself":          {FindQuestion{Line: "sap", Outcome: "sap"}, diag.BadQuestion, "from itself"},
		"unrelated":       {FindQuestion{Line: "price", Outcome: "sap"}, diag.DoesNotHang, `"sap" hangs on taps, each`},
		"no goal":         {FindQuestion{Line: "price", Outcome: "income"}, diag.BadQuestion, "no goal of its own"},
		"two targets":     {FindQuestion{Line: "taps", Outcome: "sap", Is: at(1), AtMost: at(2)}, diag.BadQuestion, "more than one"},
		"no number":       {FindQuestion{Line: "taps", Outcome: "sap", Is: at(math.NaN())}, diag.BadQuestion, "no number"},
		"no better":       {FindQuestion{Line: "batch", Outcome: "boils", Is: at(2), In: "bad"}, diag.BadQuestion, "low or the high"},
		"is in 9 of 10":   {FindQuestion{Line: "taps", Outcome: "sap", Is: at(2), In: "9/10"}, diag.BadQuestion, "at least or at most"},
		"11 of 10":        {FindQuestion{Line: "taps", Outcome: "sap", In: "11/10"}, diag.BadQuestion, `"11/10"`},
		"0 of 10":         {FindQuestion{Line: "taps", Outcome: "sap", In: "0/10"}, diag.BadQuestion, `"0/10"`},
		"unread":          {FindQuestion{Line: "taps", Outcome: "sap", In: "often"}, diag.BadQuestion, `"often"`},
		"limits reversed": {FindQuestion{Line: "taps", Outcome: "sap", Low: at(9), High: at(3)}, diag.BadQuestion, "from 9 taps to 3 taps"},
		"no whole number": {FindQuestion{Line: "taps", Outcome: "sap", Low: at(9.2), High: at(9.8)}, diag.BadQuestion, "nothing to try"},
		"below the floor": {FindQuestion{Line: "batch", Outcome: "boils", Is: at(2), Low: at(-3), High: at(3)}, diag.OutOfBounds, "bounds"},
		"zero":            {FindQuestion{Line: "nothing", Outcome: "left", Is: at(2)}, diag.BadQuestion, "no half and no double"},
		"too many":        {FindQuestion{Line: "taps", Outcome: "sap", Options: Options{Seasons: 200_000}}, diag.TooMany, "100,000"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := b.Find(c.q)
			var d diag.Diagnostic
			require.ErrorAs(t, err, &d)
			assert.Equal(t, c.code, d.Code)
			assert.Contains(t, d.Message+" "+d.Hint, c.says)
		})
	}
}

func TestFindStopsWhenAsked(t *testing.T) {
	b := openText(t, findSheet)
	calls := 0
	_, err := b.Find(FindQuestion{Line: "taps", Outcome: "sap", Options: Options{Progress: func(done, total int) bool {
		calls++
		require.LessOrEqual(t, done, total)
		return calls < 3
	}}})
	assert.ErrorIs(t, err, columns.ErrStopped)
	assert.Equal(t, 3, calls)
}

func TestFindLeavesTheBookAlone(t *testing.T) {
	b := openText(t, findSheet)
	before, err := b.Reckon(Options{})
	require.NoError(t, err)
	mustFind(t, b, FindQuestion{Line: "each", Outcome: "sap", Is: at(70), Options: Options{Seasons: 300}})
	after, err := b.Reckon(Options{})
	require.NoError(t, err)
	assert.Equal(t, before.Lines, after.Lines)
	assert.Zero(t, after.Worked, "what was reckoned before is still at hand")
}

func TestFindOnShippedSheets(t *testing.T) {
	b := openShipped(t, "heron-ridge-pallets.yaml")
	found := mustFind(t, b, FindQuestion{Line: "taps", Outcome: "syrup", In: "9/10", Low: at(20), High: at(400), Options: Options{Seasons: 2000}})
	for _, a := range found.Answers {
		assert.GreaterOrEqual(t, *a.From.Met, 0.9)
	}
	// Of everything that moves the hours at the fire one at a time, the burning of
	// a fuel that is not burnt makes no difference, and is said to make none.
	found = mustFind(t, b, FindQuestion{Line: "fuels.propane.price", Outcome: "cash_cost", AtMost: at(1), Options: Options{Seasons: 500}})
	assert.Empty(t, found.Answers)
	assert.Contains(t, found.Paragraph, "makes no difference as the sheet stands")
}

// BenchmarkFind tells how many first reckonings of the sheet one search takes.
func BenchmarkFind(b *testing.B) {
	book := openShipped(b, "heron-ridge-pallets.yaml")
	start := time.Now()
	_, err := book.Reckon(Options{})
	require.NoError(b, err)
	reckoned := time.Since(start)
	for b.Loop() {
		mustFind(b, book, FindQuestion{Line: "sap_per_tap", Outcome: "pay", Is: at(2)})
	}
	b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(reckoned), "reckonings")
}
