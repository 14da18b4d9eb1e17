package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thawbook/engine/workbook/calc"
)

func TestNumbersAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]struct {
		x    float64
		rest string
	}{
		"140": {140, ""}, " 140 ": {140, ""}, "-3": {-3, ""}, "−3.5": {-3.5, ""}, "+2": {2, ""},
		"1,240": {1240, ""}, "1,240.5": {1240.5, ""}, "1,240,000": {1240000, ""}, "12,5": {12.5, ""},
		"1.240,5": {1240.5, ""}, "1.240.000": {1240000, ""}, "1 240": {1240, ""}, "1 240,5": {1240.5, ""}, "1'240": {1240, ""},
		"$3.50": {3.5, "$"}, "$ 1,240": {1240, "$"}, "3.50 $": {3.5, "$"}, "€12": {12, "€"}, "5 %": {5, "%"}, "5%": {5, "%"},
		"12 gal": {12, "gal"}, "12gal/tap": {12, "gal/tap"}, "8 ft²": {8, "ft²"}, "1/2": {0.5, ""}, "1 1/2 gal": {1.5, "gal"},
		"1e3": {1000, ""}, "2.5e-3 lb": {0.0025, "lb"}, ".5": {0.5, ""}, "5.": {5, ""},
	} {
		x, rest, ok := calc.ReadNumber(text)
		assert.True(t, ok, text)
		assert.InDelta(t, want.x, x, 1e-12*max(1, want.x), text)
		assert.Equal(t, want.rest, rest, text)
	}
}

func TestWhatCouldMeanMoreThanOneNumberIsNone(t *testing.T) {
	for _, text := range []string{"", "about 5", "5-9", "5 to 9", "2019-03-14", "3/14/2019", "1,24,0", "1.2.3", "12,34,5", "x", "1/0", "$", "--3",
		"1 1 1", "1e999", "9999999999999999999999999999999999999999999999999999999999999999"} {
		_, _, ok := calc.ReadNumber(text)
		assert.False(t, ok, text)
	}
}
