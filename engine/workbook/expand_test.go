package workbook

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
)

// calls are one way to call every function over lines a to d, with the units
// and the stretches that the lines are drawn from.
func calls() map[string][]argument {
	brix := argument{"°Bx", 0, 85}
	sap := argument{"gal", 0, 4000}
	return map[string][]argument{
		"density(a, b)":                             {brix, {"°C", 0, 100}},
		`density(a, of(20, "°C"))`:                  {brix},
		`density(of(66, "°Bx"), b)`:                 {brix, {"°C", 0, 100}},
		"sap_per_syrup(a, b)":                       {{"°Bx", 0.1, 85}, brix},
		"syrup_from(a, b, c)":                       {sap, brix, {"°Bx", 0.1, 85}},
		"concentrate(a, b, c)":                      {{"L", 0, 4000}, brix, {"°Bx", 0.1, 85}},
		`concentrate(a, of(2, "°Bx"), c)`:           {sap, brix, {"°Bx", 0.1, 85}},
		"hydrometer(a, b)":                          {{"°Bx", 20, 70}, {"°F", 32, 212}},
		`hydrometer(a, of(211, "°F"))`:              {{"°Bx", 20, 70}},
		"taps_in_tree(a)":                           {{"in", 0, 40}},
		"water_boils_at(a)":                         {{"ft", -1000, 20000}},
		"draw_off_at(a, b)":                         {brix, {"ft", -1000, 20000}},
		"boil_heat(a, b, c, d)":                     {sap, {"°Bx", 0, 20}, {"°Bx", 20, 85}, {"°F", 32, 212}},
		"pan_holds(a, b)":                           {{"ft²", 0, 60}, {"in", 0, 12}},
		"wood_heat(a)":                              {{"%", 0, 85}},
		`bricks_for(a, "flat")`:                     {{"ft²", 0, 60}},
		`bricks_for(a, "edge")`:                     {{"ft²", 0, 60}},
		"sheet_weight(a, b)":                        {{"ft²", 0, 60}, {"in", 0, 1}},
		"yearly_share(a, b, c, d)":                  {{"$", 0, 5000}, {"year", 0.5, 60}, {"%", 0, 30}, {"%", 0, 100}},
		"worth_now(a, b, c)":                        {{"$", -500, 5000}, {"year", 0, 60}, {"1", 0, 1e-5}},
		"worth_now(b, a, c)":                        {{"year", 0, 1000}, {"$", 0, 50}, {"%", 0, 1000}},
		"years_to_repay(a, b, c)":                   {{"$", -10, 500}, {"$", 1, 500}, {"%", 0, 60}},
		"years_to_repay(b, a, c)":                   {{"$", 1, 500}, {"$", 0, 500}, {"1", 0, 1e-6}},
		"jars_filled(a, b, c)":                      {sap, {"pt", 0.1, 20}, {"%", 0, 100}},
		"units_sold(a, b, c, d)":                    {{"$", 0.1, 90}, {"$", 0.1, 90}, {"can", 0, 900}, {"1", -4, 1}},
		"min(a, b)":                                 {sap, {"L", 0, 4000}},
		"max(a, b, 0)":                              {{"gal", -9, 9}, {"L", -9, 9}},
		"abs(a)":                                    {{"gal", -9, 9}},
		"round(a)":                                  {{"gal", -9, 9}},
		"floor(a)":                                  {{"gal", -9, 9}},
		"ceil(a)":                                   {{"gal", -9, 9}},
		"sqrt(a)":                                   {{"ft²", 0, 99}},
		"exp(a)":                                    {{"1", -30, 30}},
		"ln(a)":                                     {{"1", 1e-9, 1e9}},
		"clamp(a, b, c)":                            {{"gal", -9, 9}, {"gal", -5, 0}, {"L", 0, 9}},
		"between(a, [-10, 0, 1, 20], [1, b, 3, c])": {{"1", -10, 20}, {"1", -5, 5}, {"1", 0, 9}},
		"of(a, \"gal\") + b":                        {{"%", 0, 9}, {"L", 0, 9}},
		"number(a, \"L\") * b":                      {sap, {"1", 0, 9}},
		"sum(t.x)":                                  {{"1", 0, 9}, {"1", -9, 9}, {"1", 0, 9}},
		"mean(t.x)":                                 {{"1", 0, 9}, {"1", -9, 9}, {"1", 0, 9}},
	}
}

type argument struct {
	unit      string
	low, high float64
}

// sheetFor is a sheet of one formula over lines a, b, … and a table of them.
func sheetFor(text string, args []argument, unit string) string {
	var b strings.Builder
	b.WriteString("thawbook: 1\nchapters:\n  - title: Test\n    lines:\n")
	for i, a := range args {
		fmt.Fprintf(&b, "      - {id: %c, label: %c, is: 1, unit: %q}\n", 'a'+i, 'A'+i, a.unit)
	}
	fmt.Fprintf(&b, "      - {id: out, label: Out, formula: %q, unit: %q}\n", text, unit)
	b.WriteString("    tables:\n      - id: t\n        columns: [{id: x, label: X, unit: 1}]\n        rows:\n")
	for i, a := range args {
		if a.unit == "1" {
			fmt.Fprintf(&b, "          - {id: r%c, label: R, x: {formula: %c}}\n", 'a'+i, 'a'+i)
		}
	}
	if !strings.Contains(text, "t.x") {
		return b.String()[:strings.Index(b.String(), "    tables:")]
	}
	return b.String()
}

// unitFor is the unit that a formula comes to: the first that binds.
func unitFor(t *testing.T, text string, args []argument) string {
	for _, unit := range []string{"1", "gal", "L", "$", "kg/m³", "°Bx", "tap", "°F", "BTU", "BTU/lb", "brick", "lb", "year", "jar", "can", "ft"} {
		doc, _ := sheet.Parse("t.yaml", []byte(sheetFor(text, args, unit)))
		resolved, _ := sheet.Resolve(doc, nil)
		if _, list := formula.Bind(resolved); list.Errors() == 0 {
			return unit
		}
	}
	require.Fail(t, "no unit fits", text)
	return ""
}

func TestEveryFunctionIsSpeltOut(t *testing.T) {
	expanded := expansions()
	for _, f := range formula.Functions() {
		called := false
		for text := range calls() {
			called = called || strings.HasPrefix(text, f.Name+"(")
		}
		assert.True(t, called, "%s has no case below", f.Name)
		switch f.Name {
		case "of", "number", "sum", "mean", "min", "max":
			continue // spelt without an expansion
		}
		assert.Contains(t, expanded, f.Name)
	}
	assert.Len(t, expanded, len(formula.Functions())-6, "and no other is")
}

// Each function, spelt out, comes to what the Go function comes to over all that
// it covers, its ends included: by our own evaluator and by the library's
// calculator.
func TestFunctionsSpeltOutComeToTheSame(t *testing.T) {
	for text, args := range calls() {
		t.Run(text, func(t *testing.T) {
			bound := plan(t, sheetFor(text, args, unitFor(t, text, args))).Bound
			random := rand.New(rand.NewPCG(7, uint64(len(text))))
			for k := range 60 {
				edits := make([]sheet.Edit, len(args))
				for i, a := range args {
					x := a.low + (a.high-a.low)*random.Float64()
					switch { // the corners first
					case k < 1<<len(args) && k>>i&1 == 1:
						x = a.high
					case k < 1<<len(args):
						x = a.low
					case k%5 == 0:
						x = math.Round(x)
					}
					edits[i] = sheet.Edit{About: string(rune('a' + i)), Set: sheet.Set{Is: &x}}
				}
				changed, list := sheet.Try(bound.Sheet, edits)
				require.Empty(t, list)
				rebound, _ := formula.Bind(changed)
				compareSpelling(t, rebound, k%20 == 0)
			}
		})
	}
}

// compareSpelling spells a plan's line "out", works it and holds it to the
// engine. byLibrary writes it to a workbook and has the library work that.
func compareSpelling(t *testing.T, bound *formula.Plan, byLibrary bool) {
	t.Helper()
	p := planFrom(bound, "t.yaml", nil)
	i := bound.Find("out")
	want := p.Likely[i]
	b := layOut(Input{Plans: []Plan{p}})
	pb := b.plans[0]
	// A mismatch at the likely numbers shows as a line that stands still.
	require.Empty(t, pb.why[i], "want %v", want)
	require.NotEmpty(t, pb.formulas[i])
	if want*0 != 0 {
		v, ok := evaluate(pb.formulas[i], func(name string) (value, bool) { v, ok := pb.values[name]; return v, ok })
		require.True(t, ok && v.bad, "%s comes to %v", pb.formulas[i], v)
	} else if byLibrary {
		f := open(t, write(t, Input{Plans: []Plan{p}}))
		got, ok := calculate(f, where{Sheet: pb.at[i].grid.name, Cell: pb.at[i].at.String()})
		require.True(t, ok && near(got, want), "%s: %v there, %v here", pb.formulas[i], got, want)
	}
}

// What a function does not cover comes to an error, never to a number.
func TestFunctionsBeyondTheirRangeComeToNoNumber(t *testing.T) {
	for _, f := range formula.Functions() {
		for i, a := range f.Args {
			if a.Min == 0 && a.Max == 0 {
				continue
			}
			for text, args := range calls() {
				if !strings.HasPrefix(text, f.Name+"(a") || strings.Contains(text, "of(") || len(args) != len(f.Args) {
					continue
				}
				bound := plan(t, sheetFor(text, args, unitFor(t, text, args))).Bound
				for _, x := range []float64{a.Min - 0.001, a.Max*1.00001 + 0.001} {
					// The argument stands in another unit than the function's where args has %.
					if args[i].unit == "%" {
						x *= 100
					}
					changed, list := sheet.Try(bound.Sheet, []sheet.Edit{{About: string(rune('a' + i)), Set: sheet.Set{Is: &x}}})
					require.Empty(t, list)
					rebound, _ := formula.Bind(changed)
					require.True(t, math.IsNaN(outcome.AtLikely(rebound)[rebound.Find("out")]), "%s with %s %v", text, a.Name, x)
					compareSpelling(t, rebound, false)
				}
			}
		}
	}
}

func TestALongRunOfPointsIsCutIntoSteps(t *testing.T) {
	var xs, ys []string
	for k := range 180 {
		xs, ys = append(xs, fmt.Sprint(k*k)), append(ys, fmt.Sprintf("%d + a", (k*7919)%1000))
	}
	text := "between(b, [" + strings.Join(xs, ",") + "], [" + strings.Join(ys, ",") + "])"
	if len(text) > formula.MaxRunes {
		text = strings.ReplaceAll(text, " ", "")
	}
	require.LessOrEqual(t, len(text), formula.MaxRunes+400)
	for len(text) > formula.MaxRunes {
		xs, ys = xs[:len(xs)-1], ys[:len(ys)-1]
		text = strings.ReplaceAll("between(b, ["+strings.Join(xs, ",")+"], ["+strings.Join(ys, ",")+"])", " ", "")
	}
	bound := plan(t, sheetFor(text, []argument{{"1", 0, 9}, {"1", 0, 30000}}, "1")).Bound
	for _, x := range []float64{0, 0.5, 1, 35, 3600, 7777.7, float64((len(xs) - 1) * (len(xs) - 1))} {
		changed, list := sheet.Try(bound.Sheet, []sheet.Edit{{About: "b", Set: sheet.Set{Is: &x}}})
		require.Empty(t, list)
		rebound, _ := formula.Bind(changed)
		compareSpelling(t, rebound, false)
	}
}

// longFormula is as deep and as long as formulas may be.
func TestTheDeepestFormulasStayWithinWhatProgramsRead(t *testing.T) {
	deep := strings.Repeat("abs(1+", formula.MaxDepth-1) + "a" + strings.Repeat(")", formula.MaxDepth-1)
	long := "a" + strings.Repeat("+a*a", formula.MaxRunes/4-1)
	nest := "a"
	for range 40 {
		nest = "(a > 2 ? " + nest + " : b)"
	}
	for _, text := range []string{deep, long, nest, "let x = a*a; let y = x > 2 ? x : b; y^2 + x^y"} {
		p := plan(t, sheetFor(text, []argument{{"1", 0, 9}, {"1", 0, 9}}, "1"))
		b := layOut(Input{Plans: []Plan{p}})
		pb := b.plans[0]
		i := p.Bound.Find("out")
		require.Empty(t, pb.why[i])
		all := []string{pb.formulas[i]}
		for _, s := range pb.steps {
			all = append(all, s.Formula)
		}
		for _, f := range all {
			assert.LessOrEqual(t, len(f), 4000)
			assert.LessOrEqual(t, depthOf(f), 40)
		}
		f := open(t, write(t, Input{Plans: []Plan{p}}))
		got, ok := calculate(f, where{Sheet: "Plan", Cell: pb.at[i].at.String()})
		assert.True(t, ok && near(got, p.Likely[i]), "%v there, %v here", got, p.Likely[i])
	}
}

func depthOf(text string) int {
	depth, most := 0, 0
	for _, c := range text {
		switch c {
		case '(':
			depth++
			most = max(most, depth)
		case ')':
			depth--
		}
	}
	return most
}

// Minus and power, in every order that programs differ on, mean what they mean
// here.
func TestSignsAndPowersAreInBrackets(t *testing.T) {
	for _, text := range []string{"-a^2", "(-a)^2", "2^-a", "2^3^a", "(2^3)^a", "-a^-2", "1 - -a", "1 - (a - b)", "a / (b / 2)", "a / b / 2",
		"a * (b / 3)", "a - b - 2", "-(a + b)^2", "a^b", "a^(b - 2)", "(a - 1)^(b - 2)", "a > 0 and not (b > 1) ? 1 : 2", "a == b ? 1 : 2", "1 < a < b ? 1 : 2"} {
		bound := plan(t, sheetFor(text, []argument{{"1", 0, 9}, {"1", 0, 9}}, "1")).Bound
		for _, pair := range [][2]float64{{1, 2}, {3, 2}, {2.5, 4}, {0.1, 7}, {2, 2}} {
			changed, list := sheet.Try(bound.Sheet, []sheet.Edit{{About: "a", Set: sheet.Set{Is: &pair[0]}}, {About: "b", Set: sheet.Set{Is: &pair[1]}}})
			require.Empty(t, list)
			rebound, _ := formula.Bind(changed)
			compareSpelling(t, rebound, true)
		}
	}
}

// The evaluator refuses what it does not know, instead of guessing.
func TestEvaluateRefusesWhatIsNotOurs(t *testing.T) {
	of := func(name string) (value, bool) { return value{number: 2}, name == "two" }
	for _, text := range []string{"", "two+", "(two", "two)", "three", "FACT(two)", "two two", "IF(two,1)", `"open`, "1..2", "two;1", "A1:B2", "SUM()", "=two"} {
		_, ok := evaluate(text, of)
		assert.False(t, ok, text)
	}
	for text, want := range map[string]float64{"two+1": 3, "-two^2": 4, "(-two)^2": 4, "1-two-3": -4, "8/two/2": 2, "IF(two>1,two,1/0)": 2, `IF("A"="a",1,2)`: 1,
		"1E+2": 100, "2.5E-1": 0.25, "ROUND(-2.5,0)": -3, "INT(-2.5)": -3, "AND(two>1,two<3)": 1, "AVERAGE(two,4)": 3, "TRUE": 1} {
		v, ok := evaluate(text, of)
		assert.True(t, ok && !v.bad && v.number == want, "%s: %v", text, v)
	}
	for _, text := range []string{"1/0", "NA()", "1+NA()", "IF(NA(),1,2)", "SQRT(0-1)", "LN(0)", "0^0", `1+"a"`, "MAX(1,1/0)", "INDEX(two,1)"} {
		v, ok := evaluate(text, of)
		assert.True(t, ok && v.bad, "%s: %v", text, v)
	}
}
