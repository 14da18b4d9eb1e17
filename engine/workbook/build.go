package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/trade"
)

// definedName is a name and the cells it stands for, with the sheet.
type definedName struct {
	name, sheet string
	from, to    place
}

// builder lays a whole workbook out.
type builder struct {
	in    Input
	namer *namer
	names []definedName
	index Index
	grids []*grid
	plans []*planBuilder
}

// planBuilder lays one plan out.
type planBuilder struct {
	b      *builder
	p      Plan
	number int
	names  *planNames
	// formulas are by slot; why says of a formula line that has none that it
	// stands still, and for what reason.
	formulas, why []string
	steps         []step
	// values are what names come to with the plan's own numbers.
	values map[string]value
	// where each slot's number stands.
	at map[int]placed

	plan, tables, records, stepsGrid *grid
}

// placed is a cell of a grid.
type placed struct {
	grid *grid
	at   place
}

func newPlanBuilder(b *builder, p Plan, number int) *planBuilder {
	pb := &planBuilder{b: b, p: p, number: number, names: newPlanNames(p.Bound, number, b.namer),
		formulas: make([]string, len(p.Bound.Slots)), why: make([]string, len(p.Bound.Slots)),
		values: map[string]value{}, at: map[int]placed{}}
	pb.knowNames()
	pb.spellAll()
	return pb
}

// knowNames sets what the names of the plan's cells come to.
func (pb *planBuilder) knowNames() {
	for i, slot := range pb.p.Bound.Slots {
		v := num(pb.p.Likely[i])
		if slot.Kind == formula.Choice {
			v = value{text: slot.Line.Choose, isText: true}
		}
		pb.values[pb.names.value[i]] = v
	}
	for _, c := range pb.p.Bound.Sheet.Chapters {
		for _, t := range c.Tables {
			var ids []value
			columns := make([][]value, len(t.Columns))
			for _, r := range t.Rows {
				ids = append(ids, value{text: r.ID, isText: true})
				for k, line := range r.Cells {
					columns[k] = append(columns[k], pb.values[pb.names.value[pb.p.Bound.Find(line.ID)]])
				}
			}
			pb.values[pb.names.ids[t.ID]] = value{list: ids}
			for k, column := range t.Columns {
				pb.values[pb.names.columns[t.ID+"."+column.ID]] = value{list: columns[k]}
			}
		}
	}
}

// spellAll spells every formula and holds it to what the sheet came to. One that
// cannot be spelt, or does not come to the same, goes out as a number.
func (pb *planBuilder) spellAll() {
	s := newSpeller(pb.names)
	for _, i := range pb.p.Bound.Order {
		slot := pb.p.Bound.Slots[i]
		if slot.Line.Kind != sheet.Formula {
			continue
		}
		before := len(s.steps)
		text, why := s.line(slot)
		if why == "" {
			why = pb.check(i, text, s.steps[before:])
		}
		if why != "" {
			pb.why[i] = why
			continue
		}
		pb.formulas[i] = text
	}
	pb.steps = s.steps
}

// check works a formula and its new steps; why is "" when it comes to what the
// sheet came to.
func (pb *planBuilder) check(i int, text string, steps []step) (why string) {
	of := func(name string) (value, bool) { v, ok := pb.values[name]; return v, ok }
	for _, st := range steps {
		v, ok := evaluate(st.Formula, of)
		if !ok {
			return "its working is too much for a workbook"
		}
		pb.values[st.Name] = v
	}
	v, ok := evaluate(text, of)
	want := pb.p.Likely[i]
	switch {
	case !ok:
		return "its working is too much for a workbook"
	case v.bad && want*0 != 0: // never is no number there either
		return ""
	case v.bad:
		return "a workbook has no number for a part of it"
	case !near(v.number, want):
		return fmt.Sprintf("a workbook works it out to %s", strconv.FormatFloat(v.number, 'g', 6, 64))
	}
	return ""
}

// near is within a part in a thousand million, or both as good as nothing.
func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b))
}

// suffix is behind the names of a later plan's sheets.
func (pb *planBuilder) suffix(name string) string {
	if pb.number == 1 {
		return name
	}
	return name + " " + strconv.Itoa(pb.number)
}

func (b *builder) name(name string, g *grid, from, to place) {
	b.names = append(b.names, definedName{name, g.name, from, to})
}

// put puts a slot's number in a column of the row in hand, with its name and its
// entry in the index. A slot without that part gets nothing.
func (pb *planBuilder) put(g *grid, i int, part Part, column int) {
	slot := pb.p.Bound.Slots[i]
	name := map[Part]string{Value: pb.names.value[i], Low: pb.names.low[i], High: pb.names.high[i]}[part]
	if name == "" {
		return
	}
	at := g.last(column)
	if part == Value {
		pb.at[i] = placed{g, at}
	}
	c := pb.numberCell(i, part)
	g.set(column, c)
	pb.b.name(name, g, at, at)
	if slot.Broken {
		return
	}
	e := Entry{Plan: pb.number, ID: slot.ID(), Part: part, Kind: slot.Line.Kind, Unit: slot.Line.Unit, Name: name, Sheet: g.name, Cell: at.String(), Sent: sent(c)}
	switch slot.Line.Kind {
	case sheet.Formula:
		e.Formula, e.Written, e.Held = slot.Line.Formula, pb.formulas[i], pb.formulas[i] == ""
	case sheet.Records:
		e.Written = c.formula
	}
	pb.b.index.Entries = append(pb.b.index.Entries, e)
}

// numberCell is what stands in one of a slot's cells.
func (pb *planBuilder) numberCell(i int, part Part) cell {
	slot := pb.p.Bound.Slots[i]
	line := slot.Line
	if slot.Broken {
		return cell{style: style{look: held}}
	}
	in := style{look: input}
	switch line.Kind {
	case sheet.Is:
		in.format = format(slot.Unit, true, line.Is)
		return cell{value: line.Is, style: in}
	case sheet.Guess:
		in.format = format(slot.Unit, true, line.Low, line.Likely, line.High)
		return cell{value: map[Part]float64{Low: line.Low, Value: line.Likely, High: line.High}[part], style: in}
	case sheet.Choose:
		return cell{value: line.Choose, style: style{look: choice, format: "@"}}
	case sheet.Records:
		return cell{value: finite(pb.p.Likely[i]), formula: "MEDIAN(" + pb.names.past[i] + ")",
			style: style{look: worked, format: format(slot.Unit, false, pb.p.Likely[i])}}
	}
	out := cell{value: finite(pb.p.Likely[i]), formula: pb.formulas[i], style: style{look: worked, format: pb.shown(i)}}
	if out.formula == "" {
		out.style.look = held
	}
	return out
}

// shown is the number format of what a slot comes to, wide enough for its range.
func (pb *planBuilder) shown(i int) string {
	if n := pb.p.Bound.Slots[i].Expr; n != nil && n.Op == formula.Call && wholes(n.Fn.Name) {
		return format(pb.p.Bound.Slots[i].Unit, true)
	}
	numbers := []float64{pb.p.Likely[i]}
	if r := pb.p.Ranges[i]; r != nil {
		numbers = append(numbers, r.Middle)
	}
	return format(pb.p.Bound.Slots[i].Unit, false, numbers...)
}

// wholes says whether a function comes to whole things.
func wholes(function string) bool {
	switch function {
	case "ceil", "floor", "round", "jars_filled", "taps_in_tree":
		return true
	}
	return false
}

func finite(x float64) any {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return failed{}
	}
	return x
}

// sent is a cell's value as the index has it.
func sent(c cell) string {
	switch v := c.value.(type) {
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case string:
		return v
	}
	return ""
}

// String is the cell's address.
func (p place) String() string {
	name := ""
	for n := p.column; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name + strconv.Itoa(p.row)
}

// checks adds what the inputs of a slot in the row in hand take; low, valueAt and
// high are their columns.
func (pb *planBuilder) checks(g *grid, i, low, valueAt, high int) {
	slot := pb.p.Bound.Slots[i]
	line := slot.Line
	if slot.Broken {
		return
	}
	c := check{low: line.Floor, high: line.Ceiling, valueAt: valueAt}
	switch line.Kind {
	case sheet.Is:
		c.place = g.last(valueAt)
		g.checks = append(g.checks, c)
	case sheet.Guess:
		c.ofGuess, c.lowAt, c.highAt = true, low, high
		for k, column := range []int{valueAt, low, high} {
			c.place, c.prompt = g.last(column), guessPrompts[k]
			g.checks = append(g.checks, c)
		}
	case sheet.Choose:
		list := pb.names.ids[line.AmongTable]
		if line.AmongTable == "" {
			list = pb.names.choices[i]
		}
		g.checks = append(g.checks, check{place: g.last(valueAt), list: list})
	}
}

// guessPrompts say what the likely, the low and the high of a guess are.
var guessPrompts = [...]string{"Likely: as often above this as below.", "Low: 1 season in 10 is lower than this.",
	"High: 1 season in 10 is higher than this."}

// noteOf is what a line's comment says: its note, its caution and its source.
func noteOf(note, source, caution string) string {
	if known, ok := trade.CautionFor(caution); ok {
		caution = known.Text + " (" + known.Source + ")"
	}
	if source != "" {
		source = "Source: " + source
	}
	return linesOfText(note, caution, source)
}

// linesOfText puts texts below each other, leaving out what is empty.
func linesOfText(texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(t string) bool { return t == "" }), "\n")
}
