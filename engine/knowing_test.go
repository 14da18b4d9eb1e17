package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// weighed opens a sheet and the scenarios taken from it by the text of their
// changes.
func weighed(t testing.TB, lines string, changes ...string) []*engine.Book {
	files := map[string]string{"base.yaml": "thawbook: 1\ntitle: Ridge, as it is\nseasons: 10000\nseed: 41\nchapters:\n  - title: All\n    lines:\n" + lines}
	names := []string{"base.yaml"}
	for i, change := range changes {
		name := string(rune('a'+i)) + ".yaml"
		names = append(names, name)
		files[name] = "thawbook: 1\nfrom: base.yaml\ntitle: Ridge, plan " + string(rune('a'+i)) + "\n" + change
	}
	var books []*engine.Book
	for _, name := range names {
		book, list := engine.Open(name, func(name string) ([]byte, error) { return []byte(files[name]), nil })
		require.Empty(t, list)
		books = append(books, book)
	}
	return books
}

func worthOf(t testing.TB, books []*engine.Book, on string, o engine.KnowingOptions) *engine.Worth {
	w, err := engine.AskWorth(books, on, o)
	require.NoError(t, err)
	return w
}

// oil is a choice between selling the land for 90 and drilling on it, which brings
// 700 in a season of four and loses 100 in the others.
const oil = `
      - {id: oil, label: Oil, records: [0, 0, 0, 1], unit: "1", note: Have the ground sounded., source: a textbook}
      - {id: rain, label: Rain, guess: {low: 1, likely: 2, high: 3}, unit: in}
      - {id: way, label: Way, choose: sell, among: [sell, drill]}
      - {id: left, label: Left, formula: 'way == "sell" ? of(90, "$") : of(800, "$") * oil - of(100, "$")', unit: $, headline: {better: more}}
`

// TestOil holds the textbook's 242.5 − 100 = 142.5 through the whole of a sheet.
func TestOil(t *testing.T) {
	w := worthOf(t, weighed(t, oil, "change: {way: drill}"), "left", engine.KnowingOptions{})
	assert.Equal(t, 1, w.Best)
	assert.InDelta(t, 90, *w.Scenarios[0].Mean, 1e-9)
	assert.InDelta(t, 100, *w.Scenarios[1].Mean, 1e-9)
	assert.InDelta(t, 142.5, w.All.Value, 1e-9)
	require.Len(t, w.Guesses, 1, "the rain has nothing to do with it")
	g := w.Guesses[0]
	assert.Equal(t, "Oil", g.Label)
	assert.InDelta(t, 142.5, g.Worth.Value, 1e-9)
	assert.Equal(t, "$143", w.All.Shown.Value)
	assert.Equal(t, "Have the ground sounded.", g.Note)
	assert.Equal(t, "a textbook", g.Source)
	assert.Equal(t, []engine.Turn{{At: 0.5, Shown: "0.5", Below: 0, Above: 1}}, g.Turns)
	assert.Equal(t, "Under about 0.5 choose as it is, above it plan a.", g.Sentence)
	assert.Equal(t, "Knowing no more than the guesses, choose plan a: left comes to $100 there on average, "+
		"and it comes out ahead in 3 seasons of 10. To know every guess beforehand would be worth $143 a season, "+
		"and change the choice in 8 seasons of 10. One guess alone is worth finding out first: oil ($143).", w.Paragraph)
}

const costs = `
      - {id: work, label: Work, guess: {low: 4, likely: 10, high: 16}, shape: even, unit: h, floor: 0}
      - {id: gas, label: Gas, guess: {low: 90, likely: 100, high: 110}, shape: even, unit: $}
      - {id: other, label: Other, guess: {low: 0, likely: 50, high: 100}, shape: even, unit: $}
      - {id: fuel, label: Fuel, choose: wood, among: [wood, gas]}
      - {id: cost, label: Cost, formula: '(fuel == "wood" ? work * of(10, "$/h") : gas) + other', unit: $}
`

// TestWorthByLessIsBetter: wood costs 40 to 160, gas 90 to 110, both evenly and
// 100 on the mean, which noise decides. Knowing the work alone saves the mean of
// max(0, 10·work − 100): 60/4 = 15; knowing the gas 10/4 = 2.5.
func TestWorthByLessIsBetter(t *testing.T) {
	books := weighed(t, costs, "change: {fuel: gas}")
	w := worthOf(t, books, "cost", engine.KnowingOptions{Better: "less"})
	require.Len(t, w.Guesses, 3)
	assert.Equal(t, "work", w.Guesses[0].ID)
	assert.Equal(t, "gas", w.Guesses[1].ID)
	assert.InDelta(t, 15, w.Guesses[0].Worth.Value, 3*w.Guesses[0].Worth.Error+0.3)
	assert.InDelta(t, 2.5, w.Guesses[1].Worth.Value, 3*w.Guesses[1].Worth.Error+0.1)
	assert.InDelta(t, 150, *w.Scenarios[0].Mean, 0.5, "a cost is told as a cost")
	require.Len(t, w.Guesses[0].Turns, 1)
	assert.InDelta(t, 10, w.Guesses[0].Turns[0].At, 0.3)
	assert.Equal(t, 0, w.Guesses[0].Turns[0].Below, "with little work wood is cheaper")

	other := w.Guesses[2]
	assert.Equal(t, "Other", other.Label)
	assert.Zero(t, other.Worth.Value, "both pay it alike")
	assert.Equal(t, "about nothing", other.Worth.Shown.Value)
	for _, g := range w.Guesses {
		assert.GreaterOrEqual(t, g.Worth.Value, 0.0)
		assert.LessOrEqual(t, g.Worth.Value, w.All.Value)
	}
}

// TestAChoiceThatStandsWhatever: nothing is worth knowing, exactly.
func TestAChoiceThatStandsWhatever(t *testing.T) {
	books := weighed(t, costs, "change: {fuel: gas, gas: {guess: {low: 200, likely: 220, high: 240}}}")
	w := worthOf(t, books, "cost", engine.KnowingOptions{Better: "less"})
	assert.Equal(t, 0, w.Best)
	assert.Zero(t, w.All.Value)
	for _, g := range w.Guesses {
		assert.Zero(t, g.Worth.Value, g.Label)
		assert.Empty(t, g.Turns, g.Label)
	}
	assert.Contains(t, w.Paragraph, "nothing is worth finding out first")
}

// TestAGuessOfOneScenarioOnly and one that two scenarios guess otherwise.
func TestGuessesThatScenariosDoNotShare(t *testing.T) {
	books := weighed(t, costs, `change: {fuel: gas, work: {guess: {low: 1, likely: 2, high: 3}}, cost: {formula: gas + other + hire}}
add:
  - title: All
    lines:
      - {id: hire, label: Hire, guess: {low: -60, likely: 0, high: 60}, shape: even, unit: $}`)
	w := worthOf(t, books, "cost", engine.KnowingOptions{Better: "less"})
	byID := map[string]engine.WorthKnowing{}
	for _, g := range w.Guesses {
		byID[g.ID] = g
	}
	require.Contains(t, byID, "hire")
	assert.InDelta(t, 15, byID["hire"].Worth.Value, 3*byID["hire"].Worth.Error+0.3)
	assert.Len(t, byID["hire"].Turns, 1)
	assert.Greater(t, byID["work"].Worth.Value, 10.0, "it still decides what wood costs")
	assert.Len(t, byID["work"].Turns, 1, "the second has it, but its cost does not hang on it")
}

func TestTurnsNeedOneGuess(t *testing.T) {
	books := weighed(t, costs, `change: {work: {guess: {low: 6, likely: 9, high: 12}}}`)
	w := worthOf(t, books, "cost", engine.KnowingOptions{Better: "less"})
	require.Equal(t, "work", w.Guesses[0].ID)
	assert.False(t, w.Guesses[0].Worth.AboutNothing)
	assert.Empty(t, w.Guesses[0].Turns, "a turn would be in one scenario's hours and not in the other's")
	assert.Empty(t, w.Guesses[0].Sentence)
}

// TestWhatMovesWithAGuessTellsOfIt: a guess that no formula reads is still worth
// knowing when it moves with one that decides.
func TestWhatMovesWithAGuessTellsOfIt(t *testing.T) {
	books := weighed(t, costs+`
      - {id: snow, label: Snow, guess: {low: 1, likely: 3, high: 9}, unit: in, floor: 0, moves_with: {work: 0.8}}
`, "change: {fuel: gas}")
	w := worthOf(t, books, "cost", engine.KnowingOptions{Better: "less"})
	assert.Equal(t, "snow", w.Guesses[1].ID)
	assert.Greater(t, w.Guesses[1].Worth.Value, 8.0)
	assert.Less(t, w.Guesses[1].Worth.Value, w.Guesses[0].Worth.Value)
}

func TestWorthInMetric(t *testing.T) {
	books := weighed(t, `
      - {id: weight, label: Weight, guess: {low: 30, likely: 40, high: 50}, shape: even, unit: lb}
      - {id: fuel, label: Fuel, choose: wood, among: [wood, gas]}
      - {id: left, label: Left, formula: 'fuel == "wood" ? weight * of(1, "$/lb") : of(40, "$")', unit: $, headline: {better: more}}
`, "change: {fuel: gas}")
	w := worthOf(t, books, "left", engine.KnowingOptions{Options: engine.Options{System: units.Metric}})
	require.Len(t, w.Guesses[0].Turns, 1)
	assert.Equal(t, "kg", w.Guesses[0].Unit)
	assert.InDelta(t, 40*0.45359237, w.Guesses[0].Turns[0].At, 0.2)
	assert.InDelta(t, 2.5, w.Guesses[0].Worth.Value, 0.1)
}

func TestWorthRefuses(t *testing.T) {
	lines := oil + `
      - {id: tall, label: Tall, is: 3, unit: ft, headline: {better: more}}
      - {id: plain, label: Plain, is: 3, unit: $}
      - {id: gone, label: Gone, formula: 'ln(-oil - 1) * of(1, "$")', unit: $, headline: {better: more}}
`
	books := weighed(t, lines, "change: {way: drill}")
	for on, code := range map[string]diag.Code{
		"lft": diag.UnknownName, "way": diag.NotANumber, "tall": diag.WrongUnit, "plain": diag.BadQuestion, "gone": diag.NotFinite,
	} {
		_, err := engine.AskWorth(books, on, engine.KnowingOptions{})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, on)
		assert.Equal(t, code, d.Code, on)
		assert.NotEmpty(t, d.Hint, on)
	}
	_, err := engine.AskWorth(books[:1], "left", engine.KnowingOptions{})
	var d diag.Diagnostic
	require.ErrorAs(t, err, &d)
	assert.Equal(t, diag.NotComparable, d.Code)
	_, err = engine.AskWorth(books, "left", engine.KnowingOptions{Options: engine.Options{Progress: func(int, int) bool { return false }}})
	assert.ErrorIs(t, err, columns.ErrStopped)
}

// BenchmarkWorth reports what asking the worth of every guess of the household
// sheet takes beside one full reckoning.
func BenchmarkWorth(b *testing.B) {
	reckon := shortest(func(book *engine.Book) {
		_, err := book.Reckon(engine.Options{Seasons: 10_000})
		require.NoError(b, err)
	}, func() *engine.Book { return shippedBook(b, "heron-ridge-pallets") })
	var w *engine.Worth
	for b.Loop() {
		took := shortest(func(book *engine.Book) {
			var err error
			w, err = engine.AskWorth([]*engine.Book{book, shippedBook(b, "heron-ridge-propane")}, "left_hours", engine.KnowingOptions{Options: engine.Options{Seasons: 10_000}})
			require.NoError(b, err)
		}, func() *engine.Book { return shippedBook(b, "heron-ridge-pallets") })
		b.ReportMetric(float64(took)/float64(reckon), "times-one-reckoning")
	}
	b.ReportMetric(float64(len(w.Guesses)), "guesses")
}
