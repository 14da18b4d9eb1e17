package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShow(t *testing.T) {
	for _, c := range []struct {
		x    float64
		unit string
		want string
	}{
		{12.34, "gal", "12.3 gal"},
		{12.04, "gal", "12 gal"},
		{9.996, "gal", "10 gal"},
		{99.96, "gal", "100 gal"},
		{999.4, "gal", "999 gal"},
		{999.5, "gal", "1,000 gal"},
		{1234.5, "gal", "1,235 gal"},
		{1234567, "BTU", "1,234,567 BTU"},
		{-1234567, "BTU", "-1,234,567 BTU"},
		{0.04567, "gal", "0.0457 gal"},
		{-0.5, "gal", "-0.5 gal"},
		{0, "gal", "0 gal"},
		{math.Copysign(0, -1), "gal", "0 gal"},
		{0.00000123, "gal", "0.00000123 gal"},
		{0.00000000123, "gal", "1.23 × 10⁻⁹ gal"},
		{1.5e15, "BTU", "1.5 × 10¹⁵ BTU"},
		{3.3, "h", "3.3 h"},
		{0.4, "1", "0.4"},
		{0.4, "gal/gal", "0.4"},
		{4.5, "%", "4.5 %"},
		{2.25, "°Bx", "2.25 °Bx"},

		{1240, "$", "$1,240"},
		{1240.49, "$", "$1,240"},
		{140.2, "$", "$140"},
		{99.994, "$", "$99.99"},
		{99.996, "$", "$100"},
		{42.1, "$/gal", "$42.10/gal"},
		{42.1, "$ / gal", "$42.10 / gal"},
		{42.1, "$ per gal", "$42.10 per gal"},
		{42.1, "USD/gal", "$42.10/gal"},
		{42.1, " dollars", "$42.10"},
		{0.32, "$/gal", "$0.32/gal"},
		{0.05, "$", "$0.05"},
		{0.0312, "$/kWh", "$0.0312/kWh"},
		{0.0995, "$", "$0.10"},
		{0, "$", "$0"},
		{-12.4, "$", "-$12.40"},
		{-0.000001, "$", "-$0.000001"},
		{2e-9, "$/BTU", "$2 × 10⁻⁹/BTU"},
		{45, "¢", "45 ¢"},
		{3, "gal/$", "3 gal/$"},
		{3, "h·$", "3 h·$"},

		{140, "tap", "140 taps"},
		{140, "taps", "140 taps"},
		{1, "taps", "1 tap"},
		{-1, "taps", "-1 tap"},
		{1.004, "tap", "1 tap"},
		{1.5, "tap", "1.5 taps"},
		{0, "tap", "0 taps"},
		{12, "box", "12 boxes"},
		{12, "glass", "12 glasses"},
		{2, "people", "2 people"},
		{1, "people", "1 person"},
		{3, "Jar", "3 Jars"},
		{3, "IBC", "3 IBC"},
		{3, "jar2", "3 jar2"},
		{3, "tap·h", "3 tap·h"},
		{35, "day", "35 days"},
		{1, "hours", "1 hour"},
		{2, "cord", "2 cords"},
		{2, "foot", "2 feet"},
		{2, "gal", "2 gal"},
		{0.25, "1/tap", "0.25 per tap"},

		{219.12, "°F", "219.1 °F"},
		{219, "°F", "219.0 °F"},
		{-0.04, "°C", "0.0 °C"},
		{7.1, "F°", "7.1 F°"},
		{1500.4, "°F", "1,500 °F"},
		{3, "F°/h", "3 F°/h"},

		{1, "yes/no", "yes"},
		{0, "yes/no", "no"},
		{0.375, "yes/no", "37.5 % yes"},

		{math.NaN(), "gal", "no number"},
		{math.Inf(1), "$", "no number"},
		{math.Inf(1), "year", "never"},
		{math.Inf(-1), "year", "no number"},
		{math.NaN(), "yes/no", "no number"},
	} {
		assert.Equal(t, c.want, Show(c.x, parsed(t, c.unit)), "%v in %q", c.x, c.unit)
	}
}

func TestNumberAndLabelAreThePartsOfShow(t *testing.T) {
	for _, c := range []struct {
		unit, number, label string
	}{
		{"gal", "1,240", "gal"}, {"$", "1,240", "$"}, {"$/gal", "1,240", "$/gal"}, {"USD / gal", "1,240", "$ / gal"},
		{"tap", "1,240", "taps"}, {"1", "1,240", ""}, {"%", "1,240", "%"}, {"1/tap", "1,240", "per tap"}, {"°F", "1,240", "°F"},
		{"yes/no", "124,000 % yes", "yes/no"}, {"day", "1,240", "days"},
	} {
		u := parsed(t, c.unit)
		assert.Equal(t, c.number, Number(1240, u), c.unit)
		assert.Equal(t, c.label, UnitLabel(u), c.unit)
	}
	assert.Equal(t, "", UnitLabel(Unit{}))
}

func TestNothingIsShownAsMinusNothing(t *testing.T) {
	for _, unit := range []string{"gal", "$", "°F", "1", "yes/no", "tap"} {
		for _, x := range []float64{math.Copysign(0, -1), -1e-320} {
			assert.NotRegexp(t, `^-\$?0(\.0*)?( |$)`, Show(x, parsed(t, unit)), "%v %s", x, unit)
		}
	}
}

func TestWorkedOutUnitsShowAlike(t *testing.T) {
	price := parsed(t, "$/unit").Div(parsed(t, "BTU/unit"))
	assert.Equal(t, "$12.50/BTU", Show(12.5, price))
	assert.Equal(t, "140 taps", Show(140, parsed(t, "gal").Div(parsed(t, "gal/taps"))))
	assert.Equal(t, "$18.00·h", Show(18, parsed(t, "h").Mul(parsed(t, "$"))))
}
