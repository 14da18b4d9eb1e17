package main

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
)

func TestSwingStrip(t *testing.T) {
	at := func(x float64) *float64 { return &x }
	for name, test := range map[string]struct {
		low, likely, high *float64
		want              string
	}{
		"up":                     {at(0), at(4), at(10), "○━━━◆━━━━━●"},
		"down":                   {at(10), at(4), at(0), "●━━━◆━━━━━○"},
		"inside":                 {at(2), at(4), at(6), "··○━◆━●····"},
		"nowhere":                {at(4), at(4), at(4), "····◆······"},
		"both ends on one side":  {at(6), at(2), at(8), "··◆━━━○━●··"},
		"a hair":                 {at(3.9), at(4), at(4.1), "····◆······"},
		"no number at low":       {nil, at(4), at(10), ""},
		"no number at likely":    {at(1), nil, at(10), ""},
		"both at the left end":   {at(0), at(0), at(0), "◆··········"},
		"as wide as can be told": {at(0), at(10), at(10), "○━━━━━━━━━◆"},
	} {
		assert.Equal(t, test.want, swingStrip(test.low, test.likely, test.high, 0, 10, 11), name)
	}
	assert.Empty(t, swingStrip(at(3), at(3), at(3), 3, 3, 11), "nothing moves")
	assert.Empty(t, swingStrip(at(1), at(1), at(1), 1, math.Inf(1), 11))
}

func TestPartStrip(t *testing.T) {
	assert.Equal(t, "━━━·······", partStrip(3, 10, 10))
	assert.Equal(t, "··········", partStrip(0, 10, 10))
	assert.Equal(t, "━━━━━━━━━━", partStrip(12, 10, 10), "noise may make a part larger than the whole")
	assert.Empty(t, partStrip(0, 0, 10))
	assert.Empty(t, partStrip(math.NaN(), 1, 10))
}

// TestMoversFitWhateverTheirNames: long labels, units and numbers keep inside
// the page.
func TestMoversFitWhateverTheirNames(t *testing.T) {
	long := strings.Repeat("Sap of the far trees ", 6)
	number := func(x float64) *float64 { return &x }
	g := engine.MovingGuess{Label: long, AtLow: number(-1e9), AtHigh: number(2e9), Direction: "up", Shown: engine.ShownMoving{
		Low: "12,345,678 pallet·gal/h/ft²", High: "22,345,678 BTU·gal/h/ft²", AtLow: "-$1,000,000,000 per gallon", AtHigh: "$2,000,000,000 per gallon"}}
	share := engine.Share{Value: number(0.5), Error: number(0.01), Shown: "50 %", ShownError: "2 %"}
	m := &engine.Movers{Title: long, Outcome: engine.Answer{Label: long, AtLikely: number(3)}, Paragraph: long,
		Movers: []engine.Mover{{Label: long, Guesses: []engine.MovingGuess{g, g}, Total: share, First: share, Interacts: true, Missing: 12},
			{Label: "Idle", Guesses: []engine.MovingGuess{g}, Total: engine.Share{Value: number(0), Shown: "none"}}},
		Apart: []engine.Named{{ID: "a", Label: "A"}}}
	var out bytes.Buffer
	swings{page{w: &out}}.movers(m, false)
	for line := range strings.Lines(out.String()) {
		require.LessOrEqual(t, columns(strings.TrimRight(line, "\n")), width, line)
	}
	assert.Contains(t, out.String(), "50 % ± 2 %, alone 50 %")
	assert.Contains(t, out.String(), "2 guesses have nothing to do with it as the sheet stands.")
	assert.NotContains(t, out.String(), "Idle")
	assert.Contains(t, out.String(), "12 seasons came to no number and are left out")
}
