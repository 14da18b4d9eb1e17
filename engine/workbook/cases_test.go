package workbook

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
)

// answers are what a workbook must come to, as it was sent and after changes.
type answers struct {
	Inputs []where   `json:"inputs"`
	Worked []where   `json:"worked"`
	Cases  []oneCase `json:"cases"`
}

type where struct {
	Sheet string `json:"sheet"`
	Cell  string `json:"cell"`
	ID    string `json:"id,omitempty"`
	kind  sheet.Kind
	past  int // 1 + the place among a line's records
}

type oneCase struct {
	Set  []setting  `json:"set"`
	Want []*float64 `json:"want"`
	// Doubtful are the worked cells that hang on one that comes to no number:
	// here such a number may still go no further, as in a comparison; there it is
	// an error to the end.
	Doubtful []int `json:"doubtful"`
	// Edge are those that hang on a rounding to a whole thing whose argument is
	// whole to the last few digits, where a program may fall to either side.
	Edge []int `json:"edge"`
}

type setting struct {
	At    int `json:"at"`
	Value any `json:"value"`
}

// answersFor makes seeded cases: the first changes nothing, the others some of
// the inputs.
func answersFor(t testing.TB, p Plan, ix Index, n int, seed uint64) answers {
	a := cellsOf(t, ix)
	random := rand.New(rand.NewPCG(seed, 1))
	for k := range n {
		changed := p.Bound
		var set []setting
		if k > 0 {
			set, changed = change(t, p.Bound, a.Inputs, random)
		}
		a.Cases = append(a.Cases, answer(changed, a, set))
	}
	return a
}

func cellsOf(t testing.TB, ix Index) answers {
	a := answers{}
	for _, e := range ix.Entries {
		at := where{Sheet: e.Sheet, Cell: e.Cell, ID: e.ID, kind: e.Kind}
		switch {
		case e.Part == Past:
			from, _, _ := strings.Cut(e.Cell, ":")
			column, row, err := excelize.CellNameToCoordinates(from)
			require.NoError(t, err)
			for k := range strings.Fields(e.Sent) {
				a.Inputs = append(a.Inputs, where{Sheet: e.Sheet, Cell: place{column, row + k}.String(), ID: e.ID, kind: e.Kind, past: k + 1})
			}
		case e.Part != Value || e.Held:
		case e.Written != "":
			a.Worked = append(a.Worked, at)
		default:
			a.Inputs = append(a.Inputs, at)
		}
	}
	return a
}

// change changes up to a third of the inputs, within their bounds. Every number
// is set as one that is certain, since only the likely numbers are worked.
func change(t testing.TB, plan *formula.Plan, inputs []where, random *rand.Rand) ([]setting, *formula.Plan) {
	var set []setting
	edits := map[string]sheet.Edit{}
	records := map[string][]float64{}
	many := 1 + random.IntN(max(1, len(inputs)/3))
	for _, at := range random.Perm(len(inputs))[:many] {
		in := inputs[at]
		line := plan.Slots[plan.Find(in.ID)].Line
		e := sheet.Edit{About: in.ID}
		var value any
		switch {
		case in.past > 0:
			if records[in.ID] == nil {
				records[in.ID] = append([]float64{}, line.Records...)
			}
			x := moved(records[in.ID][in.past-1], line, random)
			records[in.ID][in.past-1], value = x, x
			e.Set.Records = records[in.ID]
		case in.kind == sheet.Choose:
			name := line.Among[random.IntN(len(line.Among))].ID
			value, e.Set.Choose = name, &name
		case in.kind == sheet.Guess:
			x := moved(line.Likely, line, random)
			value, e.Set.Is = x, &x
		default:
			x := moved(line.Is, line, random)
			value, e.Set.Is = x, &x
		}
		edits[in.ID] = e
		set = append(set, setting{at, value})
	}
	var all []sheet.Edit
	for _, e := range edits {
		all = append(all, e)
	}
	changed, list := sheet.Try(alone(t, plan.Sheet), all)
	require.Empty(t, list)
	bound, list := formula.Bind(changed)
	require.Zero(t, list.Errors(), list)
	return set, bound
}

// alone is a sheet in which no guess moves with another: one that is made
// certain would leave the others without company, which is an error.
func alone(t testing.TB, s *sheet.Sheet) *sheet.Sheet {
	var same []sheet.Edit
	for _, l := range s.All() {
		if len(l.MovesWith) > 0 {
			same = append(same, sheet.Edit{About: l.ID, Set: sheet.Set{Guess: &sheet.GuessValue{Low: l.Low, Likely: l.Likely, High: l.High}}})
		}
	}
	out, list := sheet.Try(s, same)
	require.Empty(t, list)
	for _, e := range same {
		out.Find(e.About).MovesWith = nil
	}
	return out
}

// moved is a number near x, now and then nothing, within the line's bounds. It
// has few digits, as people write, so that it is the same in every program.
func moved(x float64, line *sheet.Line, random *rand.Rand) float64 {
	switch {
	case random.IntN(20) == 0:
		x = 0
	case x == 0:
		x = math.Round(random.Float64()*20) / 2
	default:
		x *= 0.5 + 1.2*random.Float64()
	}
	if x != 0 {
		scale := math.Pow(10, 4-math.Ceil(math.Log10(math.Abs(x))))
		x = math.Round(x*scale) / scale
	}
	if line.Floor != nil {
		x = max(x, *line.Floor)
	}
	if line.Ceiling != nil {
		x = min(x, *line.Ceiling)
	}
	return x
}

func answer(plan *formula.Plan, a answers, set []setting) oneCase {
	likely := outcome.AtLikely(plan)
	doubt, edge := make([]bool, len(plan.Slots)), make([]bool, len(plan.Slots))
	for _, i := range plan.Order {
		slot := plan.Slots[i]
		if slot.Expr == nil {
			continue
		}
		doubt[i], edge[i] = likely[i]*0 != 0, onEdge(slot, likely)
		for _, use := range slot.Uses {
			doubt[i], edge[i] = doubt[i] || doubt[use], edge[i] || edge[use]
		}
	}
	out := oneCase{Set: set, Doubtful: []int{}, Edge: []int{}}
	if set == nil {
		out.Set = []setting{}
	}
	for k, at := range a.Worked {
		i := plan.Find(at.ID)
		x := likely[i]
		if x*0 != 0 {
			out.Want = append(out.Want, nil)
		} else {
			out.Want = append(out.Want, &x)
		}
		if doubt[i] {
			out.Doubtful = append(out.Doubtful, k)
		}
		if edge[i] {
			out.Edge = append(out.Edge, k)
		}
	}
	return out
}

// onEdge says whether a slot rounds what is already whole but for the last few
// digits. What is whole by its nature, such as a count, is not on an edge.
func onEdge(slot *formula.Slot, likely []float64) bool {
	edge := false
	last := map[*formula.Node]float64{}
	formula.Eval(slot.Expr, func(i int) float64 { return likely[i] }, make([]float64, slot.Vars), func(n *formula.Node, x float64) {
		last[n] = x
		if n.Op == formula.Call && (n.Fn.Name == "ceil" || n.Fn.Name == "floor" || n.Fn.Name == "round") && n.Args[0].Op != formula.Ref {
			x := last[n.Args[0]]
			if n.Fn.Name == "round" {
				x += 0.5
			}
			edge = edge || math.Abs(x-math.Round(x)) < 1e-9*math.Max(1, math.Abs(x))
		}
	})
	return edge
}

// calculate works one cell by the library's own calculator, which shares nothing
// with the one that Write checks itself by. It is false when the cell comes to an
// error.
func calculate(f *excelize.File, at where) (float64, bool) {
	text, err := f.CalcCellValue(at.Sheet, at.Cell, excelize.Options{RawCellValue: true})
	if err != nil {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil
}

// agree holds every worked cell to what the engine says, to a part in a thousand
// million.
func agree(t *testing.T, f *excelize.File, a answers, c oneCase) {
	t.Helper()
	doubtful := map[int]bool{}
	for _, k := range append(c.Doubtful, c.Edge...) {
		doubtful[k] = true
	}
	for k, at := range a.Worked {
		// The calculator's INT, ABS, EXP and their like take an error for 0, so what
		// hangs on one is left to the engines outside, which do not.
		if doubtful[k] {
			continue
		}
		got, ok := calculate(f, at)
		want := *c.Want[k]
		assert.True(t, ok && near(got, want), "%s: %v there (%v), %v here, after %v", at.ID, got, ok, want, c.Set)
	}
}

// The library's calculator needs more memory for a whole workbook than a browser's
// engine gives, so these run natively only.

// casesForOthers is how many changes each workbook is put through by the engines
// outside, which are fast.
const casesForOthers = 300

// TestAnswersForOtherEngines writes every scenario's workbook with what it must
// come to, for the tests in web/workbook, which say where.
func TestAnswersForOtherEngines(t *testing.T) {
	dir, cases := os.Getenv("THAWBOOK_ANSWERS"), casesForOthers
	if dir == "" {
		dir, cases = t.TempDir(), 20 // nobody waits for them
	}
	for k, file := range scenarios(t) {
		p := scenario(t, file)
		book := write(t, Input{Plans: []Plan{p}})
		a := answersFor(t, p, indexOf(t, open(t, book)), cases, uint64(k))
		finite, edge := 0, 0
		for _, c := range a.Cases {
			edge += len(c.Edge)
			for _, want := range c.Want {
				if want != nil {
					finite++
				}
			}
		}
		require.Greater(t, finite, cases*len(a.Worked)*3/4, "most cases come to numbers, or little is compared")
		require.Less(t, edge, cases*len(a.Worked)/50, "few cases stand on an edge")
		text, err := json.Marshal(a)
		require.NoError(t, err)
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".json"), text, 0o600))
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".xlsx"), book, 0o600))
	}
}
