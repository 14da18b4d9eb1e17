package trade_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/trade"
)

func TestSapPerSyrupMeetsTheOriginalRule(t *testing.T) {
	// C. H. Jones, University of Vermont, 1946: 86 / Brix, built on about 65.5 °Bx;
	// worked values of University of New Hampshire Cooperative Extension.
	for brix, want := range map[float64]float64{1: 86, 2: 43, 2.5: 34.4, 3: 28.7} {
		assert.InEpsilon(t, want, trade.SapPerSyrup(brix, 65.5), 0.01, "%g °Bx", brix)
	}
}

func TestSapPerSyrupMeetsTheRevisedRules(t *testing.T) {
	// T. D. Perkins, M. L. Isselhardt, "The Jones Rule of 86 Revisited", Maple Syrup
	// Digest, 2013: 87.1 / B − 0.32 to 66.0 °Bx, 88.2 / B − 0.32 to 66.9. The constants
	// are published, the 0.32 is a value from memory. The second one lies 0.8 to
	// 0.9 % under the balance all along.
	for tenths := 10; tenths <= 40; tenths++ {
		brix := float64(tenths) / 10
		assert.InEpsilon(t, 87.1/brix-0.32, trade.SapPerSyrup(brix, 66.0), 0.005, "%g to 66.0 °Bx", brix)
		assert.InEpsilon(t, 88.2/brix-0.32, trade.SapPerSyrup(brix, 66.9), 0.01, "%g to 66.9 °Bx", brix)
	}
}

func TestSapPerSyrupWorked(t *testing.T) {
	// Worked from the sugar balance outside this program.
	for _, c := range []struct{ sap, syrup, want float64 }{
		{2, 66, 43.39}, {2, 66.9, 44.16}, {12, 66, 6.95}, {66, 66, 1},
	} {
		assert.InDelta(t, c.want, trade.SapPerSyrup(c.sap, c.syrup), 0.005, "%g to %g", c.sap, c.syrup)
	}
}

func TestConcentrateWorked(t *testing.T) {
	// Worked from the sugar balance outside this program: share of the volume taken out.
	for to, removed := range map[float64]float64{4: 0.504, 8: 0.756, 12: 0.840} {
		assert.InDelta(t, removed, 1-trade.Concentrate(1, 2, to), 0.0005, "2 to %g °Bx", to)
	}
	// University of Vermont Extension: concentrators take out 75 to 90 % of the water.
	assert.InDelta(t, 0.825, 1-trade.Concentrate(1, 2, 10), 0.075)
}

func TestConcentrateThenBoilIsBoiling(t *testing.T) {
	// Where the water goes out must not matter to the sugar.
	for _, by := range []float64{2, 4, 8, 20, 66, 80} {
		left := trade.Concentrate(100, 2, by)
		assert.InEpsilon(t, trade.SyrupFrom(100, 2, 66), trade.SyrupFrom(left, by, 66), 1e-12, "by way of %g °Bx", by)
	}
	assert.InEpsilon(t, 1, trade.SapPerSyrup(2, 66)*trade.SyrupFrom(1, 2, 66), 1e-12)
	assert.InDelta(t, -trade.SyrupFrom(7, 2, 66), trade.SyrupFrom(-7, 2, 66), 1e-15, "a difference keeps its sign")
	assert.Zero(t, trade.SyrupFrom(100, 0, 66), "water makes no syrup")
}

func TestSyrupLeftInThePans(t *testing.T) {
	// Worked from the sugar balance outside this program: 3 gal of sweet at 20 °Bx.
	assert.InDelta(t, 0.743, trade.SyrupFrom(3, 20, 66), 0.0005)
}

func TestSyrupFromMeetsAFamilyLog(t *testing.T) {
	const expected, bottled, taps = 92.6, 91.625, 503 // the log's own totals
	var byRatio, balance float64
	for _, batch := range published(t, "family_log_2019.csv") {
		sap, syrup := batch.number(t, "sap_gal"), batch.number(t, "syrup_gal")
		require.InDelta(t, sap/batch.number(t, "ratio"), syrup, 0.06, "the log's own division, batch %s", batch["batch"])
		made := trade.SyrupFrom(sap, batch.number(t, "sap_brix"), 66)
		assert.InEpsilon(t, syrup, made, 0.02, "batch %s", batch["batch"])
		byRatio += syrup
		balance += made
	}
	require.InDelta(t, expected, byRatio, 1e-9)
	assert.InEpsilon(t, expected, balance, 0.02)
	// Filter and kettle keep 0.2 to 2 % back.
	assert.InDelta(t, 0.011, 1-bottled/balance, 0.009)
	assert.InDelta(t, 0.18, balance/taps, 0.005)
}

func TestSapWorthOfASpout(t *testing.T) {
	// S. Childs, Cornell, 2010: 15.6 gal of sap from a tap is worth $18.14 and 7.9 gal
	// $9.18 when syrup sells at $50/gal, for 2 °Bx sap at the ratio of 43.
	for sap, want := range map[float64]float64{15.6: 18.14, 7.9: 9.18} {
		assert.InEpsilon(t, want, 50*trade.SyrupFrom(sap, 2, 66), 0.01)
	}
}

func ExampleSyrupFrom() {
	fmt.Printf("%.1f gal\n", trade.SyrupFrom(1260, 2, 66.9))
	// Output: 28.5 gal
}
