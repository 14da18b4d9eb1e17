package engine

import (
	"fmt"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// priceSheet is where a sheet says what the card needs, as slots of its plan.
type priceSheet struct {
	table, label string
	count        units.Unit // what is sold: the jar
	rows         []priceRow
	outlets      []outletRow
	lines        map[string]int // by role
	notCounted   []string
}

// priceRow is one size.
type priceRow struct {
	id, label           string
	size, price, filled int
	share               int // -1 when there is none
	parts               []int
}

// outletRow is one place where jars are sold; fees and own are -1 when there are
// none.
type outletRow struct {
	id, label    string
	level, taken int
	fees, own    int
}

func (p *pricing) find() (*priceSheet, error) {
	f := &priceSheet{lines: map[string]int{}}
	if err := p.findLines(f); err != nil {
		return nil, err
	}
	if err := p.findTable(f); err != nil {
		return nil, err
	}
	if len(f.rows) == 0 && p.o.Table == "" {
		p.findSingle(f)
	}
	if len(f.rows) == 0 {
		return nil, p.noSizes()
	}
	p.findOutlets(f)
	p.sayNotCounted(f)
	return f, nil
}

// findTable looks for the table of sizes.
func (p *pricing) findTable(f *priceSheet) error {
	for _, chapter := range p.book.sheet.Chapters {
		for _, t := range chapter.Tables {
			if p.o.Table != "" && t.ID != p.o.Table || !hasColumns(t, "size", "price", "filled") || len(t.Rows) == 0 {
				continue
			}
			rows, count, err := p.rowsOf(t)
			if err != nil {
				return err
			}
			if len(rows) > 0 {
				f.table, f.label, f.rows, f.count = t.ID, t.Label, rows, count
				return nil
			}
		}
	}
	return nil
}

// rowsOf reads a table of sizes; it is none when its columns are not in the
// units of one. The error is for a cell that cannot be reckoned.
func (p *pricing) rowsOf(t *sheet.Table) (rows []priceRow, count units.Unit, err error) {
	for _, r := range t.Rows {
		cell := func(column string) int { return p.book.plan.Find(t.ID + "." + r.ID + "." + column) }
		row := priceRow{id: r.ID, label: r.Label, size: cell("size"), price: cell("price"), filled: cell("filled"), share: cell("share")}
		for _, i := range []int{row.size, row.price, row.filled} {
			if _, err := p.book.explainable(p.book.plan.Slots[i].ID()); err != nil {
				return nil, count, err
			}
		}
		count = p.slot(row.filled).Unit
		if !p.is(row.size, p.gallon.Div(count)) || !p.is(row.price, p.money.Div(count)) {
			return nil, count, nil
		}
		if row.share >= 0 && !p.is(row.share, units.One()) {
			row.share = -1
		}
		row.parts = p.around(t, r, row, count)
		rows = append(rows, row)
	}
	return rows, count, nil
}

func (p *pricing) slot(i int) *formula.Slot { return p.book.plan.Slots[i] }

// is says whether a slot comes to a number of the unit's dimension.
func (p *pricing) is(i int, u units.Unit) bool {
	return i >= 0 && !p.slot(i).Broken && p.slot(i).Kind == formula.Number && units.Same(p.slot(i).Unit, u)
}

// around lists what stands around the syrup in one: the money by the piece that
// the row's costs are worked from.
func (p *pricing) around(t *sheet.Table, r sheet.Row, row priceRow, count units.Unit) []int {
	if costs := p.book.plan.Find(t.ID + "." + r.ID + ".costs"); p.is(costs, p.money) {
		return p.byThePiece(costs, row.price, count)
	}
	var out []int
	for _, cell := range r.Cells {
		if i := p.book.plan.Find(cell.ID); !strings.Contains(cell.Column, "price") && p.is(i, p.money.Div(count)) {
			out = append(out, i)
		}
	}
	return out
}

// byThePiece are the slots a formula reads that are money by the piece, the price
// left out.
func (p *pricing) byThePiece(at, price int, count units.Unit) []int {
	var out []int
	if p.slot(at).Line.Kind != sheet.Formula {
		return nil
	}
	for _, use := range p.slot(at).Uses {
		if use != price && p.is(use, p.money.Div(count)) {
			out = append(out, use)
		}
	}
	return out
}

// findSingle looks for one size that stands in lines.
func (p *pricing) findSingle(f *priceSheet) {
	price := p.book.plan.Find("price")
	if price < 0 || p.slot(price).Broken || p.slot(price).Kind != formula.Number {
		return
	}
	count := p.money.Div(p.slot(price).Unit)
	row := priceRow{id: "price", label: p.slot(price).Line.Label, price: price, size: -1, filled: -1, share: -1}
	for i, slot := range p.book.plan.Slots {
		switch {
		case slot.Line.Table != "" || count.IsPlain():
		case row.size < 0 && p.is(i, p.gallon.Div(count)):
			row.size = i
		case row.filled < 0 && p.is(i, count) && calls(slot.Expr, "jars_filled"):
			row.filled = i
		}
	}
	if row.size < 0 || row.filled < 0 {
		return
	}
	if paid, ok := f.lines["paid"]; ok {
		row.parts = p.byThePiece(paid, price, count)
	}
	f.label, f.count, f.rows = p.slot(row.filled).Line.Label, count, []priceRow{row}
}

// calls says whether a working calls the function.
func calls(n *formula.Node, function string) bool {
	found := false
	n.Walk(func(m *formula.Node) { found = found || m.Op == formula.Call && m.Fn.Name == function })
	return found
}

func hasColumns(t *sheet.Table, ids ...string) bool {
	for _, id := range ids {
		found := false
		for _, c := range t.Columns {
			found = found || c.ID == id
		}
		if !found {
			return false
		}
	}
	return true
}

// noSizes says what a sheet lacks to have a price card.
func (p *pricing) noSizes() error {
	d := diag.Diagnostic{Code: diag.NoneMarked, Severity: diag.Error, Message: "the sheet does not say what it sells and in which sizes",
		Hint: "give a table the columns size (fl oz/jar), price ($/jar) and filled (jar)"}
	if p.o.Table != "" {
		d.About, d.Message = p.o.Table, fmt.Sprintf("%q is not a table of the sizes sold", p.o.Table)
		return d
	}
	for _, chapter := range p.book.sheet.Chapters {
		for _, t := range chapter.Tables {
			if hasColumns(t, "size", "price") || hasColumns(t, "size", "filled") || hasColumns(t, "price", "filled") {
				d.About, d.Place = t.ID, t.Place
				d.Message = fmt.Sprintf("%q lacks what makes it a table of the sizes sold", t.ID)
				return d
			}
		}
	}
	return d
}
