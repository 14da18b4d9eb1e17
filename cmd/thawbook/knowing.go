package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/units"
)

func newWorth(t *terminal) *cobra.Command {
	var a asked
	var on, better string
	cmd := &cobra.Command{
		Use:   "worth FILE FILE...",
		Short: "Say what is worth finding out before choosing between scenarios",
		Long: `Say what is worth finding out before choosing between scenarios of one sheet: how
much more money a season would leave, on average, if one guess were known before
the choice, and from which value on the choice would turn. What would not change
the choice is worth nothing to know, however unsure it is.`,
		Example: "  thawbook worth pallets.yaml propane.yaml --on left_hours",
		Args:    takes(2, -1, "two or more files"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			if better != "" && better != "more" && better != "less" {
				return commandWrong("--better %s: must be more or less", clean(better))
			}
			return worth(t, files, on, a, engine.KnowingOptions{Options: options, Better: better})
		},
	}
	cmd.Flags().StringVar(&on, "on", "", "the `line` of money to choose by: a line's id")
	cmd.Flags().StringVar(&better, "better", "", "`more` or less (default: what the line's headline says)")
	seasonFlags(cmd, &a)
	cmd.Flags().BoolVar(&a.all, "all", false, "name the guesses that are worth about nothing too")
	return cmd
}

func worth(t *terminal, files []string, on string, a asked, options engine.KnowingOptions) error {
	books, wrong, err := openBeside(t, files, a.changes)
	if err != nil {
		return err
	}
	if on == "" {
		return whichLine("--on", "what to choose by", books[0].View())
	}
	answer, err := engine.AskWorth(books, on, options)
	if err != nil {
		return badQuestion(err)
	}
	if a.json {
		err = writeJSON(t.out, answer)
	} else {
		swings{page{w: t.out, on: t.outInk}}.worth(answer, a.all)
	}
	if err == nil && wrong {
		return failure{status: statusSheetWrong}
	}
	return err
}

func (s swings) worth(w *engine.Worth, all bool) {
	fmt.Fprintln(s.w, s.on.bold(wrap("What is worth finding out before choosing", width, "")))
	fmt.Fprintf(s.w, "by %s\n", wrap(fmt.Sprintf("%s; %s seasons drawn, seed %d, the same ones for all", w.Outcome.Label,
		units.Number(float64(w.Seasons), units.One()), w.Seed), width-3, ""))
	fmt.Fprintln(s.w)
	for _, o := range w.Scenarios {
		s.row("  ", clean(o.Short), right(clean(o.Shown.Mean), 12)+"  ahead in "+o.Shown.Ahead)
	}
	fmt.Fprintf(s.w, "\n%s\n", wrap(w.Paragraph, width, ""))
	var little []string
	for _, g := range w.Guesses {
		if g.Worth.AboutNothing {
			little = append(little, g.Label)
			continue
		}
		s.guess(g, w.All)
	}
	s.little(little, all)
	if w.Missing > 0 {
		fmt.Fprintln(s.w, wrap(units.Number(float64(w.Missing), units.One())+" seasons came to no number in one of them and are left out.", width, ""))
	}
	if len(little) < len(w.Guesses) {
		fmt.Fprintln(s.w, s.on.faint("\n  ━ its part of what knowing everything is worth, "+clean(w.All.Shown.Value)+" a season"))
		fmt.Fprintln(s.w, s.on.faint(wrap("Guesses known together are worth something else than the sum of each alone. The ± is two standard errors.", width, "  ")))
	}
}

// guess shows what one guess is worth, from where on the choice turns, and what
// its line says one could do about it.
func (s swings) guess(g engine.WorthKnowing, all engine.Worthy) {
	fmt.Fprintln(s.w)
	s.ends(g.Label, g.Worth.Shown.Value+" a season ± "+g.Worth.Shown.Error, s.on.bold)
	if picture := partStrip(g.Worth.Value, all.Value, 34); picture != "" {
		fmt.Fprintln(s.w, "  "+picture)
	}
	fmt.Fprintln(s.w, wrap("Known beforehand, it would change the choice in "+g.Worth.Shown.Changes+". "+g.Sentence, width, "  "))
	if g.Note != "" {
		fmt.Fprintln(s.w, wrap("note: "+g.Note, width, "  "))
	}
	if g.Source != "" {
		fmt.Fprintln(s.w, wrap("from: "+g.Source, width, "  "))
	}
}

// partStrip draws a part of a whole in n columns, empty when there is no whole.
func partStrip(part, whole float64, n int) string {
	if !(whole > 0) || !(part >= 0) || math.IsInf(whole, 0) {
		return ""
	}
	filled := min(n, int(math.Round(part/whole*float64(n))))
	return strings.Repeat("━", filled) + strings.Repeat("·", n-filled)
}

func (s swings) little(labels []string, all bool) {
	if len(labels) == 0 {
		return
	}
	text := guesses(len(labels)) + " would hardly ever change the choice, each by itself: worth about nothing."
	if all {
		text += " They are: " + strings.Join(labels, "; ") + "."
	}
	fmt.Fprintf(s.w, "\n%s\n", wrap(text, width, ""))
}
