package main

import (
	"errors"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/diag"
)

func newExplain(t *terminal) *cobra.Command {
	var a asked
	var o engine.ExplainOptions
	cmd := &cobra.Command{
		Use:   "explain FILE LINE",
		Short: "Take a number back to the guesses it came from",
		Long: `Take a number back to the guesses it came from: its formula, the same with
the numbers in place, and then every line it used, down to guesses and
constants. A line is told in full once; after that it says "above".

--season says where:
  likely         with every guess at its likely number (usual)
  middle         the season whose outcome is nearest the middle
  bad, good      the one nearest the 1-in-10 bad or good season, for a line
                 that says which is better
  low, high      the one nearest the 1-in-10 low or high
  4120           that season`,
		Example: "  thawbook explain scenarios/first-season.yaml syrup --season bad",
		Args:    takes(2, 2, "one file and one line"),
		RunE: func(cmd *cobra.Command, args []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			if cmd.Flags().Changed("depth") && o.Depth < 1 {
				return commandWrong("--depth %d: must be 1 or more", o.Depth)
			}
			o.Options = options
			o.Progress = t.progress()
			return explain(t, args[0], args[1], a, o)
		},
	}
	seasonFlags(cmd, &a)
	cmd.Flags().StringVar(&o.Season, "season", "likely", "`which` season to look at")
	cmd.Flags().IntVar(&o.Depth, "depth", 0, "how many lines deep to go (default: all the way)")
	return cmd
}

// seasonFlags are those that every question about the drawn seasons takes.
func seasonFlags(cmd *cobra.Command, a *asked) {
	flags := cmd.Flags()
	flags.IntVar(&a.seasons, "seasons", 0, "how many seasons to draw (default: the sheet's)")
	flags.Uint64Var(&a.seed, "seed", 0, "which seasons to draw (default: the sheet's)")
	flags.StringArrayVar(&a.changes, "change", nil, "try `id=value`; may be given again")
	flags.BoolVar(&a.metric, "metric", false, "show metric units; the sheet keeps its own")
	flags.BoolVar(&a.json, "json", false, "print one JSON object")
}

func explain(t *terminal, file, line string, a asked, options engine.ExplainOptions) error {
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	answer, err := o.book.Explain(line, options)
	if err != nil {
		return badQuestion(err)
	}
	return o.give(t, a.json, answer, func() { tree{w: t.out, on: t.outInk}.explanation(answer) })
}

// openToAsk opens a sheet to ask it something, and shows what is wrong with it.
// A sheet with errors can still be asked about its other lines.
func openToAsk(t *terminal, file string) (*opened, error) {
	o, err := open(file)
	if err != nil {
		return nil, err
	}
	if o.book == nil {
		o.show(t.err, t.errInk, o.found)
		return nil, failure{status: statusSheetWrong}
	}
	o.show(t.err, t.errInk, o.book.Diagnostics())
	return o, nil
}

// give prints an answer, as JSON or by write, and ends as a wrong sheet does when
// the sheet has errors, which were shown.
func (o *opened) give(t *terminal, asJSON bool, answer any, write func()) error {
	if asJSON {
		if err := writeJSON(t.out, answer); err != nil {
			return err
		}
	} else {
		write()
	}
	if o.book.Diagnostics().Errors() > 0 {
		return failure{status: statusSheetWrong}
	}
	return nil
}

// badQuestion is the failure of a question that the sheet cannot answer.
func badQuestion(err error) error {
	var d diag.Diagnostic
	if errors.As(err, &d) {
		return failure{status: statusSheetWrong, message: clean(d.Message), hint: clean(d.Hint)}
	}
	return failure{status: statusSheetWrong, message: clean(err.Error())}
}
