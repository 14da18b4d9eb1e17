package main

import (
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
)

func newPrice(t *terminal) *cobra.Command {
	var a asked
	var o engine.PriceOptions
	var wage float64
	var roles []string
	cmd := &cobra.Command{
		Use:   "price FILE",
		Short: "Show what each size costs, leaves, and has to ask",
		Long: `Show the price card: where the money for one of each size goes, what is left
of it for the hours, the ladder of prices by volume, and what others got.

--change tries a price or another mix and shows what it does to the season:
  jars.quart.price=22   --change jars.pint.share=40
--wage finds the prices that pay it.

A sheet says what it sells by the names it gives: a table with the columns
size (fl oz/jar), price ($/jar) and filled (jar), and lines such as takings,
cash_cost, syrup, hours and pay. --role names another line for one of them:
  --role hours=our_hours`,
		Example: "  thawbook price scenarios/heron-ridge-pallets.yaml --wage 15",
		Args:    takes(1, 1, "one file"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			o.Options = options
			o.Progress = t.progress()
			if cmd.Flags().Changed("wage") {
				o.Wage = &wage
			}
			if o.Roles, err = readRoles(roles); err != nil {
				return err
			}
			return price(t, files[0], a, o)
		},
	}
	seasonFlags(cmd, &a)
	cmd.Flags().Float64Var(&wage, "wage", 0, "find the prices that pay an hour this `money`")
	cmd.Flags().StringVar(&o.Table, "table", "", "the `table` of sizes, when there are several")
	cmd.Flags().StringArrayVar(&roles, "role", nil, "name a line for the card: `role=id`; may be given again")
	cmd.Flags().StringVar(&o.State, "state", "", "show what a `state` of the survey got, too")
	return cmd
}

func readRoles(texts []string) (map[string]string, error) {
	roles := map[string]string{}
	for _, text := range texts {
		role, id, found := strings.Cut(text, "=")
		role, id = strings.TrimSpace(role), strings.TrimSpace(id)
		if !found || role == "" || id == "" {
			return nil, failure{status: statusCommandWrong, message: "--role " + clean(text) + ": not a role and the id of a line",
				hint: "write --role hours=our_hours"}
		}
		roles[role] = id
	}
	return roles, nil
}

func price(t *terminal, file string, a asked, options engine.PriceOptions) error {
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	for _, text := range a.changes {
		edit, err := readChange(text, o.book.View())
		if err != nil {
			return err
		}
		options.Changes = append(options.Changes, edit)
	}
	// Tried once here, so that a change the sheet does not take is told as the
	// command's mistake; the card tries it again beside the sheet as it stands.
	before := o.book
	if err := o.apply(a.changes); err != nil {
		return err
	}
	card, err := before.PriceCard(options)
	if err != nil {
		return badQuestion(err)
	}
	return o.give(t, a.json, card, func() { priceCard{w: t.out, on: t.outInk, card: card}.write() })
}
