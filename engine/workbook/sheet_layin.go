package workbook

import "thawbook/engine/units"

// layLayIn is the list of what to gather or buy.
func (b *builder) layLayIn() *grid {
	l := b.in.LayIn
	g := &grid{name: "Lay in", widths: []float64{36, 14, 14, 14, 14, 14}, freezeRows: 3, repeat: 3}
	g.add(say(title, "What to lay in"))
	g.add(say(flat, "So that it lasts in "+l.Chance+". "+b.plans[0].from()+" It stands as it was sent."))
	g.add(say(heading, "Thing"), say(heading, "To get"), say(heading, "Unit"), say(heading, "It takes"), say(heading, "On hand"), say(heading, "Costs"))
	for _, n := range l.Needs {
		u, err := units.Parse(n.Unit, b.index.Money)
		if err != nil {
			u = units.One()
		}
		one := func(x float64) cell {
			return cell{value: finite(x), style: style{look: standing, format: format(u, false, x)}}
		}
		g.add(say(label, n.Label), cell{value: finite(n.Get), style: style{look: standing, format: format(u, true, n.Get)}}, say(small, units.UnitLabel(u)), one(n.Need), one(n.OnHand), say(small, n.Cost))
	}
	if l.Total != "" {
		g.add(say(label, "In all"), cell{}, cell{}, cell{}, cell{}, say(label, l.Total))
	}
	return g
}
