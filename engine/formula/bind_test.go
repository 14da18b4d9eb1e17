package formula

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

func one(lines ...*sheet.Line) *sheet.Sheet {
	return &sheet.Sheet{Money: "USD", Chapters: []sheet.Chapter{{Title: "all", Lines: lines}}}
}

func work(id, unit, text string) *sheet.Line {
	return &sheet.Line{ID: id, Unit: unit, Kind: sheet.Formula, Formula: text}
}

func is(id, unit string, x float64) *sheet.Line {
	return &sheet.Line{ID: id, Unit: unit, Kind: sheet.Is, Is: x}
}

func guess(id string, low, likely, high float64) *sheet.Line {
	return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Guess, Low: low, Likely: likely, High: high}
}

func TestOrderPutsEachAfterWhatItReads(t *testing.T) {
	plan, list := Bind(one(work("c", "1", "a + b"), work("b", "1", "a * 2"), is("a", "1", 3)))
	require.Empty(t, list)
	assert.Equal(t, []int{2, 1, 0}, plan.Order)
}

func TestCircleNamesEveryLineOnIt(t *testing.T) {
	plan, list := Bind(one(work("a", "1", "b + 1"), work("b", "1", "c + 1"), work("c", "1", "a + 1"), work("d", "1", "c"), is("e", "1", 1)))
	require.Len(t, list, 2)
	byCode := map[diag.Code]diag.Diagnostic{}
	for _, d := range list {
		byCode[d.Code] = d
	}
	assert.Equal(t, `formulas go in a circle: "a" needs "b" needs "c" needs "a"`, byCode[diag.Circle].Message)
	assert.Equal(t, `"d" waits for "c"`, byCode[diag.WaitsFor].Message)
	assert.Equal(t, []int{4}, plan.Order, "the rest still reckons")
}

func TestALineThatNeedsItself(t *testing.T) {
	_, list := Bind(one(work("a", "1", "a + 1")))
	require.Len(t, list, 1)
	assert.Equal(t, `the formula of "a" needs itself`, list[0].Message)
}

func TestALongCircleIsToldAtOnce(t *testing.T) {
	var lines []*sheet.Line
	for i := range 200 {
		lines = append(lines, work(fmt.Sprintf("l%d", i), "1", fmt.Sprintf("l%d + 1", (i+1)%200)))
	}
	_, list := Bind(one(lines...))
	require.Len(t, list, 1)
	assert.Equal(t, diag.Circle, list[0].Code)
	assert.Equal(t, 201, strings.Count(list[0].Message, `"l`))
}

func TestALongChainNeedsNoStack(t *testing.T) {
	lines := []*sheet.Line{is("l0", "1", 1)}
	for i := 1; i < 5000; i++ {
		lines = append([]*sheet.Line{work(fmt.Sprintf("l%d", i), "1", fmt.Sprintf("l%d", i-1))}, lines...)
	}
	plan, list := Bind(one(lines...))
	require.Empty(t, list)
	assert.Len(t, plan.Order, 5000)
}

func TestTooLongAndTooDeepAreToldBeforeParsing(t *testing.T) {
	for name, text := range map[string]string{
		"brackets": strings.Repeat("(", 4000) + "1" + strings.Repeat(")", 4000),
		"huge":     strings.Repeat("a+", 1_500_000) + "a",
	} {
		_, list := Bind(one(work("a", "1", text)))
		require.Len(t, list, 1, name)
		assert.Equal(t, diag.FormulaTooLong, list[0].Code, name)
	}
	for name, text := range map[string]string{
		"brackets":   strings.Repeat("(", 900) + "1" + strings.Repeat(")", 900),
		"signs":      strings.Repeat("-", 1900) + "1",
		"nots":       strings.Repeat("not ", 450) + "true",
		"powers":     "2" + strings.Repeat("^2", 900),
		"conditions": strings.Repeat("true?1:", 250) + "1",
		"lets":       strings.Repeat("let a=1;", 200) + "1",
		"indexes":    strings.Repeat("a[", 600) + "1" + strings.Repeat("]", 600),
	} {
		_, list := Bind(one(work("a", "1", text)))
		require.Len(t, list, 1, name)
		assert.Equal(t, diag.FormulaTooDeep, list[0].Code, name)
	}
}

func TestFlatFormulasMayBeLong(t *testing.T) {
	_, list := Bind(one(is("a", "1", 1), work("b", "1", "a"+strings.Repeat(" + a * (a - a)", 130))))
	assert.Empty(t, list)
}

func TestUnfitGuess(t *testing.T) {
	_, list := Bind(one(guess("a", 0, 0.05, 10), work("b", "1", "a")))
	require.Len(t, list, 2)
	assert.Equal(t, diag.GuessUnfit, list[0].Code)
	assert.NotEmpty(t, list[0].Hint)
	assert.Equal(t, diag.WaitsFor, list[1].Code)
}

func TestMovesWith(t *testing.T) {
	a, b, c := guess("a", 1, 2, 3), guess("b", 1, 2, 3), guess("c", 1, 2, 3)
	b.MovesWith = []sheet.Moves{{ID: "a", Rank: 0.6}}
	plan, list := Bind(one(b, a))
	require.Empty(t, list)
	assert.Equal(t, []int{1, 0}, plan.Order, "drawn after the one it moves with")

	c.MovesWith = []sheet.Moves{{ID: "a", Rank: 0.9}, {ID: "b", Rank: -0.9}}
	_, list = Bind(one(a, b, c))
	require.Len(t, list, 1)
	assert.Equal(t, diag.MovesImpossible, list[0].Code)

	b.MovesWith = []sheet.Moves{{ID: "nobody", Rank: 0.6}}
	_, list = Bind(one(a, b))
	require.Len(t, list, 1)
	assert.Equal(t, diag.MovesUnknown, list[0].Code)

	a.MovesWith, b.MovesWith = []sheet.Moves{{ID: "b", Rank: 0.5}}, []sheet.Moves{{ID: "a", Rank: 0.5}}
	_, list = Bind(one(a, b))
	require.Len(t, list, 1)
	assert.Equal(t, diag.MovesCircle, list[0].Code)
}

func TestOneColumnFormulaIsToldOnce(t *testing.T) {
	cell := func(row, col string, l sheet.Line) *sheet.Line {
		l.ID, l.Table, l.Row, l.Column = "t."+row+"."+col, "t", row, col
		return &l
	}
	table := &sheet.Table{ID: "t", Columns: []sheet.Column{{ID: "x"}, {ID: "y"}}}
	for _, row := range []string{"r1", "r2", "r3"} {
		table.Rows = append(table.Rows, sheet.Row{ID: row, Cells: []*sheet.Line{
			cell(row, "x", sheet.Line{Kind: sheet.Is, Is: 1, Unit: "1"}),
			cell(row, "y", sheet.Line{Kind: sheet.Formula, Formula: "x + nosuch", Unit: "1"})}})
	}
	_, list := Bind(&sheet.Sheet{Money: "USD", Chapters: []sheet.Chapter{{Tables: []*sheet.Table{table}}}})
	require.Len(t, list, 1)
	assert.Equal(t, diag.UnknownName, list[0].Code)
}

func TestRebindTakesOverWorkings(t *testing.T) {
	before, list := Bind(one(is("a", "1", 1), guess("g", 1, 2, 3), work("b", "1", "a + g")))
	require.Empty(t, list)
	next := one(is("a", "1", 5), guess("g", 1, 2, 4), before.Sheet.Chapters[0].Lines[2])
	after, list := before.Rebind(next)
	require.Empty(t, list)
	assert.Same(t, before.Slots[2], after.Slots[2])
	assert.InDelta(t, 5, after.Slots[0].Line.Is, 0)
	assert.NotEqual(t, before.Slots[1].Shape, after.Slots[1].Shape)
	assert.InDelta(t, 1, before.Slots[0].Line.Is, 0, "the plan before is as it was")

	other := one(is("a", "1", 5), guess("g", 1, 2, 4), work("b", "1", "a - g"))
	after, list = before.Rebind(other)
	require.Empty(t, list)
	assert.NotEqual(t, before.Slots[2].Text, after.Slots[2].Text)
}

// TestPrintReadsBack is the fixed point of printing: what is printed reads back
// to a working that prints the same.
func TestPrintReadsBack(t *testing.T) {
	lines := []*sheet.Line{is("a", "1", 2), is("b", "1", 3), is("c", "1", 4)}
	for _, text := range []string{"a + b * c", "(a + b) * c", "a - (b - c)", "-a ^ 2", "a / b / c", "a > b ? a : b > c ? b : c",
		"let x = a; x * x", "max(a, b, 0)", "abs(-a) + sqrt(4)", "a > b and not (b > c) or c == 4 ? 1 : 0", "a ^ b ^ c", "1e-7 * a"} {
		name := func(slot int) string { return lines[slot].ID }
		plan, list := Bind(one(append(lines[:3:3], work("it", "1", text))...))
		require.Empty(t, list, text)
		printed := Print(plan.Slots[3].Expr, name)
		again, list := Bind(one(append(lines[:3:3], work("it", "1", printed))...))
		require.Empty(t, list, printed)
		assert.Equal(t, printed, Print(again.Slots[3].Expr, name), text)
	}
}

func TestEvalWorksOnlyTheSideTaken(t *testing.T) {
	plan, list := Bind(one(is("a", "1", 0), work("it", "1", "a == 0 ? 7 : 1 / a")))
	require.Empty(t, list)
	steps := 0
	x := Eval(plan.Slots[1].Expr, func(int) float64 { return 0 }, nil, func(n *Node, _ float64) {
		if n.Op == Div {
			steps++
		}
	})
	assert.InDelta(t, 7, x, 0)
	assert.Zero(t, steps)
}
