package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/units"
)

func newLayin(t *terminal) *cobra.Command {
	var a asked
	var chance string
	cmd := &cobra.Command{
		Use:   "layin FILE",
		Short: "List what to gather or buy so that it lasts, to tick off",
		Long: `List what to gather or buy before the season: every line the sheet marks lay_in,
so much that it lasts in 9 seasons of 10 or as often as --chance says, less what
is on hand and up to whole packs, with what it costs.`,
		Example: "  thawbook layin pallets.yaml --chance 19/20",
		Args:    takes(1, 1, "one file"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			options.Progress = t.progress()
			return layin(t, files[0], a, engine.LayInQuestion{Options: options, Chance: chance})
		},
	}
	cmd.Flags().StringVar(&chance, "chance", "9/10", "in `how many` seasons each thing should last")
	seasonFlags(cmd, &a)
	return cmd
}

func layin(t *terminal, file string, a asked, q engine.LayInQuestion) error {
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	list, err := o.book.LayIn(q)
	if err != nil {
		return badQuestion(err)
	}
	o.show(t.err, t.errInk, list.Warnings)
	return o.give(t, a.json, list, func() { page{w: t.out, on: t.outInk}.layIn(list) })
}

// layIn writes the list: what to buy with a box to tick, and then what there is
// enough of.
func (p page) layIn(list *engine.LayInList) {
	fmt.Fprintln(p.w, p.on.bold(wrap(list.Title, width, "")))
	fmt.Fprintln(p.w, wrap(fmt.Sprintf("To lay in, so that each thing lasts in %s; %s seasons drawn, seed %d", list.ChanceShown,
		units.Number(float64(list.Seasons), units.One()), list.Seed), width, ""))
	var enough []engine.LayInItem
	for _, g := range list.Groups {
		head := "\n" + p.on.bold(wrap(g.Chapter, width, "")) + "\n"
		for _, item := range g.Items {
			if item.Buy != nil && *item.Buy == 0 {
				enough = append(enough, item)
				continue
			}
			fmt.Fprint(p.w, head)
			head = ""
			p.toLayIn(item)
		}
	}
	if len(enough) > 0 {
		fmt.Fprintf(p.w, "\n%s\n", p.on.bold("Enough on hand"))
	}
	for _, item := range enough {
		p.row("      ", clean(item.Label), clean(item.Shown.OnHand+", "+item.Shown.Need+" needed"))
	}
	p.layInTotal(list)
}

// toLayIn is one thing to get, and under it what that is reckoned from.
func (p page) toLayIn(item engine.LayInItem) {
	cost := ""
	if item.Cost != nil {
		cost = item.Cost.Shown
	}
	p.ticked(item.Shown.Buy, item.Label, cost)
	text := item.Shown.Need + " needed"
	if item.OnHand != 0 {
		text += ", " + item.Shown.OnHand + " on hand"
	}
	if item.Shown.Packs != "" {
		text += "; " + item.Shown.Packs
	}
	if item.Shown.Price != "" {
		text += "; at " + item.Shown.Price
		if item.Cost.Range != "" {
			text += ", " + item.Cost.Range + " in all"
		}
	}
	if item.ShortNow != nil {
		text += "; short now in " + item.Shown.ShortNow
	}
	fmt.Fprintln(p.w, p.on.faint(wrap(text, width, "      ")))
	if item.Note != "" {
		fmt.Fprintln(p.w, p.on.faint(wrap(item.Note, width, "      ")))
	}
}

// ticked writes a box, how much, of what, and at the right edge what it costs.
func (p page) ticked(much, label, cost string) {
	head := "  [ ] " + left(clean(much), 14) + "  "
	name := clean(label)
	if columns(head+name)+1+columns(cost) > width {
		fmt.Fprintln(p.w, trimRight(head)+right(cost, width-columns(trimRight(head))))
		fmt.Fprintln(p.w, wrap(name, width, "      "))
		return
	}
	fmt.Fprintln(p.w, trimRight(head+name+right(cost, width-columns(head+name))))
}

func (p page) layInTotal(list *engine.LayInList) {
	fmt.Fprintln(p.w)
	if t := list.Total; t != nil {
		text := "Together " + t.Shown
		if t.Range != "" {
			text += ", in 8 seasons of 10 " + t.Range
		}
		if list.Unpriced > 0 {
			text += fmt.Sprintf("; without %s the sheet has no price for", several(list.Unpriced, "thing"))
		}
		fmt.Fprintln(p.w, wrap(text+".", width, ""))
	}
	fmt.Fprintln(p.w, wrap("Once bought, nothing of it runs short in "+list.Shown.AllLast+"; with what is on hand now, in "+list.Shown.AllNow+".", width, ""))
}
