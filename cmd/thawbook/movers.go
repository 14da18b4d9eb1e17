package main

import (
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
)

func newMovers(t *terminal) *cobra.Command {
	var a asked
	var of string
	cmd := &cobra.Command{
		Use:   "movers FILE",
		Short: "Show which guesses move a line most, and how far",
		Long: `Show which guesses move a line most: how much of the spread over the seasons
each has a hand in, and where the line goes as that guess alone goes from its
low to its high. The guesses on top are those to think over, measure or watch.`,
		Example: "  thawbook movers scenarios/first-season.yaml --for left_cash",
		Args:    takes(1, 1, "one file"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			return movers(t, files[0], of, a, options)
		},
	}
	cmd.Flags().StringVar(&of, "for", "", "the `line` that is moved: a line's id")
	seasonFlags(cmd, &a)
	cmd.Flags().BoolVar(&a.all, "all", false, "show the guesses that hardly move it too")
	return cmd
}

func movers(t *terminal, file, of string, a asked, options engine.Options) error {
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	if of == "" {
		return whichLine("--for", "what is moved", o.book.View())
	}
	answer, err := o.book.Movers(of, options)
	if err != nil {
		return badQuestion(err)
	}
	return o.give(t, a.json, answer, func() { swings{page{w: t.out, on: t.outInk}}.movers(answer, a.all) })
}

// whichLine asks for a flag that names a line, and offers the headlines.
func whichLine(flag, what string, view engine.View) error {
	f := failure{status: statusCommandWrong, message: "say " + what + ": add " + flag + " and a line's id"}
	var ids []string
	eachLine(view, func(line engine.LineView) {
		if line.Headline {
			ids = append(ids, clean(line.ID))
		}
	})
	if len(ids) > 0 {
		f.hint = "the headline lines are " + strings.Join(ids, ", ")
	}
	return f
}
