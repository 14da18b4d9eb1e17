package units

import (
	"math/rand/v2"
	"testing"
	"unsafe"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestProductsCancelWhatTheyShare(t *testing.T) {
	for _, c := range []struct {
		a, sign, b, want string
	}{
		{"tap", "*", "gal/tap", "gal"},
		{"taps", "*", "gal/Tap", "gal"},
		{"$/unit", "/", "BTU/unit", "$/BTU"},
		{"hours", "*", "$/hour", "$"},
		{"h", "*", "$", "$·h"},
		{"sq ft", "/", "ft", "ft"},
		{"gal", "/", "gallons", "1"},
		{"gal", "/", "tap", "gal/tap"},
		{"1", "/", "tap", "1/tap"},
		{"1", "*", "tap", "tap"},
		{"gal", "*", "%", "gal·%"},
		{"BTU/h", "/", "ft²", "BTU/h/ft²"},
		{"mph", "*", "h", "mi"},
		{"gal", "/", "L", "gal/L"},
		{"°F", "*", "BTU/lb/F°", "BTU/lb"},
		{"°F", "*", "1", "F°"},
		{"yes/no", "*", "gal", "gal"},
		{"gal", "*", "yes/no", "gal"},
		{"yes/no", "*", "yes/no", "1"},
	} {
		a, b := parsed(t, c.a), parsed(t, c.b)
		got := a.Mul(b)
		if c.sign == "/" {
			got = a.Div(b)
		}
		assert.Equal(t, c.want, got.String(), "%s %s %s", c.a, c.sign, c.b)
		readsBack(t, got, "USD")
	}
}

func TestPowersAndRoots(t *testing.T) {
	ft := parsed(t, "ft")
	assert.Equal(t, "ft²", ft.Pow(2).String())
	assert.Equal(t, "1/ft²", ft.Pow(-2).String())
	assert.Equal(t, "1", ft.Pow(0).String())
	assert.Equal(t, "feet", parsed(t, "feet").Pow(1).String())
	assert.Equal(t, "F°²", parsed(t, "°F").Pow(2).String())
	assert.Equal(t, "F°", parsed(t, "°F").Pow(1).String(), "a power is a product, and has differences only")

	for _, c := range []struct {
		text string
		n    int
		want string
		ok   bool
	}{
		{"sq ft", 2, "ft", true}, {"ft²/h⁴", 2, "ft/h²", true}, {"cu in", 3, "in", true}, {"1", 2, "1", true}, {"gal", 1, "gal", true},
		{"acre", 2, "1", false}, {"gal", 2, "1", false}, {"ft·in", 2, "1", false}, {"tap", 2, "1", false}, {"ft²", 0, "1", false},
	} {
		root, ok := parsed(t, c.text).Root(c.n)
		assert.Equal(t, c.ok, ok, c.text)
		assert.Equal(t, c.want, root.String(), c.text)
	}
}

func TestTheZeroUnitIsOne(t *testing.T) {
	var u Unit
	assert.True(t, u.IsPlain())
	assert.True(t, Same(u, One()))
	assert.Equal(t, "1", u.String())
	assert.Equal(t, 1.0, u.Scale())
	assert.Equal(t, "gal", u.Mul(parsed(t, "gal")).String())
	factor, _, ok := Conversion(u, One())
	assert.True(t, ok)
	assert.Equal(t, 1.0, factor)
	assert.Equal(t, unsafe.Sizeof(uintptr(0)), unsafe.Sizeof(u), "a unit is passed by value as one word")
}

func TestScaleAndDifference(t *testing.T) {
	f := parsed(t, "deg F")
	assert.True(t, f.IsAbsolute())
	assert.Equal(t, "F°", f.Difference().String())
	assert.False(t, f.Difference().IsAbsolute())
	assert.Equal(t, "°F", f.Difference().Absolute().String())
	assert.True(t, Same(f, f.Difference().Absolute()))
	assert.Equal(t, f.Dim(), f.Difference().Dim())
	assert.Equal(t, "K", parsed(t, "K°").Absolute().String())
	for _, text := range []string{"°F²", "°F/h", "1/°F", "°F*1", "gal", "F°"} {
		u := parsed(t, text)
		assert.False(t, u.IsAbsolute(), text)
		assert.Equal(t, text, u.Difference().String())
	}
	assert.Equal(t, "F°²", parsed(t, "°F").Pow(2).Absolute().String(), "only one degree alone stands on a scale")
	assert.Equal(t, "gal", parsed(t, "gal").Absolute().String())
}

// some makes a unit of a few random factors, the same for the same source.
func some(r *rand.Rand) Unit {
	words := []string{"tap", "glass jar", "box", "érable", "x9", "batch"}
	u := One()
	for range 1 + r.IntN(4) {
		var v Unit
		if n := r.IntN(len(defs) + len(words)); n < len(defs) {
			v = build([]term{{def: &defs[n], exp: 1}})
		} else {
			v = build([]term{{count: words[n-len(defs)], exp: 1}})
		}
		u = u.Mul(v.Pow(1 + r.IntN(3)).Pow(1 - 2*r.IntN(2)))
	}
	return u
}

func TestLawsOfUnits(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	converted := 0
	for range 4000 {
		u, v := some(r), some(r)
		readsBack(t, u, "USD")
		uv := u.Mul(v)
		require.Equal(t, uv.Dim(), v.Mul(u).Dim(), "%s and %s", u, v)
		require.InEpsilon(t, u.Scale()*v.Scale(), uv.Scale(), 1e-14)
		require.True(t, Same(uv.Div(v), u), "%s and %s", u, v)
		factor, offset, ok := Conversion(uv.Div(v), u)
		require.True(t, ok)
		require.Equal(t, []float64{1, 0}, []float64{factor, offset}, "%s and %s", u, v)
		root, ok := u.Pow(3).Root(3)
		require.True(t, ok)
		require.Equal(t, u.Dim(), root.Dim())
		for _, s := range []System{Metric, Customary} {
			w := u.In(s)
			there, _, ok := Conversion(u, w)
			require.True(t, ok, "%s in %s", u, w)
			back, _, ok := Conversion(w, u)
			require.True(t, ok)
			require.InEpsilon(t, 1, there*back, 1e-15)
			if there != 1 {
				converted++
			}
		}
	}
	assert.Greater(t, converted, 1000, "the draw must hold units the families differ in")
}

func TestConversionThereAndBackIsOne(t *testing.T) {
	for i := range defs {
		for j := range defs {
			a, b := build([]term{{def: &defs[i], exp: 1}}), build([]term{{def: &defs[j], exp: 1}})
			if !Same(a, b) {
				continue
			}
			there, _, _ := Conversion(a, b)
			back, _, _ := Conversion(b, a)
			assert.InEpsilon(t, 1, there*back, 2.3e-16, "%s and %s: one unit in the last place", a, b)
		}
	}
}

func BenchmarkMul(b *testing.B) {
	x, y := parsed(b, "tap"), parsed(b, "gal/tap")
	b.ReportAllocs()
	for b.Loop() {
		x.Mul(y)
	}
}
