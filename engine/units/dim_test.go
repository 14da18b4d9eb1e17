package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDimensionsHaveNames(t *testing.T) {
	for text, want := range map[string]string{
		"1": "bare number", "%": "bare number", "gal": "volume", "ft²": "area", "lb/gal": "mass/volume", "BTU": "energy", "kW": "power",
		"psi": "pressure or energy/volume", "BTU/gal": "pressure or energy/volume", "BTU/gal/tap": "energy/volume/tap",
		"ft·lb": "mass·length", "lb^3*ft^-5*h": "mass³·time/length⁵", "jar/box": "jar/box", "box^2/jar^3": "box²/jar³",
		"BTU/lb": "energy/mass", "BTU/h/ft²": "power/area", "gal/h": "volume/time", "$/h": "money/time", "1/h": "1/time",
		"$/gal/tap": "money/volume/tap", "tap·h": "time·tap", "°Bx": "°Bx", "°F": "temperature", "yes/no": "yes/no", "tap": "tap",
	} {
		assert.Equal(t, want, parsed(t, text).Dim().String(), text)
	}
}

func TestDimensionsCompare(t *testing.T) {
	assert.True(t, parsed(t, "gal").Dim() == parsed(t, "cu ft").Dim())
	assert.True(t, parsed(t, "jar/box·tap").Dim() == parsed(t, "Tap*jars/boxes").Dim())
	assert.False(t, parsed(t, "tap").Dim() == parsed(t, "tap²").Dim())
	assert.True(t, One().Dim() == Dim{})
	assert.True(t, Dim{}.IsPlain())
}
