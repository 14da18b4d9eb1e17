package engine

import (
	"fmt"
	"strings"
)

// sentence is the verdict on a piece in words.
func (g *gearing) sentence(p *GearPiece) string {
	text := fmt.Sprintf("%s costs %s and saves %s", p.Label, p.Price.Shown, savings(p))
	v, at := p.Money, "In money alone"
	if p.WithHours != nil {
		v, at = *p.WithHours, "With an hour at "+g.list.Worth.Shown
	}
	text += fmt.Sprintf(" a year. %s it %s, and it pays within its %s in %s, leaving %s a year.",
		at, repaid(v), p.Life.Shown, v.ShownRepays, v.Leaves.Shown)
	if p.WithHours != nil && p.Money.ShownRepays != v.ShownRepays {
		text += fmt.Sprintf(" In money alone it %s.", repaid(p.Money))
	}
	if c := p.HourCosts; c != nil && *c.P50 > 0 {
		text += fmt.Sprintf(" An hour it saves costs %s.", c.Shown)
	}
	return text
}

func savings(p *GearPiece) string {
	var out []string
	if m := p.SavesMoney.P50; m != nil && *m != 0 {
		out = append(out, p.SavesMoney.Shown)
	}
	if h := p.SavesHours.P50; h != nil && *h != 0 {
		out = append(out, p.SavesHours.Shown)
	}
	if len(out) == 0 {
		return "nothing in the middle season"
	}
	return strings.Join(out, " and ")
}

// repaid says when a price is paid back.
func repaid(v GearVerdict) string {
	if v.Years.P50 == nil {
		return "never pays itself back in the middle season"
	}
	return "pays itself back in " + v.Years.Shown
}

// paragraph says all of it.
func (g *gearing) paragraph() string {
	var out []string
	for _, p := range g.list.Pieces {
		out = append(out, p.Sentence)
	}
	if len(out) == 0 {
		out = append(out, "No row of gear says that it saves anything: its saves_money and saves_hours come to nothing.")
	}
	return strings.Join(out, " ")
}
