package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"thawbook/engine/partner"
)

func newHandover(t *terminal) *cobra.Command {
	var a asked
	var file, chance string
	replace := false
	cmd := &cobra.Command{
		Use:   "handover SHEET... -o FILE",
		Short: "Write a workbook for a partner that still calculates",
		Long: `Write a workbook for a partner: the plan with its numbers to change and the rest
following, the tables, the ranges as reckoned, what to lay in, and, when several
sheets go out, all of them side by side. It opens in any program that reads xlsx,
and comes back with takeback. A hidden list in it holds the sheet's whole text.`,
		Example: "  thawbook handover pallets.yaml propane.yaml -o for-june.xlsx",
		Args:    takes(1, -1, "one or more files"),
		RunE: func(cmd *cobra.Command, files []string) error {
			options, err := a.options(cmd)
			if err != nil {
				return err
			}
			options.Progress = t.progress()
			o := partner.HandOverOptions{Options: options, Chance: chance, Made: time.Now().UTC().Format(time.RFC3339)}
			return handover(t, files, a.changes, file, replace, o)
		},
	}
	flags := cmd.Flags()
	flags.StringVarP(&file, "out", "o", "", "the `file` to write")
	flags.BoolVar(&replace, "replace", false, "write over a file of that name")
	flags.StringVar(&chance, "chance", "9/10", "in `how many` seasons what is laid in should last")
	flags.IntVar(&a.seasons, "seasons", 0, "how many seasons to draw (default: the first sheet's)")
	flags.Uint64Var(&a.seed, "seed", 0, "which seasons to draw (default: the first sheet's)")
	flags.StringArrayVar(&a.changes, "change", nil, "hand over with `id=value`; may be given again")
	return cmd
}

func handover(t *terminal, files, changes []string, file string, replace bool, o partner.HandOverOptions) error {
	if err := writable(file, replace); err != nil {
		return err
	}
	books, wrong, err := openBeside(t, files, changes)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := partner.HandOver(&out, books, o); err != nil {
		return badQuestion(err)
	}
	if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
		return failure{status: statusSheetWrong, message: fmt.Sprintf("cannot write %q: %v", file, reason(err))}
	}
	fmt.Fprintf(t.out, "%s written, %s\n", file, several(len(books), "plan"))
	if wrong {
		return failure{status: statusSheetWrong}
	}
	return nil
}

// writable refuses what would be a mistake: no name, a sheet's own, or a file
// that may be a partner's copy.
func writable(file string, replace bool) error {
	if file == "" {
		return commandWrong("handover: -o is missing: name the file to write")
	}
	if ext := filepath.Ext(file); ext != ".xlsx" {
		return failure{status: statusCommandWrong, message: fmt.Sprintf("-o %s: a workbook's name ends in .xlsx", clean(file)), hint: "write -o " + clean(file[:len(file)-len(ext)]) + ".xlsx"}
	}
	if _, err := os.Stat(file); !replace && !errors.Is(err, fs.ErrNotExist) {
		return failure{status: statusCommandWrong, message: fmt.Sprintf("there is a file %q already", file), hint: "it may hold a partner's changes: take them back first, or add --replace"}
	}
	return nil
}
