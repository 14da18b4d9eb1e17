package engine

import (
	"fmt"
	"strings"

	"thawbook/engine/units"
)

// show puts an item into the unit it is shown in, and into words.
func (l *laying) show(item *LayInItem, unit units.Unit) {
	shown := unit.In(l.system)
	to := func(x *float64) {
		if x == nil {
			return
		}
		if y, ok := units.Convert(*x, unit, shown); ok {
			*x = y
		}
	}
	for _, x := range []*float64{item.Need, item.Middle, &item.OnHand, &item.Round, item.Buy} {
		to(x)
	}
	item.Unit = shown.String()
	price := item.Shown.Price
	item.Shown = ShownLayInItem{Need: show(item.Need, shown), Middle: show(item.Middle, shown), OnHand: units.Show(item.OnHand, shown),
		Buy: show(item.Buy, shown), ShortNow: seasonsOfTen(item.ShortNow), ShortThen: seasonsOfTen(item.ShortThen), Price: price}
	if item.Packs != nil && *item.Packs > 0 && item.Round != 1 {
		item.Shown.Packs = fmt.Sprintf("%s × %s", units.Number(*item.Packs, units.One()), units.Show(item.Round, shown))
	}
}

// finish adds up the list.
func (l *laying) finish() {
	list := l.list
	if l.priced {
		list.Total = l.money(l.total)
	}
	list.AllLast, list.AllNow = shareOf(l.lasts), shareOf(l.now)
	list.Shown = ShownLayInList{AllLast: seasonsOfTen(list.AllLast), AllNow: seasonsOfTen(list.AllNow)}
	list.Warnings.Sort()
	list.Paragraph = l.paragraph()
}

func shareOf(seasons []bool) *float64 {
	count := 0
	for _, yes := range seasons {
		if yes {
			count++
		}
	}
	return number(float64(count) / float64(len(seasons)))
}

// paragraph says what to buy and how far it goes.
func (l *laying) paragraph() string {
	var buy []string
	for _, g := range l.list.Groups {
		for _, item := range g.Items {
			if item.Buy != nil && *item.Buy > 0 {
				buy = append(buy, item.Shown.Buy+" for "+lowerFirst(item.Label))
			}
		}
	}
	if len(buy) == 0 {
		return fmt.Sprintf("What is on hand lasts in %s or more, each thing by itself; all of it together in %s.", l.list.ChanceShown, l.list.Shown.AllNow)
	}
	text := fmt.Sprintf("So that each thing lasts in %s, lay in %s.", l.list.ChanceShown, strings.Join(buy, "; "))
	if t := l.list.Total; t != nil {
		text += fmt.Sprintf(" That costs %s in the middle", t.Shown)
		if t.Range != "" {
			text += fmt.Sprintf(", and in 8 seasons of 10 %s", t.Range)
		}
		text += "."
	}
	switch n := l.list.Unpriced; {
	case n == 1 && l.priced:
		text += " One thing has no price in the sheet and is not in that."
	case n > 1 && l.priced:
		text += fmt.Sprintf(" %d things have no price in the sheet and are not in that.", n)
	}
	return text + fmt.Sprintf(" All of it together lasts in %s; what is on hand now in %s.", l.list.Shown.AllLast, l.list.Shown.AllNow)
}
