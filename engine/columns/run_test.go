package columns_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

func lines(ls ...*sheet.Line) *sheet.Sheet {
	return &sheet.Sheet{Money: "USD", Chapters: []sheet.Chapter{{Title: "all", Lines: ls}}}
}

func guess(id string, low, likely, high float64) *sheet.Line {
	return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Guess, Low: low, Likely: likely, High: high}
}

func is(id string, x float64) *sheet.Line {
	return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Is, Is: x}
}

func work(id, text string) *sheet.Line {
	return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Formula, Formula: text}
}

func bind(t testing.TB, s *sheet.Sheet) *formula.Plan {
	plan, list := formula.Bind(s)
	require.Empty(t, list)
	return plan
}

func run(t testing.TB, s *sheet.Sheet, n int, before *columns.Result) *columns.Result {
	r, err := columns.Lower(bind(t, s)).Run(columns.Seasons{N: n, Seed: 3}, before, nil)
	require.NoError(t, err)
	return r
}

func TestOnlyWhatAnEditTouchesIsWorkedAgain(t *testing.T) {
	sheetWith := func(price float64) *sheet.Sheet {
		return lines(guess("sap", 5, 9, 14), is("price", price), work("made", "sap * 2"), work("income", "made * price"), work("left", "income - 3"))
	}
	first := run(t, sheetWith(10), 3000, nil)
	assert.Equal(t, 5, first.Worked)
	second := run(t, sheetWith(11), 3000, first)
	assert.Equal(t, 3, second.Worked, "price, income and what is left")
	assert.Same(t, first.Columns[2], second.Columns[2])
	assert.NotSame(t, first.Columns[3], second.Columns[3])
	third := run(t, sheetWith(11), 3000, second)
	assert.Zero(t, third.Worked)

	added := run(t, lines(is("new", 1), guess("sap", 5, 9, 14), work("made", "sap * 2")), 3000, first)
	assert.Equal(t, 1, added.Worked, "a line put in before the others touches none of them")
	assert.Equal(t, first.Columns[0].Values, added.Columns[1].Values)
}

func TestAnotherSeedOrNumberOfSeasonsDrawsAnew(t *testing.T) {
	p := columns.Lower(bind(t, lines(guess("sap", 5, 9, 14), is("x", 1))))
	first, err := p.Run(columns.Seasons{N: 100, Seed: 1}, nil, nil)
	require.NoError(t, err)
	other, err := p.Run(columns.Seasons{N: 100, Seed: 2}, first, nil)
	require.NoError(t, err)
	assert.Equal(t, 1, other.Worked)
	assert.NotEqual(t, first.Columns[0].Values, other.Columns[0].Values)
}

// TestStreamGivesTheSameSeasons holds the way that keeps nothing to the way that
// keeps columns.
func TestStreamGivesTheSameSeasons(t *testing.T) {
	b := guess("b", 1, 2, 4)
	b.MovesWith = []sheet.Moves{{ID: "a", Rank: 0.7}}
	s := lines(guess("a", 1, 3, 5), b, is("k", 2), work("steady", "k * 3"), work("out", "a * b / (k + steady) + (a > b ? 1 : 1 / (a - a))"))
	p := columns.Lower(bind(t, s))
	seasons := columns.Seasons{N: 2500, Seed: 5}
	kept, err := p.Run(seasons, nil, nil)
	require.NoError(t, err)
	got := make([][]float64, len(s.All()))
	warnings, err := p.Stream(seasons, func(from, n int, chunk [][]float64) {
		assert.Len(t, got[0], from)
		for i := range got {
			got[i] = append(got[i], chunk[i][:n]...)
		}
	}, nil)
	require.NoError(t, err)
	want := make([]float64, seasons.N)
	for i, c := range kept.Columns {
		c.Fill(want, 0)
		assert.Equal(t, want, got[i], s.All()[i].ID)
		assert.Equal(t, len(c.Warnings), len(warnings[i]))
	}
	require.Len(t, warnings[4], 1)
	assert.Equal(t, kept.Columns[4].Warnings[0].Seasons, warnings[4][0].Seasons)
}

func TestWarningsSayWhereAndInHowManySeasons(t *testing.T) {
	tests := map[string]struct {
		text     string
		op       formula.Op
		from, to int
	}{
		"division":        {"1 + sap / (sap - sap)", formula.Div, 4, 21},
		"hidden infinity": {"1 / (1 / (sap - sap))", formula.Div, 5, 20},
		"logarithm":       {"ln(0 - sap)", formula.Call, 0, 11},
		"root":            {"2 * sqrt(-sap)", formula.Call, 4, 14},
		"power":           {"(0 - sap) ^ 0.5", formula.Pow, 0, 15},
		"overflow":        {"exp(1000 + sap) * 0", formula.Call, 0, 15},
	}
	for name, c := range tests {
		sap, nothing := guess("sap", 5, 9, 14), 0.0
		sap.Floor = &nothing
		r := run(t, lines(sap, work("it", c.text), work("next", "it + 1")), 1500, nil)
		require.Len(t, r.Columns[1].Warnings, 1, name)
		w := r.Columns[1].Warnings[0]
		assert.Equal(t, c.op, w.Node.Op, name)
		assert.Equal(t, 1500, w.Seasons, name)
		assert.Equal(t, [2]int{c.from, c.to}, [2]int{w.Node.Span.From, w.Node.Span.To}, name)
		assert.Empty(t, r.Columns[2].Warnings, "%s: told once, where it began", name)
	}
}

func TestASideNotTakenDoesNotWarn(t *testing.T) {
	r := run(t, lines(guess("x", -1, 0.5, 2), work("it", "x > 0 ? 1 / x : 0"), work("log", "x > 0 ? ln(x) : 0")), 2000, nil)
	assert.Empty(t, r.Columns[1].Warnings)
	assert.Empty(t, r.Columns[2].Warnings)
}

func TestASteadyFormulaWarnsInEverySeason(t *testing.T) {
	r := run(t, lines(is("a", 0), work("it", "1 / a")), 700, nil)
	require.Len(t, r.Columns[1].Warnings, 1)
	assert.Equal(t, 700, r.Columns[1].Warnings[0].Seasons)
	assert.True(t, r.Columns[1].Steady)
}

func TestARunCanBeStopped(t *testing.T) {
	p := columns.Lower(bind(t, lines(guess("x", 1, 2, 3), work("y", "x * 2"))))
	var seen []int
	_, err := p.Run(columns.Seasons{N: 10 * columns.Chunk, Seed: 1}, nil, func(done, total int) bool {
		assert.Equal(t, 10*columns.Chunk, total)
		seen = append(seen, done)
		return len(seen) < 3
	})
	assert.ErrorIs(t, err, columns.ErrStopped)
	assert.Equal(t, []int{columns.Chunk, 2 * columns.Chunk, 3 * columns.Chunk}, seen)
}

func TestTwoScenariosLiveThroughTheSameSeasons(t *testing.T) {
	a := run(t, lines(guess("sap", 5, 9, 14), work("out", "sap * 2")), 400, nil)
	b := run(t, lines(guess("wood", 1, 2, 3), guess("sap", 5, 9, 14), guess("price", 1, 2, 3), work("out", "sap * 3")), 400, nil)
	assert.Equal(t, a.Columns[0].Values, b.Columns[1].Values)
	assert.NotEqual(t, b.Columns[0].Values, b.Columns[2].Values, "lines alike in all but their ids are drawn apart")
}

func TestRecordsAreDrawnAsOften(t *testing.T) {
	r := run(t, lines(&sheet.Line{ID: "past", Unit: "1", Kind: sheet.Records, Records: []float64{8, 5, 11, 9}}), 4000, nil)
	count := map[float64]int{}
	for _, x := range r.Columns[0].Values {
		count[x]++
	}
	assert.Equal(t, map[float64]int{5: 1000, 8: 1000, 9: 1000, 11: 1000}, count)
}
