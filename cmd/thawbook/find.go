package main

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"thawbook/engine"
	"thawbook/engine/units"
)

// askedFind holds the flags of find beside those of every reckoning.
type askedFind struct {
	asked
	soThat              string
	is, atLeast, atMost float64
	in                  string
	between             string
	certain             bool
}

func newFind(t *terminal) *cobra.Command {
	var a askedFind
	cmd := &cobra.Command{
		Use:   "find FILE LINE",
		Short: "Find the value of a line at which an outcome reaches a target",
		Long: `Find the value of a line or table cell at which an outcome reaches a target:
how many taps for 30 gallons, how long a day at the fire so that nothing is
poured out. There may be none, one or several.

--in says which season should reach it:
  middle     the middle season (what is meant without --in)
  mean       the mean of the seasons
  bad        the bad season: 1 season in 10 is worse
  low, high  1 season in 10 is lower, or higher
  9/10       so many seasons of so many

Without --is, --at-least or --at-most it is the outcome's own goal. A guess
moves with its low and high, its spread in proportion; --certain takes it for
known. Numbers are in the sheet's own units.`,
		Example: `  thawbook find pallets.yaml taps --so-that syrup --at-least 20 --in 9/10
  thawbook find pallets.yaml day_hours --so-that sap_poured --at-most 50`,
		Args: takes(2, 2, "one file and the id of a line"),
		RunE: func(cmd *cobra.Command, args []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			options.Progress = t.progress()
			flags := cmd.Flags()
			return find(t, args[0], a, engine.FindQuestion{Options: options, Line: args[1], Outcome: a.soThat, In: a.in, Certain: a.certain,
				Is: given(flags, "is", &a.is), AtLeast: given(flags, "at-least", &a.atLeast), AtMost: given(flags, "at-most", &a.atMost)})
		},
	}
	a.flags(cmd.Flags())
	seasonFlags(cmd, &a.asked)
	return cmd
}

func (a *askedFind) flags(flags *pflag.FlagSet) {
	flags.StringVar(&a.soThat, "so-that", "", "the `line` that should reach the target")
	flags.Float64Var(&a.is, "is", 0, "it should come to this `number`")
	flags.Float64Var(&a.atLeast, "at-least", 0, "it should come to this `number` or more")
	flags.Float64Var(&a.atMost, "at-most", 0, "it should come to this `number` or less")
	flags.StringVar(&a.in, "in", "", "`which` season should reach it: middle, mean, bad, low, high or 9/10")
	flags.StringVar(&a.between, "between", "", "look between `low/high` (default: floor to ceiling, or half to double)")
	flags.BoolVar(&a.certain, "certain", false, "take the line for a certain number, not a guess")
}

// given is the flag's value, nil when the flag was not given.
func given(flags *pflag.FlagSet, name string, value *float64) *float64 {
	if !flags.Changed(name) {
		return nil
	}
	return value
}

func find(t *terminal, file string, a askedFind, q engine.FindQuestion) error {
	if a.between != "" {
		ends := readNumbers(a.between)
		if len(ends) != 2 || !(ends[0] < ends[1]) {
			return failure{status: statusCommandWrong, message: "--between " + clean(a.between) + ": not a lower and a higher number",
				hint: "write --between 50/400"}
		}
		q.Low, q.High = &ends[0], &ends[1]
	}
	o, err := openToAsk(t, file)
	if err != nil {
		return err
	}
	if err := o.apply(a.changes); err != nil {
		return err
	}
	if a.soThat == "" {
		return whichLine("--so-that", "what should reach the target", o.book.View())
	}
	answer, err := o.book.Find(q)
	if err != nil {
		return badQuestion(err)
	}
	return o.give(t, a.json, answer, func() { page{w: t.out, on: t.outInk}.found(answer) })
}

// found says the answer and sets the values it turns on side by side, rising.
func (p page) found(f *engine.Found) {
	fmt.Fprintln(p.w, p.on.bold(wrap(f.Title, width, "")))
	fmt.Fprintf(p.w, "%s seasons drawn, seed %d\n", units.Number(float64(f.Seasons), units.One()), f.Seed)
	fmt.Fprintf(p.w, "\n%s\n", wrap(f.Paragraph, width, ""))
	fmt.Fprintln(p.w)
	rows := foundRows(f)
	p.foundRow("  ", engine.ShownFoundAt{Value: f.Line.Label, Middle: f.Outcome.Label, Range: "8 seasons in 10", Met: metHead(f)}, p.on.faint)
	plain := func(s string) string { return s }
	for _, r := range rows {
		ink := plain
		if r.mark == "▸ " {
			ink = p.on.bold
		}
		p.foundRow(r.mark, r.at.Shown, ink)
	}
	fmt.Fprintln(p.w, p.on.faint("\n  ▸ answer   · now"))
	if at := f.Nearest; at != nil && (*at.Value == *f.Lowest.Value || *at.Value == *f.Highest.Value) {
		fmt.Fprintln(p.w, wrap("Look further with --between low/high.", width, "  "))
	}
}

func metHead(f *engine.Found) string {
	if f.Asked == "is" {
		return ""
	}
	return "met in"
}

// foundRow is one value of the line with what the outcome comes to there. A
// name too long for its column is cut: the paragraph above has it whole.
func (p page) foundRow(mark string, at engine.ShownFoundAt, ink func(string) string) {
	line := mark
	if at.Range == at.Middle {
		at.Range = "" // it is certain
	}
	for i, text := range []string{at.Value, at.Middle, at.Range, at.Met} {
		room := []int{16, 12, 19, 25}[i]
		if text = clean(text); columns(text) > room {
			text = string([]rune(text)[:room-1]) + "…"
		}
		line += left(text, room+2)
	}
	fmt.Fprintln(p.w, ink(trimRight(line)))
}

type foundRow struct {
	mark string
	at   engine.FoundAt
}

// foundRows are the limits, the value now and the answers, each value once.
func foundRows(f *engine.Found) []foundRow {
	var rows []foundRow
	for _, a := range f.Answers {
		rows = append(rows, foundRow{"▸ ", a.From}, foundRow{"▸ ", a.To})
	}
	rows = append(rows, foundRow{"· ", f.Now}, foundRow{"  ", f.Lowest}, foundRow{"  ", f.Highest})
	if f.Nearest != nil {
		rows = append(rows, foundRow{"  ", *f.Nearest})
	}
	rows = slices.DeleteFunc(rows, func(r foundRow) bool { return r.at.Value == nil })
	slices.SortStableFunc(rows, func(a, b foundRow) int { return cmp.Compare(*a.at.Value, *b.at.Value) })
	return slices.CompactFunc(rows, func(a, b foundRow) bool {
		return a.at.Shown.Value == b.at.Shown.Value && a.at.Shown.Middle == b.at.Shown.Middle
	})
}
