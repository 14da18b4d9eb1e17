package trade_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/trade"
)

// TestPricesByStateAreTheSurveys rebuilds the table from the published file: every
// price that is there, and no other.
func TestPricesByStateAreTheSurveys(t *testing.T) {
	s := readSurvey(t)
	year := strconv.Itoa(trade.SurveyYear)
	states := map[string]bool{}
	for at := range s["retail_gallon"] {
		if at[1] == year {
			states[at[0]] = true
		}
	}
	table := trade.PricesByState()
	require.Len(t, table, len(states))
	assert.True(t, slices.IsSortedFunc(table, func(a, b trade.StatePrices) int { return strings.Compare(a.State, b.State) }))
	for _, row := range table {
		at := [2]string{row.State, year}
		require.True(t, states[row.State], row.State)
		assert.InDelta(t, s["price_all_sales"][at], row.AllSales, 0, row.State)
		for i, c := range trade.Containers() {
			name := strings.ReplaceAll(c.Name, " ", "_")
			assert.InDelta(t, s["retail_"+name][at], row.Retail[i], 0, "%s %s", row.State, c.Name)
			assert.InDelta(t, s["wholesale_"+name][at], row.Wholesale[i], 0, "%s %s", row.State, c.Name)
		}
	}
}

func TestPricesByYearAreTheSurveys(t *testing.T) {
	s := readSurvey(t)
	years := trade.PricesByYear()
	published := 0
	for at := range s["price_all_sales"] {
		if at[0] == "Us Total" {
			published++
		}
	}
	require.Len(t, years, published)
	assert.Equal(t, 1992, years[0].Year)
	assert.Equal(t, trade.SurveyYear, years[len(years)-1].Year)
	for _, y := range years {
		assert.InDelta(t, s["price_all_sales"][[2]string{"Us Total", strconv.Itoa(y.Year)}], y.PerGallon, 0, y.Year)
	}
}

// TestRetailPrices against medians sorted out from the file outside of Go, and
// against the ladder worked from it there: the price of an ounce beside the
// gallon's, on the mean of states in 2017, is 1.17, 1.38, 1.64 and 2.16.
func TestRetailPrices(t *testing.T) {
	want := [5]float64{46.9, 27.4, 16.3, 9.3, 6.1}
	for i := range want {
		got := trade.RetailPrices(i)
		assert.Equal(t, 13, got.States)
		assert.InDelta(t, want[i], got.Median, 1e-12)
		assert.Less(t, got.Low, got.Median)
		assert.Greater(t, got.High, got.Median)
	}
	assert.Equal(t, trade.PriceSpread{States: 12, Low: 29.7, Median: 43.6, High: 50}, trade.WholesalePrices(0))
	ladder := [5]float64{1, 1.17, 1.38, 1.64, 2.16}
	gallon := trade.Containers()[0].FluidOunces
	for i, c := range trade.Containers() {
		sum, n := 0.0, 0.0
		for _, state := range trade.PricesByState() {
			sum += state.Retail[i] / c.FluidOunces / (state.Retail[0] / gallon)
			n++
		}
		assert.InDelta(t, ladder[i], sum/n, 0.005, c.Name)
	}
}

func TestContainerHolds(t *testing.T) {
	for ounces, want := range map[float64]string{128: "gallon", 64: "half gallon", 32: "quart", 32.5: "quart", 16: "pint", 8: "half pint",
		33.8: "", 18.26: "", 12: "", 0: "", math.NaN(): ""} {
		var got []string
		for _, c := range trade.Containers() {
			if c.Holds(ounces) {
				got = append(got, c.Name)
			}
		}
		assert.Equal(t, want, strings.Join(got, " "), ounces)
	}
}
