package trade_test

import (
	"testing"

	"thawbook/engine/trade"
)

// BenchmarkSeasons works each function for 10,000 seasons, as one keystroke does.
func BenchmarkSeasons(b *testing.B) {
	for _, r := range ranges() {
		b.Run(r.name, func(b *testing.B) {
			var sum float64
			for range b.N {
				for season := range 10000 {
					r.inside[0] += float64(season&1)*2e-9 - 1e-9
					sum += r.call(r.inside)
				}
			}
			if sum != sum {
				b.Fatal("not a number")
			}
		})
	}
}

// TestNothingIsAllocated: ten thousand seasons must leave no work for the collector.
func TestNothingIsAllocated(t *testing.T) {
	var sum float64
	got := testing.AllocsPerRun(10, func() {
		sum += trade.Hydrometer(66.9, 211) + trade.DrawOffAt(66, 900) + trade.BoilHeat(100, 2, 66, 35) +
			trade.YearlyShare(900, 15, 0.05, 0.2) + trade.UnitsSold(14, 12, 40, -1.2)
	})
	if got != 0 {
		t.Fatalf("%g allocations, sum %g", got, sum)
	}
}
