package columns_test

import (
	"bufio"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/formula/plain"
	"thawbook/engine/sheet"
)

const casesDir = "../../testdata/cases"

// oneCase is a line of the case tables: a formula and what it comes to, or the
// code and span of the diagnostic it gets.
type oneCase struct {
	name, formula, unit string
	value               float64
	code                string
	from, to            int
}

func readCases(t *testing.T) []oneCase {
	files, err := filepath.Glob(filepath.Join(casesDir, "*.txt"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var out []oneCase
	for _, file := range files {
		f, err := os.Open(file)
		require.NoError(t, err)
		scanner := bufio.NewScanner(f)
		for n := 1; scanner.Scan(); n++ {
			line := strings.TrimSpace(scanner.Text())
			if line == "" || strings.HasPrefix(line, "#") {
				continue
			}
			c := readCase(t, line)
			c.name = filepath.Base(file) + ":" + strconv.Itoa(n)
			out = append(out, c)
		}
		require.NoError(t, f.Close())
	}
	return out
}

func readCase(t *testing.T, line string) oneCase {
	if text, want, ok := strings.Cut(line, " !! "); ok {
		code, span, _ := strings.Cut(want, " ")
		from, to, _ := strings.Cut(span, "-")
		c := oneCase{formula: text, code: code, unit: "1"}
		var err error
		c.from, err = strconv.Atoi(from)
		require.NoError(t, err, line)
		c.to, err = strconv.Atoi(to)
		require.NoError(t, err, line)
		return c
	}
	i := strings.LastIndex(line, " -> ")
	require.Positive(t, i, line)
	number, unit, _ := strings.Cut(line[i+4:], " ")
	value, err := strconv.ParseFloat(number, 64)
	require.NoError(t, err, line)
	return oneCase{formula: line[:i], value: value, unit: unit}
}

// caseSheet is the fixture with one line more, called "it".
func caseSheet(t *testing.T, text, unit string) *sheet.Sheet {
	source, err := os.ReadFile(filepath.Join(casesDir, "fixture.yaml"))
	require.NoError(t, err)
	doc, list := sheet.Parse("fixture.yaml", source)
	require.Empty(t, list)
	s, list := sheet.Resolve(doc, nil)
	require.Empty(t, list)
	s.Chapters = append(s.Chapters, sheet.Chapter{Title: "The case",
		Lines: []*sheet.Line{{ID: "it", Label: "It", Kind: sheet.Formula, Formula: text, Unit: unit}}})
	return s
}

// TestCases runs every case the columns way, the plain way and step by step.
func TestCases(t *testing.T) {
	for _, c := range readCases(t) {
		t.Run(c.name, func(t *testing.T) {
			plan, list := formula.Bind(caseSheet(t, c.formula, c.unit))
			if c.code != "" {
				require.NotEmpty(t, list, "%s should be refused", c.formula)
				assert.Equal(t, diag.Code(c.code), list[0].Code, list[0].Message)
				require.NotNil(t, list[0].Place.Formula, list[0].Message)
				assert.Equal(t, diag.Span{From: c.from, To: c.to}, *list[0].Place.Formula, "%s: %s", c.formula, list[0].Message)
				assert.Equal(t, "it", list[0].About)
				return
			}
			require.Empty(t, list, c.formula)
			it := plan.Find("it")
			near(t, c.value, byColumns(t, plan)[it], "columns: "+c.formula)
			near(t, c.value, plainly(t, plan)[it], "plain: "+c.formula)
		})
	}
}

func near(t *testing.T, want, got float64, what string) {
	t.Helper()
	assert.LessOrEqual(t, math.Abs(want-got), 1e-12*math.Max(1, math.Abs(want)), "%s: wanted %v, got %v", what, want, got)
}

func byColumns(t *testing.T, plan *formula.Plan) []float64 {
	r, err := columns.Lower(plan).Run(columns.Seasons{N: 3, Seed: 1}, nil, nil)
	require.NoError(t, err)
	return season(r, 1)
}

// season is one season of every slot, NaN where there is none.
func season(r *columns.Result, k int) []float64 {
	out := make([]float64, len(r.Columns))
	for i, c := range r.Columns {
		out[i] = math.NaN()
		if c != nil {
			out[i] = c.At(k)
		}
	}
	return out
}

func plainly(t *testing.T, plan *formula.Plan) []float64 {
	machine, err := plain.Compile(plan)
	require.NoError(t, err)
	values := make([]float64, len(plan.Slots))
	for i, slot := range plan.Slots {
		switch slot.Line.Kind {
		case sheet.Is:
			values[i] = slot.Line.Is
		case sheet.Choose:
			values[i] = float64(slot.Place())
		}
	}
	require.NoError(t, machine.Season(values))
	return values
}
