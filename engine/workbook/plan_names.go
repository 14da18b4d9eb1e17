package workbook

import (
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// planNames are the defined names of one plan.
type planNames struct {
	plan   *formula.Plan
	number int
	namer  *namer
	// value, low, high and past are by slot; "" where the slot has no such cell.
	value, low, high, past []string
	// columns are by table.column, ids by table, choices by the slot of a choice
	// that is not among a table's rows.
	columns map[string]string
	ids     map[string]string
	choices map[int]string
}

func newPlanNames(plan *formula.Plan, number int, n *namer) *planNames {
	slots := len(plan.Slots)
	p := &planNames{plan: plan, number: number, namer: n, value: make([]string, slots), low: make([]string, slots),
		high: make([]string, slots), past: make([]string, slots), columns: map[string]string{}, ids: map[string]string{}, choices: map[int]string{}}
	// Lines first: what formulas say most often gets the plainest name.
	for i, slot := range plan.Slots {
		p.value[i] = n.name(number, words(slot.Line)...)
	}
	for _, chapter := range plan.Sheet.Chapters {
		for _, t := range chapter.Tables {
			p.ids[t.ID] = n.name(number, t.ID, "id")
			for _, c := range t.Columns {
				p.columns[t.ID+"."+c.ID] = n.name(number, t.ID, c.ID)
			}
		}
	}
	for i, slot := range plan.Slots {
		p.nameParts(i, slot)
	}
	return p
}

func (p *planNames) nameParts(i int, slot *formula.Slot) {
	part := func(word string) string { return p.namer.name(p.number, append(words(slot.Line), word)...) }
	switch slot.Line.Kind {
	case sheet.Guess:
		p.low[i], p.high[i] = part("low"), part("high")
	case sheet.Records:
		p.past[i] = part("records")
	case sheet.Choose:
		if slot.Line.AmongTable == "" {
			p.choices[i] = part("names")
		}
	}
}

// words are what a line's names are made of.
func words(line *sheet.Line) []string {
	if line.Table != "" {
		return []string{line.Table, line.Row, line.Column}
	}
	return []string{line.ID}
}

// column is the name of the whole column whose cells, from the first row to the
// last, are the slots read by nodes; "" when they are anything else.
func (p *planNames) column(nodes []*formula.Node) string {
	if len(nodes) == 0 || nodes[0].Op != formula.Ref {
		return ""
	}
	first := p.plan.Slots[nodes[0].Slot].Line
	t := p.plan.Sheet.Table(first.Table)
	if t == nil || len(t.Rows) != len(nodes) {
		return ""
	}
	for i, n := range nodes {
		if n.Op != formula.Ref {
			return ""
		}
		line := p.plan.Slots[n.Slot].Line
		if line.Table != t.ID || line.Column != first.Column || line.Row != t.Rows[i].ID {
			return ""
		}
	}
	return p.columns[t.ID+"."+first.Column]
}

// looked is the table and column that a look-up by choice reads in; false when
// its arguments are not all of one column, each in the row its name says.
func (p *planNames) looked(choice *formula.Node, rows []*formula.Node) (ids, column string, ok bool) {
	table, col := "", ""
	for i, n := range rows {
		if n.Op != formula.Ref || i >= len(choice.Names) {
			return "", "", false
		}
		line := p.plan.Slots[n.Slot].Line
		if i == 0 {
			table, col = line.Table, line.Column
		}
		if line.Table == "" || line.Table != table || line.Column != col || line.Row != choice.Names[i] {
			return "", "", false
		}
	}
	return p.ids[table], p.columns[table+"."+col], len(rows) > 0
}
