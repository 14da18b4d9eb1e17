package engine

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

const smallSheet = `thawbook: 1
title: Small
seasons: 2000
seed: 3
chapters:
  - title: Trees
    lines:
      - {id: taps, label: Taps hung, is: 10, unit: tap}
      - {id: each, label: Sap a tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0, caution: trees}
      - {id: sap, label: Sap gathered, formula: taps * each, unit: gal, headline: {better: more, goal: {at_least: 80}}}
  - title: Fire
    lines:
      - {id: fuel, label: What burns, choose: wood, among: fuels}
      - {id: cost, label: Cost, formula: "sap * fuels[fuel].price", unit: $, headline: {better: less}}
    tables:
      - id: fuels
        label: Fuels
        columns: [{id: price, label: Price, unit: $/gal}]
        rows:
          - {id: wood, label: Split wood, price: 0.5}
          - {id: gas, label: Bottled gas, price: {guess: {low: 1, likely: 2, high: 3}}, caution: propane}
`

func texts(files map[string]string) Load {
	return func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, errors.New("no such file")
		}
		return []byte(text), nil
	}
}

func openText(t testing.TB, text string) *Book {
	book, list := Open("small.yaml", texts(map[string]string{"small.yaml": text}))
	require.Empty(t, list)
	return book
}

func openShipped(t testing.TB, name string) *Book {
	book, list := Open(name, func(name string) ([]byte, error) { return os.ReadFile(filepath.Join("../scenarios", name)) })
	require.Empty(t, list, name)
	return book
}

func reckoned(t testing.TB, b *Book, o Options) *Reckoning {
	r, err := b.Reckon(o)
	require.NoError(t, err)
	return r
}

func answerOf(t testing.TB, r *Reckoning, id string) Answer {
	for _, a := range r.Lines {
		if a.ID == id {
			return a
		}
	}
	require.Fail(t, "no line "+id)
	return Answer{}
}

func ptr[T any](x T) *T { return &x }

func TestReckonSaysRangesGoalsAndCautions(t *testing.T) {
	r := reckoned(t, openText(t, smallSheet), Options{})
	sap := answerOf(t, r, "sap")
	assert.InDelta(t, 90, *sap.AtLikely, 1e-9)
	assert.InDelta(t, 90, *sap.P50, 0.5)
	assert.InDelta(t, 50, *sap.P10, 0.5, "low is the 1-in-10 season: the guess's own meaning")
	assert.InDelta(t, 140, *sap.P90, 0.5)
	assert.Equal(t, "at least 80 gal", sap.Goal)
	assert.InDelta(t, 0.62, *sap.GoalMet, 0.03)
	assert.Equal(t, "6 seasons of 10", sap.Shown.Goal)
	fuel := answerOf(t, r, "fuel")
	assert.Equal(t, "wood", fuel.Choice)
	assert.Equal(t, "Split wood", fuel.Shown.Middle)
	assert.Nil(t, fuel.P50)
	assert.Equal(t, []string{"each"}, abouts(r.Cautions), "the gas is not burnt")
	assert.Contains(t, r.Paragraph, "In the middle season: sap gathered 90 gal; cost $45.00.")
	assert.Contains(t, r.Paragraph, "The goals: sap gathered at least 80 gal in 6 seasons of 10.")
}

func abouts(cautions []Caution) []string {
	var out []string
	for _, c := range cautions {
		out = append(out, c.About)
	}
	return out
}

func TestTheChosenFuelBringsItsCaution(t *testing.T) {
	book, list := openText(t, smallSheet).Try(sheet.Edit{About: "fuel", Set: sheet.Set{Choose: ptr("gas")}})
	require.Empty(t, list)
	assert.Equal(t, []string{"each", "fuels.gas"}, abouts(reckoned(t, book, Options{}).Cautions))
}

func TestEditChangesTheTextAndNothingElse(t *testing.T) {
	book := openText(t, smallSheet)
	first := reckoned(t, book, Options{})
	edited, list := book.Edit(sheet.Edit{About: "fuels.wood.price", Set: sheet.Set{Is: ptr(0.75)}})
	require.Empty(t, list)
	assert.Equal(t, strings.Replace(smallSheet, "price: 0.5", "price: 0.75", 1), string(edited.Source()))
	assert.Equal(t, smallSheet, string(book.Source()), "the book before is as it was")
	second := reckoned(t, edited, Options{})
	assert.Equal(t, 2, second.Worked, "the price and the cost")
	assert.InEpsilon(t, 1.5**answerOf(t, first, "cost").P90, *answerOf(t, second, "cost").P90, 1e-12)
}

func TestWriteGoesBackToAnEarlierText(t *testing.T) {
	book := openText(t, smallSheet)
	first := reckoned(t, book, Options{})
	edited, list := book.Edit(sheet.Edit{About: "taps", Set: sheet.Set{Is: ptr(20.0)}})
	require.Empty(t, list)
	reckoned(t, edited, Options{})
	back, list := edited.Write([]byte(smallSheet))
	require.Empty(t, list)
	assert.Equal(t, smallSheet, string(back.Source()))
	again := reckoned(t, back, Options{})
	assert.Equal(t, 3, again.Worked, "the taps, the sap and the cost")
	assert.Equal(t, first.Lines, again.Lines)
	same, list := back.Write([]byte("not: [a sheet"))
	assert.NotEmpty(t, list)
	assert.Same(t, back, same)
}

func TestTryLeavesTheText(t *testing.T) {
	book := openText(t, smallSheet)
	tried, list := book.Try(sheet.Edit{About: "taps", Set: sheet.Set{Is: ptr(20.0)}}, sheet.Edit{About: "each", Set: sheet.Set{Formula: ptr(`of(3, "gal/tap")`)}})
	require.Empty(t, list)
	assert.Equal(t, smallSheet, string(tried.Source()))
	assert.InDelta(t, 60, *answerOf(t, reckoned(t, tried, Options{}), "sap").P50, 1e-9)
	assert.InDelta(t, 90, *answerOf(t, reckoned(t, book, Options{}), "sap").AtLikely, 1e-9)
}

func TestTryRefusesWhatCannotBe(t *testing.T) {
	book := openText(t, smallSheet)
	for name, c := range map[string]struct {
		edit sheet.Edit
		code diag.Code
	}{
		"no such line": {sheet.Edit{About: "tapz", Set: sheet.Set{Is: ptr(1.0)}}, diag.EditUnknown},
		"a choice":     {sheet.Edit{About: "fuel", Set: sheet.Set{Is: ptr(1.0)}}, diag.WrongKind},
		"a number":     {sheet.Edit{About: "taps", Set: sheet.Set{Choose: ptr("gas")}}, diag.WrongKind},
		"no choice":    {sheet.Edit{About: "fuel", Set: sheet.Set{Choose: ptr("coal")}}, diag.UnknownChoice},
		"below floor":  {sheet.Edit{About: "each", Set: sheet.Set{Is: ptr(-1.0)}}, diag.OutOfBounds},
		"unfit":        {sheet.Edit{About: "each", Set: sheet.Set{Guess: &sheet.GuessValue{Low: 9, Likely: 9.01, High: 90}}}, diag.GuessUnfit},
		"one record":   {sheet.Edit{About: "taps", Set: sheet.Set{Records: []float64{1}}}, diag.RecordsFew},
		"formula":      {sheet.Edit{About: "taps", Set: sheet.Set{Formula: ptr("sapp * 2")}}, diag.UnknownName},
	} {
		same, list := book.Try(c.edit)
		require.Len(t, list, 1, name)
		assert.Equal(t, c.code, list[0].Code, name)
		assert.NotEmpty(t, list[0].Hint, name)
		assert.Same(t, book, same, name)
	}
}

func TestAWrongLineLeavesTheOthersReckoned(t *testing.T) {
	text := strings.Replace(smallSheet, "sap * fuels[fuel].price", "sapp * fuels[fuel].price", 1)
	book, list := Open("small.yaml", texts(map[string]string{"small.yaml": text}))
	require.Len(t, list, 1)
	assert.Equal(t, diag.UnknownName, list[0].Code)
	assert.Equal(t, `did you mean "sap"?`, list[0].Hint)
	assert.Equal(t, 14, list[0].Place.Line)
	r := reckoned(t, book, Options{})
	assert.Nil(t, answerOf(t, r, "cost").P50)
	assert.NotNil(t, answerOf(t, r, "sap").P50)
}

func TestLongRunsAgreeWithKeptOnes(t *testing.T) {
	book := openText(t, smallSheet)
	s := columns.Seasons{N: 20_000, Seed: 5}
	kept, err := book.reckon(s, nil)
	require.NoError(t, err)
	long, err := book.reckonLong(columns.Lower(book.plan), s, nil)
	require.NoError(t, err)
	for i := range book.plan.Slots {
		if book.plan.Slots[i].Line.Kind == sheet.Choose {
			continue
		}
		a, b := kept.summaries[i], long.summaries[i]
		assert.InEpsilon(t, a.Mean, b.Mean, 1e-12)
		assert.InDelta(t, a.P10, b.P10, 0.002*(1+a.P90-a.P10))
		assert.InDelta(t, a.P90, b.P90, 0.002*(1+a.P90-a.P10))
		assert.Equal(t, kept.met[i], long.met[i])
	}
}

func TestAMillionSeasonsReportProgressAndStop(t *testing.T) {
	calls := 0
	_, err := openText(t, smallSheet).Reckon(Options{Seasons: 1_000_000, Progress: func(done, total int) bool {
		calls++
		return calls < 20
	}})
	assert.ErrorIs(t, err, columns.ErrStopped)
	assert.Equal(t, 20, calls)
}

func TestSeasonsOutOfRange(t *testing.T) {
	for _, n := range []int{-1, 1_000_001} {
		_, err := openText(t, smallSheet).Reckon(Options{Seasons: n})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d)
		assert.Equal(t, diag.TooMany, d.Code)
	}
	r := reckoned(t, openText(t, smallSheet), Options{Seasons: 20})
	require.Len(t, r.Warnings, 1)
	assert.Equal(t, diag.FewSeasons, r.Warnings[0].Code)
}

func TestMetricIsShownAndNotWritten(t *testing.T) {
	r := reckoned(t, openText(t, smallSheet), Options{System: units.Metric})
	each := answerOf(t, r, "each")
	assert.Equal(t, "L/tap", each.Unit)
	assert.InEpsilon(t, 9*3.785411784, *each.AtLikely, 1e-12)
	assert.Equal(t, "at least 303 L", answerOf(t, r, "sap").Goal)
}

func TestWarningsOfARunSayWhereAndHowOften(t *testing.T) {
	text := strings.Replace(smallSheet, "sap * fuels[fuel].price", `sap * fuels[fuel].price / (each > of(9, \"gal/tap\") ? 1 : 0)`, 1)
	r := reckoned(t, openText(t, text), Options{})
	require.Len(t, r.Warnings, 1)
	w := r.Warnings[0]
	assert.Equal(t, diag.NotFinite, w.Code)
	assert.Equal(t, "cost", w.About)
	assert.Equal(t, "divides by nothing", w.Message)
	assert.InDelta(t, 1000, w.Seasons, 30)
	assert.Equal(t, 2000, w.Of)
	require.NotNil(t, w.Place.Formula)
	assert.NotNil(t, answerOf(t, r, "cost").P50, "the seasons that came to a number are ranged")
}

func TestOutOfRangeIsAWarningAndNoNumber(t *testing.T) {
	text := strings.Replace(smallSheet, "sap * fuels[fuel].price", `number(density(of(99, \"°Bx\"), of(20, \"°C\")), \"kg/m³\") * of(1, \"$\")`, 1)
	r := reckoned(t, openText(t, text), Options{})
	require.Len(t, r.Warnings, 1)
	assert.Equal(t, diag.OutOfRange, r.Warnings[0].Code)
	assert.Equal(t, `brix of "density" is 99 °Bx, known only from 0 °Bx to 85 °Bx`, r.Warnings[0].Message)
	assert.Nil(t, answerOf(t, r, "cost").P50)
	assert.Equal(t, "no number", answerOf(t, r, "cost").Shown.Middle)
}

// TestEveryShippedSheetReckons opens each sheet that comes with the project and
// reckons it: no diagnostic, no warning, a number on every line, both systems.
func TestEveryShippedSheetReckons(t *testing.T) {
	files, err := filepath.Glob("../scenarios/*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	for _, file := range files {
		book := openShipped(t, filepath.Base(file))
		r := reckoned(t, book, Options{})
		assert.Empty(t, r.Warnings, file)
		headlines := 0
		for _, a := range r.Lines {
			if a.Kind != "choose" {
				assert.NotNil(t, a.P50, "%s %s", file, a.ID)
			}
			if a.Headline {
				headlines++
			}
		}
		assert.GreaterOrEqual(t, headlines, 4, file)
		assert.NotEmpty(t, r.Paragraph, file)
		assert.NotEmpty(t, r.Cautions, file)
		again := reckoned(t, book, Options{System: units.Metric})
		assert.Zero(t, again.Worked)
	}
}

// TestScenariosShareSeasons holds scenarios of one sheet to the same draws.
func TestScenariosShareSeasons(t *testing.T) {
	pallets, propane := openShipped(t, "heron-ridge-pallets.yaml"), openShipped(t, "heron-ridge-propane.yaml")
	reckoned(t, pallets, Options{})
	reckoned(t, propane, Options{})
	a, err := pallets.Column("sap_per_tap")
	require.NoError(t, err)
	b, err := propane.Column("sap_per_tap")
	require.NoError(t, err)
	assert.Equal(t, a, b)
}

func TestSeasonsOfTen(t *testing.T) {
	for share, want := range map[float64]string{0: "no season of 10", 0.01: "fewer than 1 season of 10", 0.1: "1 season of 10",
		0.449: "4 seasons of 10", 0.94: "9 seasons of 10", 0.97: "more than 9 seasons of 10", 1: "10 seasons of 10"} {
		assert.Equal(t, want, seasonsOfTen(&share), fmt.Sprint(share))
	}
	assert.Empty(t, seasonsOfTen(nil))
}

func TestViewShowsWhatWasWritten(t *testing.T) {
	v := openText(t, smallSheet).View()
	require.Len(t, v.Chapters, 2)
	assert.InDelta(t, 9, v.Chapters[0].Lines[1].Guess.Likely, 0)
	assert.True(t, v.Chapters[0].Lines[2].Headline)
	assert.InDelta(t, 80, *v.Chapters[0].Lines[2].Goal.AtLeast, 0)
	assert.Equal(t, []NameView{{"wood", "Split wood"}, {"gas", "Bottled gas"}}, v.Chapters[1].Lines[0].Among)
	cell := v.Chapters[1].Tables[0].Rows[1].Cells[0]
	assert.Equal(t, "fuels.gas.price", cell.ID)
	assert.Equal(t, "guess", cell.Kind)
	assert.Contains(t, v.Chapters[1].Tables[0].Rows[1].Caution, "10 ft from a building")
	assert.Equal(t, smallSheet, v.Source)
}

func TestOpenTellsWhatCannotBeRead(t *testing.T) {
	book, list := Open("none.yaml", texts(nil))
	assert.Nil(t, book)
	require.Len(t, list, 1)
	assert.Equal(t, diag.FromMissing, list[0].Code)
	_, list = Open("a.yaml", texts(map[string]string{"a.yaml": "thawbook: 1\nfrom: nowhere.yaml\n"}))
	require.NotEmpty(t, list)
	assert.Equal(t, 2, list[0].Place.Line)
}
