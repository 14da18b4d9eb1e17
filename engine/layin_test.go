package engine

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// In layInSheet a season takes 10, 20, … or 100 jars, each in 1 season of 10.
const layInSheet = `thawbook: 1
title: Cellar
seasons: 1000
seed: 5
chapters:
  - title: Jars
    lines:
      - {id: jars, label: Pint jars, records: [10, 20, 30, 40, 50, 60, 70, 80, 90, 100], unit: jar, lay_in: {round: 12, on_hand: 15, price: jar_price}, note: With lids.}
      - {id: jar_price, label: A jar, is: 0.5, unit: $/jar}
      - {id: lids, label: Lids, formula: 'jars * of(1, "lid/jar")', unit: lid, lay_in: {round: 50, price: 0.1}}
      - {id: caps, label: Caps, formula: 'jars * of(1, "cap/jar")', unit: cap, lay_in: {on_hand: 200}}
  - title: Fire
    lines:
      - {id: wood, label: Wood, guess: {low: 200, likely: 300, high: 420}, unit: ft³, floor: 0, lay_in: {unit: cord, round: 0.25, on_hand: 0.5, price: cord_price}}
      - {id: cord_price, label: A cord, guess: {low: 200, likely: 250, high: 330}, unit: $/cord, floor: 0}
      - {id: strainer, label: Strainer, is: 1, unit: piece, lay_in: true}
`

func mustLayIn(t testing.TB, b *Book, q LayInQuestion) *LayInList {
	t.Helper()
	list, err := b.LayIn(q)
	require.NoError(t, err)
	return list
}

func itemOf(t testing.TB, list *LayInList, id string) LayInItem {
	t.Helper()
	for _, g := range list.Groups {
		for _, item := range g.Items {
			if item.ID == id {
				return item
			}
		}
	}
	t.Fatal("nothing called " + id)
	return LayInItem{}
}

// TestLayInByHand: 9 seasons of 10 take 90 jars or fewer. With 15 on hand that is
// 75 more, 6.25 boxes of 12, so 7 boxes: 84 jars at half a dollar.
func TestLayInByHand(t *testing.T) {
	list := mustLayIn(t, openText(t, layInSheet), LayInQuestion{})
	assert.Equal(t, "9 seasons of 10", list.ChanceShown)
	jars := itemOf(t, list, "jars")
	assert.Equal(t, 90.0, *jars.Need)
	assert.Equal(t, 7.0, *jars.Packs)
	assert.Equal(t, 84.0, *jars.Buy)
	assert.Equal(t, 0.9, *jars.ShortNow, "15 are too few but for the seasons of 10")
	assert.Equal(t, 0.1, *jars.ShortThen, "99 are too few for those of 100")
	assert.Equal(t, 42.0, *jars.Cost.P50)
	assert.Equal(t, "$42.00", jars.Cost.Shown)
	assert.Empty(t, jars.Cost.Range, "the price is certain")
	assert.Equal(t, ShownLayInItem{Need: "90 jars", Middle: "55 jars", OnHand: "15 jars", Buy: "84 jars", Packs: "7 × 12 jars",
		ShortNow: "9 seasons of 10", ShortThen: "1 season of 10", Price: "$0.50/jar"}, jars.Shown)
	assert.Equal(t, "With lids.", jars.Note)

	lids := itemOf(t, list, "lids")
	assert.Equal(t, 100.0, *lids.Buy)
	assert.Equal(t, 10.0, *lids.Cost.P50, "a price may be a number")
	assert.Equal(t, "$0.10/lid", lids.Shown.Price)
	assert.Zero(t, *lids.ShortThen)

	caps := itemOf(t, list, "caps")
	assert.Zero(t, *caps.Buy, "200 are plenty")
	assert.Nil(t, caps.Cost)
	assert.Zero(t, *caps.ShortNow)

	assert.Equal(t, []string{"Jars", "Fire"}, []string{list.Groups[0].Chapter, list.Groups[1].Chapter})
	assert.Empty(t, list.Warnings)
	assert.Equal(t, 1, list.Unpriced, "the strainer")
}

func TestLayInAtOtherChances(t *testing.T) {
	b := openText(t, layInSheet)
	for chance, want := range map[string]float64{"1/10": 10, "5/10": 50, "1/2": 50, "8/10": 80, "19/20": 100, "10/10": 100} {
		jars := itemOf(t, mustLayIn(t, b, LayInQuestion{Chance: chance}), "jars")
		assert.Equal(t, want, *jars.Need, chance)
	}
	for _, chance := range []string{"0/10", "11/10", "90", "often", "0.9", "-1/-2"} {
		_, err := b.LayIn(LayInQuestion{Chance: chance})
		var d diag.Diagnostic
		require.ErrorAs(t, err, &d, chance)
		assert.Equal(t, diag.BadQuestion, d.Code)
	}
}

func TestLayInOfAGuessInAnotherUnit(t *testing.T) {
	b := openText(t, layInSheet)
	list := mustLayIn(t, b, LayInQuestion{})
	wood := itemOf(t, list, "wood")
	assert.Equal(t, "cord", wood.Unit)
	// Of 1,000 strata a percentile is known to one, which out there is 0.2 %.
	const stratum = 2.5e-3
	assert.InEpsilon(t, 420.0/128, *wood.Need, stratum, "the guess's high, in cords of 128 cubic feet")
	assert.Equal(t, 3.0, *wood.Buy, "3.28 less half a cord, up to a quarter")
	assert.Equal(t, "12 × 0.25 cords", wood.Shown.Packs)
	assert.InEpsilon(t, 3*250, *wood.Cost.P50, stratum)
	assert.InEpsilon(t, 3*200, *wood.Cost.P10, stratum)
	assert.InEpsilon(t, 3*330, *wood.Cost.P90, stratum)
	assert.Equal(t, units.Show(*wood.Cost.P10, parsed(t, "$"))+" to "+units.Show(*wood.Cost.P90, parsed(t, "$")), wood.Cost.Range)
	assert.LessOrEqual(t, *wood.ShortThen, 0.1)
	assert.InEpsilon(t, 42+10+3*250, *list.Total.P50, stratum)

	metric := mustLayIn(t, b, LayInQuestion{Options: Options{System: units.Metric}})
	inMetric := itemOf(t, metric, "wood")
	factor, _, ok := units.Conversion(parsed(t, "cord"), parsed(t, inMetric.Unit))
	require.True(t, ok)
	assert.InEpsilon(t, 3*factor, *inMetric.Buy, 1e-9, "bought by the quarter cord all the same")
	assert.InEpsilon(t, *list.Total.P50, *metric.Total.P50, 1e-12)
}

func parsed(t testing.TB, text string) units.Unit {
	u, err := units.Parse(text, "USD")
	require.NoError(t, err)
	return u
}

// TestLayInTogether: wood and jars run short in different seasons, so both last
// in fewer than either alone. The share is that of the columns themselves.
func TestLayInTogether(t *testing.T) {
	b := openText(t, layInSheet)
	list := mustLayIn(t, b, LayInQuestion{})
	jars, err := b.Column("jars")
	require.NoError(t, err)
	wood, err := b.Column("wood")
	require.NoError(t, err)
	count := 0
	for k := range jars {
		if jars[k] <= 99 && wood[k] <= 3.5*128 {
			count++
		}
	}
	assert.InDelta(t, float64(count)/1000, *list.AllLast, 1e-12)
	assert.Less(t, *list.AllLast, 0.9)
	assert.Zero(t, *list.AllNow, "there is no strainer")
	assert.Equal(t, "So that each thing lasts in 9 seasons of 10, lay in 84 jars for pint jars; 100 lids for lids; 3 cords for wood; "+
		"1 piece for strainer. That costs "+list.Total.Shown+" in the middle, and in 8 seasons of 10 "+list.Total.Range+". One thing has no price in the sheet and is not in that. "+
		"All of it together lasts in "+list.Shown.AllLast+"; what is on hand now in no season of 10.", list.Paragraph)
}

// TestLayInBuysNoPackForADust: 3 times 0.1 is a hair above 0.3.
func TestLayInBuysNoPackForADust(t *testing.T) {
	b := openText(t, strings.NewReplacer("- {id: strainer, label: Strainer, is: 1, unit: piece, lay_in: true}",
		"- {id: gas, formula: 'of(3, \"gal\") * 0.1', unit: gal, lay_in: {round: 0.3}}\n"+
			"      - {id: oil, is: 0.3, unit: gal, lay_in: {round: 0.1, on_hand: 0.1}}").Replace(layInSheet))
	list := mustLayIn(t, b, LayInQuestion{})
	assert.Equal(t, 1.0, *itemOf(t, list, "gas").Packs)
	assert.Equal(t, 2.0, *itemOf(t, list, "oil").Packs)
	assert.Zero(t, *itemOf(t, list, "gas").ShortThen)
}

func TestLayInWhereSeasonsHaveNoNumber(t *testing.T) {
	b := openText(t, strings.Replace(layInSheet, "- {id: strainer, label: Strainer, is: 1, unit: piece, lay_in: true}",
		`- {id: odd, formula: 'sqrt(number(jars, "jar") - 55) * of(10, "piece")', unit: piece, lay_in: true}
      - {id: none, formula: 'sqrt(number(jars, "jar") - 555) * of(10, "piece")', unit: piece, lay_in: true}`, 1))
	list := mustLayIn(t, b, LayInQuestion{})
	odd := itemOf(t, list, "odd")
	assert.Equal(t, 500, odd.Missing)
	assert.Equal(t, 68.0, *odd.Buy, "of the seasons with a number all but the worst tenth: the top fifth has 100 jars, √45 is 6.7")
	none := itemOf(t, list, "none")
	assert.Nil(t, none.Need)
	assert.Nil(t, none.Buy)
	assert.Nil(t, none.ShortNow)
	assert.Equal(t, "no number", none.Shown.Buy)
}

func TestLayInTellsWhatCannotBeListed(t *testing.T) {
	with := func(line string) *LayInList {
		book, _ := Open("small.yaml", texts(map[string]string{"small.yaml": strings.Replace(layInSheet,
			"- {id: strainer, label: Strainer, is: 1, unit: piece, lay_in: true}", line, 1)}))
		require.NotNil(t, book)
		return mustLayIn(t, book, LayInQuestion{})
	}
	for line, code := range map[string]diag.Code{
		"- {id: x, is: 3, unit: lb, lay_in: {unit: gal}}":                                           diag.UnitMismatch,
		"- {id: x, is: 3, unit: lb, lay_in: {price: wood}}":                                         diag.UnitMismatch,
		"- {id: x, formula: jars > jars, unit: yes/no, lay_in: true}":                               diag.NotANumber,
		"- {id: x, formula: wood + jars, unit: jar, lay_in: true}":                                  diag.WaitsFor,
		"- {id: x, choose: a, among: [a, b], lay_in: true}":                                         diag.NotANumber,
		"- {id: x, is: 3, unit: lb, lay_in: {price: y}}\n      - {id: y, choose: a, among: [a, b]}": diag.NotANumber,
	} {
		list := with(line)
		require.Len(t, list.Warnings, 1, line)
		assert.Equal(t, code, list.Warnings[0].Code, line)
		assert.Equal(t, diag.Warning, list.Warnings[0].Severity)
		assert.Len(t, list.Groups[0].Items, 3, "the others are listed")
	}
}

func TestLayInRefuses(t *testing.T) {
	_, err := openText(t, smallSheet).LayIn(LayInQuestion{})
	var d diag.Diagnostic
	require.ErrorAs(t, err, &d)
	assert.Equal(t, diag.NoneMarked, d.Code)

	_, err = openText(t, layInSheet).LayIn(LayInQuestion{Options: Options{Seasons: 200_000}})
	require.ErrorAs(t, err, &d)
	assert.Equal(t, diag.TooMany, d.Code)

	_, err = openText(t, layInSheet).LayIn(LayInQuestion{Options: Options{Progress: func(int, int) bool { return false }}})
	assert.ErrorIs(t, err, columns.ErrStopped)
}

// TestLayInOnShippedSheets: whatever is listed lasts as often as was asked, and
// one pack fewer would not.
func TestLayInOnShippedSheets(t *testing.T) {
	for _, name := range []string{"heron-ridge-pallets.yaml", "heron-ridge-propane.yaml", "petite-riviere.yaml", "back-yard-twelve.yaml"} {
		b := openShipped(t, name)
		list := mustLayIn(t, b, LayInQuestion{Options: Options{Seasons: 2000}})
		assert.Empty(t, list.Warnings, name)
		for _, g := range list.Groups {
			for _, item := range g.Items {
				assert.LessOrEqual(t, *item.ShortThen, 0.1+1e-12, "%s %s", name, item.ID)
				there := item.OnHand + *item.Buy
				assert.GreaterOrEqual(t, there, *item.Need*(1-1e-9))
				if *item.Buy > 0 {
					assert.Less(t, there-item.Round, *item.Need, "%s %s", name, item.ID)
				}
			}
		}
	}
}
