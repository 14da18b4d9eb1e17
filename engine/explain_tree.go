package engine

import (
	"fmt"
	"math"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// Step is one line or cell of an explanation, with those it was worked from
// below it in the order they are used.
type Step struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Kind  string `json:"kind"`
	Unit  string `json:"unit"`
	// Value is in Unit, nil when the line comes to none; Shown is read with it.
	Value *float64 `json:"value"`
	Shown string   `json:"shown"`
	// Formula is what its author wrote; Worked the same with the numbers in place
	// and every condition at the side taken.
	Formula string `json:"formula,omitempty"`
	Worked  string `json:"worked,omitempty"`
	// Conversions are the changes of unit on the way, Sides the conditions met.
	Conversions []StepConversion `json:"conversions,omitempty"`
	Sides       []StepSide       `json:"sides,omitempty"`
	// Functions are those with a published source, each named once in a tree.
	Functions []StepFunction `json:"functions,omitempty"`
	// Drawn says of a guess, records or a choice what was given and where in it
	// this number lies.
	Drawn  string `json:"drawn,omitempty"`
	Note   string `json:"note,omitempty"`
	Source string `json:"source,omitempty"`
	// Row is what the sheet says of the table's row this is a cell of, told with
	// the first of its cells.
	Row *StepRow `json:"row,omitempty"`
	// Again says that the line is told in full elsewhere in the tree; More that
	// what it was worked from lies deeper than was asked for.
	Again bool    `json:"again,omitempty"`
	More  bool    `json:"more,omitempty"`
	Uses  []*Step `json:"uses"`
}

// StepConversion is a change of unit: a value in To is Factor times that in
// From, and Offset more. Shown is "gal to fl oz: × 128".
type StepConversion struct {
	From   string  `json:"from"`
	To     string  `json:"to"`
	Factor float64 `json:"factor"`
	Offset float64 `json:"offset"`
	Shown  string  `json:"shown"`
}

// StepSide is a condition: as written, with the numbers in place, whether it
// held, and what was therefore taken.
type StepSide struct {
	Condition string `json:"condition"`
	Worked    string `json:"worked"`
	Holds     bool   `json:"holds"`
	Took      string `json:"took"`
}

// StepRow is a row of a table.
type StepRow struct {
	Label  string `json:"label"`
	Note   string `json:"note,omitempty"`
	Source string `json:"source,omitempty"`
}

// StepFunction is a defined function with who published its equation.
type StepFunction struct {
	Name    string `json:"name"`
	Summary string `json:"summary"`
	Source  string `json:"source"`
}

// tracer builds the tree of one explanation.
type tracer struct {
	plan   *formula.Plan
	system units.System
	depth  int
	get    func(slot int) float64
	// run is nil at the likely numbers.
	run      *run
	expanded map[int]bool
	told     map[string]bool
}

// step explains a slot that stands depth lines below the one asked about. Only
// the first full mention is expanded: a line cut off for its depth may still be
// told in full where it is nearer the top.
func (t *tracer) step(at, depth int) *Step {
	slot := t.plan.Slots[at]
	line := slot.Line
	s := &Step{ID: line.ID, Label: line.Label, Kind: string(line.Kind), Uses: []*Step{}}
	t.value(s, slot, t.get(at))
	if t.expanded[at] {
		s.Again = true
		return s
	}
	if line.Kind != sheet.Formula {
		t.expanded[at] = true
		t.words(s, line)
		s.Drawn = t.drawn(at, slot)
		return s
	}
	s.Formula = strings.Join(strings.Fields(line.Formula), " ")
	if depth >= t.depth {
		s.More = true
		return s
	}
	t.expanded[at] = true
	t.words(s, line)
	for _, use := range t.work(s, slot) {
		s.Uses = append(s.Uses, t.step(use, depth+1))
	}
	return s
}

// words are a line's note and source, and its row's with the first of its cells.
func (t *tracer) words(s *Step, line *sheet.Line) {
	s.Note, s.Source = line.Note, line.Source
	if line.Table == "" || t.told[line.Table+"."+line.Row] {
		return
	}
	t.told[line.Table+"."+line.Row] = true
	for _, row := range t.plan.Sheet.Table(line.Table).Rows {
		if row.ID == line.Row && row.Note+row.Source != "" {
			s.Row = &StepRow{row.Label, row.Note, row.Source}
		}
	}
}

func (t *tracer) value(s *Step, slot *formula.Slot, x float64) {
	if slot.Kind == formula.Choice {
		s.Shown = choiceLabel(slot.Line)
		return
	}
	unit, convert := shownUnit(slot, t.system)
	s.Unit = unit.String()
	s.Value = number(convert(x))
	s.Shown = show(s.Value, unit)
}

// work works the formula once more, writes it down with its numbers, and lists
// the slots it read, in the order read.
func (t *tracer) work(s *Step, slot *formula.Slot) []int {
	percent, _ := units.Parse("%", "") // always reads
	w := &worked{tracer: t, slot: slot, percent: percent, values: map[*formula.Node]float64{}, step: s}
	var uses []int
	read := map[int]bool{}
	formula.Eval(slot.Expr, t.get, make([]float64, slot.Vars), func(n *formula.Node, x float64) {
		w.values[n] = x
		if n.Op == formula.Ref && !read[n.Slot] {
			read[n.Slot] = true
			uses = append(uses, n.Slot)
		}
	})
	s.Worked = w.whole()
	return uses
}

// drawn says what a line that no formula works was given.
func (t *tracer) drawn(at int, slot *formula.Slot) string {
	line := slot.Line
	unit, convert := shownUnit(slot, t.system)
	var text string
	switch line.Kind {
	case sheet.Guess:
		text = fmt.Sprintf("a guess: low %s, likely %s, high %s", units.Number(convert(line.Low), unit),
			units.Number(convert(line.Likely), unit), units.Show(convert(line.High), unit))
	case sheet.Records:
		text = fmt.Sprintf("one of %d records", len(line.Records))
		if t.run == nil {
			text = fmt.Sprintf("the middle of %d records", len(line.Records))
		}
	case sheet.Choose:
		return fmt.Sprintf("chosen among %d", len(line.Among))
	default:
		return ""
	}
	if t.run == nil || t.run.result.Columns[at].Steady {
		return text
	}
	return text + "; " + placeWords(outcome.Below(t.run.result.Columns[at].Values, t.get(at)))
}

// placeWords says where among the seasons a number lies, from the share of those
// below it.
func placeWords(below float64) string {
	switch tenths := int(math.Round(below * 10)); {
	case math.IsNaN(below):
		return "no number here"
	case tenths == 0:
		return "here among the lowest"
	case tenths == 10:
		return "here among the highest"
	case tenths == 5:
		return "here about the middle"
	case tenths == 1 || tenths == 9:
		return map[int]string{1: "1 season of 10 is lower", 9: "1 season of 10 is higher"}[tenths]
	case tenths < 5:
		return fmt.Sprintf("%d seasons of 10 are lower", tenths)
	default:
		return fmt.Sprintf("%d seasons of 10 are higher", 10-tenths)
	}
}
