package main

import (
	"github.com/spf13/cobra"

	"thawbook/engine"
)

// askedBeside holds the flags of compare beside those of every reckoning.
type askedBeside struct {
	asked
	on      []string
	flip    string
	over    string
	outcome string
}

func newCompare(t *terminal) *cobra.Command {
	var a askedBeside
	cmd := &cobra.Command{
		Use:   "compare FILE FILE...",
		Short: "Set scenarios of one sheet side by side over the same seasons",
		Long: `Set scenarios of one sheet side by side over the same seasons: each outcome, the
difference from the first scenario with a range of its own, in how many seasons
of 10 it comes out ahead, and which changes make the difference. Seasons and
seed are the first sheet's; --change changes all of them.

--flip asks from which value of a number they share the answer turns, such as
the worth of an hour from which free wood is the dearer fuel.`,
		Example: `  thawbook compare pallets.yaml propane.yaml --on cash_cost --on hours
  thawbook compare pallets.yaml propane.yaml --flip worth --over 0/40 \
    --outcome cost_per_gallon`,
		Args: takes(2, -1, "two or more files"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			options.Progress = t.progress()
			return compare(t, files, a, options)
		},
	}
	flags := cmd.Flags()
	flags.StringArrayVar(&a.on, "on", nil, "compare the line `id`, not the headlines; may be given again")
	flags.StringVar(&a.flip, "flip", "", "find where the answer turns as the line `id` changes")
	flags.StringVar(&a.over, "over", "", "look for that between `low/high`")
	flags.StringVar(&a.outcome, "outcome", "", "judge that by the line `id`")
	seasonFlags(cmd, &a.asked)
	return cmd
}

func compare(t *terminal, files []string, a askedBeside, options engine.Options) error {
	question, err := a.question()
	if err != nil {
		return err
	}
	books, wrong, err := openBeside(t, files, a.changes)
	if err != nil {
		return err
	}
	answer, err := engine.Compare(books, engine.CompareOptions{Options: options, On: a.on})
	if err != nil {
		return badQuestion(err)
	}
	for _, other := range books[1:] {
		if question == nil {
			break
		}
		flip, err := engine.FindFlip(books[0], other, *question, options)
		if err != nil {
			return badQuestion(err)
		}
		answer.Flips = append(answer.Flips, flip)
	}
	if a.json {
		err = writeJSON(t.out, answer)
	} else {
		sheets{page{w: t.out, on: t.outInk, names: labels(books[0].View())}}.comparison(answer)
	}
	if err == nil && wrong {
		return failure{status: statusSheetWrong}
	}
	return err
}

// openBeside opens each file and makes the changes in each. wrong says that
// one of them has errors, which were shown.
func openBeside(t *terminal, files, changes []string) (books []*engine.Book, wrong bool, err error) {
	for _, file := range files {
		o, err := openToAsk(t, file)
		if err != nil {
			return nil, false, err
		}
		if err := o.apply(changes); err != nil {
			return nil, false, err
		}
		wrong = wrong || o.found.Errors() > 0
		books = append(books, o.book)
	}
	return books, wrong, nil
}

// question is what --flip asks, nil when it does not.
func (a askedBeside) question() (*engine.FlipQuestion, error) {
	switch {
	case a.flip == "" && (a.over != "" || a.outcome != ""):
		return nil, commandWrong("--over and --outcome go with --flip id")
	case a.flip == "":
		return nil, nil
	}
	q := &engine.FlipQuestion{About: a.flip, Outcome: a.outcome}
	if q.Outcome == "" && len(a.on) > 0 {
		q.Outcome = a.on[0]
	}
	if q.Outcome == "" {
		return nil, failure{status: statusCommandWrong, message: "--flip " + clean(a.flip) + ": by which line is it judged?",
			hint: "add --outcome and a line's id"}
	}
	if a.over == "" {
		return q, nil
	}
	ends := readNumbers(a.over)
	if len(ends) != 2 || !(ends[0] < ends[1]) {
		return nil, failure{status: statusCommandWrong, message: "--over " + clean(a.over) + ": not a lower and a higher number",
			hint: "write --over 0/40"}
	}
	q.Low, q.High = &ends[0], &ends[1]
	return q, nil
}
