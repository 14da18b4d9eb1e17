package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPluralsAndBack(t *testing.T) {
	for one, many := range map[string]string{
		"tap": "taps", "jar": "jars", "box": "boxes", "batch": "batches", "brush": "brushes", "glass": "glasses", "battery": "batteries",
		"day": "days", "tray": "trays", "hose": "hoses", "case": "cases", "house": "houses", "valve": "valves", "stove": "stoves",
		"cookie": "cookies", "shoe": "shoes", "potato": "potatoes", "bus": "buses", "lens": "lenses", "gas": "gases", "foot": "feet",
		"person": "people", "loaf": "loaves", "half": "halves", "series": "series", "axe": "axes", "size": "sizes",
		"glass jar": "glass jars", "maple-cream tub": "maple-cream tubs", "half_pint": "half_pints", "spouse": "spouses", "tie": "ties",
	} {
		assert.Equal(t, many, plural(one))
		assert.Equal(t, one, singular(many), many)
		assert.Equal(t, one, singular(one), "a singular stays")
	}
	for _, name := range []string{"x", "as", "IBC", "jar2", "érablé"} {
		assert.Equal(t, name, plural(name))
	}
}

func TestOneCountHasOneName(t *testing.T) {
	for _, c := range [][2]string{{"Taps", "tap"}, {"TAPS", "tap"}, {"Boxes", "box"}, {"glass", "glass"}, {"Glasses", "glass"}} {
		assert.Equal(t, c[1], fold(c[0], "USD"), c[0])
	}
	// Folded, these would be metres, hours, feet, money or a stroke.
	for _, name := range []string{"M", "hs", "fts", "usds", "kw hs", "PER", "peR 0"} {
		assert.Equal(t, name, fold(name, "USD"), name)
	}
}
