package engine_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// bookOf opens a sheet whose lines are given as YAML, one a line.
func movingBook(t testing.TB, lines string) *engine.Book {
	text := "thawbook: 1\ntitle: Ridge\nseasons: 10000\nseed: 41\nchapters:\n  - title: All\n    lines:\n" + lines
	book, list := engine.Open("ridge.yaml", func(string) ([]byte, error) { return []byte(text), nil })
	require.Empty(t, list)
	return book
}

func moversOf(t testing.TB, b *engine.Book, of string) *engine.Movers {
	m, err := b.Movers(of, engine.Options{})
	require.NoError(t, err)
	return m
}

// near wants a share within three of its own errors of want, and the errors
// no larger than a hundredth and a half.
func near(t *testing.T, want float64, got engine.Share, what string) {
	t.Helper()
	require.NotNil(t, got.Value, what)
	assert.InDelta(t, want, *got.Value, 3**got.Error+1e-12, what)
	assert.Less(t, *got.Error, 0.015, what)
}

const linear = `
      - {id: a, label: Sap, guess: {low: 0, likely: 5, high: 10}, shape: even, unit: gal}
      - {id: b, label: Spill, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: gal}
      - {id: c, label: Beside, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: gal}
      - {id: k, label: Kept, is: 3, unit: gal}
      - {id: out, label: Left, formula: a - b + k, unit: gal}
      - {id: sure, label: Sure, formula: k * 2, unit: gal}
`

// TestMoversOfADifference: even draws 10 and 4 wide have variances 100/12 and
// 16/12, so they share the spread as 100 to 16.
func TestMoversOfADifference(t *testing.T) {
	m := moversOf(t, movingBook(t, linear), "out")
	require.Len(t, m.Movers, 2)
	a, b := m.Movers[0], m.Movers[1]
	assert.Equal(t, "a", a.Guesses[0].ID)
	near(t, 100.0/116, a.First, "first of a")
	near(t, 100.0/116, a.Total, "total of a")
	near(t, 16.0/116, b.First, "first of b")
	near(t, 16.0/116, b.Total, "total of b")
	near(t, 1, m.Alone, "all alone")
	assert.False(t, a.Interacts || b.Interacts)
	assert.Equal(t, "about zero", a.Together.Shown)
	assert.Equal(t, []engine.Named{{ID: "c", Label: "Beside"}}, m.Apart)

	// At likely numbers 5 − 2 + 3; a goes from 1 to 9, b from 0.4 to 3.6.
	sap, spill := a.Guesses[0], b.Guesses[0]
	assert.InDelta(t, 2, *sap.AtLow, 1e-9)
	assert.InDelta(t, 10, *sap.AtHigh, 1e-9)
	assert.Equal(t, "up", sap.Direction)
	assert.InDelta(t, 7.6, *spill.AtLow, 1e-9)
	assert.InDelta(t, 4.4, *spill.AtHigh, 1e-9)
	assert.Equal(t, "down", spill.Direction)
	assert.Equal(t, engine.ShownMoving{Low: "0.4 gal", High: "3.6 gal", AtLow: "7.6 gal", AtHigh: "4.4 gal"}, spill.Shown)
	assert.InDelta(t, 6, *m.Outcome.AtLikely, 1e-9)
	assert.Equal(t, "All", m.Outcome.Chapter)
	assert.Contains(t, m.Paragraph, "Sap moves left most")
	assert.NotContains(t, m.Paragraph, "together")
}

func TestMoversSayWhatActsTogether(t *testing.T) {
	m := moversOf(t, movingBook(t, `
      - {id: a, label: Sap, guess: {low: 0, likely: 0.5, high: 1}, shape: even, unit: gal}
      - {id: b, label: Price, guess: {low: 0, likely: 0.5, high: 1}, shape: even, unit: $/gal}
      - {id: out, label: Income, formula: a * b, unit: $}
`), "out")
	// V = 7/144; each alone 1/48.
	for _, mover := range m.Movers {
		near(t, 3.0/7, mover.First, "first")
		near(t, 4.0/7, mover.Total, "total")
		near(t, 1.0/7, mover.Together, "together")
		assert.True(t, mover.Interacts)
	}
	near(t, 6.0/7, m.Alone, "alone")
	assert.Regexp(t, `About 1[345] % of the spread arises only where guesses act together, most of all (sap and price|price and sap)\.`, m.Paragraph)
}

// TestGuessesThatMoveTogetherAreOne: two guesses in step of ranks, one against
// the other, are drawn anew as one.
func TestGuessesThatMoveTogetherAreOne(t *testing.T) {
	m := moversOf(t, movingBook(t, `
      - {id: a, label: Sap, guess: {low: 0, likely: 5, high: 10}, shape: even, unit: gal}
      - {id: b, label: Loss, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: gal, moves_with: {a: -0.9}}
      - {id: d, label: Rain, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: gal, moves_with: {b: 0.5}}
      - {id: c, label: Other, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: gal}
      - {id: out, label: Left, formula: a - b + c, unit: gal}
`), "out")
	require.Len(t, m.Movers, 2)
	both := m.Movers[0]
	require.Len(t, both.Guesses, 2, "d moves with them, but the outcome does not hang on it")
	assert.Equal(t, "Sap and loss", both.Label)
	// 5 − 2 + 2 at likely numbers; each is swung by itself.
	assert.InDelta(t, 1, *both.Guesses[0].AtLow, 1e-9)
	assert.InDelta(t, 9, *both.Guesses[0].AtHigh, 1e-9)
	assert.Equal(t, "down", both.Guesses[1].Direction)
	assert.Contains(t, m.Paragraph, "Sap and loss, which move together, move left most: they have")
	// Var(a − b) = (100 + 16 + 2·0.9·10·4)/12, for even draws linear and rank
	// correlation are one.
	want := 188.0 / 204
	near(t, want, both.First, "both by themselves")
	near(t, want, both.Total, "both in all")
	near(t, 1-want, m.Movers[1].Total, "the other")
	assert.Equal(t, []engine.Named{{ID: "d", Label: "Rain"}}, m.Apart)
}

func TestMoversOfWhatNeverVaries(t *testing.T) {
	m := moversOf(t, movingBook(t, linear), "sure")
	assert.Empty(t, m.Movers)
	assert.Len(t, m.Apart, 3)
	assert.Nil(t, m.Alone.Value)
	assert.Equal(t, "none", m.Alone.Shown)
	assert.Equal(t, "Sure is the same in every season: no guess moves it.", m.Paragraph)
}

// TestMoversOfAGuess: a guess is its own only mover.
func TestMoversOfAGuess(t *testing.T) {
	m := moversOf(t, movingBook(t, linear), "a")
	require.Len(t, m.Movers, 1)
	near(t, 1, m.Movers[0].Total, "all of it")
	assert.Equal(t, "100 %", m.Movers[0].Total.Shown)
}

func TestMoversCountSeasonsWithoutANumber(t *testing.T) {
	m := moversOf(t, movingBook(t, `
      - {id: a, label: Sap, guess: {low: -1, likely: 4, high: 9}, shape: even, unit: "1"}
      - {id: b, label: Other, guess: {low: 0, likely: 2, high: 4}, shape: even, unit: "1"}
      - {id: out, label: Left, formula: sqrt(a) + b, unit: "1"}
`), "out")
	require.Len(t, m.Movers, 2)
	for _, mover := range m.Movers {
		// 1 season in 10 of each of the two or three columns.
		assert.Greater(t, mover.Missing, 1500)
		assert.Less(t, mover.Missing, 3500)
		assert.False(t, math.IsNaN(*mover.Total.Value))
	}
}

// TestAGuessThatIsNotPicked is read by the outcome and does nothing to it.
func TestAGuessThatIsNotPicked(t *testing.T) {
	m := moversOf(t, movingBook(t, `
      - {id: fuel, label: Fuel, choose: x, among: [x, y]}
      - {id: a, label: Wood, guess: {low: 1, likely: 4, high: 9}, unit: $, floor: 0}
      - {id: b, label: Gas, guess: {low: 0.5, likely: 2, high: 4}, unit: $, floor: 0}
      - {id: out, label: Cost, formula: 'fuel == "x" ? a : b', unit: $}
`), "out")
	require.Len(t, m.Movers, 2)
	assert.Equal(t, "Gas", m.Movers[1].Label)
	assert.Equal(t, "none", m.Movers[1].Total.Shown)
	assert.Empty(t, m.Movers[1].Guesses[0].Direction)
	assert.NotContains(t, m.Paragraph, "other", "what does nothing is not counted among those that do")
}

func TestMoversInMetric(t *testing.T) {
	m, err := movingBook(t, linear).Movers("out", engine.Options{System: units.Metric})
	require.NoError(t, err)
	assert.Equal(t, "L", m.Outcome.Unit)
	assert.InEpsilon(t, 10*3.785411784, *m.Movers[0].Guesses[0].AtHigh, 1e-9)
	assert.InEpsilon(t, 9*3.785411784, m.Movers[0].Guesses[0].High, 1e-9)
	assert.InDelta(t, *moversOf(t, movingBook(t, linear), "out").Movers[0].Total.Value, *m.Movers[0].Total.Value, 1e-9)
}

func TestMoversRefuse(t *testing.T) {
	b := movingBook(t, linear+`
      - {id: cold, label: Cold, formula: a > b, unit: yes/no}
      - {id: fuel, label: Fuel, choose: x, among: [x, y]}
`)
	for of, code := range map[string]diag.Code{"ot": diag.UnknownName, "cold": diag.NotANumber, "fuel": diag.NotANumber} {
		_, err := b.Movers(of, engine.Options{})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, of)
		assert.Equal(t, code, d.Code, of)
		assert.NotEmpty(t, d.Hint, of)
	}
	_, err := b.Movers("out", engine.Options{Seasons: -1})
	assert.Error(t, err)
	calls := 0
	_, err = b.Movers("out", engine.Options{Progress: func(done, total int) bool {
		calls++
		assert.LessOrEqual(t, done, total)
		return done*2 < total
	}})
	assert.ErrorIs(t, err, columns.ErrStopped)
	assert.Positive(t, calls)
}

// TestMoversOfEveryHeadline asks it of the shipped sheets: shares must make
// sense wherever they come from.
func TestMoversOfEveryHeadline(t *testing.T) {
	files, err := filepath.Glob("../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		book, list := engine.Open(filepath.ToSlash(file), os.ReadFile)
		require.Zero(t, list.Errors(), file)
		view := book.View()
		for _, chapter := range view.Chapters {
			for _, line := range chapter.Lines {
				if !line.Headline {
					continue
				}
				m, err := book.Movers(line.ID, engine.Options{Seasons: 1000})
				require.NoError(t, err)
				checkMovers(t, m, file+" "+line.ID)
			}
		}
	}
}

func checkMovers(t *testing.T, m *engine.Movers, what string) {
	last := math.Inf(1)
	for _, mover := range m.Movers {
		first, total := *mover.First.Value, *mover.Total.Value
		assert.LessOrEqual(t, total, last, "%s: in order", what)
		last = total
		assert.GreaterOrEqual(t, total, 0.0, what)
		assert.LessOrEqual(t, first, total+4**mover.Together.Error+1e-9, "%s: %s does no more alone than in all", what, mover.Label)
	}
	if m.Alone.Value != nil {
		assert.LessOrEqual(t, *m.Alone.Value, 1+4**m.Alone.Error, "%s: no more than the whole", what)
	}
	assert.NotEmpty(t, m.Paragraph, what)
}
