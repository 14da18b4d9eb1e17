package trade_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/trade"
)

func TestYearlySharePublished(t *testing.T) {
	// Capital recovery factors of engineering economy tables.
	for _, c := range []struct{ rate, years, want float64 }{
		{0.05, 10, 0.12950457}, {0.08, 10, 0.14902949}, {0.10, 5, 0.26379748}, {0, 10, 0.1},
	} {
		assert.InDelta(t, c.want, trade.YearlyShare(1, c.years, c.rate, 0), 0.5e-8, "%g, %g years", c.rate, c.years)
	}
	// A board-exam problem: $100,000, a fifth left after 15 years, 10 %.
	assert.InDelta(t, 12517.90, trade.YearlyShare(100000, 15, 0.10, 0.20), 0.005)
}

func TestYearlyShareEnds(t *testing.T) {
	assert.InDelta(t, 80, trade.YearlyShare(1000, 10, 0, 0.2), 1e-9, "no rate: the loss by the year")
	assert.InDelta(t, 50, trade.YearlyShare(1000, 10, 0.05, 1), 1e-9, "all left: the rate alone")
	assert.InDelta(t, 1050, trade.YearlyShare(1000, 1, 0.05, 0), 1e-9, "one year: all of it and the rate")
	assert.InEpsilon(t, 100, trade.YearlyShare(1000, 10, 1e-12, 0), 1e-9, "the smallest rates run into none")
}

func TestWorthNowPublished(t *testing.T) {
	// Net present value at 10 % of −4000 now, 2000 after one year and 4000 after two
	// is 1123.97. The second year's sum is an annuity of two years less one of one.
	const rate = 0.10
	second := trade.WorthNow(4000, 2, rate) - trade.WorthNow(4000, 1, rate)
	assert.InDelta(t, 1123.97, -4000+trade.WorthNow(2000, 1, rate)+second, 0.005)
}

func TestWorthNowIsTheSumOfItsYears(t *testing.T) {
	for _, rate := range []float64{0, 1e-9, 0.01, 0.05, 0.3, 2} {
		sum, discount := 0.0, 1.0
		for year := 1; year <= 25; year++ {
			discount /= 1 + rate
			sum += 300 * discount
			assert.InEpsilon(t, sum, trade.WorthNow(300, float64(year), rate), 1e-12, "%g, %d years", rate, year)
		}
	}
	assert.Zero(t, trade.WorthNow(300, 0, 0.05))
}

func TestYearsToRepayUndoesWorthNow(t *testing.T) {
	for _, rate := range []float64{0, 1e-9, 0.05, 0.3} {
		for _, years := range []float64{0.5, 1, 7, 22.5} {
			price := trade.WorthNow(120, years, rate)
			assert.InEpsilon(t, years, trade.YearsToRepay(price, 120, rate), 1e-9, "%g, %g years", rate, years)
		}
	}
}

func TestYearsToRepayWhenNever(t *testing.T) {
	never := math.Inf(1)
	assert.Equal(t, never, trade.YearsToRepay(1000, 0, 0.05), "nothing saved")
	assert.Equal(t, never, trade.YearsToRepay(1000, -5, 0), "it costs more each year")
	assert.Equal(t, never, trade.YearsToRepay(1000, 50, 0.05), "the saving goes on the rate")
	assert.Equal(t, never, trade.YearsToRepay(1000, 49, 0.05))
	assert.Greater(t, trade.YearsToRepay(1000, 50.01, 0.05), 100.0, "a hair more and it is repaid, late")
	assert.Zero(t, trade.YearsToRepay(0, 0, 0.05), "nothing to repay")
	assert.Zero(t, trade.YearsToRepay(-10, -1, 0))
}

func ExampleYearlyShare() {
	fmt.Printf("$%.2f a year\n", trade.YearlyShare(900, 15, 0.05, 0.25))
	// Output: $76.28 a year
}
