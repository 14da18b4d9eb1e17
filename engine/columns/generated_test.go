package columns_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/formula/plain"
	"thawbook/engine/sheet"
)

// writer writes random formulas that check: every method gives text of one
// dimension, so that what is generated is worth running.
type writer struct {
	r    *rand.Rand
	lets int
}

func (w *writer) pick(of ...func() string) string { return of[w.r.IntN(len(of))]() }

func (w *writer) bare(depth int) string {
	if depth <= 0 {
		return w.pick(
			func() string { return fmt.Sprint(float64(w.r.IntN(2000)-400) / 100) },
			func() string { return "p" }, func() string { return "q" }, func() string { return "share" },
			func() string { return "rows[which].plain" }, func() string { return "sum(rows.plain)" })
	}
	d := depth - 1
	return w.pick(
		func() string { return "(" + w.bare(d) + w.sign(" + ", " - ", " * ", " / ") + w.bare(d) + ")" },
		func() string { return "(" + w.bare(d) + " * " + w.bare(d) + " / " + w.bare(d) + ")" },
		func() string { return "(" + w.volume(d) + " / " + w.volume(d) + ")" },
		func() string { return "(-" + w.bare(d) + ")" },
		func() string { return "(" + w.bare(d) + ")" + w.sign(" ^ 2", " ^ 3", " ^ 0.5", " ^ -1") },
		func() string { return "(" + w.truth(d) + " ? " + w.bare(d) + " : " + w.bare(d) + ")" },
		func() string { return w.let(d) },
		func() string {
			return w.sign("abs", "sqrt", "exp", "ln", "round", "floor", "ceil") + "(" + w.bare(d) + ")"
		},
		func() string { return w.sign("min", "max") + "(" + w.bare(d) + ", " + w.bare(d) + ")" },
		func() string { return "clamp(" + w.bare(d) + ", " + w.bare(d) + ", " + w.bare(d) + ")" },
		func() string { return "sap_per_syrup(brix, of(66, \"°Bx\"))" },
		func() string { return "number(" + w.volume(d) + `, "qt")` },
		func() string { return "between(" + w.bare(d) + ", rows.plain, rows.heat)" },
	)
}

func (w *writer) let(d int) string {
	w.lets++
	name := fmt.Sprintf("v%d", w.lets)
	return "(let " + name + " = " + w.bare(d) + "; " + name + " * " + name + " + " + w.bare(d) + ")"
}

func (w *writer) sign(of ...string) string { return of[w.r.IntN(len(of))] }

func (w *writer) volume(depth int) string {
	if depth <= 0 {
		return w.sign("gallons", "litres", "(number(1, \"1\") * gallons)", `of(3, "pt")`)
	}
	d := depth - 1
	return w.pick(
		func() string { return "(" + w.volume(d) + w.sign(" + ", " - ") + w.volume(d) + ")" },
		func() string { return "(" + w.volume(d) + w.sign(" * ", " / ") + w.bare(d) + ")" },
		func() string { return "(" + w.truth(d) + " ? " + w.volume(d) + " : " + w.volume(d) + ")" },
		func() string { return "max(0, " + w.volume(d) + ")" },
		func() string { return "syrup_from(" + w.volume(d) + ", brix, of(66.9, \"°Bx\"))" },
		func() string { return "concentrate(" + w.volume(d) + ", brix, of(8, \"°Bx\"))" },
	)
}

func (w *writer) truth(depth int) string {
	if depth <= 0 {
		return w.sign("(p > q)", "(gallons < litres)", `(which == "second")`, `(which != "first")`, "big", "true")
	}
	d := depth - 1
	return w.pick(
		func() string {
			return "(" + w.bare(d) + w.sign(" < ", " <= ", " > ", " >= ", " == ", " != ") + w.bare(d) + ")"
		},
		func() string { return "(" + w.volume(d) + w.sign(" < ", " > ") + w.volume(d) + ")" },
		func() string { return "(" + w.truth(d) + w.sign(" and ", " or ") + w.truth(d) + ")" },
		func() string { return "(not " + w.truth(d) + ")" },
	)
}

// generated is a sheet of guesses and one formula that w wrote.
func generated(text string) *sheet.Sheet {
	guess := func(id, unit string, low, likely, high float64) *sheet.Line {
		return &sheet.Line{ID: id, Label: id, Unit: unit, Kind: sheet.Guess, Low: low, Likely: likely, High: high}
	}
	cell := func(row, column, unit string, line sheet.Line) *sheet.Line {
		line.ID, line.Label, line.Unit = "rows."+row+"."+column, row, unit
		line.Table, line.Row, line.Column = "rows", row, column
		return &line
	}
	is := func(x float64) sheet.Line { return sheet.Line{Kind: sheet.Is, Is: x} }
	table := &sheet.Table{ID: "rows", Label: "rows",
		Columns: []sheet.Column{{ID: "plain", Unit: "1"}, {ID: "heat", Unit: "1"}},
		Rows: []sheet.Row{
			{ID: "first", Cells: []*sheet.Line{cell("first", "plain", "1", is(-3)), cell("first", "heat", "1", is(7))}},
			{ID: "second", Cells: []*sheet.Line{cell("second", "plain", "1",
				sheet.Line{Kind: sheet.Guess, Low: 1, Likely: 2, High: 4}), cell("second", "heat", "1", is(0.5))}},
		}}
	return &sheet.Sheet{Title: "generated", Money: "USD", Seasons: 10, Seed: 1, Chapters: []sheet.Chapter{{Title: "all", Lines: []*sheet.Line{
		guess("p", "1", -2, 1, 5), guess("q", "1", 0.5, 1, 2), guess("share", "%", 2, 10, 30),
		guess("gallons", "gal", 2, 4, 8), guess("litres", "L", 5, 11, 30), guess("brix", "°Bx", 1.6, 2, 2.6),
		{ID: "which", Label: "which", Kind: sheet.Choose, Choose: "second", AmongTable: "rows", Among: []sheet.Name{{ID: "first"}, {ID: "second"}}},
		{ID: "big", Label: "big", Kind: sheet.Formula, Unit: "yes/no", Formula: "p > 1.5"},
		{ID: "it", Label: "it", Kind: sheet.Formula, Unit: "1", Formula: text},
	}, Tables: []*sheet.Table{table}}}}
}

// agree runs one formula both ways over the same seasons. It answers false when
// the text is longer or deeper than formulas may be.
func agree(t *testing.T, text string) bool {
	plan, list := formula.Bind(generated(text))
	if len(list) > 0 {
		code := list[0].Code
		require.Contains(t, []string{"formula-too-long", "formula-too-deep"}, string(code), "%s: %s", text, list[0].Message)
		return false
	}
	const n = 40
	r, err := columns.Lower(plan).Run(columns.Seasons{N: n, Seed: 9}, nil, nil)
	require.NoError(t, err)
	machine, err := plain.Compile(plan)
	require.NoError(t, err, text)
	it := plan.Find("it")
	for k := range n {
		values := season(r, k)
		want := season(r, k)
		require.NoError(t, machine.Season(want))
		if !same(want[it], values[it]) {
			t.Fatalf("season %d of %s: plainly %v, by columns %v", k, text, want[it], values[it])
		}
	}
	return true
}

func same(a, b float64) bool {
	if math.IsNaN(a) || math.IsNaN(b) || math.IsInf(a, 0) || math.IsInf(b, 0) {
		return math.IsNaN(a) == math.IsNaN(b) && (math.IsNaN(a) || a == b)
	}
	return math.Abs(a-b) <= 1e-12*math.Max(1e-300, math.Max(math.Abs(a), math.Abs(b)))
}

// TestColumnsAgreeWithPlain holds the columns way to expr's machine on
// thousands of formulas.
func TestColumnsAgreeWithPlain(t *testing.T) {
	ran := 0
	for seed := range uint64(4000) {
		w := &writer{r: rand.New(rand.NewPCG(seed, 1))}
		if agree(t, w.bare(1+int(seed%5))) {
			ran++
		}
	}
	require.Greater(t, ran, 3000)
}

func FuzzColumnsAgreeWithPlain(f *testing.F) {
	for seed := range uint64(8) {
		f.Add(seed, seed*7, uint8(seed))
	}
	f.Fuzz(func(t *testing.T, a, b uint64, depth uint8) {
		w := &writer{r: rand.New(rand.NewPCG(a, b))}
		agree(t, w.bare(int(depth%7)))
	})
}
