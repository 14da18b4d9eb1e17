package engine

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// besideBase is a sheet with every kind of thing that a scenario can change.
const besideBase = `thawbook: 1
title: The ridge, wood
seasons: 2000
seed: 5
chapters:
  - title: All
    lines:
      - {id: taps, label: Taps hung, is: 10, unit: tap}
      - {id: run, label: Sap from a tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0}
      - {id: fuel, label: What burns, choose: wood, among: fuels}
      - {id: worth, label: The worth of an hour, is: 10, unit: $/h}
      - {id: gift, label: A neighbour's gift, is: 3, unit: $}
      - {id: sap, label: Sap, formula: taps * run, unit: gal, headline: {better: more}}
      - {id: work, label: Hours, formula: "sap * fuels[fuel].hours", unit: h, headline: {better: less}}
      - {id: paid, label: Paid out, formula: "sap * fuels[fuel].price - gift + sum(gear.yearly)", unit: $, headline: {better: less}}
      - {id: whole, label: Paid and worked, formula: paid + work * worth, unit: $}
    tables:
      - id: fuels
        label: Fuels
        columns: [{id: price, label: Price, unit: $/gal}, {id: hours, label: Hours, unit: h/gal}]
        rows:
          - {id: wood, label: Split wood, price: 0, hours: {guess: {low: 0.2, likely: 0.3, high: 0.5}, floor: 0}}
          - {id: gas, label: Bottled gas, price: {guess: {low: 1, likely: 2, high: 3}}, hours: 0.1}
      - id: gear
        label: Gear
        columns: [{id: price, label: Price, unit: $}, {id: yearly, label: A year of it, unit: $, formula: price / 10}]
        rows:
          - {id: pan, label: Flat pan, price: 300}
          - {id: saw, label: Saw, price: 200}
`

// besideGas changes a choice, a guess, a number, a formula and a whole column,
// and adds and drops lines that others are worked from.
const besideGas = `thawbook: 1
title: The ridge, gas
from: base.yaml
change:
  taps: 12
  run: {guess: {low: 6, likely: 9, high: 12}}
  fuel: gas
  gear.yearly: {formula: price / 8}
  paid: {formula: "sap * fuels[fuel].price + rent + sum(gear.yearly)"}
add:
  - title: All
    lines:
      - {id: rent, label: Cylinder rent, is: 25, unit: $}
    tables:
      - id: gear
        rows:
          - {id: burner, label: Burner, price: 400}
drop: [gear.saw, gift]
`

func openBeside(t testing.TB, others ...string) []*Book {
	files := map[string]string{"base.yaml": besideBase}
	names := []string{"base.yaml"}
	for i, text := range others {
		name := string(rune('a'+i)) + ".yaml"
		files[name] = text
		names = append(names, name)
	}
	var books []*Book
	for _, name := range names {
		book, list := Open(name, texts(files))
		require.Empty(t, list, name)
		books = append(books, book)
	}
	return books
}

func shippedBooks(t testing.TB, names ...string) []*Book {
	var books []*Book
	for _, name := range names {
		book, list := Open("heron-ridge-"+name+".yaml", func(name string) ([]byte, error) {
			return os.ReadFile(filepath.Join("../scenarios", name))
		})
		require.Zero(t, list.Errors(), "%v", list)
		books = append(books, book)
	}
	return books
}

func compared(t testing.TB, c *Comparison, id string) ComparedLine {
	for _, l := range c.Lines {
		if l.ID == id {
			return l
		}
	}
	require.Fail(t, "no line", id)
	return ComparedLine{}
}

func columnOfBook(t testing.TB, b *Book, id string) []float64 {
	_, err := b.Reckon(Options{})
	require.NoError(t, err)
	values, err := b.Column(id)
	require.NoError(t, err)
	return values
}

func TestCompareIsTheDifferenceSeasonBySeason(t *testing.T) {
	books := openBeside(t, besideGas)
	c, err := Compare(books, CompareOptions{})
	require.NoError(t, err)
	require.Len(t, c.Lines, 3, "the headlines, in the order of the sheet")
	assert.Equal(t, []string{"sap", "work", "paid"}, []string{c.Lines[0].ID, c.Lines[1].ID, c.Lines[2].ID})
	assert.Equal(t, 2000, c.Seasons)
	assert.Equal(t, uint64(5), c.Seed)

	x, y := columnOfBook(t, books[0], "work"), columnOfBook(t, books[1], "work")
	var apart []float64
	less := 0.0
	for i := range x {
		apart = append(apart, y[i]-x[i])
		if y[i] < x[i] {
			less++
		}
	}
	want := outcome.Summarise(apart, nil)
	work := compared(t, c, "work")
	got := work.Difference[0]
	assert.InEpsilon(t, want.P10, *got.P10, 1e-12)
	assert.InEpsilon(t, want.P50, *got.P50, 1e-12)
	assert.InEpsilon(t, want.P90, *got.P90, 1e-12)
	assert.InEpsilon(t, want.Mean, *got.Mean, 1e-12)
	assert.InDelta(t, less/2000, *got.Ahead, 1e-12, "less work is better")
	assert.InDelta(t, 1, *got.More+*got.Less+*got.Even, 1e-12)

	r, err := books[1].Reckon(Options{})
	require.NoError(t, err)
	for _, a := range r.Lines {
		if a.ID == "work" {
			assert.Equal(t, a.P10, work.Values[1].P10)
			assert.Equal(t, a.AtLikely, work.Values[1].AtLikely)
			assert.Equal(t, a.Shown.Middle, work.Values[1].Shown.Middle)
		}
	}
}

// TestSharedGuessesAreDrawnAlike is the common seasons example of a column and
// its square: Var(U - U²) = 1/180, worked out from the moments of U.
func TestSharedGuessesAreDrawnAlike(t *testing.T) {
	book := func(title, formula string) *Book {
		return openText(t, "thawbook: 1\ntitle: "+title+"\nseasons: 10000\nchapters:\n  - title: A\n    lines:\n"+
			"      - {id: u, label: U, guess: {low: 0, likely: 0.5, high: 1}, shape: even, unit: 1}\n"+
			"      - {id: x, label: X, formula: "+formula+", unit: 1, headline: {better: more}}\n")
	}
	c, err := Compare([]*Book{book("plain", "u"), book("squared", "u * u")}, CompareOptions{})
	require.NoError(t, err)
	d := compared(t, c, "x").Difference[0]
	// Of U - U² = p the quantiles are those of two sides of a parabola: a share q
	// of the seasons lies within (1 - sqrt(1-4p))/2 of either end.
	at := func(share float64) float64 { edge := share / 2; return -(edge - edge*edge) }
	assert.InEpsilon(t, at(0.5), *d.P50, 1e-3)
	assert.InEpsilon(t, at(0.9), *d.P10, 1e-3)
	assert.InEpsilon(t, at(0.1), *d.P90, 1e-3)
	assert.InEpsilon(t, -1.0/6, *d.Mean, 1e-5)
	assert.Equal(t, "less", d.Dominance)

	spread := 0.0
	x, y := columnOfBook(t, book("plain", "u"), "x"), columnOfBook(t, book("squared", "u * u"), "x")
	for i := range x {
		spread += (y[i] - x[i] + 1.0/6) * (y[i] - x[i] + 1.0/6) / float64(len(x))
	}
	assert.InEpsilon(t, 1.0/180, spread, 1e-3)
}

func TestExplainedChangesSumToTheMean(t *testing.T) {
	check := func(c *Comparison, wantMore bool) {
		explained := 0
		for _, l := range c.Lines {
			for _, d := range l.Difference {
				sum := *d.Together.Mean
				for _, e := range d.Explained {
					sum += *e.Mean
				}
				assert.InDelta(t, *d.Mean, sum, 1e-9*math.Max(1e-6, math.Abs(*d.Mean)), "%s", l.ID)
				explained = max(explained, len(d.Explained))
			}
		}
		if wantMore {
			assert.Greater(t, explained, 2)
		}
	}
	c, err := Compare(openBeside(t, besideGas), CompareOptions{On: []string{"sap", "work", "paid", "whole"}})
	require.NoError(t, err)
	check(c, true)
	c, err = Compare(shippedBooks(t, "pallets", "propane", "cordwood", "growth"), CompareOptions{Options: Options{Seasons: 1000}})
	require.NoError(t, err)
	check(c, true)
}

// TestEachChangeAloneIsWhatTryingItComesTo works the effects another way: by
// trying each change on the first book.
func TestEachChangeAloneIsWhatTryingItComesTo(t *testing.T) {
	books := openBeside(t, besideGas)
	c, err := Compare(books, CompareOptions{On: []string{"whole"}})
	require.NoError(t, err)
	gas, twelve := "gas", 12.0
	base := outcome.Summarise(columnOfBook(t, books[0], "whole"), nil).Mean
	for about, e := range map[string]sheet.Edit{
		"taps": {About: "taps", Set: sheet.Set{Is: &twelve}},
		"fuel": {About: "fuel", Set: sheet.Set{Choose: &gas}},
		"run":  {About: "run", Set: sheet.Set{Guess: &sheet.GuessValue{Low: 6, Likely: 9, High: 12}}},
	} {
		tried, list := books[0].Try(e)
		require.Empty(t, list)
		want := outcome.Summarise(columnOfBook(t, tried, "whole"), nil).Mean - base
		got := math.NaN()
		for _, have := range compared(t, c, "whole").Difference[0].Explained {
			if have.About == about {
				got = *have.Mean
			}
		}
		assert.InEpsilon(t, want, got, 1e-9, about)
	}
}

func TestChangesAreToldInTheOrderOfTheFile(t *testing.T) {
	c, err := Compare(openBeside(t, besideGas), CompareOptions{})
	require.NoError(t, err)
	assert.Empty(t, c.Scenarios[0].Changes)
	assert.Equal(t, []SheetChange{
		{"taps", "Taps hung", "10 taps", "12 taps"},
		{"run", "Sap from a tap", "5 to 14 gal/tap, likely 9 gal/tap", "6 to 12 gal/tap, likely 9 gal/tap"},
		{"fuel", "What burns", "Split wood", "Bottled gas"},
		{"paid", "Paid out", "sap * fuels[fuel].price - gift + sum(gear.yearly)", "sap * fuels[fuel].price + rent + sum(gear.yearly)"},
		{"gear.yearly", "A year of it", "price / 10", "price / 8"},
		{"", "lines added or dropped", "A neighbour's gift and Saw", "Cylinder rent and Burner"},
	}, c.Scenarios[1].Changes)
	assert.Equal(t, "wood", c.Scenarios[0].Short)
	assert.Equal(t, "gas", c.Scenarios[1].Short)

	// paid reads what was added, so it cannot change alone: it is told with that.
	// Over wood, which costs nothing, neither taps nor sap move what is paid.
	var told []string
	for _, e := range compared(t, c, "paid").Difference[0].Explained {
		told = append(told, e.Label)
	}
	assert.Equal(t, []string{"What burns", "A year of it", "lines added or dropped"}, told)
	rest := compared(t, c, "paid").Difference[0].Explained[2]
	// No gift of 3, rent of 25, a burner as the other has it at 400/8, and no saw
	// at 200/10.
	assert.InDelta(t, 3+25+50-20, *rest.Mean, 1e-9)
}

func TestChangesThatNeedEachOther(t *testing.T) {
	// The unit of one line changes, and with it the formula that reads it.
	const inPounds = `thawbook: 1
title: The ridge, by weight
from: base.yaml
change:
  worth: {is: 2, unit: h}
  whole: {formula: 'paid + work * worth * of(6, "$/h^2")'}
`
	c, err := Compare(openBeside(t, inPounds), CompareOptions{On: []string{"whole"}})
	require.NoError(t, err)
	d := compared(t, c, "whole").Difference[0]
	require.Len(t, d.Explained, 1)
	assert.Equal(t, "changes that need each other", d.Explained[0].Label)
	assert.InEpsilon(t, *d.Mean, *d.Explained[0].Mean, 1e-12)
	assert.Zero(t, *d.Together.Mean)
}

func TestManyChangesAreTriedUpToALimit(t *testing.T) {
	var lines, changes strings.Builder
	const n = mostExplained + 20
	for i := range n {
		fmt.Fprintf(&lines, "      - {id: x%d, label: X%d, is: %d, unit: $}\n", i, i, i)
		fmt.Fprintf(&changes, "  x%d: %d\n", i, 2*i+1)
	}
	base := "thawbook: 1\ntitle: Many\nseasons: 20\nchapters:\n  - title: A\n    lines:\n" + lines.String() +
		"      - {id: idle, label: Idle, is: 1, unit: $}\n" +
		"      - {id: all, label: All, formula: x0"
	for i := 1; i < n; i++ {
		base += fmt.Sprintf(" + x%d", i)
	}
	base += ", unit: $, headline: {better: less}}\n"
	files := map[string]string{"base.yaml": base, "more.yaml": "thawbook: 1\ntitle: More\nfrom: base.yaml\nchange:\n  idle: 3\n" + changes.String()}
	var books []*Book
	for _, name := range []string{"base.yaml", "more.yaml"} {
		book, list := Open(name, texts(files))
		require.Empty(t, list)
		books = append(books, book)
	}
	c, err := Compare(books, CompareOptions{})
	require.NoError(t, err)
	d := compared(t, c, "all").Difference[0]
	require.Len(t, d.Explained, mostExplained)
	assert.Equal(t, "x99", d.Explained[99].About, "in the order of the file; what nothing hangs on does not count")
	left := 0.0
	for i := mostExplained; i < n; i++ {
		left += float64(i + 1)
	}
	assert.InDelta(t, left, *d.Together.Mean, 1e-9)
	assert.Contains(t, d.Explanation, "96 smaller changes")
}

func TestUnitsAreConverted(t *testing.T) {
	const litres = "thawbook: 1\ntitle: The ridge, in litres\nfrom: base.yaml\nchange:\n  sap: {unit: L}\n"
	c, err := Compare(openBeside(t, litres), CompareOptions{On: []string{"sap"}})
	require.NoError(t, err)
	sap := compared(t, c, "sap")
	assert.Equal(t, "gal", sap.Unit)
	assert.InEpsilon(t, *sap.Values[0].P50, *sap.Values[1].P50, 1e-12)
	assert.InDelta(t, 0, *sap.Difference[0].P90, 1e-9)

	c, err = Compare(openBeside(t, besideGas), CompareOptions{On: []string{"sap"}, Options: Options{System: units.Metric}})
	require.NoError(t, err)
	metric := compared(t, c, "sap")
	assert.Equal(t, "L", metric.Unit)
	c, err = Compare(openBeside(t, besideGas), CompareOptions{On: []string{"sap"}})
	require.NoError(t, err)
	assert.InEpsilon(t, *compared(t, c, "sap").Difference[0].P50*3.785411784, *metric.Difference[0].P50, 1e-12)
	assert.True(t, strings.HasSuffix(metric.Difference[0].Shown.Middle, " L more"), metric.Difference[0].Shown.Middle)
}

func TestTemperaturesDifferByDegreesOfDifference(t *testing.T) {
	book := func(title, boils string) *Book {
		return openText(t, "thawbook: 1\ntitle: "+title+"\nchapters:\n  - title: A\n    lines:\n"+
			"      - {id: boils, label: Boils at, is: "+boils+", unit: °F, headline: true}\n")
	}
	c, err := Compare([]*Book{book("here", "212"), book("up there", "203")}, CompareOptions{Options: Options{System: units.Metric}})
	require.NoError(t, err)
	boils := compared(t, c, "boils")
	assert.InDelta(t, 100, *boils.Values[0].P50, 1e-9)
	assert.InDelta(t, -5, *boils.Difference[0].P50, 1e-9)
	assert.Nil(t, boils.Difference[0].Ahead, "the sheet does not say which is better")
	assert.Contains(t, boils.Difference[0].Sentence, "It comes to more in no season of 10")
}

func TestCompareWhatCannotBe(t *testing.T) {
	base := openBeside(t)[0]
	other := func(text string) *Book { return openBeside(t, text)[1] }
	stranger := openText(t, strings.NewReplacer("sap,", "sirup,", "sap *", "sirup *", "id: cost", "id: cash").Replace(smallSheet))
	scenario := "thawbook: 1\ntitle: Other\nfrom: base.yaml\n"
	for name, c := range map[string]struct {
		books []*Book
		on    []string
		code  diag.Code
		say   string
	}{
		"one alone":        {[]*Book{base}, nil, diag.NotComparable, "nothing to compare"},
		"another sheet":    {[]*Book{base, stranger}, nil, diag.NotComparable, "no headline line in common"},
		"another currency": {[]*Book{base, openText(t, strings.Replace(strings.ReplaceAll(besideBase, "$", "CAD"), "seasons", "money: CAD\nseasons", 1))}, nil, diag.NotComparable, "CAD"},
		"no such line":     {[]*Book{base, base}, []string{"hours"}, diag.UnknownName, `no line of "base.yaml" is called "hours"`},
		"only in one":      {[]*Book{base, other(scenario + "drop: [whole]\n")}, []string{"whole"}, diag.UnknownName, `no line of "a.yaml"`},
		"a choice":         {[]*Book{base, base}, []string{"fuel"}, diag.NotANumber, "is a choice"},
		"pounds and hours": {[]*Book{base, other(scenario + "change:\n  worth: {is: 3, unit: lb}\n  whole: {formula: paid}\n")}, []string{"worth"}, diag.UnitMismatch, `in "lb"`},
	} {
		_, err := Compare(c.books, CompareOptions{On: c.on})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, c.code, d.Code, name)
		assert.Contains(t, d.Message, c.say, name)
		assert.NotEmpty(t, d.Hint, name)
	}
	_, err := Compare([]*Book{base, base}, CompareOptions{Options: Options{Seasons: 200_000}})
	var d diag.Diagnostic
	require.ErrorAs(t, err, &d)
	assert.Equal(t, diag.TooMany, d.Code)
}

func TestAHeadlineThatIsNotInBothIsWarnedOf(t *testing.T) {
	const without = "thawbook: 1\ntitle: Other\nfrom: base.yaml\ndrop: [work]\nchange: {whole: {formula: paid}}\n"
	c, err := Compare(openBeside(t, without), CompareOptions{})
	require.NoError(t, err)
	assert.Len(t, c.Lines, 2)
	require.Len(t, c.Warnings, 1)
	assert.Equal(t, diag.Warning, c.Warnings[0].Severity)
	assert.Equal(t, "work", c.Warnings[0].About)
}

func TestSeasonsWithoutANumberAreLeftOutAndTold(t *testing.T) {
	const halves = `thawbook: 1
title: Other
from: base.yaml
change:
  sap: {formula: 'taps * run + of(1, "gal") * ln(number(run, "gal/tap") - 9) * 0'}
`
	c, err := Compare(openBeside(t, halves), CompareOptions{On: []string{"sap"}})
	require.NoError(t, err)
	d := compared(t, c, "sap").Difference[0]
	assert.InDelta(t, 1000, d.Missing, 20, "half of the guesses lie below 9")
	require.NotEmpty(t, c.Warnings)
	assert.Equal(t, d.Missing, c.Warnings[0].Seasons)
	assert.InDelta(t, 0, *d.Mean, 1e-9)
}

func TestGuessesThatMovedWithWhatIsHeldMoveAlone(t *testing.T) {
	const company = `thawbook: 1
title: A
seasons: 500
chapters:
  - title: All
    lines:
      - {id: run, label: Run, guess: {low: 5, likely: 9, high: 14}, unit: gal, floor: 0}
      - {id: sugar, label: Sugar, guess: {low: 1, likely: 2, high: 3}, unit: gal, moves_with: {run: 0.8}}
      - {id: both, label: Both, formula: 'run * sugar / of(1, "gal")', unit: gal, headline: {better: more}}
`
	fixed := strings.Replace(strings.Replace(company, "guess: {low: 5, likely: 9, high: 14}, unit: gal, floor: 0", "is: 9, unit: gal", 1), ", moves_with: {run: 0.8}", "", 1)
	c, err := Compare([]*Book{openText(t, company), openText(t, fixed)}, CompareOptions{})
	require.NoError(t, err)
	d := compared(t, c, "both").Difference[0]
	require.NotEmpty(t, d.Explained)
	assert.Equal(t, "run", d.Explained[0].About)
	assert.NotZero(t, *d.Explained[0].Mean)
}

func TestCompareCanBeStopped(t *testing.T) {
	last, of := 0, 0
	_, err := Compare(openBeside(t, besideGas), CompareOptions{Options: Options{Progress: func(done, total int) bool {
		assert.GreaterOrEqual(t, done, last)
		assert.LessOrEqual(t, done, total)
		last, of = done, total
		return true
	}}})
	require.NoError(t, err)
	assert.Equal(t, of, last, "it says when it is through")
	_, err = Compare(openBeside(t, besideGas), CompareOptions{Options: Options{Progress: func(int, int) bool { return false }}})
	assert.ErrorIs(t, err, columns.ErrStopped)
}

func TestComparingAgainSaysTheSame(t *testing.T) {
	books := openBeside(t, besideGas)
	first, err := Compare(books, CompareOptions{})
	require.NoError(t, err)
	again, err := Compare(books, CompareOptions{})
	require.NoError(t, err)
	a, err := json.Marshal(first)
	require.NoError(t, err)
	b, err := json.Marshal(again)
	require.NoError(t, err)
	assert.Equal(t, string(a), string(b))
	assert.Equal(t, besideBase, string(books[0].Source()))
	r, err := books[1].Reckon(Options{})
	require.NoError(t, err)
	assert.Zero(t, r.Worked, "the comparison left each book its seasons")
}

func TestASheetBesideItself(t *testing.T) {
	books := openBeside(t)
	c, err := Compare([]*Book{books[0], books[0]}, CompareOptions{})
	require.NoError(t, err)
	assert.NotEqual(t, c.Scenarios[0].Title, "")
	for _, l := range c.Lines {
		d := l.Difference[0]
		assert.InDelta(t, 1, *d.Even, 0)
		assert.Empty(t, d.Dominance)
		assert.Contains(t, d.Sentence, "the same in every season")
	}
}

func TestCompareInWords(t *testing.T) {
	c, err := Compare(openBeside(t, besideGas), CompareOptions{})
	require.NoError(t, err)
	paid := compared(t, c, "paid").Difference[0]
	assert.Regexp(t, `^Gas comes to \$\d+(\.\d\d)? more than wood in the middle season; 8 seasons in 10 fall between \$\d+ and \$\d+ more\. It comes out ahead in fewer than 1 season of 10\.$`, paid.Sentence)
	assert.Regexp(t, `^The mean is \$\d+ more: .*what burns \(\$\d+ more\).* and what they do only together \(.*\)\.$`, paid.Explanation)
	assert.Equal(t, "Gas beside wood. Nearly always as good or better: sap; hours. Nearly always as good or worse: paid out.", c.Paragraph)
}

func timed(do func()) float64 {
	start := time.Now()
	do()
	return time.Since(start).Seconds()
}

// BenchmarkCompare reports how many times as long three scenarios take as one
// full reckoning, with and without what explains the differences.
func BenchmarkCompare(b *testing.B) {
	once := func() float64 {
		books := shippedBooks(b, "pallets")
		return timed(func() {
			_, err := books[0].Reckon(Options{})
			require.NoError(b, err)
		})
	}
	one, all := once(), 0.0
	for b.Loop() {
		one = math.Min(one, once())
		books := shippedBooks(b, "pallets", "propane", "cordwood")
		spent := timed(func() {
			_, err := Compare(books, CompareOptions{})
			require.NoError(b, err)
		})
		if all == 0 || spent < all {
			all = spent
		}
	}
	b.ReportMetric(all/one, "times-one-reckoning")
	b.ReportMetric(one*1000, "reckoning-ms")
	b.ReportMetric(all*1000, "compare-ms")
}
