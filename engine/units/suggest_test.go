package units

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSuggest(t *testing.T) {
	for word, want := range map[string]string{
		"galon": "gal", "galllon": "gal", "gallno": "gal", "quartt": "qt", "poundd": "lb", "secnd": "s", "minuet": "",
		"gla": "gal", "lbz": "lb", "horu": "h", "tpsp": "tbsp", "brxi": "°Bx",
		"ML": "mL", "Mj": "MJ", "T": "t", "bx": "°Bx", "F": "°F", "c": "°C", "MBTU": "kBTU or MMBTU", "fahrenheti": "°F",
		"gal": "", "GALLONS": "", "ft2": "", "": "",
		// Ordinary words of a sugarhouse that stand a letter from a unit.
		"tap": "", "cap": "", "pan": "", "jar": "", "bag": "", "tin": "", "pin": "", "can": "", "card": "", "winch": "", "gear": "",
		"bucket": "", "filter": "", "barrel": "", "round": "", "lifter": "", "pallet": "", "brick": "", "box": "", "pcs": "", "care": "",
	} {
		assert.Equal(t, want, Suggest(word), word)
	}
}

func TestDoubts(t *testing.T) {
	for text, want := range map[string]string{
		"gal/tap":   "",
		"galon/tap": `"galon" is a count of its own here; if a known unit is meant, write gal`,
		"$/Galons":  `"Galon" is a count of its own here; if a known unit is meant, write gal`,
		"F":         `"F" is a count of its own here; if a known unit is meant, write °F`,
		"€/gal":     `"€" stands for the sheet's money, $, without any exchange`,
		"USD":       "",
	} {
		assert.Equal(t, want, strings.Join(parsed(t, text).Doubts(), "|"), text)
	}
	assert.Empty(t, One().Doubts())
	assert.Empty(t, YesNo().Doubts())
}
