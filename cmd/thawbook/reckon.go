package main

import (
	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/units"
)

// mostSeasons is how many seasons one reckoning may draw.
const mostSeasons = 1_000_000

// asked holds the flags of a command that reckons.
type asked struct {
	seasons int
	seed    uint64
	changes []string
	metric  bool
	json    bool
	all     bool
}

func newReckon(t *terminal) *cobra.Command {
	var a asked
	cmd := &cobra.Command{
		Use:   "reckon FILE",
		Short: "Draw the seasons and show what they say, headline lines first",
		Long: `Draw the seasons and show what they say about each line: the middle, and the
range that 8 seasons in 10 fall between. Headline lines come first.

--change tries another value without touching the file:
  taps=150              a number
  sap_per_tap=5/9/14    a guess: low/likely/high
  fuel=propane          one of a choice's names
  sap="taps * 9"        a formula, for a line that is no choice
  fuels.propane.price=3 a table's cell: table.row.column`,
		Example: "  thawbook reckon scenarios/first-season.yaml --change taps=150",
		Args:    takes(1, 1, "one file"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			return reckon(t, files[0], a, options)
		},
	}
	flags := cmd.Flags()
	flags.IntVar(&a.seasons, "seasons", 0, "how many seasons to draw (default: the sheet's)")
	flags.Uint64Var(&a.seed, "seed", 0, "which seasons to draw (default: the sheet's)")
	flags.StringArrayVar(&a.changes, "change", nil, "try `id=value`; may be given again")
	flags.BoolVar(&a.metric, "metric", false, "show metric units; the sheet keeps its own")
	flags.BoolVar(&a.json, "json", false, "print one JSON object")
	flags.BoolVar(&a.all, "all", false, "show every table cell too")
	return cmd
}

// options turns the flags into what the engine is asked.
func (a asked) options(cmd *cobra.Command) (engine.Options, error) {
	var options engine.Options
	if cmd.Flags().Changed("seasons") {
		if a.seasons < 1 || a.seasons > mostSeasons {
			return options, commandWrong("--seasons %d: must be 1 to %d", a.seasons, mostSeasons)
		}
		options.Seasons = a.seasons
	}
	if cmd.Flags().Changed("seed") {
		options.Seed = &a.seed
	}
	if a.metric {
		options.System = units.Metric
	}
	return options, nil
}

func reckon(t *terminal, file string, a asked, options engine.Options) error {
	o, err := open(file)
	if err != nil {
		return err
	}
	if o.book == nil {
		o.show(t.err, t.errInk, o.found)
		return failure{status: statusSheetWrong}
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	o.show(t.err, t.errInk, o.found)
	options.Progress = t.progress()
	answer, err := o.book.Reckon(options)
	if err != nil {
		return failure{status: statusSheetWrong, message: clean(err.Error())}
	}
	if a.json {
		err = writeJSON(t.out, answer)
	} else {
		p := page{w: t.out, on: t.outInk, names: labels(o.book.View())}
		p.reckoning(answer, a.all)
	}
	if err == nil && o.found.Errors() > 0 {
		return failure{status: statusSheetWrong}
	}
	return err
}
