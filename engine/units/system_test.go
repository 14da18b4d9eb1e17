package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFamilies(t *testing.T) {
	for _, c := range []struct{ text, metric, customary string }{
		{"gal", "L", "gal"},
		{"gallons", "L", "gallons"},
		{"L", "L", "gal"},
		{"gal/tap", "L/tap", "gal/tap"},
		{"fl oz", "mL", "fl oz"},
		{"pt", "mL", "pt"},
		{"qt", "L", "qt"},
		{"mL", "mL", "fl oz"},
		{"lb", "kg", "lb"},
		{"oz", "g", "oz"},
		{"ton", "t", "ton"},
		{"ft", "m", "ft"},
		{"in", "cm", "in"},
		{"mm", "mm", "in"},
		{"mi", "km", "mi"},
		{"sq ft", "m²", "sq ft"},
		{"in²", "cm²", "in²"},
		{"ft³", "m³", "ft³"},
		{"cord", "m³", "cord"},
		{"m³", "m³", "ft³"},
		{"acre", "ha", "acre"},
		{"°F", "°C", "°F"},
		{"°C", "°C", "°F"},
		{"K", "K", "°F"},
		{"F°", "C°", "F°"},
		{"BTU", "MJ", "BTU"},
		{"MMBTU", "GJ", "MMBTU"},
		{"therm", "MJ", "therm"},
		{"MJ", "MJ", "BTU"},
		{"BTU/h", "kW", "BTU/h"},
		{"kW", "kW", "BTU/h"},
		{"BTU/h/ft²", "kW/m²", "BTU/h/ft²"},
		{"kW/m²", "kW/m²", "BTU/h/ft²"},
		{"BTU/lb", "MJ/kg", "BTU/lb"},
		{"BTU/lb/F°", "kJ/C°/kg", "BTU/lb/F°"},
		{"BTU/day", "MJ/day", "BTU/day"},
		{"lb/gal", "kg/L", "lb/gal"},
		{"kg/m³", "kg/m³", "lb/ft³"},
		{"mph", "km/h", "mph"},
		{"psi", "kPa", "psi"},
		{"mbar", "mbar", "inHg"},
		{"$/gal", "$/L", "$/gal"},
		{"$/MMBTU", "$/GJ", "$/MMBTU"},
		{"$/kW", "$/kW", "$/kW"},
		{"kWh", "kWh", "kWh"},
		{"$", "$", "$"}, {"tap", "tap", "tap"}, {"h", "h", "h"}, {"%", "%", "%"}, {"°Bx", "°Bx", "°Bx"}, {"1", "1", "1"}, {"yes/no", "yes/no", "yes/no"},
	} {
		u := parsed(t, c.text)
		assert.Equal(t, c.text, u.In(AsWritten).String())
		assert.Equal(t, c.metric, u.In(Metric).String(), c.text)
		assert.Equal(t, c.customary, u.In(Customary).String(), c.text)
		for _, s := range []System{Metric, Customary} {
			in := u.In(s)
			assert.True(t, Same(u, in), "%s in %s", c.text, in)
			assert.Equal(t, in.String(), in.In(s).String(), "a unit of the family stays")
			readsBack(t, in, "USD")
		}
	}
}

func TestAValueInTheOtherFamily(t *testing.T) {
	for _, c := range []struct {
		x          float64
		unit, want string
	}{
		{219.1, "°F", "103.9 °C"}, {9, "gal/tap", "34.1 L/tap"}, {42.1, "$/gal", "$11.12/L"}, {10000, "BTU/h", "2.93 kW"}, {11, "lb/gal", "1.32 kg/L"},
	} {
		u := parsed(t, c.unit)
		in := u.In(Metric)
		x, ok := Convert(c.x, u, in)
		require.True(t, ok)
		assert.Equal(t, c.want, Show(x, in))
	}
}

func TestSystemTexts(t *testing.T) {
	for _, s := range []System{AsWritten, Customary, Metric} {
		got, ok := ParseSystem(s.String())
		assert.True(t, ok)
		assert.Equal(t, s, got)
	}
	got, ok := ParseSystem("")
	assert.True(t, ok)
	assert.Equal(t, AsWritten, got)
	_, ok = ParseSystem("Metric")
	assert.False(t, ok)
	assert.Equal(t, "unknown", System(9).String())
}
