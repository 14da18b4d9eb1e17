package formula

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/sheet"
)

// farm is a small sheet for formulas to be wrong about.
func farm(text, unit string) *sheet.Sheet {
	s := one(is("taps", "tap", 140), is("sap", "gal", 100), is("wood", "lb", 40), is("warm", "°F", 60), is("sugar", "°Bx", 2), is("share", "%", 10),
		&sheet.Line{ID: "fuel", Kind: sheet.Choose, Choose: "wood_fire", Among: []sheet.Name{{ID: "wood_fire"}, {ID: "propane"}}, AmongTable: "fuels"},
		work("it", unit, text))
	cell := func(row string, x float64) *sheet.Line {
		return &sheet.Line{ID: "fuels." + row + ".heat", Table: "fuels", Row: row, Column: "heat", Kind: sheet.Is, Is: x, Unit: "BTU/unit"}
	}
	s.Chapters[0].Tables = []*sheet.Table{{ID: "fuels", Columns: []sheet.Column{{ID: "heat"}},
		Rows: []sheet.Row{{ID: "wood_fire", Cells: []*sheet.Line{cell("wood_fire", 5)}}, {ID: "propane", Cells: []*sheet.Line{cell("propane", 9)}}}}}
	return s
}

// TestMessagesSayWhatWasFoundAndWhatToDo reads every message as its person does:
// what was found, what was wanted, with units, and a way on.
func TestMessagesSayWhatWasFoundAndWhatToDo(t *testing.T) {
	for _, c := range []struct{ text, unit, message, hint string }{
		{"sap + wood", "gal", `cannot add "gal" to "lb"`, "convert one of them with a line that says how much of one makes the other"},
		{"sap - 5", "gal", `cannot take a bare number from "gal"`, `give the number a unit: of(5, "gal")`},
		{"sap > 5", "yes/no", `cannot compare "gal" with a bare number`, `give the number a unit: of(5, "gal")`},
		{"sap + share", "gal", `cannot add "gal" to a bare number`, "one side lacks a unit; give its line the unit it is counted in"},
		{"warm + warm", "°F", "two temperatures on a scale cannot be added", "add a difference instead, in F° or C°"},
		{"warm * 2", "°F", `a temperature on a scale ("°F") cannot be multiplied or divided`, `take a difference first, or number(x, "°F")`},
		{"sapp * 2", "gal", `nothing is called "sapp"`, `did you mean "sap"?`},
		{"fuel * 2", "1", `the choice "fuel" is not a number`, "compare it with one of its names, or look up a column with it"},
		{`fuel == "propain"`, "yes/no", `"fuel" has no choice "propain"`, `did you mean "propane"?`},
		{"fuels.propane", "BTU/unit", `the row "propane" is not a number`, "name a column: fuels.propane.heat"},
		{"fuels.heat", "BTU/unit", `the column "fuels.heat" is not a number`, "name one row, or add the column up"},
		{"fuels.propane.heet", "BTU/unit", `the table "fuels" has no column "heet"`, `did you mean "heat"?`},
		{"fuels.propan.heat", "BTU/unit", `the table "fuels" has no row "propan"`, `did you mean "propane"?`},
		{"fuells.propane.heat", "BTU/unit", `no table is called "fuells"`, `did you mean "fuels"?`},
		{"fuels", "1", `the table "fuels" is not a number`, "name a column of it: sum(fuels.…)"},
		{"abs", "1", `the function "abs" is not a number`, "give it its arguments: abs(x)"},
		{"syrup_form(sap, sugar, sugar)", "gal", `no function is called "syrup_form"`, `did you mean "syrup_from"?`},
		{"syrup_from(sap, sugar)", "gal", `"syrup_from" takes 3 arguments, not 2`, "write syrup_from(sap, sap_brix, syrup_brix)"},
		{"syrup_from(wood, sugar, sugar)", "gal", `sap of "syrup_from" is "gal", not "lb"`, "sap put in"},
		{"syrup_from(sap, 2, sugar)", "gal", `sap_brix of "syrup_from" is "°Bx", not a bare number`, `give the number a unit: of(2, "°Bx")`},
		{"draw_off_at(sugar, 900)", "°F", `elevation of "draw_off_at" is "ft", not a bare number`, `give the number a unit: of(900, "ft")`},
		{"taps * 2", "gal", `"it" comes to "tap", not "gal"`, "multiply by something in gal/tap, or change the line's unit"},
		{"sap > sap", "gal", `"it" comes to a yes or no, not "gal"`, `give the line the unit "yes/no"`},
		{"sap", "yes/no", `"it" comes to "gal", not a yes or no`, "compare it with something: x > 3"},
		{"sap ? 1 : 2", "1", `a yes or no is wanted here, not "gal"`, "compare it with something, in brackets after not: not (x > 3)"},
		{"true ? sap : wood", "gal", `a condition gives "gal" or "lb"`, "both sides of the colon need the same dimension"},
		{"sap ^ 0.5", "gal", `"gal" needs a whole exponent written as a number`, "use a whole number from -6 to 6, or sqrt"},
		{"sqrt(sap)", "gal", `"gal" has no square root`, "only squares such as ft² have a root"},
		{"of(sap, \"gal\")", "gal", `"gal" already has a unit`, "take its unit off first with number"},
		{"number(sap, \"lb\")", "1", `"gal" cannot be counted in "lb"`, "name a unit of the same dimension"},
		{"sum(sap)", "gal", `"sum" adds up a column, not "gal"`, "name a table's column: jars.income"},
		{"(1 + 2", "1", "formula stops too soon", "finish the last step, or close its bracket"},
		{"1 + * 2", "1", `formula does not read at "*"`, "look for a missing operator or bracket just before it"},
		{"sap % 3", "gal", "formulas do not have the remainder sign", `a share is written of(5, "%"), or as a line whose unit is %`},
		{"sap | abs()", "gal", "formulas do not have pipes", "write the function around its argument: round(x)"},
		{"=sap", "gal", `formulas do not have a single "="`, `a comparison is "==", and a formula starts without a sign`},
		{"let sap = 2; sap", "1", `"sap" is already a name of the sheet`, "give the let another name"},
	} {
		_, list := Bind(farm(c.text, c.unit))
		require.NotEmpty(t, list, c.text)
		assert.Equal(t, c.message, list[0].Message, c.text)
		assert.Equal(t, c.hint, list[0].Hint, c.text)
		assert.Equal(t, "it", list[0].About, c.text)
	}
}

// TestOneFormulaTellsAllThatIsWrong holds the checker to going on after the
// first mistake.
func TestOneFormulaTellsAllThatIsWrong(t *testing.T) {
	_, list := Bind(farm("syrup_from(sapp, 2, sugr)", "gal"))
	var said []string
	for _, d := range list {
		said = append(said, d.Message)
	}
	assert.Equal(t, []string{`nothing is called "sapp"`, `sap_brix of "syrup_from" is "°Bx", not a bare number`, `nothing is called "sugr"`}, said)
}

// TestConversionsStandOnlyWhereScalesDiffer keeps what goes out readable.
func TestConversionsStandOnlyWhereScalesDiffer(t *testing.T) {
	for text, want := range map[string]int{
		"sap + sap":                  0,
		"sap * share / of(1, \"%\")": 0,
		"sap + of(4, \"qt\")":        1,
		"sap * (1 - share)":          1,
		"max(sap, 0)":                0,
		"sap + sap * share":          1,
	} {
		plan, list := Bind(farm(text, "gal"))
		require.Empty(t, list, text)
		steps := 0
		plan.Slots[plan.Find("it")].Expr.Walk(func(n *Node) {
			if n.Conversion && n.Op == Mul {
				steps++
			}
		})
		assert.Equal(t, want, steps, text)
	}
}
