package engine

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// gearOf is a sheet with a rate, an hour's worth and one piece of gear.
func gearOf(t testing.TB, rate, row string) *Book {
	return openText(t, fmt.Sprintf(`thawbook: 1
title: Gear
seasons: 1000
chapters:
  - title: All
    lines:
      - {id: rate, label: What money costs, is: %s, unit: "%%"}
      - {id: worth, label: An hour, is: 15, unit: $/h}
    tables:
      - id: gear
        label: What wears
        columns:
          - {id: price, label: Price, unit: $}
          - {id: life, label: Lasts, unit: year}
          - {id: left_over, label: Fetches then, unit: "%%"}
          - {id: saves_money, label: Saves, unit: $, formula: 'of(0, "$")'}
          - {id: saves_hours, label: Hours it saves, unit: h, formula: 'of(0, "h")'}
        rows:
          - {id: bucket, label: Buckets, price: 50, life: 5, left_over: 0}
          - {id: one, label: The thing, %s}
`, rate, row))
}

func pieceOf(t testing.TB, b *Book, q GearQuestion) GearPiece {
	t.Helper()
	list, err := b.Gear(q)
	require.NoError(t, err)
	require.Empty(t, list.Warnings)
	require.Len(t, list.Pieces, 1)
	return list.Pieces[0]
}

// TestGearAgainstWorkedAnnuities: a thing that saves its price times the capital
// recovery factor i(1+i)ⁿ/((1+i)ⁿ-1) is paid back in exactly its life. Factors as
// printed in interest tables of engineering economy.
func TestGearAgainstWorkedAnnuities(t *testing.T) {
	for _, c := range []struct {
		rate   string
		years  int
		factor float64
	}{{"5", 10, 0.12950457}, {"8", 10, 0.14902949}, {"10", 5, 0.26379748}, {"0", 10, 0.1}} {
		row := "price: 1000, life: %d, left_over: 0, saves_money: %.5f"
		p := pieceOf(t, gearOf(t, c.rate, fmt.Sprintf(row, c.years, 1000*c.factor)), GearQuestion{})
		assert.InDelta(t, c.years, *p.Money.Years.P50, 1e-5, "%v %% over %d years", c.rate, c.years)
		assert.InDelta(t, 1000*c.factor, *p.YearShare.P50, 1e-5)
		assert.InDelta(t, 0, *p.Money.Leaves.P50, 1e-5)

		more := pieceOf(t, gearOf(t, c.rate, fmt.Sprintf(row, c.years, 1000*c.factor+0.01)), GearQuestion{})
		assert.Equal(t, 1.0, *more.Money.Repays)
		assert.Less(t, *more.Money.Years.P50, float64(c.years))
		less := pieceOf(t, gearOf(t, c.rate, fmt.Sprintf(row, c.years, 1000*c.factor-0.01)), GearQuestion{})
		assert.Zero(t, *less.Money.Repays)
		assert.Greater(t, *less.Money.Years.P50, float64(c.years))
	}
}

// TestGearWithSomethingLeftOver: $100,000, 20 % left after 15 years, money at
// 10 %: $12,517.90 a year, a problem of a board of engineers' examination.
func TestGearWithSomethingLeftOver(t *testing.T) {
	row := "price: 100000, life: 15, left_over: 20, saves_money: %.2f"
	p := pieceOf(t, gearOf(t, "10", fmt.Sprintf(row, 12517.91)), GearQuestion{})
	assert.InDelta(t, 12517.90, *p.YearShare.P50, 0.01)
	assert.Equal(t, 1.0, *p.Money.Repays, "what it fetches counts")
	assert.Greater(t, *p.Money.Years.P50, 15.0, "the saving alone is not enough")
	p = pieceOf(t, gearOf(t, "10", fmt.Sprintf(row, 12517.89)), GearQuestion{})
	assert.Zero(t, *p.Money.Repays)
}

// TestGearInHours by hand: $300 over 4 years is $75 a year; 10 hours at $15 are
// $150, so it is paid back in 2 years, leaves $75 a year and asks $7.50 an hour.
func TestGearInHours(t *testing.T) {
	b := gearOf(t, "0", "price: 300, life: 4, left_over: 0, saves_hours: 10")
	p := pieceOf(t, b, GearQuestion{})
	assert.Equal(t, "gear.one", p.ID)
	assert.Nil(t, p.Money.Years.P50, "it saves no money")
	assert.Equal(t, "never", p.Money.Years.Shown)
	assert.Zero(t, *p.Money.Repays)
	require.NotNil(t, p.WithHours)
	assert.InDelta(t, 2, *p.WithHours.Years.P50, 1e-12)
	assert.InDelta(t, 75, *p.WithHours.Leaves.P50, 1e-12)
	assert.Equal(t, "10 seasons of 10", p.WithHours.ShownRepays)
	assert.InDelta(t, 7.5, *p.HourCosts.P50, 1e-12)
	assert.Equal(t, "The thing costs $300 and saves 10 h a year. With an hour at $15.00/h it pays itself back in 2 years, "+
		"and it pays within its 4 years in 10 seasons of 10, leaving $75.00 a year. "+
		"In money alone it never pays itself back in the middle season. An hour it saves costs $7.50/h.", p.Sentence)

	// At less than $7.50 an hour it does not pay.
	for worth, want := range map[string]float64{"7.51": 1, "7.49": 0} {
		assert.Equal(t, want, *pieceOf(t, b, GearQuestion{Worth: worth}).WithHours.Repays, worth)
	}
	list, err := b.Gear(GearQuestion{})
	require.NoError(t, err)
	assert.Equal(t, []string{"Buckets"}, list.Silent)
	assert.Equal(t, GearTerm{"worth", "An hour", "$15.00/h"}, *list.Worth)
	assert.Equal(t, GearTerm{"rate", "What money costs", "0 %"}, list.Rate)
}

// TestGearOverTheSeasons: one season in five saves nothing, so it never repays
// then; that counts as longer than any time.
func TestGearOverTheSeasons(t *testing.T) {
	p := pieceOf(t, gearOf(t, "0", "price: 100, life: 3, left_over: 0, saves_money: {records: [0, 20, 40, 50, 100]}"), GearQuestion{})
	years := p.Money.Years
	assert.InDelta(t, 1, *years.P10, 1e-12)
	assert.InDelta(t, 2.5, *years.P50, 1e-12)
	assert.Nil(t, years.P90)
	assert.Equal(t, "2.5 years", years.Shown)
	assert.Equal(t, "1 year to never", years.Range)
	assert.InDelta(t, 0.6, *p.Money.Repays, 1e-12, "40, 50 and 100 are a third of the price or more")
	assert.Nil(t, p.HourCosts)
	assert.Zero(t, p.Missing)
}

func TestGearReadsTimesAndYears(t *testing.T) {
	b := openText(t, `thawbook: 1
title: Gear
seasons: 100
chapters:
  - title: All
    tables:
      - id: kit
        columns:
          - {id: price, unit: $}
          - {id: life, unit: month}
          - {id: saves_money, unit: $/month}
          - {id: saves_hours, unit: min/day}
        rows:
          - {id: one, label: Press, price: 120, life: 24, saves_money: 10, saves_hours: 6}
`)
	p := pieceOf(t, b, GearQuestion{Rate: "0.05", Worth: "2"})
	assert.InDelta(t, 2, *p.Life.P50, 1e-9)
	assert.InDelta(t, 120, *p.SavesMoney.P50, 1e-9)
	assert.InDelta(t, 36.525, *p.SavesHours.P50, 1e-9, "a tenth of an hour on 365.25 days")
	// By the capital recovery factor for 2 years at 5 %, 0.05·1.1025/0.1025.
	assert.InDelta(t, 120*0.05*1.1025/0.1025, *p.YearShare.P50, 1e-9)
	assert.InDelta(t, -math.Log(1-0.05)/math.Log(1.05), *p.Money.Years.P50, 1e-9, "120 of 120 a year")
	assert.InDelta(t, 120+73.05-*p.YearShare.P50, *p.WithHours.Leaves.P50, 1e-9)

	list, err := b.Gear(GearQuestion{})
	require.NoError(t, err)
	assert.Nil(t, list.Worth)
	assert.Nil(t, list.Pieces[0].WithHours, "nobody says what an hour is worth")
	assert.Equal(t, "0 %", list.Rate.Shown)
	assert.InDelta(t, 1, *list.Pieces[0].Money.Years.P50, 1e-9)
}

func TestGearTellsWhatCannotBeWeighed(t *testing.T) {
	text := `thawbook: 1
title: Gear
seasons: 100
chapters:
  - title: All
    lines: [{id: worth, label: An hour, is: 15, unit: $/h}]
    tables:
      - id: kit
        columns: [{id: price, unit: $}, {id: life, unit: year}, {id: saves_hours, unit: %s}]
        rows:
          - {id: one, label: Press, price: 120, life: %s, saves_hours: 4}
          - {id: two, label: Pump, price: 80, life: 4, saves_hours: 4}
`
	for _, c := range []struct {
		unit, life string
		pieces     int
		codes      []diag.Code
	}{
		{"h", "{formula: nothing}", 1, []diag.Code{diag.WaitsFor}},
		{"gal", "3", 0, []diag.Code{diag.UnitMismatch, diag.UnitMismatch}},
		{`"%"`, "3", 0, []diag.Code{diag.UnitMismatch, diag.UnitMismatch}},
		{"h/year", "3", 2, nil},
	} {
		b, _ := Open("small.yaml", texts(map[string]string{"small.yaml": fmt.Sprintf(text, c.unit, c.life)}))
		list, err := b.Gear(GearQuestion{})
		require.NoError(t, err)
		assert.Len(t, list.Pieces, c.pieces, c.unit)
		var codes []diag.Code
		for _, w := range list.Warnings {
			codes = append(codes, w.Code)
		}
		assert.Equal(t, c.codes, codes, c.unit)
	}

	// A life of nothing has no year's share; the seasons are counted.
	p := pieceOf(t, gearOf(t, "5", "price: 100, life: {records: [0, 4]}, left_over: 0, saves_money: 60"), GearQuestion{})
	assert.Equal(t, 500, p.Missing)
	assert.Equal(t, 1.0, *p.Money.Repays, "of those that come to a number")
}

func TestGearRefuses(t *testing.T) {
	b := gearOf(t, "5", "price: 100, life: 4, left_over: 0, saves_money: 60")
	for name, c := range map[string]struct {
		b    *Book
		q    GearQuestion
		code diag.Code
		says string
	}{
		"no such table":     {openText(t, smallSheet), GearQuestion{}, diag.NoneMarked, "saves_money"},
		"unknown worth":     {b, GearQuestion{Worth: "wort"}, diag.UnknownName, `did you mean "worth"?`},
		"worth of no money": {b, GearQuestion{Worth: "rate"}, diag.UnitMismatch, `"$/h"`},
		"negative worth":    {b, GearQuestion{Worth: "-3"}, diag.BadQuestion, "-3"},
		"rate in dollars":   {b, GearQuestion{Rate: "worth"}, diag.UnitMismatch, `"%"`},
		"too many":          {b, GearQuestion{Options: Options{Seasons: 200_000}}, diag.TooMany, "100,000"},
	} {
		_, err := c.b.Gear(c.q)
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, name)
		assert.Equal(t, c.code, d.Code, name)
		assert.Contains(t, d.Message+" "+d.Hint, c.says, name)
	}
	_, err := b.Gear(GearQuestion{Options: Options{Seasons: 500, Progress: func(int, int) bool { return false }}})
	assert.ErrorIs(t, err, columns.ErrStopped)
}

// TestGearOnShippedSheets: the preheater of the lower grove does not pay in money,
// with its fuel free, and does in hours.
func TestGearOnShippedSheets(t *testing.T) {
	b := openShipped(t, "heron-ridge-growth.yaml")
	p := pieceOf(t, b, GearQuestion{})
	assert.Equal(t, "gear.preheater", p.ID)
	assert.Less(t, *p.Money.Repays, 0.5)
	assert.Greater(t, *p.WithHours.Repays, 0.5)
	// What it saves is told by the seasons themselves: cold sap for warm, and the
	// fire burns for longer. In some it burns out the hours there are, and pours
	// sap out instead.
	plain := "sap_temp"
	cold := retold(t, b, "feed_temp", sheet.Set{Formula: &plain}, "fire_hours")
	warm := retold(t, b, "feed_temp", sheet.Set{}, "fire_hours")
	assert.Greater(t, *cold.P50, *warm.P50)

	petite := pieceOf(t, openShipped(t, "petite-riviere.yaml"), GearQuestion{Worth: "20"})
	assert.Equal(t, "gear.concentrator", petite.ID)
	assert.Less(t, *petite.HourCosts.P50, 20.0)
}
