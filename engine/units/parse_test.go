package units

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatTextsMean(t *testing.T) {
	for _, c := range []struct {
		text, like, dim string // like is another text of the same dimension and scale
	}{
		{"1", "1", "bare number"},
		{"1/1", "1", "bare number"},
		{"gal/gal", "1", "bare number"},
		{"gallons", "gal", "volume"},
		{"Gal.", "gal", "volume"},
		{"gal per tap", "gal/tap", "volume/tap"},
		{"gal/Taps", "gal/tap", "volume/tap"},
		{"sq. ft.", "ft²", "area"},
		{"square feet", "ft^2", "area"},
		{"ft2", "ft*ft", "area"},
		{"cu ft", "ft³", "volume"},
		{"m3", "m·m×m", "volume"},
		{"fl oz", "fluid ounces", "volume"},
		{"fl  oz", "fl oz", "volume"},
		{"Btu", "BTU", "energy"},
		{"BTU/h/ft²", "BTU/(nothing)", "power/area"},
		{"BTU/h", "BTUh", "power"},
		{"kWh", "kW*h", "energy"},
		{"kilowatt-hours", "kWh", "energy"},
		{"mph", "mi/h", "length/time"},
		{"lb/gal", "pounds/gallon", "mass/volume"},
		{"ft⁻²", "1/ft^2", "1/area"},
		{"ft^-1", "1/ft", "1/length"},
		{"BTU/lb/°F", "BTU/lb/F°", "energy/mass/temperature"},
		{"°F·h", "F°*h", "time·temperature"},
		{"º F", "°F", "temperature"},
		{"˚C", "°C", "temperature"},
		{"deg F", "°F", "temperature"},
		{"℉", "°F", "temperature"},
		{"∆°F", "F°", "temperature"},
		{"Brix", "°Bx", "°Bx"},
		{"°brix", "°Bx", "°Bx"},
		{"percent", "%", "bare number"},
		{"$/MMBTU", "usd/MMBtu", "money/energy"},
		{"$/h/tap", "$/tap/h", "money/time/tap"},
		{"cents", "¢", "money"},
		{"$·h", "h*$", "money·time"},
		{"glass jars", "Glass Jar", "glass jar"},
		{"jar/box", "jars/boxes", "jar/box"},
		{"jar2", "jar2", "jar2"},
		{"tap²", "tap*tap", "tap²"},
		{"1/tap", "tap^-1", "1/tap"},
		{"lb-ish", "lb-ish", "lb-ish"},
		{"érable", "Érables", "érable"},
		{"cup", "CUP", "volume"},
		{"top", "tops", "top"},
		{"person", "people", "person"},
		{"ft·lb", "lb·ft", "mass·length"},
	} {
		u := parsed(t, c.text)
		assert.Equal(t, c.dim, u.Dim().String(), c.text)
		if strings.Contains(c.like, "nothing") {
			continue
		}
		v := parsed(t, c.like)
		assert.True(t, Same(u, v), "%q and %q", c.text, c.like)
		factor, _, ok := Conversion(u, v)
		assert.True(t, ok)
		assert.Equal(t, 1.0, factor, "%q and %q", c.text, c.like)
	}
}

func TestATextIsKeptAsItWasWritten(t *testing.T) {
	for _, text := range []string{"gallons", "sq. ft.", "gal / tap", "Taps", "USD/h", "1", "gal/gal", "yes/no"} {
		assert.Equal(t, text, parsed(t, text).String())
	}
	assert.Equal(t, "gal", parsed(t, "  gal\t").String(), "space around it is not part of it")
}

func TestYesNo(t *testing.T) {
	u := parsed(t, " Yes/No ")
	assert.True(t, u.IsYesNo())
	assert.False(t, u.IsPlain())
	assert.True(t, Same(u, YesNo()))
}

func TestMoneyOfTheSheet(t *testing.T) {
	for _, text := range []string{"$", "€", "£", "¥", "EUR", "eur", "dollars"} {
		u, err := Parse(text, "EUR")
		require.NoError(t, err, text)
		assert.Equal(t, "money", u.Dim().String())
		assert.Equal(t, 1.0, u.Scale())
		assert.Equal(t, "€12.50", Show(12.5, u), "%q is shown as the money it is", text)
	}
	_, err := Parse("$/h", "")
	assert.NoError(t, err, "a sheet that names no money still has some")
	u, err := Parse("CHF/h", "CHF")
	require.NoError(t, err)
	assert.Equal(t, "CHF 18.00/h", Show(18, u))
	assert.Equal(t, "CHF", u.Mul(parsed(t, "h")).String())
}

func TestWhatCannotBeRead(t *testing.T) {
	for _, c := range []struct {
		text     string
		from, to int
		message  string
		hint     string
	}{
		{"", 0, 0, "no unit is written", "write 1 for a bare number"},
		{"  ", 2, 2, "no unit is written", "write 1"},
		{"gal/", 4, 4, `"gal/" ends where a unit should stand`, ""},
		{"gal*/h", 4, 5, `nothing stands before "/"`, ""},
		{"/tap", 0, 1, `nothing stands before "/"`, "1/tap"},
		{"per tap", 0, 3, `nothing stands before "per"`, "1/tap"},
		{"BTU/(h·ft²)", 4, 5, "a unit has no brackets", "BTU/h/ft²"},
		{"lb)", 2, 3, `")" cannot stand`, ""},
		{"12 oz", 0, 5, `"12 oz" has a number in it`, `"oz"`},
		{"$/100 lb", 2, 8, `"100 lb" has a number in it`, `"lb"`},
		{"kW h", 0, 4, `"kW h" has no sign between its units`, "kW*h"},
		{"BTU/hr-ft2", 4, 10, `"hr-ft2" has no sign`, "hr*ft2"},
		{"gal^", 3, 4, `"^" is no exponent`, ""},
		{"gal^0", 3, 5, `"^0" is no exponent`, ""},
		{"gal^12", 3, 6, `"^12" is no exponent`, ""},
		{"gal^-", 3, 5, `"^-" is no exponent`, ""},
		{"CAD/gal", 0, 3, `"CAD" is not this sheet's money`, "$"},
		{"°", 0, 1, `"°" is no unit`, ""},
		{"°Q", 0, 2, `"°Q" is no unit`, "a unit is a word"},
		{"°Birx", 0, 5, `"°Birx" is no unit`, "did you mean °Bx?"},
		{"érable/gal+tap", 10, 11, `"+" cannot stand`, ""},
		{"gal\x00", 3, 4, "cannot stand", ""},
		{"gal\xff", 3, 4, "cannot stand", ""},
		{strings.Repeat("a", 81), 80, 81, "a unit of 81 characters is longer than 80", ""},
		{strings.Repeat("m*", 12) + "m", 24, 25, "a unit of more than 12 factors", ""},
	} {
		u, err := Parse(c.text, "USD")
		var at *ParseError
		require.ErrorAs(t, err, &at, c.text)
		assert.Equal(t, "1", u.String(), c.text)
		assert.Contains(t, at.Message, c.message, c.text)
		assert.Contains(t, at.Hint, c.hint, c.text)
		assert.Equal(t, [2]int{c.from, c.to}, [2]int{at.From, at.To}, c.text)
		if at.Hint != "" {
			assert.Contains(t, err.Error(), "("+at.Hint+")")
		}
	}
}

func TestAnErrorReadsOnOneLine(t *testing.T) {
	assert.Equal(t, "no unit is written (write 1 for a bare number)", (&ParseError{Message: "no unit is written", Hint: "write 1 for a bare number"}).Error())
	assert.Equal(t, "no unit is written", (&ParseError{Message: "no unit is written"}).Error())
}

func TestMoneyThatIsNoCode(t *testing.T) {
	for currency, want := range map[string]string{
		"GBP": "£3.00", "jpy": "¥3.00", "CAD": "$3.00", "NOK": "NOK 3.00", "": "$3.00", "U$D": "$3.00", "dollars": "$3.00", "QQQ": "$3.00",
		"CUP": "$3.00", // as a unit it reads as a cup
	} {
		u, err := Parse("$", currency)
		require.NoError(t, err)
		assert.Equal(t, want, Show(3, u), currency)
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"gal/tap", "$/MMBTU", "BTU/h/ft²", "sq. ft.", "°F", "Δ°F·h", "1/tap^-9", "kW h", "yes/no", "İs", "axes per year", "ft2s", "¢*%", "m^9·m^9", "tap-", "a.b", "per per", "a\fs", "peR 0", "A pe.r"} {
		f.Add(seed, "USD")
	}
	f.Add("CHF/h", "chf")
	f.Add("tap", "TAP")
	f.Fuzz(func(t *testing.T, text, currency string) {
		u, err := Parse(text, currency)
		if err != nil {
			var at *ParseError
			require.True(t, errors.As(err, &at))
			require.True(t, 0 <= at.From && at.From <= at.To && at.To <= max(utf8.RuneCountInString(text), at.From), "%+v", at)
			return
		}
		u.Doubts()
		Show(1234.5, u)
		readsBack(t, u, currency)
		readsBack(t, u.Mul(u), currency)
		readsBack(t, One().Div(u), currency)
		readsBack(t, u.In(Metric), currency)
		readsBack(t, u.In(Customary), currency)
	})
}

// readsBack holds that a unit's text means the unit.
func readsBack(t testing.TB, u Unit, currency string) {
	t.Helper()
	text := u.String()
	if utf8.RuneCountInString(text) > MaxRunes || u.Dim().beyond || tooHigh(u) {
		return
	}
	v, err := Parse(text, currency)
	require.NoError(t, err, "%q", text)
	require.Equal(t, u.Dim(), v.Dim(), "%q", text)
	require.Equal(t, u.IsAbsolute(), v.IsAbsolute(), "%q", text)
	require.InEpsilon(t, u.Scale(), v.Scale(), 1e-15, "%q", text)
	factor, offset, ok := Conversion(u, v)
	require.True(t, ok, "%q", text)
	require.Equal(t, []float64{1, 0}, []float64{factor, offset}, "%q", text)
}

// tooHigh finds exponents and factors that may be worked out but not written.
func tooHigh(u Unit) bool {
	for _, t := range u.parts().terms {
		if t.exp > maxWritten || t.exp < -maxWritten {
			return true
		}
	}
	return len(u.parts().terms) >= MaxFactors
}

func BenchmarkParse(b *testing.B) {
	texts := []string{"gal/tap", "$/MMBTU", "taps", "BTU/h/ft²", "fl oz", "°F"}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := Parse(texts[i%len(texts)], "USD"); err != nil {
			b.Fatal(err)
		}
	}
}
