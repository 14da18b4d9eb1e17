package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func parsed(t testing.TB, text string) Unit {
	t.Helper()
	u, err := Parse(text, "USD")
	require.NoError(t, err, text)
	return u
}

// Factors as printed. H44: NIST Handbook 44, Appendix C, "General tables of
// units of measurement". SP 811: NIST Special Publication 811 (2008), Appendix
// B. Every digit here is a value from memory of those tables: exact where marked,
// and otherwise rounded to the digits shown.
func TestFactorsArePublishedOnes(t *testing.T) {
	for _, c := range []struct {
		from, to string
		factor   float64
		half     float64 // half a unit in the last printed place; 0 when exact
		source   string
	}{
		{"in", "cm", 2.54, 0, "H44, exact"},
		{"ft", "m", 0.3048, 0, "H44, exact"},
		{"yd", "m", 0.9144, 0, "H44, exact"},
		{"mi", "km", 1.609344, 0, "H44, exact"},
		{"acre", "ft²", 43560, 0, "H44, exact"},
		{"acre", "ha", 0.40468564224, 0, "H44, exact for the international foot"},
		{"sq in", "cm²", 6.4516, 0, "H44, exact"},
		{"gal", "in³", 231, 0, "H44, exact"},
		{"gal", "L", 3.785411784, 0, "H44, exact"},
		{"qt", "L", 0.946352946, 0, "H44, exact"},
		{"fl oz", "mL", 29.5735295625, 0, "H44, exact"},
		{"gal", "fl oz", 128, 0, "H44, exact"},
		{"cup", "tbsp", 16, 0, "H44, exact"},
		{"tbsp", "tsp", 3, 0, "H44, exact"},
		{"cord", "cu ft", 128, 0, "H44, exact"},
		{"ft³", "gal", 7.480519, 0.5e-6, "H44"},
		{"ft³", "L", 28.316846592, 0, "H44, exact"},
		{"lb", "g", 453.59237, 0, "H44, exact"},
		{"oz", "g", 28.349523125, 0, "H44, exact"},
		{"ton", "kg", 907.18474, 0, "H44, exact"},
		{"BTU", "J", 1055.05585262, 0, "SP 811, International Table"},
		{"therm", "MJ", 105.505585262, 0, "100,000 BTU"},
		{"kWh", "BTU", 3412.14, 0.5e-2, "SP 811; US EIA prints 3,412"},
		{"BTU/h", "W", 0.29307107, 0.5e-8, "SP 811"},
		{"BTU/lb", "kJ/kg", 2.326, 0, "SP 811, exact"},
		{"BTU/lb/F°", "kJ/kg/C°", 4.1868, 0, "SP 811, exact"},
		{"BTU/h/ft²", "W/m²", 3.154591, 0.5e-6, "SP 811"},
		{"hp", "W", 745.6999, 0.5e-4, "SP 811, 550 foot pounds a second"},
		{"psi", "kPa", 6.894757, 0.5e-6, "SP 811"},
		{"inHg", "Pa", 3386.389, 0.5e-3, "SP 811, conventional"},
		{"atm", "mbar", 1013.25, 0, "SP 811, exact"},
		{"lb/gal", "kg/m³", 119.8264, 0.5e-4, "SP 811"},
		{"mph", "km/h", 1.609344, 0, "SP 811, exact"},
		{"kcal", "kJ", 4.1868, 0, "SP 811, International Table"},
		{"%", "1", 0.01, 0, "by definition"},
		{"¢", "$", 0.01, 0, "by definition"},
		{"year", "day", 365.25, 0, "Julian year"},
	} {
		factor, offset, ok := Conversion(parsed(t, c.from), parsed(t, c.to))
		require.True(t, ok, "%s to %s", c.from, c.to)
		assert.Zero(t, offset)
		if c.half == 0 {
			assert.Equal(t, c.factor, factor, "%s to %s: %s", c.from, c.to, c.source)
			continue
		}
		assert.InDelta(t, c.factor, factor, c.half, "%s to %s: %s", c.from, c.to, c.source)
	}
}

func TestTemperatures(t *testing.T) {
	for _, c := range []struct {
		from, to string
		x, want  float64
	}{
		{"°F", "°C", 212, 100}, {"°F", "°C", 32, 0}, {"°C", "°F", -40, -40},
		{"°C", "K", 0, 273.15}, {"K", "°F", 0, -459.67}, {"°F", "°F", 219.1, 219.1},
		{"F°", "C°", 9, 5}, {"C°", "F°", 5, 9},
	} {
		got, ok := Convert(c.x, parsed(t, c.from), parsed(t, c.to))
		require.True(t, ok)
		assert.InDelta(t, c.want, got, 1e-12, "%v %s in %s", c.x, c.from, c.to)
	}
	factor, offset, ok := Conversion(parsed(t, "°C"), parsed(t, "°F"))
	assert.True(t, ok)
	assert.Equal(t, []float64{1.8, 32}, []float64{factor, offset})
}

func TestWhatIsNotTheSame(t *testing.T) {
	for _, pair := range [][2]string{
		{"gal", "lb"}, {"°F", "F°"}, {"tap", "jar"}, {"$", "1"}, {"°Bx", "%"}, {"yes/no", "1"}, {"gal/tap", "gal"}, {"ft", "ft²"},
	} {
		a, b := parsed(t, pair[0]), parsed(t, pair[1])
		assert.False(t, Same(a, b), "%s and %s", pair[0], pair[1])
		factor, offset, ok := Conversion(a, b)
		assert.False(t, ok)
		assert.True(t, math.IsNaN(factor) && math.IsNaN(offset))
	}
}

func TestBeyondAllReasonIsLikeNothing(t *testing.T) {
	u := parsed(t, "ft")
	for range 12 {
		u = u.Pow(6)
	}
	assert.False(t, Same(u, u))
	assert.False(t, Same(u, One()))
	assert.True(t, Same(u.Pow(0), One()))
}

func TestScalesThatOverflowAreLikeNothing(t *testing.T) {
	huge := parsed(t, "GJ").Pow(40) // 10³⁶⁰ J⁴⁰, past a float64
	assert.False(t, Same(huge, huge))
	large, small := parsed(t, "GJ").Pow(30), parsed(t, "g*cm^2/s^2").Pow(30)
	assert.True(t, Same(large, small), "both can be held")
	factor, offset, ok := Conversion(large, small)
	assert.False(t, ok, "their ratio cannot")
	assert.True(t, math.IsNaN(factor) && math.IsNaN(offset))
}
