package outcome_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/outcome"
)

func always(x float64) []float64 { return []float64{x} }

// TestAccountsByHand: 10 gal made at $40, in 20 h; 8 quarts at $25 and 8 pints at
// $15, of which $256 of $320 asked came in, with $32 paid to sell them. A quart
// brings 25 × 256/320 = 20, pays 25 × 32/320 = 2.50, its jar is 1.50, the syrup in
// it 0.25 × 40/10 = 1; 15 are left, for 0.25 × 20/10 = half an hour.
func TestAccountsByHand(t *testing.T) {
	quart := outcome.Jar{Size: always(0.25), Price: always(25), Filled: always(8), Parts: always(1.5)}
	pint := outcome.Jar{Size: always(0.125), Price: always(15), Filled: always(8), Parts: always(1)}
	season := outcome.Season{Takings: always(256), Selling: always(32), Making: always(40), Syrup: always(10),
		Hours: always(20), Worth: always(12)}
	a := outcome.Accounts([]outcome.Jar{quart, pint}, season)
	require.Len(t, a, 2)
	for name, pair := range map[string][2]float64{
		"brings": {a[0].Brings[0], 20}, "selling": {a[0].Selling[0], 2.5}, "parts": {a[0].Parts[0], 1.5}, "syrup": {a[0].Syrup[0], 1},
		"left": {a[0].Left[0], 15}, "hours": {a[0].Hours[0], 0.5}, "worked": {a[0].Worked[0], 6}, "after": {a[0].After[0], 9},
		"by gallon": {a[0].ByVolume[0], 60}, "by hour": {a[0].ByHour[0], 30},
		"the pint": {a[1].Left[0], 15*0.8 - 1.5 - 1 - 0.5},
	} {
		assert.InDelta(t, pair[1], pair[0], 1e-12, name)
	}
	// 3 gal are in jars; the other 7 carry $28 of making and 14 h at $12.
	inJars := 8*a[0].After[0] + 8*a[1].After[0]
	all := 256.0 - 32 - 8*1.5 - 8*1 - 40 - 20*12
	assert.InDelta(t, all, inJars-28-14*12, 1e-9, "nothing is lost or counted twice")
}

func TestAccountsLeaveOutWhatIsNotKnown(t *testing.T) {
	jar := outcome.Jar{Size: always(0.25), Price: always(25), Filled: always(8)}
	a := outcome.Accounts([]outcome.Jar{jar}, outcome.Season{})[0]
	assert.InDelta(t, 25, a.Left[0], 0)
	assert.InDelta(t, 100, a.ByVolume[0], 0)
	for _, column := range [][]float64{a.Selling, a.Parts, a.Syrup, a.Hours, a.Worked, a.After, a.ByHour} {
		assert.Nil(t, column)
	}
	assert.Empty(t, outcome.Accounts(nil, outcome.Season{}))
}

func TestAccountsOfASeasonWithoutJars(t *testing.T) {
	jar := outcome.Jar{Size: []float64{1, 1}, Price: []float64{9, 9}, Filled: []float64{0, 2}, Parts: []float64{1, 1}}
	a := outcome.Accounts([]outcome.Jar{jar}, outcome.Season{Takings: []float64{0, 18}, Making: []float64{5, 6}, Syrup: []float64{0, 3}})[0]
	assert.True(t, math.IsNaN(a.Brings[0]))
	assert.True(t, math.IsNaN(a.Syrup[0]), "what was made of nothing has no cost a gallon")
	assert.InDelta(t, 9-1-2, a.Left[1], 1e-12)
	s := outcome.Summarise(a.Left, nil)
	assert.Equal(t, 1, s.N)
	assert.Equal(t, 1, s.Missing)
}

func TestPerVolumeAndShareBelow(t *testing.T) {
	none := math.NaN()
	quart := outcome.Jar{Size: []float64{32, 32, 32}, Price: []float64{24, 16, none}}
	pint := outcome.Jar{Size: []float64{16, 16, 16}, Price: []float64{11, 12, 9}}
	assert.InDelta(t, 0.75, outcome.PerVolume(quart)[0], 0)
	assert.InDelta(t, 0.5, outcome.ShareBelow(outcome.PerVolume(pint), outcome.PerVolume(quart)), 0, "one season of two; the third has no number")
	assert.True(t, math.IsNaN(outcome.ShareBelow([]float64{none}, []float64{1})))
}
