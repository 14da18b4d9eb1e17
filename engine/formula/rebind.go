package formula

import (
	"slices"

	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// Rebind binds a changed form of p's sheet. When only numbers, guesses, records
// and choices differ, as when one is tried or dragged, the checked workings are
// taken over; otherwise it is Bind.
func (p *Plan) Rebind(s *sheet.Sheet) (*Plan, diag.List) {
	all := s.All()
	if s.Money != p.Sheet.Money || len(all) != len(p.Slots) {
		return Bind(s)
	}
	out := *p
	out.Sheet, out.Slots = s, slices.Clone(p.Slots)
	b := &binder{plan: &out, told: map[string]bool{}}
	for i, slot := range out.Slots {
		line := all[i]
		if line == slot.Line {
			continue
		}
		if !sameWorking(line, slot.Line) || slot.Broken {
			return Bind(s)
		}
		next := *slot
		next.Line = line
		out.Slots[i] = &next
		if next.Drawn() {
			next.Uses = nil
			b.bindShape(i)
		}
	}
	if len(b.list) > 0 {
		return Bind(s)
	}
	return &out, nil
}

// sameWorking reports whether two forms of a line differ in numbers alone.
func sameWorking(a, b *sheet.Line) bool {
	return a.ID == b.ID && a.Kind == b.Kind && a.Unit == b.Unit && a.Formula == b.Formula &&
		slices.Equal(a.Among, b.Among) && slices.Equal(a.MovesWith, b.MovesWith)
}
