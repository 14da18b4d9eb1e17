package formula

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

func TestFunctionsAreThoseASheetReserves(t *testing.T) {
	var have []string
	for _, f := range Functions() {
		have = append(have, f.Name)
	}
	want := slices.DeleteFunc(sheet.FunctionNames(), func(name string) bool { return name == "season_walk" })
	assert.Equal(t, want, have, "the sheet reserves the names of functions, in the order of the reference list")
}

func TestEveryFunctionIsDescribed(t *testing.T) {
	for _, f := range Functions() {
		assert.NotEmpty(t, f.Summary, f.Name)
		assert.NotEmpty(t, f.ResultText(), f.Name)
		if f.Family != General {
			assert.NotEmpty(t, f.Source, f.Name)
		}
		_, list := parse(f.Example)
		assert.Empty(t, list, f.Example)
		for _, a := range f.Args {
			assert.NotEmpty(t, a.Summary, f.Name+" "+a.Name)
			assert.NotEmpty(t, a.UnitText(f), f.Name+" "+a.Name)
			for _, text := range []string{a.Unit, a.Like} {
				if text != "" {
					_, err := units.Parse(text, "USD")
					assert.NoError(t, err, f.Name)
				}
			}
		}
	}
}

// TestRangesAreThoseOfTheFunctions holds the ranges the reference list prints
// to what the functions do: a number inside, none just outside.
func TestRangesAreThoseOfTheFunctions(t *testing.T) {
	for _, f := range Functions() {
		if f.Fn != nil || f.rule != nil && f.F3 == nil {
			continue
		}
		for i, a := range f.Args {
			if a.Min == 0 && a.Max == 0 {
				continue
			}
			at := func(x float64) float64 {
				args := inside(f)
				args[i] = x
				return f.Apply(args)
			}
			for _, x := range []float64{a.Min, a.Max} {
				if x == 0 && a.Unit == "°Bx" || a.Name == "years" {
					continue // nothing comes of no sugar and of no years
				}
				assert.False(t, isNaN(at(x)), "%s at %s = %v", f.Name, a.Name, x)
			}
			assert.True(t, isNaN(at(a.Max*1.001+0.001)), "%s beyond %s = %v", f.Name, a.Name, a.Max)
			assert.True(t, isNaN(at(a.Min-0.001*(1+abs(a.Min)))), "%s below %s = %v", f.Name, a.Name, a.Min)
		}
	}
}

// inside gives each argument a number well inside what its function covers.
func inside(f *Function) []float64 {
	out := make([]float64, len(f.Args))
	for i, a := range f.Args {
		switch {
		case a.Name == "sap_brix" || a.Name == "from_brix":
			out[i] = 2
		case a.Name == "syrup_brix":
			out[i] = 85 // sap may be as sweet as the syrup, and no sweeter
		case f.Name == "hydrometer" && a.Name == "brix":
			out[i] = 66
		case a.Name == "to_brix":
			out[i] = 70
		case a.Unit == "°F":
			out[i] = 60
		case a.Name == "rate":
			out[i] = 0.05
		case a.Name == "left_over":
			out[i] = 0.1
		case a.Name == "yearly_saving":
			out[i] = 500
		default:
			out[i] = 10
		}
	}
	return out
}

func isNaN(x float64) bool { return x != x }

func abs(x float64) float64 { return max(x, -x) }

func TestApplyTakesEveryArity(t *testing.T) {
	table := functionTable()
	assert.InDelta(t, 3, table["abs"].Apply([]float64{-3}), 0)
	assert.InDelta(t, 2, table["clamp"].Apply([]float64{5, 1, 2}), 0)
	assert.InDelta(t, 1, table["min"].Apply([]float64{3, 1, 2}), 0)
	assert.InDelta(t, 2.5, table["between"].Apply([]float64{1.5, 1, 2, 2, 3}), 1e-15)
	require.True(t, isNaN(table["between"].Apply([]float64{3, 1, 2, 2, 3})), "beyond the last point")
	require.True(t, isNaN(table["between"].Apply([]float64{1.5, 2, 1, 2, 3})), "points that do not rise")
}

// TestScalesIsTrue holds the functions that say they are in proportion to their
// first argument to it.
func TestScalesIsTrue(t *testing.T) {
	scaled := 0
	for _, f := range Functions() {
		if !f.Scales {
			continue
		}
		scaled++
		args := inside(f)
		args[0] = 1
		one := f.Apply(args)
		for _, x := range []float64{0, 0.37, 12, 4321, -5} {
			args[0] = x
			assert.InDelta(t, x*one, f.Apply(args), 1e-12*abs(x*one), "%s at %v", f.Name, x)
		}
	}
	assert.GreaterOrEqual(t, scaled, 5)
}
