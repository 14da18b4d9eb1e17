package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/partner"
	"thawbook/engine/workbook/back"
)

func newTakeback(t *terminal) *cobra.Command {
	var into string
	var accept []string
	asJSON := false
	cmd := &cobra.Command{
		Use:   "takeback FILE --into SHEET",
		Short: "Show what a partner changed in a workbook, and take it in",
		Long: `Read a workbook that came back from a partner and show what they changed: the
number that went out, the one that came, and what it does to the season. Nothing
is written until --accept names the changes to take: all, or their keys.`,
		Example: "  thawbook takeback for-june.xlsx --into pallets.yaml --accept taps,worth",
		Args:    takes(1, 1, "one workbook"),
		RunE: func(_ *cobra.Command, files []string) error {
			if into == "" {
				return failure{status: statusCommandWrong, message: "which sheet is it taken back into?", hint: "name it: --into SHEET"}
			}
			return takeback(t, files[0], into, accept, asJSON)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&into, "into", "", "the `sheet` it was handed over from")
	flags.StringSliceVar(&accept, "accept", nil, "take `keys` in: all, or some with commas")
	flags.BoolVar(&asJSON, "json", false, "print one JSON object")
	return cmd
}

func takeback(t *terminal, file, into string, accept []string, asJSON bool) error {
	data, err := readFile(file)
	if err != nil {
		return commandWrong("cannot read %q: %v", file, reason(err))
	}
	o, err := openToAsk(t, into)
	if err != nil {
		return err
	}
	report, list, err := partner.TakeBack(data, o.book, engine.Options{})
	if err != nil {
		return badQuestion(err)
	}
	if report == nil {
		sayAll(t.err, list)
		return failure{status: statusSheetWrong, message: fmt.Sprintf("%q cannot be taken back", file)}
	}
	book, taken, wrong := partner.Accept(o.book, report, accept...)
	if len(taken) > 0 {
		if err := os.WriteFile(into, book.Source(), 0o644); err != nil {
			return failure{status: statusSheetWrong, message: fmt.Sprintf("cannot write %q: %v", into, reason(err))}
		}
	}
	if asJSON {
		if err := writeJSON(t.out, report); err != nil {
			return err
		}
	} else {
		tellReport(t.out, report, taken)
	}
	if len(wrong) > 0 {
		sayAll(t.err, wrong)
		return failure{status: statusSheetWrong, message: several(len(wrong), "change") + " not taken"}
	}
	return nil
}

// sayAll prints diagnostics that have no place in a sheet.
func sayAll(w io.Writer, list diag.List) {
	for _, d := range list {
		fmt.Fprintln(w, wrap(string(d.Severity)+": "+d.Message, width, "  "))
		if d.Hint != "" {
			fmt.Fprintln(w, "  "+wrap(d.Hint, width-2, "  "))
		}
	}
}

func tellReport(w io.Writer, r *back.Report, taken []string) {
	if len(r.Changes) == 0 {
		fmt.Fprintln(w, "Nothing was changed.")
	}
	for _, c := range r.Changes {
		fmt.Fprintf(w, "%s\n", wrap(c.Label+"  ("+c.Key+")", width, "  "))
		fmt.Fprintln(w, "  "+wrap(c.Sent+" → "+c.Came+by(c.By), width-2, "    "))
		if c.Conflict {
			fmt.Fprintln(w, "  "+wrap("changed here too, to "+c.Here+": take it by its key if theirs is right", width-2, "    "))
		}
		for _, note := range []string{c.Note, c.Problem} {
			if note != "" {
				fmt.Fprintln(w, "  "+wrap(note, width-2, "    "))
			}
		}
		for _, e := range c.Effects {
			fmt.Fprintln(w, "    "+wrap(e.Label+": "+e.Before+" → "+e.After, width-4, "      "))
		}
	}
	for _, lost := range r.Lost {
		fmt.Fprintln(w, wrap("Lost: "+lost.Label+", "+lost.What, width, "  "))
	}
	sayAll(w, r.Told)
	if len(taken) > 0 {
		fmt.Fprintln(w, wrap("Taken in: "+strings.Join(taken, ", ")+".", width, "  "))
	}
}

func by(moved string) string {
	if moved == "" {
		return ""
	}
	return ", " + moved
}
