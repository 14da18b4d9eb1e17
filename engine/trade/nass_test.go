package trade_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/trade"
)

// survey is one series of the NASS survey, by state and year.
type survey map[string]map[[2]string]float64

func readSurvey(t *testing.T) survey {
	t.Helper()
	s := survey{}
	for _, r := range published(t, "nass_survey.csv") {
		series := r["series"]
		if series == "bulk_price" {
			series += " " + r["unit"]
		}
		if s[series] == nil {
			s[series] = map[[2]string]float64{}
		}
		s[series][[2]string{r["state"], r["year"]}] = r.number(t, "value")
	}
	return s
}

// TestSurveyYield rebuilds the survey's own yield, which a sheet's syrup from one
// tap is compared with.
func TestSurveyYield(t *testing.T) {
	s := readSurvey(t)
	require.Len(t, s["taps"], 141)
	for at, taps := range s["taps"] {
		require.Contains(t, s["production"], at)
		require.Contains(t, s["syrup_per_tap"], at)
		assert.InDelta(t, s["syrup_per_tap"][at], s["production"][at]/taps, 0.001, "%v", at)
	}
}

// TestSurveyPrice rebuilds the national price from the states' own figures.
func TestSurveyPrice(t *testing.T) {
	const country = "Us Total"
	s := readSurvey(t)
	value, gallons := map[string]float64{}, map[string]float64{}
	for at, v := range s["production_value"] {
		if state, year := at[0], at[1]; state != country {
			value[year] += v
			gallons[year] += s["production"][at]
		}
	}
	require.Len(t, value, 26, "1992 to 2017")
	for year, v := range value {
		// Printed to a tenth of a dollar.
		assert.InDelta(t, s["price_all_sales"][[2]string{country, year}], v/gallons[year], 0.0501, year)
	}
}

// TestCensusYield holds the yields of small operations, which household defaults
// come from.
func TestCensusYield(t *testing.T) {
	figures := map[[3]string]float64{}
	for _, r := range published(t, "nass_census_by_size.csv") {
		figures[[3]string{r["year"], r["taps_class"], r["series"]}] = r.number(t, "value")
	}
	for year, want := range map[string][2]float64{"2002": {0.192, 0.195}, "2007": {0.160, 0.160}, "2012": {0.136, 0.145}} {
		for _, class := range []string{"100 to 499 taps", "500 to 999 taps"} {
			made, taps := figures[[3]string{year, class, "production"}], figures[[3]string{year, class, "number_of_taps"}]
			require.NotZero(t, taps, "%s %s", year, class)
			assert.GreaterOrEqual(t, made/taps, want[0]-0.0005, "%s %s", year, class)
			assert.LessOrEqual(t, made/taps, want[1]+0.0005, "%s %s", year, class)
		}
	}
}

// TestBulkPriceByThePound: the survey turns bulk prices by the gallon into prices
// by the pound at 11 lb, which is what syrup at the bottom of the legal range must
// weigh. Both are rounded, most to a tenth, so single states scatter; their sums do
// not.
func TestBulkPriceByThePound(t *testing.T) {
	s := readSurvey(t)
	require.Len(t, s["bulk_price $/lb"], 36)
	var byGallon, byPound float64
	for at, price := range s["bulk_price $/lb"] {
		byGallon += s["bulk_price $/gal"][at]
		byPound += price
	}
	assert.InEpsilon(t, trade.WeightInAir(66.0, 20)*poundsPerGallon, byGallon/byPound, 0.01)
}

// TestCensusYieldIsPossible: sugar balance against the census. Ten gallons of 2 °Bx
// sap a tap (University of Maine Bulletin 7036) are a quart of syrup, and that is
// above what small operations of the census made, as it should be.
func TestCensusYieldIsPossible(t *testing.T) {
	assert.InEpsilon(t, 0.25, trade.SyrupFrom(10, 2, 66), 0.10)
	assert.Greater(t, trade.SyrupFrom(10, 2, 66), 0.195)
}
