package engine

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

func ids(r *Reckoning) []string {
	out := []string{}
	for _, a := range r.Lines {
		out = append(out, a.ID)
	}
	return out
}

func TestOnlyWhatChangedIsTold(t *testing.T) {
	book := openText(t, smallSheet)
	all := reckoned(t, book, Options{})
	assert.False(t, all.Changed)
	again := reckoned(t, book, Options{Told: all})
	assert.True(t, again.Changed)
	assert.Empty(t, ids(again))
	assert.Equal(t, all.Paragraph, again.Paragraph, "said in whole")

	tried, list := book.Try(sheet.Edit{About: "fuels.wood.price", Set: sheet.Set{Is: ptr(0.75)}})
	require.Empty(t, list)
	some := reckoned(t, tried, Options{Told: again})
	assert.Equal(t, []string{"cost", "fuels.wood.price"}, ids(some))
	assert.Equal(t, reckoned(t, tried, Options{}).Paragraph, some.Paragraph)

	back := reckoned(t, book, Options{Told: some})
	assert.Equal(t, []string{"cost", "fuels.wood.price"}, ids(back), "what went back is told again")
	assert.Equal(t, answerOf(t, all, "cost"), answerOf(t, back, "cost"))
}

// Laid over what was told before, what is told of every change is what would be
// told in whole.
func TestWhatIsToldAddsUp(t *testing.T) {
	book := openShipped(t, "heron-ridge-pallets.yaml")
	told := reckoned(t, book, Options{Seasons: 500})
	now := map[string]Answer{}
	for _, a := range told.Lines {
		now[a.ID] = a
	}
	for _, e := range []sheet.Edit{
		{About: "taps", Set: sheet.Set{Is: ptr(90.0)}},
		{About: "fuel", Set: sheet.Set{Choose: ptr("propane")}},
		{About: "sap_per_tap", Set: sheet.Set{Guess: &sheet.GuessValue{Low: 5, Likely: 8, High: 12}}},
		{About: "jars.quart.price", Set: sheet.Set{Is: ptr(30.0)}},
	} {
		tried, list := book.Try(e)
		require.Empty(t, list)
		told = reckoned(t, tried, Options{Seasons: 500, Told: told})
		assert.True(t, told.Changed)
		assert.Less(t, len(told.Lines), len(now), e.About)
		for _, a := range told.Lines {
			now[a.ID] = a
		}
		whole := reckoned(t, tried, Options{Seasons: 500})
		for _, a := range whole.Lines {
			require.Equal(t, a, now[a.ID], "%s after %s", a.ID, e.About)
		}
	}
}

func TestAllIsToldWhenNothingCanBeLeftOut(t *testing.T) {
	book := openText(t, smallSheet)
	all := reckoned(t, book, Options{})
	assert.False(t, reckoned(t, book, Options{Told: all, System: units.Metric}).Changed, "other units")
	assert.Len(t, reckoned(t, book, Options{Told: all, Seasons: 900}).Lines, len(all.Lines)-3, "steady lines are the same of fewer seasons")
	assert.Len(t, reckoned(t, book, Options{Told: all, Seasons: 200_000}).Lines, len(all.Lines), "no columns are kept of so many")
	other, list := book.Edit(sheet.Edit{About: "new", Add: &sheet.Add{Chapter: "Fire"}, Set: sheet.Set{Is: ptr(1.0), Unit: ptr("h")}})
	require.Empty(t, list)
	assert.Len(t, reckoned(t, other, Options{Told: all}).Lines, len(all.Lines)+1)
}

func TestTwentySeasonsStandForAHeadline(t *testing.T) {
	r := reckoned(t, openText(t, smallSheet), Options{System: units.Metric})
	sap := answerOf(t, r, "sap")
	require.Len(t, sap.Dots, 20)
	met := 0
	for i, x := range sap.Dots {
		assert.Equal(t, x >= 80*3.785411784, sap.GoalDots[i])
		if sap.GoalDots[i] {
			met++
		}
	}
	assert.InDelta(t, *sap.GoalMet, float64(met)/20, 0.05)
	assert.InDelta(t, *sap.P50, (sap.Dots[9]+sap.Dots[10])/2, 0.02*(*sap.P50))
	assert.Empty(t, answerOf(t, r, "each").Dots, "no headline")
	assert.Empty(t, answerOf(t, r, "cost").GoalDots, "no goal")
}
