package formula

import (
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/draw"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// Slot is one line or table cell of a sheet, as the run sees it.
type Slot struct {
	Line *sheet.Line
	// Kind is what the line comes to: Number, Truth or Choice.
	Kind Kind
	// Unit is the unit the line declares and its numbers are in.
	Unit units.Unit
	// Names are the names of a Choice, in the order of their places.
	Names []string
	// Expr is the checked working of a formula line, converted to Unit; nil for
	// every other kind, and for a formula that could not be checked.
	Expr *Node
	// Shape is how a guess or records are drawn; nil for every other kind.
	Shape draw.Shape
	// Uses are the slots Expr reads, each once, or those a guess moves with.
	Uses []int
	// Vars is how many let variables Expr has.
	Vars int
	// Text marks Expr's meaning: two workings with one text and one meaning of
	// their names do the same.
	Text uint64
	// Broken says the line cannot be reckoned; a diagnostic tells why.
	Broken bool
}

// Place is where a choice line's present choice stands among Names, from 0.
func (s *Slot) Place() int {
	for i, name := range s.Names {
		if name == s.Line.Choose {
			return i
		}
	}
	return 0
}

// ID is the line's id, or table.row.column for a cell.
func (s *Slot) ID() string { return s.Line.ID }

// Plan is a sheet bound for running: slots in the sheet's order and an order of
// work in which every slot stands after those it reads. A plan is immutable.
type Plan struct {
	Sheet *sheet.Sheet
	Slots []*Slot
	// Order lists the slots that can be reckoned.
	Order []int
	byID  map[string]int
	table map[string]*table
}

// Find is the slot of a line or cell, or -1.
func (p *Plan) Find(id string) int {
	if i, ok := p.byID[id]; ok {
		return i
	}
	return -1
}

// Bind checks every formula of s and puts the slots in order. It tells every
// mistake it finds; a line that is wrong, or waits for one that is, is Broken
// and the rest can still be reckoned. s must be a resolved sheet; the plan keeps
// it and must not see it change.
func Bind(s *sheet.Sheet) (*Plan, diag.List) {
	b := &binder{functions: functionTable(), money: s.Money, plan: &Plan{Sheet: s, byID: map[string]int{}, table: map[string]*table{}}}
	b.layOut()
	for i, slot := range b.plan.Slots {
		switch {
		case slot.Broken:
		case slot.Line.Kind == sheet.Formula:
			b.bindFormula(i)
		case slot.Drawn():
			b.bindShape(i)
		}
	}
	b.order()
	b.movesTogether()
	b.list.Sort()
	return b.plan, b.list
}

type binder struct {
	plan      *Plan
	money     string
	functions map[string]*Function
	rows      map[int]*rowScope
	told      map[string]bool
	list      diag.List
}

// layOut gives every line and cell its slot.
func (b *binder) layOut() {
	b.rows, b.told = map[int]*rowScope{}, map[string]bool{}
	for _, chapter := range b.plan.Sheet.Chapters {
		for _, line := range chapter.Lines {
			b.addSlot(line)
		}
		for _, t := range chapter.Tables {
			b.addTable(t)
		}
	}
}

func (b *binder) addTable(t *sheet.Table) {
	out := &table{id: t.ID}
	for _, col := range t.Columns {
		out.columns = append(out.columns, column{col.ID})
	}
	for i, row := range t.Rows {
		out.rows = append(out.rows, row.ID)
		var cells []int
		for _, cell := range row.Cells {
			slot := b.addSlot(cell)
			b.rows[slot] = &rowScope{out, i}
			cells = append(cells, slot)
		}
		out.cells = append(out.cells, cells)
	}
	b.plan.table[t.ID] = out
}

func (b *binder) addSlot(line *sheet.Line) int {
	slot := &Slot{Line: line, Unit: units.One()}
	switch line.Kind {
	case sheet.Choose:
		slot.Kind = Choice
		for _, name := range line.Among {
			slot.Names = append(slot.Names, name.ID)
		}
		slot.Broken = !slices.Contains(slot.Names, line.Choose)
	case "":
		slot.Broken = true // what it is has been told to be missing
	default:
		u, err := units.Parse(line.Unit, b.money)
		if err != nil {
			slot.Broken = true // the sheet has told this already
		}
		slot.Unit = u
		if u.IsYesNo() {
			slot.Kind = Truth
		}
	}
	at := len(b.plan.Slots)
	b.plan.Slots = append(b.plan.Slots, slot)
	b.plan.byID[line.ID] = at
	return at
}

func (b *binder) bindFormula(i int) {
	slot := b.plan.Slots[i]
	p, list := parse(slot.Line.Formula)
	if len(list) > 0 {
		b.tell(slot, list)
		return
	}
	c := &checker{p: p, row: b.rows[i], functions: b.functions,
		names: &names{slots: b.plan.Slots, byID: b.plan.byID, tables: b.plan.table, currency: b.money}}
	expr := c.check(p.root)
	if expr != nil {
		expr = c.settle(p, slot, expr)
	}
	if expr == nil || len(c.list) > 0 {
		b.tell(slot, c.list)
		return
	}
	slot.Expr, slot.Uses, slot.Vars = expr, expr.Uses(), c.nextVar
	slot.Text = fingerprint(expr)
}

// settle brings the whole working to the unit its line declares.
func (c *checker) settle(p *parsed, slot *Slot, expr *Node) *Node {
	whole := expr.Span
	switch {
	case expr.Kind == List || expr.Kind == Choice:
		return c.failAt(whole, diag.NotANumber, "name one row, or add the column up", "%s is not a number", describe(expr))
	case expr.Kind == Truth && slot.Kind != Truth:
		return c.failAt(whole, diag.WrongUnit, `give the line the unit "yes/no"`, "%q comes to a yes or no, not %q", slot.ID(), slot.Line.Unit)
	case expr.Kind == Number && slot.Kind == Truth:
		return c.failAt(whole, diag.WrongUnit, "compare it with something: x > 3", "%q comes to %s, not a yes or no", slot.ID(), describe(expr))
	case expr.Kind == Truth:
		return expr
	}
	out, ok := converted(expr, slot.Unit)
	if !ok {
		return c.failAt(whole, diag.WrongUnit, unitHint(expr.Unit, slot.Unit), "%q comes to %s, not %q", slot.ID(), describe(expr), slot.Line.Unit)
	}
	return out
}

// unitHint says what the working lacks to come to the wanted unit.
func unitHint(got, want units.Unit) string {
	if got.IsAbsolute() != want.IsAbsolute() && got.Difference().Dim() == want.Difference().Dim() {
		return "a temperature on a scale (°F) and a difference (F°) are not the same"
	}
	missing := want.Difference().Div(got.Difference())
	return "multiply by something in " + missing.String() + ", or change the line's unit"
}

// tell records a formula's diagnostics. One column formula is checked for every
// row, and what is wrong with it is told once.
func (b *binder) tell(slot *Slot, list diag.List) {
	slot.Broken = true
	for _, d := range list {
		place := slot.Line.At(string(slot.Line.Kind))
		span := d.Place.Formula
		d.Place = place
		d.Place.Formula = span
		d.About = slot.ID()
		key := place.String() + "|" + string(d.Code) + "|" + d.Message
		if !b.told[key] {
			b.told[key] = true
			b.list = append(b.list, d)
		}
	}
}

// fingerprint hashes the printed working with what it reads named by place, so
// that an unchanged one is known although lines before it came or went.
func fingerprint(n *Node) uint64 {
	uses := map[int]string{}
	for at, slot := range n.Uses() {
		uses[slot] = "#" + strconv.Itoa(at)
	}
	h := fnv.New64a()
	var text strings.Builder
	print(&text, n, func(slot int) string { return uses[slot] })
	h.Write([]byte(text.String()))
	return h.Sum64()
}
