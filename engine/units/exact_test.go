package units

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// definitions is each unit in SI by its legal definition, as a fraction, written
// out apart from the table under test: international yard and pound agreement
// (1959), US gallon 231 in³, standard gravity 9.80665 m/s², International Table
// BTU. Values from memory of NIST Special Publication 811, Appendix B.
var definitions = map[string]string{
	"m": "1", "cm": "0.01", "mm": "0.001", "km": "1000",
	"in": "0.0254", "ft": "0.3048", "yd": "0.9144", "mi": "1609.344",
	"acre": "4046.8564224", "ha": "10000",
	"gal": "0.003785411784", "qt": "0.000946352946", "pt": "0.000473176473", "cup": "0.0002365882365",
	"fl oz": "0.0000295735295625", "tbsp": "0.00001478676478125", "tsp": "0.00000492892159375",
	"L": "0.001", "mL": "0.000001", "cord": "3.624556363776", "board foot": "0.002359737216",
	"lb": "0.45359237", "oz": "0.028349523125", "g": "0.001", "kg": "1", "mg": "0.000001", "ton": "907.18474", "t": "1000",
	"s": "1", "min": "60", "h": "3600", "day": "86400", "week": "604800", "month": "2629800", "year": "31557600",
	"F°": "5/9", "C°": "1", "K°": "1",
	"BTU": "1055.05585262", "kBTU": "1055055.85262", "MMBTU": "1055055852.62", "therm": "105505585.262",
	"J": "1", "kJ": "1000", "MJ": "1000000", "GJ": "1000000000", "Wh": "3600", "kWh": "3600000",
	"cal": "4.1868", "kcal": "4186.8",
	"W": "1", "kW": "1000", "hp": "745.69987158227022",
	"Pa": "1", "kPa": "1000", "inHg": "3386.38864034100", "mbar": "100", "atm": "101325",
	"°Bx": "1", "%": "0.01", "ppm": "0.000001", "$": "1", "¢": "0.01",
}

// definition is a unit's exact scale. psi is a quotient without an end.
func definition(t *testing.T, name string) *big.Rat {
	t.Helper()
	if name == "psi" {
		pound, inch := rat(t, "4.4482216152605"), rat(t, "0.0254") // lbf in N
		return new(big.Rat).Quo(pound, inch.Mul(inch, inch))
	}
	text, ok := definitions[name]
	require.True(t, ok, "no definition of %q written out here", name)
	return rat(t, text)
}

func rat(t *testing.T, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	require.True(t, ok, text)
	return r
}

func TestEveryFactorIsTheNearestFloat(t *testing.T) {
	pairs := 0
	for i := range defs {
		for j := range defs {
			a, b := &defs[i], &defs[j]
			if a.base != b.base {
				continue
			}
			want, _ := new(big.Rat).Quo(definition(t, a.name), definition(t, b.name)).Float64()
			got, _, ok := Conversion(build([]term{{def: a, exp: 1}}), build([]term{{def: b, exp: 1}}))
			require.True(t, ok)
			assert.Equal(t, want, got, "%s to %s", a.name, b.name)
			pairs++
		}
	}
	assert.Greater(t, pairs, 400)
}

func TestProductsOfManyFactorsStayTheNearestFloat(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     *big.Rat
	}{
		{"BTU/h/ft²", "W/m²", new(big.Rat).Quo(rat(t, "1055.05585262"), rat(t, "334.450944"))},
		{"lb/gal", "kg/m³", new(big.Rat).Quo(rat(t, "0.45359237"), rat(t, "0.003785411784"))},
		{"ft^9", "in^9", rat(t, "5159780352")},
		{"BTU/lb/°F", "J/kg/K", rat(t, "4186.8")},
		{"$/MMBTU", "$/BTU", rat(t, "1/1000000")},
	} {
		want, _ := c.want.Float64()
		got, _, ok := Conversion(parsed(t, c.from), parsed(t, c.to))
		require.True(t, ok)
		assert.Equal(t, want, got, "%s to %s", c.from, c.to)
	}
}

func TestExactKeepsWhatAFloatLoses(t *testing.T) {
	tenth := ratio(1, 10)
	sum := exact{}
	for range 10 {
		sum = sum.add(tenth)
	}
	assert.Equal(t, 1.0, sum.float())
	assert.NotZero(t, tenth.lo, "one tenth has no end in binary")
	assert.Equal(t, exactOne, tenth.div(tenth))
	assert.Equal(t, 1e-9, whole(10).pow(-9).float())
	assert.Equal(t, 1.0, whole(7).pow(0).float())
}
