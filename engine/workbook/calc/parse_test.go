package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/workbook/calc"
)

func parsed(t *testing.T, formula string) *calc.Term {
	t.Helper()
	term, err := calc.Parse(formula)
	require.NoError(t, err, formula)
	return term
}

func TestFormulasThatDoTheSame(t *testing.T) {
	for _, pair := range [][2]string{
		{"taps*sap_per_tap", " TAPS * Sap_per_tap "},
		{"(a+b)*c", "((a)+(b))*c"},
		{"a-b-c", "(a-b)-c"},
		{"-2^2", "(-2)^2"}, // the standard has signs hold tighter
		{"2^3^2", "(2^3)^2"},
		{"a&b=c", "(a&b)=c"},
		{"a+b<c*d", "(a+b)<(c*d)"},
		{"IF(a>=1,2,3)", "_xlfn.if(a>=1;2;3)"},
		{"0.30000000000000004*a", "0.3*a"},
		{"$B$7+Plan!C3", "B7+'Plan'!$C$3"},
		{"SUM('It''s'!A1:B2)", "sum('it''s'!A1:B2)"},
		{"TRUE", "true"},
		{"--a", "a"},
		{"5%", "(5%)"},
	} {
		assert.True(t, calc.Same(parsed(t, pair[0]), parsed(t, pair[1])), pair)
	}
}

func TestFormulasThatDoNot(t *testing.T) {
	for _, pair := range [][2]string{
		{"a-b-c", "a-(b-c)"}, {"a*b", "b*a"}, {"-2^2", "-(2^2)"}, {"a", "b"}, {"a=b", "a<>b"}, {"A1", "A2"}, {"A1", "Plan!A1"},
		{`"x"`, `"X"`}, {"1", "1.0000001"}, {"IF(a,b,c)", "IF(a,b)"}, {"MIN(a,b)", "MAX(a,b)"}, {"a", "A1"}, {"5%", "5"},
	} {
		assert.False(t, calc.Same(parsed(t, pair[0]), parsed(t, pair[1])), pair)
	}
}

func TestWhatIsNoFormula(t *testing.T) {
	for formula, why := range map[string]string{
		"": "stops too soon", "a+": "stops too soon", "(a": "not closed", "a)": "not understood", "SUM(a": "not closed", "a b": "not understood",
		`"a`: "no end", "#REF!+1": "#REF!", "#N/A": "#N/A", "#": "not understood", "{1,2}": "not understood", "A:A": "not understood", "3:5": "not understood", "[1]Sheet!A1": "not understood",
		"tbl[col]":                              "not understood",
		strings.Repeat("(", 100) + "a":          "deeper than 64",
		strings.Repeat("IF(", 9000):             "longer than 8192",
		strings.Repeat("1+", 3000) + "1":        "more than 2000",
		strings.Repeat("(a)+", 300) + "a+\x00b": "not understood",
	} {
		_, err := calc.Parse(formula)
		assert.ErrorContains(t, err, why, formula[:min(20, len(formula))])
	}
	_, err := calc.Parse(strings.Repeat("-", 1500) + "1")
	assert.NoError(t, err)
}

func TestShift(t *testing.T) {
	for _, c := range []struct {
		formula       string
		rows, columns int
		want          string
	}{
		{"A1+B2", 2, 1, "B3+C4"}, {"$A1+B$2", 2, 1, "$A3+C$2"}, {"$A$1", 5, 5, "$A$1"}, {"SUM(A1:B2)*2", 1, 0, "SUM(A2:B3)*2"},
		{`"A1"&A1`, 1, 0, `"A1"&A2`}, {"taps*A1", 0, 25, "taps*Z1"}, {"Z1", 0, 1, "AA1"}, {"'Plan 2'!A1", 1, 1, "'Plan 2'!B2"}, {"LOG10(A1)", 1, 0, "LOG10(A2)"},
	} {
		got, ok := calc.Shift(c.formula, c.rows, c.columns)
		assert.True(t, ok, c.formula)
		assert.Equal(t, c.want, got)
	}
	for _, formula := range []string{"A1", `"`, "B1:A2"} {
		_, ok := calc.Shift(formula, -1, -1)
		assert.False(t, ok, formula)
	}
}

func TestAddressesAndRanges(t *testing.T) {
	row, column, ok := calc.Address("XFD1048576")
	assert.True(t, ok)
	assert.Equal(t, []int{1_048_576, 16_384}, []int{row, column})
	for _, text := range []string{"", "A", "1", "XFE1", "A1048577", "A0", "A1B", "AAAA1", "tap1x", "A-1"} {
		_, _, ok := calc.Address(text)
		assert.False(t, ok, text)
	}
	r, ok := calc.ReadRange("'It''s'!$B$7:$C$9")
	assert.True(t, ok)
	assert.Equal(t, []int{7, 2, 9, 3}, []int{r.Row, r.Column, r.Row2, r.Column2})
	assert.Equal(t, "It's", r.Sheet)
	for _, text := range []string{"", "#REF!", "Plan!#REF!", "A1,B2", "A:A", "B2:A1", "Plan!A1 ", "1+A1"} {
		_, ok := calc.ReadRange(text)
		assert.False(t, ok, text)
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"taps*sap_per_tap", "IF(AND(a>1,b<=2),-a^2,'S 1'!$B$3:C4%)", `"a""b"&#REF!`, "((((", "1e5+.5", "--+-a"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, formula string) {
		term, err := calc.Parse(formula)
		if err == nil && !calc.Same(term, term) {
			t.Fatalf("%q is not itself", formula)
		}
		calc.Shift(formula, 3, -2)
		calc.ReadNumber(formula)
	})
}
