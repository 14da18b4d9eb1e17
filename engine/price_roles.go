package engine

import (
	"fmt"
	"slices"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// priceRole is something the card reads off a line of the sheet.
type priceRole struct {
	role string
	// ids are the names looked for, the first that is there is taken.
	ids []string
	// unit is one of its dimension.
	unit string
	// without says what the card leaves out when there is no such line.
	without string
}

// priceRoles are what the card reads beside sizes and outlets.
func priceRoles() []priceRole {
	return []priceRole{
		{"takings", []string{"takings", "income"}, "$", "every jar counts as sold at its price"},
		{"fees", []string{"card_fees", "fees"}, "$", ""},
		{"selling", []string{"market_cost", "selling_cost"}, "$", ""},
		{"paid", []string{"cash_cost", "paid_out", "paid"}, "$", "the syrup counts as free"},
		{"bought", []string{"gear_bought"}, "$", ""},
		{"worn", []string{"gear_share"}, "$", "what the gear wears is not counted"},
		{"made", []string{"syrup"}, "gal", "the cost of the syrup is not shared out"},
		{"kept", []string{"kept"}, "gal", ""},
		{"given", []string{"given"}, "gal", ""},
		{"hours", []string{"hours"}, "h", "hours are not counted"},
		{"worth", []string{"worth"}, "$/h", "hours cost nothing"},
		{"left", []string{"left_gear", "left_cash", "left"}, "$", "what the season leaves is not told"},
		{"pay", []string{"pay"}, "$/h", "no price can be found that pays a wage"},
	}
}

// findLines finds the line of each role.
func (p *pricing) findLines(f *priceSheet) error {
	var names []string
	for _, r := range priceRoles() {
		names = append(names, r.role)
		unit := p.book.unit(r.unit)
		if id, asked := p.o.Roles[r.role]; asked {
			i, err := p.book.explainable(id)
			if err != nil {
				return err
			}
			if !p.is(i, unit) {
				return diag.Diagnostic{Code: diag.WrongUnit, Severity: diag.Error, About: id, Place: p.slot(i).Line.Place,
					Message: fmt.Sprintf("%q cannot be the %s: it is in %q", id, r.role, p.slot(i).Line.Unit),
					Hint:    fmt.Sprintf("name a line in %q", unit.String())}
			}
			f.lines[r.role] = i
			continue
		}
		for _, id := range r.ids {
			if i := p.book.plan.Find(id); p.is(i, unit) {
				f.lines[r.role] = i
				break
			}
		}
	}
	for role := range p.o.Roles {
		if !slices.Contains(names, role) {
			return diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, Message: fmt.Sprintf("the card reads nothing called %q", role),
				Hint: diag.Nearest(role, names)}
		}
	}
	return nil
}

func (p *pricing) sayNotCounted(f *priceSheet) {
	for _, r := range priceRoles() {
		_, found := f.lines[r.role]
		_, hours := f.lines["hours"]
		if !found && r.without != "" && (r.role != "worth" || hours) {
			f.notCounted = append(f.notCounted, fmt.Sprintf("no line %q, so %s", r.ids[0], r.without))
		}
	}
}

// findOutlets looks for the table of those who buy.
func (p *pricing) findOutlets(f *priceSheet) {
	for _, chapter := range p.book.sheet.Chapters {
		for _, t := range chapter.Tables {
			if !hasColumns(t, "level", "taken") || len(f.outlets) > 0 {
				continue
			}
			for _, r := range t.Rows {
				if o, ok := p.outlet(f, t, r); ok {
					f.outlets = append(f.outlets, o)
				}
			}
		}
	}
}

func (p *pricing) outlet(f *priceSheet, t *sheet.Table, r sheet.Row) (o outletRow, ok bool) {
	cell := func(column string) int { return p.book.plan.Find(t.ID + "." + r.ID + "." + column) }
	o = outletRow{id: r.ID, label: r.Label, level: cell("level"), taken: cell("taken"), fees: cell("fees"), own: p.book.plan.Find(r.ID + "_cost")}
	if !p.is(o.level, units.One()) || !p.is(o.taken, p.money) {
		return o, false
	}
	if !p.is(o.fees, p.money) {
		o.fees = -1
	}
	if !p.is(o.own, p.money) {
		o.own = -1
	}
	return o, true
}

// hangs says whether a slot is worked from another, at any remove. It keeps its
// own stack, because a chain of lines may be thousands long.
func (p *pricing) hangs(at, on int) bool {
	seen := map[int]bool{at: true}
	for stack := []int{at}; len(stack) > 0; {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if i == on {
			return true
		}
		if p.slot(i).Line.Kind != sheet.Formula {
			continue // a guess uses only what it moves with
		}
		for _, use := range p.slot(i).Uses {
			if !seen[use] {
				seen[use] = true
				stack = append(stack, use)
			}
		}
	}
	return false
}
