package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/units"
)

func newGear(t *terminal) *cobra.Command {
	var a asked
	var worth, rate string
	cmd := &cobra.Command{
		Use:   "gear FILE",
		Short: "Weigh what gear saves in money and hours against its price",
		Long: `Weigh what each piece of gear saves against its price: after how many years it
is paid back, in how many seasons of 10 it pays within its life, and what an
hour it saves costs.

A sheet says so in a table with a row for each piece and the columns price,
life and saves_money or saves_hours (of a year), and left_over, the share of
the price it fetches at the end. A column whose formula comes to nothing
leaves it to single rows to say what they save. What money costs is the line
called rate, an hour's worth the line called worth.`,
		Example: "  thawbook gear growth.yaml --worth 12",
		Args:    takes(1, 1, "one file"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			options.Progress = t.progress()
			return gear(t, files[0], a, engine.GearQuestion{Options: options, Worth: worth, Rate: rate})
		},
	}
	cmd.Flags().StringVar(&worth, "worth", "", "what an hour is worth: a `line or number` (default: the line worth)")
	cmd.Flags().StringVar(&rate, "rate", "", "what money costs a year: a `line or share` such as 0.05 (default: the line rate)")
	seasonFlags(cmd, &a)
	return cmd
}

func gear(t *terminal, file string, a asked, q engine.GearQuestion) error {
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	list, err := o.book.Gear(q)
	if err != nil {
		return badQuestion(err)
	}
	o.show(t.err, t.errInk, list.Warnings)
	return o.give(t, a.json, list, func() { page{w: t.out, on: t.outInk}.gear(list) })
}

// gear writes each piece with its numbers and its verdict.
func (p page) gear(list *engine.GearList) {
	fmt.Fprintln(p.w, p.on.bold(wrap(list.Title, width, "")))
	terms := "What gear saves against its price, money at " + list.Rate.Shown + " a year"
	if list.Worth != nil {
		terms += ", an hour at " + list.Worth.Shown
	}
	fmt.Fprintln(p.w, wrap(fmt.Sprintf("%s; %s seasons drawn, seed %d", terms, units.Number(float64(list.Seasons), units.One()), list.Seed), width, ""))
	for _, piece := range list.Pieces {
		p.piece(piece)
	}
	if len(list.Pieces) == 0 {
		fmt.Fprintf(p.w, "\n%s\n", wrap(list.Paragraph, width, ""))
	}
	if len(list.Silent) > 0 {
		fmt.Fprintf(p.w, "\n%s\n", p.on.faint(wrap("Said to save nothing: "+strings.Join(list.Silent, "; ")+".", width, "")))
	}
	if len(list.Pieces) > 0 && list.Worth == nil {
		fmt.Fprintf(p.w, "\n%s\n", wrap("Hours are not valued: say what one is worth with --worth.", width, ""))
	}
	if len(list.Pieces) > 0 {
		fmt.Fprintf(p.w, "\n%s\n", p.on.faint(wrap("A drawn season stands for every year of a piece's life. Years to pay back leave out what it fetches at the end; whether it pays within its life does not.", width, "")))
	}
}

// piece writes one piece: what goes in and what comes of it.
func (p page) piece(piece engine.GearPiece) {
	fmt.Fprintf(p.w, "\n%s\n", p.on.bold(wrap(piece.Label, width, "")))
	p.number("price", piece.Price)
	p.number("lasts", piece.Life)
	p.number("saves in a year", piece.SavesMoney)
	p.number("and", piece.SavesHours)
	p.number("costs in a year", piece.YearShare)
	if piece.HourCosts != nil {
		p.number("an hour it saves costs", *piece.HourCosts)
	}
	p.verdict("money alone", piece.Money)
	if piece.WithHours != nil {
		p.verdict("hours too", *piece.WithHours)
	}
	if piece.Missing > 0 {
		fmt.Fprintln(p.w, wrap(several(piece.Missing, "season")+" came to no number and are left out.", width, "  "))
	}
}

func (p page) number(name string, r engine.GearRange) {
	p.row("  ", name, right(clean(r.Shown), 14)+"  "+clean(r.Range))
}

func (p page) verdict(name string, v engine.GearVerdict) {
	p.number(name+": paid back in", v.Years)
	p.number(name+": leaves in a year", v.Leaves)
	p.row("  ", name+": pays within its life in", right(clean(v.ShownRepays), 14))
}
